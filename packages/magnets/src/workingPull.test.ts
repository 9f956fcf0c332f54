import {
  effectiveRemanence,
  type Magnet,
  type PairTolerances,
  pairForce,
  remanenceAt,
  USUAL_TOLERANCES,
  type WorkingPair,
  workingPull,
} from '@panewright/magnets';
import { celsius, mm, tesla } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';

const disc = (d: number, t: number): Magnet => ({ kind: 'disc', diameter: mm(d), thickness: mm(t) });
const block = (w: number, h: number, t: number): Magnet => ({
  kind: 'block',
  width: mm(w),
  height: mm(h),
  thickness: mm(t),
});

const NO_TOLERANCE: PairTolerances = {
  remanence: 0,
  thickness: mm(0),
  gap: mm(0),
  coating: mm(0),
  misalignment: mm(0),
};
const pairOf = (a: Magnet, b: Magnet, gap: number, change: Partial<WorkingPair> = {}): WorkingPair => ({
  a,
  b,
  remanenceA: tesla(1.28),
  remanenceB: tesla(1.28),
  gap: mm(gap),
  coating: mm(0.03),
  temperature: celsius(20),
  tolerances: USUAL_TOLERANCES,
  sameBatch: true,
  ...change,
});
function value(pair: WorkingPair) {
  const result = workingPull(pair);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

/** Mulberry32: a small seeded generator, so that the simulation is the same every time. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** One pair drawn from the tolerances, its pull worked out directly: no linearisation. */
function drawnPull(pair: WorkingPair, normal: () => number): number {
  const { remanence, thickness, gap, coating, misalignment } = pair.tolerances;
  const draw = (half: number) => (normal() * half) / 1.959964;
  const batch = [draw(remanence), draw(thickness)] as const;
  const second = pair.sameBatch ? batch : ([draw(remanence), draw(thickness)] as const);
  const layer = pair.coating + draw(coating);
  const made = (m: Magnet, thicker: number): Magnet =>
    m.kind === 'disc'
      ? disc(m.diameter - 2 * layer, m.thickness + thicker - 2 * layer)
      : block(m.width - 2 * layer, m.height - 2 * layer, m.thickness + thicker - 2 * layer);
  const a = made(pair.a, batch[1]);
  const b = made(pair.b, second[1]);
  const result = pairForce({
    a,
    b,
    remanenceA: tesla(effectiveRemanence(a, remanenceAt(pair.remanenceA, pair.temperature)) * (1 + batch[0])),
    remanenceB: tesla(
      effectiveRemanence(b, remanenceAt(pair.remanenceB, pair.temperature)) * (1 + second[0]),
    ),
    gap: mm(pair.gap + draw(gap) + 2 * layer),
    offset: { dx: mm(draw(misalignment)), dy: mm(draw(misalignment)) },
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return -result.value.z;
}

describe('the interval holds what it says: 95 +- 1.5 % of pairs drawn from the tolerances', () => {
  const loose: PairTolerances = { ...USUAL_TOLERANCES, misalignment: mm(2), gap: mm(0.5) };
  test.each([
    ['10 x 3 discs at 5 mm', pairOf(disc(10, 3), disc(10, 3), 5)],
    ['20 x 5 discs at 8 mm, loose', pairOf(disc(20, 5), disc(20, 5), 8, { tolerances: loose })],
    ['8 x 2 discs at 3 mm, loose', pairOf(disc(8, 2), disc(8, 2), 3, { tolerances: loose })],
    [
      'misalignment alone',
      pairOf(disc(10, 3), disc(10, 3), 4, { tolerances: { ...NO_TOLERANCE, misalignment: mm(2) } }),
    ],
    [
      'a bar far out of line',
      pairOf(block(40, 10, 4), block(40, 10, 4), 6, { tolerances: { ...NO_TOLERANCE, misalignment: mm(3) } }),
    ],
    ['a disc on a block', pairOf(block(20, 10, 3), disc(10, 3), 5)],
    ['blocks from two batches', pairOf(block(20, 10, 3), block(20, 10, 3), 5, { sameBatch: false })],
    ['unequal discs, hot', pairOf(disc(15, 3), disc(12, 3), 6, { temperature: celsius(70) })],
  ])('%s', (_name, pair) => {
    const { low, high } = value(pair);
    const uniform = generator(20_240_607);
    const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
    const draws = 6000;
    let inside = 0;
    for (let i = 0; i < draws; i++) {
      const pull = drawnPull(pair, normal);
      if (pull >= low && pull <= high) inside++;
    }
    expect(inside / draws).toBeGreaterThan(0.935);
    expect(inside / draws).toBeLessThan(0.965);
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
