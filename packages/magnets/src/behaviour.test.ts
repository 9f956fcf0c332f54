import {
  centringStiffness,
  type Magnet,
  type MagnetPair,
  offsetCurve,
  offsetPeaks,
  pairForce,
  pullWithNeighbours,
  slipHold,
  steelPull,
} from '@panewright/magnets';
import { mm, radian, tesla } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';

// Expected figures: a survey of the same pairs by independent programs (ring-field integral, Akoun-Yonnet and
// magpylib face quadrature), printed to three digits; remanence 1.28 T unless said.

const disc = (d: number, t: number): Magnet => ({ kind: 'disc', diameter: mm(d), thickness: mm(t) });
const block = (w: number, h: number, t: number): Magnet => ({
  kind: 'block',
  width: mm(w),
  height: mm(h),
  thickness: mm(t),
});
const pairOf = (a: Magnet, b: Magnet, gap: number, remanence = 1.28): MagnetPair => ({
  a,
  b,
  remanenceA: tesla(remanence),
  remanenceB: tesla(remanence),
  gap: mm(gap),
});
function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}
const ALONG = radian(0);

describe('offset of equal discs', () => {
  test.each([
    [8, 2, 3, 2.08, 1.0, 3.9, 1.4, 3.6, 6.6, 0.44],
    [10, 3, 3, 5.27, 2.51, 4.8, 1.7, 4.3, 8.1, 0.94],
    [10, 3, 5, 2.73, 1.32, 5.3, 2.0, 4.9, 9.1, 0.42],
    [15, 3, 5, 6.27, 2.99, 7.1, 2.5, 6.4, 11.9, 0.76],
    [20, 5, 5, 20.4, 9.52, 9.1, 3.1, 8.2, 15.6, 1.96],
    [20, 5, 8, 11.9, 5.77, 10.0, 3.5, 9.1, 16.8, 1.0],
    [25, 5, 8, 18.3, 8.69, 11.7, 4.0, 10.5, 19.8, 1.35],
  ])('%d x %d at %d mm', (d, t, gap, full, side, at, tenth, half, none, stiffness) => {
    const pair = pairOf(disc(d, t), disc(d, t), gap);
    const peaks = value(offsetPeaks(pair, ALONG));
    expect(Math.abs(peaks.pull.pull / full - 1)).toBeLessThan(0.006);
    expect(peaks.pull.offset).toBe(0);
    expect(Math.abs(peaks.restoring.restoring / side - 1)).toBeLessThan(0.006);
    expect(Math.abs(peaks.restoring.offset - at)).toBeLessThan(0.1);
    const k = value(centringStiffness(pair));
    expect(Math.abs(k.x / stiffness - 1)).toBeLessThan(0.015);
    expect(k.pushesOff).toBe(false);
    const curve = value(offsetCurve(pair, ALONG, [tenth, half, none].map(mm)));
    expect(Math.abs(curve[0]!.pull / peaks.pull.pull - 0.9)).toBeLessThan(0.01);
    expect(Math.abs(curve[1]!.pull / peaks.pull.pull - 0.5)).toBeLessThan(0.01);
    expect(Math.abs(curve[2]!.pull / peaks.pull.pull)).toBeLessThan(0.008);
  });
});

test('a bar holds harder across its short side than along its length', () => {
  const bar = block(20, 10, 3);
  const pair = pairOf(bar, bar, 5);
  const full = value(offsetCurve(pair, ALONG, [mm(0)]))[0]!.pull;
  expect(value(offsetPeaks(pair, ALONG)).restoring.restoring / full).toBeCloseTo(0.32, 2);
  expect(value(offsetPeaks(pair, radian(Math.PI / 2))).restoring.restoring / full).toBeCloseTo(0.6, 1);
});

