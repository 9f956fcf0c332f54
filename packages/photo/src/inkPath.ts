import { type Camera, project } from './camera.ts';
import { resampleClosed, smoothClosed } from './closedCurve.ts';
import { type GreyImage, sampleAt } from './image.ts';
import type { PlanePoint } from './planeGrid.ts';

/** The plane around a curve, straightened: `rows` profiles across it, each of `width` samples `step` mm apart. */
export interface Band {
  readonly curve: readonly PlanePoint[];
  readonly normals: readonly PlanePoint[];
  readonly rows: number;
  readonly width: number;
  readonly step: number;
  /** Grey, row by row; NaN where the photo does not reach. Sample k lies (k - (width - 1) / 2) step to the right (outside). */
  readonly grey: Float32Array;
}

/** A closed curve on the ink, one point about every 2 mm, anticlockwise. */
export interface InkPath {
  readonly curve: readonly PlanePoint[];
  /** Mean line contrast along it, 0..0.45. */
  readonly score: number;
  /** Share of the curve with line contrast above 0.08, covered stretches left out. */
  readonly support: number;
  /** Share of the curve that no sheet covers, 0..1. */
  readonly open: number;
}

/** Normals of a closed curve, unit, pointing outside when it runs anticlockwise. */
export function normalsOf(curve: readonly PlanePoint[]): PlanePoint[] {
  const n = curve.length;
  return curve.map((_, i) => {
    const p = curve[(i + n - 2) % n]!;
    const q = curve[(i + 2) % n]!;
    const length = Math.hypot(q.x - p.x, q.y - p.y) || 1;
    return { x: (q.y - p.y) / length, y: -(q.x - p.x) / length };
  });
}

/** Samples a band of half width `reach` mm about a closed curve from the photo itself. */
export function unwrap(
  image: GreyImage,
  camera: Camera,
  curve: readonly PlanePoint[],
  reach: number,
  step: number,
): Band {
  const normals = normalsOf(curve);
  const width = 2 * Math.round(reach / step) + 1;
  const grey = new Float32Array(curve.length * width);
  const pixel = new Float64Array(2);
  curve.forEach((p, row) => {
    const normal = normals[row]!;
    for (let k = 0; k < width; k++) {
      const d = (k - (width - 1) / 2) * step;
      const seen = project(camera, p.x + d * normal.x, p.y + d * normal.y, 0, pixel);
      grey[row * width + k] = seen ? sampleAt(image, pixel[0]!, pixel[1]!) : Number.NaN;
    }
  });
  return { curve, normals, rows: curve.length, width, step, grey };
}

/**
 * How much darker each sample is than the brighter stretch on its darker side, 0..1: a line answers, a step
 * does not. Zero where the band leaves the photo or is covered.
 */
export function lineContrast(band: Band, covered: (x: number, y: number) => boolean): Float32Array {
  const { rows, width, step, grey, curve, normals } = band;
  const out = new Float32Array(grey.length);
  const core = Math.max(1, Math.round(0.8 / step));
  const sideFrom = Math.round(2.4 / step);
  const sideTo = Math.round(7 / step);
  const mean = new Float32Array(width);
  for (let row = 0; row < rows; row++) {
    smoothRow(grey, row * width, width, core, mean);
    for (let k = 0; k < width; k++) {
      const d = (k - (width - 1) / 2) * step;
      const p = curve[row]!;
      const normal = normals[row]!;
      if (covered(p.x + d * normal.x, p.y + d * normal.y)) continue;
      const left = brightest(mean, k - sideTo, k - sideFrom);
      const right = brightest(mean, k + sideFrom, k + sideTo);
      const side = Math.min(left, right);
      const contrast = (side - mean[k]!) / Math.max(side, 25);
      // NaN, where the band leaves the photo, is not above 0 and leaves the 0 standing.
      if (contrast > 0) out[row * width + k] = contrast;
    }
  }
  return out;
}

