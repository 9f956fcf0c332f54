import { mm, ok, type Result, radian, refuse } from '@panewright/quantity';
import {
  type Evaluation,
  type LeastSquaresSolution,
  levenbergMarquardt,
} from '../adjustment/levenbergMarquardt.ts';
import { globalTest, statistics } from '../adjustment/statistics.ts';
import { firstPlaces } from './firstPlaces.ts';
import { crossingAngle, type XY } from './intersectTapes.ts';
import type {
  AdjustedPoint,
  ErrorEllipse,
  MarkSurvey,
  NetworkAdjustment,
  NetworkRefusal,
  WeakPoint,
} from './markSurvey.ts';
import { nextReading } from './nextReading.ts';
import { suspectDistances } from './suspectDistances.ts';

/** Tapes that meet at less than this leave a point weak. @source handbook of the trade: keep 30° to 150°; judgement */
const WEAK_ANGLE = Math.PI / 6;
/** Two arrangements whose misfits differ by less than this (chi-square) are not told apart. */
const TOLD_APART = 9;

/** One end of a distance in the list of unknowns; −1 for a fixed point. */
interface Ends {
  readonly i: number;
  readonly j: number;
  readonly value: number;
  readonly sigma: number;
}

/**
 * Places of marks and outline points from taped distances, with full covariance.
 *
 * @param survey points and distances in mm; without fixed points the frame is free (minimal constraints)
 * @returns points with error ellipses, residuals, redundancy numbers, suspects, weak points, the best next reading
 * @accuracy the least-squares minimum to 1e-6 mm; covariance to first order
 * @refuses any NetworkRefusal
 * @source sources.md#ghilani (trilateration, inner constraints), sources.md#baarda-1968
 */
export function adjustNetwork(survey: MarkSurvey): Result<NetworkAdjustment, NetworkRefusal> {
  const bad = badSurvey(survey);
  if (bad) return refuse(bad);
  const solved = arranged(survey);
  if (!solved.ok) return solved;
  const { solution, unknown } = solved.value;
  const free = unknown.length === survey.points.length ? rigidMotions(solution.parameters) : [];
  const known = statistics(solution, solution.parameters.length, free);
  if (!known)
    return refuse({ code: 'NETWORK_POINTS_LOOSE', names: unknown.map((i) => survey.points[i]!.name) });
  const places = allPlaces(survey, solution.parameters, unknown);
  const covariance = spread(known.covariance, unknown, survey.points.length);
  const redundancy = solution.residuals.length - solution.parameters.length + free.length;
  const test = globalTest(solution.sumOfSquares, redundancy);
  const points = survey.points.map(({ name, kind }, i): AdjustedPoint => {
    const [xx, xy, yy] = [
      covariance[2 * i]![2 * i]!,
      covariance[2 * i]![2 * i + 1]!,
      covariance[2 * i + 1]![2 * i + 1]!,
    ];
    const at = { x: mm(places[i]!.x), y: mm(places[i]!.y) };
    return {
      name,
      kind,
      at,
      sigmaX: mm(Math.sqrt(xx)),
      sigmaY: mm(Math.sqrt(yy)),
      ellipse: ellipse(xx, xy, yy),
    };
  });
  const distances = survey.distances.map(({ from, to, value, sigma }, index) => {
    const residual = mm(solution.residuals[index]! * sigma);
    const standardised = known.standardised[index];
    const redundancyNumber = known.redundancyNumbers[index]!;
    const about = { index, from, to, value, adjusted: mm(value + residual), residual, redundancyNumber };
    return standardised === undefined ? about : { ...about, standardised };
  });
  return ok({
    points,
    covariance,
    distances,
    redundancy,
    test,
    unitSigma: redundancy > 0 ? Math.sqrt(solution.sumOfSquares / redundancy) : undefined,
    suspects: test && !test.passes ? suspectDistances(survey, distances, solution.sumOfSquares) : [],
    weak: weakPoints(survey, points),
    next: nextReading(survey, places, covariance),
  });
}

function badSurvey({ points, distances }: MarkSurvey): NetworkRefusal | undefined {
  if (points.length < 3) return { code: 'NETWORK_TOO_FEW_POINTS', points: points.length };
  const names = new Set<string>();
  for (const { name } of points) {
    if (names.has(name)) return { code: 'NETWORK_NAME_TWICE', name };
    names.add(name);
  }
  for (const [index, { from, to, value, sigma }] of distances.entries()) {
    for (const name of [from, to]) if (!names.has(name)) return { code: 'NETWORK_NAME_UNKNOWN', name, index };
    if (from === to) return { code: 'NETWORK_DISTANCE_TO_ITSELF', name: from, index };
    if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
      return { code: 'NETWORK_DISTANCE_NOT_POSITIVE', index, value };
    }
    if (!(sigma > 0 && sigma < Number.POSITIVE_INFINITY))
      return { code: 'NETWORK_SIGMA_NOT_POSITIVE', index, sigma };
  }
  const fixed = points.filter((point) => point.fixed);
  return fixed.length === 1 ? { code: 'NETWORK_ONE_POINT_FIXED', name: fixed[0]!.name } : undefined;
}

