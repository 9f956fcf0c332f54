import type { AdjustInput } from './adjust.ts';
import { type Camera, cameraCentre, project, rotationOf, toPlane } from './camera.ts';
import type { SeenMarker } from './detectMarkers.ts';
import type { LeastSquaresProblem } from './leastSquares.ts';
import { type PlanePose, poseFromPlane, rotationVector } from './pose.ts';
import { BAR_X, BAR_Y, type CornerName, RULER_SIGMA, TAPE_SIGMA } from './reading.ts';
import { MARKERS_PER_SHEET, markerCorner, PAPER, type Paper } from './referenceSheet.ts';

export interface PhotoMarkers {
  readonly width: number;
  readonly height: number;
  /** From the file, mm; left out when it does not say. */
  readonly focalLength35?: number;
  readonly markers: readonly SeenMarker[];
}

/** Where each unknown stands in the vector, and what it means. */
export interface Layout {
  readonly sheets: readonly number[];
  readonly size: number;
  camera(unknowns: Float64Array, photo: number): Camera;
  /** World point of a marker corner; false for a sheet not seen. */
  corner(unknowns: Float64Array, name: CornerName, out: Float64Array): boolean;
  /** A point of a sheet (sheet frame, mm, as printed nominally) in the world plane. */
  onSheet(unknowns: Float64Array, sheet: number, x: number, y: number, out: Float64Array): void;
  readonly printScaleAt: number;
}

/** Shared: log focal, k1, k2, p1, p2, sx, sy, ink gain. */
const SHARED = 8;
const PER_SHEET = 6;
const PER_PHOTO = 8;
/** A 36 x 24 mm frame has this diagonal. */
const DIAGONAL_35 = 43.2666;

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

/** From Exif where the photos say it; else a usual phone's main camera, loosely held. */
function startFocal(photos: readonly PhotoMarkers[]): { px: number; sigma: number } {
  const stated = photos.find((photo) => photo.focalLength35 !== undefined);
  const { width, height } = stated ?? photos[0]!;
  const px = ((stated?.focalLength35 ?? 26) / DIAGONAL_35) * Math.hypot(width, height);
  return { px, sigma: stated ? 0.03 : 0.3 };
}

