import {
  type BlockMagnet,
  centringStiffness,
  contactPull,
  type DiscMagnet,
  dynamicPressure,
  lastingLossLimit,
  type MagnetGrade,
  magnetGrade,
  pull,
  screenLoad,
  USUAL_COATING,
  USUAL_TOLERANCES,
  type WorkingPull,
  workingPull,
} from '@panewright/magnets';
import { celsius, metrePerSecond, mm } from '@panewright/quantity';
import type { Materials } from '../derive/materials.ts';
import type { Catalogue, Magnet } from '../document/catalogue.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldMargin, HoldOpening, HoldPoint, HoldPull, OpeningPlan, PanelPlan } from '../plan/plan.ts';
import { heldOtherwise } from './heldOtherwise.ts';

/** Standard acceleration of free fall, m/s² (exact by definition). */
export const GRAVITY = 9.80665;
/** What keeps a pair apart that has snapped together without the glass, mm (an estimate). */
export const CONTACT_GAP = mm(0.5);

/** Layers between the magnets of a pair (or a magnet and its steel), from the panel to the inside: their sum is the gap. */
export function stackOf(
  plan: OpeningPlan,
  materials: Materials,
): readonly { name: string; thickness: number }[] {
  const { glazing } = plan;
  if (materials.holder.kind === 'fastener') return [];
  return [
    { name: 'fabric', thickness: materials.fabric.thickness },
    ...(glazing.standOff > 0 ? [{ name: 'standOff', thickness: glazing.standOff }] : []),
    ...glazing.layers.map(({ kind, thickness }) => ({ name: kind, thickness })),
    { name: 'tape', thickness: materials.tape.thickness },
    ...(materials.holder.kind === 'steel'
      ? []
      : [{ name: 'wrapFilm', thickness: materials.wrapFilm.thickness }]),
  ];
}

/** A catalogue magnet as the force laws take it. */
export function bodyOf({ shape }: Magnet): DiscMagnet | BlockMagnet {
  if (shape.kind === 'disc')
    return { kind: 'disc', diameter: mm(shape.diameter), thickness: mm(shape.thickness) };
  return { kind: 'block', width: mm(shape.width), height: mm(shape.height), thickness: mm(shape.thickness) };
}

/** A panel's points with what holds them. */
export interface HeldHere {
  readonly points: readonly HoldPoint[];
  /** Of each point's pull, from its neighbours. */
  readonly shares: readonly number[];
  readonly panel: PanelPlan;
  readonly materials: Materials;
  readonly catalogue: Catalogue;
}

/** What one opening's glass makes of its panel's hold points: gap, pull, margin, poles. */
export function holdOpening(
  plan: OpeningPlan,
  { points, shares, panel, materials, catalogue }: HeldHere,
  find: Find,
): Omit<HoldOpening, 'marking' | 'gaps'> {
  const layers = stackOf(plan, materials);
  const gap = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const out = plan.choices.hold.poleOut;
  const { holder } = materials;
  if (plan.glazing.curved && holder.kind !== 'fastener')
    find({ severity: 'doubt', code: 'CURVED_GLASS', where: { opening: plan.opening }, numbers: {} });
  const grades = holder.kind === 'fastener' ? null : gradesOf(materials, plan.opening, find);
  const held =
    holder.kind === 'magnets'
      ? heldByPairs(gap, plan, { points, shares, panel, materials, catalogue }, grades, find)
      : heldOtherwise(gap, plan, points, panel, materials, catalogue, find);
  return {
    opening: plan.opening,
    by: holder.kind,
    ...namesOf(materials),
    layers,
    gap: figure(gap, 'mm', 'computed', 'stackSum', [`openings.${plan.opening}.glazing`]),
    ...held,
    heatLimit: grades ? heatLimit(materials, grades) : null,
    poles: { panelOut: out, insideOut: out === 'north' ? 'south' : 'north' },
  };
}

function namesOf({ holder, outside, inside }: Materials): { outside: string; inside: string } {
  switch (holder.kind) {
    case 'magnets':
      return { outside: outside.id, inside: inside.id };
    case 'steel':
      return { outside: outside.id, inside: holder.strip.id };
    case 'fastener':
      return { outside: holder.fastener.id, inside: holder.fastener.id };
  }
}

type Held = Pick<HoldOpening, 'pull' | 'margin'>;

function heldByPairs(
  gap: number,
  plan: OpeningPlan,
  here: HeldHere,
  grades: Grades | null,
  find: Find,
): Held {
  const pull = grades ? pullAcross(gap, plan, here.materials, grades, find) : null;
  return { pull, margin: pull ? marginOf(pull, plan, here, find) : null };
}

interface Grades {
  readonly outside: MagnetGrade;
  readonly inside: MagnetGrade;
}

function gradesOf(
  { outside, inside: behind, holder }: Materials,
  opening: string,
  find: Find,
): Grades | null {
  const inside = holder.kind === 'magnets' ? behind : outside;
  const a = magnetGrade(outside.grade);
  const b = magnetGrade(inside.grade);
  for (const [magnet, grade] of [
    [outside, a],
    [inside, b],
  ] as const)
    if (!grade.ok)
      find({
        severity: 'stop',
        code: 'GRADE_UNKNOWN',
        where: { opening, item: magnet.id },
        numbers: { magnet: magnet.name, grade: magnet.grade },
      });
  return a.ok && b.ok ? { outside: a.value, inside: b.value } : null;
}

