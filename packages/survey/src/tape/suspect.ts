import { type Millimetre, mm } from '@panewright/quantity';
import { type BlunderCause, possibleBlunders } from './blunderCauses.ts';
import { quadrilateralOf } from './quadrilateral.ts';
import { shapeLikelihood } from './shapeLikelihood.ts';
import { solveTape } from './solveTape.ts';
import type { Measured, TapeReading, TapeSurvey } from './tapeSurvey.ts';

/** A reading that may be wrong. Nothing has been changed: the maker measures again. */
export interface Suspect {
  readonly of: Measured;
  /** Position in the survey's list. */
  readonly index: number;
  /** read − what the other readings say. */
  readonly impliedError: Millimetre;
  /** What the reading would be if the cause is right. */
  readonly correctedReading: Millimetre;
  readonly cause: BlunderCause;
  /** For 'exchanged': the reading it changed places with. */
  readonly exchangedWith?: number;
  /** 0 to 1: the share of all explanations, weighed by size of error, cause and resulting shape. An estimate. */
  readonly confidence: number;
}

/** What the other readings say of one. */
export interface Prediction {
  readonly index: number;
  readonly predicted: number;
  /** Sigma of value − predicted. */
  readonly sigma: number;
  /** Sum of squares of the fit without the reading. */
  readonly chiSquare: number;
}

/** Of any one reading being a blunder, of two opposite ones having changed places; and the size of an unknown blunder. */
const BLUNDER = 0.01;
const EXCHANGE = 0.002;
const UNEXPLAINED_WEIGHT = 0.2;
const UNEXPLAINED_SIZE = 50;
/** Explanations that miss the implied error by more than this many sigma are not followed up. */
const FAR = 5;
const LEAST_CONFIDENCE = 0.02;

interface Explanation extends Omit<Suspect, 'confidence'> {
  readonly weight: number;
}

/**
 * Ranks the readings by how well 'this one is wrong' explains the misfit: Bayes' rule over single blunders, each with
 * its size, its likely cause and the shape that results. With one reading left over, all single corrections close
 * the figure equally well, and only cause and shape speak.
 *
 * @source Bayes' rule; weights are judgement, common practice, no source. Hit rate: see the tests.
 */
export function findSuspects(
  survey: TapeSurvey,
  solution: Float64Array,
  chiSquare: number,
  predictions: readonly Prediction[],
): readonly Suspect[] {
  const least = Math.min(chiSquare, ...predictions.map((p) => p.chiSquare));
  const weigh = (readings: readonly TapeReading[], misfit?: number) => {
    const solved = solveTape({ ...survey, readings }, solution);
    if (!solved.ok) return 0;
    const { parameters, rounded, sumOfSquares } = solved.value;
    return (
      Math.exp((least - (misfit ?? sumOfSquares)) / 2) * shapeLikelihood(quadrilateralOf(parameters, rounded))
    );
  };
  const explanations = [
    ...predictions.flatMap((prediction) => singleBlunders(survey, prediction, weigh)),
    ...exchanges(survey, weigh),
  ];
  const sound = (1 - BLUNDER) ** survey.readings.length * weigh(survey.readings);
  const total = explanations.reduce((sum, { weight }) => sum + weight, sound);
  if (!(total > 0)) return [];
  return gathered(explanations)
    .map(({ weight, ...suspect }) => ({ ...suspect, confidence: weight / total }))
    .filter(({ confidence }) => confidence >= LEAST_CONFIDENCE)
    .sort((a, b) => b.confidence - a.confidence);
}

type Weigh = (readings: readonly TapeReading[], misfit?: number) => number;

function singleBlunders(survey: TapeSurvey, prediction: Prediction, weigh: Weigh): readonly Explanation[] {
  const { index, predicted, sigma, chiSquare } = prediction;
  const { of, value, entered } = survey.readings[index]!;
  const impliedError = mm(value - predicted);
  const about = { of, index, impliedError };
  const corrected = (reading: number) =>
    survey.readings.map((other, i) => (i === index ? { ...other, value: mm(reading) } : other));
  const named = possibleBlunders(value, entered)
    .filter(({ error }) => Math.abs(impliedError - error) < FAR * sigma && value - error > 0)
    .map(({ cause, error, weight }) => ({
      ...about,
      cause,
      correctedReading: mm(value - error),
      weight: BLUNDER * weight * weigh(corrected(value - error)),
    }));
  const spread = Math.hypot(sigma, UNEXPLAINED_SIZE);
  const open = predicted > 0 ? weigh(corrected(predicted), chiSquare + (impliedError / spread) ** 2) : 0;
  const unexplained = {
    ...about,
    cause: 'unexplained' as const,
    correctedReading: mm(predicted),
    weight: BLUNDER * UNEXPLAINED_WEIGHT * (sigma / spread) * open,
  };
  return [...named, unexplained];
}

const OPPOSITE: readonly (readonly [Measured, Measured])[] = [
  ['bottom', 'top'],
  ['left', 'right'],
  ['rising', 'falling'],
];

function exchanges(survey: TapeSurvey, weigh: Weigh): readonly Explanation[] {
  const { readings } = survey;
  return OPPOSITE.flatMap(([one, other]) => {
    const [i, j] = [one, other].map((name) => readings.findIndex(({ of }) => of === name)) as [
      number,
      number,
    ];
    if (i < 0 || j < 0 || readings[i]!.value === readings[j]!.value) return [];
    const swapped = readings.map((reading, k) =>
      k === i
        ? { ...reading, value: readings[j]!.value }
        : k === j
          ? { ...reading, value: readings[i]!.value }
          : reading,
    );
    return [
      {
        of: one,
        index: i,
        impliedError: mm(readings[i]!.value - readings[j]!.value),
        correctedReading: readings[j]!.value,
        cause: 'exchanged' as const,
        exchangedWith: j,
        weight: EXCHANGE * weigh(swapped),
      },
    ];
  });
}

/** One line for each reading (and each exchange): the weights add up, the weightiest cause speaks. */
function gathered(explanations: readonly Explanation[]): readonly Explanation[] {
  const byReading = new Map<string, Explanation>();
  const bestWeight = new Map<string, number>();
  for (const explanation of explanations) {
    const key = `${explanation.index}/${explanation.exchangedWith ?? ''}`;
    const before = byReading.get(key);
    const weight = (before?.weight ?? 0) + explanation.weight;
    const leads = explanation.weight > (bestWeight.get(key) ?? -1);
    if (leads) bestWeight.set(key, explanation.weight);
    byReading.set(key, { ...(leads || !before ? explanation : before), weight });
  }
  return [...byReading.values()];
}
