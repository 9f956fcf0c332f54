import { type Magnet, type MagnetPair, pairForce, pull } from '@panewright/magnets';
import { mm, tesla } from '@panewright/quantity';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import forceCases from './reference/forceCases.json' with { type: 'json' };
import femCases from './reference/publishedFemCases.json' with { type: 'json' };

interface CaseMagnet {
  readonly diameter_mm?: number;
  readonly length_x_mm?: number;
  readonly length_y_mm?: number;
  readonly thickness_mm: number;
}

const disc = (diameter: number, thickness: number): Magnet => ({
  kind: 'disc',
  diameter: mm(diameter),
  thickness: mm(thickness),
});
const block = (width: number, height: number, thickness: number): Magnet => ({
  kind: 'block',
  width: mm(width),
  height: mm(height),
  thickness: mm(thickness),
});
const fromCase = (m: CaseMagnet) =>
  m.diameter_mm === undefined
    ? block(m.length_x_mm!, m.length_y_mm!, m.thickness_mm)
    : disc(m.diameter_mm, m.thickness_mm);

function pairOf(
  a: Magnet,
  b: Magnet,
  gap: number,
  dx = 0,
  dy = 0,
  remanenceA = 1,
  remanenceB = 1,
): MagnetPair {
  return {
    a,
    b,
    remanenceA: tesla(remanenceA),
    remanenceB: tesla(remanenceB),
    gap: mm(gap),
    offset: { dx: mm(dx), dy: mm(dy) },
  };
}

function force(pair: MagnetPair): [number, number, number] {
  const result = pairForce(pair);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return [result.value.x, result.value.y, result.value.z];
}

/** Largest component error, against the size of the expected force. */
function worst(found: readonly number[], expected: readonly number[]): number {
  return Math.max(...found.map((value, i) => Math.abs(value - expected[i]!))) / Math.hypot(...expected);
}

describe('forces agree with independent reference solutions', () => {
  test.each(forceCases.cases)('$id: $kind pair at $gap_mm mm', (c) => {
    const [dx, dy] = c.offset_mm as [number, number];
    const found = force(pairOf(fromCase(c.a), fromCase(c.b), c.gap_mm, dx, dy, c.BrA_T, c.BrB_T));
    expect(worst(found, c.force_N)).toBeLessThan(c.origin === 'computed' ? 1e-8 : c.tol_rel);
  });

  test.each(femCases.cases)('$id: two cubes, finite elements, within their own 4 %', (c) => {
    const [x, y, z] = c.centre_offset_m as [number, number, number];
    const gap = 1000 * (z - c.a[2]! / 2 - c.b[2]! / 2);
    const [ax, ay, az] = c.a.map((v) => v * 1000) as [number, number, number];
    const [bx, by, bz] = c.b.map((v) => v * 1000) as [number, number, number];
    const found = force(pairOf(block(ax, ay, az), block(bx, by, bz), gap, 1000 * x, 1000 * y));
    expect(worst(found, c.force_N)).toBeLessThan(c.tol_rel);
  });
});

