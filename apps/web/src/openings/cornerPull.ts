import type { XY } from '../drawing/view.ts';

/** A corner that can be pulled: where its sides would meet, the way into the opening, and what a radius means there. */
export interface CornerPull {
  readonly sharp: XY;
  /** Unit vector along the bisector, into the opening. */
  readonly inward: XY;
  /** From the sharp corner to the middle of its rounding, for a radius of 1. */
  readonly depth: number;
  /** The largest radius that leaves half of each side next to it. */
  readonly most: number;
}

/** The corner at a place of a ring of sharp corners. Elementary geometry of a circle that touches two lines. */
export function cornerPull(corners: readonly XY[], index: number): CornerPull {
  const count = corners.length;
  const sharp = corners[index]!;
  const ways = [corners[(index + count - 1) % count]!, corners[(index + 1) % count]!].map((other) => {
    const length = Math.hypot(other.x - sharp.x, other.y - sharp.y) || 1;
    return { x: (other.x - sharp.x) / length, y: (other.y - sharp.y) / length, length };
  });
  const [a, b] = ways as [(typeof ways)[number], (typeof ways)[number]];
  const half = Math.acos(Math.min(1, Math.max(-1, a.x * b.x + a.y * b.y))) / 2;
  const along = Math.hypot(a.x + b.x, a.y + b.y) || 1;
  return {
    sharp,
    inward: { x: (a.x + b.x) / along, y: (a.y + b.y) / along },
    depth: 1 / Math.sin(half) - 1,
    most: (Math.min(a.length, b.length) / 2) * Math.tan(half),
  };
}

/** The middle of the rounding. */
export const handleAt = ({ sharp, inward, depth }: CornerPull, radius: number): XY => ({
  x: sharp.x + inward.x * depth * radius,
  y: sharp.y + inward.y * depth * radius,
});

/** The radius whose rounding's middle lies nearest a place, within what the corner allows. */
export function radiusAt({ sharp, inward, depth, most }: CornerPull, at: XY): number {
  const off = (at.x - sharp.x) * inward.x + (at.y - sharp.y) * inward.y;
  return Math.min(most, Math.max(0, off / depth));
}
