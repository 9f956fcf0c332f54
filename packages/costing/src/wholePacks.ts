import { type Money, money, ok, type Result, refuse } from '@panewright/quantity';

/** `quantity` in mm or pieces; `price` of one pack. */
export interface PackPrice {
  readonly quantity: number;
  readonly price: Money;
}

export type PackRefusal =
  | { readonly code: 'NEED_NOT_FINITE'; readonly need: number }
  | { readonly code: 'PACK_EMPTY'; readonly quantity: number };

export interface Purchase {
  /** Whole packs. */
  readonly packs: number;
  /** What is over once the need is met, in the pack's unit. */
  readonly left: number;
  /** What the need alone comes to at the pack's price, rounded once. */
  readonly costUsed: Money;
  readonly costBought: Money;
}

/** A need this little over a whole pack (relative) is the whole pack: sums of lengths leave 1e-12. */
const SLACK = 1e-9;

/**
 * Whole packs to buy for a need, and what is used and bought for.
 *
 * @param need in the pack's unit, 0 or more
 * @refuses NEED_NOT_FINITE, PACK_EMPTY
 * @source sources.md#job-costing (`ceil(need / pack)`; used and bought kept apart)
 */
export function purchase(need: number, pack: PackPrice): Result<Purchase, PackRefusal> {
  if (!(Number.isFinite(need) && need >= 0)) return refuse({ code: 'NEED_NOT_FINITE', need });
  if (!(pack.quantity > 0)) return refuse({ code: 'PACK_EMPTY', quantity: pack.quantity });
  const packs = Math.max(0, Math.ceil((need / pack.quantity) * (1 - SLACK)));
  return ok({
    packs,
    left: Math.max(0, packs * pack.quantity - need),
    costUsed: roundMoney((need / pack.quantity) * pack.price),
    costBought: money(packs * pack.price),
  });
}

/**
 * To whole minor units, halves up.
 *
 * @source sources.md#job-costing
 */
export const roundMoney = (value: number): Money => money(Math.floor(value + 0.5));
