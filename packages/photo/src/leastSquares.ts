/** Residuals are already divided by their standard deviations. */
export interface LeastSquaresProblem {
  readonly start: Float64Array;
  readonly count: number;
  /** Size of a step in each unknown over which the residuals are nearly straight. */
  readonly steps: Float64Array;
  readonly residuals: (unknowns: Float64Array, out: Float64Array) => void;
  /** Writes the weight (0..1) of each residual; left out, all are 1. */
  readonly weights?: (residuals: Float64Array, out: Float64Array) => void;
  readonly rounds?: number;
  /** False spares the inverse. */
  readonly wantCovariance?: boolean;
}

export interface LeastSquaresAnswer {
  readonly unknowns: Float64Array;
  readonly residuals: Float64Array;
  readonly weights: Float64Array;
  /** count x n, row by row, at the answer. */
  readonly jacobian: Float64Array;
  /** n x n inverse normal matrix, row by row; empty when not wanted. */
  readonly covariance: Float64Array;
  readonly converged: boolean;
}

/**
 * Weighted non-linear least squares with Levenberg's damping in Marquardt's scaling.
 *
 * @accuracy stops when a step changes the weighted sum by less than 1e-9 of itself
 * @source sources.md#marquardt-1963
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresAnswer {
  const { count, residuals, steps } = problem;
  const n = problem.start.length;
  let unknowns = Float64Array.from(problem.start);
  let current = new Float64Array(count);
  let trial = new Float64Array(count);
  const weights = new Float64Array(count).fill(1);
  const jacobian = new Float64Array(count * n);
  const normal = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  let damping = 1e-4;
  let converged = false;
  residuals(unknowns, current);
  for (let round = 0; round < (problem.rounds ?? 60) && !converged; round++) {
    problem.weights?.(current, weights);
    differentiate(residuals, unknowns, current, steps, jacobian);
    formNormal(jacobian, current, weights, n, normal, gradient);
    const before = weightedSum(current, weights);
    for (let attempt = 0; attempt < 12; attempt++) {
      const step = solveDamped(normal, gradient, n, damping);
      const next = unknowns.map((value, i) => value - (step?.[i] ?? 0));
      if (step) residuals(next, trial);
      const after = step ? weightedSum(trial, weights) : Number.POSITIVE_INFINITY;
      if (after <= before) {
        converged = before - after <= 1e-9 * before + 1e-14;
        damping = Math.max(1e-12, damping / 9);
        unknowns = next;
        [current, trial] = [trial, current];
        break;
      }
      damping = Math.max(damping, 1e-9) * 8;
      if (attempt === 11) converged = true;
    }
  }
  problem.weights?.(current, weights);
  differentiate(residuals, unknowns, current, steps, jacobian);
  formNormal(jacobian, current, weights, n, normal, gradient);
  const covariance = problem.wantCovariance === false ? new Float64Array(0) : invertPositive(normal, n);
  return { unknowns, residuals: current, weights, jacobian, covariance, converged };
}

function differentiate(
  residuals: LeastSquaresProblem['residuals'],
  at: Float64Array,
  base: Float64Array,
  steps: Float64Array,
  jacobian: Float64Array,
): void {
  const n = at.length;
  const moved = new Float64Array(base.length);
  const probe = Float64Array.from(at);
  for (let j = 0; j < n; j++) {
    const h = steps[j]! * 1e-4;
    probe[j] = at[j]! + h;
    residuals(probe, moved);
    probe[j] = at[j]!;
    for (let i = 0; i < base.length; i++) jacobian[i * n + j] = (moved[i]! - base[i]!) / h;
  }
}

function formNormal(
  jacobian: Float64Array,
  residuals: Float64Array,
  weights: Float64Array,
  n: number,
  normal: Float64Array,
  gradient: Float64Array,
): void {
  normal.fill(0);
  gradient.fill(0);
  for (let i = 0; i < residuals.length; i++) {
    const w = weights[i]!;
    if (w === 0) continue;
    const row = i * n;
    for (let a = 0; a < n; a++) {
      const wa = w * jacobian[row + a]!;
      if (wa === 0) continue;
      gradient[a]! += wa * residuals[i]!;
      for (let b = 0; b <= a; b++) normal[a * n + b]! += wa * jacobian[row + b]!;
    }
  }
  for (let a = 0; a < n; a++) for (let b = 0; b < a; b++) normal[b * n + a] = normal[a * n + b]!;
}

function weightedSum(residuals: Float64Array, weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < residuals.length; i++) sum += weights[i]! * residuals[i]! ** 2;
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

function solveDamped(normal: Float64Array, gradient: Float64Array, n: number, damping: number) {
  const damped = Float64Array.from(normal);
  for (let i = 0; i < n; i++) damped[i * n + i]! *= 1 + damping;
  for (let i = 0; i < n; i++) damped[i * n + i]! += 1e-12;
  const lower = cholesky(damped, n);
  return lower && substitute(lower, gradient, n);
}

/** Lower triangle L with L L' = matrix; undefined when the matrix is not positive definite. */
export function cholesky(matrix: Float64Array, n: number): Float64Array | undefined {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) {
        if (!(sum > 0)) return undefined;
        lower[i * n + i] = Math.sqrt(sum);
      } else lower[i * n + j] = sum / lower[j * n + j]!;
    }
  }
  return lower;
}

/** x with L L' x = right. */
export function substitute(lower: Float64Array, right: ArrayLike<number>, n: number): Float64Array {
  const x = Float64Array.from({ length: n }, (_, i) => right[i]!);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= lower[i * n + k]! * x[k]!;
    x[i]! /= lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= lower[k * n + i]! * x[k]!;
    x[i]! /= lower[i * n + i]!;
  }
  return x;
}

/** Inverse of a symmetric positive matrix; unknowns nothing measures get a variance of 1e12. */
export function invertPositive(matrix: Float64Array, n: number): Float64Array {
  const held = Float64Array.from(matrix);
  for (let i = 0; i < n; i++) held[i * n + i]! += 1e-12;
  const lower = cholesky(held, n);
  if (!lower) throw new Error('normal matrix is not positive definite');
  const inverse = new Float64Array(n * n);
  const unit = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    unit.fill(0);
    unit[j] = 1;
    const column = substitute(lower, unit, n);
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i]!;
  }
  return inverse;
}