interface Arrangement {
  readonly solution: LeastSquaresSolution;
  readonly unknown: readonly number[];
  readonly anticlockwise: boolean | undefined;
}

/**
 * First with all two-tape points on one side of their marks, as is usual; where the tapes contradict that, with the sides
 * left to the tapes between the points.
 */
function arranged(survey: MarkSurvey): Result<Arrangement, NetworkRefusal> {
  const [plain, open] = [false, true].map((linked) => () => {
    const starts = firstPlaces(survey, linked);
    return starts.ok ? bestArrangement(survey, starts.value) : starts;
  });
  const first = plain!();
  const misfit = (solved: Result<Arrangement, NetworkRefusal>) =>
    solved.ok ? solved.value.solution.sumOfSquares : Number.POSITIVE_INFINITY;
  if (misfit(first) <= LARGE_MISFIT * survey.distances.length) return first;
  const second = open!();
  return misfit(second) < misfit(first) ? second : first;
}

/** Sum of squares per tape above which the sides are looked at again; a sound survey has less than 1. */
const LARGE_MISFIT = 4;

/** Adjusts each arrangement; keeps those that run anticlockwise; takes the best when it is clearly the best. */
function bestArrangement(
  survey: MarkSurvey,
  starts: readonly (readonly XY[])[],
): Result<Arrangement, NetworkRefusal> {
  const unknown = survey.points.flatMap(({ fixed }, i) => (fixed ? [] : [i]));
  const solved: Arrangement[] = [];
  let steps = 0;
  for (const start of starts) {
    const result = levenbergMarquardt({
      start: unknown.flatMap((i) => [start[i]!.x, start[i]!.y]),
      evaluate: distanceModel(survey, unknown),
    });
    if (!result.ok) {
      steps += result.refusal.steps;
      continue;
    }
    const solution =
      unknown.length === survey.points.length ? upright(result.value, survey, unknown) : result.value;
    const ring = allPlaces(survey, solution.parameters, unknown).filter(
      (_, i) => survey.points[i]!.kind === 'outline',
    );
    solved.push({ solution, unknown, anticlockwise: ring.length > 2 ? twiceArea(ring) > 0 : undefined });
  }
  if (solved.length === 0) return refuse({ code: 'NETWORK_NOT_CONVERGED', steps });
  const fitting = solved.filter(({ anticlockwise }) => anticlockwise !== false);
  if (fitting.length === 0) return refuse({ code: 'NETWORK_ORDER_CLOCKWISE' });
  fitting.sort((a, b) => a.solution.sumOfSquares - b.solution.sumOfSquares);
  const [best, ...others] = fitting;
  for (const other of others) {
    if (other.solution.sumOfSquares - best!.solution.sumOfSquares >= TOLD_APART) break;
    const apart = differing(survey, unknown, best!, other);
    if (apart.length > 0) return refuse({ code: 'NETWORK_MIRROR_AMBIGUOUS', names: apart });
  }
  return ok(best!);
}

/** Names of the points that two arrangements put in different places. */
function differing(survey: MarkSurvey, unknown: readonly number[], a: Arrangement, b: Arrangement) {
  const [p, q] = [a, b].map(({ solution }) => allPlaces(survey, solution.parameters, unknown)) as [
    XY[],
    XY[],
  ];
  return survey.points.flatMap(({ name }, i) =>
    Math.hypot(p[i]!.x - q[i]!.x, p[i]!.y - q[i]!.y) > 1 ? [name] : [],
  );
}

const twiceArea = (ring: readonly XY[]) =>
  ring.reduce((sum, { x, y }, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return sum + x * next.y - next.x * y;
  }, 0);

