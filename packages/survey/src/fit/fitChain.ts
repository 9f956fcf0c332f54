import type { Outline, Segment } from '@panewright/geometry';
import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { type Chain, looseEdges } from './chain.ts';
import type { ChainFit, FitChainOptions, FitChainRefusal, TracedPoint } from './chainFit.ts';
import { improveChain, type MoveLimits, withoutSlightBreaks } from './chainMoves.ts';
import {
  chainUncertainty,
  describeChain,
  neighbourCorrelation,
  residualsOf,
  robustSigma,
} from './chainUncertainty.ts';
import { firstChain } from './segmentation.ts';
import {
  assignPoints,
  type FitPoints,
  FROM_GUESS,
  type SolvedChain,
  solveChain,
  TO_THE_END,
} from './solveChain.ts';
import { wholeCircle } from './wholeCircle.ts';

const LEAST_POINTS = 12;
/** No trace is finer than this, mm. */
const LEAST_SCATTER = 0.005;
/** Structure is sought with this many points at most; the last fit uses all. */
const MOST_SEARCHED = 700;
/** Share of the least bend that counts as noise while structure is sought. */
const NOISE_OF_BEND = 0.2;

/**
 * The closed chain of lines and arcs that a traced ring of points shows: how many, sharp or tangent joints, re-entrant
 * corners and S-curves as they come. Dynamic programming cuts the ring, moves by evidence (BIC) mend it, and one robust
 * joint fit settles it; smooth joints are tangent by construction.
 *
 * @param traced in order round the ring, either way; mm. Not closed by repeating the first. Designed for 100 to 2000.
 * @returns the outline anticlockwise in the points' frame, its covariance, each edge and corner with sigmas
 * @range the ring does not cross itself; gross outliers up to a tenth of the points
 * @accuracy joints tangent to 1e-6 rad; sigmas to first order, with the correlation of neighbours found
 * @refuses any FitChainRefusal
 * @source sources.md#schwarz-1978, sources.md#holland-welsch-1977, sources.md#huber-1981
 */
export function fitChain(
  traced: readonly TracedPoint[],
  options: FitChainOptions = {},
): Result<ChainFit, FitChainRefusal> {
  const bad = badTrace(traced);
  if (bad) return refuse(bad);
  const clockwise = twiceArea(traced) < 0;
  const ring = clockwise ? traced.toReversed() : traced;
  const stated = traced.every(({ sigma }) => sigma !== undefined);
  const found = structure(fitPoints(ring, options), options);
  if (!found) return refuse({ code: 'TRACE_NO_LINES_OR_ARCS', points: traced.length });
  const { solved, points } = found;
  const most = options.mostEdges ?? 40;
  if (solved.edges.length > most)
    return refuse({ code: 'TRACE_TOO_MANY_EDGES', edges: solved.edges.length, most });
  return report(solved, points, stated, clockwise, options.withResponse ?? false);
}

function badTrace(traced: readonly TracedPoint[]): FitChainRefusal | undefined {
  if (traced.length < LEAST_POINTS) {
    return { code: 'TRACE_TOO_FEW_POINTS', points: traced.length, least: LEAST_POINTS };
  }
  for (const [index, { x, y, sigma }] of traced.entries()) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return { code: 'TRACE_POINT_NOT_FINITE', index };
    if (sigma !== undefined && !(sigma > 0 && sigma < Number.POSITIVE_INFINITY)) {
      return { code: 'TRACE_SIGMA_NOT_POSITIVE', index, sigma };
    }
  }
  const area = twiceArea(traced) / 2;
  return Math.abs(area) < 1 ? { code: 'TRACE_ENCLOSES_NOTHING', area } : undefined;
}

const twiceArea = (ring: readonly TracedPoint[]) =>
  ring.reduce((sum, { x, y }, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return sum + (x - ring[0]!.x) * (next.y - ring[0]!.y) - (next.x - ring[0]!.x) * (y - ring[0]!.y);
  }, 0);

function fitPoints(ring: readonly TracedPoint[], { correlation = mm(0) }: FitChainOptions): FitPoints {
  const x = Float64Array.from(ring, (point) => point.x);
  const y = Float64Array.from(ring, (point) => point.y);
  const count = ring.length;
  const fallback = Math.max(measuredScatter(x, y), LEAST_SCATTER);
  const sigma = Float64Array.from(ring, (point) => point.sigma ?? fallback);
  const perimeter = x.reduce(
    (sum, at, i) => sum + Math.hypot(x[(i + 1) % count]! - at, y[(i + 1) % count]! - y[i]!),
    0,
  );
  const weight = new Float64Array(count).fill(
    correlation > 0 ? Math.min(1, perimeter / count / correlation) : 1,
  );
  return { x, y, sigma, weight };
}

/** Sigma across the line from second differences, which straight lines and wide arcs hardly touch. */
function measuredScatter(x: Float64Array, y: Float64Array): number {
  const count = x.length;
  const second = x.map((_, i) => {
    const [a, b] = [(i + count - 1) % count, (i + 1) % count];
    const chord = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) || 1;
    const across = (x[b]! - x[a]!) * (y[i]! - y[a]!) - (y[b]! - y[a]!) * (x[i]! - x[a]!);
    return across / chord / Math.sqrt(1.5);
  });
  return robustSigma(second);
}

