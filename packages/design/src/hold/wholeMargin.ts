import { dynamicPressure, type LoadRefusal, type SpeedRefusal, screenLoad } from '@panewright/magnets';
import { metrePerSecond, ok, type Result } from '@panewright/quantity';
import type { HeldPoint, PanelLoad } from './margins.ts';

/** Pull of all points together against what asks for it over the whole panel. */
export interface WholeMargin {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly mode: 'pullOff' | 'slip';
  /** Mean wind at which the low and the high pull are used up, m/s; 0 where the weight alone is too much. */
  readonly letsGoAt: { readonly low: number; readonly high: number };
}

/**
 * Whether the whole panel stays on: the pull of all its points over the lift of the gust and the pull that friction needs to
 * carry the weight. What single edges draw on single points is left out: see panelMargins for that.
 *
 * @param wind mean wind, m/s
 * @returns ratios of pull over demand, by the spread of the pulls alone
 * @accuracy an estimate: try a panel before it is trusted
 * @refuses SPEED_OUT_OF_RANGE, OPENNESS_OUT_OF_RANGE
 * @source sources.md#screen-on-pane, #magnets-slip-model
 */
export function wholeMargin(
  points: readonly HeldPoint[],
  load: PanelLoad,
  wind: number,
): Result<WholeMargin, SpeedRefusal | LoadRefusal> {
  const pressure = dynamicPressure(metrePerSecond(wind * load.gustFactor));
  if (!pressure.ok) return pressure;
  const lifted = screenLoad(load.openness, pressure.value, 'field');
  if (!lifted.ok) return lifted;
  const unit = dynamicPressure(metrePerSecond(10));
  if (!unit.ok) throw new Error(unit.refusal.code);
  const unitLift = screenLoad(load.openness, unit.value, 'field');
  if (!unitLift.ok) return unitLift;
  const square = load.area / 1e6;
  const lift = lifted.value.high * square;
  const friction = Math.min(...points.map(({ strength }) => strength.friction.low));
  // A fastener that does not slide carries the weight by what it bears along the surface.
  const slides = friction > 0;
  const bears = points.reduce((sum, { strength }) => sum + strength.breakAway.low, 0);
  const carry = slides ? load.weight / friction : 0;
  const sum = (end: 'nominal' | 'low' | 'high') =>
    points.reduce((total, { strength }) => total + strength.pull[end], 0);
  const over = (pull: number) => {
    const off = pull / Math.max(lift + carry, Number.MIN_VALUE);
    return slides ? off : Math.min(off, bears / Math.max(load.weight, Number.MIN_VALUE));
  };
  const perSpeed = (unitLift.value.high * square) / 100;
  const letsGo = (pull: number) =>
    pull <= carry || (!slides && bears < load.weight)
      ? 0
      : Math.sqrt((pull - carry) / perSpeed) / load.gustFactor;
  const low = sum('low');
  return ok({
    value: over(sum('nominal')),
    low: over(low),
    high: over(sum('high')),
    mode: low - carry > carry ? 'pullOff' : 'slip',
    letsGoAt: { low: letsGo(low), high: letsGo(sum('high')) },
  });
}
