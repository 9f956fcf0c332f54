import { area } from '@panewright/geometry';
import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { type Chain, type Joint, smoothed, stateSlopes, wrap } from '../fit/chain.ts';
import { chainResponse, offsetRows } from '../fit/chainResponse.ts';
import { describeChain, residualsOf } from '../fit/chainUncertainty.ts';
import { outlineOf } from '../fit/fitChain.ts';
import { type Primitive, primitiveFit } from '../fit/primitiveCost.ts';
import { headingAt, meet, sweepAbout } from '../fit/segmentation.ts';
import { type FitPoints, type RadiusReading, type SolvedChain, solveChain } from '../fit/solveChain.ts';
import { crossing } from './crossing.ts';
import type { XY } from './intersectTapes.ts';
import type { NetworkAdjustment } from './markSurvey.ts';
import type { OutlinePlan, OutlinePlanRefusal, PlannedOutline, RunResidual } from './outlinePlan.ts';

/** No robust bending: few points, and a wrong one is to be named, not passed over. */
const PLAIN = 1e6;

/**
 * The outline through adjusted points, told which runs are straight or curved and how they join. Runs pass as near to
 * their points as the tapes' accuracy asks; the points' full covariance is carried to every sigma.
 *
 * @param network adjusted points, mm
 * @returns outline anticlockwise in the network's frame; edges include the roundings
 * @accuracy weights take each point alone, the stated sigmas take all correlations
 * @refuses any OutlinePlanRefusal
 * @source least squares with known covariance, C_p = R C_d Rᵀ
 */
export function fitOutline(
  network: NetworkAdjustment,
  plan: OutlinePlan,
): Result<PlannedOutline, OutlinePlanRefusal> {
  const bad = badPlan(network, plan);
  if (bad) return refuse(bad);
  const place = new Map(network.points.map(({ name }, i) => [name, i]));
  const taken = plan.runs.flatMap(({ points }, run) =>
    points.map((name) => ({ run, name, index: place.get(name)! })),
  );
  const at = (index: number): XY => network.points[index]!.at;
  const fits = plan.runs.map(({ kind, points }) =>
    runFit(
      kind,
      points.map((name) => at(place.get(name)!)),
    ),
  );
  const guess = guessedChain(
    plan,
    fits,
    plan.runs.map(({ points }) => points.map((name) => at(place.get(name)!))),
  );
  if (guess.overlap) return refuse(guess.overlap);
  const points: FitPoints = {
    x: Float64Array.from(taken, ({ index }) => at(index).x),
    y: Float64Array.from(taken, ({ index }) => at(index).y),
    sigma: Float64Array.from(taken, ({ index }) =>
      Math.max(network.points[index]!.ellipse.major, LEAST_SIGMA),
    ),
    weight: new Float64Array(taken.length).fill(1),
  };
  const assigned = Int32Array.from(taken, ({ run }) => guess.edgeOfRun[run]!);
  const options = {
    scales: [PLAIN],
    keepAssigned: true,
    radii: guess.radii,
    tolerance: 1e-12,
    mostSteps: 200,
  };
  const solved = solveChain(guess.chain, points, assigned, { ...options, trial: true });
  if (!solved || astray(solved, points)) return refuse({ code: 'OUTLINE_DOES_NOT_CLOSE' });
  const response = chainResponse(solved, points, guess.radii);
  if (!response) return refuse(leastDetermined(plan));
  return report(network, taken, points, guess.radii, solved, response);
}

/** A chain that left its points altogether: runs told out of order, or clockwise. */
function astray(solved: SolvedChain, points: FitPoints): boolean {
  const size = Math.hypot(spanOf(points.x), spanOf(points.y));
  if (!(area(outlineOf(solved)) > 0)) return true;
  return residualsOf(solved, points).some((residual) => !(Math.abs(residual) < ASTRAY * size));
}

const spanOf = (values: Float64Array) => Math.max(...values) - Math.min(...values);
/** Share of the opening's size; a bow or a blunder is less. */
const ASTRAY = 0.1;

/** Weights stay finite for a point that was given as fixed, mm. */
const LEAST_SIGMA = 0.01;

