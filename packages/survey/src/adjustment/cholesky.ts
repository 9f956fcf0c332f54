/**
 * Cholesky factor of a symmetric positive definite matrix, scaled to a unit diagonal first so that unknowns of very
 * different size (a radius in mm, a rate per mm) do not spoil each other.
 *
 * @param matrix n × n, row by row; only the lower triangle is read
 * @returns undefined when the matrix is not positive definite to working accuracy
 */
export function factorise(matrix: Float64Array, size: number): CholeskyFactor | undefined {
  const scale = new Float64Array(size);
  const lower = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    const diagonal = matrix[i * size + i]!;
    if (!(diagonal > 0) || !Number.isFinite(diagonal)) return undefined;
    scale[i] = 1 / Math.sqrt(diagonal);
  }
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j]! * scale[i]! * scale[j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * size + k]! * lower[j * size + k]!;
      if (i !== j) lower[i * size + j] = sum / lower[j * size + j]!;
      else if (sum > LEAST_PIVOT) lower[i * size + i] = Math.sqrt(sum);
      else return undefined;
    }
  }
  return { size, lower, scale };
}

/** Of a unit diagonal; below it the unknown is not determined by the data. */
const LEAST_PIVOT = 1e-14;

export interface CholeskyFactor {
  readonly size: number;
  readonly lower: Float64Array;
  readonly scale: Float64Array;
}

/** Solves matrix · x = right, in O(n²). */
export function solveFactored({ size, lower, scale }: CholeskyFactor, right: Float64Array): Float64Array {
  const x = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = right[i]! * scale[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i * size + k]! * x[k]!;
    x[i] = sum / lower[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < size; k++) sum -= lower[k * size + i]! * x[k]!;
    x[i] = sum / lower[i * size + i]!;
  }
  for (let i = 0; i < size; i++) x[i]! *= scale[i]!;
  return x;
}

/** The inverse, n × n row by row, symmetric. */
export function invertFactored(factor: CholeskyFactor): Float64Array {
  const { size } = factor;
  const inverse = new Float64Array(size * size);
  const unit = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    unit.fill(0);
    unit[j] = 1;
    const column = solveFactored(factor, unit);
    for (let i = 0; i < size; i++) inverse[i * size + j] = column[i]!;
  }
  return inverse;
}
