import { type Millimetre, mm, ok, type Result, radian, refuse } from '@panewright/quantity';
import type { Point } from './outline.ts';
import { point, type Vector } from './point.ts';
import type { Rigid } from './transform.ts';

export type AlignPointsRefusal =
  | { readonly code: 'POINT_COUNTS_DIFFER'; readonly from: number; readonly to: number }
  | { readonly code: 'TOO_FEW_POINTS'; readonly points: number; readonly least: 2 };

export interface PointAlignment {
  readonly motion: Rigid;
  /** Root mean square of the distances left. */
  readonly rms: Millimetre;
}

/**
 * The turn and shift that bring points nearest to their partners in the least-squares sense, no mirroring.
 *
 * @param from mm; partner i of `from` is `to[i]`
 * @refuses POINT_COUNTS_DIFFER, TOO_FEW_POINTS
 * @accuracy closed form
 * @source in the plane the singular value decomposition reduces to one angle: sources.md#kabsch-1976
 */
export function alignPoints(
  from: readonly Point[],
  to: readonly Point[],
): Result<PointAlignment, AlignPointsRefusal> {
  if (from.length !== to.length)
    return refuse({ code: 'POINT_COUNTS_DIFFER', from: from.length, to: to.length });
  if (from.length < 2) return refuse({ code: 'TOO_FEW_POINTS', points: from.length, least: 2 });
  const { angle, x, y, squares } = leastSquares(from, to, 0);
  const motion = { angle: radian(angle), shift: point(x, y), mirrored: false };
  return ok({ motion, rms: mm(Math.sqrt(squares / from.length)) });
}

/** A turn by `angle` about the origin, then a shift. */
export interface Turn {
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

/** Least-squares turn of `from[i]` onto `to[i + lag]`, taken round, with the sum of squares left. */
export function leastSquares(
  from: readonly Vector[],
  to: readonly Vector[],
  lag: number,
): Turn & { readonly squares: number } {
  const n = from.length;
  const [p, q] = [mean(from), mean(to)];
  let dot = 0;
  let cross = 0;
  let spread = 0;
  for (let i = 0; i < n; i++) {
    const [a, b] = [from[i]!, to[(i + lag) % n]!];
    const [ax, ay, bx, by] = [a.x - p.x, a.y - p.y, b.x - q.x, b.y - q.y];
    dot += ax * bx + ay * by;
    cross += ax * by - ay * bx;
    spread += ax * ax + ay * ay + bx * bx + by * by;
  }
  const angle = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    ...{ angle, x: q.x - cos * p.x + sin * p.y, y: q.y - sin * p.x - cos * p.y },
    squares: Math.max(0, spread - 2 * Math.hypot(dot, cross)),
  };
}

function mean(points: readonly Vector[]): Vector {
  let x = 0;
  let y = 0;
  for (const p of points) {
    x += p.x;
    y += p.y;
  }
  return { x: x / points.length, y: y / points.length };
}
