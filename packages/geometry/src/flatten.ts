import type { Millimetre } from '@panewright/quantity';
import { type Curve, curvesOf } from './curve.ts';
import type { Outline, Point } from './outline.ts';
import { point, type Vector } from './point.ts';

/** Where the polygon may lie: corners on the arcs; nowhere inside the shape; nowhere outside it. */
export type FlattenSide = 'on' | 'outside' | 'inside';

/**
 * A polygon that stands for an outline.
 *
 * `on` puts every corner on the outline (chords). `outside` contains the shape, `inside` is contained in it: chords
 * on the arcs where they serve, tangents where they do not.
 *
 * @param tolerance the farthest any point of the polygon may lie from the outline, mm, above 0
 * @returns corners in mm, anticlockwise, starting at the outline's start, no corner repeated
 * @range anticlockwise outlines. `outside` and `inside` hold where neighbouring edges do not meet at a cusp
 *   narrower than the tolerance. A tolerance that is not above 0 throws
 * @source rise of a chord r (1 - cos(step / 2)), of a tangent r (1 / cos(step / 2) - 1)
 */
export function flatten(outline: Outline, tolerance: Millimetre, side: FlattenSide = 'on'): Point[] {
  if (!(tolerance > 0)) throw new RangeError(`flatten: the tolerance must be above 0, it is ${tolerance}`);
  return flattened(curvesOf(outline), tolerance, side).map(({ x, y }) => point(x, y));
}

/** Corners of the polygon that stands for closed curves, from the first curve's start. */
export function flattened(curves: readonly Curve[], tolerance: number, side: FlattenSide = 'on'): Vector[] {
  const corners: Vector[] = [];
  for (const c of curves) {
    corners.push({ x: c.ax, y: c.ay });
    if (c.bulge === 0) continue;
    const tangent = side !== 'on' && (side === 'outside') === c.bulge > 0;
    if (tangent) pushTangents(corners, c, tolerance);
    else pushChords(corners, c, tolerance);
  }
  return corners;
}

function pushChords(corners: Vector[], c: Curve, tolerance: number): void {
  const most = 2 * Math.acos(Math.max(1 - tolerance / c.r, Math.SQRT1_2));
  const steps = Math.max(1, Math.ceil(Math.abs(c.sweep) / most));
  for (let k = 1; k < steps; k++) corners.push(onCircle(c, k / steps, c.r));
}

function pushTangents(corners: Vector[], c: Curve, tolerance: number): void {
  const most = 2 * Math.acos(Math.max(1 / (1 + tolerance / c.r), Math.SQRT1_2));
  const steps = Math.max(1, Math.ceil(Math.abs(c.sweep) / most));
  const radius = c.r / Math.cos(c.sweep / steps / 2);
  for (let k = 0; k < steps; k++) corners.push(onCircle(c, (k + 0.5) / steps, radius));
}

function onCircle(c: Curve, t: number, radius: number): Vector {
  const angle = c.start + t * c.sweep;
  return { x: c.cx + radius * Math.cos(angle), y: c.cy + radius * Math.sin(angle) };
}
