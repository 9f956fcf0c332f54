import type { PanelHold } from '@panewright/magnets';
import { ok, type Result } from '@panewright/quantity';
import { type HeldPoint, holdsAt, lowOf, type MarginRefusal, type PanelLoad } from './margins.ts';

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
  const curve: MarginAt[] = [];
  for (const wind of winds) {
    const taut = holdsAt(points, load, wind, 'taut');
    if (!taut.ok) return taut;
    const loose = holdsAt(points, load, wind, 'loose');
    if (!loose.ok) return loose;
    const { weakest } = taut.value;
    curve.push({
      wind,
      low: lowOf(taut.value.points[weakest]!.margin),
      high: leastHigh(loose.value),
      weakest: points[weakest]!.number,
    });
  }
  return ok(curve);
}
