import { chooseRing } from './chooseRing.ts';
import type { RingData, RingFit } from './fitRing.ts';
import type { InkPoint } from './inkCentres.ts';
import type { Ink } from './readInk.ts';

export interface OutlineFit {
  readonly fit: RingFit;
  readonly data: RingData;
  readonly points: readonly InkPoint[];
  /** Share of the way round where ink was measured, 0..1. */
  readonly support: number;
  /** Share of the measured points within 0.8 mm or four scatters of the fit, 0..1. */
  readonly inliers: number;
}

/** Fits lines and arcs to measured ink; undefined when none will do. */
export function fitOutline({ path, points, weights, support }: Ink): OutlineFit | undefined {
  const data: RingData = {
    x: Float64Array.from(points, (p) => p.x),
    y: Float64Array.from(points, (p) => p.y),
    row: Float64Array.from(points, (p) => p.row),
    weight: weights,
    rows: path.length,
  };
  const sums = new Float64Array(3 * path.length);
  points.forEach(({ x, y, row }, i) => {
    sums[3 * row]! += weights[i]! * x;
    sums[3 * row + 1]! += weights[i]! * y;
    sums[3 * row + 2]! += weights[i]!;
  });
  const mean = path.map((p, row) => {
    const w = sums[3 * row + 2]!;
    return w > 0 ? { x: sums[3 * row]! / w, y: sums[3 * row + 1]! / w } : p;
  });
  const seen = Float64Array.from(path, (_, row) => (sums[3 * row + 2]! > 0 ? 1 : 0));
  const fit = chooseRing(mean, seen, data);
  if (!fit) return undefined;
  const near = Math.max(0.8, 4 * fit.scale);
  const inliers = fit.residuals.filter((d) => Math.abs(d) < near).length / Math.max(1, fit.residuals.length);
  return { fit, data, points, support, inliers };
}
