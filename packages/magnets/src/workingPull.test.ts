import { type PairTolerances, USUAL_TOLERANCES, type WorkingPair, workingPull } from '@panewright/magnets';
import { celsius, mm } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';
import { disc, INTERVAL_PAIRS, NO_TOLERANCE, pairOf, shareWithin } from './testing/pullIntervals.ts';

function value(pair: WorkingPair) {
  const result = workingPull(pair);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

describe('the interval holds what it says: 95 +- 1.5 % of pairs drawn from the tolerances', () => {
  test.each(INTERVAL_PAIRS)('%s', (_name, pair) => {
    const share = shareWithin(pair, 6000);
    expect(share).toBeGreaterThan(0.935);
    expect(share).toBeLessThan(0.965);
  });
});

describe('error budget of a 10 x 3 pair at 5 mm, against sensitivities computed elsewhere', () => {
  const bare = pairOf(disc(10, 3), disc(10, 3), 5, { coating: mm(0), tolerances: NO_TOLERANCE });
  const share = (tolerances: Partial<PairTolerances>) =>
    value({ ...bare, tolerances: { ...NO_TOLERANCE, ...tolerances } }).sources[0]!.share;

  test('remanence 1.5 % each, one batch: 3 %', () => {
    expect(share({ remanence: 0.015 })).toBeCloseTo(0.03, 3);
  });
  test('gap 0.1 mm: 3.1 %', () => expect(share({ gap: mm(0.1) })).toBeCloseTo(0.031, 3));
  test('thickness 0.1 mm on both: 4.1 % for a rigid magnet, a little more with recoil', () => {
    expect(share({ thickness: mm(0.1) })).toBeGreaterThan(0.0405);
    expect(share({ thickness: mm(0.1) })).toBeLessThan(0.043);
  });
  test('recoil permeability takes 5.6 % off the rigid pull of 2.73 N', () => {
    expect(value(bare).nominal / 2.73).toBeCloseTo(0.944, 2);
  });
  test('60 C takes 9.4 % more', () => {
    expect(value({ ...bare, temperature: celsius(60) }).nominal / value(bare).nominal).toBeCloseTo(0.906, 3);
  });
  test('coating takes gap and size: less pull', () => {
    const coated = value({ ...bare, coating: mm(0.03) }).nominal / value(bare).nominal;
    expect(coated).toBeLessThan(0.98);
    expect(coated).toBeGreaterThan(0.93);
  });
});

test('without tolerances the interval closes on the nominal pull', () => {
  const { nominal, low, high } = value(pairOf(disc(10, 3), disc(10, 3), 5, { tolerances: NO_TOLERANCE }));
  expect(low).toBeCloseTo(nominal, 9);
  expect(high).toBeCloseTo(nominal, 9);
});

test.each([
  [{ tolerances: { ...USUAL_TOLERANCES, gap: mm(-0.1) } }, 'TOLERANCE_NEGATIVE'],
  [{ coating: mm(-0.01) }, 'COATING_NEGATIVE'],
  [{ coating: mm(2) }, 'MAGNET_SIZE_NOT_POSITIVE'],
  [{ temperature: celsius(400) }, 'TEMPERATURE_OUT_OF_RANGE'],
  [{ gap: mm(0), coating: mm(0) }, 'GAP_NOT_POSITIVE'],
  [{ tolerances: { ...USUAL_TOLERANCES, misalignment: mm(30) } }, 'PAIR_REPELS'],
] as const)('%j is refused as %s', (change, code) => {
  const result = workingPull(pairOf(disc(10, 3), disc(10, 3), 5, change));
  expect(result.ok ? 'answered' : result.refusal.code).toBe(code);
});
