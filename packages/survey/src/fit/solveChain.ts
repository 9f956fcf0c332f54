import { type Evaluation, levenbergMarquardt } from '../adjustment/levenbergMarquardt.ts';
import { type Edge, edgeDistance, signedDistance } from './arcFrame.ts';
import {
  type Chain,
  chainOf,
  edgesOf,
  type Layout,
  layoutOf,
  parametersOf,
  smoothed,
  stateSlopes,
} from './chain.ts';
import { type Closure, close, closureOf, dependence } from './closure.ts';

/** Points in order round the ring; `weight` is how many independent observations each stands for, at most 1. */
export interface FitPoints {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly sigma: Float64Array;
  readonly weight: Float64Array;
}

/** A radius known from elsewhere, as an observation of one arc. */
export interface RadiusReading {
  readonly edge: number;
  readonly radius: number;
  readonly sigma: number;
}

export interface SolvedChain {
  readonly chain: Chain;
  readonly layout: Layout;
  readonly closure: Closure;
  readonly parameters: Float64Array;
  readonly edges: readonly Edge[];
  /** Edge of each point. */
  readonly assigned: Int32Array;
  /** Robust misfit plus ln(observations) for each free parameter: less is more evident. */
  readonly score: number;
}

/** Cauchy's scale: 95 % as efficient as least squares when the noise is normal. @source sources.md#holland-welsch-1977 */
export const CAUCHY = 2.385;
/** Cauchy scales in turn, in units of sigma: wide ones first, so that far outliers let go gently. */
export const FROM_GUESS: readonly number[] = [8 * CAUCHY, 3 * CAUCHY, CAUCHY];
export const FROM_NEAR: readonly number[] = [2 * CAUCHY, CAUCHY];
export const TO_THE_END: readonly number[] = [8 * CAUCHY, 3 * CAUCHY, CAUCHY, CAUCHY];

/** ρ(r) = c² ln(1 + r²/c²), Cauchy's loss of a residual in units of sigma. */
export const cauchyLoss = (residual: number, scale: number): number =>
  scale * scale * Math.log1p((residual / scale) ** 2);

/** Each point to the nearest edge among its own and two on either side; with no hint, among all. */
export function assignPoints(edges: readonly Edge[], points: FitPoints, hint?: Int32Array): Int32Array {
  const count = edges.length;
  const reach = hint && count > 5 ? 2 : count;
  return Int32Array.from(points.x, (x, i) => {
    let [best, nearest] = [0, Number.POSITIVE_INFINITY];
    for (let step = hint ? -reach : 0; step <= (hint ? reach : count - 1); step++) {
      const k = ((hint?.[i] ?? 0) + step + 2 * count) % count;
      const distance = edgeDistance(edges[k]!, x, points.y[i]!);
      if (distance < nearest) [best, nearest] = [k, distance];
    }
    return best;
  });
}

const NO_ROWS = new Float64Array(0);

/** Residuals (robustly bent) of all points and any radii known, with derivatives by the free unknowns. */
function evaluator(
  points: FitPoints,
  assigned: Int32Array,
  layout: Layout,
  closure: Closure,
  scale: number,
  radii: readonly RadiusReading[],
  near: Float64Array,
) {
  const count = points.x.length;
  const rows = count + radii.length;
  const { size } = layout;
  // One set of rows serves every step: derivatives are asked for only where the solver has settled.
  const [all, freeOnly] = [new Float64Array(rows * size), new Float64Array(rows * closure.free.length)];
  const nowhere = { residuals: new Float64Array(1).fill(Number.NaN), jacobian: NO_ROWS };
  return (unknowns: Float64Array, derivatives: boolean): Evaluation => {
    const full = filled(unknowns, closure, near);
    if (!close(full, layout, closure)) return nowhere;
    const edges = edgesOf(full, layout);
    const gone = edges.some(({ length, curvature }) => !(length > 0) || Math.abs(curvature * length) > 6.4);
    if (gone) return nowhere;
    const residuals = new Float64Array(rows);
    const jacobian = derivatives ? all : NO_ROWS;
    const slopes = derivatives ? stateSlopes(edges, layout) : [];
    pointRows(points, assigned, layout, scale, edges, slopes, residuals, jacobian);
    radii.forEach(({ edge, radius, sigma }, k) => {
      const { curvature } = edges[edge]!;
      residuals[count + k] = (1 / Math.abs(curvature) - radius) / sigma;
      if (!derivatives) return;
      jacobian[(count + k) * size + layout.curvature[edge]!] = -Math.sign(curvature) / curvature ** 2 / sigma;
    });
    if (!derivatives) return { residuals, jacobian };
    const reduced = reduce(jacobian, rows, layout, closure, slopes, freeOnly);
    return reduced ? { residuals, jacobian: reduced } : nowhere;
  };
}

/** All unknowns: the free ones as given, the dependent ones as they were near by, still to be closed. */
function filled(unknowns: ArrayLike<number>, { free }: Closure, near: Float64Array): Float64Array {
  const full = near.slice();
  free.forEach((i, f) => {
    full[i] = unknowns[f]!;
  });
  return full;
}

