import { mm, ok, type Result, refuse } from '@panewright/quantity';
import {
  type CuttingOrder,
  type CuttingPattern,
  type CuttingPlan,
  type CuttingRefusal,
  checkOrder,
} from './cuttingOrder.ts';
import { cheaperStock, type Filling, firstFit, fullestFirst } from './fill.ts';
import { Master, type Relaxed } from './master.ts';
import { type Column, inSteps, type StepOrder } from './steps.ts';

/** Elementary operations a plan may take before the best found so far is given: a second or two of one core. */
const USUAL_EFFORT = 1e9;
/** Choices tried at one level of the dive before it turns back. */
const WIDTH = 3;

/**
 * The least costly way to cut straight lengths from stock: first fit at once, then column generation for a bound
 * and a dive from it (fix the patterns used most, solve again, turn back when the bound is passed).
 *
 * @param effort elementary operations to spend; the same effort gives the same plan
 * @returns patterns with their counts; the cost, and a bound below which no plan goes
 * @range lengths are counted in steps of 0.01 mm or 1/100000 of the longest stock, rounded to the safe side
 * @accuracy the bound is exact when no rounding was needed, else it is the plain material's
 * @refuses every CuttingRefusal
 * @source sources.md#gilmore-gomory-1963, #farley-1990
 */
export function cutStrips(order: CuttingOrder, effort = USUAL_EFFORT): Result<CuttingPlan, CuttingRefusal> {
  const checked = checkOrder(order);
  if (!checked.ok) return checked;
  const steps = inSteps(order);
  const dive = new Dive(steps, effort);
  dive.run();
  if (dive.best === undefined) return refuse(shortage(order, steps, dive.leastLeft));
  return ok(planOf(order, steps, dive.best, dive.bound));
}

function shortage(order: CuttingOrder, steps: StepOrder, left: Int32Array): CuttingRefusal {
  const at = left.findIndex((count) => count > 0);
  return { code: 'NOT_ENOUGH_STOCK', itemId: order.items[steps.members[at]![0]!]!.id, short: left[at]! };
}

class Dive {
  best: { readonly columns: readonly Column[]; readonly cost: number } | undefined;
  bound = 0;
  leastLeft: Int32Array;
  private readonly master: Master;

  constructor(
    private readonly order: StepOrder,
    private readonly effort: number,
  ) {
    this.master = new Master(order);
    this.leastLeft = order.demand;
    this.bound = materialBound(order);
  }

  run(): void {
    const { demand, available } = this.order;
    this.complete([], demand, available);
    for (const column of this.best?.columns ?? []) this.master.add(column);
    if (this.atBound()) return;
    const relaxed = this.master.relax(demand, available, this.effort);
    if (this.order.exact) this.bound = Math.max(this.bound, Math.ceil(relaxed.bound - 1e-6));
    if (!this.atBound()) this.descend([], demand, available, relaxed);
  }

  private atBound(): boolean {
    return this.best !== undefined && this.best.cost <= this.bound;
  }

  private spent(): boolean {
    return this.master.work >= this.effort || this.atBound();
  }

  private cost(columns: readonly Column[]): number {
    return columns.reduce((sum, { stock }) => sum + this.order.cost[stock]!, 0);
  }

  /** Finishes a part of a plan by the quick fillings; keeps it when it is the best. */
  private complete(fixed: readonly Column[], demand: Int32Array, available: Float64Array): void {
    const fillings: Filling[] = [firstFit(this.order, demand, available)];
    if (this.order.stock.length === 1) fillings.push(fullestFirst(this.order, demand, 0));
    for (const { columns, left } of fillings) {
      const short = sum(left);
      if (short > 0) {
        if (this.best === undefined && short < sum(this.leastLeft)) this.leastLeft = left;
        continue;
      }
      if (!withinStock(columns, available)) continue;
      const all = cheaperStock(this.order, [...fixed, ...columns]);
      const cost = this.cost(all);
      if (this.best === undefined || cost < this.best.cost) this.best = { columns: all, cost };
    }
  }

