import { type Millimetre, mm, type Radian, radian } from '@panewright/quantity';
import { boxOf, type Curve, curvesOf, fractionAtAngle } from './curve.ts';
import { flattened } from './flatten.ts';
import type { Outline } from './outline.ts';

/** A box with sides along x and y, in mm. */
export interface Bounds {
  readonly minX: Millimetre;
  readonly minY: Millimetre;
  readonly maxX: Millimetre;
  readonly maxY: Millimetre;
  readonly width: Millimetre;
  readonly height: Millimetre;
}

/**
 * The smallest upright box around an outline, arcs included exactly.
 *
 * @returns mm
 * @source extreme points of a circle at the quarter turns
 */
export function bounds(outline: Outline): Bounds {
  const all = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const curve of curvesOf(outline)) {
    const box = boxOf(curve);
    all.minX = Math.min(all.minX, box.minX);
    all.minY = Math.min(all.minY, box.minY);
    all.maxX = Math.max(all.maxX, box.maxX);
    all.maxY = Math.max(all.maxY, box.maxY);
  }
  const { minX, minY, maxX, maxY } = all;
  return {
    ...{ minX: mm(minX), minY: mm(minY), maxX: mm(maxX), maxY: mm(maxY) },
    ...{ width: mm(maxX - minX), height: mm(maxY - minY) },
  };
}

/**
 * Box of the outline after turning it anticlockwise by `angle` about the origin: what it needs on a roll when laid
 * at that angle.
 *
 * @param angle radians
 * @returns mm, in the turned axes
 * @source support of a circle in a direction is its centre's plus its radius
 */
export function boundsAt(outline: Outline, angle: Radian): Bounds {
  const curves = curvesOf(outline);
  // A point turned by `angle` has x' = p · (cos, -sin) and y' = p · (sin, cos).
  const x = [Math.cos(angle), -Math.sin(angle)] as const;
  const y = [Math.sin(angle), Math.cos(angle)] as const;
  const maxX = support(curves, x[0], x[1]);
  const minX = -support(curves, -x[0], -x[1]);
  const maxY = support(curves, y[0], y[1]);
  const minY = -support(curves, -y[0], -y[1]);
  return {
    ...{ minX: mm(minX), minY: mm(minY), maxX: mm(maxX), maxY: mm(maxY) },
    ...{ width: mm(maxX - minX), height: mm(maxY - minY) },
  };
}

/** Farthest reach of the curves in the unit direction (ux, uy). */
function support(curves: readonly Curve[], ux: number, uy: number): number {
  let far = -Infinity;
  for (const c of curves) {
    far = Math.max(far, c.bx * ux + c.by * uy);
    if (c.bulge === 0) continue;
    const t = fractionAtAngle(c, Math.atan2(uy, ux));
    if (t > 0 && t < 1) far = Math.max(far, c.cx * ux + c.cy * uy + c.r);
  }
  return far;
}

/**
 * The turn at which an outline is lowest: the narrowest strip it can be cut from.
 *
 * @returns the anticlockwise turn in radians, 0 to π, and the height there in mm
 * @accuracy the least height is attained with a side of the hull flush, or between two arcs; sides are found on a
 *   flattening within 0.01 mm, so the height is within 0.02 mm of the least
 * @source sources.md#toussaint-1983
 */
export function narrowestTurn(outline: Outline): { readonly angle: Radian; readonly height: Millimetre } {
  const ring = flattened(curvesOf(outline), 0.01);
  let best = { angle: radian(0), height: boundsAt(outline, radian(0)).height };
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const angle = radian((Math.atan2(p.y - q.y, q.x - p.x) + 2 * Math.PI) % Math.PI);
    const { height } = boundsAt(outline, angle);
    if (height < best.height - 1e-9) best = { angle, height };
  });
  return best;
}
