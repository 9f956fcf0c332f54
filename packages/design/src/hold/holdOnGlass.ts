import { bounds, movePoint } from '@panewright/geometry';
import type { Catalogue } from '../document/catalogue.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldOpening, OpeningPlan } from '../plan/plan.ts';
import { type DetailContext, holdDetails, sectionsAt } from './holdDetails.ts';
import { holdOpening, stackOf } from './holdOpening.ts';
import { checkSheets, type MarkingPlan, markingPlan } from './markingPlan.ts';
import { neighbourShares } from './neighbours.ts';
import type { PanelPoles } from './panelPoles.ts';

export interface GlassContext extends Omit<DetailContext, 'shares'> {
  readonly poles: PanelPoles;
}

/** All that one opening's glass makes of its panel's hold points. */
export function holdOnGlass(
  plan: OpeningPlan,
  context: GlassContext,
  catalogue: Catalogue,
  find: Find,
): HoldOpening {
  const { points, panel, materials } = context;
  const gap = stackOf(plan, materials).reduce((sum, { thickness }) => sum + thickness, 0);
  const shares = neighbourShares(points, gap, materials, panel.pattern, find);
  return {
    ...holdOpening(plan, { points, shares, panel, materials, catalogue }, find),
    marking: markingOf(plan, context),
    gaps: gapsOf(plan, context),
    ...holdDetails(plan, { ...context, shares }, find),
  };
}

/** Marks in the opening's frame; every pair draws and both sheets tell of the same pairs, or the program is at fault. */
function markingOf(plan: OpeningPlan, { points, place, materials, poles }: GlassContext): MarkingPlan | null {
  if (materials.holder.kind !== 'magnets' || !plan.shape || points.length === 0) return null;
  const { minX, maxX } = bounds(plan.shape.outline);
  const middle = (minX + maxX) / 2;
  const centres = points.map(({ centre }) => movePoint(place, centre));
  const marking = markingPlan(centres, poles.plan, middle);
  const [fault] = checkSheets(marking, middle);
  if (fault) throw new Error(`marks of ${plan.opening}: ${fault.code} at ${fault.point}`);
  return renumbered(marking, (index) => points[index - 1]!.number);
}

/** With the panel's own numbers, where a point of it could not be made. */
function renumbered({ steps, outside, inside }: MarkingPlan, number: (index: number) => number): MarkingPlan {
  const named = <T extends { readonly point: number }>(one: T): T => ({ ...one, point: number(one.point) });
  return {
    steps: steps.map((step) => ('point' in step ? named(step) : step)),
    outside: outside.map(named),
    inside: inside.map(named),
  };
}

function gapsOf(plan: OpeningPlan, context: GlassContext): HoldOpening['gaps'] {
  if (context.materials.holder.kind === 'fastener') return null;
  const range = (place: 'corner' | 'edge') => {
    const { gap: value, gapLow: low, gapHigh: high } = sectionsAt(place, plan, context);
    return { value, low, high };
  };
  return { corner: range('corner'), edge: range('edge') };
}