function distanceModel(survey: MarkSurvey, unknown: readonly number[]) {
  const place = new Map(survey.points.map(({ name }, i) => [name, i]));
  const ends = survey.distances.map(
    ({ from, to, value, sigma }): Ends => ({ i: place.get(from)!, j: place.get(to)!, value, sigma }),
  );
  const column = survey.points.map((_, i) => unknown.indexOf(i));
  const size = 2 * unknown.length;
  return (parameters: Float64Array): Evaluation => {
    const places = allPlaces(survey, parameters, unknown);
    const residuals = new Float64Array(ends.length);
    const jacobian = new Float64Array(ends.length * size);
    for (const [row, { i, j, value, sigma }] of ends.entries()) {
      const [dx, dy] = [places[j]!.x - places[i]!.x, places[j]!.y - places[i]!.y];
      const length = Math.hypot(dx, dy);
      residuals[row] = (length - value) / sigma;
      if (length === 0) continue;
      for (const [end, sign] of [
        [i, -1],
        [j, 1],
      ] as const) {
        if (column[end]! < 0) continue;
        jacobian[row * size + 2 * column[end]!] = (sign * dx) / length / sigma;
        jacobian[row * size + 2 * column[end]! + 1] = (sign * dy) / length / sigma;
      }
    }
    return { residuals, jacobian };
  };
}

function allPlaces(survey: MarkSurvey, parameters: ArrayLike<number>, unknown: readonly number[]): XY[] {
  const places: XY[] = survey.points.map(({ fixed }) => fixed ?? { x: 0, y: 0 });
  unknown.forEach((i, k) => {
    places[i] = { x: parameters[2 * k]!, y: parameters[2 * k + 1]! };
  });
  return places;
}

/** Shift and turn only: the first point to the origin, the second to +x. Residuals do not change. */
function upright(
  solution: LeastSquaresSolution,
  survey: MarkSurvey,
  unknown: readonly number[],
): LeastSquaresSolution {
  const [x0, y0, x1, y1] = solution.parameters as unknown as readonly [number, number, number, number];
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length === 0) return solution;
  const [cos, sin] = [(x1 - x0) / length, (y1 - y0) / length];
  const parameters = solution.parameters.map((_, i, all) => {
    const [dx, dy] = [all[i - (i % 2)]! - x0, all[i - (i % 2) + 1]! - y0];
    return i % 2 === 0 ? cos * dx + sin * dy : cos * dy - sin * dx;
  });
  return { ...solution, ...distanceModel(survey, unknown)(parameters), parameters };
}

/** Orthonormal directions that change no distance: two shifts and the turn about the centre. */
function rigidMotions(parameters: Float64Array): readonly Float64Array[] {
  const count = parameters.length / 2;
  const centre = [0, 1].map((axis) => {
    let sum = 0;
    for (let i = axis; i < parameters.length; i += 2) sum += parameters[i]!;
    return sum / count;
  });
  const shift = (axis: number) => parameters.map((_, i) => (i % 2 === axis ? 1 / Math.sqrt(count) : 0));
  const turn = parameters.map((_, i, all) =>
    i % 2 === 0 ? centre[1]! - all[i + 1]! : all[i - 1]! - centre[0]!,
  );
  const norm = Math.hypot(...turn);
  return [shift(0), shift(1), turn.map((value) => value / norm)];
}

function spread(
  covariance: Float64Array,
  unknown: readonly number[],
  points: number,
): readonly (readonly number[])[] {
  const column = Array.from({ length: 2 * points }, (_, i) => {
    const at = unknown.indexOf(Math.floor(i / 2));
    return at < 0 ? -1 : 2 * at + (i % 2);
  });
  const size = 2 * unknown.length;
  return column.map((i) => column.map((j) => (i < 0 || j < 0 ? 0 : covariance[i * size + j]!)));
}

/** Half axes and direction of the standard ellipse of a 2 × 2 covariance. @source sources.md#ghilani (error ellipse) */
export function ellipse(xx: number, xy: number, yy: number): ErrorEllipse {
  const reach = Math.hypot((xx - yy) / 2, xy);
  return {
    major: mm(Math.sqrt(Math.max((xx + yy) / 2 + reach, 0))),
    minor: mm(Math.sqrt(Math.max((xx + yy) / 2 - reach, 0))),
    direction: radian(Math.atan2(2 * xy, xx - yy) / 2),
  };
}

function weakPoints({ distances }: MarkSurvey, points: readonly AdjustedPoint[]): readonly WeakPoint[] {
  const at = new Map(points.map((point) => [point.name, point.at]));
  return points.flatMap(({ name, at: here, ellipse: error }) => {
    if (error.major === 0) return [];
    const reached = distances.flatMap(({ from, to }) => (from === name ? [to] : to === name ? [from] : []));
    let angle = 0;
    for (const [i, a] of reached.entries()) {
      for (const b of reached.slice(i + 1))
        angle = Math.max(angle, crossingAngle(here, at.get(a)!, at.get(b)!));
    }
    // A mark held by one line of its own is placed through the others, and not weak for that.
    return angle < WEAK_ANGLE && reached.length > 1 ? [{ name, angle: radian(angle), ellipse: error }] : [];
  });
}
