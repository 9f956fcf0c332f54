import { length } from '@panewright/geometry';
import { dynamicPressure, screenLoad } from '@panewright/magnets';
import { metrePerSecond } from '@panewright/quantity';
import type { Materials } from '../derive/materials.ts';
import type { Catalogue } from '../document/catalogue.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldMargin, HoldOpening, HoldPoint, HoldPull, OpeningPlan, PanelPlan } from '../plan/plan.ts';
import type { FastenerRefusal } from './fasteners.ts';
import { frictionOf, holdingStrength, steelItem } from './holding.ts';
import { CONTACT_GAP, GRAVITY, reportWeak } from './holdOpening.ts';
import { type PanelLoad, type Strength, type StrengthRefusal, USUAL_CLOTH } from './margins.ts';
import { steelStrength } from './steelStrength.ts';
import { wholeMargin } from './wholeMargin.ts';

/** Edge that one of a panel's points stands for, mm. */
export const runOfOne = (panel: PanelPlan, points: number): number =>
  length(panel.finished) / Math.max(1, points);

/**
 * Pull and margin of a panel held by steel or by fasteners.
 *
 * @source as holdingStrength, wholeMargin
 */
export function heldOtherwise(
  gap: number,
  plan: OpeningPlan,
  points: readonly HoldPoint[],
  panel: PanelPlan,
  materials: Materials,
  { habits }: Catalogue,
  find: Find,
): Pick<HoldOpening, 'pull' | 'margin'> {
  const friction = frictionOf(habits.friction);
  const { hottest } = plan.choices.weather;
  const run = runOfOne(panel, points.length);
  const strength = holdingStrength(materials, { gap, hottest, friction, run });
  const load = loadOf(plan, panel, materials);
  if (!strength.ok) {
    reportRefused(strength.refusal, plan, points.length, load, materials, habits.windMargin, find);
    return { pull: null, margin: null };
  }
  const pull = pullOf(strength.value, plan, materials, touchingOf(materials, hottest, friction));
  const margin = marginOf(strength.value, plan, points, panel, load);
  if (margin) reportWeak(margin, pull, plan, points.length, habits.windMargin, find);
  return { pull, margin };
}

function loadOf(plan: OpeningPlan, panel: PanelPlan, { fabric }: Materials): PanelLoad {
  const { wind, gustFactor } = plan.choices.weather;
  return {
    ...USUAL_CLOTH,
    area: panel.area.value,
    weight: (panel.mass.value / 1000) * GRAVITY,
    openness: fabric.openness,
    wind,
    gustFactor,
  };
}

/** A magnet that has met steel without the glass, N; 0 for a fastener. */
function touchingOf(
  { holder, outside }: Materials,
  hottest: number,
  friction: ReturnType<typeof frictionOf>,
): number {
  if (holder.kind !== 'steel') return 0;
  const steel = steelItem(holder.strip);
  const met = steelStrength({ outside, steel, gap: CONTACT_GAP, hottest, friction });
  return met.ok ? met.value.pull.high : 0;
}

function pullOf(strength: Strength, plan: OpeningPlan, { holder }: Materials, touching: number): HoldPull {
  const { nominal, low, high } = strength.pull;
  const inputs =
    holder.kind === 'fastener'
      ? [`catalogue.fasteners.${holder.fastener.id}.strength`]
      : [`hold.${plan.opening}.gap`, 'choices.weather.hottest'];
  return {
    ideal: nominal,
    working: figure(nominal, 'N', 'estimate', 'pairForce', inputs),
    low,
    high,
    touching,
  };
}

function marginOf(
  strength: Strength,
  plan: OpeningPlan,
  points: readonly HoldPoint[],
  panel: PanelPlan,
  load: PanelLoad,
): HoldMargin | null {
  if (points.length === 0) return null;
  const held = points.map(({ number, kind, centre: { x, y } }) => ({ number, kind, x, y, strength }));
  const whole = wholeMargin(held, load, load.wind);
  const pressure = dynamicPressure(metrePerSecond(load.wind * load.gustFactor));
  if (!whole.ok || !pressure.ok) return null;
  const lift = screenLoad(load.openness, pressure.value, 'field');
  if (!lift.ok) return null;
  return {
    mode: whole.value.mode === 'pullOff' ? 'pull-off' : 'slip',
    value: figure(whole.value.value, 'ratio', 'estimate', 'holdMargin', [
      `hold.${plan.opening}.pull`,
      `panels.${panel.pattern}.area`,
      `panels.${panel.pattern}.mass`,
      'choices.weather',
    ]),
    low: whole.value.low,
    high: whole.value.high,
    letsGoAt: whole.value.letsGoAt.low,
    windPressure: lift.value.high,
    weight: load.weight,
  };
}

/** A fastener nobody tried is to be tried: with the pull and the hold along the surface each point would need. */
function reportRefused(
  refusal: StrengthRefusal | FastenerRefusal,
  plan: OpeningPlan,
  count: number,
  load: PanelLoad,
  { holder }: Materials,
  asked: number,
  find: Find,
): void {
  const where = { opening: plan.opening };
  if (refusal.code === 'PULL_REFUSED')
    find({
      severity: 'stop',
      code: 'PULL_REFUSED',
      where,
      numbers: { gap: refusal.gap, refusal: refusal.refusal },
    });
  if (holder.kind !== 'fastener' || count === 0) return;
  const pressure = dynamicPressure(metrePerSecond(load.wind * load.gustFactor));
  const lift = pressure.ok ? screenLoad(load.openness, pressure.value, 'field') : pressure;
  if (!lift.ok) return;
  find({
    severity: 'doubt',
    code: 'FASTENER_STRENGTH_UNKNOWN',
    where: { ...where, item: holder.fastener.id },
    numbers: {
      fastener: holder.fastener.name,
      count,
      pull: (asked * lift.value.high * load.area) / 1e6 / count,
      along: (asked * load.weight) / count,
    },
  });
}
