/** Seeded numbers for made-up scenes: the same seed gives the same scene on every machine. */
export interface Draw {
  /** Even between two bounds. */
  between(low: number, high: number): number;
  /** Whole number, low..high, both included. */
  whole(low: number, high: number): number;
  /** Normal, mean 0. */
  normal(sigma: number): number;
  chance(share: number): boolean;
  pick<T>(list: readonly T[]): T;
}

/** @source mulberry32, a public-domain generator of 32-bit numbers; Box-Muller for the normal ones */
export function draw(seed: number): Draw {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return {
    between,
    whole,
    normal: (sigma) => sigma * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    chance: (share) => next() < share,
    pick: (list) => list[whole(0, list.length - 1)]!,
  };
}

const LATTICE = 256;

/** Smooth noise on the plane, 0..1, cell size 1. */
export function smoothNoise(random: Draw): (x: number, y: number) => number {
  const values = Float32Array.from({ length: LATTICE * LATTICE }, () => random.between(0, 1));
  return (x, y) => {
    const [i, j] = [Math.floor(x), Math.floor(y)];
    const [u, v] = [x - i, y - j];
    const [a, b] = [u * u * (3 - 2 * u), v * v * (3 - 2 * v)];
    const top = (j & 255) * LATTICE;
    const low = ((j + 1) & 255) * LATTICE;
    const [left, right] = [i & 255, (i + 1) & 255];
    const upper = values[top + left]! + a * (values[top + right]! - values[top + left]!);
    const lower = values[low + left]! + a * (values[low + right]! - values[low + left]!);
    return upper + b * (lower - upper);
  };
}
