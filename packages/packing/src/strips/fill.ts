import { type Column, type StepOrder, usedBy } from './steps.ts';

/** Pieces of stock, one column each; `left` is the demand no stock could be found for. */
export interface Filling {
  readonly columns: readonly Column[];
  readonly left: Int32Array;
  readonly cost: number;
}

const costOf = (order: StepOrder, columns: readonly Column[]) =>
  columns.reduce((sum, { stock }) => sum + order.cost[stock]!, 0);

/**
 * First fit, longest first, from the stock of least cost per length that holds the piece. The last pieces of
 * stock are then exchanged for cheaper ones that still hold their contents.
 *
 * @source sources.md#johnson-1974
 */
export function firstFit(order: StepOrder, demand: Int32Array, available: Float64Array): Filling {
  const open: { stock: number; counts: Int32Array; room: number }[] = [];
  const stockLeft = available.slice();
  const left = demand.slice();
  const byPrice = Array.from(order.stock, (_, s) => s).sort(
    (a, b) =>
      order.cost[a]! / order.stock[a]! - order.cost[b]! / order.stock[b]! ||
      order.stock[b]! - order.stock[a]!,
  );
  for (let i = 0; i < left.length; i++) {
    const length = order.length[i]!;
    for (const bin of open) {
      const take = Math.min(left[i]!, Math.floor(bin.room / length));
      bin.counts[i]! += take;
      bin.room -= take * length;
      left[i]! -= take;
    }
    while (left[i]! > 0) {
      const stock = byPrice.find((s) => stockLeft[s]! > 0 && order.stock[s]! >= length);
      if (stock === undefined) break;
      stockLeft[stock]!--;
      const take = Math.min(left[i]!, Math.floor(order.stock[stock]! / length));
      const counts = new Int32Array(left.length);
      counts[i] = take;
      left[i]! -= take;
      open.push({ stock, counts, room: order.stock[stock]! - take * length });
    }
  }
  const columns = open.map(({ stock, counts }) => ({ stock, counts }));
  return { columns, left, cost: costOf(order, columns) };
}

/** Each piece of stock exchanged for the cheapest still to be had that holds what is cut from it. */
export function cheaperStock(order: StepOrder, columns: readonly Column[]): readonly Column[] {
  const left = order.available.slice();
  for (const { stock } of columns) left[stock]!--;
  return columns.map(({ stock, counts }) => {
    const used = usedBy(order, counts);
    let best = stock;
    for (let s = 0; s < order.stock.length; s++) {
      if (left[s]! <= 0 || order.stock[s]! < used) continue;
      const cheaper = order.cost[s]! - order.cost[best]!;
      if (cheaper < 0 || (cheaper === 0 && order.stock[s]! < order.stock[best]!)) best = s;
    }
    left[stock]!++;
    left[best]!--;
    return { stock: best, counts };
  });
}

/**
 * One piece of stock at a time, each filled as full as the remaining lengths allow around the longest of them
 * (subset sum). Good where every piece of stock must be filled to the end.
 */
export function fullestFirst(order: StepOrder, demand: Int32Array, stock: number): Filling {
  const left = demand.slice();
  const columns: Column[] = [];
  for (;;) {
    const first = left.findIndex((count, i) => count > 0 && order.length[i]! <= order.stock[stock]!);
    if (first < 0) break;
    const counts = fullest(order, left, first, order.stock[stock]! - order.length[first]!);
    for (let i = 0; i < left.length; i++) left[i]! -= counts[i]!;
    columns.push({ stock, counts });
  }
  return { columns, left, cost: costOf(order, columns) };
}

const MOST_TRIES = 4000;

function fullest(order: StepOrder, demand: Int32Array, first: number, room: number): Int32Array {
  const counts = new Int32Array(demand.length);
  const free = demand.slice();
  free[first]!--;
  counts[first] = 1;
  let best = counts.slice();
  let least = room;
  let tries = 0;
  const fill = (from: number, spare: number): void => {
    if (spare < least) {
      least = spare;
      best = counts.slice();
    }
    for (let i = from; i < free.length && least > 0 && tries < MOST_TRIES; i++) {
      if (free[i] === 0 || order.length[i]! > spare) continue;
      tries++;
      counts[i]!++;
      free[i]!--;
      fill(i, spare - order.length[i]!);
      counts[i]!--;
      free[i]!++;
    }
  };
  fill(first, room);
  return best;
}
