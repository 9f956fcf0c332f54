import type { AdjustInput } from './adjust.ts';
import {
  type Layout,
  makeLayout,
  PER_PHOTO,
  PER_SHEET,
  type PhotoMarkers,
  SHARED,
} from './adjustmentLayout.ts';
import { startValues } from './adjustmentStart.ts';
import { cameraCentre, project } from './camera.ts';
import type { LeastSquaresProblem } from './leastSquares.ts';
import { BAR_X, BAR_Y, RULER_SIGMA, TAPE_SIGMA } from './reading.ts';
import { MARKERS_PER_SHEET } from './referenceSheet.ts';

export interface AdjustmentProblem {
  readonly problem: LeastSquaresProblem;
  readonly layout: Layout;
  readonly corners: number;
  /** Standard deviation of each corner, px. */
  readonly sigmas: Float64Array;
  readonly firstTape: number;
}

export function adjustmentProblem(input: AdjustInput, sigma: number): AdjustmentProblem | undefined {
  const { photos, paper } = input;
  const sheets = [
    ...new Set(photos.flatMap((p) => p.markers.map((m) => Math.floor(m.id / MARKERS_PER_SHEET)))),
  ].sort((a, b) => a - b);
  const focal = startFocal(photos);
  const layout = makeLayout(sheets, photos.length, focal.px, paper);
  const start = startValues(input, layout, focal.px);
  if (!start) return undefined;
  const corners = photos.reduce((sum, photo) => sum + 4 * photo.markers.length, 0);
  const sigmas = cornerSigmas(input, layout, start, sigma);
  const tapes = input.tapes.filter(
    ({ from, to }) =>
      sheets.includes(Math.floor(from.marker / MARKERS_PER_SHEET)) &&
      sheets.includes(Math.floor(to.marker / MARKERS_PER_SHEET)),
  );
  const priors = priorList(input, layout, focal.sigma);
  const firstTape = 2 * corners + priors.length;
  const residuals = (unknowns: Float64Array, out: Float64Array) => {
    cornerResiduals(input, layout, unknowns, sigmas, out);
    priors.forEach(([at, mean, spread], i) => {
      out[2 * corners + i] = (unknowns[at]! - mean) / spread;
    });
    const a = new Float64Array(3);
    const b = new Float64Array(3);
    tapes.forEach((tape, i) => {
      layout.corner(unknowns, tape.from, a);
      layout.corner(unknowns, tape.to, b);
      const distance = Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
      out[firstTape + i] = (distance - tape.length) / (tape.sigma ?? TAPE_SIGMA);
    });
  };
  const count = firstTape + tapes.length;
  const weights = (r: Float64Array, out: Float64Array) => huberPairs(r, out, corners);
  const problem = { start, count, steps: stepSizes(layout, photos.length), residuals, weights };
  return { problem, layout, corners, sigmas, firstTape };
}

/** A 36 x 24 mm frame has this diagonal. */
const DIAGONAL_35 = 43.2666;

/** From Exif where the photos say it; else a usual phone's main camera, loosely held. */
function startFocal(photos: readonly PhotoMarkers[]): { px: number; sigma: number } {
  const stated = photos.find((photo) => photo.focalLength35 !== undefined);
  const { width, height } = stated ?? photos[0]!;
  const px = ((stated?.focalLength35 ?? 26) / DIAGONAL_35) * Math.hypot(width, height);
  return { px, sigma: stated ? 0.03 : 0.3 };
}

function stepSizes(layout: Layout, photos: number): Float64Array {
  const shared = [0.01, 0.01, 0.01, 0.001, 0.001, 0.001, 0.001, 0.1];
  const sheet = [1, 1, 0.005, 1, 0.005, 0.005];
  const photo = [10, 10, 0.005, 0.005, 0.005, 5, 5, 5];
  const all = [
    ...shared,
    ...layout.sheets.flatMap(() => sheet),
    ...Array.from({ length: photos }).flatMap(() => photo),
  ];
  return Float64Array.from(all);
}