describe('stiffness', () => {
  test('coaxial discs: side stiffness is half the fall of the pull with the gap (no field has a source here: Earnshaw)', () => {
    for (const [a, b, gap] of [
      [disc(10, 3), disc(10, 3), 5],
      [disc(8, 2), disc(20, 5), 3],
      [disc(25, 6), disc(6, 1.5), 0.5],
    ] as const) {
      const at = (g: number) => value(pairForce(pairOf(a, b, g))).z;
      const h = 1e-3;
      const fall = (at(gap + h) - at(gap - h)) / (2 * h);
      expect(value(centringStiffness(pairOf(a, b, gap))).x).toBeCloseTo(fall / 2, 4);
    }
  });

  test('blocks and mixed pairs: x, y and normal stiffness sum to zero', () => {
    for (const [a, b] of [
      [block(20, 10, 3), block(12, 8, 4)],
      [block(20, 10, 3), disc(12, 3)],
      [disc(12, 3), block(20, 10, 3)],
    ] as const) {
      const at = (g: number) => value(pairForce(pairOf(a, b, g))).z;
      const h = 1e-3;
      const normal = -(at(4 + h) - at(4 - h)) / (2 * h);
      const { x, y } = value(centringStiffness(pairOf(a, b, 4)));
      expect(Math.abs(x + y + normal)).toBeLessThan(1e-5 * Math.abs(normal));
    }
  });

  test('a small disc close to a larger one is pushed off centre, and no longer is at 3 mm', () => {
    const pair = (gap: number): MagnetPair => ({
      ...pairOf(disc(20, 5), disc(8, 2), gap),
      remanenceB: tesla(1.22),
    });
    expect(value(centringStiffness(pair(0.5))).pushesOff).toBe(true);
    expect(value(centringStiffness(pair(3))).pushesOff).toBe(false);
    const [centre, rim] = value(offsetCurve(pair(0.5), ALONG, [mm(3), mm(6)]));
    expect(centre!.restoring).toBeCloseTo(-0.156, 3);
    expect(rim!.pull).toBeCloseTo(5.39, 2);
    expect(value(offsetPeaks(pair(0.5), ALONG)).pull.offset).toBeGreaterThan(5);
  });
});

describe('sliding', () => {
  test('equal discs break away at 0.54-0.56 of the pull with friction 0.15, at 0.63-0.65 with 0.30', () => {
    for (const [d, t, gap] of [
      [8, 2, 3],
      [10, 3, 5],
      [15, 3, 5],
      [20, 5, 5],
      [25, 5, 8],
    ] as const) {
      const pair = pairOf(disc(d, t), disc(d, t), gap);
      const full = -value(pairForce(pair)).z;
      const low = value(slipHold(pair, ALONG, 0.15));
      const high = value(slipHold(pair, ALONG, 0.3));
      expect(low.breakAway / full).toBeGreaterThan(0.535);
      expect(low.breakAway / full).toBeLessThan(0.565);
      expect(high.breakAway / full).toBeGreaterThan(0.62);
      expect(high.breakAway / full).toBeLessThan(0.655);
      expect(low.noVisibleSlip / full).toBeCloseTo(0.15, 12);
      expect(low.at.offset / (d / 2)).toBeGreaterThan(0.6);
      expect(low.at.offset / (d / 2)).toBeLessThan(1);
    }
  });

  test('a friction that no glass has is refused', () => {
    const result = slipHold(pairOf(disc(10, 3), disc(10, 3), 5), ALONG, 15);
    expect(result.ok ? '' : result.refusal.code).toBe('FRICTION_OUT_OF_RANGE');
  });
});

describe('neighbours', () => {
  const pair = pairOf(disc(15, 3), disc(15, 3), 5, 1.32);
  test.each([
    [20, 'north', -0.077],
    [30, 'north', -0.014],
    [40, 'north', -0.0033],
    [20, 'south', 0.077],
    [30, 'south', 0.014],
  ] as const)('one pair %d mm off, %s out, changes the pull by %d', (pitch, poleOut, share) => {
    const [first] = value(
      pullWithNeighbours([
        { pair, x: mm(0), y: mm(0), poleOut: 'north' },
        { pair, x: mm(pitch), y: mm(0), poleOut },
      ]),
    );
    expect(first!.neighbours).toBe(1);
    expect(first!.pull / first!.own - 1).toBeCloseTo(share, 3);
  });

  test('neighbours three diameters off are left out', () => {
    const places = [0, 45].map((x) => ({ pair, x: mm(x), y: mm(0), poleOut: 'north' as const }));
    expect(value(pullWithNeighbours(places))[0]).toMatchObject({ neighbours: 0 });
  });
});

