import { edgesOf, type Layout } from './chain.ts';
import type { ChainFit } from './chainFit.ts';
import { describeChain } from './chainUncertainty.ts';

/**
 * A fit whose uncertainty also holds errors that its points share: a camera's, a sheet's, a scale's.
 *
 * @param fit made with `withResponse`
 * @param shifts for each independent source of error, its one-sigma effect: how far each point, as given, moves to the
 *   left of the outline, mm
 * @returns the same outline; covariance, edges and corners with the larger sigmas
 * @accuracy first order: a source whose effect is large is best given scaled down, and its square scaled up
 * @source propagation of covariance, C + Σ (R s)(R s)ᵀ
 */
export function withSharedErrors(fit: ChainFit, shifts: readonly (readonly number[])[]): ChainFit {
  const { response, unknowns } = fit;
  if (!response) throw new RangeError('Shared errors need a fit made with its response.');
  const covariance = fit.covariance.map((row) => [...row]);
  for (const shift of shifts) {
    const moved = response.map((row) => row.reduce((sum, value, i) => sum + value * shift[i]!, 0));
    moved.forEach((a, i) => {
      moved.forEach((b, j) => {
        covariance[i]![j]! += a * b;
      });
    });
  }
  const layout = layoutFrom(unknowns, fit.edges.length, fit);
  const edges = edgesOf(fit.values, layout);
  const sharp = new Set(fit.corners.flatMap(({ kind, edge }) => (kind === 'sharp' ? [edge] : [])));
  const chain = {
    edges: fit.edges.map(({ kind, from, sweep }) => ({ kind, x: from.x, y: from.y, sweep })),
    joints: fit.edges.map((_, k) => (sharp.has(k) ? ('corner' as const) : ('tangent' as const))),
  };
  const assigned = Int32Array.from(fit.edgeOfPoint);
  const described = describeChain({ edges, layout, chain, assigned }, Float64Array.from(covariance.flat()));
  return { ...fit, ...described, covariance };
}

/** The columns by their names; in a round opening both halves share the one curvature. */
function layoutFrom(unknowns: readonly string[], count: number, fit: ChainFit): Layout {
  const column = (k: number, of: string) => unknowns.indexOf(`edge${k}.${of}`);
  const each = Array.from({ length: count }, (_, k) => k);
  return {
    size: unknowns.length,
    turn: each.map((k) => column(k, 'turn')),
    length: each.map((k) => column(k, 'length')),
    curvature: each.map((k) => {
      const own = column(k, 'curvature');
      return own < 0 && fit.edges[k]!.kind === 'arc' ? column((k + 1) % count, 'curvature') : own;
    }),
    closesTangent: !fit.corners.some(({ kind, edge }) => kind === 'sharp' && edge === 0),
  };
}
