import type { Catalogue } from '../document/catalogue.ts';
import type { Find } from '../plan/finding.ts';
import type { StripPlan } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';

interface Cut {
  readonly length: number;
  readonly for: string;
}

/** A strip cutting list for each binding: whole lengths from its rolls, no joins. */
export function bindingStrips(made: readonly Made[], catalogue: Catalogue, find: Find): readonly StripPlan[] {
  return catalogue.bindings.flatMap((binding) => {
    const cuts = made.flatMap(({ pattern, panel }): Cut[] => {
      const edging = panel.edging;
      if (edging.kind !== 'binding' || edging.binding !== binding.id) return [];
      return pattern.members.map(({ opening }) => ({ length: edging.cutLength.value, for: opening }));
    });
    if (cuts.length === 0) return [];
    const stockLength = binding.pack.quantity;
    const tooLong = cuts.find(({ length }) => length > stockLength);
    if (tooLong) {
      find({
        severity: 'stop',
        code: 'STRIP_LONGER_THAN_ROLL',
        where: { item: binding.id, opening: tooLong.for },
        numbers: { length: tooLong.length, stock: stockLength, binding: binding.name },
      });
      return [];
    }
    return [stripPlan(binding.id, 'binding', cuts, stockLength)];
  });
}

/**
 * First fit, longest first. The bound is the plain length of all cuts over the stock.
 *
 * @source sources.md#johnson-1974
 */
export function stripPlan(
  material: string,
  kind: StripPlan['kind'],
  cuts: readonly Cut[],
  stockLength: number,
): StripPlan {
  const stocks: { cuts: Cut[]; left: number }[] = [];
  for (const cut of [...cuts].sort((a, b) => b.length - a.length || a.for.localeCompare(b.for))) {
    const room = stocks.find(({ left }) => left >= cut.length);
    if (room) {
      room.cuts.push(cut);
      room.left -= cut.length;
    } else stocks.push({ cuts: [cut], left: stockLength - cut.length });
  }
  const total = cuts.reduce((sum, { length }) => sum + length, 0);
  return { material, kind, stockLength, stocks, leastStocks: Math.ceil((total / stockLength) * (1 - 1e-9)) };
}
