import type { Adjustment } from './adjust.ts';
import { cameraCentre, toPlane } from './camera.ts';
import { type FilmSurface, filmSurface, heightBy } from './filmSurface.ts';
import { type Ring, type RingData, type RingFit, shiftParts, verticesOf } from './fitRing.ts';
import type { InkPoint } from './inkCentres.ts';
import { cholesky, substitute } from './leastSquares.ts';
import { headingNear, nearestOn, offsetFrom, shift } from './primitive.ts';
import { extent, lengthOf, longestSide, sweepOf } from './ringShape.ts';

export interface PartUncertainty {
  /** Standard deviation of the edge across itself, mean along it, after the best rigid alignment, mm. */
  readonly edge: number;
  /** Standard deviation of the radius, mm; undefined for a line. */
  readonly radius?: number;
}

export interface RingUncertainty {
  readonly parts: readonly PartUncertainty[];
  /** Standard deviations of the overall width (along the longest straight side) and height, mm. */
  readonly width: number;
  readonly height: number;
  /** RMS of the edges' standard deviations, weighted by length, mm. */
  readonly edge: number;
}

const SMALL = 0.02;
const SAMPLES = 9;

/**
 * First-order propagation of everything that moves the ring: ink scatter with its correlation along the line,
 * the whole covariance of the adjustment, and a film that is not flat.
 *
 * @param heightSigma standard deviation of the film's height about its plane, mm
 * @param caution factor on the adjustment's covariance, >= 1, from how tapes and ruler disagree
 * @accuracy errs to the safe side: on rendered photos the errors are about half of what is stated
 * @source sources.md#criminisi-1999 (first order suffices), #triggs-2000
 */
export function ringUncertainty(
  fit: RingFit,
  data: RingData,
  points: readonly InkPoint[],
  adjustment: Adjustment,
  heightSigma: number,
  caution: number,
): RingUncertainty {
  const modes = [
    ...inkModes(fit, data),
    ...cameraModes(fit, points, adjustment, Math.sqrt(caution), filmSurface(adjustment, heightSigma)),
    ...flatnessModes(fit, points, adjustment),
  ];
  return summarise(fit, modes);
}

/** Moves of the unknowns (three a part), one per independent cause of one standard deviation. */
type Mode = Float64Array;

/**
 * sigma² tau N^-1: neighbours share their error, so a thousand points are not a thousand measurements; nor are
 * three photos of the same wavering line three lines.
 */
function inkModes(fit: RingFit, data: RingData): Mode[] {
  const { inverse } = fit.system;
  const n = Math.sqrt(inverse.length);
  const { scatter, correlation } = rowErrors(fit, data);
  const factor = scatter * Math.sqrt(correlation);
  const lower = cholesky(
    inverse.map((value, i) => value + (i % (n + 1) === 0 ? 1e-18 : 0)),
    n,
  );
  if (!lower) return [];
  return Array.from({ length: n }, (_, k) =>
    Float64Array.from({ length: n }, (_, i) => factor * lower[i * n + k]!),
  );
}

/**
 * Residuals averaged row by row: their scatter, scaled as if each point of a row were independent, and the
 * correlation length (1 + rho) / (1 - rho) from neighbouring rows, 1 to 100.
 */
function rowErrors(fit: RingFit, { row, rows, weight }: RingData): { scatter: number; correlation: number } {
  const sums = new Float64Array(rows);
  const counts = new Float64Array(rows);
  for (let i = 0; i < row.length; i++) {
    sums[row[i]!]! += weight[i]! * Math.max(-3, Math.min(3, fit.residuals[i]! / fit.scale));
    counts[row[i]!]! += weight[i]!;
  }
  let [product, square, all, seen] = [0, 0, 0, 0];
  for (let r = 0; r < rows; r++) {
    const next = (r + 1) % rows;
    if (counts[r] === 0) continue;
    seen++;
    all += counts[r]!;
    const a = sums[r]! / counts[r]!;
    square += a * a;
    if (counts[next]! > 0) product += (a * sums[next]!) / counts[next]!;
  }
  const rho = Math.min(0.98, Math.max(0, product / Math.max(1e-9, square)));
  const scatter = fit.scale * Math.sqrt((square / Math.max(1, seen)) * (all / Math.max(1, seen)));
  return { scatter, correlation: (1 + rho) / (1 - rho) };
}

