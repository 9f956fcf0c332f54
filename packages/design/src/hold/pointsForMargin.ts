import type { Materials } from '../derive/materials.ts';
import type { Catalogue } from '../document/catalogue.ts';
import { MAGNET_DENSITY, magnetVolume, panelMass } from '../panels/panelMass.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, PanelPlan } from '../plan/plan.ts';
import { fewestPoints } from './fewestPoints.ts';
import { runOfOne } from './heldOtherwise.ts';
import { frictionOf, holdingStrength } from './holding.ts';
import { GRAVITY, stackOf } from './holdOpening.ts';
import type { Layout, PlacingInput } from './layout.ts';
import { type PanelLoad, USUAL_CLOTH } from './margins.ts';
import { type PanelRules, placingOf } from './panelLayout.ts';
import { wholeMargin } from './wholeMargin.ts';

export interface MarginAsked {
  readonly panel: PanelPlan;
  readonly materials: Materials;
  readonly members: readonly { readonly plan: OpeningPlan }[];
  readonly rules: Omit<PanelRules, 'counts'>;
}

/**
 * Counts of the fewest points that meet the shop's margin of the panel as a whole, on the glass of every opening it serves;
 * null where the spacing's own do, or where no more help.
 *
 * @source as fewestPoints, wholeMargin
 */
export function pointsForMargin(
  { panel, materials, members, rules }: MarginAsked,
  { habits }: Catalogue,
  find: Find,
): PlacingInput['counts'] | null {
  const asked = habits.windMargin;
  const marginOf = ({ points }: Layout) =>
    Math.min(...members.map(({ plan }) => marginWith(points.length, plan, panel, materials, habits)));
  const input = placingOf(panel, { ...rules, counts: null });
  const found = fewestPoints(input, marginOf, asked);
  if (found.ok) {
    const { mirrors, counts: each } = found.value.layout;
    return found.value.tried === 1 ? null : { mirrors, each };
  }
  const { best, points } = found.refusal;
  find({
    severity: 'doubt',
    code: 'POINTS_CANNOT_MEET_MARGIN',
    where: { pattern: panel.pattern },
    numbers: { asked, best, points },
  });
  return null;
}

/** The whole panel's low margin with so many points; each brings its patch and its magnet. */
function marginWith(
  count: number,
  plan: OpeningPlan,
  panel: PanelPlan,
  materials: Materials,
  habits: Catalogue['habits'],
): number {
  const gap = stackOf(plan, materials).reduce((sum, { thickness }) => sum + thickness, 0);
  const { hottest, wind, gustFactor } = plan.choices.weather;
  const run = runOfOne(panel, count);
  const strength = holdingStrength(materials, { gap, hottest, friction: frictionOf(habits.friction), run });
  if (!strength.ok) return 0;
  const load: PanelLoad = {
    ...USUAL_CLOTH,
    area: panel.area.value,
    weight: ((panelMass(panel, [], materials).value + count * massOfOne(panel, materials)) / 1000) * GRAVITY,
    openness: materials.fabric.openness,
    wind,
    gustFactor,
  };
  const points = Array.from({ length: count }, (_, k) => ({
    number: k + 1,
    kind: 'edge' as const,
    x: 0,
    y: 0,
    strength: strength.value,
  }));
  const whole = wholeMargin(points, load, wind);
  return whole.ok ? whole.value.low : 0;
}

/** Patch and magnet of one point, g: the patch at its largest. */
function massOfOne({ choices }: PanelPlan, { holder, fabric, outside }: Materials): number {
  if (holder.kind === 'fastener') return 0;
  return (choices.hold.pocket ** 2 / 1e6) * fabric.mass + magnetVolume(outside) * MAGNET_DENSITY;
}
