import { expect, test } from 'vitest';
import { snap } from '../drawing/snap.ts';
import { cornerPull, handleAt, radiusAt } from './cornerPull.ts';

const SQUARE = [
  { x: 0, y: 0 },
  { x: 400, y: 0 },
  { x: 400, y: 300 },
  { x: 0, y: 300 },
];

// Oracle: a circle of radius r that touches both sides of a right angle has its centre r from each, so that the middle of
// its arc lies r (√2 − 1) from the sharp corner along the bisector.
test('the grip of a right-angled corner lies in the middle of its rounding, and gives the radius back', () => {
  const corner = cornerPull(SQUARE, 2);
  const { x, y } = handleAt(corner, 50);
  expect(Math.hypot(400 - x, 300 - y)).toBeCloseTo(50 * (Math.SQRT2 - 1), 9);
  expect(Math.hypot(350 - x, 250 - y)).toBeCloseTo(50, 9);
  expect(radiusAt(corner, { x, y })).toBeCloseTo(50, 9);
  expect(radiusAt(corner, { x: 500, y: 500 })).toBe(0);
  expect(radiusAt(corner, { x: 0, y: 0 })).toBeCloseTo(150, 9);
});

// Oracle: at 60 degrees the circle's centre is 2 r from the corner, the middle of the arc r.
test('the grip of a sharp corner lies deeper', () => {
  const corner = cornerPull(
    [
      { x: 0, y: 0 },
      { x: 200, y: 0 },
      { x: 100, y: 100 * Math.sqrt(3) },
    ],
    0,
  );
  const { x, y } = handleAt(corner, 30);
  expect(Math.hypot(x, y)).toBeCloseTo(30, 9);
});

test('a length catches on a line within reach by any of its parts, and lies on whole steps elsewhere', () => {
  const by = { lines: [0, 200, 400], parts: [0, 30, 60], within: 5, step: 25.4 / 16 };
  expect(snap(168.1, by)).toEqual({ at: 170, line: 200 });
  expect(snap(343, by)).toEqual({ at: 340, line: 400 });
  expect(snap(100, by)).toEqual({ at: 100.0125, line: null });
});