/** How the unknowns answer when every point is displaced to the left: -N^-1 J'W dn. */
function answerTo(
  fit: RingFit,
  normals: Float64Array,
  displacement: (i: number, nx: number, ny: number) => number,
): Mode {
  const n = 3 * fit.parts.length;
  const right = new Float64Array(n);
  for (let i = 0; i < fit.owner.length; i++) {
    const w = fit.weights[i]!;
    if (w === 0) continue;
    const d = displacement(i, normals[2 * i]!, normals[2 * i + 1]!);
    for (let k = 0; k < 3; k++) right[3 * fit.owner[i]! + k]! += w * fit.system.derivatives[3 * i + k]! * d;
  }
  const mode = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) mode[i]! -= fit.system.inverse[i * n + j]! * right[j]!;
  }
  return mode;
}

/** Unit normals to the left of travel at every point. */
function leftNormals(fit: RingFit, points: readonly InkPoint[]): Float64Array {
  const normals = new Float64Array(2 * points.length);
  points.forEach((point, i) => {
    const heading = headingNear(fit.parts[fit.owner[i]!]!.primitive, point.x, point.y);
    normals[2 * i] = -Math.sin(heading);
    normals[2 * i + 1] = Math.cos(heading);
  });
  return normals;
}

function cameraModes(
  fit: RingFit,
  points: readonly InkPoint[],
  adjustment: Adjustment,
  factor: number,
  surface: FilmSurface,
): Mode[] {
  const normals = leftNormals(fit, points);
  const { covariance, unknowns, layout } = adjustment;
  const n = unknowns.length;
  const lower = cholesky(
    covariance.map((value, i) => value + (i % (n + 1) === 0 ? 1e-20 : 0)),
    n,
  );
  if (!lower) throw new Error('covariance of the adjustment is not positive');
  const rules = points.map(({ x, y }) => surface.ruleAt(x, y));
  const flat = surface.nodes(unknowns);
  const out = new Float64Array(2);
  const modes: Mode[] = [];
  for (let c = 0; c < n; c++) {
    const moved = unknowns.map((value, i) => value + SMALL * lower[i * n + c]!);
    const cameras = adjustment.cameras.map((_, i) => layout.camera(moved, i));
    // Sheets that rise take the film between them along.
    const lift = surface.nodes(moved).map((height, i) => height - flat[i]!);
    modes.push(
      answerTo(fit, normals, (i, nx, ny) => {
        const { x, y, z, px, py, photo } = points[i]!;
        if (!toPlane(cameras[photo]!, px, py, z + heightBy(rules[i]!, lift), out)) return 0;
        return (factor * ((out[0]! - x) * nx + (out[1]! - y) * ny)) / SMALL;
      }),
    );
  }
  return modes;
}

/** Waves of the film, 700 to 1600 mm long: together they lift a point by what is not known of its height. */
function flatnessModes(fit: RingFit, points: readonly InkPoint[], adjustment: Adjustment): Mode[] {
  const centres = adjustment.cameras.map(cameraCentre);
  const normals = leftNormals(fit, points);
  const modes: Mode[] = [];
  const waves = 6;
  for (let k = 0; k < waves; k++) {
    const length = 700 * (1600 / 700) ** (k / (waves - 1));
    const direction = (k * 2.4) % Math.PI;
    const [kx, ky] = [
      (2 * Math.PI * Math.cos(direction)) / length,
      (2 * Math.PI * Math.sin(direction)) / length,
    ];
    for (const phase of [0, Math.PI / 2]) {
      modes.push(
        answerTo(fit, normals, (i, nx, ny) => {
          const { x, y, photo, zSigma } = points[i]!;
          const [cx, cy, cz] = centres[photo]!;
          const z = (zSigma / Math.sqrt(waves)) * Math.cos(kx * x + ky * y + phase);
          return (z * ((x - cx) * nx + (y - cy) * ny)) / cz;
        }),
      );
    }
  }
  return modes;
}

/** Width and height in the frame of the longest straight side. */
export function overall(ring: Ring, side: number | undefined): readonly [number, number] {
  const direction = side === undefined ? 0 : ring.parts[side]!.primitive.heading;
  const box = extent(ring, direction);
  return [box[2] - box[0], box[3] - box[1]];
}

