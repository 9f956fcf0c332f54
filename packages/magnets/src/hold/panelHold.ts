import {
  type MetrePerSecond,
  metrePerSecond,
  type Newton,
  newton,
  ok,
  type Pascal,
  type Result,
  refuse,
} from '@panewright/quantity';
import { dynamicPressure } from '../wind/pressure.ts';
import { checkPanel, pressureRefusal } from './checkPanel.ts';
import type { HoldMode, HoldPanel, Margin, PanelHold, PanelHoldRefusal, PointHold } from './holdPanel.ts';
import { type Demand, demandOf, type Lie, liesOf } from './pointDemand.ts';

type Side = 'worst' | 'best';

const MODES = ['pullOff', 'slip', 'peel'] as const;
/** Let-go is sought up to this speed. */
const FASTEST = 100;
const STEP = 2.5;

/** Share of what a point holds that a demand takes, by mode; 1 lets go, Infinity when nothing is left to hold. */
function shares(
  panel: HoldPanel,
  at: number,
  demand: Demand,
  side: Side,
): { readonly [mode in HoldMode]: number } {
  const point = panel.points[at]!;
  const end = side === 'worst' ? 'low' : 'high';
  const pull = point.pull[end];
  const left = pull - demand.normal;
  const slides = point.breakAway[end] - point.friction[end] * demand.normal;
  const share = (asked: number, holds: number) =>
    asked <= 0 ? 0 : holds <= 0 ? Number.POSITIVE_INFINITY : asked / holds;
  return {
    pullOff: share(demand.normal, pull),
    slip: share(demand.side, slides),
    peel: share(demand.side * panel.arm, (left * point.face) / 2),
  };
}

/** The greatest share of these points and of all modes at a gust pressure. */
function greatestShare(
  panel: HoldPanel,
  lies: readonly Lie[],
  pressure: number,
  side: Side,
  these: readonly number[],
): number {
  let most = 0;
  for (const i of these) {
    const found = shares(panel, i, demandOf(panel, i, lies[i]!, pressure, side), side);
    most = Math.max(most, found.pullOff, found.slip, found.peel);
  }
  return most;
}

const asMargin = (least: number, most: number): Margin =>
  most === 0 ? 'unloaded' : { low: 1 / most, high: least === 0 ? 'unloaded' : 1 / least };

/** Gust speed at which the first of these points lets go; 0 if the weight alone is too much. */
function letGo(
  panel: HoldPanel,
  lies: readonly Lie[],
  side: Side,
  these: readonly number[],
): MetrePerSecond | 'beyondRange' {
  const holdsAt = (speed: number) => {
    const pressure = dynamicPressure(metrePerSecond(speed), panel.airDensity);
    if (!pressure.ok) throw new Error(`a gust of ${speed} m/s was refused`);
    return greatestShare(panel, lies, pressure.value, side, these) < 1;
  };
  if (!holdsAt(0)) return metrePerSecond(0);
  // A little wind may ease a corner by drawing against the weight, so the first failure is looked for in steps.
  let high = STEP;
  while (high <= FASTEST && holdsAt(high)) high += STEP;
  if (high > FASTEST) return 'beyondRange';
  let low = high - STEP;
  while (high - low > 1e-7) {
    const middle = 0.5 * (low + high);
    if (holdsAt(middle)) low = middle;
    else high = middle;
  }
  return metrePerSecond(low);
}

function pointHold(panel: HoldPanel, at: number, lie: Lie): PointHold {
  const worst = demandOf(panel, at, lie, panel.pressure, 'worst');
  const best = demandOf(panel, at, lie, panel.pressure, 'best');
  const most = shares(panel, at, worst, 'worst');
  const least = shares(panel, at, best, 'best');
  const governing = MODES.reduce((p, q) => (most[q] > most[p] ? q : p));
  const between = (p: number, q: number): { low: Newton; high: Newton } => ({
    low: newton(Math.min(p, q)),
    high: newton(Math.max(p, q)),
  });
  return {
    normal: between(best.normal, worst.normal),
    side: between(best.side, worst.side),
    margins: {
      pullOff: asMargin(least.pullOff, most.pullOff),
      slip: asMargin(least.slip, most.slip),
      peel: asMargin(least.peel, most.peel),
    },
    governing,
    margin: asMargin(Math.max(least.pullOff, least.slip, least.peel), most[governing]),
  };
}

