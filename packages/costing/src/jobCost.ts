import { type Minute, type Money, money } from '@panewright/quantity';
import { roundMoney } from './wholePacks.ts';

export interface CostInput {
  readonly material: Money;
  readonly minutes: Minute;
  /** Per hour. */
  readonly labourRate: Money;
  /** Predetermined rate: overhead per unit of its base, here the labour cost. */
  readonly overheadRate: number;
  /** Of cost. */
  readonly markup: number;
  /** Of price. */
  readonly tax: number;
}

export interface JobCost {
  readonly material: Money;
  readonly labour: Money;
  readonly overhead: Money;
  readonly cost: Money;
  readonly price: Money;
  readonly tax: Money;
  readonly total: Money;
  /** Share of the price that is not cost. */
  readonly margin: number;
}

/**
 * Cost, price and margin of one job: direct material, direct labour, applied overhead, markup.
 * Each line is rounded once to whole minor units, so that the printed lines add up.
 *
 * @source sources.md#job-costing
 */
export function jobCost(input: CostInput): JobCost {
  const labour = roundMoney((input.minutes / 60) * input.labourRate);
  const overhead = roundMoney(labour * input.overheadRate);
  const cost = money(input.material + labour + overhead);
  const price = roundMoney(cost * (1 + input.markup));
  const tax = roundMoney(price * input.tax);
  return {
    material: input.material,
    labour,
    overhead,
    cost,
    price,
    tax,
    total: money(price + tax),
    margin: price > 0 ? (price - cost) / price : 0,
  };
}

/**
 * Margin on price that a markup on cost gives: m / (1 + m).
 *
 * @source sources.md#job-costing
 */
export const marginOfMarkup = (markup: number): number => markup / (1 + markup);

/**
 * Splits an amount in proportion to weights, in whole minor units that sum to it exactly (largest remainders).
 * Equal shares when every weight is 0.
 *
 * @param weights each 0 or more
 * @source sources.md#job-costing
 */
export function share(total: Money, weights: readonly number[]): readonly Money[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  const exact = weights.map((weight) => (sum > 0 ? (total * weight) / sum : total / weights.length));
  const parts = exact.map(Math.floor);
  let left = total - parts.reduce((a, b) => a + b, 0);
  const order = exact.map((value, index) => ({ index, rest: value - Math.floor(value) }));
  order.sort((a, b) => b.rest - a.rest || a.index - b.index);
  for (const { index } of order) {
    if (left <= 0) break;
    parts[index]! += 1;
    left -= 1;
  }
  return parts.map(money);
}
