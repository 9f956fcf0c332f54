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

export const disc = (d: number, t: number): Magnet => ({ kind: 'disc', diameter: mm(d), thickness: mm(t) });
export const block = (w: number, h: number, t: number): Magnet => ({
  kind: 'block',
  width: mm(w),
  height: mm(h),
  thickness: mm(t),
});

export const NO_TOLERANCE: PairTolerances = {
  remanence: 0,
  thickness: mm(0),
  gap: mm(0),
  coating: mm(0),
  misalignment: mm(0),
};
export const pairOf = (
  a: Magnet,
  b: Magnet,
  gap: number,
  change: Partial<WorkingPair> = {},
): WorkingPair => ({
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

const loose: PairTolerances = { ...USUAL_TOLERANCES, misalignment: mm(2), gap: mm(0.5) };

/** Pairs of every kind, tight and loose, cool and hot. */
export const INTERVAL_PAIRS: readonly (readonly [name: string, pair: WorkingPair])[] = [
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
];

/** Share of pairs drawn from the tolerances whose pull lies within the stated interval. */
export function shareWithin(pair: WorkingPair, draws: number): number {
  const stated = workingPull(pair);
  if (!stated.ok) throw new Error(stated.refusal.code);
  const { low, high } = stated.value;
  const uniform = generator(20_240_607);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  let inside = 0;
  for (let i = 0; i < draws; i++) {
    const pull = drawnPull(pair, normal);
    if (pull >= low && pull <= high) inside++;
  }
  return inside / draws;
}
