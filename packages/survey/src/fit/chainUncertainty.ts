import { mm, radian } from '@panewright/quantity';
import { quadratic } from '../adjustment/statistics.ts';
import { endOf, signedDistance } from './arcFrame.ts';
import { stateSlopes, wrap } from './chain.ts';
import type { FittedCorner, FittedEdge } from './chainFit.ts';
import { chainResponse, independentCovariance, offsetGradient, offsetRows } from './chainResponse.ts';
import { type CorrelatedScatter, correlatedScatter, exponentialSum } from './correlatedScatter.ts';
import { CAUCHY, type FitPoints, type SolvedChain } from './solveChain.ts';

export interface ChainUncertainty {
  readonly response: readonly Float64Array[];
  readonly covariance: Float64Array;
  readonly scatter: number;
  readonly correlation: CorrelatedScatter;
  readonly correlationFactor: number;
  readonly residuals: Float64Array;
}

/** Signed normal distance of each point from its edge, mm. */
export function residualsOf({ edges, assigned }: SolvedChain, points: FitPoints): Float64Array {
  return points.x.map((px, i) => {
    const edge = edges[assigned[i]!]!;
    const [dx, dy] = [px - edge.x, points.y[i]! - edge.y];
    const [cos, sin] = [Math.cos(edge.heading), Math.sin(edge.heading)];
    return signedDistance(cos * dx + sin * dy, cos * dy - sin * dx, edge.curvature);
  });
}

const median = (values: Float64Array) => {
  const sorted = values.slice().sort();
  const half = sorted.length / 2;
  return Number.isInteger(half) ? (sorted[half - 1]! + sorted[half]!) / 2 : sorted[Math.floor(half)]!;
};

/** 1.4826 times the median absolute value: the sigma of a normal scatter. */
export const robustSigma = (residuals: Float64Array): number => 1.4826 * median(residuals.map(Math.abs));

/**
 * Covariance of the chain's unknowns: Huber's for a robust fit, (mean ψ²) / (mean ψ′)² · (JᵀJ)⁻¹, never less than the
 * stated sigmas give, with neighbours that err alike taken as such: R C Rᵀ, C fading along the line.
 *
 * @param stated the sigmas are known, not measured from the scatter
 * @source sources.md#huber-1981; propagation of covariance
 */
export function chainUncertainty(
  solved: SolvedChain,
  points: FitPoints,
  stated: boolean,
): ChainUncertainty | undefined {
  const residuals = residualsOf(solved, points);
  const scaled = residuals.map((residual, i) => residual / points.sigma[i]!);
  const shares = scaled.map((z) => 1 / (1 + (z / CAUCHY) ** 2));
  const meanSquare = scaled.reduce((sum, z, i) => sum + (shares[i]! * z) ** 2, 0) / scaled.length;
  const slope =
    scaled.reduce((sum, z, i) => sum + shares[i]! ** 2 * (1 - (z / CAUCHY) ** 2), 0) / scaled.length;
  const efficiency = meanSquare / Math.max(slope, 0.1) ** 2;
  const factor = stated ? Math.max(efficiency, NORMAL_LOSS) : efficiency;
  const response = chainResponse(solved, points);
  if (!response) return undefined;
  const alone = independentCovariance(response, points.sigma);
  const steps = ringSteps(points);
  const step = steps.reduce((sum, each) => sum + each, 0) / steps.length;
  // What the outline took up of the scatter is found from the covariance, and that from the scatter: twice will do.
  let scatter = correlatedScatter(scaled, step, 0);
  let covariance = alone;
  let taken = absorbed(solved, points, alone);
  for (let round = 0; round < 3 && scatter.share > 0; round++) {
    covariance = correlatedCovariance(response, points.sigma, steps, alone, scatter);
    taken = absorbed(solved, points, covariance);
    scatter = correlatedScatter(scaled, step, efficiency * taken);
  }
  return {
    // What the outline took up is missing from the scatter seen.
    covariance: covariance.map((value) => factor * (1 + taken) * value),
    response,
    scatter: robustSigma(residuals),
    correlation: scatter,
    correlationFactor: varianceRatio(covariance, alone),
    residuals,
  };
}

function ringSteps({ x, y }: FitPoints): Float64Array {
  const count = x.length;
  return x.map((at, i) => Math.hypot(x[(i + 1) % count]! - at, y[(i + 1) % count]! - y[i]!));
}

/** R C Rᵀ for scatter of which a share is common to neighbours. */
function correlatedCovariance(
  response: readonly Float64Array[],
  sigmas: Float64Array,
  steps: Float64Array,
  alone: Float64Array,
  { share, length }: CorrelatedScatter,
): Float64Array {
  const size = response.length;
  const scaled = response.map((row) => row.map((value, i) => value * sigmas[i]!));
  const spread = scaled.map((row) => exponentialSum(row, steps, length));
  return alone.map((value, at) => {
    const [row, other] = [scaled[Math.floor(at / size)]!, spread[at % size]!];
    let common = 0;
    for (let i = 0; i < row.length; i++) common += row[i]! * other[i]!;
    return (1 - share) * value + share * common;
  });
}

