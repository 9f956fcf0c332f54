import { mm, ok, type Result, radian, refuse } from '@panewright/quantity';
import { numericJacobian } from '../adjustment/levenbergMarquardt.ts';
import {
  globalTest,
  LEAST_CHECKED,
  quadratic,
  type Statistics,
  statistics,
} from '../adjustment/statistics.ts';
import {
  interiorAngle,
  type Quadrilateral,
  quadrilateralOf,
  sideLength,
  wouldRead,
} from './quadrilateral.ts';
import { roundedOutline } from './roundedOutline.ts';
import { insufficiency, observations, solveTape, type TapeSolution, unclosable } from './solveTape.ts';
import { findSuspects, type Prediction } from './suspect.ts';
import {
  type AdjustedCorner,
  type AdjustedReading,
  type AdjustedSide,
  CORNERS,
  RADII,
  SIDES,
  type TapeAdjustment,
  type TapeRefusal,
  type TapeSurvey,
} from './tapeSurvey.ts';

const STEP = 0.01;

/**
 * The four-sided opening that fits tape readings best, with its uncertainty, and which reading looks wrong when the
 * readings do not agree. Nothing is repaired: a suspect is named, and its reading still has its full weight.
 *
 * @param survey readings in mm with their sigmas; see TapeSurvey for what each runs between
 * @returns outline anticlockwise, y up, mm; covariance from the stated sigmas (not scaled by the misfit)
 * @range four straight sides, convex, corners sharp or rounded by tangent arcs
 * @accuracy the least-squares minimum to 1e-6 mm; covariance to first order
 * @refuses any TapeRefusal
 * @source sources.md#ghilani (least squares, redundancy), sources.md#baarda-1968 (tests)
 */
export function adjustTape(survey: TapeSurvey): Result<TapeAdjustment, TapeRefusal> {
  const bad = badReading(survey) ?? unclosable(survey) ?? insufficiency(survey);
  if (bad) return refuse(bad);
  const solved = solveTape(survey);
  if (!solved.ok) return solved;
  const { parameters, rounded, sumOfSquares } = solved.value;
  const known = statistics(solved.value, parameters.length);
  if (!known)
    return refuse({ code: 'TAPE_READINGS_INSUFFICIENT', missing: 1, wouldHelp: ['rising', 'falling'] });
  const shape = quadrilateralOf(parameters, rounded);
  const outline = roundedOutline(shape);
  if (!outline.ok) return outline;
  const readings = survey.readings.filter((_, index) => observed(survey, rounded).includes(index));
  const redundancy = readings.length - parameters.length;
  const test = globalTest(sumOfSquares, redundancy);
  const predictions = redundancy > 0 ? predictEach(survey, solved.value, known) : [];
  const adjusted = adjustedReadings(survey, solved.value, known, predictions);
  return ok({
    outline: outline.value,
    ...shapeWithSigmas(parameters, rounded, known.covariance),
    readings: adjusted,
    unknowns: [...UNKNOWNS, ...rounded.map((k) => RADII[k]!)],
    covariance: rows(known.covariance, parameters.length),
    redundancy,
    test,
    closingError: closingError(adjusted),
    suspects: test && !test.passes ? findSuspects(survey, parameters, sumOfSquares, predictions) : [],
  });
}

const UNKNOWNS = ['bottomRight.x', 'topRight.x', 'topRight.y', 'topLeft.x', 'topLeft.y'];

const observed = (survey: TapeSurvey, rounded: readonly number[]) =>
  observations(survey, rounded).map(({ index }) => index);

const rows = (flat: Float64Array, size: number) =>
  Array.from({ length: size }, (_, i) => Array.from(flat.subarray(i * size, (i + 1) * size)));

function badReading({ readings }: TapeSurvey): TapeRefusal | undefined {
  for (const [index, { of, value, sigma }] of readings.entries()) {
    const mayBeZero = (RADII as readonly string[]).includes(of);
    if (!(mayBeZero ? value >= 0 : value > 0) || value === Number.POSITIVE_INFINITY) {
      return { code: 'TAPE_VALUE_NOT_POSITIVE', of, index, value };
    }
    if (!(sigma > 0) || sigma === Number.POSITIVE_INFINITY) {
      return { code: 'TAPE_SIGMA_NOT_POSITIVE', of, index, sigma };
    }
  }
  return undefined;
}

