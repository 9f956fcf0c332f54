/** State of a xoshiro128** generator: four 32-bit words, plain numbers so that it can be stored. */
export type RandomState = readonly [number, number, number, number];

/** A seeded source of equally likely numbers. Same seed, same numbers, everywhere. */
export interface Random {
  /** Uniform in [0, 1), 32 bits. */
  next(): number;
  /** Uniform integer in 0 .. count - 1. */
  below(count: number): number;
  /** Standard normal. */
  normal(): number;
  state(): RandomState;
}

/** The four words that a seed stands for (splitmix32, so that near seeds give unlike streams). */
export function randomState(seed: number): RandomState {
  let z = seed >>> 0;
  const word = () => {
    z = (z + 0x9e3779b9) >>> 0;
    let t = z ^ (z >>> 16);
    t = Math.imul(t, 0x21f0aaad);
    t ^= t >>> 15;
    t = Math.imul(t, 0x735a2d97);
    return (t ^ (t >>> 15)) >>> 0;
  };
  return [word(), word(), word(), word()];
}

/**
 * xoshiro128**.
 *
 * @source sources.md#blackman-vigna-2021
 */
export function random(from: RandomState): Random {
  let [a, b, c, d] = from;
  const word = () => {
    const r = Math.imul(b, 5);
    const out = Math.imul((r << 7) | (r >>> 25), 9) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = (d << 11) | (d >>> 21);
    return out;
  };
  const next = () => word() / 4294967296;
  return {
    next,
    below: (count) => Math.floor(next() * count),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    state: () => [a >>> 0, b >>> 0, c >>> 0, d >>> 0],
  };
}
