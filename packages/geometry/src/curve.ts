import type { Outline } from './outline.ts';
import type { Vector } from './point.ts';

/** One edge as bare numbers, for the kernels. A line has `bulge` 0 and no centre; angles in radians, lengths in mm. */
export interface Curve {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly bulge: number;
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  /** Direction from the centre to the first point. */
  readonly start: number;
  /** Signed: anticlockwise positive. */
  readonly sweep: number;
  readonly length: number;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function lineCurve(a: Vector, b: Vector): Curve {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return { ax: a.x, ay: a.y, bx: b.x, by: b.y, bulge: 0, cx: 0, cy: 0, r: 0, start: 0, sweep: 0, length };
}

/** The arc from `a` to `b`; a bulge of 0 gives the line. */
export function bulgeCurve(a: Vector, b: Vector, bulge: number): Curve {
  if (bulge === 0) return lineCurve(a, b);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const cx = (a.x + b.x) / 2 - dy * lift;
  const cy = (a.y + b.y) / 2 + dx * lift;
  const r = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const sweep = 4 * Math.atan(bulge);
  const start = Math.atan2(a.y - cy, a.x - cx);
  return { ax: a.x, ay: a.y, bx: b.x, by: b.y, bulge, cx, cy, r, start, sweep, length: r * Math.abs(sweep) };
}

/** The arc about a known centre. The ends are taken as given, so neighbours meet exactly. */
export function arcCurve(c: Vector, r: number, a: Vector, b: Vector, sweep: number): Curve {
  const start = Math.atan2(a.y - c.y, a.x - c.x);
  const bulge = Math.tan(sweep / 4);
  return {
    ...{ ax: a.x, ay: a.y, bx: b.x, by: b.y, bulge, cx: c.x, cy: c.y, r, start, sweep },
    length: r * Math.abs(sweep),
  };
}

export function curvesOf(outline: Outline): readonly Curve[] {
  const known = curves.get(outline);
  if (known) return known;
  let from = outline.segments.at(-1)!.to;
  const made = outline.segments.map((segment) => {
    const curve = bulgeCurve(from, segment.to, segment.kind === 'arc' ? segment.bulge : 0);
    from = segment.to;
    return curve;
  });
  curves.set(outline, made);
  return made;
}

/** An outline never changes and is asked of again and again. */
const curves = new WeakMap<Outline, readonly Curve[]>();

/** The point a fraction `t` (0 to 1) along the edge. Its ends are returned as stored. */
export function pointOn(c: Curve, t: number): Vector {
  if (t <= 0) return { x: c.ax, y: c.ay };
  if (t >= 1) return { x: c.bx, y: c.by };
  if (c.bulge === 0) return { x: c.ax + t * (c.bx - c.ax), y: c.ay + t * (c.by - c.ay) };
  const angle = c.start + t * c.sweep;
  return { x: c.cx + c.r * Math.cos(angle), y: c.cy + c.r * Math.sin(angle) };
}

/** Unit direction of travel at the fraction `t`. */
export function directionOn(c: Curve, t: number): Vector {
  if (c.bulge === 0) return { x: (c.bx - c.ax) / c.length, y: (c.by - c.ay) / c.length };
  const angle = c.start + t * c.sweep;
  const turn = Math.sign(c.sweep);
  return { x: -turn * Math.sin(angle), y: turn * Math.cos(angle) };
}

/** Where the direction `angle` from the centre falls on an arc, as a fraction; outside 0..1 when it misses it. */
export function fractionAtAngle(c: Curve, angle: number): number {
  const along = (angle - c.start) / c.sweep;
  const period = (2 * Math.PI) / Math.abs(c.sweep);
  // The representative nearest the middle of the arc: a miss then lands on the nearer side.
  return along - period * Math.round((along - 0.5) / period);
}

/** Fraction along the edge of the point of it nearest to `p`, clamped to the ends, which is the nearest point. */
export function nearestFraction(c: Curve, p: Vector): number {
  if (c.bulge === 0) {
    const dx = c.bx - c.ax;
    const dy = c.by - c.ay;
    const t = ((p.x - c.ax) * dx + (p.y - c.ay) * dy) / (dx * dx + dy * dy);
    return Math.min(Math.max(t, 0), 1);
  }
  const t = fractionAtAngle(c, Math.atan2(p.y - c.cy, p.x - c.cx));
  if (t >= 0 && t <= 1) return t;
  return Math.hypot(p.x - c.ax, p.y - c.ay) <= Math.hypot(p.x - c.bx, p.y - c.by) ? 0 : 1;
}

/** Distance of a point from an edge. The busiest function here: no angles, and square roots rather than `hypot`. */
export function distanceTo(c: Curve, p: Vector): number {
  if (c.bulge === 0) {
    const [dx, dy] = [c.bx - c.ax, c.by - c.ay];
    const along = (p.x - c.ax) * dx + (p.y - c.ay) * dy;
    if (along > 0 && along < c.length * c.length)
      return Math.abs(dx * (p.y - c.ay) - dy * (p.x - c.ax)) / c.length;
    return Math.sqrt(nearerEnd(c, p));
  }
  const [x, y] = [p.x - c.cx, p.y - c.cy];
  if (isInSector(c, x, y)) return Math.abs(Math.sqrt(x * x + y * y) - c.r);
  return Math.sqrt(nearerEnd(c, p));
}

/** Squared distance to the nearer end. */
function nearerEnd(c: Curve, p: Vector): number {
  const [ax, ay, bx, by] = [p.x - c.ax, p.y - c.ay, p.x - c.bx, p.y - c.by];
  return Math.min(ax * ax + ay * ay, bx * bx + by * by);
}

/** Whether the direction (x, y) from the centre meets the arc. */
function isInSector(c: Curve, x: number, y: number): boolean {
  const turn = c.bulge > 0 ? 1 : -1;
  const pastStart = turn * ((c.ax - c.cx) * y - (c.ay - c.cy) * x) >= 0;
  const beforeEnd = turn * (x * (c.by - c.cy) - y * (c.bx - c.cx)) >= 0;
  // Beyond a half turn the sector is what its complement is not.
  return Math.abs(c.bulge) <= 1 ? pastStart && beforeEnd : pastStart || beforeEnd;
}

/** Box of the edge, arcs included exactly. */
export function boxOf(c: Curve): Box {
  let minX = Math.min(c.ax, c.bx);
  let maxX = Math.max(c.ax, c.bx);
  let minY = Math.min(c.ay, c.by);
  let maxY = Math.max(c.ay, c.by);
  if (c.bulge !== 0) {
    if (reaches(c, 0)) maxX = Math.max(maxX, c.cx + c.r);
    if (reaches(c, Math.PI)) minX = Math.min(minX, c.cx - c.r);
    if (reaches(c, Math.PI / 2)) maxY = Math.max(maxY, c.cy + c.r);
    if (reaches(c, -Math.PI / 2)) minY = Math.min(minY, c.cy - c.r);
  }
  return { minX, minY, maxX, maxY };
}

function reaches(c: Curve, angle: number): boolean {
  const t = fractionAtAngle(c, angle);
  return t > 0 && t < 1;
}

export function reversedCurve(c: Curve): Curve {
  return {
    ...{ ax: c.bx, ay: c.by, bx: c.ax, by: c.ay, bulge: -c.bulge, cx: c.cx, cy: c.cy, r: c.r },
    ...{ start: c.start + c.sweep, sweep: -c.sweep, length: c.length },
  };
}

/** The part between two fractions, with its ends given so that they match what they meet. */
export function partOf(c: Curve, t0: number, t1: number, a: Vector, b: Vector): Curve {
  if (c.bulge === 0) return lineCurve(a, b);
  return arcCurve({ x: c.cx, y: c.cy }, c.r, a, b, (t1 - t0) * c.sweep);
}

/** Signed curvature, anticlockwise positive, in 1/mm. */
export const bendOf = (c: Curve) => (c.bulge === 0 ? 0 : Math.sign(c.sweep) / c.r);
