import {
  circle,
  convexHull,
  inscribedCircle,
  offset,
  outlineFrom,
  type Point,
  point,
  roundedPolygon,
  signedDistance,
} from '@panewright/geometry';
import { mm, type Result } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { starOutline } from './testing/starOutline.ts';

const value = <T>(result: Result<T, { readonly code: string }>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};

// Oracle: the incircle of a triangle has radius area / half perimeter; 3-4-5 gives 1, at (1, 1).
test('the largest circle in a 3-4-5 triangle has radius 1', () => {
  const triangle = value(outlineFrom([point(0, 0), point(400, 0), point(0, 300)]));
  const { centre, radius } = inscribedCircle(triangle);
  expect(radius).toBeCloseTo(100, 6);
  expect(centre.x).toBeCloseTo(100, 5);
  expect(centre.y).toBeCloseTo(100, 5);
});

test('a window holds a circle of half its height, a disc holds itself', () => {
  const corners = [point(0, 0), point(1000, 0), point(1000, 600), point(0, 600)];
  expect(inscribedCircle(value(roundedPolygon(corners, mm(75)))).radius).toBeCloseTo(300, 6);
  expect(inscribedCircle(value(circle(point(9, 9), mm(40)))).radius).toBeCloseTo(40, 6);
});

// Oracle: another method. An inset by a hair more than the largest radius leaves nothing, by a hair less something.
test('an inset by the largest radius is where an outline vanishes', () => {
  const property = fc.property(fc.nat(1e6), (seed) => {
    const outline = starOutline(seed, 8);
    const { centre, radius } = inscribedCircle(outline);
    expect(-signedDistance(outline, centre)).toBeCloseTo(radius, 9);
    const hair = 400 / 500;
    expect(value(offset(outline, mm(-radius - hair), { corners: 'round' }))).toEqual([]);
    expect(value(offset(outline, mm(-radius + 0.01), { corners: 'round' })).length).toBeGreaterThan(0);
  });
  fc.assert(property, { seed: 50, numRuns: 60 });
});

// Oracle: the definition. Every corner of the shape lies left of every side of the hull, and the hull turns left only.
test('a hull turns left only and leaves no point outside', () => {
  const property = fc.property(fc.nat(1e6), (seed) => {
    const outline = starOutline(seed, 10);
    const hull = convexHull(outline, mm(0.01));
    hull.forEach((p, i) => {
      const q = hull[(i + 1) % hull.length]!;
      const left = (r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
      expect(left(hull[(i + 2) % hull.length]!)).toBeGreaterThan(0);
      for (const { to } of outline.segments) expect(left(to)).toBeGreaterThanOrEqual(-1e-6);
    });
  });
  fc.assert(property, { seed: 51, numRuns: 60 });
});
