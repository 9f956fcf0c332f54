import {
  arcOf,
  area,
  bounds,
  circle,
  containsOutline,
  cornerMeans,
  edges,
  flatten,
  length,
  nearest,
  type Outline,
  offset,
  offsetOne,
  offsetTraced,
  outlineFrom,
  type Point,
  point,
  pointAt,
  roundedPolygon,
  validate,
} from '@panewright/geometry';
import { mm, type Result } from '@panewright/quantity';
import { areaPathsD, EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbersFrom, starOutline } from './testing/starOutline.ts';

const value = <T>(result: Result<T, { readonly code: string }>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};
const box = (w: number, h: number) => [point(0, 0), point(w, 0), point(w, h), point(0, h)];
const window1000x600 = value(roundedPolygon(box(1000, 600), mm(75)));
const total = (outlines: readonly Outline[]) => outlines.reduce((sum, outline) => sum + area(outline), 0);

// Oracle: Steiner's formula, P' = P + 2π d, A' = A + P d + π d²; values B4 and B5 computed outside the project.
for (const [distance, perimeter, square] of [
  [6.35, 3111.137, 614800.5025],
  [-6.35, 3031.341, 575795.769],
] as const) {
  test(`a 1000 × 600 window with 75 mm corners moved by ${distance} mm keeps eight edges and obeys Steiner`, () => {
    const moved = value(offsetOne(window1000x600, mm(distance)));
    expect(moved.segments.length).toBe(8);
    expect(Math.abs(length(moved) - perimeter)).toBeLessThan(1e-3);
    expect(Math.abs(area(moved) - square)).toBeLessThan(1e-3);
  });
}

// Oracle: a mitred rectangle grows to (W + 2 d)(H + 2 d), a round one to WH + 2 (W + H) d + π d².
test('a sharp rectangle keeps sharp corners, or gets quarter rounds when asked', () => {
  const square = value(outlineFrom(box(400, 300)));
  const sharp = value(offsetOne(square, mm(10)));
  expect(sharp.segments.length).toBe(4);
  expect(area(sharp)).toBeCloseTo(420 * 320, 6);
  const round = value(offsetOne(square, mm(10), { corners: 'round' }));
  expect(round.segments.length).toBe(8);
  expect(area(round)).toBeCloseTo(400 * 300 + 2 * 700 * 10 + Math.PI * 100, 6);
});

// Oracle: Clipper2 2.0.1, round joins, on the outline flattened within 0.0005 mm. Its area may differ by the flattening
// along the whole edge, before and after; a sliver of 0.3 mm² is allowed for its rounding to 1e-5 mm.
test('line-and-arc outlines moved by up to 40 mm enclose what a polygon clipper finds, and do not cross', () => {
  const tolerance = 0.0005;
  const property = fc.property(fc.nat(1e6), fc.integer({ min: 3, max: 14 }), (seed, corners) => {
    const outline = starOutline(seed, corners);
    const distance = (numbersFrom(seed + 1)() - 0.5) * 80;
    const moved = offset(outline, mm(distance), { corners: 'round' });
    if (!moved.ok) return moved.refusal.code === 'LEAVES_HOLE';
    const ring = flatten(outline, mm(tolerance)).map(({ x, y }) => ({ x, y }));
    const clipped = inflatePathsD([ring], distance, JoinType.Round, EndType.Polygon, 2, 5, tolerance);
    const around = length(outline) + 2 * Math.PI * Math.abs(distance);
    expect(Math.abs(total(moved.value) - areaPathsD(clipped))).toBeLessThan(2 * tolerance * around + 0.3);
    for (const ring of moved.value) expect(validate(ring)).toMatchObject({ ok: true });
    return true;
  });
  fc.assert(property, { seed: 20, numRuns: 150 });
});

// Oracle: the definition. Every point of a round offset lies at the distance from the outline, found another way.
test('every point of a moved outline is at its distance from the first', () => {
  const property = fc.property(fc.nat(1e6), fc.integer({ min: 3, max: 12 }), (seed, corners) => {
    const outline = starOutline(seed, corners);
    const distance = (numbersFrom(seed + 2)() - 0.5) * 60;
    const moved = offset(outline, mm(distance), { corners: 'round' });
    for (const ring of moved.ok ? moved.value : [])
      for (let k = 0; k < 40; k++) {
        const p = pointAt(ring, mm((k / 40) * length(ring)));
        expect(Math.abs(nearest(outline, p).distance - Math.abs(distance))).toBeLessThan(2e-5);
      }
  });
  fc.assert(property, { seed: 21, numRuns: 150 });
});

// Oracle: convex shapes lose nothing on the way out and back.
test('a convex outline moved out and back in is itself again', () => {
  const property = fc.property(fc.double({ min: 0.1, max: 200, noNaN: true }), (distance) => {
    const there = value(offsetOne(window1000x600, mm(distance)));
    const back = value(offsetOne(there, mm(-distance)));
    expect(back.segments.length).toBe(8);
    expect(area(back) / area(window1000x600)).toBeCloseTo(1, 12);
    expect(bounds(back).minX).toBeCloseTo(0, 9);
  });
  fc.assert(property, { seed: 22 });
});

