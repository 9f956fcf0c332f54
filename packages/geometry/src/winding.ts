import type { Curve } from './curve.ts';
import type { Vector } from './point.ts';

/** How often closed curves go round a point, anticlockwise positive. On the curve itself either side may be given. */
export function windingAbout(curves: readonly Curve[], p: Vector): number {
  let sum = 0;
  for (const c of curves) sum += chordCrossing(c, p) + capWinding(c, p);
  return sum;
}

/** What the chord adds to the count of a ray from `p` towards +x: 1 rising, -1 falling, 0 not met. */
export function chordCrossing(c: Curve, p: Vector): number {
  const rising = c.ay <= p.y;
  if (rising === c.by <= p.y) return 0;
  const side = (c.bx - c.ax) * (p.y - c.ay) - (p.x - c.ax) * (c.by - c.ay);
  if (rising) return side > 0 ? 1 : 0;
  return side < 0 ? -1 : 0;
}

/** 1 or -1 when `p` lies between an arc and its chord, with the sign of the bulge; else 0. */
export function capWinding(c: Curve, p: Vector): number {
  if (c.bulge === 0) return 0;
  const dx = p.x - c.cx;
  const dy = p.y - c.cy;
  if (dx * dx + dy * dy >= c.r * c.r) return 0;
  if (isLeftOfChord(c, p) === c.bulge > 0) return 0;
  return c.bulge > 0 ? 1 : -1;
}

/** Ties fall as in {@link chordCrossing}: a point on the chord counts as a hair to the east, then north, of it. */
function isLeftOfChord(c: Curve, p: Vector): boolean {
  const side = (c.bx - c.ax) * (p.y - c.ay) - (p.x - c.ax) * (c.by - c.ay);
  if (side !== 0) return side > 0;
  return c.ay === c.by ? c.bx > c.ax : c.by < c.ay;
}
