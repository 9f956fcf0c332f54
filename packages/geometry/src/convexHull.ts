import type { Millimetre } from '@panewright/quantity';
import { curvesOf } from './curve.ts';
import { flattened } from './flatten.ts';
import type { Outline, Point } from './outline.ts';
import { point, type Vector } from './point.ts';

/**
 * Corners of the convex hull of an outline flattened within a tolerance.
 *
 * @param tolerance mm; the hull lies within the true one and nowhere farther than this from it
 * @returns anticlockwise corners, from the leftmost (lowest of those)
 * @source monotone chain: sources.md#andrew-1979
 */
export function convexHull(outline: Outline, tolerance: Millimetre): Point[] {
  return hullOf(flattened(curvesOf(outline), tolerance)).map(({ x, y }) => point(x, y));
}

export function hullOf(points: readonly Vector[]): Vector[] {
  const sorted = points.toSorted((p, q) => p.x - q.x || p.y - q.y);
  const lower = chain(sorted);
  const upper = chain(sorted.toReversed());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(points: readonly Vector[]): Vector[] {
  const kept: Vector[] = [];
  for (const p of points) {
    while (kept.length > 1 && cross(kept.at(-2)!, kept.at(-1)!, p) <= 0) kept.pop();
    kept.push(p);
  }
  return kept;
}

const cross = (o: Vector, p: Vector, q: Vector) => (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x);
