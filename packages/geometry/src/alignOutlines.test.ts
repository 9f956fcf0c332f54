import {
  alignOutlines,
  alignPoints,
  circle,
  edges,
  flatten,
  moveOutline,
  movePoint,
  type Outline,
  type Point,
  point,
  type Rigid,
  roundedPolygon,
  type Segment,
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

/** Corners of a fine polygon, its long sides cut in pieces of at most 15 mm. */
function fine(outline: Outline): Point[] {
  const ring = flatten(outline, mm(0.004));
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const pieces = Math.ceil(Math.hypot(q.x - p.x, q.y - p.y) / 15);
    return Array.from({ length: pieces }, (_, k) =>
      point(p.x + ((q.x - p.x) * k) / pieces, p.y + ((q.y - p.y) * k) / pieces),
    );
  });
}

/** Two-sided Hausdorff distance of fine polygons, points against sides: none of the code tested is used. */
function hausdorff(a: readonly Point[], b: readonly Point[]): number {
  let most = 0;
  for (const [points, ring] of [
    [a, b],
    [b, a],
  ] as const)
    for (const p of points) {
      let least = Infinity;
      for (let i = 0; i < ring.length && least > most * most; i++) {
        const [q, r] = [ring[i]!, ring[(i + 1) % ring.length]!];
        const [dx, dy] = [r.x - q.x, r.y - q.y];
        const t = Math.min(1, Math.max(0, ((p.x - q.x) * dx + (p.y - q.y) * dy) / (dx * dx + dy * dy)));
        const [x, y] = [p.x - q.x - t * dx, p.y - q.y - t * dy];
        least = Math.min(least, x * x + y * y);
      }
      most = Math.max(most, Math.sqrt(least));
    }
  return most;
}

// Oracle: SciPy's orthogonal Procrustes and a hand computation, done outside the project: a 1000 × 600 rectangle turned 3°
// and moved (12, -7) with corner errors (+1,0) (-1,0) (0,+1) (0,-1) gives 3.0443°, (12.252, -7.374), rms 0.8926.
test('four measured corners give the turn, shift and rms a least-squares alignment should', () => {
  const turned = box(1000, 600).map((p) => {
    const [cos, sin] = [Math.cos(Math.PI / 60), Math.sin(Math.PI / 60)];
    return point(cos * p.x - sin * p.y + 12, sin * p.x + cos * p.y - 7);
  });
  const exact = value(alignPoints(box(1000, 600), turned));
  expect((exact.motion.angle * 180) / Math.PI).toBeCloseTo(3, 9);
  expect(exact.rms).toBeLessThan(1e-6);
  const errors = [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const;
  const measured = turned.map((p, i) => point(p.x + errors[i]![0], p.y + errors[i]![1]));
  const { motion, rms } = value(alignPoints(box(1000, 600), measured));
  expect((motion.angle * 180) / Math.PI).toBeCloseTo(3.0443, 4);
  expect(motion.shift.x).toBeCloseTo(12.252, 3);
  expect(motion.shift.y).toBeCloseTo(-7.374, 3);
  expect(rms).toBeCloseTo(0.8926, 4);
});

test('points that do not pair up are refused with their counts', () => {
  expect(alignPoints(box(1, 1), box(1, 1).slice(1))).toMatchObject({
    refusal: { code: 'POINT_COUNTS_DIFFER', from: 4, to: 3 },
  });
  expect(alignPoints([point(0, 0)], [point(0, 0)])).toMatchObject({ refusal: { code: 'TOO_FEW_POINTS' } });
});

test('an outline turned, moved or mirrored is found again to a millionth of a millimetre', () => {
  const property = fc.property(fc.nat(1e6), fc.boolean(), (seed, mirrored) => {
    const next = numbersFrom(seed);
    const outline = starOutline(seed, 3 + Math.floor(8 * next()));
    const motion: Rigid = { angle: radian(6.28 * next()), shift: point(3000 * next(), -900), mirrored };
    const found = alignOutlines(outline, moveOutline(motion, outline), { mirrored });
    expect(found.deviation).toBeLessThan(1e-6);
    expect(found.motion.mirrored).toBe(mirrored);
  });
  fc.assert(property, { seed: 60, numRuns: 25 });
});

test('a handed outline does not fit its mirror image unless mirrored', () => {
  const handed = value(roundedPolygon([point(0, 0), point(700, 0), point(600, 400), point(0, 300)], mm(40)));
  const image = moveOutline({ angle: radian(1), shift: point(50, 80), mirrored: true }, handed);
  expect(alignOutlines(handed, image).deviation).toBeGreaterThan(20);
  expect(alignOutlines(handed, image, { mirrored: true }).deviation).toBeLessThan(1e-6);
});

// Oracle: closed forms. By symmetry the best motion centres the shapes; the corners are then e and f off.
test('rectangles of other sizes differ at their corners by half the differences of their sides', () => {
  const tilted = moveOutline(
    { angle: radian(2), shift: point(400, 90), mirrored: false },
    rectangle(1006, 608),
  );
  expect(alignOutlines(rectangle(1000, 600), tilted).deviation).toBeCloseTo(Math.hypot(3, 4), 4);
  expect(alignOutlines(rectangle(1000, 600), rectangle(1004, 600)).deviation).toBeCloseTo(2, 4);
});

// Oracle: closed form. A corner lies r (√2 - 1) from a fillet of radius r; half that when the other is rounded less.
test('a sharp window and a rounded one differ by how far the fillet stays from its corner', () => {
  const { deviation, at } = alignOutlines(rectangle(1000, 600, 20), rectangle(1000, 600));
  expect(deviation).toBeCloseTo(20 * (Math.SQRT2 - 1), 4);
  const corner = box(1000, 600).some((p) => Math.hypot(p.x - at.x, p.y - at.y) < 12);
  expect(corner).toBe(true);
});

test('discs differ by the difference of their radii, however they are turned', () => {
  const [a, b] = [value(circle(point(0, 0), mm(100))), value(circle(point(700, 50), mm(103)))];
  expect(alignOutlines(a, b).deviation).toBeCloseTo(3, 4);
});

test('edges cut in two, or begun elsewhere, make no difference', () => {
  const whole = rectangle(900, 500, 60);
  const cut = edges(whole).flatMap(({ from, to, bulge }): Segment[] => {
    if (bulge !== 0) return [{ kind: 'arc', to, bulge }];
    const middle = point((from.x + to.x) / 2, (from.y + to.y) / 2);
    return [
      { kind: 'line', to: middle },
      { kind: 'line', to },
    ];
  });
  const other: Outline = { segments: [...cut.slice(5), ...cut.slice(0, 5)] as [Segment, ...Segment[]] };
  expect(alignOutlines(whole, other).deviation).toBeLessThan(1e-6);
});

// A window as a maker has it: 4 to 6 corners, fillets, each corner and radius off by up to `noise`.
function measured(seed: number, noise: number, noiseSeed: number): Outline {
  const next = numbersFrom(seed);
  const error = numbersFrom(noiseSeed);
  const count = 4 + Math.floor(3 * next());
  const [w, h] = [300 + 900 * next(), 200 + 500 * next()];
  const corners: Point[] = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.3 * next())) / count;
    const [dx, dy] = [noise * (2 * error() - 1), noise * (2 * error() - 1)];
    return point((w / 2) * Math.cos(angle) + dx, (h / 2) * Math.sin(angle) + dy);
  });
  return value(
    roundedPolygon(
      corners,
      corners.map(() => mm(5 + 25 * next() + noise * error())),
    ),
  );
}

