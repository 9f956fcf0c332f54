import { bestPatternBySearch, bestPatterns, type Priced } from './knapsack.ts';
import type { Column, StepOrder } from './steps.ts';

const EPS = 1e-9;

/** A fractional plan: columns and how often, the cost, and whether no column is missing. */
export interface Relaxed {
  readonly columns: readonly { readonly column: Column; readonly times: number }[];
  readonly cost: number;
  /** No fractional plan costs less; equals `cost` once `complete`. */
  readonly bound: number;
  readonly complete: boolean;
  /** Demand that the stock at hand cannot meet even fractionally. */
  readonly short: number;
}

/**
 * The cutting problem with fractions allowed, by column generation: least cost of stock with every demand met
 * and no more stock than there is. Revised simplex with an explicit inverse; patterns come from the knapsack.
 *
 * @source sources.md#gilmore-gomory-1963; the bound before the end: #farley-1990
 */
export class Master {
  private readonly rows: number;
  private readonly capped: readonly number[];
  private readonly penalty: number;
  readonly pool: Column[] = [];
  private readonly seen = new Set<string>();
  /** Elementary operations spent so far. */
  work = 0;

  constructor(private readonly order: StepOrder) {
    this.capped = Array.from(order.available, (_, s) => s).filter((s) =>
      Number.isFinite(order.available[s]!),
    );
    this.rows = order.length.length + this.capped.length;
    this.penalty = 1000 * Math.max(1, ...order.cost);
  }

  add(column: Column): boolean {
    const key = `${column.stock}:${column.counts.join()}`;
    if (this.seen.has(key)) return false;
    this.seen.add(key);
    this.pool.push(column);
    return true;
  }

  /** Solves for what is still wanted and still to be had. `banned` columns are not used. */
  relax(
    demand: Int32Array,
    available: Float64Array,
    mostWork: number,
    banned?: ReadonlySet<Column>,
  ): Relaxed {
    const lp = new Basis(this.rows, this.rightSide(demand, available), this.penalty, demand.length);
    let bound = 0;
    let complete = false;
    const usable = this.pool.filter((c) => fits(c, demand, available) && !banned?.has(c));
    for (const column of usable) lp.offer(this.vector(column), this.order.cost[column.stock]!, column);
    while (this.work < mostWork) {
      this.work += lp.optimise();
      const found = this.price(lp.duals(), demand, available);
      bound = Math.max(bound, this.farley(lp, found));
      let added = false;
      for (const { column, gain } of found) {
        if (gain <= 1e-7 || banned?.has(column)) continue;
        this.add(column);
        lp.offer(this.vector(column), this.order.cost[column.stock]!, column);
        added = true;
      }
      if (!added) {
        complete = true;
        break;
      }
    }
    const { columns, cost, short } = lp.solution(demand.length);
    return { columns, cost, bound: complete ? cost : bound, complete, short };
  }

  private rightSide(demand: Int32Array, available: Float64Array): Float64Array {
    return Float64Array.from([...demand, ...this.capped.map((s) => available[s]!)]);
  }

  private vector({ stock, counts }: Column): Sparse {
    const at: number[] = [];
    const value: number[] = [];
    counts.forEach((count, i) => {
      if (count === 0) return;
      at.push(i);
      value.push(count);
    });
    const cap = this.capped.indexOf(stock);
    if (cap >= 0) {
      at.push(counts.length + cap);
      value.push(1);
    }
    return { at, value };
  }

  private price(duals: Float64Array, demand: Int32Array, available: Float64Array) {
    const value = duals.subarray(0, demand.length);
    const stocks = Array.from(available, (_, s) => s).filter((s) => available[s]! >= 1);
    return this.patterns(value, demand, stocks).map(({ counts, value: worth, work }, k) => {
      this.work += work;
      const stock = stocks[k]!;
      const cap = this.capped.indexOf(stock);
      const rent = cap >= 0 ? duals[demand.length + cap]! : 0;
      return { column: { stock, counts }, worth, rent, gain: worth + rent - this.order.cost[stock]! };
    });
  }

  private patterns(value: Float64Array, demand: Int32Array, stocks: readonly number[]): readonly Priced[] {
    const widest = Math.max(...stocks.map((s) => this.order.stock[s]!));
    if (widest * value.length > 1_500_000) {
      const searched = stocks.map((s) => bestPatternBySearch(this.order, value, demand, s, 50_000));
      if (searched.every((p) => p !== undefined)) return searched;
      this.work += 400_000 * stocks.length;
    }
    return bestPatterns(this.order, value, demand, stocks);
  }

  /** Duals scaled down until every pattern is worth no more than it costs give a bound. */
  private farley(lp: Basis, found: readonly { worth: number; rent: number; column: Column }[]): number {
    if (lp.usesPenalty()) return 0;
    let scale = 1;
    for (const { worth, rent, column } of found) {
      if (worth + rent > EPS) scale = Math.min(scale, this.order.cost[column.stock]! / (worth + rent));
    }
    return lp.cost() * scale;
  }
}