// Oracle: half-plane clipping of a polygon (Sutherland and Hodgman), written out below.
test('a convex polygon with an allowance per side is the meeting of its moved half-planes', () => {
  const property = fc.property(fc.nat(1e6), fc.integer({ min: 3, max: 9 }), (seed, corners) => {
    const next = numbersFrom(seed);
    const at = Array.from({ length: corners }, (_, i) => {
      const angle = ((i + 0.6 * next()) / corners) * 2 * Math.PI;
      return point(300 * Math.cos(angle), 200 * Math.sin(angle));
    });
    const inward = at.map(() => -60 * next());
    const moved = value(offset(value(outlineFrom(at)), inward.map(mm), { sharpLimit: 1e6 }));
    let left: Point[] = at;
    at.forEach((p, i) => {
      left = keepLeft(left, p, at[(i + 1) % corners]!, -inward[i]!);
    });
    expect(total(moved)).toBeCloseTo(left.length < 3 ? 0 : shoelace(left), 5);
  });
  fc.assert(property, { seed: 23, numRuns: 300 });
});

function keepLeft(ring: readonly Point[], p: Point, q: Point, inset: number): Point[] {
  const far = Math.hypot(q.x - p.x, q.y - p.y);
  const side = (s: Point) => ((q.x - p.x) * (s.y - p.y) - (q.y - p.y) * (s.x - p.x)) / far - inset;
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const [u, v] = [side(a), side(b)];
    const kept = u >= 0 ? [a] : [];
    const cut = point(a.x + ((b.x - a.x) * u) / (u - v), a.y + ((b.y - a.y) * u) / (u - v));
    return u >= 0 === v >= 0 ? kept : [...kept, cut];
  });
}

function shoelace(ring: readonly Point[]): number {
  return ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
}

// Oracle: closed form. Sides W + left + right and H + top + bottom, corners r + the mean of their sides' allowances.
test('a rounded window with another allowance on each side keeps tangent corners', () => {
  const [bottom, right, top, left] = [4, 10, 6, 8];
  const corner = [(left + bottom) / 2, (bottom + right) / 2, (right + top) / 2, (top + left) / 2];
  const distances = cornerMeans(window1000x600, [0, bottom, 0, right, 0, top, 0, left].map(mm));
  const moved = value(offsetOne(window1000x600, distances));
  const caps = corner.reduce((sum, d) => sum + (1 - Math.PI / 4) * (75 + d) ** 2, 0);
  expect(moved.segments.length).toBe(8);
  expect(area(moved)).toBeCloseTo((1000 + left + right) * (600 + top + bottom) - caps, 6);
  const radii = edges(moved).flatMap((edge) => arcOf(edge)?.radius ?? []);
  expect(radii.map((r) => Math.round(r * 1e6) / 1e6).toSorted()).toEqual(
    corner.map((d) => 75 + d).toSorted(),
  );
});

test('a window whose coordinates were rounded to 0.001 mm keeps its eight edges, moved evenly or not', () => {
  const skew = value(
    roundedPolygon([point(0, 0), point(503.1, 17.3), point(498.7, 301.9), point(9.2, 290)], mm(11)),
  );
  const round = (x: number) => Math.round(x * 1000) / 1000;
  const rounded: Outline = {
    segments: skew.segments.map((s) => ({ ...s, to: point(round(s.to.x), round(s.to.y)) })) as never,
  };
  const uneven = cornerMeans(rounded, [0, 4, 0, 9, 0, 6, 0, 7].map(mm));
  for (const distances of [mm(6), mm(-6), uneven]) {
    const [exact, moved] = [skew, rounded].map((o) => value(offsetOne(o, distances)));
    expect(moved!.segments.length).toBe(8);
    for (const { to } of moved!.segments) expect(nearest(exact!, to).distance).toBeLessThan(0.004);
  }
});

test('a corner whose radius an uneven inset uses up becomes sharp', () => {
  const small = value(roundedPolygon(box(200, 100), mm(5)));
  const distances = [-10, -20, -10, -1, -10, -1, -10, -1].map(mm);
  const moved = value(offsetOne(small, distances));
  expect(moved.segments.length).toBe(4);
  expect(area(moved)).toBeCloseTo(198 * 79, 6);
});

// Oracle: closed form. A slot's half-round end between sides moved by 4 and 8 has radius 25 + 6 and crown at 25 + 10.
test('a half-round end follows the sides and keeps its own allowance at the crown', () => {
  const slot: Outline = {
    segments: [
      { kind: 'line', to: point(100, 0) },
      { kind: 'arc', to: point(100, 50), bulge: 1 },
      { kind: 'line', to: point(0, 50) },
      { kind: 'line', to: point(0, 0) },
    ],
  };
  const moved = value(offsetOne(slot, [4, 10, 8, 3].map(mm)));
  expect(bounds(moved)).toMatchObject({ minY: -4, maxY: 58, minX: -3 });
  expect(bounds(moved).maxX).toBeCloseTo(135, 9);
  expect(area(moved)).toBeCloseTo(107 * 62 + (Math.PI * 31 ** 2) / 2, 6);
});