// Oracle: random search. No motion near the one found, and none from a start all round, does better by over 1 %.
test('no small motion improves an alignment of measured windows by more than 1 %', () => {
  const property = fc.property(fc.integer({ min: 1, max: 5000 }), fc.boolean(), (seed, mirrored) => {
    const next = numbersFrom(seed + 3);
    const a = measured(seed, 0, 1);
    const about: Rigid = { angle: radian(6 * next()), shift: point(800, -300), mirrored };
    const b = moveOutline(about, measured(seed, 0.3 + 4 * next(), seed + 9));
    const found = alignOutlines(a, b, { mirrored });
    const [from, to] = [fine(a), fine(b)];
    const under = (motion: Rigid) =>
      hausdorff(
        from.map((p) => movePoint(motion, p)),
        to,
      );
    // The polygons lie within 0.004 mm of the outlines.
    expect(Math.abs(under(found.motion) - found.deviation)).toBeLessThan(0.01);
    const pivot = to[0]!;
    for (let k = 0; k < 90; k++) {
      const size = found.deviation * 0.3 ** (1 + (k % 4));
      const nudge = nudged(
        found.motion,
        pivot,
        [next(), next(), next()].map((n) => size * (2 * n - 1)),
      );
      expect(under(nudge)).toBeGreaterThan(found.deviation * 0.99 - 0.01);
    }
  });
  fc.assert(property, { seed: 61, numRuns: 8 });
});

function nudged(motion: Rigid, pivot: Point, [dx, dy, arc]: readonly number[]): Rigid {
  const spin = arc! / 400;
  const [cos, sin] = [Math.cos(spin), Math.sin(spin)];
  const [x, y] = [motion.shift.x - pivot.x, motion.shift.y - pivot.y];
  return {
    angle: radian(motion.angle + spin),
    shift: point(pivot.x + cos * x - sin * y + dx!, pivot.y + sin * x + cos * y + dy!),
    mirrored: motion.mirrored,
  };
}

test('which outline is taken onto which makes no difference to how far apart they stay', () => {
  for (const seed of [11, 12, 13]) {
    const [a, b] = [starOutline(seed, 7), starOutline(seed + 1, 7)];
    const [there, back] = [alignOutlines(a, b).deviation, alignOutlines(b, a).deviation];
    expect(Math.abs(there / back - 1)).toBeLessThan(0.01);
  }
});

test('looked for near a turn, a rectangle is found upright and not upside down', () => {
  const corners = (dx: number) => [point(0, 0), point(600 + dx, 0), point(600, 350), point(0, 350 + dx)];
  const [a, b] = [roundedPolygon(corners(0), mm(60)), roundedPolygon(corners(0.4), mm(60))];
  if (!a.ok || !b.ok) throw new Error('the test’s own outlines');
  const upright = alignOutlines(a.value, b.value, { near: radian(0) });
  expect(Math.abs(upright.motion.angle)).toBeLessThan(0.01);
  const turned = alignOutlines(a.value, b.value, { near: radian(Math.PI) });
  expect(Math.cos(turned.motion.angle)).toBeCloseTo(-1, 4);
  const any = alignOutlines(a.value, b.value);
  expect(Math.min(upright.deviation, turned.deviation)).toBeCloseTo(any.deviation, 4);
});