/** Which edges there are. Bends well below the least that matters count as noise here, not in the sigmas told. */
function structure(
  points: FitPoints,
  options: FitChainOptions,
): { readonly solved: SolvedChain; readonly points: FitPoints } | undefined {
  const leastSagitta = options.leastSagitta ?? 1;
  const limits = { leastSagitta, leastRadius: options.leastRadius ?? 2 };
  const coarse = {
    ...points,
    sigma: points.sigma.map((sigma) => Math.hypot(sigma, NOISE_OF_BEND * leastSagitta)),
  };
  const searched = thinned(coarse);
  const circle = wholeCircle(searched);
  const guess = firstChain(coarse);
  const slight = guess && withoutSlightBreaks(guess, leastSagitta);
  const first = slight && slight.edges.length > 1 ? solveGuess(slight, searched) : undefined;
  const improved = first && soberly(improveChain(first, searched, limits), searched, limits);
  const best = circle && (!improved || circle.score < improved.score) ? circle : improved;
  if (!best) return undefined;
  // Cauchy's weights suit a scatter as wide as the one that is there.
  const rough = { ...best, assigned: assignPoints(best.edges, points) };
  const wide = robustSigma(residualsOf(rough, points).map((residual, i) => residual / points.sigma[i]!));
  const wider = { ...points, sigma: points.sigma.map((sigma) => sigma * Math.max(wide, 1)) };
  const solved =
    best === circle
      ? wholeCircle(wider)
      : solveChain(best.chain, wider, rough.assigned, {
          scales: TO_THE_END,
          tolerance: 1e-9,
          mostSteps: 200,
          trial: true,
        });
  return solved && { solved, points: wider };
}

/** Once more with the evidence that correlated neighbours really give: what only followed the hand's wobble goes. */
function soberly(found: SolvedChain, points: FitPoints, limits: MoveLimits): SolvedChain {
  const scaled = residualsOf(found, points).map((residual, i) => residual / points.sigma[i]!);
  const rho = neighbourCorrelation(scaled);
  if (rho === 0) return found;
  const sober = { ...points, weight: points.weight.map((weight) => (weight * (1 - rho)) / (1 + rho)) };
  const again = solveChain(found.chain, sober, found.assigned, { tolerance: 1e-4, trial: true });
  if (!again) return found;
  const improved = improveChain(again, sober, { ...limits, mostShift: limits.leastSagitta });
  return improved.edges.length < found.edges.length ? improved : found;
}

/** As guessed, and with every joint let go: smooth joints on a poor guess may lead astray, loose ones cannot. */
function solveGuess(guess: Chain, points: FitPoints): SolvedChain | undefined {
  const loose = { ...guess, joints: guess.joints.map(() => 'corner' as const) };
  const owner = assignPoints(looseEdges(guess), points);
  const [smooth, free] = [guess, loose].map((chain) =>
    solveChain(chain, points, owner, { scales: FROM_GUESS, tolerance: 1e-5, trial: true }),
  );
  if (!smooth || !free) return smooth ?? free;
  return smooth.score <= free.score ? smooth : free;
}

function thinned(points: FitPoints): FitPoints {
  const count = points.x.length;
  const stride = Math.ceil(count / MOST_SEARCHED);
  if (stride === 1) return points;
  const pick = (values: Float64Array) => values.filter((_, i) => i % stride === 0);
  const weight = pick(points.weight).map((value) => Math.min(1, value * stride));
  return { x: pick(points.x), y: pick(points.y), sigma: pick(points.sigma), weight };
}

function report(
  solved: SolvedChain,
  points: FitPoints,
  stated: boolean,
  clockwise: boolean,
  withResponse: boolean,
): Result<ChainFit, FitChainRefusal> {
  const known = chainUncertainty(solved, points, stated);
  if (!known) return refuse({ code: 'TRACE_NO_LINES_OR_ARCS', points: points.x.length });
  const { layout, edges } = solved;
  const sigma = points.sigma.map((each) => Math.max(each, known.scatter));
  const inliers =
    known.residuals.reduce((sum, r, i) => sum + (Math.abs(r) < 3 * sigma[i]! ? 1 : 0), 0) / sigma.length;
  if (inliers < 0.5) return refuse({ code: 'TRACE_MISFIT', share: inliers, scatter: mm(known.scatter) });
  const asGiven = <T>(values: readonly T[]) => (clockwise ? values.toReversed() : values);
  const { size } = layout;
  return ok({
    outline: outlineOf(solved),
    ...describeChain(solved, known.covariance),
    unknowns: unknownNames(solved),
    values: Array.from(solved.parameters),
    covariance: Array.from({ length: size }, (_, i) =>
      Array.from(known.covariance.subarray(i * size, (i + 1) * size)),
    ),
    scatter: mm(known.scatter),
    correlatedShare: known.correlation.share,
    correlationLength: mm(known.correlation.length),
    correlationFactor: known.correlationFactor,
    inliers,
    residuals: asGiven(Array.from(known.residuals)),
    edgeOfPoint: asGiven(Array.from(solved.assigned, (owner) => owner % edges.length)),
    ...(withResponse ? { response: known.response.map((row) => asGiven(Array.from(row))) } : {}),
  });
}

export function outlineOf({ edges, chain }: SolvedChain): Outline {
  const segments = edges.map(({ curvature, length }, k): Segment => {
    const next = edges[(k + 1) % edges.length]!;
    const to = { x: mm(next.x), y: mm(next.y) };
    return chain.edges[k]!.kind === 'line'
      ? { kind: 'line', to }
      : { kind: 'arc', to, bulge: Math.tan((curvature * length) / 4) };
  });
  return { segments: segments as unknown as Outline['segments'] };
}

function unknownNames({ layout, edges }: SolvedChain): readonly string[] {
  const names = ['start.x', 'start.y', 'start.heading'];
  edges.forEach((_, k) => {
    if (layout.turn[k]! >= 0) names[layout.turn[k]!] = `edge${k}.turn`;
    names[layout.length[k]!] = `edge${k}.length`;
    if (layout.curvature[k]! >= 0) names[layout.curvature[k]!] = `edge${k}.curvature`;
  });
  return names;
}
