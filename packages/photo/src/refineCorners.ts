import { type GreyImage, sampleAt } from './image.ts';

export interface PixelPoint {
  readonly x: number;
  readonly y: number;
}

const PROFILES = 60;
const STEP = 0.5;

/** A line a x + b y = c with (a, b) of length 1, and how well it is known. */
interface EdgeLine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Standard deviation of the line's offset, px. */
  readonly sigma: number;
  readonly width: number;
}

export interface RefinedCorners {
  readonly corners: readonly PixelPoint[];
  readonly sigma: number;
  readonly edgeWidth: number;
}

/**
 * Measures the four corners of a marker anew: grey profiles across each outer edge, the centroid of the
 * gradient on each, a robust line through them, and the meets of neighbouring lines.
 *
 * @returns undefined where an edge is hidden, out of frame or without contrast
 * @source common practice in close-range photogrammetry, no source
 */
export function refineCorners(image: GreyImage, corners: readonly PixelPoint[]): RefinedCorners | undefined {
  const lines: EdgeLine[] = [];
  for (let k = 0; k < 4; k++) {
    const line = edgeLine(image, corners[k]!, corners[(k + 1) % 4]!);
    if (!line) return undefined;
    lines.push(line);
  }
  const refined: PixelPoint[] = [];
  for (let k = 0; k < 4; k++) {
    const point = meet(lines[(k + 3) % 4]!, lines[k]!);
    if (Math.hypot(point.x - corners[k]!.x, point.y - corners[k]!.y) > 4) return undefined;
    refined.push(point);
  }
  const sigma = Math.max(...lines.map((line) => line.sigma));
  const edgeWidth = lines.reduce((sum, line) => sum + line.width, 0) / 4;
  return { corners: refined, sigma, edgeWidth };
}

/** Corners run clockwise on the picture, so the outside lies to the left of from -> to in y-down pixels. */
function edgeLine(image: GreyImage, from: PixelPoint, to: PixelPoint): EdgeLine | undefined {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const outward = { x: along.y, y: -along.x };
  const reach = Math.min(5, length / 12);
  const points: number[][] = [];
  for (let i = 0; i < PROFILES; i++) {
    const t = (0.06 + (0.88 * (i + 0.5)) / PROFILES) * length;
    const crossing = gradientCentroid(image, from.x + t * along.x, from.y + t * along.y, outward, reach);
    if (crossing) points.push([t, crossing.offset, crossing.width]);
  }
  if (points.length < PROFILES / 3) return undefined;
  const fit = robustLine(points);
  if (!fit) return undefined;
  const slope = Math.atan(fit.slope);
  const a = outward.x * Math.cos(slope) - along.x * Math.sin(slope);
  const b = outward.y * Math.cos(slope) - along.y * Math.sin(slope);
  const c = a * (from.x + fit.offset * outward.x) + b * (from.y + fit.offset * outward.y);
  const widths = points.map((p) => p[2]!).sort((p, q) => p - q);
  return { a, b, c, sigma: fit.sigma, width: widths[widths.length >> 1]! };
}

/** Where the step from black (inside) to paper (outside) lies, px outward. */
function gradientCentroid(image: GreyImage, x: number, y: number, outward: PixelPoint, reach: number) {
  const count = Math.round((2 * reach) / STEP);
  let previous = sampleAt(image, x - reach * outward.x, y - reach * outward.y);
  let weight = 0;
  let first = 0;
  let second = 0;
  for (let k = 1; k <= count; k++) {
    const d = -reach + k * STEP;
    const value = sampleAt(image, x + d * outward.x, y + d * outward.y);
    const rise = value - previous;
    previous = value;
    if (rise < 4) {
      if (Number.isNaN(rise)) return undefined;
      continue;
    }
    const at = d - STEP / 2;
    weight += rise;
    first += rise * at;
    second += rise * at * at;
  }
  if (weight < 25) return undefined;
  const offset = first / weight;
  return { offset, width: 2.56 * Math.sqrt(Math.max(0, second / weight - offset ** 2)) };
}

/** offset = slope t + constant with Tukey weights; sigma is that of the line in its middle. */
function robustLine(points: readonly (readonly number[])[]) {
  let slope = 0;
  let offset = 0;
  let scale = 2;
  for (let round = 0; round < 12; round++) {
    let [w, wt, wd, wtt, wtd] = [0, 0, 0, 0, 0];
    for (const [t, d] of points as [number, number][]) {
      const u = round === 0 ? 0 : (d - slope * t - offset) / (4.7 * scale);
      const weight = Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0;
      w += weight;
      wt += weight * t;
      wd += weight * d;
      wtt += weight * t * t;
      wtd += weight * t * d;
    }
    const det = w * wtt - wt * wt;
    if (!(det > 1e-9) || w < points.length / 3) return undefined;
    slope = (w * wtd - wt * wd) / det;
    offset = (wd - slope * wt) / w;
    const sizes = points.map(([t, d]) => Math.abs(d! - slope * t! - offset)).sort((p, q) => p - q);
    scale = Math.max(0.02, 1.4826 * sizes[sizes.length >> 1]!);
  }
  return { slope, offset, sigma: (2 * scale) / Math.sqrt(points.length) };
}

function meet(p: EdgeLine, q: EdgeLine): PixelPoint {
  const det = p.a * q.b - q.a * p.b;
  return { x: (p.c * q.b - q.c * p.b) / det, y: (p.a * q.c - q.a * p.c) / det };
}