function fits({ stock, counts }: Column, demand: Int32Array, available: Float64Array): boolean {
  if (available[stock]! < 1) return false;
  for (let i = 0; i < counts.length; i++) if (counts[i]! > demand[i]!) return false;
  return true;
}

interface Sparse {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

interface Offered {
  readonly vector: Sparse;
  readonly cost: number;
  readonly column: Column | undefined;
}

/** min cost . x, first rows sum >= right side, further rows sum <= right side, x >= 0. */
class Basis {
  private readonly inverse: Float64Array;
  private readonly level: Float64Array;
  private readonly basic: Offered[];
  private readonly offered: Offered[] = [];
  private readonly dual: Float64Array;

  constructor(
    private readonly rows: number,
    right: Float64Array,
    private readonly penalty: number,
    wanted: number,
  ) {
    this.inverse = new Float64Array(rows * rows);
    this.level = right.slice();
    this.dual = new Float64Array(rows);
    this.basic = [];
    for (let r = 0; r < rows; r++) {
      this.inverse[r * rows + r] = 1;
      // A demand row begins with a dear stand-in, a stock row with its slack.
      const cost = r < wanted ? penalty : 0;
      this.basic.push({ vector: { at: [r], value: [1] }, cost, column: undefined });
      this.dual[r] = cost;
      const surplus = { at: [r], value: [r < wanted ? -1 : 1] };
      this.offered.push({ vector: surplus, cost: 0, column: undefined });
    }
  }

  offer(vector: Sparse, cost: number, column: Column): void {
    this.offered.push({ vector, cost, column });
  }

  duals(): Float64Array {
    return this.dual;
  }

  cost(): number {
    return this.basic.reduce((sum, { cost }, r) => sum + cost * this.level[r]!, 0);
  }

  usesPenalty(): boolean {
    return this.basic.some(({ cost }, r) => cost === this.penalty && this.level[r]! > EPS);
  }

  /** @returns elementary operations spent */
  optimise(): number {
    const each = 2 * this.rows * this.rows + 8 * this.offered.length;
    for (let k = 0; k < 50 * this.rows + 1000; k++) {
      const entering = this.entering(k > 20 * this.rows + 400);
      if (!entering || !this.bringIn(entering)) return (k + 1) * each;
    }
    return (50 * this.rows + 1000) * each;
  }

  private entering(first: boolean): Offered | undefined {
    let best: Offered | undefined;
    let most = 1e-8;
    for (const offered of this.offered) {
      const gain = this.gainOf(offered);
      if (gain <= most) continue;
      best = offered;
      most = gain;
      if (first) break;
    }
    return best;
  }

  private gainOf({ vector: { at, value }, cost }: Offered): number {
    let gain = -cost;
    for (let k = 0; k < at.length; k++) gain += this.dual[at[k]!]! * value[k]!;
    return gain;
  }

  private bringIn(entering: Offered): boolean {
    const { rows, inverse, level } = this;
    const direction = new Float64Array(rows);
    const { at, value } = entering.vector;
    for (let r = 0; r < rows; r++) {
      let sum = 0;
      for (let k = 0; k < at.length; k++) sum += inverse[r * rows + at[k]!]! * value[k]!;
      direction[r] = sum;
    }
    let leave = -1;
    let ratio = Number.POSITIVE_INFINITY;
    for (let r = 0; r < rows; r++) {
      if (direction[r]! <= EPS) continue;
      const t = Math.max(0, level[r]!) / direction[r]!;
      if (t < ratio - 1e-12 || (t < ratio + 1e-12 && leave >= 0 && direction[r]! > direction[leave]!)) {
        ratio = t;
        leave = r;
      }
    }
    if (leave < 0) return false;
    this.pivot(leave, direction, ratio, entering);
    return true;
  }

  private pivot(leave: number, direction: Float64Array, ratio: number, entering: Offered): void {
    const { rows, inverse, level, dual } = this;
    const gain = this.gainOf(entering);
    const head = leave * rows;
    const d = direction[leave]!;
    for (let k = 0; k < rows; k++) inverse[head + k]! /= d;
    for (let r = 0; r < rows; r++) {
      if (r === leave || direction[r] === 0) continue;
      const t = direction[r]!;
      level[r]! -= t * ratio;
      for (let k = 0; k < rows; k++) inverse[r * rows + k]! -= t * inverse[head + k]!;
    }
    level[leave] = ratio;
    for (let k = 0; k < rows; k++) dual[k]! -= gain * inverse[head + k]!;
    this.basic[leave] = entering;
  }

  solution(wanted: number) {
    const columns: { column: Column; times: number }[] = [];
    let short = 0;
    this.basic.forEach(({ column, cost }, r) => {
      const times = this.level[r]!;
      if (times <= 1e-7) return;
      if (column) columns.push({ column, times });
      else if (cost === this.penalty && wanted > 0) short += times;
    });
    return { columns, cost: this.cost(), short };
  }
}
