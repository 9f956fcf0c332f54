import { ok, type Result, refuse } from '@panewright/quantity';
import type { Point } from './outline.ts';
import { point } from './point.ts';

/** Four points in order round a quadrilateral, either way. */
export type Corners = readonly [Point, Point, Point, Point];

/** A projective map of the plane: the rows of its 3 × 3 matrix. Straight lines stay straight. */
export type Perspective = readonly [number, number, number, number, number, number, number, number, number];

export type PerspectiveRefusal = { readonly code: 'CORNERS_NOT_CONVEX'; readonly of: 'from' | 'to' };

/**
 * The projective map that takes four points to four others.
 *
 * @range corners in any unit; both quadrilaterals convex, no three corners in a line
 * @accuracy exact but for rounding: the corners themselves come back within 1e-9 of their size
 * @refuses CORNERS_NOT_CONVEX
 * @source sources.md#heckbert-1989, unit square to quadrilateral and back
 */
export function perspectiveBetween(from: Corners, to: Corners): Result<Perspective, PerspectiveRefusal> {
  if (!isConvex(from)) return refuse({ code: 'CORNERS_NOT_CONVEX', of: 'from' });
  if (!isConvex(to)) return refuse({ code: 'CORNERS_NOT_CONVEX', of: 'to' });
  return ok(times(fromSquare(to), adjugate(fromSquare(from))));
}

/** Where a point goes. @source homogeneous coordinates: sources.md#heckbert-1989 */
export function project(map: Perspective, { x, y }: Point): Point {
  const [a, b, c, d, e, f, g, h, i] = map;
  const w = g * x + h * y + i;
  return point((a * x + b * y + c) / w, (d * x + e * y + f) / w);
}

/** Least turn at a corner, as a share of the product of its sides: about a twentieth of a degree. */
const LEAST_TURN = 1e-3;

function isConvex(corners: Corners): boolean {
  const turns = corners.map((at, index) => {
    const next = corners[(index + 1) % 4]!;
    const after = corners[(index + 2) % 4]!;
    const [ux, uy, vx, vy] = [next.x - at.x, next.y - at.y, after.x - next.x, after.y - next.y];
    return (ux * vy - uy * vx) / (Math.hypot(ux, uy) * Math.hypot(vx, vy));
  });
  return turns.every((turn) => turn > LEAST_TURN) || turns.every((turn) => turn < -LEAST_TURN);
}

/** Carries (0,0), (1,0), (1,1), (0,1) to the corners. */
function fromSquare([p0, p1, p2, p3]: Corners): Perspective {
  const [dx1, dx2, sx] = [p1.x - p2.x, p3.x - p2.x, p0.x - p1.x + p2.x - p3.x];
  const [dy1, dy2, sy] = [p1.y - p2.y, p3.y - p2.y, p0.y - p1.y + p2.y - p3.y];
  const under = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / under;
  const h = (dx1 * sy - sx * dy1) / under;
  return [
    ...([p1.x - p0.x + g * p1.x, p3.x - p0.x + h * p3.x, p0.x] as const),
    ...([p1.y - p0.y + g * p1.y, p3.y - p0.y + h * p3.y, p0.y] as const),
    ...([g, h, 1] as const),
  ];
}

/** The inverse but for a factor, which a projective map does not feel. */
function adjugate([a, b, c, d, e, f, g, h, i]: Perspective): Perspective {
  return [
    ...([e * i - f * h, c * h - b * i, b * f - c * e] as const),
    ...([f * g - d * i, a * i - c * g, c * d - a * f] as const),
    ...([d * h - e * g, b * g - a * h, a * e - b * d] as const),
  ];
}

function times(left: Perspective, right: Perspective): Perspective {
  const at = (row: number, column: number) =>
    [0, 1, 2].reduce((sum, k) => sum + left[3 * row + k]! * right[3 * k + column]!, 0);
  return [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => at(row, column))) as unknown as Perspective;
}
