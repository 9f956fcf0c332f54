import { type Circle, type CircleMethod, fitCircle } from '@panewright/survey';
import { expect, test } from 'vitest';

const xy = (pairs: readonly (readonly [number, number])[]) => pairs.map(([x, y]) => ({ x, y }));
const METHODS: readonly CircleMethod[] = ['kasa', 'pratt', 'taubin', 'unitNorm', 'geometric'];

function fitted(points: readonly { x: number; y: number }[], method: CircleMethod): Circle {
  const result = fitCircle(points, method);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

// Oracle: Gander, Golub, Strebel, BIT 34 (1994) 558-578: data and the answers for `geometric` (M1) and `unitNorm` (M2)
// from memory, recomputed independently to the same digits; the other three computed independently.
const GANDER = xy([
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
]);
test.each([
  ['geometric', 4.7398, 2.9835, 4.7142],
  ['unitNorm', 5.3794, 7.2532, 3.037],
  ['kasa', 4.7423, 3.8351, 4.1088],
  ['pratt', 4.6155, 2.8074, 4.9113],
  ['taubin', 4.6139, 2.7952, 4.8792],
] as const)(
  'the six points of Gander, Golub and Strebel give by %s (%s, %s), radius %s',
  (method, x, y, radius) => {
    const circle = fitted(GANDER, method);
    expect(Math.abs(circle.x - x)).toBeLessThan(6e-5);
    expect(Math.abs(circle.y - y)).toBeLessThan(6e-5);
    expect(Math.abs(circle.radius - radius)).toBeLessThan(6e-5);
  },
);

// Oracle: four points from an open tutorial (OSGeoLabBp/tutorials), Kåsa's answer computed independently.
test('four points give by Kåsa (6.0814, 3.6346), radius 6.6992', () => {
  const circle = fitted(
    xy([
      [11.88, 0.08],
      [10.34, 8.59],
      [2.58, 9.54],
      [-0.29, 1.95],
    ]),
    'kasa',
  );
  expect(circle.x).toBeCloseTo(6.0814, 4);
  expect(circle.y).toBeCloseTo(3.6346, 4);
  expect(circle.radius).toBeCloseTo(6.6992, 4);
});

// Oracle: the definition of a circle.
test.each(METHODS)('points of one exact arc come back as that arc by %s', (method) => {
  const arc = [0, 20, 40, 60, 80].map((degrees) => ({
    x: 100 + 45 * Math.cos((degrees * Math.PI) / 180),
    y: 50 + 45 * Math.sin((degrees * Math.PI) / 180),
  }));
  const circle = fitted(arc, method);
  expect(circle.x).toBeCloseTo(100, 6);
  expect(circle.y).toBeCloseTo(50, 6);
  expect(circle.radius).toBeCloseTo(45, 6);
});

test.each(METHODS)('points on a line, or too few, are refused by %s', (method) => {
  const line = [0, 1, 2, 3, 4].map((t) => ({ x: 10 + 3 * t, y: 5 - 2 * t }));
  expect(fitCircle(line, method)).toMatchObject({ ok: false, refusal: { code: 'CIRCLE_STRAIGHT' } });
  expect(fitCircle(line.slice(0, 2), method)).toEqual({
    ok: false,
    refusal: { code: 'CIRCLE_TOO_FEW_POINTS', points: 2 },
  });
});
