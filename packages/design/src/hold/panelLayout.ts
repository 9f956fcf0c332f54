import { invert, moveOutline, type Outline, outlineFrom, type Point, point } from '@panewright/geometry';
import type { Opening } from '../document/job.ts';
import type { HoldGap } from '../plan/holdDetail.ts';
import type { HoldEdge, PanelPlan, PatternPlan } from '../plan/plan.ts';
import { type Foot, holdFeet } from './holdPoints.ts';
import type { KeepOut, Layout, PlacingInput } from './layout.ts';
import { placing } from './placing.ts';
import { cavityOf, patchAt } from './pocket.ts';
import { footOnRun, type Run, runsOf } from './runs.ts';

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

/** Feet of a panel's hold points, clear of zones, with the reason for each gap. */
export interface PanelLayout {
  readonly feet: readonly Foot[];
  readonly edges: readonly HoldEdge[];
  /** None for a panel without obstructions whose corners point into it: it keeps the plain layout, which has no reasons. */
  readonly gaps: readonly HoldGap[];
}

/** Patches nearer than this share of their width lie over one another. */
export const CROWDED = 0.75;

/**
 * Where a panel's hold points stand. A panel whose edge nothing obstructs keeps the plain layout.
 *
 * @param reach radius of the circle the outside magnet lies in, mm
 * @source common practice, no source
 */
export function panelLayout(
  panel: PanelPlan,
  zones: readonly KeepOut[],
  reach: number,
  seam: number,
  alike: number,
): PanelLayout {
  const runs = runsOf(panel);
  const layout = placing({
    rim: panel,
    spacing: panel.choices.hold.spacing,
    upTo: panel.choices.hold.upTo,
    zones,
    reach,
    centreOf: zones.length === 0 ? anywhere : centres(panel, runs, seam),
    apart: CROWDED * panel.choices.hold.pocket,
    hand: [],
    alike,
  });
  const plain = holdFeet(panel);
  if (zones.length === 0 && plain.feet.length !== layout.points.length) return { ...plain, gaps: [] };
  return {
    feet: zones.length === 0 ? plain.feet : layout.points,
    edges: zones.length === 0 ? plain.edges : shiftedEdges(plain.edges, runs, layout),
    gaps: gapsOf(layout),
  };
}

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
  const trim = panel.edging.kind === 'binding' ? panel.cut : panel.finished;
  const pocket = patchAt(trim, at, inward, panel.choices.hold.pocket);
  const cavity = pocket && cavityOf(pocket, panel.band ?? panel.finished, at, inward, seam);
  if (!cavity) return panel.choices.hold.pocket / 2;
  return Math.hypot(cavity.centre.x - at.x, cavity.centre.y - at.y);
}