function makeLayout(sheets: readonly number[], photos: number, focal: number, paper: Paper): Layout {
  const { width, height } = PAPER[paper];
  const photoStart = SHARED + PER_SHEET * sheets.length;
  const onSheet = (q: Float64Array, sheet: number, x: number, y: number, out: Float64Array) => {
    const at = SHARED + PER_SHEET * sheets.indexOf(sheet);
    const u = (x - width / 2) * q[5]!;
    const v = (y - height / 2) * q[6]!;
    const cos = Math.cos(q[at + 2]!);
    const sin = Math.sin(q[at + 2]!);
    out[0] = q[at]! + cos * u - sin * v;
    out[1] = q[at + 1]! + sin * u + cos * v;
    out[2] = q[at + 3]! + q[at + 4]! * u + q[at + 5]! * v;
  };
  return {
    sheets,
    size: photoStart + PER_PHOTO * photos,
    printScaleAt: 5,
    camera: (q, photo) => {
      const at = photoStart + PER_PHOTO * photo;
      return {
        focal: focal * Math.exp(q[0]!),
        k1: q[1]!,
        k2: q[2]!,
        p1: q[3]!,
        p2: q[4]!,
        cx: q[at]!,
        cy: q[at + 1]!,
        rotation: rotationOf(q[at + 2]!, q[at + 3]!, q[at + 4]!),
        translation: [q[at + 5]!, q[at + 6]!, q[at + 7]!],
      };
    },
    corner: (q, { marker, corner }, out) => {
      const sheet = Math.floor(marker / MARKERS_PER_SHEET);
      if (!sheets.includes(sheet)) return false;
      const p = markerCorner(paper, marker % MARKERS_PER_SHEET, corner);
      const gain = q[7]!;
      const right = corner === 1 || corner === 2 ? gain : -gain;
      onSheet(q, sheet, p.x + right, p.y + (corner <= 1 ? gain : -gain), out);
      return true;
    },
    onSheet,
  };
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
    [2, 0, 0.01],
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
    priors.push([at + 3, 0, heightSigma], [at + 4, 0, heightSigma / 160], [at + 5, 0, heightSigma / 160]);
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

/** Chains the photos through the sheets they share, starting from the photo that shows most markers. */
function startValues(input: AdjustInput, layout: Layout, focal: number): Float64Array | undefined {
  const { photos, paper } = input;
  const q = new Float64Array(layout.size);
  q[5] = input.ruler ? input.ruler.x / BAR_X : 1;
  q[6] = input.ruler ? input.ruler.y / BAR_Y : 1;
  const known = new Map<number, readonly [number, number, number]>([[layout.sheets[0]!, [0, 0, 0]]]);
  const waiting = new Set(photos.keys());
  while (waiting.size > 0) {
    const next = [...waiting].find((i) => sheetsOf(photos[i]!).some((sheet) => known.has(sheet)));
    if (next === undefined) return undefined;
    waiting.delete(next);
    const photo = photos[next]!;
    writeSheets(q, layout, known);
    const pose = photoPose(photo, q, layout, known, focal);
    if (!pose) return undefined;
    const at = SHARED + PER_SHEET * layout.sheets.length + PER_PHOTO * next;
    q.set(
      [(photo.width - 1) / 2, (photo.height - 1) / 2, ...rotationVector(pose.rotation), ...pose.translation],
      at,
    );
    const camera = layout.camera(q, next);
    for (const sheet of sheetsOf(photo)) {
      const place = known.has(sheet) ? undefined : sheetPlace(photo, camera, sheet, paper);
      if (place) known.set(sheet, place);
    }
  }
  writeSheets(q, layout, known);
  return known.size === layout.sheets.length ? q : undefined;
}

const sheetsOf = ({ markers }: PhotoMarkers) => [
  ...new Set(markers.map((marker) => Math.floor(marker.id / MARKERS_PER_SHEET))),
];

function writeSheets(q: Float64Array, layout: Layout, known: ReadonlyMap<number, readonly number[]>): void {
  layout.sheets.forEach((sheet, i) => {
    const place = known.get(sheet);
    if (place) q.set(place, SHARED + PER_SHEET * i);
  });
}

function photoPose(
  photo: PhotoMarkers,
  q: Float64Array,
  layout: Layout,
  known: ReadonlyMap<number, unknown>,
  focal: number,
): PlanePose | undefined {
  const plane: number[] = [];
  const image: number[] = [];
  const world = new Float64Array(3);
  for (const { id, corners } of photo.markers) {
    if (!known.has(Math.floor(id / MARKERS_PER_SHEET))) continue;
    for (let corner = 0; corner < 4; corner++) {
      layout.corner(q, { marker: id, corner }, world);
      plane.push(world[0]!, world[1]!);
      image.push((corners[corner]!.x - (photo.width - 1) / 2) / focal);
      image.push((corners[corner]!.y - (photo.height - 1) / 2) / focal);
    }
  }
  return poseFromPlane(plane, image);
}

/** Rigid fit of a sheet's corners to where the photo sees them on the plane. */
function sheetPlace(photo: PhotoMarkers, camera: Camera, sheet: number, paper: Paper) {
  const { width, height } = PAPER[paper];
  const out = new Float64Array(2);
  let [n, mx, my, mu, mv] = [0, 0, 0, 0, 0];
  const pairs: number[][] = [];
  for (const { id, corners } of photo.markers) {
    if (Math.floor(id / MARKERS_PER_SHEET) !== sheet) continue;
    for (let corner = 0; corner < 4; corner++) {
      if (!toPlane(camera, corners[corner]!.x, corners[corner]!.y, 0, out)) return undefined;
      const p = markerCorner(paper, id % MARKERS_PER_SHEET, corner);
      const pair = [p.x - width / 2, p.y - height / 2, out[0]!, out[1]!];
      pairs.push(pair);
      n++;
      mu += pair[0]!;
      mv += pair[1]!;
      mx += pair[2]!;
      my += pair[3]!;
    }
  }
  let [dot, cross] = [0, 0];
  for (const [u, v, x, y] of pairs as [number, number, number, number][]) {
    dot += (u - mu / n) * (x - mx / n) + (v - mv / n) * (y - my / n);
    cross += (u - mu / n) * (y - my / n) - (v - mv / n) * (x - mx / n);
  }
  const angle = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [(mx - cos * mu + sin * mv) / n, (my - sin * mu - cos * mv) / n, angle] as const;
}
