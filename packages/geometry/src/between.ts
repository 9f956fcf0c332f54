import { type Millimetre, mm, type Radian } from '@panewright/quantity';
import { bounds } from './bounds.ts';
import { combine, intersect } from './combine.ts';
import { contactsOf } from './contacts.ts';
import { type Box, boxOf, bulgeCurve, type Curve, curvesOf, distanceTo, pointOn } from './curve.ts';
import type { Edge } from './edges.ts';
import type { Outline, Point } from './outline.ts';
import { point, type Vector } from './point.ts';
import { SAME_POINT } from './tolerance.ts';
import { windingAbout } from './winding.ts';

/**
 * Points two edges share: crossings, touches, and the ends of a stretch they share.
 *
 * @returns mm
 * @accuracy 1e-6 mm; where edges part by less than that, one point stands for all
 * @source crossings of lines and circles in closed form
 */
export function crossingsOf(
  a: Pick<Edge, 'from' | 'to' | 'bulge'>,
  b: Pick<Edge, 'from' | 'to' | 'bulge'>,
): Point[] {
  const [c, d] = [bulgeCurve(a.from, a.to, a.bulge), bulgeCurve(b.from, b.to, b.bulge)];
  return contactsOf(c, d, SAME_POINT).map(({ x, y }) => point(x, y));
}

/**
 * Least distance between the lines of two outlines: 0 where they meet; for one inside the other, the least gap.
 *
 * @returns mm
 * @source least of ends to edges, centres' feet, and the line of centres
 */
export function distanceBetween(a: Outline, b: Outline): Millimetre {
  const first = curvesOf(a);
  const second = curvesOf(b).map((d) => ({ d, box: boxOf(d) }));
  let least = Infinity;
  for (const c of first) {
    const box = boxOf(c);
    for (const other of second)
      if (apart(box, other.box) < least) least = Math.min(least, edgeDistance(c, other.d));
  }
  return mm(least);
}

function apart(a: Box, b: Box): number {
  const dx = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const dy = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return Math.hypot(dx, dy);
}

function edgeDistance(c: Curve, d: Curve): number {
  if (contactsOf(c, d, SAME_POINT).length > 0) return 0;
  const onC: Vector[] = [pointOn(c, 0), pointOn(c, 1), ...facing(c, d)];
  const onD: Vector[] = [pointOn(d, 0), pointOn(d, 1), ...facing(d, c)];
  return Math.min(...onC.map((p) => distanceTo(d, p)), ...onD.map((p) => distanceTo(c, p)));
}

/** Points of `c` that may be nearest to the circle of `d`: where the normal of `c` passes through the centre. */
function facing(c: Curve, d: Curve): Vector[] {
  if (d.bulge === 0) return [];
  const centre = { x: d.cx, y: d.cy };
  if (c.bulge !== 0) {
    const away = Math.hypot(centre.x - c.cx, centre.y - c.cy);
    if (away === 0) return [];
    const k = c.r / away;
    const [x, y] = [(centre.x - c.cx) * k, (centre.y - c.cy) * k];
    return [
      { x: c.cx + x, y: c.cy + y },
      { x: c.cx - x, y: c.cy - y },
    ].filter((p) => distanceTo(c, p) < SAME_POINT);
  }
  const t = ((centre.x - c.ax) * (c.bx - c.ax) + (centre.y - c.ay) * (c.by - c.ay)) / (c.length * c.length);
  return t > 0 && t < 1 ? [pointOn(c, t)] : [];
}

/** Whether two shapes share any point, edges included. */
export function intersects(a: Outline, b: Outline): boolean {
  if (distanceBetween(a, b) === 0) return true;
  return (
    windingAbout(curvesOf(a), b.segments[0].to) !== 0 || windingAbout(curvesOf(b), a.segments[0].to) !== 0
  );
}

/** Whether the second outline lies in the first. They may touch, or be equal; slivers of 4e-6 mm do not count. */
export function containsOutline(outer: Outline, inner: Outline): boolean {
  return combine(inner, outer, 'subtract').length === 0;
}

/**
 * The part of an outline on the left of a line.
 *
 * @param direction of the line through `through`, radians anticlockwise from x
 * @returns parts, largest first; empty when all of it lies on the right
 * @accuracy as `intersect`
 * @source intersection with a rectangle larger than the outline
 */
export function leftOf(outline: Outline, through: Point, direction: Radian): Outline[] {
  const { minX, minY, maxX, maxY } = bounds(outline);
  const far = 1 + Math.hypot(maxX - minX, maxY - minY) + Math.hypot(through.x - minX, through.y - minY);
  const [ux, uy] = [Math.cos(direction) * far, Math.sin(direction) * far];
  const corner = (along: number, left: number) =>
    ({
      kind: 'line',
      to: point(through.x + along * ux - left * uy, through.y + along * uy + left * ux),
    }) as const;
  return intersect(outline, { segments: [corner(1, 0), corner(1, 1), corner(-1, 1), corner(-1, 0)] });
}