  /** Depth first; a branch ends when even its fractional cost cannot better the best plan. */
  private descend(
    fixed: readonly Column[],
    demand: Int32Array,
    available: Float64Array,
    relaxed: Relaxed,
  ): void {
    if (relaxed.short > 1e-6 || this.spent()) return;
    const whole = wholeParts(relaxed);
    const next = take(whole, fixed, demand, available);
    if (whole.length > 0) this.complete(next.fixed, next.demand, next.available);
    if (sum(next.demand) === 0 || this.spent()) return;
    const base = this.cost(next.fixed);
    const fractions = relaxed.columns
      .map(({ column, times }) => ({ column, times: times - Math.floor(times + 1e-6) }))
      .filter(({ times }) => times > 1e-6)
      .sort((a, b) => b.times - a.times);
    for (const choice of choicesFrom(fractions)) {
      if (this.spent()) return;
      const tried = take(choice, next.fixed, next.demand, next.available);
      if (tried.fixed.length === next.fixed.length) continue;
      this.complete(tried.fixed, tried.demand, tried.available);
      if (sum(tried.demand) === 0) continue;
      const again = this.master.relax(tried.demand, tried.available, this.effort);
      const least = base + this.cost(tried.fixed.slice(next.fixed.length)) + again.bound;
      if (this.best !== undefined && Math.ceil(least - 1e-6) >= this.best.cost) continue;
      this.descend(tried.fixed, tried.demand, tried.available, again);
    }
  }
}

/** Several of the surest columns together first, then single ones. */
function choicesFrom(
  fractions: readonly { column: Column; times: number }[],
): readonly (readonly Column[])[] {
  const sure = fractions.filter(({ times }) => times > 0.65).slice(0, Math.ceil(fractions.length / 4));
  const together = sure.length > 1 ? [sure.map(({ column }) => column)] : [];
  return [...together, ...fractions.slice(0, WIDTH).map(({ column }) => [column])];
}

function wholeParts(relaxed: Relaxed): Column[] {
  return relaxed.columns.flatMap(({ column, times }) => Array<Column>(Math.floor(times + 1e-6)).fill(column));
}

/** Columns taken while they fit what is wanted and had; a column that would cut too many is left out. */
function take(
  columns: readonly Column[],
  fixed: readonly Column[],
  demand: Int32Array,
  available: Float64Array,
) {
  const out = { fixed: [...fixed], demand: demand.slice(), available: available.slice() };
  for (const column of columns) {
    const counts = column.counts.map((count, i) => Math.min(count, out.demand[i]!));
    if (out.available[column.stock]! < 1 || sum(counts) === 0) continue;
    for (let i = 0; i < counts.length; i++) out.demand[i]! -= counts[i]!;
    out.available[column.stock]!--;
    out.fixed.push({ stock: column.stock, counts });
  }
  return out;
}

function withinStock(columns: readonly Column[], available: Float64Array): boolean {
  const left = available.slice();
  return columns.every(({ stock }) => --left[stock]! >= 0);
}

const sum = (list: Int32Array) => list.reduce((total, value) => total + value, 0);

/** Cost of the material alone, at the best price per length; whole. */
function materialBound(order: StepOrder): number {
  let length = 0;
  for (let i = 0; i < order.length.length; i++) length += order.length[i]! * order.demand[i]!;
  if (!order.exact) length -= sum(order.demand);
  const price = Math.min(
    ...Array.from(order.stock, (l, s) => (order.available[s]! > 0 ? order.cost[s]! / l : 1e300)),
  );
  return Math.max(0, Math.ceil(length * price - 1e-9 * length * price - 1e-9));
}

function planOf(
  order: CuttingOrder,
  steps: StepOrder,
  best: { readonly columns: readonly Column[]; readonly cost: number },
  bound: number,
): CuttingPlan {
  const queues = steps.members.map((group) =>
    group.flatMap((k) => Array<number>(order.items[k]!.demand).fill(k)),
  );
  const patterns = new Map<string, CuttingPattern>();
  for (const { stock, counts } of best.columns) {
    const taken = new Map<number, number>();
    counts.forEach((count, i) => {
      for (const k of queues[i]!.splice(0, count)) taken.set(k, (taken.get(k) ?? 0) + 1);
    });
    const key = `${stock}:${[...taken].join(';')}`;
    const same = patterns.get(key);
    patterns.set(key, same ? { ...same, times: same.times + 1 } : patternOf(order, stock, taken));
  }
  const list = [...patterns.values()].sort((a, b) => a.remnant - b.remnant);
  const { cost } = best;
  return { patterns: list, pieces: best.columns.length, cost, bound, proven: cost <= bound };
}

function patternOf(order: CuttingOrder, stock: number, taken: ReadonlyMap<number, number>): CuttingPattern {
  const { id, length } = order.stocks[stock]!;
  const cuts = [...taken].map(([k, count]) => ({ itemId: order.items[k]!.id, count }));
  const used = [...taken].reduce(
    (total, [k, count]) => total + count * (order.items[k]!.length + order.kerf),
    0,
  );
  return { stockId: id, times: 1, cuts, remnant: mm(Math.max(0, length - used)) };
}
