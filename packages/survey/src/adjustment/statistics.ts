import { chiSquareExceeded, chiSquareQuantile } from './chiSquare.ts';
import { factorise, invertFactored } from './cholesky.ts';
import { type Evaluation, normalEquations } from './levenbergMarquardt.ts';

/** Share of sound surveys that pass the test of the whole. */
export const TEST_LEVEL = 0.99;

/** Is the misfit as a whole what the stated sigmas lead one to expect? */
export interface GlobalTest {
  /** Sum of squared residuals in units of sigma. */
  readonly chiSquare: number;
  readonly redundancy: number;
  /** 99 % of sound surveys stay below. */
  readonly limit: number;
  /** The chance of a misfit this large or larger when only the stated sigmas are at work. */
  readonly chance: number;
  readonly passes: boolean;
}

/** undefined when nothing is left over to test with. @source sources.md#baarda-1968 */
export function globalTest(chiSquare: number, redundancy: number): GlobalTest | undefined {
  if (redundancy < 1) return undefined;
  const limit = chiSquareQuantile(TEST_LEVEL, redundancy);
  const chance = chiSquareExceeded(chiSquare, redundancy);
  return { chiSquare, redundancy, limit, chance, passes: chiSquare <= limit };
}

export interface Statistics {
  /** Of the parameters, n × n row by row, from the stated sigmas. */
  readonly covariance: Float64Array;
  /** Share of each reading that the others check: 0 not at all, 1 wholly. They sum to the redundancy. */
  readonly redundancyNumbers: readonly number[];
  /** Residual over its own sigma; undefined where nothing checks the reading. */
  readonly standardised: readonly (number | undefined)[];
}

/**
 * Covariance and reliability of a least-squares solution.
 *
 * @param evaluation at the solution, in units of sigma
 * @param free orthonormal directions (each n long) that the data leave open, such as a shift of the whole; the
 *   covariance then is the one of inner constraints: errors as seen after the best fit of the whole
 * @returns undefined when a direction not in `free` is undetermined
 * @source sources.md#baarda-1968, sources.md#ghilani (inner constraints, redundancy numbers)
 */
export function statistics(
  evaluation: Evaluation,
  size: number,
  free: readonly Float64Array[] = [],
): Statistics | undefined {
  const { normal } = normalEquations(evaluation, size);
  let scale = 0;
  for (let i = 0; i < size; i++) scale = Math.max(scale, normal[i * size + i]!);
  const held = normal.slice();
  for (const direction of free) {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) held[i * size + j]! += scale * direction[i]! * direction[j]!;
    }
  }
  const factor = factorise(held, size);
  if (!factor) return undefined;
  const covariance = invertFactored(factor);
  // (N + s·F)⁻¹ differs from the inner-constraint inverse by F/s alone, because N·f = 0 for every free direction.
  for (const direction of free) {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) covariance[i * size + j]! -= (direction[i]! * direction[j]!) / scale;
    }
  }
  const { residuals, jacobian } = evaluation;
  const redundancyNumbers = Array.from(residuals, (_, row) =>
    Math.min(1, Math.max(0, 1 - quadratic(covariance, jacobian.subarray(row * size, (row + 1) * size)))),
  );
  const standardised = redundancyNumbers.map((share, row) =>
    share > LEAST_CHECKED ? residuals[row]! / Math.sqrt(share) : undefined,
  );
  return { covariance, redundancyNumbers, standardised };
}

/** Below this share a reading counts as unchecked: its residual is rounding. */
export const LEAST_CHECKED = 1e-6;

/** gᵀ C g: the variance of a quantity whose derivatives by the parameters are g. @source sources.md#ghilani (propagation of variance) */
export function quadratic(covariance: Float64Array, gradient: ArrayLike<number>): number {
  const size = gradient.length;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    if (gradient[i] === 0) continue;
    for (let j = 0; j < size; j++) sum += gradient[i]! * covariance[i * size + j]! * gradient[j]!;
  }
  return sum;
}
