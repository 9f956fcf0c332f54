import type { PlanePoint } from './planeGrid.ts';

/**
 * An unbounded line or circle with a direction of travel: it passes the point (x, y) with a heading (radians)
 * and a curvature (1/mm, anticlockwise positive, 0 for a line). Lines and wide arcs are one family.
 */
export interface Primitive extends PlanePoint {
  readonly heading: number;
  readonly curvature: number;
}

/**
 * Signed distance of a point from a primitive, mm; positive to the left of travel.
 *
 * @source elementary geometry: 2 f / (1 + sqrt(1 - 2 k f)), f = v - k (u² + v²) / 2, exact and smooth through k = 0
 */
export function offsetFrom(p: Primitive, x: number, y: number): number {
  const c = Math.cos(p.heading);
  const s = Math.sin(p.heading);
  const u = c * (x - p.x) + s * (y - p.y);
  const v = -s * (x - p.x) + c * (y - p.y);
  const f = v - (p.curvature * (u * u + v * v)) / 2;
  const root = 1 - 2 * p.curvature * f;
  return (2 * f) / (1 + Math.sqrt(Math.max(root, 0)));
}

/**
 * How far two primitives miss touching each other with the same heading, mm; 0 when tangent.
 *
 * @source oriented contact of circles: k1 k2 D²/2 + k2 D.m1 - k1 D.m2 + 1 - m1.m2 = 0, holds for lines too
 */
export function contactGap(a: Primitive, b: Primitive): number {
  const [dx, dy] = [a.x - b.x, a.y - b.y];
  const [ax, ay] = [-Math.sin(a.heading), Math.cos(a.heading)];
  const [bx, by] = [-Math.sin(b.heading), Math.cos(b.heading)];
  const form =
    (a.curvature * b.curvature * (dx * dx + dy * dy)) / 2 +
    b.curvature * (dx * ax + dy * ay) -
    a.curvature * (dx * bx + dy * by) +
    1 -
    (ax * bx + ay * by);
  const difference = b.curvature - a.curvature;
  const least = 1e-6;
  return form / (Math.abs(difference) < least ? Math.sign(difference || 1) * least : difference);
}

/** Heading of the primitive at its point nearest to (x, y), radians. */
export function headingNear(p: Primitive, x: number, y: number): number {
  if (p.curvature === 0) return p.heading;
  const cx = p.x - Math.sin(p.heading) / p.curvature;
  const cy = p.y + Math.cos(p.heading) / p.curvature;
  const sign = Math.sign(p.curvature);
  return Math.atan2(sign * (x - cx), -sign * (y - cy));
}

/** The point of the primitive nearest to (x, y). */
export function nearestOn(p: Primitive, x: number, y: number): PlanePoint {
  const d = offsetFrom(p, x, y);
  const heading = headingNear(p, x, y);
  return { x: x + d * Math.sin(heading), y: y - d * Math.cos(heading) };
}

/** Where two primitives that touch touch: equal headings, half way between their nearest points. */
export function contactPoint(a: Primitive, b: Primitive, near: PlanePoint): PlanePoint {
  // Both have heading h at contact: C_a = P + m/k_a. Direction of m from the centres, or from a line.
  const straight = a.curvature === 0 ? a : b.curvature === 0 ? b : undefined;
  if (straight) {
    const round = straight === a ? b : a;
    if (round.curvature === 0) return near;
    const m = [-Math.sin(straight.heading), Math.cos(straight.heading)] as const;
    const p = {
      x: round.x - Math.sin(round.heading) / round.curvature - m[0] / round.curvature,
      y: round.y + Math.cos(round.heading) / round.curvature - m[1] / round.curvature,
    };
    return nearestOn(straight, p.x, p.y);
  }
  const [ra, rb] = [1 / a.curvature, 1 / b.curvature];
  const ca = [a.x - Math.sin(a.heading) * ra, a.y + Math.cos(a.heading) * ra] as const;
  const cb = [b.x - Math.sin(b.heading) * rb, b.y + Math.cos(b.heading) * rb] as const;
  // C_a - C_b = m (r_a - r_b).
  const d = ra - rb;
  if (Math.abs(d) < 1e-6) return near;
  const [mx, my] = [(ca[0] - cb[0]) / d, (ca[1] - cb[1]) / d];
  const length = Math.hypot(mx, my) || 1;
  const pa = { x: ca[0] - (mx / length) * ra, y: ca[1] - (my / length) * ra };
  const pb = { x: cb[0] - (mx / length) * rb, y: cb[1] - (my / length) * rb };
  return { x: (pa.x + pb.x) / 2, y: (pa.y + pb.y) / 2 };
}

/** Where two primitives cross, the crossing nearest to a point; undefined when they do not meet. */
export function crossingPoint(a: Primitive, b: Primitive, near: PlanePoint): PlanePoint | undefined {
  let { x, y } = near;
  for (let step = 0; step < 60; step++) {
    const [da, db] = [offsetFrom(a, x, y), offsetFrom(b, x, y)];
    const [ha, hb] = [headingNear(a, x, y), headingNear(b, x, y)];
    // Move so that both offsets vanish: offset falls by (-sin h, cos h) . move.
    const det = -Math.sin(ha) * Math.cos(hb) + Math.cos(ha) * Math.sin(hb);
    if (Math.abs(det) < 1e-6) return undefined;
    const mx = (-da * Math.cos(hb) + db * Math.cos(ha)) / det;
    const my = (db * Math.sin(ha) - da * Math.sin(hb)) / det;
    x += mx;
    y += my;
    if (Math.hypot(x - near.x, y - near.y) > 400) return undefined;
    if (Math.abs(mx) + Math.abs(my) < 1e-10) return { x, y };
  }
  return undefined;
}

/** One of a primitive's three unknowns moved: 0 sideways to the left (mm), 1 heading (rad), 2 curvature (1/mm). */
export function shift(p: Primitive, unknown: number, by: number): Primitive {
  if (unknown === 0) return { ...p, x: p.x - by * Math.sin(p.heading), y: p.y + by * Math.cos(p.heading) };
  return unknown === 1 ? { ...p, heading: p.heading + by } : { ...p, curvature: p.curvature + by };
}
