import { dynamicPressure, type PanelHold, pointHoldsAt } from '@panewright/magnets';
import { metrePerSecond, ok, type Pascal, type Result } from '@panewright/quantity';
import { type HeldPoint, holdPanel, lowOf, type MarginRefusal, type PanelLoad } from './margins.ts';

/** The weakest point's margin at one mean wind speed, m/s. */
export interface MarginAt {
  readonly wind: number;
  readonly low: number | 'unloaded';
  readonly high: number | 'unloaded';
  /** Which point is the weakest there, by its number. */
  readonly weakest: number;
}

/** The least of the high margins: what the weakest point has if all is at its best. */
const leastHigh = ({ points }: Pick<PanelHold, 'points'>): number | 'unloaded' => {
  const highs = points.map(({ margin }) => (margin === 'unloaded' ? margin : margin.high));
  const loaded = highs.filter((high) => high !== 'unloaded');
  return loaded.length === 0 ? 'unloaded' : Math.min(...loaded);
};

/**
 * Margin of the weakest point against the mean wind, for a plot. Where it falls through 1 the panel lets go.
 *
 * @param winds m/s of mean wind, each to 100 m/s of gust
 * @returns one entry for each wind, in the order given
 * @accuracy as panelMargins
 * @refuses as panelMargins
 * @source as panelHold
 */
export function marginCurve(
  points: readonly HeldPoint[],
  load: PanelLoad,
  winds: readonly number[],
): Result<readonly MarginAt[], MarginRefusal> {
  if (winds.length === 0) return ok([]);
  const taut = alongWinds(points, load, winds, 'taut');
  if (!taut.ok) return taut;
  const loose = alongWinds(points, load, winds, 'loose');
  if (!loose.ok) return loose;
  return ok(
    winds.map((wind, k) => {
      const { weakest, points: held } = taut.value[k]!;
      return {
        wind,
        low: lowOf(held[weakest]!.margin),
        high: leastHigh(loose.value[k]!),
        weakest: points[weakest]!.number,
      };
    }),
  );
}

/** Every point in each wind: the panel is the same in all of them but for the pressure. */
function alongWinds(
  points: readonly HeldPoint[],
  load: PanelLoad,
  winds: readonly number[],
  cloth: 'taut' | 'loose',
): Result<readonly Omit<PanelHold, 'letGo'>[], MarginRefusal> {
  const pressures: Pascal[] = [];
  for (const wind of winds) {
    const pressure = dynamicPressure(metrePerSecond(wind * load.gustFactor));
    if (!pressure.ok) return pressure;
    pressures.push(pressure.value);
  }
  const panel = holdPanel(points, load, 0, cloth);
  return panel.ok ? pointHoldsAt(panel.value, pressures) : panel;
}