function smoothRow(grey: Float32Array, start: number, width: number, reach: number, out: Float32Array): void {
  for (let k = 0; k < width; k++) {
    let [sum, count] = [0, 0];
    for (let a = Math.max(0, k - reach); a <= Math.min(width - 1, k + reach); a++) {
      sum += grey[start + a]!;
      count++;
    }
    out[k] = sum / count;
  }
}

/** Largest value of a stretch; the part outside the row is left out, an empty stretch answers NaN. */
function brightest(values: Float32Array, from: number, to: number): number {
  let most = Number.NaN;
  for (let k = Math.max(0, from); k <= Math.min(values.length - 1, to); k++) {
    if (!(values[k]! <= most)) most = values[k]!;
  }
  return most;
}

/**
 * The darkest continuous line round the band: dynamic programming over (row, offset), two rounds so that the
 * ends meet.
 *
 * @param slope most samples the line may move sideways from one row to the next
 * @returns sample index per row
 * @source sources.md#bellman-1957, as used for line following in images
 */
export function darkestPath(
  contrast: Float32Array,
  rows: number,
  width: number,
  slope: number,
  stiffness: number,
) {
  const turns = 2 * rows;
  const from = new Int8Array(turns * width);
  let best = new Float32Array(width);
  let next = new Float32Array(width);
  for (let t = 0; t < turns; t++) {
    const row = (t + (rows >> 1)) % rows;
    for (let k = 0; k < width; k++) {
      let [most, move] = [-1e9, 0];
      for (let s = -slope; s <= slope; s++) {
        const at = k + s;
        if (at < 0 || at >= width) continue;
        const value = best[at]! - stiffness * s * s;
        if (value > most) [most, move] = [value, s];
      }
      next[k] = most + Math.min(0.45, contrast[row * width + k]!);
      from[t * width + k] = move;
    }
    [best, next] = [next, best];
  }
  const path = new Int32Array(rows);
  let k = best.indexOf(Math.max(...best));
  for (let t = turns - 1; t >= 0; t--) {
    if (t >= rows >> 1 && t < rows + (rows >> 1)) path[(t + (rows >> 1)) % rows] = k;
    k += from[t * width + k]!;
  }
  return path;
}

/**
 * Follows the ink near a closed curve: a wide band first, then a narrow one about the path found.
 *
 * @param reach half width of the first band, mm; @param covered whether a sheet hides the ink at a point
 */
export function followInk(
  image: GreyImage,
  camera: Camera,
  start: readonly PlanePoint[],
  reach: number,
  covered: (x: number, y: number) => boolean,
): InkPath {
  let curve = smoothClosed(resampleClosed(start, 2), 3);
  let [score, support, share] = [0, 0, 0];
  for (const [half, step, smoothing] of rounds(reach)) {
    const band = unwrap(image, camera, curve, half, step);
    const contrast = lineContrast(band, covered);
    const fine = step < 0.4;
    const path = darkestPath(contrast, band.rows, band.width, fine ? 6 : 4, fine ? 0.004 : 0.012);
    const points = pointsOn(band, path);
    const found = Array.from(path, (k, row) => contrast[row * band.width + k]!);
    const open = found.filter((_, row) => !covered(points[row]!.x, points[row]!.y));
    score = open.reduce((sum, c) => sum + Math.min(c, 0.45), 0) / Math.max(1, open.length);
    support = open.filter((c) => c > 0.08).length / Math.max(1, open.length);
    share = open.length / found.length;
    curve = smoothClosed(resampleClosed(points, 2), smoothing);
  }
  return { curve, score, support, open: share };
}

/** Half width, sample step (mm) and smoothing (points) of each pass. */
const rounds = (reach: number) =>
  [
    [reach, 0.5, 2],
    [reach / 2, 0.5, 1.5],
    [7.5, 0.25, 1],
  ] as const;

/** The points a path of sample indices stands for. */
export function pointsOn({ curve, normals, width, step }: Band, path: ArrayLike<number>): PlanePoint[] {
  return curve.map((p, row) => {
    const d = (path[row]! - (width - 1) / 2) * step;
    return { x: p.x + d * normals[row]!.x, y: p.y + d * normals[row]!.y };
  });
}
