import type { Fabric, HoldPlan, PanelPlan, PatternPlan, Plan } from '@panewright/design';
import {
  bounds,
  type Corners,
  moveOutline,
  type Outline,
  type Perspective,
  type Point,
  point,
  project,
} from '@panewright/geometry';
import { flattenPath, outlinePath } from '../path.ts';

/** One part of a panel as it is seen: rings filled by the even-odd rule, or lines where there is no fill. mm or dots. */
export interface SeenPart {
  readonly part: 'opening' | 'cloth' | 'pocket' | 'edge' | 'stitch';
  readonly rings: readonly (readonly Point[])[];
  /** `#rrggbb`, and how much of what is behind it stays hidden, 0 to 1. */
  readonly fill?: { readonly colour: string; readonly share: number };
  readonly line?: { readonly colour: string; readonly dashed: boolean };
}

/** How far a chord may leave its arc, mm: less than a thread of the cloth. */
const SAG = 0.2;

/**
 * The finished panel of one opening as it is seen from outside, in the opening's own frame: cloth by its colour and
 * openness, pockets behind it, binding or hem, stitch lines, and the opening's edge.
 *
 * @returns undefined where the opening has no panel yet
 */
export function finishedPanel(
  plan: Pick<Plan, 'openings' | 'patterns' | 'panels' | 'hold'>,
  fabrics: readonly Fabric[],
  opening: string,
): readonly SeenPart[] | undefined {
  const found = partsOf(plan, opening);
  const shape = plan.openings.find((one) => one.opening === opening)?.shape;
  if (found === undefined || !shape) return undefined;
  const { panel, hold, place } = found;
  const fabric = fabrics.find(({ id }) => id === panel.choices.fabric);
  const colour = fabric?.colour ?? '#808080';
  const share = 1 - (fabric?.openness ?? 0);
  const ring = (outline: Outline) => ringOf(moveOutline(place, outline));
  const inner = panel.band ?? panel.finished;
  return [
    { part: 'opening', rings: [ringOf(shape.outline)], line: { colour: '#ffcc00', dashed: true } },
    { part: 'cloth', rings: [ring(inner)], fill: { colour, share } },
    ...(hold?.points ?? []).flatMap(({ pocket }): SeenPart[] =>
      pocket ? [{ part: 'pocket', rings: [ring(pocket)], fill: { colour, share } }] : [],
    ),
    ...(panel.band === null
      ? []
      : [
          {
            ...({ part: 'edge', rings: [ring(panel.finished), ring(panel.band)] } as const),
            fill: { colour: darker(colour), share: 1 },
          },
        ]),
    ...panel.stitch.map(
      (one): SeenPart => ({
        part: 'stitch',
        rings: [ring(one)],
        line: { colour: lighter(colour), dashed: true },
      }),
    ),
  ];
}

function partsOf(
  { patterns, panels, hold }: Pick<Plan, 'patterns' | 'panels' | 'hold'>,
  opening: string,
):
  | {
      readonly panel: PanelPlan;
      readonly hold: HoldPlan | undefined;
      readonly place: PatternPlan['members'][number]['place'];
    }
  | undefined {
  for (const { pattern, members } of patterns) {
    const member = members.find((one) => one.opening === opening);
    const panel = panels.find((one) => one.pattern === pattern);
    if (member && panel)
      return { panel, hold: hold.find((one) => one.pattern === pattern), place: member.place };
  }
  return undefined;
}

const ringOf = (outline: Outline): readonly Point[] => flattenPath(outlinePath(outline, {}), SAG);

/**
 * The four points of an opening that are looked for in a photo, from the bottom left anticlockwise: its corners, as sharp
 * as if they were not rounded, where it has four; else the corners of the box round it.
 */
export function photoCorners({ openings }: Pick<Plan, 'openings'>, opening: string): Corners | undefined {
  const shape = openings.find((one) => one.opening === opening)?.shape;
  if (!shape) return undefined;
  const [a, b, c, d, ...more] = shape.corners.map(({ at }) => at);
  if (a && b && c && d && more.length === 0) return [a, b, c, d];
  const box = bounds(shape.outline);
  return [
    ...([point(box.minX, box.minY), point(box.maxX, box.minY)] as const),
    ...([point(box.maxX, box.maxY), point(box.minX, box.maxY)] as const),
  ];
}

/** The same parts as a photo shows them. */
export const inPhoto = (parts: readonly SeenPart[], map: Perspective): readonly SeenPart[] =>
  parts.map((one) => ({ ...one, rings: one.rings.map((ring) => ring.map((at) => project(map, at))) }));

const mixed = (colour: string, with_: number, share: number): string =>
  `#${[1, 3, 5]
    .map((at) => Math.round(Number.parseInt(colour.slice(at, at + 2), 16) * (1 - share) + with_ * share))
    .map((one) => one.toString(16).padStart(2, '0'))
    .join('')}`;
const darker = (colour: string): string => mixed(colour, 0, 0.35);
const lighter = (colour: string): string => mixed(colour, 255, 0.45);
