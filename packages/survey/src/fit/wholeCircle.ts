import { levenbergMarquardt } from '../adjustment/levenbergMarquardt.ts';
import { chainOf, edgesOf, type Layout } from './chain.ts';
import { type Circle, fitCircle } from './circleFits.ts';
import { CAUCHY, cauchyLoss, type FitPoints, type SolvedChain } from './solveChain.ts';

/**
 * A round opening: one circle, told as a chain of two half circles that share their unknowns. The start lies due east of
 * the centre and heads north; its two unknowns and the common curvature are all there is, so the length follows.
 */
export function wholeCircle(points: FitPoints): SolvedChain | undefined {
  const pairs = Array.from(points.x, (x, i) => ({ x, y: points.y[i]! }));
  const start = fitCircle(pairs, 'taubin');
  if (!start.ok || !nearlyRound(start.value, pairs)) return undefined;
  let at = [start.value.x, start.value.y, start.value.radius];
  for (const scale of [8 * CAUCHY, 2 * CAUCHY, CAUCHY]) {
    const solved = levenbergMarquardt({ start: at, evaluate: circleRows(points, scale), tolerance: 1e-12 });
    if (!solved.ok) return undefined;
    at = Array.from(solved.value.parameters);
  }
  const [cx, cy, radius] = at as [number, number, number];
  if (!(radius > 0)) return undefined;
  return asChain(cx, cy, radius, points);
}

/** Most points within a tenth of the radius: otherwise it is no circle, and not worth a robust fit. */
function nearlyRound(
  { x, y, radius }: Circle,
  pairs: readonly { readonly x: number; readonly y: number }[],
): boolean {
  const near = pairs.filter((pair) => Math.abs(Math.hypot(pair.x - x, pair.y - y) - radius) < radius / 10);
  return near.length > 0.7 * pairs.length;
}

function circleRows({ x, y, sigma, weight }: FitPoints, scale: number) {
  return ([cx, cy, r]: Float64Array) => {
    const residuals = new Float64Array(x.length);
    const jacobian = new Float64Array(3 * x.length);
    for (let i = 0; i < x.length; i++) {
      const [dx, dy] = [x[i]! - cx!, y[i]! - cy!];
      const far = Math.hypot(dx, dy) || 1e-12;
      const plain = (far - r!) / sigma[i]!;
      const bent = Math.sqrt(cauchyLoss(plain, scale));
      const root = Math.sqrt(weight[i]!);
      const bend = bent > 1e-9 ? Math.abs(plain) / (bent * (1 + (plain / scale) ** 2)) : 1;
      residuals[i] = root * Math.sign(plain) * bent;
      const factor = (root * bend) / sigma[i]!;
      jacobian.set([(-factor * dx) / far, (-factor * dy) / far, -factor], 3 * i);
    }
    return { residuals, jacobian };
  };
}

/** Both half circles read the same columns: x, y of the start, and the curvature. The heading is not free. */
function asChain(cx: number, cy: number, radius: number, points: FitPoints): SolvedChain {
  const half = Math.PI * radius;
  const layout: Layout = { size: 6, turn: [-1, -1], length: [3, 5], curvature: [4, 4], closesTangent: true };
  const parameters = Float64Array.of(cx + radius, cy, Math.PI / 2, half, 1 / radius, half);
  const edges = edgesOf(parameters, layout);
  const kinds = edges.map(({ x, y }) => ({ kind: 'arc' as const, x, y, sweep: Math.PI }));
  const chain = chainOf(parameters, layout, { edges: kinds, joints: ['tangent', 'tangent'] });
  const assigned = Int32Array.from(points.y, (y) => (y >= cy ? 0 : 1));
  const observations = points.weight.reduce((sum, weight) => sum + weight, 0);
  const misfit = points.x.reduce((sum, x, i) => {
    const distance = Math.hypot(x - cx, points.y[i]! - cy) - radius;
    return sum + points.weight[i]! * cauchyLoss(distance / points.sigma[i]!, CAUCHY);
  }, 0);
  const score = misfit + 3 * Math.log(observations);
  const follow = [
    [0, 0, 0],
    [0, 0, -half * radius],
    [0, 0, -half * radius],
  ];
  const closure = { dependent: [2, 3, 5], free: [0, 1, 4], follow };
  return { chain, layout, closure, parameters, edges, assigned, score };
}
