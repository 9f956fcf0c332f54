import { checkPlaces, type Instance, type Placement, pack, packAround, verifyLay } from '@panewright/packing';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { box } from './testing/box.ts';

const instance = (pieces: readonly (readonly [number, number, number])[], width = 1000): Instance => ({
  stripWidth: mm(width),
  spacing: mm(3),
  margin: { side: mm(10), end: mm(0) },
  pieces: pieces.map(([w, h, demand], k) => ({
    id: `p${k}`,
    demand,
    polygon: box(w, h),
    allowedRotationsDeg: [0, 90],
    flip: false,
  })),
});

const at = (pieceId: string, copy: number, x: number, y: number, rotationDeg = 0): Placement => ({
  pieceId,
  copy,
  rotationDeg,
  flipped: false,
  x: mm(x),
  y: mm(y),
});

test('four squares, one kept: the others go round it, and nothing shorter can be', () => {
  // Two rows of two: 2 × 300 + one gap of 3. The kept one lies at the right of the lower row.
  const job = instance([[300, 300, 4]], 640);
  const kept = [at('p0', 2, 303, 10)];
  const lay = packAround(job, kept, 10_000, 1);
  if (!lay.ok) throw new Error(lay.refusal.code);
  expect(lay.value.length).toBeCloseTo(603, 3);
  expect(lay.value.placements.find(({ copy }) => copy === 2)).toEqual(kept[0]);
  expect(verifyLay(job, lay.value).ok).toBe(true);
});

test('whatever is kept of a lay stays, and the lay is true', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(
          fc.integer({ min: 40, max: 600 }),
          fc.integer({ min: 40, max: 600 }),
          fc.integer({ min: 1, max: 3 }),
        ),
        { minLength: 1, maxLength: 4 },
      ),
      fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
      fc.double({ min: 0, max: 500, noNaN: true }),
      (pieces, keep, shift) => {
        const job = instance(pieces);
        const first = pack(job, 2000, 1);
        if (!first.ok) throw new Error(first.refusal.code);
        // A whole lay moved along the cloth is a lay too: kept pieces need not lie where the engine would lay them.
        const kept = first.value.placements
          .filter((_, k) => keep[k % keep.length])
          .map((one) => ({ ...one, x: mm(one.x + shift) }));
        const lay = packAround(job, kept, 500, 7);
        if (!lay.ok) throw new Error(lay.refusal.code);
        expect(verifyLay(job, lay.value).ok).toBe(true);
        for (const one of kept) expect(lay.value.placements).toContainEqual(one);
        expect(packAround(job, kept, 500, 7)).toEqual(lay);
      },
    ),
    { numRuns: 25 },
  );
});

test('places that overlap, leave the cloth, turn as they may not or are unknown are refused by name', () => {
  const job = instance([[300, 200, 2]]);
  const code = (...kept: Placement[]) => {
    const lay = packAround(job, kept, 0, 1);
    return lay.ok ? null : lay.refusal;
  };
  expect(code(at('p0', 1, 0, 100), at('p0', 0, 250, 100))).toMatchObject({
    code: 'LAY_PIECES_OVERLAP',
    first: { pieceId: 'p0', copy: 1 },
    second: { pieceId: 'p0', copy: 0 },
  });
  expect(code(at('p0', 0, 0, 100), at('p0', 1, 301, 100))).toMatchObject({ code: 'LAY_PIECES_TOO_CLOSE' });
  expect(code(at('p0', 1, -5, 100))).toMatchObject({
    code: 'LAY_OUTSIDE_CLOTH',
    of: { copy: 1 },
    edge: 'start',
  });
  expect(code(at('p0', 0, 0, 5))).toMatchObject({ code: 'LAY_OUTSIDE_CLOTH' });
  expect(code(at('p0', 0, 300, 100, 45))).toMatchObject({ code: 'LAY_TURN_NOT_ALLOWED' });
  expect(code(at('p0', 2, 0, 100))).toMatchObject({ code: 'LAY_COPY_UNKNOWN' });
  expect(code(at('p0', 0, 0, 100), at('p0', 0, 400, 100))).toMatchObject({ code: 'LAY_COPY_TWICE' });
  expect(code(at('px', 0, 0, 100))).toMatchObject({ code: 'LAY_PIECE_UNKNOWN' });
  expect(code(at('p0', 0, Number.NaN, 100))).toMatchObject({ code: 'LAY_PLACE_NOT_FINITE' });
});

test('the length of some places is that of the rightmost', () => {
  const job = instance([[300, 200, 2]]);
  expect(checkPlaces(job, [at('p0', 1, 50, 100)])).toEqual({ ok: true, value: 350 });
  expect(checkPlaces(job, [])).toEqual({ ok: true, value: 0 });
});
