/**
 * Scatter along the line as a hand makes it: a share of each point's variance that neighbours have in common, fading as
 * exp(−distance / length), and the rest its own.
 */
export interface CorrelatedScatter {
  /** 0 to 1. */
  readonly share: number;
  /** mm along the line. */
  readonly length: number;
}

export const INDEPENDENT: CorrelatedScatter = { share: 0, length: 0 };

/** Autocorrelation is looked at over this much of the line, mm, but no more than a share of it. */
const LOOKED_OVER = 150;
const SHARE_LOOKED_OVER = 1 / 6;
/** Lag-one correlation below this many of its standard errors is chance. */
const SIGNIFICANT = 2.5;
const FADED = 0.15;
const LENGTHS = Array.from({ length: 40 }, (_, i) => 1.15 ** i);

/**
 * Share and length of the correlation from the residuals of a fit.
 *
 * @param scaled residuals over their sigma, in order round the ring; outliers are cut off here
 * @param step mean distance of neighbours, mm
 * @param absorbed mean variance that the fitted outline itself took up, in the residuals' unit: it is missing from every
 *   lag, and put back
 * @source least squares of the autocorrelation on share · exp(−lag / length)
 */
export function correlatedScatter(scaled: Float64Array, step: number, absorbed: number): CorrelatedScatter {
  const kept = scaled.map((z) => Math.max(-3, Math.min(3, z)));
  const count = kept.length;
  const covarianceAt = (lag: number) => {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += kept[i]! * kept[(i + lag) % count]!;
    return sum / count;
  };
  const variance = covarianceAt(0);
  if (!(variance > 0) || (covarianceAt(1) / variance) * Math.sqrt(count) < SIGNIFICANT) return INDEPENDENT;
  const most = Math.max(3, Math.min(Math.ceil(LOOKED_OVER / step), Math.floor(count * SHARE_LOOKED_OVER)));
  const lags = Array.from({ length: most }, (_, k) => k + 1);
  const all = lags.map((lag) => (covarianceAt(lag) + absorbed) / (variance + absorbed));
  // Past the first fading the fit's own bending shows, not the hand's.
  const faded = all.findIndex((value) => value < FADED);
  const seen = faded < 0 ? all : all.slice(0, Math.max(faded, 3));
  let best = { miss: Number.POSITIVE_INFINITY, share: 0, length: step };
  for (const multiple of LENGTHS) {
    const length = multiple * step;
    if (length > 2 * most * step) break;
    const shape = seen.map((_, k) => Math.exp((-(k + 1) * step) / length));
    const inner = shape.reduce((sum, value, k) => sum + value * seen[k]!, 0);
    const share = Math.min(Math.max(inner / shape.reduce((sum, value) => sum + value * value, 0), 0), 1);
    const miss = shape.reduce((sum, value, k) => sum + (share * value - seen[k]!) ** 2, 0);
    if (miss < best.miss) best = { miss, share, length };
  }
  return { share: best.share, length: best.length };
}

/**
 * Σ_j exp(−d(i, j) / length) · x_j for every i, d being the way along the ring; by two recursions each way round.
 *
 * @param steps distance from each point to the next, the last to the first
 */
export function exponentialSum(values: Float64Array, steps: Float64Array, length: number): Float64Array {
  const count = values.length;
  const fade = steps.map((step) => Math.exp(-step / length));
  const sums = values.slice();
  let ahead = 0;
  let behind = 0;
  for (let pass = 0; pass < 2; pass++) {
    for (let i = 0; i < count; i++) {
      const before = (i + count - 1) % count;
      ahead = fade[before]! * (ahead + (pass > 0 || i > 0 ? values[before]! : 0));
      const at = count - 1 - i;
      behind = fade[at]! * (behind + (pass > 0 || i > 0 ? values[(at + 1) % count]! : 0));
      if (pass === 0) continue;
      sums[i]! += ahead;
      sums[at]! += behind;
    }
  }
  return sums;
}
