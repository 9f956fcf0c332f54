import type { CuttingOrder } from './cuttingOrder.ts';

/** Finest step lengths are counted in, mm; finer differences are not cut by hand or by machine. */
const FINEST = 0.01;
/** The longest stock is at most this many steps, so that a knapsack over its length stays quick. */
const MOST_STEPS = 100_000;

/** An order in whole steps: every length already holds one kerf, lengths rounded up and stocks down. */
export interface StepOrder {
  readonly stock: Int32Array;
  readonly cost: Int32Array;
  /** Infinity when as many as wanted can be had. */
  readonly available: Float64Array;
  readonly length: Int32Array;
  readonly demand: Int32Array;
  /** Index in the order's items of each entry here; longest first, equal lengths joined. */
  readonly members: readonly (readonly number[])[];
  /** Whether no rounding happened, so that a bound for the steps is one for the order. */
  readonly exact: boolean;
}

export function inSteps({ stocks, items, kerf }: CuttingOrder): StepOrder {
  const fine = (value: number) => value / FINEST;
  const near = (value: number) =>
    Math.abs(value - Math.round(value)) < 1e-6 * Math.max(1, Math.abs(value) * 1e-6);
  const up = (value: number) => (near(value) ? Math.round(value) : Math.ceil(value));
  const down = (value: number) => (near(value) ? Math.round(value) : Math.floor(value));
  const wanted = items.map((item, k) => ({ ...item, k })).filter(({ demand }) => demand > 0);
  const fineItems = wanted.map(({ length }) => fine(length + kerf));
  const fineStocks = stocks.map(({ length }) => fine(length + kerf));
  const unit = [...fineItems.map(up), ...fineStocks.map(down)].reduce(gcd, 0) || 1;
  const step = Math.max(unit, Math.max(...fineStocks) / MOST_STEPS);
  const lengths = fineItems.map((value) => up(up(value) / step));
  const exact = step === unit && [...fineItems, ...fineStocks].every(near);
  const order = wanted.map((_, k) => k).sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  const groups: number[][] = [];
  for (const k of order) {
    const last = groups.at(-1);
    if (last && lengths[last[0]!] === lengths[k]) last.push(k);
    else groups.push([k]);
  }
  return {
    stock: Int32Array.from(fineStocks, (value) => down(down(value) / step)),
    cost: Int32Array.from(stocks, ({ cost }) => cost),
    available: Float64Array.from(stocks, ({ available }) => available ?? Number.POSITIVE_INFINITY),
    length: Int32Array.from(groups, ([k]) => lengths[k!]!),
    demand: Int32Array.from(groups, (group) => group.reduce((sum, k) => sum + wanted[k]!.demand, 0)),
    members: groups.map((group) => group.map((k) => wanted[k]!.k)),
    exact,
  };
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** How one piece of stock is cut, as counts per length. */
export interface Column {
  readonly stock: number;
  readonly counts: Int32Array;
}

export function usedBy(order: StepOrder, counts: Int32Array): number {
  let sum = 0;
  for (let i = 0; i < counts.length; i++) sum += counts[i]! * order.length[i]!;
  return sum;
}
