import { type Curve, distanceTo, fractionAtAngle, nearestFraction, pointOn } from './curve.ts';
import type { Vector } from './point.ts';

/** A point two edges share, with its fraction along the first and along the second. */
export interface Contact extends Vector {
  readonly t: number;
  readonly u: number;
}

/** Curves that overlap or part by less than this only touch: a tenth of the default `same`. */
const TOUCH_SHARE = 0.1;

/**
 * Every contact of two edges. Ends that lie on the other edge (within `same`, mm) come first and are kept as they
 * are; a crossing that is only rounding noise about a contact already found is left out. Edges that run along each
 * other yield the ends of the shared stretch.
 *
 * Crossings of lines and circles are the textbook ones; the care is at tangents, where a crossing is known along the
 * curve only to the square root of the rounding error.
 */
export function contactsOf(c: Curve, d: Curve, same: number): Contact[] {
  const found: Contact[] = [];
  for (const t of [0, 1]) addEnd(found, c, d, t, same, false);
  for (const u of [0, 1]) addEnd(found, d, c, u, same, true);
  for (const p of crossings(c, d, same * TOUCH_SHARE)) {
    const t = fractionNear(c, p, same);
    const u = fractionNear(d, p, same);
    if (t === undefined || u === undefined) continue;
    if (!found.some((f) => isSameContact(c, d, f, { ...p, t, u }, same))) found.push({ ...p, t, u });
  }
  return found;
}

function addEnd(found: Contact[], c: Curve, d: Curve, t: number, same: number, swapped: boolean): void {
  const p = pointOn(c, t);
  const u = nearestFraction(d, p);
  if (distanceTo(d, p) > same) return;
  const onto = u * d.length < same ? 0 : (1 - u) * d.length < same ? 1 : u;
  const contact = swapped ? { ...p, t: onto, u: t } : { ...p, t, u: onto };
  if (!found.some((f) => Math.hypot(f.x - p.x, f.y - p.y) < same && Math.abs(f.t - contact.t) < 0.5))
    found.push(contact);
}

/** Two contacts are one when the edges stay together all the way between them. */
function isSameContact(c: Curve, d: Curve, f: Contact, g: Contact, same: number): boolean {
  if (Math.hypot(f.x - g.x, f.y - g.y) < 2 * same) return true;
  return distanceTo(d, pointOn(c, (f.t + g.t) / 2)) < same;
}

/** The fraction of a point known to lie on the edge's line or circle; undefined when past its ends. */
function fractionNear(c: Curve, p: Vector, same: number): number | undefined {
  const t =
    c.bulge === 0
      ? ((p.x - c.ax) * (c.bx - c.ax) + (p.y - c.ay) * (c.by - c.ay)) / (c.length * c.length)
      : fractionAtAngle(c, Math.atan2(p.y - c.cy, p.x - c.cx));
  const slack = same / c.length;
  return t < -slack || t > 1 + slack ? undefined : Math.min(Math.max(t, 0), 1);
}

/** Crossings of the whole lines or circles two edges lie on; one point where they touch. */
export function crossings(c: Curve, d: Curve, touch: number): Vector[] {
  if (c.bulge === 0) return d.bulge === 0 ? lineLine(c, d) : lineCircle(c, d, touch);
  return d.bulge === 0 ? lineCircle(d, c, touch) : circleCircle(c, d, touch);
}

function lineLine(c: Curve, d: Curve): Vector[] {
  const [cx, cy, dx, dy] = [c.bx - c.ax, c.by - c.ay, d.bx - d.ax, d.by - d.ay];
  const cross = cx * dy - cy * dx;
  if (Math.abs(cross) < 1e-12 * c.length * d.length) return [];
  const t = ((d.ax - c.ax) * dy - (d.ay - c.ay) * dx) / cross;
  return [{ x: c.ax + t * cx, y: c.ay + t * cy }];
}

function lineCircle(line: Curve, arc: Curve, touch: number): Vector[] {
  const ux = (line.bx - line.ax) / line.length;
  const uy = (line.by - line.ay) / line.length;
  const along = (arc.cx - line.ax) * ux + (arc.cy - line.ay) * uy;
  const off = (arc.cx - line.ax) * -uy + (arc.cy - line.ay) * ux;
  const foot = { x: arc.cx + off * uy, y: arc.cy - off * ux };
  const depth = arc.r - Math.abs(off);
  if (depth < -touch) return [];
  if (depth < touch) return [foot];
  const half = Math.sqrt(depth * (arc.r + Math.abs(off)));
  return [-half, half].map((s) => ({ x: line.ax + (along + s) * ux, y: line.ay + (along + s) * uy }));
}

/** Worked from the smaller circle: seen from a far larger one, the half chord would be rounding noise. */
function circleCircle(first: Curve, second: Curve, touch: number): Vector[] {
  const [c, d] = first.r < second.r ? [first, second] : [second, first];
  const apart = Math.hypot(d.cx - c.cx, d.cy - c.cy);
  if (apart < touch) return [];
  const ux = (d.cx - c.cx) / apart;
  const uy = (d.cy - c.cy) / apart;
  const along = ((c.r - d.r) * (c.r + d.r) + apart * apart) / (2 * apart);
  const depth = Math.min(c.r + d.r - apart, apart - Math.abs(c.r - d.r));
  if (depth < -touch) return [];
  if (depth < touch) {
    const s = along > 0 ? c.r : -c.r;
    return [{ x: c.cx + s * ux, y: c.cy + s * uy }];
  }
  const half = Math.sqrt(Math.max(0, (c.r - along) * (c.r + along)));
  return [-half, half].map((h) => ({ x: c.cx + along * ux - h * uy, y: c.cy + along * uy + h * ux }));
}
