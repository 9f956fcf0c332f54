import {
  area,
  boundsAt,
  centroid,
  circle,
  compose,
  contains,
  crossingsOf,
  distanceBetween,
  flatten,
  intersects,
  invert,
  length,
  mirrorAbout,
  moveOutline,
  movePoint,
  narrowestTurn,
  nearest,
  normalAt,
  normalisedStart,
  type Outline,
  outlineFrom,
  point,
  pointAt,
  reversed,
  roundedPolygon,
  signedDistance,
  startingAt,
  tangentAt,
  turnAbout,
  validate,
} from '@panewright/geometry';
import { mm, type Result, radian } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbersFrom, starOutline } from './testing/starOutline.ts';

const value = <T>(result: Result<T, { readonly code: string }>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};
const window1000x600 = value(
  roundedPolygon([point(0, 0), point(1000, 0), point(1000, 600), point(0, 600)], mm(75)),
);
const seeds = fc.nat(1e6);

// Oracle: the even-odd rule on a fine polygon, which shares no code with the winding count.
test('a point is inside an outline exactly when a fine polygon of it says so', () => {
  const property = fc.property(seeds, (seed) => {
    const outline = starOutline(seed, 9);
    const ring = flatten(outline, mm(0.001));
    const next = numbersFrom(seed);
    for (let k = 0; k < 20; k++) {
      const p = point(400 * next() - 200, 400 * next() - 200);
      if (nearest(outline, p).distance < 0.002) continue;
      expect(contains(outline, p) === 'inside').toBe(isOddlyCrossed(ring, p.x, p.y));
    }
  });
  fc.assert(property, { seed: 40, numRuns: 100 });
});

function isOddlyCrossed(ring: readonly { x: number; y: number }[], x: number, y: number): boolean {
  let odd = false;
  ring.forEach((a, i) => {
    const b = ring.at(i - 1)!;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) odd = !odd;
  });
  return odd;
}

test('a motion changes no area, length or distance, and undoing it brings every point back', () => {
  const property = fc.property(seeds, fc.boolean(), (seed, mirrored) => {
    const next = numbersFrom(seed);
    const outline = starOutline(seed, 8);
    const motion = { angle: radian(6 * next()), shift: point(900 * next(), -500 * next()), mirrored };
    const moved = moveOutline(motion, outline);
    expect(area(moved) / area(outline)).toBeCloseTo(1, 9);
    expect(length(moved) / length(outline)).toBeCloseTo(1, 9);
    expect(validate(moved).ok).toBe(true);
    const p = point(100 * next(), 100 * next());
    expect(signedDistance(moved, movePoint(motion, p))).toBeCloseTo(signedDistance(outline, p), 8);
    const back = movePoint(invert(motion), movePoint(motion, p));
    expect(Math.hypot(back.x - p.x, back.y - p.y)).toBeLessThan(1e-9);
    const other = { angle: radian(next()), shift: point(1, 2), mirrored: next() < 0.5 };
    const [one, two] = [movePoint(compose(other, motion), p), movePoint(other, movePoint(motion, p))];
    expect(Math.hypot(one.x - two.x, one.y - two.y)).toBeLessThan(1e-9);
  });
  fc.assert(property, { seed: 41, numRuns: 100 });
});

test('a mirror image keeps the run anticlockwise and the segments in reverse', () => {
  const flag = value(outlineFrom([point(0, 0), point(30, 0), point(30, 20), point(0, 10)]));
  const image = moveOutline(mirrorAbout(50), flag);
  expect(area(image)).toBeCloseTo(450, 9);
  expect(image.segments.map(({ to }) => [to.x, to.y])).toEqual([
    [100, 10],
    [70, 20],
    [70, 0],
    [100, 0],
  ]);
});

test('a turn about a point leaves it where it is', () => {
  const p = movePoint(turnAbout(point(7, 8), radian(1.2)), point(7, 8));
  expect(p.x).toBeCloseTo(7, 12);
  expect(p.y).toBeCloseTo(8, 12);
});

