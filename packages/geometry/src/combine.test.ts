import {
  area,
  bounds,
  circle,
  combine,
  containsOutline,
  edges,
  flatten,
  intersect,
  leftOf,
  length,
  type Outline,
  outlineFrom,
  point,
  type Region,
  roundedPolygon,
  subtract,
  unite,
  validate,
} from '@panewright/geometry';
import { mm, type Result, radian } from '@panewright/quantity';
import { areaPathsD, FillRule, intersectD, unionD } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbersFrom, starOutline } from './testing/starOutline.ts';

const value = <T>(result: Result<T, { readonly code: string }>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};
const rectangle = (x: number, y: number, w: number, h: number, r = 0) =>
  value(roundedPolygon([point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)], mm(r)));
const net = (regions: readonly Region[]) =>
  regions.reduce((sum, { outer, holes }) => sum + area(outer) - holes.reduce((s, h) => s + area(h), 0), 0);
const ringOf = (outline: Outline, tolerance: number) =>
  flatten(outline, mm(tolerance)).map(({ x, y }) => ({ x, y }));

// Oracle: the area of a lens of two unit circles a radius apart, 2π/3 - √3/2.
test('two discs a radius apart share a lens of two arcs', () => {
  const [a, b] = [value(circle(point(0, 0), mm(1))), value(circle(point(1, 0), mm(1)))];
  const [lens, ...others] = intersect(a, b);
  expect(others).toEqual([]);
  expect(edges(lens!).every(({ kind }) => kind === 'arc')).toBe(true);
  expect(area(lens!)).toBeCloseTo((2 * Math.PI) / 3 - Math.sqrt(3) / 2, 9);
});

// Oracle: |A ∪ B| + |A ∩ B| = |A| + |B| and |A - B| + |A ∩ B| = |A|; and Clipper2 2.0.1 on flattened rings.
test('areas of random outlines add up under union, intersection and difference, as a polygon clipper has them', () => {
  const property = fc.property(fc.nat(1e6), fc.integer({ min: 3, max: 12 }), (seed, corners) => {
    const next = numbersFrom(seed);
    const a = starOutline(seed, corners);
    const b = starOutline(seed + 7, 3 + Math.floor(9 * next()), 120 * next(), 120 * next());
    const common = combine(a, b, 'intersect');
    expect(net(combine(a, b, 'unite')) + net(common)).toBeCloseTo(area(a) + area(b), 3);
    expect(net(combine(a, b, 'subtract')) + net(common)).toBeCloseTo(area(a), 3);
    const clipped = intersectD([ringOf(a, 5e-4)], [ringOf(b, 5e-4)], FillRule.NonZero, 5);
    expect(Math.abs(net(common) - areaPathsD(clipped))).toBeLessThan(1e-3 * (length(a) + length(b)));
    for (const { outer, holes } of common) {
      expect(holes).toEqual([]);
      expect(validate(outer)).toMatchObject({ ok: true });
    }
  });
  fc.assert(property, { seed: 30, numRuns: 200 });
});

// Sides that lie on one another, corners that touch, equal shapes: a grid makes all of them common.
test('rounded rectangles on a coarse grid, edges shared and corners touching, combine as a polygon clipper has them', () => {
  const side = fc.integer({ min: 1, max: 4 });
  const shape = fc.record({ x: fc.nat(4), y: fc.nat(4), w: side, h: side, r: fc.constantFrom(0, 0, 5, 2.5) });
  const property = fc.property(shape, shape, (p, q) => {
    const [a, b] = [p, q].map(({ x, y, w, h, r }) => rectangle(10 * x, 10 * y, 10 * w, 10 * h, r));
    const rings = [ringOf(a!, 1e-4), ringOf(b!, 1e-4)] as const;
    const both = areaPathsD(unionD([rings[0]], [rings[1]], FillRule.NonZero, 6));
    const slack = 2e-4 * (length(a!) + length(b!));
    expect(Math.abs(net(combine(a!, b!, 'unite')) - both)).toBeLessThan(slack);
    expect(Math.abs(net(combine(a!, b!, 'intersect')) - (area(a!) + area(b!) - both))).toBeLessThan(slack);
    for (const { outer, holes } of combine(a!, b!, 'subtract'))
      for (const ring of [outer, ...holes]) expect(validate(ring)).toMatchObject({ ok: true });
  });
  fc.assert(property, { seed: 31, numRuns: 500 });
});

test('a corner patch is trimmed to the rounded corner of its panel, arc kept', () => {
  const panel = rectangle(0, 0, 1000, 600, 75);
  const [patch] = intersect(rectangle(0, 0, 40, 40), panel);
  const arcs = edges(patch!).filter(({ kind }) => kind === 'arc');
  expect(arcs.length).toBe(1);
  expect(containsOutline(panel, patch!)).toBe(true);
  // Oracle: the part of the square beyond the arc about (75, 75), by numeric integration in x with step 1e-3 mm.
  expect(area(patch!)).toBeCloseTo(1600 - missingBeyond(75, 40), 3);
});

function missingBeyond(radius: number, side: number): number {
  const step = 1e-3;
  let sum = 0;
  for (let x = step / 2; x < side; x += step)
    sum += Math.min(side, radius - Math.sqrt(radius ** 2 - (radius - x) ** 2)) * step;
  return sum;
}

test('a shape within another leaves a hole, which is refused with its area', () => {
  const [outer, inner] = [rectangle(0, 0, 100, 100), rectangle(30, 30, 20, 10)];
  expect(subtract(outer, inner)).toMatchObject({ refusal: { code: 'LEAVES_HOLE', area: 200 } });
  const [region] = combine(outer, inner, 'subtract');
  expect(region!.holes.map(area)).toEqual([200]);
  expect(containsOutline(outer, inner)).toBe(true);
  expect(containsOutline(inner, outer)).toBe(false);
});

test('equal outlines share all, together cover one, and leave nothing', () => {
  const a = starOutline(5, 9);
  expect(intersect(a, a).map(area)[0]).toBeCloseTo(area(a), 6);
  expect(value(unite(a, a)).length).toBe(1);
  expect(value(subtract(a, a))).toEqual([]);
});

test('a strip across a window leaves two parts, and apart shapes unite to two', () => {
  const pane = rectangle(0, 0, 300, 100, 20);
  expect(value(subtract(pane, rectangle(140, -10, 20, 200))).map((part) => bounds(part).width)).toEqual([
    140, 140,
  ]);
  expect(value(unite(pane, rectangle(500, 0, 10, 10))).length).toBe(2);
  expect(intersect(pane, rectangle(500, 0, 10, 10))).toEqual([]);
});

// Oracle: a chord halves a disc.
test('a line through the middle of a disc leaves half of it on its left', () => {
  const disc = value(circle(point(3, 4), mm(10)));
  const [half] = leftOf(disc, point(3, 4), radian(0.7));
  expect(area(half!)).toBeCloseTo((Math.PI * 100) / 2, 6);
  expect(leftOf(disc, point(3, 20), radian(0))).toEqual([]);
  expect(area(leftOf(disc, point(3, -20), radian(0))[0]!)).toBeCloseTo(Math.PI * 100, 6);
});

test('a square cut along one of its own sides is whole on one side and nothing on the other', () => {
  const square = value(outlineFrom([point(0, 0), point(50, 0), point(50, 50), point(0, 50)]));
  expect(leftOf(square, point(0, 0), radian(0)).map(area)).toEqual([2500]);
  expect(leftOf(square, point(0, 0), radian(Math.PI))).toEqual([]);
});
