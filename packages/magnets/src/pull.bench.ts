import { celsius, mm, radian, tesla } from '@panewright/quantity';
import type { Magnet, MagnetPair } from './index.ts';
import { pairForce, slipHold, USUAL_COATING, USUAL_TOLERANCES, workingPull } from './index.ts';

/** One benchmark: `run` does `perRun` units of work and answers with their sum, so that none is left out. */
export interface Bench {
  readonly name: string;
  readonly unit: string;
  readonly perRun: number;
  readonly run: () => number;
}

const disc = (d: number, t: number): Magnet => ({ kind: 'disc', diameter: mm(d), thickness: mm(t) });
const block = (w: number, h: number, t: number): Magnet => ({
  kind: 'block',
  width: mm(w),
  height: mm(h),
  thickness: mm(t),
});

const CASES = 256;

/** The same pairs every time: gaps 2 to 10 mm, offsets to 8 mm, by a small linear generator. */
function pairs(magnets: readonly (readonly [Magnet, Magnet])[], displaced: boolean): MagnetPair[] {
  let state = 20_240_607;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  return Array.from({ length: CASES }, (_, i) => {
    const [a, b] = magnets[i % magnets.length]!;
    const offset = displaced
      ? { dx: mm(0.2 + 7.8 * next()), dy: mm(4 * next() - 2) }
      : { dx: mm(0), dy: mm(0) };
    return { a, b, remanenceA: tesla(1.28), remanenceB: tesla(1.28), gap: mm(2 + 8 * next()), offset };
  });
}

function forces(name: string, list: readonly MagnetPair[], rounds: number): Bench {
  return {
    name,
    unit: 'pairs',
    perRun: list.length * rounds,
    run: () => {
      let total = 0;
      for (let round = 0; round < rounds; round++) {
        for (const pair of list) {
          const force = pairForce(pair);
          if (force.ok) total += force.value.z;
        }
      }
      return total;
    },
  };
}

const small = disc(10, 3);
const large = disc(20, 5);
const bar = block(20, 10, 3);
const discs = [
  [small, small],
  [large, large],
  [disc(15, 3), disc(15, 3)],
] as const;

export const benches: readonly Bench[] = [
  forces('equal coaxial discs', pairs(discs, false), 400),
  forces('unequal coaxial discs', pairs([[large, small]], false), 100),
  forces('displaced discs', pairs([...discs, [large, small]], true), 40),
  forces('displaced blocks, equal', pairs([[bar, bar]], true), 100),
  forces('displaced blocks, unequal', pairs([[bar, block(12, 8, 4)]], true), 100),
  forces('disc on a block', pairs([[bar, small]], true), 1),
  {
    name: 'working pull with its interval, equal discs',
    unit: 'pairs',
    perRun: 100,
    run: () => {
      let total = 0;
      for (let i = 0; i < 100; i++) {
        const found = workingPull({
          a: small,
          b: small,
          remanenceA: tesla(1.28),
          remanenceB: tesla(1.28),
          gap: mm(3 + i / 50),
          coating: USUAL_COATING,
          temperature: celsius(60),
          tolerances: USUAL_TOLERANCES,
          sameBatch: true,
        });
        if (found.ok) total += found.value.low;
      }
      return total;
    },
  },
  {
    name: 'slip and break-away, equal discs',
    unit: 'pairs',
    perRun: 50,
    run: () => {
      let total = 0;
      for (const pair of pairs(discs, false).slice(0, 50)) {
        const found = slipHold(pair, radian(0), 0.15);
        if (found.ok) total += found.value.breakAway;
      }
      return total;
    },
  },
];