function summarise(fit: RingFit, modes: readonly Mode[]): RingUncertainty {
  const side = longestSide(fit);
  const samples = edgeSamples(fit);
  const [width, height] = overall(fit, side);
  const sums = { width: 0, height: 0 };
  const radii = fit.parts.map(() => 0);
  const edges = fit.parts.map(() => 0);
  for (const mode of modes) {
    const parts = shiftParts(fit.parts, mode, SMALL);
    const vertices = verticesOf(parts, fit.vertices);
    if (vertices) {
      const [w, h] = overall({ parts, vertices }, side);
      sums.width += ((w - width) / SMALL) ** 2;
      sums.height += ((h - height) / SMALL) ** 2;
    }
    fit.parts.forEach((part, p) => {
      const k = part.primitive.curvature;
      if (k !== 0) radii[p]! += (mode[3 * p + 2]! / (k * k)) ** 2;
    });
    edgeMoves(samples, mode).forEach((move, p) => {
      edges[p]! += move;
    });
  }
  const lengths = fit.parts.map((_, p) => lengthOf(fit, p));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  return {
    width: Math.sqrt(sums.width),
    height: Math.sqrt(sums.height),
    edge: Math.sqrt(edges.reduce((sum, e, p) => sum + e * lengths[p]!, 0) / total),
    parts: fit.parts.map((part, p) => ({
      edge: Math.sqrt(edges[p]!),
      ...(part.kind === 'arc' ? { radius: Math.sqrt(radii[p]!) } : {}),
    })),
  };
}

interface EdgeSample {
  readonly part: number;
  readonly weight: number;
  readonly x: number;
  readonly y: number;
  readonly nx: number;
  readonly ny: number;
  /** Move to the left per unit of each of the part's unknowns. */
  readonly gain: readonly [number, number, number];
}

function edgeSamples(fit: RingFit): EdgeSample[] {
  return fit.parts.flatMap(({ primitive, kind }, p) => {
    const from = fit.vertices[p]!;
    const to = fit.vertices[(p + 1) % fit.vertices.length]!;
    const sweep = sweepOf(fit, p);
    return Array.from({ length: SAMPLES }, (_, s) => {
      const t = (s + 0.5) / SAMPLES;
      const chord = { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
      const { x, y } = kind === 'line' ? chord : arcPoint(fit, p, t * sweep);
      const heading = headingNear(primitive, x, y);
      const steps = [1e-3, 1e-6, 1e-9];
      const gain = steps.map((h, k) =>
        k === 2 && kind === 'line' ? 0 : -offsetFrom(shift(primitive, k, h), x, y) / h,
      ) as [number, number, number];
      return {
        part: p,
        weight: lengthOf(fit, p) / SAMPLES,
        x,
        y,
        nx: -Math.sin(heading),
        ny: Math.cos(heading),
        gain,
      };
    });
  });
}

function arcPoint(fit: RingFit, p: number, turn: number) {
  const { primitive } = fit.parts[p]!;
  const from = nearestOn(primitive, fit.vertices[p]!.x, fit.vertices[p]!.y);
  const heading = headingNear(primitive, from.x, from.y);
  const k = primitive.curvature;
  return {
    x: from.x + (Math.sin(heading + turn) - Math.sin(heading)) / k,
    y: from.y - (Math.cos(heading + turn) - Math.cos(heading)) / k,
  };
}

/** Mean squared normal move of every part once the best rigid motion is taken out, mm². */
function edgeMoves(samples: readonly EdgeSample[], mode: Mode): number[] {
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  const moves = samples.map(({ part, gain }) => gain.reduce((sum, g, k) => sum + g * mode[3 * part + k]!, 0));
  const rows = samples.map(({ x, y, nx, ny }) => [nx, ny, (x * ny - y * nx) / 500] as const);
  rows.forEach((row, i) => {
    for (let a = 0; a < 3; a++) {
      right[a]! += samples[i]!.weight * row[a]! * moves[i]!;
      for (let b = 0; b < 3; b++) normal[3 * a + b]! += samples[i]!.weight * row[a]! * row[b]!;
    }
  });
  for (let a = 0; a < 3; a++) normal[4 * a]! += 1e-9;
  const lower = cholesky(normal, 3);
  const rigid = lower ? substitute(lower, right, 3) : [0, 0, 0];
  const parts = Math.max(...samples.map((s) => s.part)) + 1;
  const sums = new Array<number>(parts).fill(0);
  rows.forEach((row, i) => {
    const rest = moves[i]! - row[0] * rigid[0]! - row[1] * rigid[1]! - row[2] * rigid[2]!;
    sums[samples[i]!.part]! += rest ** 2 / SAMPLES;
  });
  return sums;
}
