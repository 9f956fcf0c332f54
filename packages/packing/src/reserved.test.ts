import {
  checkPlaces,
  fillSheet,
  type Instance,
  pack,
  packAround,
  type ReservedPlace,
  startPacking,
  step,
  verifyLay,
} from '@panewright/packing';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { box } from './testing/box.ts';
import { bruteForce } from './testing/bruteForce.ts';

const place = (minX: number, minY: number, maxX: number, maxY: number): ReservedPlace => ({
  minX: mm(minX),
  minY: mm(minY),
  maxX: mm(maxX),
  maxY: mm(maxY),
});

const job = (
  width: number,
  pieces: readonly (readonly [number, number, number])[],
  reserved: readonly ReservedPlace[],
  spacing = 0,
  side = 0,
): Instance => ({
  stripWidth: mm(width),
  spacing: mm(spacing),
  margin: { side: mm(side), end: mm(0) },
  pieces: pieces.map(([w, h, demand], k) => ({
    id: `p${k}`,
    demand,
    polygon: box(w, h),
    allowedRotationsDeg: [0, 90],
    flip: false,
  })),
  reserved,
});

test('a flaw in the middle of the roll: two squares go beside it, the third past it', () => {
  // 100 wide, squares of 45; the flaw takes 45 to 55 across up to x = 60: rows below and above it hold one each a length.
  const lay = pack(job(100, [[45, 45, 3]], [place(0, 45, 60, 55)]), 20_000, 1);
  if (!lay.ok) throw new Error(lay.refusal.code);
  expect(lay.value.length).toBeCloseTo(90, 4);
});

test('a flaw across the whole roll is passed over, and what fits before it lies there', () => {
  const lay = pack(job(100, [[40, 100, 2]], [place(50, -10, 60, 200)]), 5000, 1);
  if (!lay.ok) throw new Error(lay.refusal.code);
  // 0..40, then 60..100; turned, a piece is 100 long.
  expect(lay.value.length).toBeCloseTo(100, 4);
  expect(lay.value.placements.map(({ x }) => Math.round(x)).sort((a, b) => a - b)).toEqual([0, 60]);
});

test('pieces keep the spacing from a place, as from one another', () => {
  const lay = pack(job(110, [[50, 100, 1]], [place(0, 0, 10, 100)], 4, 5), 2000, 1);
  if (!lay.ok) throw new Error(lay.refusal.code);
  expect(lay.value.length).toBeCloseTo(64, 4);
});

// Oracle: every whole place of whole rectangles, the reserved one among them as a piece that lies still.
test('small instances with a reserved place are as short as trying every whole place finds', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 3, max: 5 }),
      fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 })), {
        minLength: 1,
        maxLength: 4,
      }),
      fc.tuple(
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 1, max: 2 }),
      ),
      (width, rects, [x, y, size]) => {
        if (y >= width) return;
        const least = bruteForce(width, rects, [x, y, x + size, Math.min(width, y + size)]);
        const instance = job(
          width,
          rects.map(([w, h]) => [w, h, 1] as const),
          [place(x, y, x + size, y + size)],
        );
        const lay = pack(instance, 10_000, 1);
        if (!lay.ok) throw new Error(lay.refusal.code);
        expect(verifyLay(instance, lay.value).ok).toBe(true);
        expect(lay.value.length).toBeLessThanOrEqual(least + 1e-4);
      },
    ),
    { numRuns: 30, seed: 3 },
  );
});

test('whatever is reserved, every lay keeps clear of it: searched, resumed, kept by hand and on a sheet', () => {
  const side = fc.integer({ min: 30, max: 300 });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(side, side, fc.integer({ min: 1, max: 4 })), { minLength: 1, maxLength: 4 }),
      fc.array(fc.tuple(fc.integer({ min: -50, max: 900 }), fc.integer({ min: -50, max: 390 }), side, side), {
        minLength: 1,
        maxLength: 3,
      }),
      (pieces, places) => {
        const reserved = places.map(([x, y, w, h]) => place(x, y, x + w, y + h));
        const instance = job(400, pieces, reserved, 3, 10);
        const started = startPacking(instance, 5, 6000);
        if (!started.ok) throw new Error(started.refusal.code);
        const stored = JSON.parse(JSON.stringify(step(started.value, 3000)));
        const { best } = step(stored, 3000);
        expect(verifyLay(instance, best).ok).toBe(true);
        const around = packAround(instance, best.placements.slice(0, 1), 500, 2);
        expect(around.ok && verifyLay(instance, around.value).ok).toBe(true);
        const filled = fillSheet(instance, mm(700), 1, 3);
        if (!filled.ok) throw new Error(filled.refusal.code);
        expect(checkPlaces(instance, filled.value.placements).ok).toBe(true);
        // The same lay on cloth that has no flaw is a lay too; one that lies on the flaw is refused by its place.
        const [first] = best.placements;
        const at = box(1, 1);
        const onIt = { ...instance, pieces: [{ ...instance.pieces[0]!, polygon: at, demand: 1 }] };
        const { minX, minY } = reserved[0]!;
        if (minX > 0 && minY > 10 && minY < 380) {
          const moved = { ...first!, pieceId: 'p0', copy: 0, rotationDeg: 0, x: mm(minX), y: mm(minY) };
          expect(checkPlaces(onIt, [moved])).toMatchObject({ refusal: { code: 'LAY_MEETS_RESERVED' } });
        }
      },
    ),
    { numRuns: 10 },
  );
});