/**
 * What every hold point of a panel has to carry in a gust, and what it has in hand.
 *
 * Each point takes the wind and the weight of its share of the panel: half the spacing to its neighbours over the
 * run round all points. Along the edges the lifted cloth draws on the points; on a straight run two neighbours
 * cancel, at a corner they add. A point lets go by pull-off (lift over pull), by sliding (side load over the
 * break-away load less friction times lift) or by peel (side load at the arm over what is left of the pull at
 * half the face).
 *
 * The low margin takes the low end of every strength with the high end of every load, so it is cautious: the
 * ends do not all meet at once.
 *
 * @returns for each point the demands (N), the margin by mode and the governing mode; for the panel the weakest
 *   point and the gust speed (m/s, not a mean) at which it lets go
 * @range three points or more, in order round the panel; gusts up to 100 m/s. Cloth that bulges and draws across
 *   the panel, at right angles to an edge, is left out: fit it without slack that lets it fill
 * @accuracy an estimate: load on a mesh against glass, cloth stiffness and friction are not measured figures.
 *   Test one panel by hand and by fan or drive.
 * @refuses TOO_FEW_HOLD_POINTS, HOLD_POINTS_COINCIDE, HOLD_FIGURE_OUT_OF_RANGE, HOLD_ENDS_REVERSED
 * @source sources.md#magnets-panel-hold, #magnets-slip-model, #magnets-stretch-sag
 */
export function panelHold(panel: HoldPanel): Result<PanelHold, PanelHoldRefusal> {
  const found = pointHolds(panel);
  if (!found.ok) return found;
  const lies = liesOf(panel);
  const all = lies.map((_, at) => at);
  return ok({
    ...found.value,
    letGo: { low: letGo(panel, lies, 'worst', all), high: letGo(panel, lies, 'best', all) },
  });
}

/**
 * As panelHold, without the search for the speed at which the panel lets go: for many winds or layouts.
 *
 * @refuses as panelHold
 * @source as panelHold
 */
export function pointHolds(panel: HoldPanel): Result<Omit<PanelHold, 'letGo'>, PanelHoldRefusal> {
  const refusal = checkPanel(panel);
  return refusal ? refuse(refusal) : ok(holdsOf(panel, liesOf(panel)));
}

/**
 * As pointHolds at each of many gust pressures in place of the panel's own, which is looked over once for all.
 *
 * @param pressures Pa, as dynamicPressure gives them
 * @returns one answer for each pressure, in the order given
 * @refuses as panelHold
 * @source as panelHold
 */
export function pointHoldsAt(
  panel: HoldPanel,
  pressures: readonly Pascal[],
): Result<readonly Omit<PanelHold, 'letGo'>[], PanelHoldRefusal> {
  const refusal = checkPanel(panel) ?? pressures.map(pressureRefusal).find((one) => one !== undefined);
  if (refusal) return refuse(refusal);
  const lies = liesOf(panel);
  return ok(pressures.map((pressure) => holdsOf({ ...panel, pressure }, lies)));
}

function holdsOf(panel: HoldPanel, lies: readonly Lie[]): Omit<PanelHold, 'letGo'> {
  const points = lies.map((lie, at) => pointHold(panel, at, lie));
  const low = ({ margin }: PointHold) => (margin === 'unloaded' ? Number.POSITIVE_INFINITY : margin.low);
  const weakest = points.reduce((best, point, at) => (low(point) < low(points[best]!) ? at : best), 0);
  return { points, weakest };
}

/**
 * Gust speed at which each point lets go, had the others held, with every bad end (`worst`) or every good one (`best`):
 * the least of them is the panel's.
 *
 * @returns m/s in the order of the points; 0 where the weight alone is too much, `beyondRange` past 100 m/s
 * @accuracy as panelHold: an estimate
 * @refuses as panelHold
 * @source as panelHold
 */
export function pointsLetGo(
  panel: HoldPanel,
  side: Side,
): Result<readonly (MetrePerSecond | 'beyondRange')[], PanelHoldRefusal> {
  const refusal = checkPanel(panel);
  if (refusal) return refuse(refusal);
  const lies = liesOf(panel);
  return ok(lies.map((_, at) => letGo(panel, lies, side, [at])));
}

/**
 * Gust speed at which the first point of a panel lets go, with every bad end (`worst`) or every good one (`best`).
 *
 * @returns m/s; 0 where the weight alone is too much, `beyondRange` past 100 m/s
 * @accuracy as panelHold: an estimate
 * @refuses as panelHold
 * @source as panelHold
 */
export function panelLetsGo(
  panel: HoldPanel,
  side: Side,
): Result<MetrePerSecond | 'beyondRange', PanelHoldRefusal> {
  const refusal = checkPanel(panel);
  if (refusal) return refuse(refusal);
  const lies = liesOf(panel);
  return ok(
    letGo(
      panel,
      lies,
      side,
      lies.map((_, at) => at),
    ),
  );
}
