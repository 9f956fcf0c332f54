import { factorise, solveFactored } from '../adjustment/cholesky.ts';
import { normalEquations } from '../adjustment/levenbergMarquardt.ts';
import { type Edge, endOf, footAlong } from './arcFrame.ts';
import { stateSlopes } from './chain.ts';
import { dependence } from './closure.ts';
import { type FitPoints, type RadiusReading, reduce, type SolvedChain } from './solveChain.ts';

/**
 * How each unknown of a solved chain answers when an observation moves by 1 mm: a point across the outline (to its
 * left), then any radius readings. Rows are unknowns, columns observations. Those that close the chain follow the rest.
 *
 * @returns undefined when the observations do not determine the chain
 * @source least squares: (JᵀWJ)⁻¹ JᵀW
 */
export function chainResponse(
  solved: SolvedChain,
  points: FitPoints,
  radii: readonly RadiusReading[] = [],
): readonly Float64Array[] | undefined {
  const { edges, layout, closure } = solved;
  const slopes = stateSlopes(edges, layout);
  const follow = dependence(slopes, layout, closure);
  const rows = points.x.length + radii.length;
  const sigmas = [...points.sigma, ...radii.map(({ sigma }) => sigma)];
  const jacobian = reduce(offsetRows(solved, points, slopes, radii), rows, layout, closure, slopes);
  const free = closure.free.length;
  const { normal } = normalEquations(
    { residuals: new Float64Array(rows), jacobian: jacobian ?? new Float64Array(rows * free) },
    free,
  );
  const factor = factorise(normal, free);
  if (!factor || !follow) return undefined;
  const response = Array.from({ length: layout.size }, () => new Float64Array(rows));
  for (let row = 0; row < rows; row++) {
    const pull = jacobian!.slice(row * free, (row + 1) * free).map((value) => value / sigmas[row]!);
    const moved = solveFactored(factor, pull);
    closure.free.forEach((i, f) => {
      response[i]![row] = moved[f]!;
    });
    closure.dependent.forEach((i, d) => {
      response[i]![row] = moved.reduce((sum, value, f) => sum + value * follow[d]![f]!, 0);
    });
  }
  return response;
}

/** Covariance of the unknowns when the observations err independently by their sigmas; row by row. */
export function independentCovariance(
  response: readonly Float64Array[],
  sigmas: ArrayLike<number>,
): Float64Array {
  const size = response.length;
  const covariance = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    const weighted = response[i]!.map((value, row) => value * sigmas[row]! ** 2);
    for (let j = 0; j <= i; j++) {
      const other = response[j]!;
      let sum = 0;
      for (let row = 0; row < weighted.length; row++) sum += weighted[row]! * other[row]!;
      covariance[i * size + j] = sum;
      covariance[j * size + i] = sum;
    }
  }
  return covariance;
}

/** For each observation, how what it observes changes by each unknown, over the observation's sigma. */
export function offsetRows(
  { edges, layout, assigned }: SolvedChain,
  points: FitPoints,
  slopes: readonly Float64Array[],
  radii: readonly RadiusReading[] = [],
): Float64Array {
  const { size } = layout;
  const count = points.x.length;
  const rows = new Float64Array((count + radii.length) * size);
  points.x.forEach((px, row) => {
    const edge = edges[assigned[row]!]!;
    const [dx, dy] = [px - edge.x, points.y[row]! - edge.y];
    const u = Math.cos(edge.heading) * dx + Math.sin(edge.heading) * dy;
    const v = Math.cos(edge.heading) * dy - Math.sin(edge.heading) * dx;
    const gradient = offsetGradient(edge, assigned[row]!, footAlong(edge, u, v), slopes, layout, size);
    for (let i = 0; i < size; i++) rows[row * size + i] = gradient[i]! / points.sigma[row]!;
  });
  radii.forEach(({ edge, sigma }, k) => {
    const { curvature } = edges[edge]!;
    rows[(count + k) * size + layout.curvature[edge]!] = -Math.sign(curvature) / curvature ** 2 / sigma;
  });
  return rows;
}

/** How the place of the edge, `along` mm from its start, moves to the left by each unknown. */
export function offsetGradient(
  { heading, curvature }: Edge,
  k: number,
  along: number,
  slopes: readonly Float64Array[],
  layout: SolvedChain['layout'],
  size: number,
): Float64Array {
  const state = slopes[k]!;
  const end = endOf({ x: 0, y: 0, heading, length: along, curvature });
  const [nx, ny] = [-Math.sin(end.heading), Math.cos(end.heading)];
  const lever = nx * -end.y + ny * end.x;
  const gradient = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    gradient[i] = nx * state[i]! + ny * state[size + i]! + lever * state[2 * size + i]!;
  }
  // An arc that bends by dκ more leaves its tangent by dκ along²/2 to second order; exactly, with φ = κ·along:
  if (layout.curvature[k]! >= 0) gradient[layout.curvature[k]!]! += bendOffset(curvature, along);
  return gradient;
}

/** ∂(offset)/∂κ at a fixed place of the arc: (1 − cos φ) / κ², tending to along² / 2. */
function bendOffset(curvature: number, along: number): number {
  const angle = curvature * along;
  if (Math.abs(angle) < 1e-3) return (along * along) / 2;
  return (1 - Math.cos(angle)) / (curvature * curvature);
}