/** [unknown, mean, standard deviation]; the lowest sheet's place is held: it is the frame. */
function priorList({ photos, ruler, heightSigma }: AdjustInput, layout: Layout, focal: number) {
  const spread = ruler?.sigma ?? RULER_SIGMA;
  const priors: [number, number, number][] = [
    [0, 0, focal],
    [1, 0, 0.05],
    [2, 0, 0.006],
    [3, 0, 3e-4],
    [4, 0, 3e-4],
    ruler ? [5, ruler.x / BAR_X, spread / BAR_X] : [5, 1, 0.003],
    ruler ? [6, ruler.y / BAR_Y, spread / BAR_Y] : [6, 1, 0.003],
    [7, 0, 0.05],
    [SHARED, 0, 1e-6],
    [SHARED + 1, 0, 1e-6],
    [SHARED + 2, 0, 1e-9],
  ];
  layout.sheets.forEach((_, i) => {
    const at = SHARED + PER_SHEET * i;
    priors.push([at + 3, 0, heightSigma], [at + 4, 0, heightSigma / 300], [at + 5, 0, heightSigma / 300]);
  });
  photos.forEach(({ width, height }, i) => {
    const at = SHARED + PER_SHEET * layout.sheets.length + PER_PHOTO * i;
    const offset = 0.0075 * Math.max(width, height);
    priors.push([at, (width - 1) / 2, offset], [at + 1, (height - 1) / 2, offset]);
  });
  return priors;
}

function cornerResiduals(
  { photos }: AdjustInput,
  layout: Layout,
  unknowns: Float64Array,
  sigmas: Float64Array,
  out: Float64Array,
): void {
  const world = new Float64Array(3);
  const pixel = new Float64Array(2);
  let at = 0;
  photos.forEach((photo, index) => {
    const camera = layout.camera(unknowns, index);
    for (const { id, corners } of photo.markers) {
      for (let corner = 0; corner < 4; corner++, at++) {
        layout.corner(unknowns, { marker: id, corner }, world);
        if (!project(camera, world[0]!, world[1]!, world[2]!, pixel)) pixel.fill(1e5);
        out[2 * at] = (pixel[0]! - corners[corner]!.x) / sigmas[at]!;
        out[2 * at + 1] = (pixel[1]! - corners[corner]!.y) / sigmas[at]!;
      }
    }
  });
}

/** Noise of the picture and, seen at a slant, of the paper's own unevenness. */
function cornerSigmas(
  { photos, heightSigma }: AdjustInput,
  layout: Layout,
  start: Float64Array,
  sigma: number,
) {
  const sigmas: number[] = [];
  const world = new Float64Array(3);
  const uneven = 0.12 * heightSigma;
  photos.forEach((photo, index) => {
    const camera = layout.camera(start, index);
    const [x, y, z] = cameraCentre(camera);
    for (const marker of photo.markers) {
      for (let corner = 0; corner < 4; corner++) {
        layout.corner(start, { marker: marker.id, corner }, world);
        const slant = Math.hypot(world[0]! - x, world[1]! - y) / z;
        const pixels = camera.focal / Math.hypot(world[0]! - x, world[1]! - y, z);
        sigmas.push(Math.hypot(sigma, uneven * slant * pixels, marker.sigma));
      }
    }
  });
  return Float64Array.from(sigmas);
}

/** Weight 1 up to 2.5 standard deviations, then falling as 1 / size; both coordinates of a corner together. */
function huberPairs(residuals: Float64Array, out: Float64Array, corners: number): void {
  for (let i = 0; i < corners; i++) {
    const size = Math.hypot(residuals[2 * i]!, residuals[2 * i + 1]!);
    const weight = size <= 2.5 ? 1 : 2.5 / size;
    out[2 * i] = weight;
    out[2 * i + 1] = weight;
  }
}
