import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import { area } from './area.ts';
import type { HoleRefusal } from './combine.ts';
import { curvesOf } from './curve.ts';
import { outlineOf, reversed } from './edges.ts';
import type { Outline } from './outline.ts';
import { type Corners, rawOffset } from './rawOffset.ts';
import { regionOf, type Traced } from './region.ts';

export interface OffsetOptions {
  /** How corners that open are turned: `sharp` runs the edges on until they meet, `round` puts an arc about the corner. */
  readonly corners?: 'sharp' | 'round';
  /** A sharp corner farther than this many allowances from the old corner is rounded (uneven: stepped). Default 4. */
  readonly sharpLimit?: number;
}

/** Where an edge of the result comes from: an edge of the outline, or the joint after edge `index`. */
export interface Origin {
  readonly kind: 'edge' | 'joint';
  readonly index: number;
}

export interface OffsetRing {
  readonly outline: Outline;
  /** One per segment of `outline`. */
  readonly origins: readonly Origin[];
}

export type OffsetRefusal =
  | { readonly code: 'DISTANCES_COUNT'; readonly distances: number; readonly segments: number }
  | { readonly code: 'DISTANCE_NOT_FINITE'; readonly segment: number }
  | HoleRefusal;

export type OffsetOneRefusal =
  | OffsetRefusal
  | { readonly code: 'OFFSET_VANISHES'; readonly distance: Millimetre }
  | { readonly code: 'OFFSET_SPLITS'; readonly distance: Millimetre; readonly parts: number };

/**
 * The outline moved outward (positive) or inward (negative), by one distance or one per segment. Exact: lines give
 * lines and arcs arcs about the same centre.
 *
 * Corners that open are sharp or round; corners that close are trimmed to where the edges cross. Arcs and edges used
 * up disappear and their neighbours meet. With one distance for all, the result is every point within it (`round`).
 *
 * Where neighbours have different distances:
 * - at a corner, each edge is cut or run on, along its own line or circle, to where the two meet; if that is farther
 *   off than `sharpLimit` allowances, or nowhere, a straight step joins them;
 * - a run of arcs of one distance, tangent to a line at either end (a rounded corner), keeps its own moved radii and
 *   shifts bodily until it is tangent to both moved lines again; a half-round end between parallel lines takes the
 *   radius the lines leave it, and its crown its own distance; arcs with no radius left give way to a sharp corner;
 * - any other tangent joint gets a straight step, square to the edge.
 *
 * @param distances mm
 * @returns rings, largest first; empty when nothing is left
 * @range anticlockwise outlines that do not cross themselves. Where strips of opposite sign overlap, outward wins
 * @accuracy corners within 1e-6 mm; a joint that is smooth but for rounding (under 1e-3 rad, a gap under 0.002 mm) is
 *   closed at the middle of its gap, up to 0.001 mm off; slivers thinner than about 4e-6 mm are left out
 * @refuses DISTANCES_COUNT, DISTANCE_NOT_FINITE, LEAVES_HOLE (an outward offset closes round a gap)
 * @source union of swept strips by winding number: sources.md#chen-mcmains-2005; areas by Steiner's formula
 */
export function offset(
  outline: Outline,
  distances: Millimetre | readonly Millimetre[],
  options: OffsetOptions = {},
): Result<Outline[], OffsetRefusal> {
  const rings = offsetTraced(outline, distances, options);
  return rings.ok ? ok(rings.value.map((ring) => ring.outline)) : rings;
}

/**
 * As `offset`, with the origin of each segment, so that what is known of an edge (its finish, its sew line) can follow it.
 *
 * @refuses as `offset`
 * @source as `offset`
 */
export function offsetTraced(
  outline: Outline,
  distances: Millimetre | readonly Millimetre[],
  options: OffsetOptions = {},
): Result<OffsetRing[], OffsetRefusal> {
  const n = outline.segments.length;
  const each = typeof distances === 'number' ? outline.segments.map(() => distances) : distances;
  if (each.length !== n) return refuse({ code: 'DISTANCES_COUNT', distances: each.length, segments: n });
  const bad = each.findIndex((distance) => !Number.isFinite(distance));
  if (bad >= 0) return refuse({ code: 'DISTANCE_NOT_FINITE', segment: bad });
  const { corners = 'sharp', sharpLimit = 4 } = options;
  const how: Corners = { sharp: corners === 'sharp', limit: sharpLimit };
  const { outer, holes } = regionOf(rawOffset(curvesOf(outline), each, how), (winds) => winds > 0);
  if (holes.length > 0) return refuse(largestHole(holes));
  return ok(outer.map(ringOf).sort((a, b) => area(b.outline) - area(a.outline)));
}

/**
 * As `offset`, for when one ring is needed.
 *
 * @refuses what `offset` refuses; OFFSET_VANISHES, OFFSET_SPLITS
 * @source as `offset`
 */
export function offsetOne(
  outline: Outline,
  distances: Millimetre | readonly Millimetre[],
  options: OffsetOptions = {},
): Result<Outline, OffsetOneRefusal> {
  const rings = offset(outline, distances, options);
  if (!rings.ok) return rings;
  const [ring, ...others] = rings.value;
  const distance = mm(typeof distances === 'number' ? distances : Math.min(...distances));
  if (!ring) return refuse({ code: 'OFFSET_VANISHES', distance });
  if (others.length > 0) return refuse({ code: 'OFFSET_SPLITS', distance, parts: rings.value.length });
  return ok(ring);
}

function ringOf(ring: readonly Traced[]): OffsetRing {
  return {
    outline: outlineOf(ring.map(({ curve }) => curve)),
    origins: ring.map(({ tag }) => ({ kind: tag % 2 === 0 ? 'edge' : 'joint', index: Math.floor(tag / 2) })),
  };
}

function largestHole(holes: readonly (readonly Traced[])[]): HoleRefusal {
  const rings = holes.map((ring) => reversed(outlineOf(ring.map(({ curve }) => curve))));
  const largest = rings.reduce((most, ring) => (area(ring) > area(most) ? ring : most));
  return { code: 'LEAVES_HOLE', at: largest.segments[0].to, area: area(largest) };
}
