import {
  compassDistance,
  contactPull,
  fieldOnAxis,
  fluxIndex,
  HAZARDOUS_FLUX_INDEX,
  implantDistance,
  type LooseMagnet,
} from '@panewright/magnets';
import { mm, tesla } from '@panewright/quantity';
import { expect, test } from 'vitest';

const disc = (d: number, t: number, remanence: number): LooseMagnet => ({
  magnet: { kind: 'disc', diameter: mm(d), thickness: mm(t) },
  remanence: tesla(remanence),
});
const block = (w: number, h: number, t: number, remanence: number): LooseMagnet => ({
  magnet: { kind: 'block', width: mm(w), height: mm(h), thickness: mm(t) },
  remanence: tesla(remanence),
});
function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}
const pairs = (magnet: LooseMagnet, count = 1) => Array.from({ length: 2 * count }, () => magnet);

// Expected: the dipole table worked out elsewhere from m = Br V / mu0, printed to two or three digits (m).
test.each([
  ['8x2', disc(8, 2, 1.28), 0.51, 0.76, 1.7],
  ['10x3', disc(10, 3, 1.28), 0.67, 1.01, 2.3],
  ['20x5', disc(20, 5, 1.28), 1.27, 1.89, 4.3],
  ['25x6', disc(25, 6, 1.42), 1.62, 2.42, 5.5],
  ['20x10x3', block(20, 10, 3, 1.28), 0.92, 1.37, 3.2],
  ['50x20x6', block(50, 20, 6, 1.42), 2.05, 3.06, 7.0],
])('a pair of %s is kept %#1 from a compass', (_name, magnet, steering, standard, forty) => {
  expect(Math.abs(value(compassDistance(pairs(magnet), 'steering')) / 1000 - steering)).toBeLessThan(0.006);
  expect(Math.abs(value(compassDistance(pairs(magnet), 'standard')) / 1000 - standard)).toBeLessThan(0.006);
  expect(Math.abs(value(compassDistance(pairs(magnet, 40), 'steering')) / 1000 - forty)).toBeLessThan(0.06);
});

// 150 mm floor (FDA notice of 13 May 2021) or 0.5 mT (ICNIRP 2009): radii printed elsewhere in whole cm.
test('implants: 150 mm for small pairs, 18 cm for a pair of 50 x 20 x 6', () => {
  expect(value(implantDistance(pairs(disc(20, 5, 1.28))))).toBe(150);
  expect(value(implantDistance(pairs(block(50, 20, 6, 1.42)))) / 10).toBeCloseTo(17.6, 1);
});

test('no list of magnets gives no distance', () => {
  const result = compassDistance([], 'steering');
  expect(result.ok ? '' : result.refusal.code).toBe('NO_MAGNETS');
  const bad = implantDistance([disc(10, 3, 1.2), disc(-1, 3, 1.2)]);
  expect(bad.ok ? {} : bad.refusal).toMatchObject({ code: 'LOOSE_MAGNET_REFUSED', at: 1 });
});

// 16 CFR 1262.2: 50 kG2 mm2; indices of common discs worked out elsewhere from the on-axis field.
test.each([
  [disc(8, 2, 1.28), 358],
  [disc(10, 3, 1.28), 754],
  [disc(20, 5, 1.28), 2444],
  [disc(25, 6, 1.42), 4453],
])('flux index of %j is %d kG2 mm2, past the limit', (magnet, index) => {
  const found = value(fluxIndex(magnet));
  expect(Math.abs(found / index - 1)).toBeLessThan(0.002);
  expect(found).toBeGreaterThan(HAZARDOUS_FLUX_INDEX);
});

test('far on the axis the field is the dipole field Br V / (2 pi r^3), for discs and blocks', () => {
  for (const magnet of [disc(10, 3, 1.2), block(20, 10, 3, 1.2)]) {
    const m = magnet.magnet;
    const volume =
      m.kind === 'disc' ? (Math.PI / 4) * m.diameter ** 2 * m.thickness : m.width * m.height * m.thickness;
    const r = 1000;
    const found = value(fieldOnAxis(magnet, mm(r - m.thickness / 2)));
    expect(Math.abs(found / ((1.2 * volume) / (2 * Math.PI * r ** 3)) - 1)).toBeLessThan(3e-4);
  }
});

test('a 20 x 5 pair meets with 61 N at 0.5 mm', () => {
  const { magnet, remanence } = disc(20, 5, 1.28);
  const pair = { a: magnet, b: magnet, remanenceA: remanence, remanenceB: remanence, gap: mm(5) };
  expect(value(contactPull(pair, mm(0.5)))).toBeCloseTo(61.454793, 5);
});
