import type { Outline, Segment } from '@panewright/geometry';
import { mm, ok, type Result, radian, refuse } from '@panewright/quantity';
import { interiorAngle, type Pair, type Quadrilateral, sideLength } from './quadrilateral.ts';
import { CORNERS, SIDES, type TapeRefusal } from './tapeSurvey.ts';

/** A straight this short between two roundings is none. */
const NO_STRAIGHT = 1e-9;

/**
 * The outline of a convex four-sided figure with tangent arcs in its corners, anticlockwise from the bottom side.
 *
 * @accuracy exact to rounding; arcs are tangent to both sides
 * @refuses TAPE_NOT_CONVEX, TAPE_RADIUS_NOT_POSITIVE, TAPE_RADII_TOO_LARGE when two roundings overlap on a side
 */
export function roundedOutline(shape: Quadrilateral): Result<Outline, TapeRefusal> {
  const angles = CORNERS.map((_, k) => interiorAngle(shape, k));
  for (const [k, corner] of CORNERS.entries()) {
    const angle = angles[k]!;
    if (!(angle > 0 && angle < Math.PI))
      return refuse({ code: 'TAPE_NOT_CONVEX', corner, angle: radian(angle) });
    const radius = shape.radii[k]!;
    if (!(radius >= 0)) return refuse({ code: 'TAPE_RADIUS_NOT_POSITIVE', corner, radius: mm(radius) });
  }
  const setback = angles.map((angle, k) => shape.radii[k]! / Math.tan(angle / 2));
  for (const [k, side] of SIDES.entries()) {
    const taken = mm(setback[k]! + setback[(k + 1) % 4]!);
    const length = mm(sideLength(shape, k));
    if (taken > length + NO_STRAIGHT) return refuse({ code: 'TAPE_RADII_TOO_LARGE', side, length, taken });
  }
  const segments: Segment[] = [];
  for (const k of SIDES.keys()) {
    const next = (k + 1) % 4;
    const straight = sideLength(shape, k) - setback[k]! - setback[next]!;
    if (straight > NO_STRAIGHT) segments.push({ kind: 'line', to: along(shape, k, -setback[next]!) });
    if (shape.radii[next] === 0) continue;
    const bulge = Math.tan((Math.PI - angles[next]!) / 4);
    segments.push({ kind: 'arc', to: along(shape, next, setback[next]!), bulge });
  }
  return ok({ segments: segments as unknown as Outline['segments'] });
}

/** The point on side k that lies `reach` from its start, or from its end when negative. */
function along({ corners }: Quadrilateral, k: number, reach: number) {
  const [from, to]: readonly [Pair, Pair] = [corners[k]!, corners[(k + 1) % 4]!];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [base, share] = reach < 0 || Object.is(reach, -0) ? [to, reach / length] : [from, reach / length];
  return { x: mm(base[0] + share * (to[0] - from[0])), y: mm(base[1] + share * (to[1] - from[1])) };
}