function heatLimit(materials: Materials, grades: Grades): number {
  const outside = lastingLossLimit(bodyOf(materials.outside), grades.outside).limit;
  if (materials.holder.kind !== 'magnets') return outside;
  return Math.min(outside, lastingLossLimit(bodyOf(materials.inside), grades.inside).limit);
}

/** Pull of one pair: ideal model at 20 °C, working value at the hottest with its 95 % interval, and snapped together. */
function pullAcross(
  gap: number,
  plan: OpeningPlan,
  materials: Materials,
  grades: Grades,
  find: Find,
): HoldPull | null {
  const pair = {
    a: bodyOf(materials.inside),
    b: bodyOf(materials.outside),
    remanenceA: grades.inside.remanence.design,
    remanenceB: grades.outside.remanence.design,
    gap: mm(gap),
  };
  const working = workingPull({
    ...pair,
    coating: USUAL_COATING,
    temperature: celsius(plan.choices.weather.hottest),
    tolerances: USUAL_TOLERANCES,
    sameBatch: materials.inside.id === materials.outside.id,
  });
  const ideal = pull(pair);
  const touching = contactPull(pair, CONTACT_GAP);
  if (!working.ok || !ideal.ok || !touching.ok) {
    const refusal = !working.ok
      ? working.refusal
      : !ideal.ok
        ? ideal.refusal
        : !touching.ok
          ? touching.refusal
          : null;
    find({
      severity: 'stop',
      code: 'PULL_REFUSED',
      where: { opening: plan.opening },
      numbers: { gap, refusal: refusal!.code },
    });
    return null;
  }
  reportOffCentre(pair, plan, materials, find);
  return toPull(ideal.value, working.value, touching.value, plan, materials);
}

function toPull(
  ideal: number,
  working: WorkingPull,
  touching: number,
  plan: OpeningPlan,
  materials: Materials,
): HoldPull {
  const inputs = [
    `hold.${plan.opening}.gap`,
    `catalogue.magnets.${materials.outside.id}`,
    `catalogue.magnets.${materials.inside.id}`,
    'choices.weather.hottest',
  ];
  return {
    ideal,
    working: figure(working.nominal, 'N', 'estimate', 'pairForce', inputs, { source: 'vokoun-2009' }),
    low: working.low,
    high: working.high,
    touching,
  };
}

function reportOffCentre(
  pair: Parameters<typeof centringStiffness>[0],
  plan: OpeningPlan,
  materials: Materials,
  find: Find,
): void {
  const stiffness = centringStiffness(pair);
  if (!stiffness.ok || (stiffness.value.x >= 0 && stiffness.value.y >= 0)) return;
  find({
    severity: 'doubt',
    code: 'MAGNETS_PUSH_OFF_CENTRE',
    where: { opening: plan.opening },
    numbers: { outside: materials.outside.name, inside: materials.inside.name },
  });
}

/**
 * Pull of all pairs against what asks for it in the stated weather: the wind's lift, and the pull that friction needs
 * to carry the panel's weight. The mode named is the larger of the two at the wind that uses the low pull up.
 *
 * @source sources.md#screen-on-pane, #magnets-slip-model
 */
function marginOf(
  drawn: HoldPull,
  plan: OpeningPlan,
  { points, shares, panel, materials, catalogue }: HeldHere,
  find: Find,
): HoldMargin | null {
  const { wind, gustFactor } = plan.choices.weather;
  const pressure = dynamicPressure(metrePerSecond(wind * gustFactor));
  const unit = dynamicPressure(metrePerSecond(10));
  if (!pressure.ok || !unit.ok || points.length === 0) return null;
  const load = screenLoad(materials.fabric.openness, pressure.value, 'field');
  const unitLoad = screenLoad(materials.fabric.openness, unit.value, 'field');
  if (!load.ok || !unitLoad.ok) return null;
  const square = panel.area.value / 1e6;
  const weight = (panel.mass.value / 1000) * GRAVITY;
  const carry = weight / catalogue.habits.friction;
  const lift = load.value.high * square;
  const pairs = shares.reduce((sum, share) => sum + share, 0);
  const over = (pullOfOne: number) => (pairs * pullOfOne) / (lift + carry);
  // Lift grows with the square of the speed; this is the speed at which the low pull is used up.
  const spare = pairs * drawn.low - carry;
  const perSpeed = (unitLoad.value.high * square) / 100;
  const margin: HoldMargin = {
    mode: spare > carry ? 'pull-off' : 'slip',
    value: figure(over(drawn.working.value), 'ratio', 'estimate', 'holdMargin', [
      `hold.${plan.opening}.pull`,
      `panels.${panel.pattern}.area`,
      `panels.${panel.pattern}.mass`,
      'choices.weather',
      'catalogue.habits.friction',
    ]),
    low: over(drawn.low),
    high: over(drawn.high),
    letsGoAt: spare > 0 ? Math.sqrt(spare / perSpeed) / gustFactor : 0,
    windPressure: load.value.high,
    weight,
  };
  reportWeak(margin, drawn, plan, points.length, catalogue.habits.windMargin, find);
  return margin;
}

export function reportWeak(
  margin: HoldMargin,
  drawn: HoldPull,
  plan: OpeningPlan,
  count: number,
  asked: number,
  find: Find,
): void {
  if (margin.low >= asked) return;
  find({
    severity: margin.low < 1 ? 'stop' : 'doubt',
    code: 'PULL_TOO_WEAK',
    where: { opening: plan.opening },
    numbers: {
      margin: margin.low,
      asked,
      pull: drawn.low,
      count,
      letsGoAt: margin.letsGoAt,
      wind: plan.choices.weather.wind,
      mode: margin.mode,
    },
  });
}
