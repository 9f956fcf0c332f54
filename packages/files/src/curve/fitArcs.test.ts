import { arcOf, area, edges, length, nearest, type Outline, point, tangentAt } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dxfText, pairs, svgText } from '../testing/drawingText.ts';
import { ellipsePerimeter } from '../testing/ellipsePerimeter.ts';
import { readFile, tried } from '../testing/read.ts';

/** The one outline of a file. */
const outlineOf = (text: string, tolerance: number): Outline =>
  readFile(text, { arcTolerance: mm(tolerance) }).outlines[0]!.outline;

const ellipseDxf = (a: number, b: number) =>
  dxfText(
    pairs(
      [0, 'ELLIPSE'],
      [8, '0'],
      [10, 0],
      [20, 0],
      [11, a],
      [21, 0],
      [40, b / a],
      [41, 0],
      [42, 2 * Math.PI],
    ),
  );

// Oracle: area π a b; perimeter by the arithmetic-geometric mean; the implicit equation for the distance, to first order.
for (const [a, b] of [
  [300, 180],
  [500, 50],
  [250, 249],
  [40, 39.99],
] as const)
  for (const tolerance of [0.5, 0.05, 0.005])
    test(`an ellipse ${a} × ${b} is drawn within ${tolerance} mm by arcs that meet smoothly`, () => {
      const outline = outlineOf(ellipseDxf(a, b), tolerance);
      const around = ellipsePerimeter(a, b);
      expect(Math.abs(area(outline) - Math.PI * a * b)).toBeLessThan(tolerance * around);
      expect(Math.abs(length(outline) / around - 1)).toBeLessThan(tolerance / b);
      expect(Math.abs(length(outline) - around)).toBeLessThan(7 * tolerance);
      for (let k = 0; k < 1000; k++) {
        const t = (2 * Math.PI * k) / 1000;
        const p = point(a * Math.cos(t), b * Math.sin(t));
        expect(nearest(outline, p).distance).toBeLessThan(tolerance);
      }
      expect(widestTurn(outline)).toBeLessThan(1e-6);
    });

/** The sharpest corner where two edges meet, radians. */
function widestTurn(outline: Outline): number {
  const all = edges(outline);
  let [widest, along] = [0, 0];
  for (const edge of all) {
    const start = tangentAt(outline, mm(along + 1e-9 * edge.length));
    const before = tangentAt(outline, mm(along - 1e-9 * edge.length));
    widest = Math.max(
      widest,
      Math.abs(Math.atan2(before.x * start.y - before.y * start.x, before.x * start.x + before.y * start.y)),
    );
    along += edge.length;
  }
  return widest;
}

test('a tenfold tolerance takes about half the arcs: a biarc errs by the third power of its length', () => {
  const counts = [0.5, 0.05, 0.005, 0.0005].map(
    (tolerance) => outlineOf(ellipseDxf(300, 180), tolerance).segments.length,
  );
  for (let k = 1; k < counts.length; k++) {
    expect(counts[k]! / counts[k - 1]!).toBeGreaterThan(1.6);
    expect(counts[k]! / counts[k - 1]!).toBeLessThan(2.8);
  }
});

const cubicAt = (p: readonly (readonly [number, number])[], t: number) => {
  const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
  return point(
    weights.reduce((sum, w, i) => sum + w * p[i]![0], 0),
    -weights.reduce((sum, w, i) => sum + w * p[i]![1], 0),
  );
};

test('any cubic that does not cross itself is followed within the tolerance, both ways', () => {
  const spot = fc.tuple(fc.integer({ min: 100, max: 900 }), fc.integer({ min: 100, max: 600 }));
  const tolerance = fc.constantFrom(0.5, 0.05, 0.01);
  let read = 0;
  fc.assert(
    fc.property(spot, spot, tolerance, (second, third, within) => {
      const controls = [[100, 700], second, third, [900, 700]] as const;
      const [a, b, c, d] = controls.map((p) => p.join(' '));
      const result = tried(svgText(`<path d="M${a}C${b} ${c} ${d}V900H100Z"/>`), {
        arcTolerance: mm(within),
      });
      if (!result.ok) return result.refusal.code === 'FILE_OUTLINE_CROSSES_ITSELF';
      read++;
      const { outline } = result.value.outlines[0]!;
      for (let k = 0; k <= 200; k++)
        if (nearest(outline, cubicAt(controls, k / 200)).distance > within) return false;
      // The other way: the arcs' middles lie near the curve, which 1000 of its points stand for.
      const curve = Array.from({ length: 1001 }, (_, k) => cubicAt(controls, k / 1000));
      return edges(outline).every((edge) => {
        const bend = arcOf(edge);
        if (!bend) return true;
        const angle = bend.start + bend.sweep / 2;
        const [x, y] = [
          bend.centre.x + bend.radius * Math.cos(angle),
          bend.centre.y + bend.radius * Math.sin(angle),
        ];
        return Math.min(...curve.map((p) => Math.hypot(p.x - x, p.y - y))) < within + 1.5;
      });
    }),
    { numRuns: 24, seed: 3 },
  );
  expect(read).toBeGreaterThan(8);
});

test('a cusp, a straight cubic and one that stands still at its ends are followed', () => {
  // By hand: a cubic whose control points lie on a line and go forward only is that line.
  const straight = outlineOf(svgText('<path d="M100 100C300 100 500 100 900 100V500H100Z"/>'), 0.05);
  expect(straight.segments.length).toBe(4);
  expect(area(straight)).toBeCloseTo(320_000, 6);
  // Control points in the corners: the curve stands still there. Area under it by the Bernstein form: 3/5 of the box.
  const still = outlineOf(svgText('<path d="M100 500C100 500 100 100 500 100V900H100Z"/>'), 0.05);
  expect(still.segments.length).toBeLessThan(60);
  // A cusp where the control polygon crosses itself evenly: (0,0) (1,1) (0,1) (1,0) scaled.
  const cusp = outlineOf(svgText('<path d="M100 500C900 100 100 100 900 500V800H100Z"/>'), 0.05);
  for (let k = 0; k <= 200; k++) {
    const p = cubicAt(
      [
        [100, 500],
        [900, 100],
        [100, 100],
        [900, 500],
      ],
      k / 200,
    );
    expect(nearest(cusp, p).distance).toBeLessThan(0.05);
  }
});

test('a rational spline of degree 2 that is a circle comes back as a circle', () => {
  // Oracle: nine control points with weights 1 and √½ on a square are a circle exactly (any text on NURBS).
  const w = Math.SQRT1_2;
  const ring = [
    [1, 0],
    [1, 1],
    [0, 1],
    [-1, 1],
    [-1, 0],
    [-1, -1],
    [0, -1],
    [1, -1],
    [1, 0],
  ] as const;
  const knots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4];
  const spline = pairs(
    [0, 'SPLINE'],
    [8, '0'],
    [70, 4],
    [71, 2],
    [72, 12],
    [73, 9],
    ...knots.map((knot) => [40, knot] as const),
    ...ring.map((_, i) => [41, i % 2 === 0 ? 1 : w] as const),
    ...ring.flatMap(([x, y]) => [[10, 200 * x] as const, [20, 200 * y] as const]),
  );
  const outline = outlineOf(dxfText(spline), 0.05);
  expect(outline.segments.length).toBe(4);
  expect(area(outline) / (Math.PI * 40_000)).toBeCloseTo(1, 9);
});
