import { leastSquares, type Turn } from './alignPoints.ts';
import type { Curve } from './curve.ts';
import { evenlySampled } from './deviation.ts';
import type { Vector } from './point.ts';

const STEPS = 96;
const TURNS = 24;

/**
 * Turns worth trying. Three sources, so that one may fail: the corners of the shapes paired in every cyclic order, points at
 * equal steps along them likewise, and turns all round about the middles.
 */
export function starts(
  first: readonly Curve[],
  second: readonly Curve[],
  middles: readonly [Vector, Vector],
): Turn[] {
  const found: Turn[] = [];
  if (first.length === second.length && first.length < 64) {
    const [a, b] = [first, second].map((curves) => curves.map(({ bx, by }) => ({ x: bx, y: by })));
    found.push(...dips(a!, b!, 6));
  }
  found.push(...dips(evenlySampled(first, STEPS), evenlySampled(second, STEPS), 8));
  const [p, q] = middles;
  for (let k = 0; k < TURNS; k++) {
    const angle = (2 * Math.PI * k) / TURNS;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    found.push({ angle, x: q.x - cos * p.x + sin * p.y, y: q.y - sin * p.x - cos * p.y });
  }
  return found;
}

/** Least-squares turns for those cyclic pairings that beat both their neighbours, the best few. */
function dips(from: readonly Vector[], to: readonly Vector[], most: number): Turn[] {
  const all = from.map((_, lag) => leastSquares(from, to, lag));
  const n = all.length;
  return all
    .filter(
      (fit, i) => fit.squares <= all[(i + 1) % n]!.squares && fit.squares <= all[(i + n - 1) % n]!.squares,
    )
    .sort((p, q) => p.squares - q.squares)
    .slice(0, most);
}
