import {
  arcOf,
  area,
  bounds,
  boundsAt,
  centroid,
  circle,
  contains,
  edges,
  flatten,
  length,
  type Outline,
  outlineFrom,
  point,
  roundedPolygon,
} from '@panewright/geometry';
import { mm, type Result, radian } from '@panewright/quantity';
import { expect, test } from 'vitest';

const value = <T>(result: Result<T, { readonly code: string }>): T => {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
};

const window1000x600 = value(
  roundedPolygon([point(0, 0), point(1000, 0), point(1000, 600), point(0, 600)], mm(75)),
);

// Oracle: closed form P = 2(W + H) - (8 - 2π) r, value B4 computed outside the project to 1e-3 mm.
test('a 1000 × 600 window with 75 mm corners measures 3071.2389 mm around', () => {
  expect(Math.abs(length(window1000x600) - 3071.2389)).toBeLessThan(1e-3);
});

// Oracle: closed form A = WH - (4 - π) r², value computed outside the project.
test('a 1000 × 600 window with 75 mm corners has 595 171.459 mm² of glass', () => {
  expect(Math.abs(area(window1000x600) - 595171.459)).toBeLessThan(1e-3);
});

// Oracle: the half disc, area π r² / 2, centroid 4 r / (3 π) from the chord (any handbook of mechanics).
test('a half disc far from the origin has its centroid 4r/3π above its base', () => {
  const half: Outline = {
    segments: [
      { kind: 'line', to: point(5100, 7000) },
      { kind: 'arc', to: point(4900, 7000), bulge: 1 },
    ],
  };
  expect(area(half)).toBeCloseTo((Math.PI * 100 ** 2) / 2, 6);
  expect(centroid(half).x).toBeCloseTo(5000, 8);
  expect(centroid(half).y).toBeCloseTo(7000 + 400 / (3 * Math.PI), 8);
});

// Oracle: an arc that bites into a square takes its circular segment away.
test('a square with a half disc bitten out of one side loses half the disc and balances lower', () => {
  const bitten: Outline = {
    segments: [
      { kind: 'line', to: point(100, 0) },
      { kind: 'line', to: point(100, 100) },
      { kind: 'line', to: point(80, 100) },
      { kind: 'arc', to: point(20, 100), bulge: -1 },
      { kind: 'line', to: point(0, 100) },
      { kind: 'line', to: point(0, 0) },
    ],
  };
  const bite = (Math.PI * 30 ** 2) / 2;
  expect(area(bitten)).toBeCloseTo(10_000 - bite, 8);
  const low = (10_000 * 50 - bite * (100 - (4 * 30) / (3 * Math.PI))) / (10_000 - bite);
  expect(centroid(bitten).y).toBeCloseTo(low, 8);
  expect(contains(bitten, point(50, 71))).toBe('outside');
  expect(contains(bitten, point(50, 69))).toBe('inside');
  expect(contains(bitten, point(50, 70))).toBe('boundary');
});

test('the box of a circle is its diameter at every angle', () => {
  const disc = value(circle(point(30, 40), mm(25)));
  expect(bounds(disc)).toMatchObject({ minX: 5, maxX: 55, width: 50, height: 50 });
  for (const angle of [0.3, 1, 2]) expect(boundsAt(disc, radian(angle)).width).toBeCloseTo(50, 9);
});

test('a polygon drawn clockwise becomes the same anticlockwise outline', () => {
  const outline = value(outlineFrom([point(0, 0), point(0, 10), point(20, 10), point(20, 0)]));
  expect(area(outline)).toBe(200);
  expect(edges(outline)[0]!.from).toEqual(point(0, 0));
});

test('radii that do not fit a side are refused with the length they need', () => {
  const result = roundedPolygon([point(0, 0), point(100, 0), point(100, 50), point(0, 50)], mm(30));
  expect(result).toMatchObject({ ok: false, refusal: { code: 'RADII_DO_NOT_FIT', corner: 1, next: 2 } });
  expect(!result.ok && 'need' in result.refusal && result.refusal.need).toBeCloseTo(60, 9);
});

test('radii that use a side up entirely make a slot with half-round ends', () => {
  const slot = value(roundedPolygon([point(0, 0), point(100, 0), point(100, 50), point(0, 50)], mm(25)));
  expect(edges(slot).map((edge) => edge.kind)).toEqual(['arc', 'line', 'arc', 'arc', 'line', 'arc']);
  expect(area(slot)).toBeCloseTo(50 * 50 + Math.PI * 25 ** 2, 8);
});

test('every arc of a rounded polygon has the radius asked for and turns the corner', () => {
  const corners = [point(0, 0), point(400, 30), point(420, 300), point(90, 350)];
  const radii = [mm(10), mm(20), mm(30), mm(40)];
  const rounded = value(roundedPolygon(corners, radii));
  const arcs = edges(rounded)
    .map(arcOf)
    .filter((arc) => arc !== undefined);
  expect(arcs.map((arc) => Math.round(arc.radius * 1e6) / 1e6)).toEqual([10, 20, 30, 40]);
  expect(arcs.reduce((sum, arc) => sum + arc.sweep, 0)).toBeCloseTo(2 * Math.PI, 10);
});

test('polygons flattened outside, on and inside lie round, on and within the outline', () => {
  const [outside, on, inside] = (['outside', 'on', 'inside'] as const).map((side) =>
    area(value(outlineFrom(flatten(window1000x600, mm(0.05), side)))),
  );
  expect(outside!).toBeGreaterThan(area(window1000x600));
  expect(inside!).toBeLessThan(area(window1000x600));
  expect(on!).toBeCloseTo(inside!, 6);
  // No point farther than 0.05 mm from the arcs, whose length is 2π · 75 mm.
  expect(outside! - area(window1000x600)).toBeLessThan(0.05 * 2 * Math.PI * 75);
});
