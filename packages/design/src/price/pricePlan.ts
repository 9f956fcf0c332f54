import { jobCost, share } from '@panewright/costing';
import { minute, money } from '@panewright/quantity';
import type { Catalogue } from '../document/catalogue.ts';
import { type Figure, figure } from '../plan/figure.ts';
import type { PanelPlan, PatternPlan, PricePlan, TakeOffPlan } from '../plan/plan.ts';

/**
 * Cost, price, tax and margin of the job, and the price shared out by opening in proportion to panel area.
 *
 * @source sources.md#job-costing
 */
export function pricePlan(
  takeOff: TakeOffPlan,
  patterns: readonly PatternPlan[],
  panels: readonly PanelPlan[],
  catalogue: Catalogue,
): PricePlan {
  const { rates, currency } = catalogue;
  const material = takeOff.materials.reduce((sum, line) => sum + line.costCharged.value, 0);
  const cost = jobCost({
    material: money(material),
    minutes: minute(takeOff.minutes.value),
    labourRate: money(rates.labour),
    overheadRate: rates.overhead,
    markup: rates.markup,
    tax: rates.tax,
  });
  const of = (value: number, by: 'jobCost' | 'markup' | 'tax', inputs: readonly string[]): Figure =>
    figure(value, 'money', 'computed', by, inputs, { source: 'job-costing' });
  const areas = new Map(panels.map((panel) => [panel.pattern, panel.area.value]));
  const openings = patterns.flatMap(({ pattern, members }) =>
    members.map(({ opening }) => ({ opening, area: areas.get(pattern) ?? 0 })),
  );
  const parts =
    openings.length > 0
      ? share(
          cost.price,
          openings.map(({ area }) => area),
        )
      : [];
  return {
    currency,
    material: of(cost.material, 'jobCost', ['takeOff.materials']),
    labour: of(cost.labour, 'jobCost', ['takeOff.minutes', 'catalogue.rates.labour']),
    overhead: of(cost.overhead, 'jobCost', ['price.labour', 'catalogue.rates.overhead']),
    cost: of(cost.cost, 'jobCost', ['price.material', 'price.labour', 'price.overhead']),
    price: of(cost.price, 'markup', ['price.cost', 'catalogue.rates.markup']),
    tax: of(cost.tax, 'tax', ['price.price', 'catalogue.rates.tax']),
    total: of(cost.total, 'tax', ['price.price', 'price.tax']),
    margin: cost.margin,
    byOpening: openings.map(({ opening }, index) => ({ opening, price: parts[index] ?? 0 })),
  };
}
