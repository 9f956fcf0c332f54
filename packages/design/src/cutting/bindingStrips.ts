import { cutStrips } from '@panewright/packing';
import { mm } from '@panewright/quantity';
import type { Catalogue } from '../document/catalogue.ts';
import type { Find } from '../plan/finding.ts';
import type { StripPlan } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';

/** One length of binding and the opening whose panel it goes round. */
interface Cut {
  readonly length: number;
  readonly for: string;
}

/** Work spent on one cutting list before the best found is taken: some tenths of a second. */
const EFFORT = 1e8;

/** A strip cutting list for each binding: whole lengths from its rolls, no joins, with the least rolls that could do. */
export function bindingStrips(made: readonly Made[], catalogue: Catalogue, find: Find): readonly StripPlan[] {
  return catalogue.bindings.flatMap((binding) => {
    const cuts = made.flatMap(({ pattern, panel }): Cut[] => {
      const { edging } = panel;
      if (edging.kind !== 'binding' || edging.binding !== binding.id) return [];
      return pattern.members.map(({ opening }) => ({ length: edging.cutLength.value, for: opening }));
    });
    if (cuts.length === 0) return [];
    const stockLength = binding.pack.quantity;
    const tooLong = cuts.find(({ length }) => length > stockLength);
    if (!tooLong) return [stripPlan(binding.id, cuts, stockLength)];
    find({
      severity: 'stop',
      code: 'STRIP_LONGER_THAN_ROLL',
      where: { item: binding.id, opening: tooLong.for },
      numbers: { length: tooLong.length, stock: stockLength, binding: binding.name },
    });
    return [];
  });
}

function stripPlan(material: string, cuts: readonly Cut[], stockLength: number): StripPlan {
  const plan = cutStrips(
    {
      stocks: [{ id: material, length: mm(stockLength), cost: 1 }],
      items: cuts.map((cut, id) => ({ id, length: mm(cut.length), demand: 1 })),
      kerf: mm(0),
    },
    EFFORT,
  );
  // Every cut is shorter than its roll, and rolls are without number: there is always a plan.
  if (!plan.ok) throw new Error(`strips of ${material}: ${plan.refusal.code}`);
  const stocks = plan.value.patterns.flatMap((pattern) =>
    Array.from({ length: pattern.times }, () => ({
      cuts: pattern.cuts.flatMap(({ itemId, count }) =>
        Array.from({ length: count }, () => cuts[Number(itemId)]!),
      ),
      left: pattern.remnant as number,
    })),
  );
  return { material, kind: 'binding', stockLength, stocks, leastStocks: plan.value.bound };
}