/** Mean variance of the outline beside its points, in units of their variance. */
function absorbed(solved: SolvedChain, points: FitPoints, covariance: Float64Array): number {
  const { size } = solved.layout;
  const rows = offsetRows(solved, points, stateSlopes(solved.edges, solved.layout));
  const count = points.x.length;
  const stride = Math.ceil(count / MOST_ABSORBING);
  let [sum, taken] = [0, 0];
  for (let row = 0; row < count; row += stride) {
    sum += quadratic(covariance, rows.subarray(row * size, (row + 1) * size));
    taken++;
  }
  return sum / taken;
}

/** Points at which the outline's own variance is looked at. */
const MOST_ABSORBING = 150;

/** How much larger, on the whole, the variances are for the correlation: the geometric mean over the unknowns. */
function varianceRatio(covariance: Float64Array, alone: Float64Array): number {
  const size = Math.sqrt(covariance.length);
  let [sum, counted] = [0, 0];
  for (let i = 0; i < size; i++) {
    const [now, before] = [covariance[i * size + i]!, alone[i * size + i]!];
    if (!(now > 0 && before > 0)) continue;
    sum += Math.log(now / before);
    counted++;
  }
  return counted > 0 ? Math.exp(sum / counted) : 1;
}

/** What Cauchy's weights cost when the scatter is normal: the variance rises by a twentieth. */
const NORMAL_LOSS = 1 / 0.95;

/** Of residuals next to each other on the ring, outliers cut off; 0 unless it is more than chance. */
export function neighbourCorrelation(scaled: Float64Array): number {
  const kept = scaled.map((z) => Math.max(-3, Math.min(3, z)));
  let [products, squares] = [0, 0];
  kept.forEach((z, i) => {
    products += z * kept[(i + 1) % kept.length]!;
    squares += z * z;
  });
  const rho = squares > 0 ? products / squares : 0;
  return rho * Math.sqrt(kept.length) > 2.5 ? Math.min(rho, 0.98) : 0;
}

const BENDS = (20 * Math.PI) / 180;
const point = (x: number, y: number) => ({ x: mm(x), y: mm(y) });

/** What describing needs of a solved chain. */
export type DescribedChain = Pick<SolvedChain, 'edges' | 'layout' | 'chain' | 'assigned'>;

/** Each edge and corner with its sigmas. */
export function describeChain(solved: DescribedChain, covariance: Float64Array) {
  const { edges, layout, chain, assigned } = solved;
  const { size } = layout;
  const slopes = stateSlopes(edges, layout);
  const sigmaOf = (gradient: Float64Array) => Math.sqrt(Math.max(quadratic(covariance, gradient), 0));
  const offset = (k: number, along: number) =>
    sigmaOf(offsetGradient(edges[k]!, k, along, slopes, layout, size));
  const own = (column: number, factor = 1) =>
    factor * Math.sqrt(Math.max(covariance[column * size + column]!, 0));
  const described = edges.map((edge, k): FittedEdge => {
    const end = edges[(k + 1) % edges.length]!;
    const column = layout.curvature[k]!;
    const middleSigma = mm(offset(k, edge.length / 2));
    const round =
      column < 0
        ? {}
        : { radius: mm(1 / Math.abs(edge.curvature)), radiusSigma: mm(own(column, 1 / edge.curvature ** 2)) };
    return {
      kind: chain.edges[k]!.kind,
      from: point(edge.x, edge.y),
      to: point(end.x, end.y),
      length: mm(edge.length),
      lengthSigma: mm(own(layout.length[k]!)),
      heading: radian(wrap(edge.heading)),
      sweep: radian(edge.curvature * edge.length),
      ...round,
      offsetSigma: mm(Math.max(offset(k, 0), middleSigma, offset(k, edge.length))),
      middleSigma,
      points: assigned.reduce((sum, owner) => sum + (owner === k ? 1 : 0), 0),
    };
  });
  return { edges: described, corners: cornersOf(solved, described, covariance, slopes) };
}

function cornersOf(
  { edges, chain, layout }: DescribedChain,
  described: readonly FittedEdge[],
  covariance: Float64Array,
  slopes: readonly Float64Array[],
): readonly FittedCorner[] {
  const { size } = layout;
  return edges.flatMap((edge, k): FittedCorner[] => {
    const corners: FittedCorner[] = [];
    const before = edges[(k + edges.length - 1) % edges.length]!;
    if (chain.joints[k] === 'corner') {
      const [a, b] = [slopes[k]!.subarray(0, size), slopes[k]!.subarray(size, 2 * size)];
      const [xx, yy] = [quadratic(covariance, a), quadratic(covariance, b)];
      const xy =
        (quadratic(
          covariance,
          a.map((value, i) => value + b[i]!),
        ) -
          xx -
          yy) /
        2;
      corners.push({
        kind: 'sharp',
        edge: k,
        at: point(edge.x, edge.y),
        turn: radian(wrap(edge.heading - before.heading - before.curvature * before.length)),
        radius: mm(0),
        sigma: mm(Math.sqrt(Math.max((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy), 0))),
      });
    }
    const { sweep, radius, radiusSigma } = described[k]!;
    if (radius !== undefined && radiusSigma !== undefined && Math.abs(sweep) >= BENDS) {
      const middle = endOf({ ...edge, length: edge.length / 2 });
      const at = point(middle.x, middle.y);
      corners.push({ kind: 'round', edge: k, at, turn: sweep, radius, sigma: radiusSigma });
    }
    return corners;
  });
}