function badPlan(
  { points }: NetworkAdjustment,
  { runs, joints }: OutlinePlan,
): OutlinePlanRefusal | undefined {
  if (runs.length < 2) return { code: 'OUTLINE_TOO_FEW_RUNS', runs: runs.length };
  if (joints.length !== runs.length) {
    return { code: 'OUTLINE_JOINTS_UNEQUAL', runs: runs.length, joints: joints.length };
  }
  const names = new Set(points.map(({ name }) => name));
  for (const [run, { kind, points: on }] of runs.entries()) {
    for (const name of on) if (!names.has(name)) return { code: 'OUTLINE_POINT_UNKNOWN', name, run };
    const need = needed(kind, joints[run]!.kind, joints[(run + 1) % runs.length]!.kind);
    if (on.length < need) return { code: 'OUTLINE_RUN_UNDETERMINED', run, points: on.length, need };
  }
  for (const [joint, told] of joints.entries()) {
    const before = runs[(joint + runs.length - 1) % runs.length]!;
    if (told.kind === 'smooth' && runs[joint]!.kind === 'line' && before.kind === 'line') {
      return { code: 'OUTLINE_LINES_JOIN_SMOOTHLY', joint };
    }
    if (told.kind !== 'round') continue;
    if (!(told.radius > 0)) return { code: 'OUTLINE_RADIUS_NOT_POSITIVE', joint, radius: told.radius };
    if (!(told.sigma > 0)) return { code: 'OUTLINE_SIGMA_NOT_POSITIVE', joint, sigma: told.sigma };
  }
  return undefined;
}

/** Two points make a line and three a circle; the first guess asks for that much even where smooth joints would help. */
const needed = (kind: 'line' | 'arc', before: string, after: string) =>
  kind === 'line' ? 2 : before === 'smooth' && after === 'smooth' ? 2 : 3;

const leastDetermined = ({ runs }: OutlinePlan): OutlinePlanRefusal => {
  const run = runs.reduce(
    (least, each, k) => (each.points.length < runs[least]!.points.length ? k : least),
    0,
  );
  const points = runs[run]!.points.length;
  return { code: 'OUTLINE_RUN_UNDETERMINED', run, points, need: points + 1 };
};

function runFit(kind: 'line' | 'arc', on: readonly XY[]): Primitive {
  const ones = new Float64Array(on.length).fill(1);
  const x = Float64Array.from(on, (point) => point.x);
  const y = Float64Array.from(on, (point) => point.y);
  return primitiveFit({ x, y, sigma: ones, weight: ones }, ones, 0, on.length, kind);
}

/** The chain with a rounding before each run that has one; set back along its neighbours by the tangent length. */
function guessedChain(plan: OutlinePlan, fits: readonly Primitive[], on: readonly (readonly XY[])[]) {
  const count = fits.length;
  const corners = fits.map((fit, k) => {
    const before = fits[(k + count - 1) % count]!;
    const [last, first] = [on[(k + count - 1) % count]!.at(-1)!, on[k]![0]!];
    const between = { x: (last.x + first.x) / 2, y: (last.y + first.y) / 2 };
    const joint = plan.joints[k]!;
    const corner = (joint.kind === 'smooth' ? meet : crossing)(before, fit, between) ?? between;
    const [leaving, coming] = [headingAt(before, corner), headingAt(fit, corner)];
    const turn = wrap(coming - leaving);
    const setback = joint.kind === 'round' ? joint.radius * Math.tan(Math.abs(turn) / 2) : 0;
    const back = (heading: number, by: number) => ({
      x: corner.x + by * Math.cos(heading),
      y: corner.y + by * Math.sin(heading),
    });
    return { joint, turn, corner, setback, end: back(leaving, -setback), start: back(coming, setback) };
  });
  const edges: { kind: 'line' | 'arc'; x: number; y: number; sweep: number }[] = [];
  const joints: Joint[] = [];
  const radii: RadiusReading[] = [];
  const edgeOfRun = fits.map((fit, k) => {
    const { joint, turn, end, start } = corners[k]!;
    if (joint.kind === 'round') {
      radii.push({ edge: edges.length, radius: joint.radius, sigma: joint.sigma });
      edges.push({ kind: 'arc', ...end, sweep: turn });
      joints.push('tangent');
    }
    joints.push(joint.kind === 'sharp' ? 'corner' : 'tangent');
    const finish = corners[(k + 1) % count]!.end;
    return (
      edges.push({
        kind: plan.runs[k]!.kind,
        ...start,
        sweep: fit.kind === 'arc' ? sweepAbout(fit, start, finish) : 0,
      }) - 1
    );
  });
  const chain: Chain = smoothed({ edges, joints });
  const overlap = fits.flatMap((_, run): OutlinePlanRefusal[] => {
    const [here, next] = [corners[run]!, corners[(run + 1) % count]!];
    const length = mm(Math.hypot(next.corner.x - here.corner.x, next.corner.y - here.corner.y));
    const taken = mm(here.setback + next.setback);
    return taken > length ? [{ code: 'OUTLINE_RADII_TOO_LARGE', run, length, taken }] : [];
  })[0];
  return { chain, radii, edgeOfRun, overlap };
}

