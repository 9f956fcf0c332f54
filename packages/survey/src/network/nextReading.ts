import { mm } from '@panewright/quantity';
import type { XY } from './intersectTapes.ts';
import type { MarkSurvey, NextReading } from './markSurvey.ts';

/**
 * The one further distance that would shrink the worst error ellipse most. Every pair is tried, measured or not, with
 * the middle sigma of the survey; the covariance after it is the rank-one update C − C g gᵀ C / (σ² + gᵀ C g).
 *
 * @returns undefined when no reading lessens the worst half axis by a hundredth
 * @source sources.md#ghilani; the update is the Sherman-Morrison formula
 */
export function nextReading(
  { points, distances }: MarkSurvey,
  places: readonly XY[],
  covariance: readonly (readonly number[])[],
): NextReading | undefined {
  const sigmas = distances.map(({ sigma }) => sigma as number).sort((a, b) => a - b);
  const variance = sigmas[Math.floor(sigmas.length / 2)]! ** 2;
  const worstNow = worst(covariance, undefined);
  let best: { i: number; j: number; worst: number } | undefined;
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      const length = Math.hypot(places[j]!.x - places[i]!.x, places[j]!.y - places[i]!.y);
      if (length === 0) continue;
      const [ux, uy] = [(places[j]!.x - places[i]!.x) / length, (places[j]!.y - places[i]!.y) / length];
      const column = covariance.map(
        (row) => ux * (row[2 * j]! - row[2 * i]!) + uy * (row[2 * j + 1]! - row[2 * i + 1]!),
      );
      const known = ux * (column[2 * j]! - column[2 * i]!) + uy * (column[2 * j + 1]! - column[2 * i + 1]!);
      const then = worst(covariance, { column, over: variance + known });
      if (!best || then < best.worst) best = { i, j, worst: then };
    }
  }
  if (!best || best.worst > 0.99 * worstNow) return undefined;
  return {
    from: points[best.i]!.name,
    to: points[best.j]!.name,
    worstNow: mm(worstNow),
    worstThen: mm(best.worst),
  };
}

function worst(
  covariance: readonly (readonly number[])[],
  update: { readonly column: readonly number[]; readonly over: number } | undefined,
): number {
  let longest = 0;
  for (let k = 0; k < covariance.length; k += 2) {
    const [cx, cy] = update ? [update.column[k]!, update.column[k + 1]!] : [0, 0];
    const over = update?.over ?? 1;
    const xx = covariance[k]![k]! - (cx * cx) / over;
    const xy = covariance[k]![k + 1]! - (cx * cy) / over;
    const yy = covariance[k + 1]![k + 1]! - (cy * cy) / over;
    longest = Math.max(longest, (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
  }
  return Math.sqrt(longest);
}
