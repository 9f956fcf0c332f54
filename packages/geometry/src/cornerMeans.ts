import { type Millimetre, mm } from '@panewright/quantity';
import { curvesOf } from './curve.ts';
import { turnBetween } from './offsetSides.ts';
import type { Outline } from './outline.ts';
import { MEANT_SMOOTH } from './tolerance.ts';

/**
 * Distances for `offset` in which each rounded corner has the mean of its two sides: for a maker who sets an allowance
 * per side. Arcs in a run tangent to a line at either end get the mean of those lines; all else stays as given.
 *
 * @param distances mm, one per segment; those of the corner arcs are not read
 * @returns mm, one per segment
 * @range as many distances as segments; `offset` refuses other counts
 * @source our rule: the corner's radius then grows by the mean of its sides
 */
export function cornerMeans(outline: Outline, distances: readonly Millimetre[]): Millimetre[] {
  const curves = curvesOf(outline);
  const n = curves.length;
  const means = [...distances];
  curves.forEach((line, i) => {
    if (line.bulge !== 0) return;
    let k = 1;
    while (k < n && isSmooth(i + k - 1) && curves[(i + k) % n]!.bulge !== 0) k++;
    if (k === 1 || curves[(i + k) % n]!.bulge !== 0 || !isSmooth(i + k - 1)) return;
    const mean = mm((distances[i]! + distances[(i + k) % n]!) / 2);
    for (let j = 1; j < k; j++) means[(i + j) % n] = mean;
  });
  return means;

  function isSmooth(i: number): boolean {
    return Math.abs(turnBetween(curves[i % n]!, curves[(i + 1) % n]!)) <= MEANT_SMOOTH;
  }
}