/** For each reading the others check: the fit without it, solved anew so that large errors are not linearised. */
function predictEach(survey: TapeSurvey, solution: TapeSolution, known: Statistics): readonly Prediction[] {
  const toRound = survey.diagonalsTo === 'round';
  return observed(survey, solution.rounded).flatMap((index, row) => {
    const share = known.redundancyNumbers[row]!;
    if (share <= LEAST_CHECKED) return [];
    const readings = survey.readings.filter((_, i) => i !== index);
    const without = solveTape({ ...survey, readings }, solution.parameters);
    if (!without.ok) return [];
    const { parameters, rounded, sumOfSquares } = without.value;
    const { of, sigma } = survey.readings[index]!;
    const predicted = wouldRead(quadrilateralOf(parameters, rounded), of, toRound);
    return [{ index, predicted, sigma: sigma / Math.sqrt(share), chiSquare: sumOfSquares }];
  });
}

function adjustedReadings(
  survey: TapeSurvey,
  solution: TapeSolution,
  known: Statistics,
  predictions: readonly Prediction[],
): readonly AdjustedReading[] {
  const { parameters, rounded } = solution;
  const shape = quadrilateralOf(parameters, rounded);
  const checked = observed(survey, rounded);
  return survey.readings.map(({ of, value }, index) => {
    const adjusted = mm(wouldRead(shape, of, survey.diagonalsTo === 'round'));
    const row = checked.indexOf(index);
    const standardised = known.standardised[row];
    const prediction = predictions.find((each) => each.index === index);
    return {
      of,
      index,
      value,
      adjusted,
      residual: mm(adjusted - value),
      redundancyNumber: row < 0 ? 0 : known.redundancyNumbers[row]!,
      ...(standardised === undefined ? {} : { standardised }),
      ...(prediction && {
        predicted: mm(prediction.predicted),
        closing: mm(value - prediction.predicted),
        closingSigma: mm(prediction.sigma),
      }),
    };
  });
}

/** The last diagonal that the other readings predict. */
function closingError(readings: readonly AdjustedReading[]): TapeAdjustment['closingError'] {
  const last = readings.findLast(
    ({ of, closing }) => (of === 'falling' || of === 'rising') && closing !== undefined,
  );
  if (last?.closing === undefined || last.closingSigma === undefined) return undefined;
  return { of: last.of as 'falling', index: last.index, error: last.closing, sigma: last.closingSigma };
}

const shorterSide = (shape: Quadrilateral, k: number) =>
  Math.min(sideLength(shape, k), sideLength(shape, (k + 3) % 4));

/** All that is told of the shape, in one row, so that one set of derivatives gives every sigma. */
function told(shape: Quadrilateral): readonly number[] {
  const angles = CORNERS.map((_, k) => interiorAngle(shape, k));
  const [rising, falling] = [wouldRead(shape, 'rising', false), wouldRead(shape, 'falling', false)];
  return [
    ...SIDES.map((_, k) => sideLength(shape, k)),
    ...angles,
    ...angles.map((angle, k) => shorterSide(shape, k) * Math.sin(angle - Math.PI / 2)),
    ...shape.radii,
    rising,
    falling,
    rising - falling,
  ];
}

