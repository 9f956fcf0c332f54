import type { Fabric } from '../document/catalogue.ts';
import type { Finding } from '../plan/finding.ts';
import type { LayPlan } from '../plan/plan.ts';

/** What is bought of a cloth: its price, and its length in mm; nothing costs nothing. */
export interface Bought {
  readonly price: number;
  readonly length: number;
}

export const boughtOf = (roll: LayPlan | null | undefined): Bought => ({
  price: roll?.bought?.price ?? 0,
  length: roll?.bought?.length ?? 0,
});

/** What a rule for cutting has bought more than there would be without it; none where it costs nothing. */
export function ruleCosts(
  code: 'KEPT_TOGETHER_COSTS' | 'SAME_WAY_COSTS',
  fabric: Fabric,
  ruled: Bought,
  free: Bought,
): readonly Finding[] {
  const price = ruled.price - free.price;
  if (price <= 0) return [];
  const numbers = { fabric: fabric.name, price, length: ruled.length - free.length };
  return [{ severity: 'note', code, where: { item: fabric.id }, numbers }];
}
