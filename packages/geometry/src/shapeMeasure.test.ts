import {
  alignOutlines,
  area,
  circle,
  convexHull,
  leastDeviation,
  measureShape,
  moveOutline,
  type Outline,
  offset,
  point,
  type Rigid,
  roundedPolygon,
} from '@panewright/geometry';
import { mm, type Result, radian } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbersFrom, starOutline } from './testing/starOutline.ts';

const value = <T>(result: Result<T, { readonly code: string }>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};
const box = (w: number, h: number) => [point(0, 0), point(w, 0), point(w, h), point(0, h)];
const rectangle = (w: number, h: number, r = 0) => value(roundedPolygon(box(w, h), mm(r)));
const between = (a: Outline, b: Outline) => leastDeviation(measureShape(a), measureShape(b));

/** A motion at random, turned over or not. */
const motionFrom = (next: () => number): Rigid => ({
  angle: radian(6.28 * next()),
  shift: point(2000 * next(), -900 * next()),
  mirrored: next() < 0.5,
});

/** A window as a maker has it, and another of nearly or hardly its shape: corners and radii off by up to `noise`. */
function pairFrom(next: () => number): readonly [Outline, Outline] {
  const count = 3 + Math.floor(4 * next());
  const [w, h] = [300 + 900 * next(), 200 + 500 * next()];
  const noise = 20 ** (1.5 * next() - 0.5);
  const off = () => noise * (2 * next() - 1);
  const polar = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.3 * next())) / count;
    return [(w / 2) * Math.cos(angle), (h / 2) * Math.sin(angle), 5 + 25 * next()] as const;
  });
  const made = (error: () => number) =>
    value(
      roundedPolygon(
        polar.map(([x, y]) => point(x + error(), y + error())),
        polar.map(([, , r]) => mm(r + Math.abs(error() / 4))),
      ),
    );
  return [made(() => 0), moveOutline(motionFrom(next), made(off))];
}

// Oracle: the alignment itself, another method: what it reaches cannot lie below a true bound. PANEWRIGHT_RUNS tries more.
test('no alignment of windows, bays or stars ever beats the least deviation told beforehand', () => {
  const property = fc.property(fc.nat(1e6), fc.boolean(), (seed, stars) => {
    const next = numbersFrom(seed);
    const [a, b] = stars ? ([starOutline(seed, 6), starOutline(seed + 1, 6)] as const) : pairFrom(next);
    const reached = Math.min(...[false, true].map((mirrored) => alignOutlines(a, b, { mirrored }).deviation));
    expect(between(a, b)).toBeLessThanOrEqual(reached + 1e-9);
  });
  fc.assert(property, { seed: 71, numRuns: Number(process.env['PANEWRIGHT_RUNS'] ?? 20) });
});

// Oracle: where every point of the second lies within d of the first and the other way by how it was made.
test('what was moved by at most d, and then turned over or about, is never told farther apart than d', () => {
  const property = fc.property(fc.nat(1e6), (seed) => {
    const next = numbersFrom(seed);
    const [a] = pairFrom(next);
    const d = 6 * next();
    const grown = offset(a, mm(next() < 0.5 ? d : -Math.min(d, 4)));
    if (!grown.ok || grown.value.length !== 1) return;
    expect(between(a, moveOutline(motionFrom(next), grown.value[0]!))).toBeLessThanOrEqual(d + 1e-9);
  });
  fc.assert(property, { seed: 72, numRuns: 300 });
});

test('a turn, a shift and a mirror change none of the measures', () => {
  const property = fc.property(fc.nat(1e6), (seed) => {
    const next = numbersFrom(seed);
    const outline = starOutline(seed, 7);
    const [one, other] = [measureShape(outline), measureShape(moveOutline(motionFrom(next), outline))];
    other.waves.forEach((wave, k) => {
      expect(Math.abs(wave - one.waves[k]!)).toBeLessThan(1e-8);
    });
    expect(other.least).toBeCloseTo(one.least, 8);
    expect(other.greatest).toBeCloseTo(one.greatest, 8);
    expect(other.area / one.area).toBeCloseTo(1, 12);
  });
  fc.assert(property, { seed: 73, numRuns: 60 });
});

// Oracle: closed forms. Mean reach of a convex shape is its length round over 2π (Cauchy); a rectangle's reach about its
// middle is (w |cos| + h |sin|) / 2, whose second wave is (w - h) / (3π) each way; a disc has none.
test('a rectangle and a disc have the waves and widths their formulas give', () => {
  const one = measureShape(rectangle(1000, 600));
  expect(one.waves[0]).toBeCloseTo(3200 / (2 * Math.PI), 9);
  expect(one.waves[1]).toBeCloseTo((Math.SQRT2 * 400) / (3 * Math.PI), 9);
  expect(one.waves[2]).toBeCloseTo(0, 9);
  expect([one.least, one.greatest]).toEqual([
    expect.closeTo(600, 9),
    expect.closeTo(Math.hypot(1000, 600), 9),
  ]);
  expect(one.area).toBeCloseTo(600_000, 6);
  const disc = measureShape(value(circle(point(40, 9), mm(100))));
  expect(Math.abs(disc.waves[0]! - 100)).toBeLessThan(0.01);
  expect(Math.max(...disc.waves.slice(1))).toBeLessThan(0.01);
  expect([disc.least, disc.greatest]).toEqual([expect.closeTo(200, 1), expect.closeTo(200, 1)]);
});

// Oracle: every pair of corners of the hull, and every side with every corner.
test('the widths are those of a search through all sides and corners', () => {
  const property = fc.property(fc.nat(1e6), (seed) => {
    const outline = starOutline(seed, 3 + (seed % 9));
    const hull = convexHull(outline, mm(0.01));
    const { least, greatest } = measureShape(outline);
    const all = hull.flatMap((p) => hull.map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
    const wide = hull.map((a, i) => {
      const b = hull[(i + 1) % hull.length]!;
      const side = Math.hypot(b.x - a.x, b.y - a.y);
      return Math.max(...hull.map((p) => ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / side));
    });
    expect(greatest).toBeCloseTo(Math.max(...all), 9);
    expect(least).toBeCloseTo(Math.min(...wide), 9);
  });
  fc.assert(property, { seed: 74, numRuns: 60 });
});

test('the bound is good enough to leave out what is plainly unlike, and says nothing against a twin', () => {
  expect(between(rectangle(1000, 600), rectangle(1040, 600))).toBeGreaterThan(14);
  expect(between(rectangle(1000, 600), rectangle(1000, 600))).toBe(0);
  expect(between(rectangle(1000, 600, 20), rectangle(1010, 590, 20))).toBeGreaterThan(4);
  expect(area(rectangle(1000, 600))).toBe(600_000);
});
