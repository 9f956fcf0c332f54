import { mm2, ok, type Result, refuse, type SquareMillimetre } from '@panewright/quantity';
import { area } from './area.ts';
import type { Rule, Strand } from './arrangement.ts';
import { contains } from './contains.ts';
import { curvesOf } from './curve.ts';
import { outlineOf, reversed } from './edges.ts';
import type { Outline, Point } from './outline.ts';
import { regionOf, type TracedRegion } from './region.ts';

/** A shape with holes. `outer` is anticlockwise; so is each hole, as the outline of what is missing. */
export interface Region {
  readonly outer: Outline;
  readonly holes: readonly Outline[];
}

export type HoleRefusal = {
  readonly code: 'LEAVES_HOLE';
  /** A corner of the largest hole, and its area. */
  readonly at: Point;
  readonly area: SquareMillimetre;
};

const rules = {
  intersect: (a: number, b: number) => a > 0 && b > 0,
  unite: (a: number, b: number) => a > 0 || b > 0,
  subtract: (a: number, b: number) => a > 0 && b <= 0,
} satisfies Record<string, Rule>;

/**
 * What two outlines have in common, have together, or what the first has beyond the second. Arcs stay arcs.
 *
 * @returns the parts, largest first; empty when nothing is left
 * @range anticlockwise outlines that do not cross themselves; they may touch, share edges, or be equal
 * @accuracy corners within 1e-6 mm; slivers thinner than about 4e-6 mm are left out
 * @source every piece between crossings is kept when the winding numbers across it differ: sources.md#winding-overlay
 */
export function combine(a: Outline, b: Outline, how: keyof typeof rules): Region[] {
  return regionsOf(regionOf([...strandsOf(a, 0), ...strandsOf(b, 1)], rules[how]));
}

/** What two outlines have in common; never has holes. See {@link combine}. */
export function intersect(a: Outline, b: Outline): Outline[] {
  return combine(a, b, 'intersect').map(({ outer }) => outer);
}

/**
 * What two outlines cover together: one outline when they meet, else two. See {@link combine}.
 *
 * @refuses LEAVES_HOLE when they close round a gap, which `combine` would tell
 */
export function unite(a: Outline, b: Outline): Result<Outline[], HoleRefusal> {
  return withoutHoles(combine(a, b, 'unite'));
}

/**
 * What the first outline covers and the second does not. See {@link combine}.
 *
 * @refuses LEAVES_HOLE when the second lies within the first, which `combine` would tell
 */
export function subtract(a: Outline, b: Outline): Result<Outline[], HoleRefusal> {
  return withoutHoles(combine(a, b, 'subtract'));
}

export function withoutHoles(regions: readonly Region[]): Result<Outline[], HoleRefusal> {
  const holes = regions.flatMap((region) => region.holes).sort((g, h) => area(h) - area(g));
  const largest = holes[0];
  if (!largest) return ok(regions.map(({ outer }) => outer));
  return refuse({ code: 'LEAVES_HOLE', at: largest.segments[0].to, area: mm2(area(largest)) });
}

function strandsOf(outline: Outline, family: 0 | 1): Strand[] {
  return curvesOf(outline).map((curve, tag) => ({ curve, family, tag: 2 * tag + family }));
}

/** Outer rings with the holes that lie in them. */
function regionsOf({ outer, holes }: TracedRegion): Region[] {
  const rings = outer
    .map((ring) => outlineOf(ring.map(({ curve }) => curve)))
    .sort((a, b) => area(b) - area(a));
  const owned = rings.map((): Outline[] => []);
  for (const hole of holes) {
    const ring = outlineOf(hole.map(({ curve }) => curve));
    // The smallest outer ring round a point of the hole owns it; a shared corner counts as round.
    const owner = rings.findLastIndex((candidate) =>
      ring.segments.every(({ to }) => contains(candidate, to) !== 'outside'),
    );
    owned[Math.max(owner, 0)]!.push(reversed(ring));
  }
  return rings.map((ring, i) => ({ outer: ring, holes: owned[i]! }));
}
