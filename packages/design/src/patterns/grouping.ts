import {
  type Alignment,
  type AlignOptions,
  alignOutlines,
  edges,
  leastDeviation,
  measureShape,
  movePoint,
  nearest,
  type Outline,
  type Rigid,
  type ShapeMeasure,
  still,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';
import type { OpeningPlan, OpeningShape, PatternMember } from '../plan/plan.ts';

export interface Shaped {
  readonly plan: OpeningPlan;
  readonly shape: OpeningShape;
}

/** Openings that one pattern serves: the first gives it. */
export interface Group {
  /** Its name, once all groups are known. */
  pattern: string;
  readonly master: Shaped;
  readonly members: PatternMember[];
}

/** An opening that no pattern serves, and the pattern it comes nearest to, off by no more than twice the tolerance. */
export interface NearMiss {
  readonly group: Group;
  readonly member: PatternMember;
}

/**
 * Groups openings by congruence, in their order: each joins the first group whose pattern it fits, or begins one.
 *
 * Every pattern would have to be held against every other; what a bound no motion can beat tells apart is left out.
 *
 * @param tolerance worst deviation within a group, mm
 * @source worst deviation after rigid alignment: sources.md#kabsch-1976
 */
export function grouped(
  openings: readonly Shaped[],
  tolerance: number,
): { readonly groups: readonly Group[]; readonly misses: readonly NearMiss[] } {
  const groups: Group[] = [];
  const misses: NearMiss[] = [];
  for (const shaped of openings) {
    const near = candidates(groups, shaped, 2 * tolerance);
    const found = firstFit(near, shaped, tolerance);
    if (found.fits) found.fits.group.members.push(found.fits.member);
    else {
      groups.push(newGroup(shaped));
      if (found.miss) misses.push(found.miss);
    }
  }
  return { groups, misses };
}

interface Candidate {
  readonly group: Group;
  /** No motion brings the opening nearer than this. */
  readonly atLeast: number;
}

/** Groups of the same choices that some motion might bring within `reach`. */
function candidates(groups: readonly Group[], { plan, shape }: Shaped, reach: number): Candidate[] {
  const key = choiceKey(plan);
  const measure = measured(shape.outline);
  return groups.flatMap((group) => {
    if (choiceKey(group.master.plan) !== key) return [];
    const atLeast = leastDeviation(measured(group.master.shape.outline), measure);
    return atLeast <= reach ? [{ group, atLeast }] : [];
  });
}

/** The first group that fits; else the nearest miss. Those that cannot fit are only asked how nearly they miss. */
function firstFit(
  near: readonly Candidate[],
  shaped: Shaped,
  tolerance: number,
): { readonly fits?: NearMiss; readonly miss?: NearMiss } {
  let miss: NearMiss | undefined;
  const reach = () => Math.min(2 * tolerance, miss?.member.deviation ?? Infinity);
  const hold = (group: Group): NearMiss | undefined => {
    for (const way of WAYS) {
      const fit = align(group.master.shape.outline, shaped.shape.outline, { ...way, within: mm(tolerance) });
      if (!sameAllowances(group.master, shaped, fit.motion)) continue;
      const at = { group, member: memberAt(group.master, shaped, fit) };
      if (fit.deviation <= tolerance) return at;
      if (fit.deviation <= 2 * tolerance && fit.deviation < (miss?.member.deviation ?? Infinity)) miss = at;
    }
    return undefined;
  };
  for (const { group, atLeast } of near) {
    const fits = atLeast <= tolerance ? hold(group) : undefined;
    if (fits) return { fits };
  }
  const missing = near.filter(({ atLeast }) => atLeast > tolerance).sort((a, b) => a.atLeast - b.atLeast);
  for (const { group, atLeast } of missing) if (atLeast < reach()) hold(group);
  return miss ? { miss } : {};
}

function newGroup(master: Shaped): Group {
  const first: PatternMember = {
    opening: master.plan.opening,
    turnedOver: false,
    place: still,
    deviation: 0,
    worstAt: master.shape.outline.segments[0].to,
    sigma: 0,
  };
  return { pattern: '', master, members: [first] };
}

/** An opening as its pattern lies on it; their spreads are taken as independent. */
export const memberAt = (master: Shaped, { plan, shape }: Shaped, fit: Alignment): PatternMember => ({
  opening: plan.opening,
  turnedOver: fit.motion.mirrored,
  place: fit.motion,
  deviation: fit.deviation,
  worstAt: fit.at,
  sigma: Math.hypot(master.shape.sigma, shape.sigma),
});

const measures = new WeakMap<Outline, ShapeMeasure>();

function measured(outline: Outline): ShapeMeasure {
  const known = measures.get(outline) ?? measureShape(outline);
  measures.set(outline, known);
  return known;
}

/** Best alignments of pairs of outlines, kept while the outlines live: an edit aligns again only what it changed. */
const aligned = new WeakMap<Outline, WeakMap<Outline, Map<string, Alignment>>>();

export function align(first: Outline, second: Outline, how: AlignOptions): Alignment {
  const known = aligned.get(first) ?? new WeakMap<Outline, Map<string, Alignment>>();
  aligned.set(first, known);
  const ways = known.get(second) ?? new Map<string, Alignment>();
  known.set(second, ways);
  const way = `${how.mirrored} ${how.near} ${how.within}`;
  const alignment = ways.get(way) ?? alignOutlines(first, second, how);
  ways.set(way, alignment);
  return alignment;
}

/** Ways to lay a pattern on an opening: upright first, since a maker looks for that; then turned any way. */
export const WAYS: readonly AlignOptions[] = [
  { mirrored: false, near: radian(0) },
  { mirrored: true, near: radian(0) },
  { mirrored: false },
  { mirrored: true },
];

const keys = new WeakMap<OpeningPlan['choices'], string>();

/** What must be equal for one panel to serve both openings; allowances by edge are compared on the aligned edges. */
function choiceKey({ choices }: OpeningPlan): string {
  const known = keys.get(choices);
  if (known !== undefined) return known;
  const { fit, weather: _weather, ...rest } = choices;
  const key = JSON.stringify([rest, fit.all]);
  keys.set(choices, key);
  return key;
}

export function allowanceOf(plan: OpeningPlan, edge: string): number {
  return plan.choices.fit.edges[edge] ?? plan.choices.fit.all;
}

function sameAllowances(a: Shaped, b: Shaped, motion: Rigid): boolean {
  const own = (plan: OpeningPlan) => Object.keys(plan.choices.fit.edges).length > 0;
  if (!own(a.plan) && !own(b.plan)) return true;
  return edges(a.shape.outline).every((edge, index) => {
    const middle = movePoint(motion, {
      x: mm((edge.from.x + edge.to.x) / 2),
      y: mm((edge.from.y + edge.to.y) / 2),
    });
    const other = b.shape.edgeNames[nearest(b.shape.outline, middle).segment]!;
    return allowanceOf(a.plan, a.shape.edgeNames[index]!) === allowanceOf(b.plan, other);
  });
}
