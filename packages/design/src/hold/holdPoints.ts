import { edges, length, nearest, normalAt, type Outline, type Point, pointAt } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { type Corner, cornerName, cornersAndSides, type Side } from '../panels/cornersAndEdges.ts';
import { type Figure, figure } from '../plan/figure.ts';
import type { HoldEdge, PanelPlan } from '../plan/plan.ts';
import { equalGaps } from './equalGaps.ts';

/** Where a hold point's patch has its foot, before the patch is drawn. */
export interface Foot {
  readonly kind: 'corner' | 'edge';
  readonly on: string;
  readonly s: number;
  readonly at: Point;
  readonly inward: number;
}

/** Fewest hold points on an outline without corners. Common practice, no source. */
const LEAST_ROUND = 3;

/**
 * Hold points of a panel: one at every convex corner, then equal gaps along each side.
 *
 * @returns feet anticlockwise from the corner nearest the bottom left
 * @source common practice, no source
 */
export function holdFeet(panel: PanelPlan): {
  readonly feet: readonly Foot[];
  readonly edges: readonly HoldEdge[];
} {
  const outline = panel.finished;
  const { corners, sides } = cornersAndSides(outline);
  if (corners.length === 0) return roundFeet(panel);
  const feet: Foot[] = [];
  const divided: HoldEdge[] = [];
  for (const side of sides) {
    if (side.from.turn > 0) feet.push(cornerFoot(side.from, panel));
    if (side.segments.length === 0) continue;
    const { edge, between } = divideSide(side, panel);
    divided.push(edge);
    feet.push(...between);
  }
  return { feet: fromBottomLeft(feet), edges: divided };
}

function cornerFoot(corner: Corner, panel: PanelPlan): Foot {
  const on = cornerName(corner, panel.edgeNames);
  return { kind: 'corner', on, s: corner.s, at: corner.at, inward: corner.inward };
}

function divideSide(side: Side, panel: PanelPlan): { edge: HoldEdge; between: Foot[] } {
  const { spacing, upTo } = panel.choices.hold;
  const name = panel.edgeNames[side.segments[0]!]!;
  const division = equalGaps(side.length, spacing, upTo);
  const total = length(panel.finished);
  const between = division.positions.slice(1, -1).map((position): Foot => {
    const along = Math.min(Math.max(position - side.from.setback, 0), side.run);
    const s = (side.start + along) % total;
    return {
      kind: 'edge',
      on: name,
      s,
      at: pointAt(panel.finished, mm(s)),
      inward: inwardAt(panel.finished, s),
    };
  });
  return { edge: holdEdge(name, side.length, division, panel), between };
}

function holdEdge(
  name: string,
  sideLength: number,
  division: ReturnType<typeof equalGaps>,
  panel: PanelPlan,
): HoldEdge {
  const { spacing, upTo } = panel.choices.hold;
  return {
    edge: name,
    length: sideLength,
    gaps: division.gaps,
    gap: gapFigure(division.gap, panel),
    spacing,
    upTo,
    reason: division.reason,
    positions: division.positions,
  };
}

const gapFigure = (gap: number, panel: PanelPlan): Figure =>
  figure(gap, 'mm', 'custom', 'equalGaps', [
    `panels.${panel.pattern}.finished`,
    'choices.hold.spacing',
    'choices.hold.upTo',
  ]);

/** A round outline: equal gaps all the way about, from its lowest point. */
function roundFeet(panel: PanelPlan): { feet: readonly Foot[]; edges: readonly HoldEdge[] } {
  const { spacing, upTo } = panel.choices.hold;
  const total = length(panel.finished);
  const division = equalGaps(
    total,
    Math.min(spacing, total / LEAST_ROUND),
    Math.min(upTo, total / LEAST_ROUND),
  );
  const lowest = edges(panel.finished).reduce((a, b) => (b.from.y < a.from.y ? b : a)).from;
  const first = nearest(panel.finished, lowest).s;
  const feet = division.positions.slice(0, -1).map((position): Foot => {
    const s = (first + position) % total;
    const on = panel.edgeNames[nearest(panel.finished, pointAt(panel.finished, mm(s))).segment]!;
    return { kind: 'edge', on, s, at: pointAt(panel.finished, mm(s)), inward: inwardAt(panel.finished, s) };
  });
  return { feet, edges: [holdEdge(panel.edgeNames[0]!, total, division, panel)] };
}

/** The outward normal turned about, radians. */
function inwardAt(outline: Outline, s: number): number {
  const normal = normalAt(outline, mm(s));
  return Math.atan2(-normal.y, -normal.x);
}

function fromBottomLeft(feet: readonly Foot[]): readonly Foot[] {
  const sum = ({ at }: Foot) => at.x + at.y;
  let first = 0;
  feet.forEach((foot, index) => {
    const best = feet[first]!;
    if (foot.kind === 'corner' && (best.kind !== 'corner' || sum(foot) < sum(best) - 1e-6)) first = index;
  });
  return [...feet.slice(first), ...feet.slice(0, first)];
}