/**
 * Sigmas from the covariance of all points: what is observed is each point's offset across its run, and two points'
 * offsets err together as their coordinates do.
 */
function report(
  network: NetworkAdjustment,
  taken: readonly { readonly run: number; readonly name: string; readonly index: number }[],
  points: FitPoints,
  radii: readonly RadiusReading[],
  solved: SolvedChain,
  response: readonly Float64Array[],
): Result<PlannedOutline, OutlinePlanRefusal> {
  const normals = taken.map((_, row) => leftOf(solved, points, row));
  const rows = taken.length + radii.length;
  const observed = Array.from({ length: rows }, (_, a) =>
    Array.from({ length: rows }, (__, b) => {
      if (a >= taken.length || b >= taken.length) return a === b ? radii[a - taken.length]!.sigma ** 2 : 0;
      return offsetCovariance(network.covariance, taken[a]!.index, normals[a]!, taken[b]!.index, normals[b]!);
    }),
  );
  const covariance = sandwich(response, observed);
  const residuals = residualsOf(solved, points);
  const sigmas = residualSigmas(solved, points, radii, response, observed);
  return ok({
    outline: outlineOf(solved),
    ...describeChain(solved, Float64Array.from(covariance.flat())),
    residuals: taken.map(({ run, name }, row): RunResidual => {
      const residual = mm(residuals[row]!);
      const sigma = sigmas[row]!;
      const own = Math.sqrt(observed[row]![row]!);
      return sigma > 1e-4 * own
        ? { run, name, residual, standardised: residual / sigma }
        : { run, name, residual };
    }),
  });
}

/** Unit normal to the left of the outline beside a point. */
function leftOf({ edges, assigned }: SolvedChain, points: FitPoints, row: number): XY {
  const { x, y, heading, curvature } = edges[assigned[row]!]!;
  const [dx, dy] = [points.x[row]! - x, points.y[row]! - y];
  // The gradient of the signed distance: the start's normal less curvature times the way from the start.
  const [gx, gy] = [-Math.sin(heading) - curvature * dx, Math.cos(heading) - curvature * dy];
  const size = Math.hypot(gx, gy);
  return { x: gx / size, y: gy / size };
}

function offsetCovariance(
  covariance: readonly (readonly number[])[],
  i: number,
  a: XY,
  j: number,
  b: XY,
): number {
  const block = (row: number, column: number) => covariance[2 * i + row]![2 * j + column]!;
  return a.x * (block(0, 0) * b.x + block(0, 1) * b.y) + a.y * (block(1, 0) * b.x + block(1, 1) * b.y);
}

/** M C Mᵀ. */
function sandwich(
  matrix: readonly ArrayLike<number>[],
  covariance: readonly (readonly number[])[],
): number[][] {
  const half = matrix.map((row) =>
    covariance.map((column) => column.reduce((sum, value, k) => sum + value * row[k]!, 0)),
  );
  return half.map((left) => matrix.map((row) => left.reduce((sum, value, k) => sum + value * row[k]!, 0)));
}

/** Residual = offset − what the chain makes of all offsets: its covariance is (I − J R) C (I − J R)ᵀ. */
function residualSigmas(
  solved: SolvedChain,
  points: FitPoints,
  radii: readonly RadiusReading[],
  response: readonly Float64Array[],
  observed: readonly (readonly number[])[],
): readonly number[] {
  const { size } = solved.layout;
  const slopes = offsetRows(solved, points, stateSlopes(solved.edges, solved.layout), radii);
  const sigmas = [...points.sigma, ...radii.map(({ sigma }) => sigma)];
  const left = observed.map((_, a) =>
    observed.map((__, b) => {
      let made = 0;
      for (let i = 0; i < size; i++) made += slopes[a * size + i]! * sigmas[a]! * response[i]![b]!;
      return (a === b ? 1 : 0) - made;
    }),
  );
  return sandwich(left, observed).map((row, k) => Math.sqrt(Math.max(row[k]!, 0)));
}