describe('laws every pair obeys', () => {
  const size = fc.double({ min: 2, max: 40, noNaN: true });
  const thin = fc.double({ min: 1, max: 8, noNaN: true });
  const magnet = fc.oneof(
    fc.tuple(size, thin).map(([d, t]) => disc(d, t)),
    fc.tuple(size, size, thin).map(([w, h, t]) => block(w, h, t)),
  );
  const shift = fc.double({ min: -30, max: 30, noNaN: true });
  const gap = fc.double({ min: 0.1, max: 15, noNaN: true });
  const pairs = fc
    .tuple(magnet, magnet, gap, shift, shift)
    .map(([a, b, g, dx, dy]) => pairOf(a, b, g, dx, dy));

  test('swapping the magnets and turning the offset round keeps the pull and turns the side force', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const [x, y, z] = force(pair);
        const [sx, sy, sz] = force({
          ...pair,
          a: pair.b,
          b: pair.a,
          offset: { dx: mm(-pair.offset!.dx), dy: mm(-pair.offset!.dy) },
        });
        expect(worst([-sx, -sy, sz], [x, y, z])).toBeLessThan(1e-7);
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  test('every length times k gives k squared the force; the force follows both remanences', () => {
    fc.assert(
      fc.property(pairs, fc.double({ min: 0.2, max: 5, noNaN: true }), (pair, k) => {
        const grown = (m: Magnet): Magnet =>
          m.kind === 'disc'
            ? disc(m.diameter * k, m.thickness * k)
            : block(m.width * k, m.height * k, m.thickness * k);
        const { dx, dy } = pair.offset!;
        const found = force(pairOf(grown(pair.a), grown(pair.b), pair.gap * k, dx * k, dy * k, 1.4, 0.7));
        expect(
          worst(
            found,
            force(pair).map((f) => f * k * k * 1.4 * 0.7),
          ),
        ).toBeLessThan(1e-7);
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  test('mirroring the offset in an axis mirrors that side force alone', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const { dx, dy } = pair.offset!;
        const [x, y, z] = force(pair);
        const [mx, my, mz] = force({ ...pair, offset: { dx: mm(-dx), dy } });
        expect(worst([-mx, my, mz], [x, y, z])).toBeLessThan(1e-7);
      }),
      { numRuns: 100, seed: 13 },
    );
  });

  test('aligned magnets feel no side force', () => {
    fc.assert(
      fc.property(magnet, magnet, gap, (a, b, g) => {
        const [x, y, z] = force(pairOf(a, b, g));
        expect(Math.hypot(x, y)).toBeLessThan(1e-10 * Math.abs(z) + 1e-12);
        expect(z).toBeLessThan(0);
      }),
      { numRuns: 100, seed: 14 },
    );
  });

  test('far apart, the pull is the dipole law 3 mu0 m1 m2 / (2 pi d^4)', () => {
    for (const [a, b] of [
      [disc(10, 3), disc(8, 2)],
      [block(20, 10, 3), block(10, 10, 5)],
      [block(20, 10, 3), disc(10, 3)],
    ] as const) {
      const volume = (m: Magnet) =>
        1e-9 *
        (m.kind === 'disc'
          ? (Math.PI / 4) * m.diameter ** 2 * m.thickness
          : m.width * m.height * m.thickness);
      const distance = 2000;
      const mu0 = 4e-7 * Math.PI;
      const moments = (volume(a) * volume(b)) / mu0 ** 2;
      const expected = (3 * mu0 * moments) / (2 * Math.PI * (distance / 1000) ** 4);
      const [, , z] = force(pairOf(a, b, distance - (a.thickness + b.thickness) / 2));
      expect(Math.abs(-z / expected - 1)).toBeLessThan(5e-4);
    }
  });

  test('the force runs on smoothly where the far form takes over', () => {
    for (const [a, b] of [
      [disc(10, 3), disc(10, 3)],
      [disc(25, 6), disc(8, 2)],
      [block(40, 10, 4), block(20, 10, 3)],
      [block(20, 10, 3), disc(12, 3)],
    ] as const) {
      const ball = (m: Magnet) =>
        0.5 * Math.hypot(m.kind === 'disc' ? m.diameter : Math.hypot(m.width, m.height), m.thickness);
      const switchAt = 4.5 * (ball(a) + ball(b)) - (a.thickness + b.thickness) / 2;
      const near = force(pairOf(a, b, switchAt * (1 - 1e-9)));
      const far = force(pairOf(a, b, switchAt * (1 + 1e-9)));
      expect(worst(near, far)).toBeLessThan(1e-6);
    }
  });
});

describe('what is refused', () => {
  const good = pairOf(disc(10, 3), disc(10, 3), 5, 0, 0, 1.28, 1.28);
  test.each([
    [{ gap: mm(0) }, 'GAP_NOT_POSITIVE'],
    [{ gap: mm(-1) }, 'GAP_NOT_POSITIVE'],
    [{ gap: mm(Number.NaN) }, 'GAP_NOT_POSITIVE'],
    [{ gap: mm(1e-6) }, 'GAP_TOO_SMALL'],
    [{ a: disc(0, 3) }, 'MAGNET_SIZE_NOT_POSITIVE'],
    [{ b: block(10, Number.NaN, 3) }, 'MAGNET_SIZE_NOT_POSITIVE'],
    [{ remanenceB: tesla(12.8) }, 'REMANENCE_OUT_OF_RANGE'],
    [{ offset: { dx: mm(Number.NaN), dy: mm(0) } }, 'OFFSET_NOT_FINITE'],
  ] as const)('%j is refused as %s', (change, code) => {
    const result = pull({ ...good, ...change });
    expect(result.ok ? 'answered' : result.refusal.code).toBe(code);
  });
});
