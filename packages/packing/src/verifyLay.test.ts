import {
  type BenchmarkJson,
  benchmarkInstance,
  type Instance,
  type Layout,
  type Placement,
  verifyLay,
} from '@panewright/packing';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';
import albano from './reference/albano.json' with { type: 'json' };
import albanoPublished from './reference/albanoPublished.json' with { type: 'json' };
import gardeyn0 from './reference/gardeyn0.json' with { type: 'json' };
import gardeyn0Published from './reference/gardeyn0Published.json' with { type: 'json' };

interface PublishedJson {
  readonly length: number;
  readonly placements: readonly { pieceId: number; rotationDeg: number; x: number; y: number }[];
}

function areaOf(instance: Instance): number {
  return instance.pieces.reduce((sum, { demand, polygon }) => {
    const twice = polygon.reduce((s, [x, y], k) => {
      const [u, v] = polygon[(k + 1) % polygon.length]!;
      return s + x * v - u * y;
    }, 0);
    return sum + (demand * twice) / 2;
  }, 0);
}

function published(instance: Instance, json: PublishedJson): Layout {
  const counts = new Map<number, number>();
  const placements = json.placements.map(({ pieceId, rotationDeg, x, y }): Placement => {
    const copy = counts.get(pieceId) ?? 0;
    counts.set(pieceId, copy + 1);
    return { pieceId, copy, rotationDeg, flipped: false, x: mm(x), y: mm(y) };
  });
  return {
    length: mm(json.length),
    density: areaOf(instance) / (instance.stripWidth * json.length),
    placements,
  };
}

// Oracle: record layouts published with the sparrow paper (Gardeyn, Vanden Berghe & Wauters 2025), MIT.
for (const [name, json, record, density] of [
  ['albano', albano, albanoPublished, 0.8982],
  ['gardeyn0', gardeyn0, gardeyn0Published, 0.8985],
] as const) {
  test(`the published record of ${name} is a true lay of ${density * 100} %`, () => {
    const instance = benchmarkInstance(json as BenchmarkJson);
    const layout = published(instance, record);
    expect(verifyLay(instance, layout, 1e-9)).toEqual({ ok: true, value: layout });
    expect(layout.density).toBeCloseTo(density, 4);
  });
}

const instance = benchmarkInstance(albano as BenchmarkJson);
const record = published(instance, albanoPublished);
const changed = (k: number, by: (p: Placement) => Partial<Placement>): Layout => ({
  ...record,
  placements: record.placements.map((p, i) => (i === k ? { ...p, ...by(p) } : p)),
});
const codeOf = (layout: Layout, tolerance?: number) => {
  const result = verifyLay(instance, layout, tolerance);
  return result.ok ? 'ok' : result.refusal.code;
};

test('a record lay with one piece missing is refused by piece and count', () => {
  const layout = { ...record, placements: record.placements.slice(1) };
  expect(verifyLay(instance, layout)).toEqual({
    ok: false,
    refusal: { code: 'LAY_DEMAND_NOT_MET', pieceId: 0, wanted: 2, laid: 1 },
  });
});

test('a record lay with a wrong turn, a flip, a strange piece, a piece laid twice or no number is refused', () => {
  expect(codeOf(changed(3, () => ({ rotationDeg: 90 })))).toBe('LAY_TURN_NOT_ALLOWED');
  expect(codeOf(changed(3, () => ({ flipped: true })))).toBe('LAY_FLIP_NOT_ALLOWED');
  expect(codeOf(changed(3, () => ({ pieceId: 77 })))).toBe('LAY_PIECE_UNKNOWN');
  expect(codeOf(changed(1, () => ({ copy: 0 })))).toBe('LAY_COPY_TWICE');
  expect(codeOf(changed(3, () => ({ x: mm(Number.NaN) })))).toBe('LAY_PLACE_NOT_FINITE');
});

test('a turn is the same turn a full circle on', () => {
  expect(codeOf(changed(0, (p) => ({ rotationDeg: p.rotationDeg + 360 })))).toBe('ok');
});