describe('steel', () => {
  const magnet = disc(10, 3);
  const remanence = tesla(1.28);
  const wide = { thickness: mm(5), width: mm(60) };

  test('a wide thick strip pulls as the mirror image: as an equal magnet at twice the gap', () => {
    const found = value(steelPull({ magnet, remanence, gap: mm(2.5), strip: wide }));
    expect(found.most).toBeCloseTo(-value(pairForce(pairOf(magnet, magnet, 5))).z, 12);
  });

  test('the image force is the Maxwell stress over the plate, B normal squared over 2 mu0', () => {
    // Second method: twice the field of the disc on the plate, from rings of charge summed by hand, no pair force.
    const gap = 2.5;
    const normalField = (rho: number) => {
      let total = 0;
      const rings = 40;
      const turns = 48;
      for (let i = 0; i < rings; i++) {
        const r = (5 * (i + 0.5)) / rings;
        for (let k = 0; k < turns; k++) {
          const angle = (2 * Math.PI * (k + 0.5)) / turns;
          const plane = rho * rho + r * r - 2 * rho * r * Math.cos(angle);
          const charge = (r * (5 / rings) * 2 * Math.PI) / turns;
          total += charge * (gap / (plane + gap ** 2) ** 1.5 - (gap + 3) / (plane + (gap + 3) ** 2) ** 1.5);
        }
      }
      return (2 * 1.28 * total) / (4 * Math.PI);
    };
    let force = 0;
    const step = 0.2;
    for (let rho = step / 2; rho < 60; rho += step) {
      force += (normalField(rho) ** 2 / (2 * 4e-7 * Math.PI)) * 2 * Math.PI * rho * step * 1e-6;
    }
    const found = value(steelPull({ magnet, remanence, gap: mm(gap), strip: wide }));
    expect(Math.abs(found.most / force - 1)).toBeLessThan(2e-3);
  });

  test('all the flux of a long magnet that touches the steel enters it', () => {
    // Limit: flux J A, through the section pi D t of a wide plate: B = J D / (4 t).
    const long = disc(10, 4000);
    const strip = { thickness: mm(3), width: mm(500) };
    const found = value(steelPull({ magnet: long, remanence: tesla(1), gap: mm(0.25), strip }));
    expect(found.fluxDensity / (10 / 12)).toBeGreaterThan(0.75);
    expect(found.fluxDensity / (10 / 12)).toBeLessThan(1);
    const square = block(10, 10, 4000);
    const same = value(steelPull({ magnet: square, remanence: tesla(1), gap: mm(0.25), strip }));
    expect(same.fluxDensity / (100 / 40 / 3)).toBeGreaterThan(0.75);
    expect(same.fluxDensity / (100 / 40 / 3)).toBeLessThan(1);
  });

  test('a strip too thin to carry the flux is refused with the thickness that would do', () => {
    const thin = steelPull({ magnet, remanence, gap: mm(1), strip: { thickness: mm(0.3), width: mm(12) } });
    if (thin.ok || thin.refusal.code !== 'STEEL_SATURATES') throw new Error('expected saturation');
    const { leastThickness } = thin.refusal;
    expect(leastThickness).toBeGreaterThan(0.3);
    const enough = mm(leastThickness * 1.001);
    expect(steelPull({ magnet, remanence, gap: mm(1), strip: { thickness: enough, width: mm(12) } }).ok).toBe(
      true,
    );
  });

  test('a strip narrower than the magnet is refused', () => {
    const narrow = steelPull({ magnet, remanence, gap: mm(1), strip: { thickness: mm(2), width: mm(8) } });
    expect(narrow.ok ? '' : narrow.refusal.code).toBe('STEEL_NARROWER_THAN_MAGNET');
  });
});
