import type { StepOrder } from './steps.ts';

/** For each stock the most valuable pattern: counts and its value. */
export interface Priced {
  readonly counts: Int32Array;
  readonly value: number;
  /** Elementary operations spent. */
  readonly work: number;
}

/**
 * Bounded knapsack over whole lengths by dynamic programming, bounds split into powers of two; one table serves
 * every stock length. `most` bounds each count.
 *
 * @source sources.md#gilmore-gomory-1963 (pricing), #martello-toth-1990 (bounded knapsack)
 */
export function bestPatterns(
  order: StepOrder,
  value: Float64Array,
  most: Int32Array,
  stocks: readonly number[],
): readonly Priced[] {
  const capacity = Math.max(...stocks.map((s) => order.stock[s]!));
  const packs = packsOf(order, value, most, capacity);
  const best = new Float64Array(capacity + 1);
  const taken = packs.map(({ length, worth }) => {
    const took = new Uint8Array(capacity + 1 - length);
    for (let c = capacity; c >= length; c--) {
      const withIt = best[c - length]! + worth;
      if (withIt > best[c]! + 1e-12) {
        best[c] = withIt;
        took[c - length] = 1;
      }
    }
    return took;
  });
  return stocks.map((s) => {
    const counts = new Int32Array(value.length);
    let c = order.stock[s]!;
    let sum = 0;
    for (let p = packs.length - 1; p >= 0; p--) {
      const { length, item, count, worth } = packs[p]!;
      if (c < length || taken[p]![c - length] === 0) continue;
      counts[item]! += count;
      sum += worth;
      c -= length;
    }
    return { counts, value: sum, work: (packs.length * capacity) / stocks.length };
  });
}

function packsOf(order: StepOrder, value: Float64Array, most: Int32Array, capacity: number) {
  const packs: { item: number; count: number; length: number; worth: number }[] = [];
  for (let item = 0; item < value.length; item++) {
    if (value[item]! <= 1e-12) continue;
    let left = Math.min(most[item]!, Math.floor(capacity / order.length[item]!));
    for (let count = 1; left > 0; count *= 2) {
      const take = Math.min(count, left);
      packs.push({ item, count: take, length: take * order.length[item]!, worth: take * value[item]! });
      left -= take;
    }
  }
  return packs.sort((a, b) => b.worth / b.length - a.worth / a.length);
}

/**
 * The same for one stock by depth-first search with the fractional bound; quick when few lengths fit a stock,
 * however fine the steps.
 *
 * @returns undefined when `mostNodes` did not suffice
 */
export function bestPatternBySearch(
  order: StepOrder,
  value: Float64Array,
  most: Int32Array,
  stock: number,
  mostNodes: number,
): Priced | undefined {
  const items = Array.from(value, (_, i) => i)
    .filter((i) => value[i]! > 1e-12 && most[i]! > 0 && order.length[i]! <= order.stock[stock]!)
    .sort((a, b) => value[b]! / order.length[b]! - value[a]! / order.length[a]!);
  const counts = new Int32Array(value.length);
  let best = counts.slice();
  let bestValue = 0;
  let nodes = 0;
  const visit = (k: number, room: number, sum: number): void => {
    if (sum > bestValue + 1e-12) {
      bestValue = sum;
      best = counts.slice();
    }
    const i = items[k];
    if (i === undefined || nodes > mostNodes) return;
    if (sum + (room * value[i]!) / order.length[i]! <= bestValue + 1e-12) return;
    for (let c = Math.min(most[i]!, Math.floor(room / order.length[i]!)); c >= 0; c--) {
      nodes++;
      counts[i] = c;
      visit(k + 1, room - c * order.length[i]!, sum + c * value[i]!);
    }
    counts[i] = 0;
  };
  visit(0, order.stock[stock]!, 0);
  return nodes > mostNodes ? undefined : { counts: best, value: bestValue, work: 8 * nodes };
}
