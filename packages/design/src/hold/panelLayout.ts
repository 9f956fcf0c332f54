import { invert, moveOutline, type Outline, outlineFrom, type Point, point } from '@panewright/geometry';
import type { Catalogue } from '../document/catalogue.ts';
import type { Opening } from '../document/job.ts';
import type { HoldGap } from '../plan/holdDetail.ts';
import type { HoldEdge, PanelPlan, PatternPlan } from '../plan/plan.ts';
import { ruleOf } from './handPlaced.ts';
import { type Foot, holdFeet } from './holdPoints.ts';
import type { HandPlaced, KeepOut, Layout, LayoutProblem, PlacedPoint, PlacingInput } from './layout.ts';
import { placing } from './placing.ts';
import { footOnRun, type Run, runsOf } from './runs.ts';
import { sewnPocket } from './sewnPocket.ts';

/** What every opening of a pattern keeps clear of, carried into the pattern's frame. */
export function keepOuts(
  pattern: PatternPlan,
  members: readonly { readonly opening: Opening }[],
): readonly KeepOut[] {
  return members.flatMap(({ opening }) => {
    if (opening.obstructions.length === 0) return [];
    const back = invert(pattern.members.find((member) => member.opening === opening.id)!.place);
    return opening.obstructions.map((zone) => ({
      id: `${opening.id}.${zone.id}`,
      outline: moveOutline(back, boxOutline(zone)),
      clearance: 0,
    }));
  });
}

function boxOutline({ x, y, width, height }: Opening['obstructions'][number]): Outline {
  const corners = [point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height)];
  const outline = outlineFrom(corners);
  if (!outline.ok) throw new Error(`a box was refused: ${outline.refusal.code}`);
  return outline.value;
}

/** A foot with whose doing it is. */
export type PanelFoot = Foot & Pick<PlacedPoint, 'rule'> & { readonly byHand: boolean };

/** Feet of a panel's hold points, clear of zones, with the reason for each gap. */
export interface PanelLayout {
  readonly feet: readonly PanelFoot[];
  readonly edges: readonly HoldEdge[];
  /** None for a panel without obstructions whose corners point into it: it keeps the plain layout, which has no reasons. */
  readonly gaps: readonly HoldGap[];
  /** What was set by hand and could not be followed. */
  readonly problems: readonly LayoutProblem[];
}

/** What a panel's points are placed by. */
export interface PanelRules {
  readonly zones: readonly KeepOut[];
  /** Radius of the circle a magnet or fastener lies in, mm. */
  readonly reach: number;
  readonly hand: readonly HandPlaced[];
  /** From the finished edge to a fastener's middle, mm; null where magnets lie in pockets. */
  readonly inset: number | null;
  readonly counts: PlacingInput['counts'] | null;
  readonly habits: Pick<Catalogue['habits'], 'pocketSeam' | 'patternTolerance'>;
}

/** Patches nearer than this share of their width lie over one another. */
export const CROWDED = 0.75;

/** A panel as `placing` takes it. */
export function placingOf(panel: PanelPlan, rules: PanelRules): PlacingInput {
  const { zones, reach, hand, inset, counts, habits } = rules;
  const { spacing, upTo, pocket } = panel.choices.hold;
  const runs = runsOf(panel);
  const deep = zones.length > 0 || hand.length > 0;
  const inPockets = deep ? centres(panel, runs, habits.pocketSeam) : anywhere;
  return {
    rim: panel,
    ...{ spacing, upTo, zones, reach, hand },
    centreOf: inset === null ? inPockets : (foot) => insetFrom(foot, inset),
    apart: inset === null ? CROWDED * pocket : 2 * reach,
    alike: habits.patternTolerance,
    ...(counts ? { counts } : {}),
  };
}

/**
 * Where a panel's hold points stand. A panel whose edge nothing obstructs, and that nobody set points on, keeps the plain
 * layout.
 *
 * @source common practice, no source
 */
export function panelLayout(panel: PanelPlan, rules: PanelRules): PanelLayout {
  const runs = runsOf(panel);
  const layout = placing(placingOf(panel, rules));
  const plain = holdFeet(panel);
  const free = rules.zones.length === 0 && rules.hand.length === 0 && !rules.counts;
  const { problems } = layout;
  if (free) {
    const ruled = ruleOf(plain.feet);
    const feet = plain.feet.map((foot, k) => ({ ...foot, byHand: false, rule: ruled[k]! }));
    const same = plain.feet.length === layout.points.length;
    return { feet, edges: plain.edges, gaps: same ? gapsOf(layout) : [], problems };
  }
  return {
    feet: layout.points.map((point) => ({ ...point, byHand: point.by === 'hand' })),
    edges: shiftedEdges(plain.edges, runs, layout),
    gaps: gapsOf(layout),
    problems,
  };
}

/** A place straight in from a foot. */
export const insetFrom = ({ at, inward }: Foot, by: number): Point =>
  point(at.x + by * Math.cos(inward), at.y + by * Math.sin(inward));

/** The plain edges with the places the points were moved to. */
function shiftedEdges(
  edges: readonly HoldEdge[],
  runs: readonly Run[],
  { points }: Layout,
): readonly HoldEdge[] {
  return edges.map((edge) => {
    const run = runs.findIndex(({ sides }) => sides.some(({ name }) => name === edge.edge));
    const side = runs[run]?.sides.find(({ name }) => name === edge.edge);
    if (!side) return edge;
    const inside = points
      .filter((point) => point.run === run)
      .map(({ t }) => t - side.from)
      .filter((t) => t > 1e-6 && t < edge.length - 1e-6);
    const positions = [0, ...inside, edge.length];
    const gaps = positions.length - 1;
    return { ...edge, gaps, gap: { ...edge.gap, value: edge.length / gaps }, positions };
  });
}

function gapsOf({ gaps }: Layout): readonly HoldGap[] {
  return gaps.map(({ length, equal, strict, reason, zone, mirrored, shift }, k) => ({
    from: k + 1,
    to: ((k + 1) % gaps.length) + 1,
    length,
    equal,
    strict,
    reason,
    ...(zone === undefined ? {} : { obstruction: zone }),
    ...(mirrored === undefined ? {} : { mirrored }),
    ...(shift === undefined ? {} : { shift }),
  }));
}

/** Where a foot's magnet lies: at a corner as its own pocket has it, along edges as deep as at the middle of the longest. */
export function centres(panel: PanelPlan, runs: readonly Run[], seam: number): PlacingInput['centreOf'] {
  const longest = runs.reduce<Run | null>((a, b) => (!a || b.length > a.length ? b : a), null);
  const known = new Map<string, number>();
  const depthAt = (foot: Foot): number => {
    const name = foot.kind === 'corner' ? foot.on : '';
    const usual = longest && foot.kind === 'edge' ? footOnRun(longest, longest.length / 2, panel) : foot;
    const depth = known.get(name) ?? depthOf(panel, usual, seam);
    known.set(name, depth);
    return depth;
  };
  return (foot): Point => {
    const depth = depthAt(foot);
    return point(foot.at.x + depth * Math.cos(foot.inward), foot.at.y + depth * Math.sin(foot.inward));
  };
}

/** Where nothing is to be kept clear of, the depth does not matter. */
const anywhere: PlacingInput['centreOf'] = ({ at }) => at;

function depthOf(panel: PanelPlan, { at, inward }: Foot, seam: number): number {
  const { cavity } = sewnPocket(panel, { at, inward }, seam);
  if (!cavity) return panel.choices.hold.pocket / 2;
  return Math.hypot(cavity.centre.x - at.x, cavity.centre.y - at.y);
}
