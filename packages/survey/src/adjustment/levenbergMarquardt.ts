import { ok, type Result, refuse } from '@panewright/quantity';
import { factorise, solveFactored } from './cholesky.ts';

/** Residuals (m) and, row by row, their derivatives by each parameter (m × n), both already divided by sigma. */
export interface Evaluation {
  readonly residuals: Float64Array;
  readonly jacobian: Float64Array;
}

export interface LeastSquaresProblem {
  readonly start: ArrayLike<number>;
  /** May return an empty jacobian when `derivatives` is false. Non-finite residuals mark a step as not allowed. */
  readonly evaluate: (parameters: Float64Array, derivatives: boolean) => Evaluation;
  /** 200 unless told. */
  readonly mostSteps?: number;
  /** Stops when the next step would lessen the sum by less than this share of it. 1e-16 unless told. */
  readonly tolerance?: number;
  /** Return the best point found when the steps run out, for a caller that judges it by its sum. */
  readonly acceptUnfinished?: boolean;
}

export interface LeastSquaresSolution extends Evaluation {
  readonly parameters: Float64Array;
  readonly sumOfSquares: number;
  readonly steps: number;
}

export type LeastSquaresRefusal = {
  readonly code: 'LEAST_SQUARES_NOT_CONVERGED';
  readonly steps: number;
  readonly sumOfSquares: number;
};

/**
 * Least squares by Levenberg and Marquardt, damped by the diagonal of the normal matrix, with Nielsen's damping rule.
 * A rank-deficient problem is solved too: the damping picks a short step.
 *
 * @param problem n parameters, m residuals in units of their sigma
 * @accuracy at the minimum the gradient vanishes to about 1e-8 of a standard deviation
 * @refuses LEAST_SQUARES_NOT_CONVERGED after `mostSteps`, or when no step improves a point that is not a minimum
 * @source sources.md#marquardt-1963, sources.md#madsen-2004
 */
export function levenbergMarquardt(
  problem: LeastSquaresProblem,
): Result<LeastSquaresSolution, LeastSquaresRefusal> {
  const tolerance = problem.tolerance ?? 1e-16;
  let parameters = Float64Array.from(problem.start);
  let at = problem.evaluate(parameters, true);
  let cost = sumOfSquares(at.residuals);
  let { normal, gradient } = normalEquations(at, parameters.length);
  let damping = 1e-3;
  let growth = 2;
  for (let steps = 1; steps <= (problem.mostSteps ?? 200); steps++) {
    const trial = dampedStep(normal, gradient, damping);
    const promised = trial ? trial.promised : Number.POSITIVE_INFINITY;
    const small = promised <= tolerance * cost + 1e-24;
    if (small && damping < 1e6) return ok({ ...at, parameters, sumOfSquares: cost, steps });
    const next = trial && parameters.map((value, i) => value + trial.step[i]!);
    const nextCost = next ? sumOfSquares(problem.evaluate(next, false).residuals) : Number.POSITIVE_INFINITY;
    if (next && nextCost <= cost) {
      const gain = (cost - nextCost) / promised;
      parameters = next;
      at = problem.evaluate(parameters, true);
      cost = nextCost;
      ({ normal, gradient } = normalEquations(at, parameters.length));
      damping = Math.max(damping * Math.max(1 / 3, 1 - (2 * gain - 1) ** 3), 1e-14);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
      if (damping > 1e14) {
        // No step improves: at the limit of rounding this is the minimum.
        const left = dampedStep(normal, gradient, 1e-3)?.promised ?? Number.POSITIVE_INFINITY;
        if (left <= 1e-10 * cost + 1e-20) return ok({ ...at, parameters, sumOfSquares: cost, steps });
        break;
      }
    }
  }
  const steps = problem.mostSteps ?? 200;
  if (problem.acceptUnfinished && Number.isFinite(cost))
    return ok({ ...at, parameters, sumOfSquares: cost, steps });
  return refuse({
    code: 'LEAST_SQUARES_NOT_CONVERGED',
    steps,
    sumOfSquares: cost,
  });
}

function sumOfSquares(residuals: Float64Array): number {
  let sum = 0;
  for (const residual of residuals) sum += residual * residual;
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

/** JᵀJ (n × n, both triangles) and Jᵀr. Zeros in J are skipped: a point of a chain touches few parameters. */
export function normalEquations({ residuals, jacobian }: Evaluation, size: number) {
  const normal = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  const nonZero = new Int32Array(size);
  for (let row = 0; row < residuals.length; row++) {
    const from = row * size;
    let count = 0;
    for (let i = 0; i < size; i++) if (jacobian[from + i] !== 0) nonZero[count++] = i;
    for (let a = 0; a < count; a++) {
      const i = nonZero[a]!;
      const value = jacobian[from + i]!;
      gradient[i]! += value * residuals[row]!;
      for (let b = 0; b <= a; b++) normal[i * size + nonZero[b]!]! += value * jacobian[from + nonZero[b]!]!;
    }
  }
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < i; j++) normal[j * size + i] = normal[i * size + j]!;
  }
  return { normal, gradient };
}

function dampedStep(normal: Float64Array, gradient: Float64Array, damping: number) {
  const size = gradient.length;
  const damped = normal.slice();
  let largest = 0;
  for (let i = 0; i < size; i++) largest = Math.max(largest, normal[i * size + i]!);
  if (largest === 0) return { step: new Float64Array(size), promised: 0 };
  for (let i = 0; i < size; i++) {
    damped[i * size + i]! += damping * Math.max(normal[i * size + i]!, 1e-12 * largest);
  }
  const factor = factorise(damped, size);
  if (!factor) return undefined;
  const step = solveFactored(factor, gradient).map((value) => -value);
  let promised = 0;
  for (let i = 0; i < size; i++) {
    promised -= step[i]! * gradient[i]!;
    promised += damping * step[i]! ** 2 * Math.max(normal[i * size + i]!, 1e-12 * largest);
  }
  return { step, promised: Math.max(promised, 0) };
}

/**
 * Derivatives by central differences, for models whose algebra is not worth writing out.
 *
 * @param step in the parameters' unit; 0.01 mm suits lengths of metres
 * @accuracy 1e-8 relative for lengths of 1 m
 * @source central difference, error step²/6 · third derivative
 */
export function numericJacobian(
  model: (parameters: Float64Array) => ArrayLike<number>,
  at: Float64Array,
  step: number,
): Float64Array {
  const size = at.length;
  const probe = at.slice();
  let jacobian: Float64Array | undefined;
  for (let i = 0; i < size; i++) {
    probe[i] = at[i]! + step;
    const ahead = model(probe);
    probe[i] = at[i]! - step;
    const behind = model(probe);
    probe[i] = at[i]!;
    jacobian ??= new Float64Array(ahead.length * size);
    for (let row = 0; row < ahead.length; row++) {
      jacobian[row * size + i] = (ahead[row]! - behind[row]!) / (2 * step);
    }
  }
  return jacobian ?? new Float64Array(0);
}