test('points walked along the outline lie on it, at the distance they were walked to', () => {
  const property = fc.property(seeds, fc.double({ min: 0, max: 1, noNaN: true }), (seed, part) => {
    const outline = starOutline(seed, 7);
    const s = mm(part * length(outline) * 0.999999);
    const found = nearest(outline, pointAt(outline, s));
    expect(found.distance).toBeLessThan(1e-9);
    const whole = length(outline);
    expect(Math.min(Math.abs(found.s - s), whole - Math.abs(found.s - s))).toBeLessThan(1e-6);
  });
  fc.assert(property, { seed: 42 });
});

// Oracle: the mid-side and mid-corner of a rounded rectangle, by hand.
test('directions along a rounded window are those of its sides, its normals point out', () => {
  const start = window1000x600.segments.at(-1)!.to;
  expect(start.x).toBeCloseTo(0, 9);
  const quarter = (75 * Math.PI) / 2;
  expect(tangentAt(window1000x600, mm(quarter + 100))).toEqual({ x: 1, y: 0 });
  expect(normalAt(window1000x600, mm(quarter + 100)).y).toBe(-1);
  const corner = normalAt(window1000x600, mm(quarter / 2));
  expect(corner.x).toBeCloseTo(-Math.SQRT1_2, 9);
  expect(pointAt(window1000x600, mm(-10)).y).toBeCloseTo(85, 9);
});

// Oracle: closed form for a circle.
test('the signed distance from a circle is its radius taken from the distance to its centre', () => {
  const disc = value(circle(point(0, 0), mm(40)));
  for (const x of [0.5, 10, 39, 41, 300]) expect(signedDistance(disc, point(0, x))).toBeCloseTo(x - 40, 9);
});

// Oracle: brute force over points walked along both outlines.
test('the distance between outlines is the least over points walked along both', () => {
  const property = fc.property(seeds, (seed) => {
    const a = starOutline(seed, 6);
    const b = starOutline(seed + 1, 6, 430, 60);
    const least = distanceBetween(a, b);
    let walked = Infinity;
    const steps = 1500;
    for (let k = 0; k < steps; k++)
      walked = Math.min(walked, nearest(b, pointAt(a, mm((k / steps) * length(a)))).distance);
    expect(least).toBeLessThanOrEqual(walked + 1e-9);
    expect(walked - least).toBeLessThan(length(a) / steps);
    expect(intersects(a, b)).toBe(least === 0);
  });
  fc.assert(property, { seed: 43, numRuns: 40 });
});

test('a shape within another meets it, though their lines keep apart', () => {
  const inner = value(circle(point(500, 300), mm(50)));
  expect(intersects(window1000x600, inner)).toBe(true);
  expect(distanceBetween(window1000x600, inner)).toBeCloseTo(250, 9);
});

// Oracle: a 3-4-5 triangle: the line y = 3 cuts the circle of radius 5 at x = ±4.
test('a line and a half circle cross where the right triangle says', () => {
  const line = { from: point(-10, 3), to: point(10, 3), bulge: 0 };
  const half = { from: point(5, 0), to: point(-5, 0), bulge: 1 };
  const xs = crossingsOf(line, half).map(({ x }) => x);
  expect(xs.toSorted((a, b) => a - b)[0]).toBeCloseTo(-4, 12);
  expect(xs.length).toBe(2);
  expect(crossingsOf({ ...line, from: point(-10, 5), to: point(10, 5) }, half)).toEqual([point(0, 5)]);
  expect(crossingsOf({ ...line, from: point(-10, 5.1), to: point(10, 5.1) }, half)).toEqual([]);
});

test('the narrowest way through a tilted rectangle is its short side', () => {
  const tilted = moveOutline({ angle: radian(0.4), shift: point(5, 5), mirrored: false }, window1000x600);
  const { angle, height } = narrowestTurn(tilted);
  expect(height).toBeCloseTo(600, 6);
  expect(boundsAt(tilted, angle).width).toBeCloseTo(1000, 6);
});

test('an outline may begin anywhere and be run backwards without changing its shape', () => {
  const outline: Outline = starOutline(9, 7);
  const turned = startingAt(outline, 4);
  expect(normalisedStart(turned)).toEqual(normalisedStart(outline));
  expect(area(reversed(outline))).toBeCloseTo(-area(outline), 9);
  expect(centroid(turned).x).toBeCloseTo(centroid(outline).x, 9);
});
