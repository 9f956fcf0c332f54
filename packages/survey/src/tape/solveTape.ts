import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { SingularValueDecomposition } from 'ml-matrix';
import {
  type Evaluation,
  type LeastSquaresSolution,
  levenbergMarquardt,
  numericJacobian,
} from '../adjustment/levenbergMarquardt.ts';
import { writeGradient } from './gradient.ts';
import { interiorAngle, quadrilateralOf, wouldRead } from './quadrilateral.ts';
import {
  CORNERS,
  type LengthName,
  RADII,
  SIDES,
  SPANS,
  type TapeReading,
  type TapeRefusal,
  type TapeSurvey,
} from './tapeSurvey.ts';

/** Step for derivatives, mm. */
const STEP = 0.01;
/** Singular values below this share of the largest count as none: the figure is a linkage that can still move. */
const RANK_SHARE = 1e-4;

export interface TapeSolution extends LeastSquaresSolution {
  /** Corners whose radius is an unknown. */
  readonly rounded: readonly number[];
}

/** Corners with a radius reading other than 0. */
export function roundedCorners(readings: readonly TapeReading[]): readonly number[] {
  return [0, 1, 2, 3].filter((k) => readings.some(({ of, value }) => of === RADII[k] && value !== 0));
}

/** A radius read as 0 fixes a sharp corner and is no observation. */
export function observations(survey: TapeSurvey, rounded: readonly number[]) {
  return survey.readings
    .map((reading, index) => ({ ...reading, index }))
    .filter(({ of }) => !RADII.some((name, k) => name === of && !rounded.includes(k)));
}

