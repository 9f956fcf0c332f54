import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';

export type StockId = string | number;
export type StripId = string | number;

/** Straight material at hand or to buy: `available` pieces of one length, each costing `cost` when begun. */
export interface Stock {
  readonly id: StockId;
  readonly length: Millimetre;
  /** Whole units of any one kind (cents, or 1 to count pieces); 0 for a remnant that costs nothing to use. */
  readonly cost: number;
  /** How many there are; undefined when as many as wanted can be had. */
  readonly available?: number | undefined;
}

/** `demand` straight lengths to be cut (binding, tape, piping, rod). */
export interface StripItem {
  readonly id: StripId;
  readonly length: Millimetre;
  readonly demand: number;
}

/** `kerf` is lost between two neighbouring lengths: the blade's width, or a trim. */
export interface CuttingOrder {
  readonly stocks: readonly Stock[];
  readonly items: readonly StripItem[];
  readonly kerf: Millimetre;
}

/** One way to cut one piece of stock, done `times` times. `remnant` is what is left beyond the last cut. */
export interface CuttingPattern {
  readonly stockId: StockId;
  readonly times: number;
  readonly cuts: readonly { readonly itemId: StripId; readonly count: number }[];
  readonly remnant: Millimetre;
}

/** `bound`: no plan costs less. `proven`: this plan costs no more than that. */
export interface CuttingPlan {
  readonly patterns: readonly CuttingPattern[];
  readonly pieces: number;
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
}

export type CuttingRefusal =
  | { readonly code: 'NOTHING_TO_CUT' }
  | { readonly code: 'NO_STOCK_TO_CUT_FROM' }
  | { readonly code: 'KERF_NOT_A_LENGTH'; readonly kerf: number }
  | { readonly code: 'STOCK_ID_TWICE'; readonly stockId: StockId }
  | { readonly code: 'STOCK_LENGTH_NOT_POSITIVE'; readonly stockId: StockId; readonly length: number }
  | { readonly code: 'STOCK_COST_NOT_WHOLE'; readonly stockId: StockId; readonly cost: number }
  | { readonly code: 'STOCK_COUNT_NOT_WHOLE'; readonly stockId: StockId; readonly available: number }
  | { readonly code: 'STRIP_ID_TWICE'; readonly itemId: StripId }
  | { readonly code: 'STRIP_LENGTH_NOT_POSITIVE'; readonly itemId: StripId; readonly length: number }
  | { readonly code: 'STRIP_DEMAND_NOT_WHOLE'; readonly itemId: StripId; readonly demand: number }
  | {
      readonly code: 'STRIP_LONGER_THAN_STOCK';
      readonly itemId: StripId;
      readonly length: Millimetre;
      readonly longestStock: Millimetre;
    }
  /** No plan was found within the stock at hand; `short` pieces of the item found no place in the best try. */
  | { readonly code: 'NOT_ENOUGH_STOCK'; readonly itemId: StripId; readonly short: number };

const whole = (value: number) => Number.isInteger(value) && value >= 0;

/** @refuses every CuttingRefusal but NOT_ENOUGH_STOCK, first found */
export function checkOrder(order: CuttingOrder): Result<CuttingOrder, CuttingRefusal> {
  const found = checkStocks(order) ?? checkItems(order);
  return found ? refuse(found) : ok(order);
}

function checkStocks({ stocks, kerf }: CuttingOrder): CuttingRefusal | undefined {
  if (!(kerf >= 0 && Number.isFinite(kerf))) return { code: 'KERF_NOT_A_LENGTH', kerf };
  const seen = new Set<StockId>();
  for (const { id, length, cost, available } of stocks) {
    if (seen.has(id)) return { code: 'STOCK_ID_TWICE', stockId: id };
    seen.add(id);
    if (!(length > 0 && Number.isFinite(length))) {
      return { code: 'STOCK_LENGTH_NOT_POSITIVE', stockId: id, length };
    }
    if (!whole(cost)) return { code: 'STOCK_COST_NOT_WHOLE', stockId: id, cost };
    if (available !== undefined && !whole(available)) {
      return { code: 'STOCK_COUNT_NOT_WHOLE', stockId: id, available };
    }
  }
  if (!stocks.some(({ available }) => available !== 0)) return { code: 'NO_STOCK_TO_CUT_FROM' };
  return undefined;
}

function checkItems({ stocks, items }: CuttingOrder): CuttingRefusal | undefined {
  const longest = Math.max(...stocks.filter((s) => s.available !== 0).map((s) => s.length));
  const seen = new Set<StripId>();
  for (const { id, length, demand } of items) {
    if (seen.has(id)) return { code: 'STRIP_ID_TWICE', itemId: id };
    seen.add(id);
    if (!(length > 0 && Number.isFinite(length))) {
      return { code: 'STRIP_LENGTH_NOT_POSITIVE', itemId: id, length };
    }
    if (!whole(demand)) return { code: 'STRIP_DEMAND_NOT_WHOLE', itemId: id, demand };
    if (demand > 0 && length > longest) {
      return { code: 'STRIP_LONGER_THAN_STOCK', itemId: id, length: mm(length), longestStock: mm(longest) };
    }
  }
  if (!items.some(({ demand }) => demand > 0)) return { code: 'NOTHING_TO_CUT' };
  return undefined;
}
