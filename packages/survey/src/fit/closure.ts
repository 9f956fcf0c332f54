import { type Edge, endOf } from './arcFrame.ts';
import { edgesOf, type Layout, stateSlopes } from './chain.ts';

/** Which unknowns follow from the others by the closing of the chain: two lengths or turns, three if it closes smoothly. */
export interface Closure {
  readonly dependent: readonly number[];
  readonly free: readonly number[];
  /** ∂dependent/∂free where it is known beforehand and the closing conditions alone do not tell it (a whole circle). */
  readonly follow?: readonly (readonly number[])[];
}

/** Natural sizes of a step: mm of length, rad of turn, and the same for a curvature over its length. */
const TURN_SIZE = 1e-3;
/** Newton goes on to the first, and the second is closed as well. */
const CLOSED = 1e-11;
const CLOSED_ENOUGH = 1e-9;
const MOST_NEWTON = 12;

/** Gap between end and start: x, y in mm and, if the chain closes smoothly, heading in rad. */
function gaps(edges: readonly Edge[], layout: Layout): readonly number[] {
  const [start, end] = [edges[0]!, endOf(edges.at(-1)!)];
  const gap = [end.x - start.x, end.y - start.y];
  return layout.closesTangent ? [...gap, end.heading - start.heading - 2 * Math.PI] : gap;
}

/** Derivatives of the gaps by all unknowns, row by row. */
function gapSlopes(slopes: readonly Float64Array[], layout: Layout): readonly Float64Array[] {
  const end = slopes.at(-1)!;
  return Array.from({ length: layout.closesTangent ? 3 : 2 }, (_, axis) => {
    const row = end.slice(axis * layout.size, (axis + 1) * layout.size);
    row[axis]! -= 1;
    return row;
  });
}

/** Chooses the unknowns that close the chain best: pivots of the gap's derivatives, each in its natural size. */
export function closureOf(parameters: Float64Array, layout: Layout): Closure {
  const edges = edgesOf(parameters, layout);
  const rows = gapSlopes(stateSlopes(edges, layout), layout).map((row) => row.slice());
  const sizes = new Float64Array(layout.size);
  edges.forEach(({ length }, k) => {
    sizes[layout.length[k]!] = 1;
    if (layout.turn[k]! >= 0) sizes[layout.turn[k]!] = TURN_SIZE;
    if (layout.curvature[k]! >= 0) sizes[layout.curvature[k]!] = TURN_SIZE / Math.max(length, 1);
  });
  // Heading counts as its offset at a metre.
  const vectors = Array.from(sizes, (size, i) =>
    rows.map((row, axis) => row[i]! * size * (axis === 2 ? 1000 : 1)),
  );
  const dependent: number[] = [];
  for (let pick = 0; pick < rows.length; pick++) {
    const norms = vectors.map((vector, i) => (dependent.includes(i) ? -1 : Math.hypot(...vector)));
    const best = norms.indexOf(Math.max(...norms));
    dependent.push(best);
    const axis = vectors[best]!.map((value) => value / (norms[best]! || 1));
    for (const vector of vectors) {
      const along = vector.reduce((sum, value, i) => sum + value * axis[i]!, 0);
      axis.forEach((value, i) => {
        vector[i]! -= along * value;
      });
    }
  }
  const free = Array.from(sizes.keys()).filter((i) => !dependent.includes(i));
  return { dependent, free };
}

/** Closes the chain by Newton on the dependent unknowns, in place; false when that fails. */
export function close(parameters: Float64Array, layout: Layout, { dependent }: Closure): boolean {
  for (let round = 0; round < MOST_NEWTON; round++) {
    const edges = edgesOf(parameters, layout);
    const gap = gaps(edges, layout);
    if (!gap.every(Number.isFinite)) return false;
    const widest = Math.max(...gap.map(Math.abs));
    if (widest < (round === MOST_NEWTON - 1 ? CLOSED_ENOUGH : CLOSED)) return true;
    const rows = gapSlopes(stateSlopes(edges, layout), layout);
    const step = solveSmall(
      rows.map((row) => dependent.map((i) => row[i]!)),
      gap,
    );
    if (!step) return false;
    dependent.forEach((i, k) => {
      parameters[i]! -= step[k]!;
    });
  }
  return false;
}

/** How each dependent unknown follows each free one: row d, column f of ∂dependent/∂free. */
export function dependence(
  slopes: readonly Float64Array[],
  layout: Layout,
  { dependent, free, follow }: Closure,
): readonly (readonly number[])[] | undefined {
  if (follow) return follow;
  const rows = gapSlopes(slopes, layout);
  const matrix = rows.map((row) => dependent.map((i) => row[i]!));
  const columns = free.map((f) =>
    solveSmall(
      matrix,
      rows.map((row) => -row[f]!),
    ),
  );
  if (columns.some((column) => column === undefined)) return undefined;
  return dependent.map((_, d) => columns.map((column) => column![d]!));
}

/** Gaussian elimination with pivoting for two or three unknowns. */
function solveSmall(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | undefined {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const size = rows.length;
  for (let i = 0; i < size; i++) {
    let pivot = i;
    for (let j = i + 1; j < size; j++) if (Math.abs(rows[j]![i]!) > Math.abs(rows[pivot]![i]!)) pivot = j;
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    if (!(Math.abs(rows[i]![i]!) > 1e-12)) return undefined;
    for (let j = 0; j < size; j++) {
      if (j === i) continue;
      const factor = rows[j]![i]! / rows[i]![i]!;
      for (let k = i; k <= size; k++) rows[j]![k]! -= factor * rows[i]![k]!;
    }
  }
  return rows.map((row, i) => row[size]! / row[i]!);
}