test('a piece past the cloth, a length too short and a density overstated are refused', () => {
  expect(codeOf(changed(0, () => ({ y: mm(9000) })))).toBe('LAY_OUTSIDE_CLOTH');
  expect(codeOf({ ...record, length: mm(record.length - 1) })).toBe('LAY_OUTSIDE_CLOTH');
  expect(codeOf({ ...record, length: mm(Number.NaN) })).toBe('LAY_OUTSIDE_CLOTH');
  expect(codeOf({ ...record, density: record.density + 0.001 })).toBe('LAY_DENSITY_WRONG');
});

const square = (side: number) =>
  [
    [mm(0), mm(0)],
    [mm(side), mm(0)],
    [mm(side), mm(side)],
    [mm(0), mm(side)],
  ] as const;
const two = (spacing: number): Instance => ({
  stripWidth: mm(100),
  spacing: mm(spacing),
  margin: { side: mm(0), end: mm(0) },
  pieces: [{ id: 'tile', demand: 2, polygon: square(50), allowedRotationsDeg: [0], flip: false }],
});
const apart = (dx: number, dy: number): Layout => ({
  length: mm(50 + dx),
  density: 5000 / (100 * (50 + dx)),
  placements: [
    { pieceId: 'tile', copy: 0, rotationDeg: 0, flipped: false, x: mm(0), y: mm(0) },
    { pieceId: 'tile', copy: 1, rotationDeg: 0, flipped: false, x: mm(dx), y: mm(dy) },
  ],
});
const verdict = (spacing: number, dx: number, dy: number) => {
  const result = verifyLay(two(spacing), apart(dx, dy));
  return result.ok ? 'ok' : result.refusal.code;
};

test('an overlap of 0.001 mm is refused with the pair and the place, touching is not', () => {
  expect(verdict(0, 50, 20)).toBe('ok');
  const result = verifyLay(two(0), apart(49.999, 20));
  expect(result.ok).toBe(false);
  if (result.ok || result.refusal.code !== 'LAY_PIECES_OVERLAP') throw new Error('no overlap found');
  expect([result.refusal.first.copy, result.refusal.second.copy]).toEqual([0, 1]);
  expect(result.refusal.x).toBeCloseTo(49.9995, 3);
  expect(result.refusal.y).toBeGreaterThan(20);
  expect(result.refusal.y).toBeLessThan(50);
});

test('two pieces laid on exactly the same place overlap though no edges cross', () => {
  expect(verdict(0, 0, 0)).toBe('LAY_PIECES_OVERLAP');
});

test('pieces 2.999 mm apart are too close for 3 mm, 3 mm apart are not, also corner to corner', () => {
  expect(verdict(3, 53, 0)).toBe('ok');
  expect(verdict(3, 52.999, 0)).toBe('LAY_PIECES_TOO_CLOSE');
  expect(verdict(3, 52.2, 50)).toBe('LAY_PIECES_TOO_CLOSE');
  // Corner to corner the distance is the diagonal: hypot(2.2, 2.2) = 3.11.
  const result = verifyLay(
    { ...two(3), stripWidth: mm(103) },
    {
      ...apart(52.2, 52.2),
      density: 5000 / (103 * 102.2),
    },
  );
  expect(result.ok).toBe(true);
});

// A record touches itself almost everywhere: nudging one piece 1e-3 of the width into a neighbour must show.
test('a record lay with any one piece nudged by 5 units every way is refused at least once per piece', () => {
  record.placements.forEach((_, k) => {
    const codes = [
      [5, 0],
      [-5, 0],
      [0, 5],
      [0, -5],
    ].map(([dx, dy]) => codeOf(changed(k, (p) => ({ x: mm(p.x + dx!), y: mm(p.y + dy!) }))));
    expect(codes.some((code) => code === 'LAY_PIECES_OVERLAP' || code === 'LAY_OUTSIDE_CLOTH')).toBe(true);
  });
});
