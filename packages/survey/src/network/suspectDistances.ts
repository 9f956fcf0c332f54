import { mm } from '@panewright/quantity';
import { LEAST_CHECKED } from '../adjustment/statistics.ts';
import { possibleBlunders } from '../tape/blunderCauses.ts';
import type { AdjustedDistance, MarkSurvey, SuspectDistance } from './markSurvey.ts';

const UNEXPLAINED_WEIGHT = 0.2;
const UNEXPLAINED_SIZE = 50;
const LEAST_CONFIDENCE = 0.02;

/**
 * Which single distance, if wrong, explains the misfit: standardised residuals (data snooping), weighed by whether the
 * implied error is one that people make. To first order: without reading i the sum of squares falls by wᵢ².
 *
 * @source sources.md#baarda-1968; weights of causes are judgement, common practice, no source
 */
export function suspectDistances(
  survey: MarkSurvey,
  distances: readonly AdjustedDistance[],
  chiSquare: number,
): readonly SuspectDistance[] {
  const largest = Math.max(...distances.map(({ standardised }) => (standardised ?? 0) ** 2));
  const found = distances.flatMap((distance) => {
    const { index, from, to, value, residual, redundancyNumber, standardised } = distance;
    if (standardised === undefined || redundancyNumber <= LEAST_CHECKED) return [];
    const { sigma, entered } = survey.distances[index]!;
    const implied = -residual / redundancyNumber;
    const spread = sigma / Math.sqrt(redundancyNumber);
    const wide = Math.hypot(spread, UNEXPLAINED_SIZE);
    const left = Math.exp((standardised ** 2 - largest) / 2);
    const options = possibleBlunders(value, entered)
      .filter(({ error }) => value - error > 0)
      .map(({ cause, error, weight }) => ({
        cause: cause as SuspectDistance['cause'],
        corrected: value - error,
        weight: weight * left * Math.exp(-(((implied - error) / spread) ** 2) / 2),
      }));
    options.push({
      cause: 'unexplained',
      corrected: value - implied,
      weight: UNEXPLAINED_WEIGHT * left * (spread / wide) * Math.exp(-((implied / wide) ** 2) / 2),
    });
    const lead = options.reduce((best, option) => (option.weight > best.weight ? option : best));
    const weight = options.reduce((sum, option) => sum + option.weight, 0);
    return [
      {
        index,
        from,
        to,
        impliedError: mm(implied),
        correctedReading: mm(lead.corrected),
        cause: lead.cause,
        weight,
      },
    ];
  });
  // That nothing is wrong, only bad luck: all readings sound, at the full misfit.
  const sound = Math.exp(-largest / 2) * (chiSquare > 0 ? 100 : 0);
  const total = found.reduce((sum, { weight }) => sum + weight, sound);
  return found
    .map(({ weight, ...suspect }) => ({ ...suspect, confidence: weight / total }))
    .filter(({ confidence }) => confidence >= LEAST_CONFIDENCE)
    .sort((a, b) => b.confidence - a.confidence);
}