function evaluator(readings: readonly TapeReading[], toRound: boolean, rounded: readonly number[]) {
  const jacobian = (parameters: Float64Array) => {
    const shape = quadrilateralOf(parameters, rounded);
    const size = parameters.length;
    const rows = new Float64Array(readings.length * size);
    readings.forEach(({ of, sigma }, index) => {
      const row = rows.subarray(index * size, (index + 1) * size);
      if (writeGradient(row, shape, of, { toRound, rounded, scale: 1 / sigma })) return;
      const model = (at: Float64Array) => [wouldRead(quadrilateralOf(at, rounded), of, toRound) / sigma];
      row.set(numericJacobian(model, parameters, STEP));
    });
    return rows;
  };
  const residuals = (parameters: Float64Array) => {
    const shape = quadrilateralOf(parameters, rounded);
    return Float64Array.from(
      readings,
      ({ of, value, sigma }) => (wouldRead(shape, of, toRound) - value) / sigma,
    );
  };
  return (parameters: Float64Array, derivatives: boolean): Evaluation => ({
    residuals: residuals(parameters),
    jacobian: derivatives ? jacobian(parameters) : new Float64Array(0),
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The upright rectangle nearest to the readings, with the radii as read. */
function rectangle(readings: readonly TapeReading[], rounded: readonly number[]): Float64Array {
  const read = (...names: readonly string[]) =>
    readings.filter(({ of }) => names.includes(of)).map(({ value }) => value as number);
  const [across, upright, over] = [
    read('bottom', 'top', 'midWidth'),
    read('left', 'right', 'midHeight'),
    read('rising', 'falling'),
  ];
  const diagonal = over.length > 0 ? mean(over) : 1000 * Math.SQRT2;
  const third = (known: number) => Math.sqrt(Math.max(diagonal ** 2 - known ** 2, (known / 10) ** 2));
  const width =
    across.length > 0 ? mean(across) : upright.length > 0 ? third(mean(upright)) : diagonal / Math.SQRT2;
  const height = upright.length > 0 ? mean(upright) : third(width);
  return Float64Array.of(width, width, height, 0, height, ...rounded.map((k) => mean(read(RADII[k]!))));
}

/** Do the readings pin down the figure? If not, which others would? Judged at the upright rectangle. */
export function insufficiency(survey: TapeSurvey): TapeRefusal | undefined {
  const rounded = roundedCorners(survey.readings);
  const readings = observations(survey, rounded);
  const start = rectangle(readings, rounded);
  const rankWith = (extra: readonly LengthName[]) => {
    const rows = [...readings.map(({ of }) => of), ...extra];
    const model = (parameters: Float64Array) => {
      const shape = quadrilateralOf(parameters, rounded);
      return rows.map((of) => wouldRead(shape, of, survey.diagonalsTo === 'round'));
    };
    if (rows.length === 0) return 0;
    const size = start.length;
    const flat = numericJacobian(model, start, STEP);
    const matrix = rows.map((_, row) => Array.from(flat.subarray(row * size, (row + 1) * size)));
    const singular = new SingularValueDecomposition(matrix, { autoTranspose: true }).diagonal;
    return singular.filter((value) => value > RANK_SHARE * singular[0]!).length;
  };
  const rank = rankWith([]);
  const missing = start.length - rank;
  if (missing <= 0) return undefined;
  const wouldHelp = [...SIDES, ...SPANS].filter((of) => rankWith([of]) > rank);
  return { code: 'TAPE_READINGS_INSUFFICIENT', missing, wouldHelp };
}

/** Starts besides the rectangle: both uprights leaning, each way, and each way apart, as shares of the height. */
const LEANS = [
  [0, 0],
  [0.3, 0.3],
  [-0.3, -0.3],
  [0.25, -0.25],
  [-0.25, 0.25],
] as const;

/** A figure that misses each reading by less than this many sigma squared, on average, is taken at the first start. */
const AGREES = 4;

/** Least squares from several starts; the best convex figure. `from` replaces the starts when a figure is known. */
export function solveTape(survey: TapeSurvey, from?: Float64Array): Result<TapeSolution, TapeRefusal> {
  const rounded = roundedCorners(survey.readings);
  const readings = observations(survey, rounded);
  const evaluate = evaluator(readings, survey.diagonalsTo === 'round', rounded);
  const upright = rectangle(readings, rounded);
  const starts = from
    ? [from]
    : LEANS.map(([left, right]) => {
        const start = upright.slice();
        start[1]! += right * upright[2]!;
        start[3]! += left * upright[2]!;
        return start;
      });
  let best: TapeSolution | undefined;
  let reentrant: TapeRefusal | undefined;
  let steps = 0;
  for (const start of starts) {
    // A convex figure that the readings agree with is the one measured: no other start can better it by much.
    if (best && best.sumOfSquares < AGREES * readings.length) break;
    const solved = levenbergMarquardt({ start, evaluate });
    if (!solved.ok) {
      steps += solved.refusal.steps;
      continue;
    }
    const shape = quadrilateralOf(solved.value.parameters, rounded);
    const bad = CORNERS.findIndex((_, k) => !(interiorAngle(shape, k) < Math.PI));
    if (bad >= 0 || shape.corners[2][1] <= 0) {
      const corner = CORNERS[Math.max(bad, 0)]!;
      const angle = interiorAngle(shape, Math.max(bad, 0));
      reentrant ??= { code: 'TAPE_NOT_CONVEX', corner, angle: angle as never };
    } else if (!best || solved.value.sumOfSquares < best.sumOfSquares * (1 - 1e-9)) {
      best = { ...solved.value, rounded };
    }
  }
  if (best) return ok(best);
  return refuse(reentrant ?? { code: 'TAPE_NOT_CONVERGED', steps });
}

const TRIANGLES: readonly (readonly LengthName[])[] = [
  ['bottom', 'right', 'rising'],
  ['top', 'left', 'rising'],
  ['bottom', 'left', 'falling'],
  ['top', 'right', 'falling'],
  ['bottom', 'right', 'top', 'left'],
];

/** Refused: a length that reaches as far as the others of its triangle, or of the four sides, end to end. */
export function unclosable(survey: TapeSurvey): TapeRefusal | undefined {
  const average = (name: LengthName) => {
    const of = survey.readings.filter((reading) => reading.of === name);
    return of.length > 0 ? mean(of.map(({ value }) => value)) : undefined;
  };
  for (const names of TRIANGLES) {
    const lengths = names.map(average);
    if (lengths.some((length) => length === undefined)) continue;
    for (const [i, longest] of names.entries()) {
      // A diagonal over rounded corners is shorter than between sharp ones, so it can only be too long.
      const isSide = (SIDES as readonly string[]).includes(longest);
      if (survey.diagonalsTo === 'round' && isSide && names.length === 3) continue;
      const reach = lengths.reduce<number>((sum, length, j) => sum + (j === i ? 0 : length!), 0);
      if (lengths[i]! < reach) continue;
      return {
        code: 'TAPE_SIDES_CANNOT_CLOSE',
        longest,
        length: mm(lengths[i]!),
        others: names.filter((name) => name !== longest),
        reach: mm(reach),
      };
    }
  }
  return undefined;
}