/** Derivatives by the free unknowns, the dependent ones following. */
export function reduce(
  jacobian: Float64Array,
  rows: number,
  layout: Layout,
  closure: Closure,
  slopes: readonly Float64Array[],
  into?: Float64Array,
): Float64Array | undefined {
  const follow = dependence(slopes, layout, closure);
  if (!follow) return undefined;
  const { dependent, free } = closure;
  const reduced = into ?? new Float64Array(rows * free.length);
  for (let row = 0; row < rows; row++) {
    const [from, to] = [row * layout.size, row * free.length];
    for (let f = 0; f < free.length; f++) reduced[to + f] = jacobian[from + free[f]!]!;
    for (let d = 0; d < dependent.length; d++) {
      const value = jacobian[from + dependent[d]!]!;
      if (value === 0) continue;
      for (let f = 0; f < free.length; f++) reduced[to + f]! += value * follow[d]![f]!;
    }
  }
  return reduced;
}

/** One row for each point. Long because the derivative is written out once, in the inner loop of every fit. */
function pointRows(
  points: FitPoints,
  assigned: Int32Array,
  layout: Layout,
  scale: number,
  edges: readonly Edge[],
  slopes: readonly Float64Array[],
  residuals: Float64Array,
  jacobian: Float64Array,
): void {
  const { size } = layout;
  const frames = edges.map(({ heading }) => [Math.cos(heading), Math.sin(heading)] as const);
  for (let row = 0; row < points.x.length; row++) {
    const k = assigned[row]!;
    const { x, y, curvature } = edges[k]!;
    const [cos, sin] = frames[k]!;
    const [dx, dy] = [points.x[row]! - x, points.y[row]! - y];
    const [u, v] = [cos * dx + sin * dy, cos * dy - sin * dx];
    const distance = signedDistance(u, v, curvature);
    const root = Math.sqrt(points.weight[row]!);
    const plain = distance / points.sigma[row]!;
    const bent = Math.sqrt(cauchyLoss(plain, scale));
    residuals[row] = root * Math.sign(plain) * bent;
    if (slopes.length === 0) continue;
    const bend = bent > 1e-9 ? Math.abs(plain) / (bent * (1 + (plain / scale) ** 2)) : 1;
    const factor = (root * bend) / points.sigma[row]!;
    const stretch = Math.max(Math.abs(1 - curvature * distance), 1e-9);
    const [byU, byV] = [(-curvature * u) / stretch, (1 - curvature * v) / stretch];
    const byX = factor * (-byU * cos + byV * sin);
    const byY = factor * (-byU * sin - byV * cos);
    const byHeading = factor * (byU * v - byV * u);
    const state = slopes[k]!;
    const from = row * size;
    for (let i = 0; i < size; i++) {
      jacobian[from + i] = byX * state[i]! + byY * state[size + i]! + byHeading * state[2 * size + i]!;
    }
    const column = layout.curvature[k]!;
    if (column >= 0)
      jacobian[from + column]! += (-factor * (u * u + v * v - distance * distance)) / (2 * stretch);
  }
}

export interface SolveOptions {
  readonly scales?: readonly number[];
  /** Keeps the first assignment of points to edges. */
  readonly keepAssigned?: boolean;
  readonly radii?: readonly RadiusReading[];
  readonly tolerance?: number;
  readonly mostSteps?: number;
  /** A trial: judged by its score, converged or not. */
  readonly trial?: boolean;
}

/**
 * Joint robust fit of a closed chain to points: tangent joints are tangent, and the ring closed, by construction.
 *
 * @returns undefined when it does not converge or an edge vanishes
 * @source sources.md#holland-welsch-1977 (Cauchy weights), sources.md#marquardt-1963
 */
export function solveChain(
  start: Chain,
  points: FitPoints,
  assigned: Int32Array,
  {
    scales = FROM_NEAR,
    keepAssigned = false,
    radii = [],
    tolerance = 1e-7,
    mostSteps = 60,
    trial = false,
  }: SolveOptions = {},
): SolvedChain | undefined {
  const layout = layoutOf(start);
  let parameters = parametersOf(smoothed(start), layout);
  let closure = closureOf(parameters, layout);
  if (!close(parameters, layout, closure)) return undefined;
  let owner = assigned;
  for (const scale of scales) {
    closure = closureOf(parameters, layout);
    const evaluate = evaluator(points, owner, layout, closure, scale, radii, parameters);
    const from = closure.free.map((i) => parameters[i]!);
    const solved = levenbergMarquardt({
      start: from,
      evaluate,
      tolerance,
      mostSteps,
      acceptUnfinished: trial,
    });
    if (!solved.ok) return undefined;
    parameters = filled(solved.value.parameters, closure, parameters);
    if (!close(parameters, layout, closure)) return undefined;
    if (!keepAssigned) owner = assignPoints(edgesOf(parameters, layout), points, owner);
  }
  const edges = edgesOf(parameters, layout);
  const observations = points.weight.reduce((sum, weight) => sum + weight, radii.length);
  const misfit = points.x.reduce((sum, x, i) => {
    const distance = edgeDistance(edges[owner[i]!]!, x, points.y[i]!);
    return sum + points.weight[i]! * cauchyLoss(distance / points.sigma[i]!, CAUCHY);
  }, 0);
  const score = misfit + closure.free.length * Math.log(observations);
  return {
    chain: chainOf(parameters, layout, start),
    layout,
    closure,
    parameters,
    edges,
    assigned: owner,
    score,
  };
}