function shapeWithSigmas(parameters: Float64Array, rounded: readonly number[], covariance: Float64Array) {
  const size = parameters.length;
  const shapeAt = (at: Float64Array) => quadrilateralOf(at, rounded);
  const values = told(shapeAt(parameters));
  const slopes = numericJacobian((at) => told(shapeAt(at)), parameters, STEP);
  const sigmas = values.map((_, row) =>
    Math.sqrt(Math.max(0, quadratic(covariance, slopes.subarray(row * size, (row + 1) * size)))),
  );
  const { corners } = shapeAt(parameters);
  const floating = floatingCovariance(corners, covariance, size);
  const sides: readonly AdjustedSide[] = SIDES.map((of, k) => ({
    of,
    length: mm(values[k]!),
    sigma: mm(sigmas[k]!),
    offsetSigma: mm(offsetSigma(corners, floating, k)),
  }));
  const adjusted: readonly AdjustedCorner[] = CORNERS.map((of, k) => ({
    of,
    point: { x: mm(corners[k]![0]), y: mm(corners[k]![1]) },
    sigma: mm(longestHalfAxis(floating, k)),
    angle: radian(values[4 + k]!),
    angleSigma: radian(sigmas[4 + k]!),
    outOfSquare: radian(values[4 + k]! - Math.PI / 2),
    outOfSquareOffset: mm(values[8 + k]!),
    outOfSquareOffsetSigma: mm(sigmas[8 + k]!),
    radius: mm(values[12 + k]!),
    radiusSigma: mm(sigmas[12 + k]!),
  }));
  const [rising, falling, difference] = values.slice(16).map(mm) as [never, never, never];
  return {
    sides,
    corners: adjusted,
    diagonals: { rising, falling, difference, differenceSigma: mm(sigmas[18]!) },
  };
}

/**
 * Covariance of the eight corner coordinates as seen after the best rigid fit of the four corners, so that the frame's
 * own corner and side are not flattered: C' = S C Sᵀ, S taking out shift and turn.
 *
 * @source sources.md#baarda-1973 (S-transformation)
 */
function floatingCovariance(corners: Quadrilateral['corners'], covariance: Float64Array, size: number) {
  const place = [-1, -1, 0, -1, 1, 2, 3, 4]; // unknown behind each coordinate; −1 is fixed by the frame
  const centre = [0, 1].map((axis) => corners.reduce((sum, corner) => sum + corner[axis]!, 0) / 4);
  const arms = corners.flatMap((corner) => [-(corner[1] - centre[1]!), corner[0] - centre[0]!]);
  const norm = Math.hypot(...arms);
  const rigid = [
    Array.from({ length: 8 }, (_, i) => (i % 2 === 0 ? 0.5 : 0)),
    Array.from({ length: 8 }, (_, i) => (i % 2 === 1 ? 0.5 : 0)),
    arms.map((arm) => arm / norm),
  ];
  const derivatives = Array.from({ length: 8 }, (_, row) => {
    const gradient = new Float64Array(size);
    for (let i = 0; i < 8; i++) {
      const kept = (row === i ? 1 : 0) - rigid.reduce((sum, mode) => sum + mode[row]! * mode[i]!, 0);
      if (place[i]! >= 0) gradient[place[i]!]! += kept;
    }
    return gradient;
  });
  return derivatives.map((a) => derivatives.map((b) => bilinear(covariance, a, b)));
}

function bilinear(covariance: Float64Array, a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j < b.length; j++) sum += a[i]! * covariance[i * a.length + j]! * b[j]!;
  }
  return sum;
}

function longestHalfAxis(floating: readonly (readonly number[])[], k: number): number {
  const [xx, xy, yy] = [
    floating[2 * k]![2 * k]!,
    floating[2 * k]![2 * k + 1]!,
    floating[2 * k + 1]![2 * k + 1]!,
  ];
  return Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
}

/** Along a straight line the variance across it is greatest at an end. */
function offsetSigma(
  corners: Quadrilateral['corners'],
  floating: readonly (readonly number[])[],
  k: number,
): number {
  const next = (k + 1) % 4;
  const length = Math.hypot(corners[next]![0] - corners[k]![0], corners[next]![1] - corners[k]![1]);
  const nx = -(corners[next]![1] - corners[k]![1]) / length;
  const ny = (corners[next]![0] - corners[k]![0]) / length;
  const variance = (at: number) =>
    nx * nx * floating[2 * at]![2 * at]! +
    2 * nx * ny * floating[2 * at]![2 * at + 1]! +
    ny * ny * floating[2 * at + 1]![2 * at + 1]!;
  return Math.sqrt(Math.max(variance(k), variance(next), 0));
}
