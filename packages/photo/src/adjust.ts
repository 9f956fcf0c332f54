import type { Layout, PhotoMarkers } from './adjustmentLayout.ts';
import { adjustmentProblem } from './adjustmentProblem.ts';
import type { Camera } from './camera.ts';
import { leastSquares } from './leastSquares.ts';
import type { Ruler, Tape } from './reading.ts';
import type { Paper } from './referenceSheet.ts';

export interface AdjustInput {
  readonly photos: readonly PhotoMarkers[];
  readonly paper: Paper;
  readonly ruler?: Ruler;
  readonly tapes: readonly Tape[];
  /** Standard deviation of the film's height about its plane, mm. */
  readonly heightSigma: number;
}

/** How one taped distance agrees with everything else. */
export interface TapeCheck {
  readonly tape: Tape;
  /** The distance all other readings and the photos give, mm. */
  readonly predicted: number;
  /** Standard deviation of that prediction, mm. */
  readonly sigma: number;
  /** (reading - predicted) in standard deviations of the difference. */
  readonly deviation: number;
}

export interface Adjustment {
  readonly layout: Layout;
  readonly unknowns: Float64Array;
  /** n x n, row by row, already multiplied by the variance factor. */
  readonly covariance: Float64Array;
  readonly cameras: readonly Camera[];
  /** RMS of the marker corners' residuals per photo, px. */
  readonly residualPx: readonly number[];
  /** Share of corners kept at full weight. */
  readonly inliers: number;
  readonly tapes: readonly TapeCheck[];
}

/** Corner measurement noise assumed before the residuals are seen, px. */
const CORNER_SIGMA = 0.12;

/**
 * Adjusts lens, photo poses, sheet poses, print scale and ink gain to the marker corners, the ruler reading
 * and the taped distances, all photos together. The world frame is that of the lowest sheet, its centre at
 * the origin, x along the print, z towards the camera.
 *
 * @returns undefined when the photos do not hang together through common sheets, or the start fails
 * @accuracy rendered photos: corners to 0.1 px; positions on the plane as the covariance says
 * @source sources.md#triggs-2000 (bundle adjustment), #huber-1964 (weights)
 */
export function adjust(input: AdjustInput): Adjustment | undefined {
  const first = adjustmentProblem(input, CORNER_SIGMA);
  if (!first) return undefined;
  const rough = leastSquares({ ...first.problem, rounds: 80, wantCovariance: false });
  const sigma = Math.max(0.06, cornerScale(rough.residuals, first.corners) * CORNER_SIGMA);
  const problem = adjustmentProblem(input, sigma)!;
  const answer = leastSquares({ ...problem.problem, start: rough.unknowns, rounds: 40 });
  const { corners, layout } = problem;
  const kept = answer.weights.subarray(0, 2 * corners).filter((w) => w > 0.99).length;
  return {
    layout,
    unknowns: answer.unknowns,
    covariance: answer.covariance,
    cameras: input.photos.map((_, i) => layout.camera(answer.unknowns, i)),
    residualPx: residualPx(input.photos, answer.residuals, problem.sigmas),
    inliers: kept / (2 * corners),
    tapes: tapeChecks(input.tapes, problem.firstTape, answer),
  };
}

/** Robust ratio of the corner residuals to the noise assumed. */
function cornerScale(residuals: Float64Array, corners: number): number {
  const sizes = Array.from(residuals.subarray(0, 2 * corners), Math.abs).sort((a, b) => a - b);
  return 1.4826 * sizes[sizes.length >> 1]!;
}

function residualPx(
  photos: readonly PhotoMarkers[],
  residuals: Float64Array,
  sigmas: Float64Array,
): number[] {
  let at = 0;
  return photos.map(({ markers }) => {
    let sum = 0;
    const end = at + 8 * markers.length;
    for (let i = at; i < end; i++) sum += (residuals[i]! * sigmas[i >> 1]!) ** 2;
    const rms = Math.sqrt(sum / (end - at));
    at = end;
    return rms;
  });
}

/**
 * Each tape against the adjustment without it, by the leave-one-out identity: the residual grows by
 * 1 / (1 - h), h being the reading's leverage.
 */
function tapeChecks(
  tapes: readonly Tape[],
  firstRow: number,
  answer: { residuals: Float64Array; jacobian: Float64Array; covariance: Float64Array },
): TapeCheck[] {
  const n = Math.sqrt(answer.covariance.length);
  return tapes.map((tape, i) => {
    const row = answer.jacobian.subarray((firstRow + i) * n, (firstRow + i + 1) * n);
    let leverage = 0;
    for (let a = 0; a < n; a++) {
      for (let b = 0; b < n; b++) leverage += row[a]! * answer.covariance[a * n + b]! * row[b]!;
    }
    const free = Math.max(1e-9, 1 - leverage);
    const sigma = tape.sigma ?? 0.5;
    // Residuals are (model - reading) / sigma.
    const residual = answer.residuals[firstRow + i]!;
    return {
      tape,
      predicted: tape.length + (residual * sigma) / free,
      sigma: sigma * Math.sqrt(leverage / free),
      deviation: -residual / Math.sqrt(free),
    };
  });
}