test('neighbours in one line with different allowances are joined by a square step', () => {
  const split = value(outlineFrom([point(0, 0), point(60, 0), point(100, 0), point(100, 50), point(0, 50)]));
  const moved = value(offsetOne(split, [5, 2, 0, 0, 0].map(mm)));
  expect(area(moved)).toBeCloseTo(100 * 50 + 60 * 5 + 40 * 2, 6);
  expect(moved.segments.length).toBe(6);
});

// Oracle: the definition. Nothing is lost on the way out, nothing won on the way in, and no corner reaches past its limit.
test('allowances of any sizes on one side leave one shape with the old one inside, or in it', () => {
  const property = fc.property(
    fc.nat(1e6),
    fc.integer({ min: 3, max: 12 }),
    fc.boolean(),
    (seed, corners, out) => {
      const next = numbersFrom(seed + 4);
      const outline = starOutline(seed, corners);
      const most = 6;
      const distances = outline.segments.map(() =>
        mm((out ? 1 : -1) * most * [0, next(), 1][Math.floor(3 * next())]!),
      );
      const moved = value(offset(outline, distances));
      if (out) expect(moved.length).toBe(1);
      for (const ring of moved) {
        expect(validate(ring)).toMatchObject({ ok: true });
        expect(out ? containsOutline(ring, outline) : containsOutline(outline, ring)).toBe(true);
        for (const { to } of ring.segments)
          expect(nearest(outline, to).distance).toBeLessThan(4 * most + 1e-6);
      }
    },
  );
  fc.assert(property, { seed: 24, numRuns: 200 });
});

test('a bow-tie of two lobes inset past its waist falls into two parts, the larger first', () => {
  const at = [point(0, 0), point(100, 40), point(220, 0), point(220, 120), point(100, 60), point(0, 100)];
  const waisted = value(outlineFrom(at));
  const parts = value(offset(waisted, mm(-12)));
  expect(parts.length).toBe(2);
  expect(area(parts[0]!)).toBeGreaterThan(area(parts[1]!));
  expect(offsetOne(waisted, mm(-12))).toMatchObject({ refusal: { code: 'OFFSET_SPLITS', parts: 2 } });
});

test('an inset deeper than the outline leaves nothing and is refused with its distance', () => {
  const disc = value(circle(point(0, 0), mm(20)));
  expect(offset(disc, mm(-20.5))).toEqual({ ok: true, value: [] });
  expect(offsetOne(disc, mm(-20.5))).toMatchObject({
    refusal: { code: 'OFFSET_VANISHES', distance: -20.5 },
  });
});

test('a bay whose mouth closes is refused as a hole with its area', () => {
  const c = [point(0, 0), point(100, 0), point(100, 20), point(20, 20), point(20, 80), point(100, 80)];
  const claw = [...c, point(100, 100), point(0, 100)];
  const bay = value(outlineFrom([...claw.slice(0, 3), point(100, 45), point(90, 45), ...claw.slice(3)]));
  expect(offset(bay, mm(-1)).ok).toBe(true);
  const mouth = value(
    outlineFrom([
      point(0, 0),
      point(100, 0),
      point(100, 48),
      point(90, 48),
      point(90, 20),
      point(20, 20),
      point(20, 80),
      point(90, 80),
      point(90, 52),
      point(100, 52),
      point(100, 100),
      point(0, 100),
    ]),
  );
  const refused = offset(mouth, mm(3));
  expect(refused).toMatchObject({ refusal: { code: 'LEAVES_HOLE' } });
  expect(!refused.ok && 'area' in refused.refusal && refused.refusal.area).toBeCloseTo(64 * 54, 6);
});

test('distances are refused when they are too few or not numbers', () => {
  expect(offset(window1000x600, [mm(1)])).toMatchObject({
    refusal: { code: 'DISTANCES_COUNT', distances: 1, segments: 8 },
  });
  expect(offset(window1000x600, mm(Number.NaN))).toMatchObject({
    refusal: { code: 'DISTANCE_NOT_FINITE', segment: 0 },
  });
});

test('each edge of a moved outline tells which edge it came from', () => {
  const [ring] = value(offsetTraced(window1000x600, mm(6)));
  const origins = ring!.origins.map(({ index }) => index);
  expect(ring!.origins.every(({ kind }) => kind === 'edge')).toBe(true);
  expect(origins.toSorted()).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  edges(ring!.outline).forEach((edge, i) => {
    expect(edge.kind).toBe(edges(window1000x600)[origins[i]!]!.kind);
  });
});
