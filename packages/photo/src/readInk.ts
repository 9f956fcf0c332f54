import { ok, type Result, refuse } from '@panewright/quantity';
import type { Adjustment } from './adjust.ts';
import { cameraCentre } from './camera.ts';
import { resampleClosed } from './closedCurve.ts';
import { findOutline, nearPath } from './findOutline.ts';
import type { TraceRefusal } from './gate.ts';
import type { GreyImage } from './image.ts';
import { type InkPoint, inkCentres } from './inkCentres.ts';
import { followInk, type InkPath, normalsOf } from './inkPath.ts';
import { liftInk } from './liftInk.ts';
import { type ParallelLine, parallelLine } from './parallelLine.ts';
import type { PlanePoint } from './planeGrid.ts';
import type { Paper } from './referenceSheet.ts';
import { type SheetCover, sheetCover } from './sheetCover.ts';
import { snapToInk } from './snapToInk.ts';
import type { LineChoice, TappedLine } from './tracePhotos.ts';

/** The ink of all photos, measured on one common path. */
export interface Ink {
  /** One point every 2 mm, anticlockwise, closed. */
  readonly path: readonly PlanePoint[];
  /** In the order of the path. */
  readonly points: readonly InkPoint[];
  /** Trust in each point against the best look at the same place, 0..1. */
  readonly weights: Float64Array;
  /** Share of the uncovered path where at least one photo shows ink. */
  readonly support: number;
  /** Share of the path a sheet hides. */
  readonly hidden: number;
  /** A second line beside the one read, when nobody has said which is meant. */
  readonly parallel?: ParallelLine;
}

export interface InkOptions {
  readonly paper?: Paper;
  readonly line?: LineChoice;
  readonly taps?: TappedLine;
  readonly heightSigma?: number;
}

/** A path this good in the first photo needs no second opinion. */
const CLEAR = 0.25;

/**
 * Finds the outline in one photo and measures it in all.
 *
 * @refuses NO_INK_LINE when no photo shows a dark line that closes
 */
export function readInk(
  images: readonly GreyImage[],
  adjustment: Adjustment,
  options: InkOptions,
): Result<Ink, TraceRefusal> {
  const cover = sheetCover(adjustment.layout, adjustment.unknowns, options.paper ?? 'A4');
  const best = options.taps
    ? tappedPath(images, adjustment, cover, options.taps)
    : clearestPath(images, adjustment, cover);
  if (!best || best.path.support < 0.6) return refuse({ code: 'NO_INK_LINE' });
  let { curve } = best.path;
  const camera = adjustment.cameras[best.photo]!;
  const beside = parallelLine(images[best.photo]!, camera, curve, cover.covers);
  if (beside && !options.taps && wanted(options.line, beside) === 'other') {
    curve = resampleClosed(beside.curve, 2);
  }
  const reach = Math.min(images.length === 1 ? 5 : 7.5, beside ? Math.abs(beside.offset) / 2 : 7.5);
  const ink = measureInk(images, adjustment, curve, cover, options.heightSigma ?? 0.7, reach);
  return ok(beside && !options.line && !options.taps ? { ...ink, parallel: beside } : ink);
}

interface FoundPath {
  readonly path: InkPath;
  readonly photo: number;
}

function clearestPath(
  images: readonly GreyImage[],
  adjustment: Adjustment,
  cover: SheetCover,
): FoundPath | undefined {
  let best: FoundPath | undefined;
  for (let photo = 0; photo < images.length; photo++) {
    const path = findOutline(images[photo]!, adjustment.cameras[photo]!, cover);
    if (path && (!best || worth(path) > worth(best.path))) best = { path, photo };
    if (best && worth(best.path) > CLEAR) break;
  }
  return best;
}

/** Half width of the band about a hand-made path in which the ink is sought, mm. */
const BY_HAND = 8;

function tappedPath(
  images: readonly GreyImage[],
  adjustment: Adjustment,
  cover: SheetCover,
  { photo, points }: TappedLine,
): FoundPath | undefined {
  const [image, camera] = [images[photo], adjustment.cameras[photo]];
  const curve = image && camera && snapToInk(image, camera, cover, points);
  return curve && { photo, path: followInk(image, camera, curve, BY_HAND, cover.covers) };
}

const worth = (path: InkPath) => path.score * path.support ** 2;

function wanted(choice: LineChoice | undefined, beside: ParallelLine): 'this' | 'other' {
  if (choice === 'inner') return beside.offset < 0 ? 'other' : 'this';
  if (choice === 'outer') return beside.offset > 0 ? 'other' : 'this';
  return 'this';
}

/** The ink near a common path in every photo, pooled; nearer and steeper views weigh more. */
export function measureInk(
  images: readonly GreyImage[],
  adjustment: Adjustment,
  path: readonly PlanePoint[],
  cover: SheetCover,
  heightSigma: number,
  reach: number,
): Ink {
  const measured = images.flatMap((image, photo) => {
    const camera = adjustment.cameras[photo]!;
    const own = nearPath(image, camera, path, reach, cover.covers);
    return inkCentres(image, camera, own, photo, cover.covers);
  });
  measured.sort((a, b) => a.row - b.row);
  const points = liftInk(measured, path, adjustment, heightSigma);
  const centres = adjustment.cameras.map(cameraCentre);
  const variances = points.map(({ x, y, photo, zSigma }) => {
    const [cx, cy, cz] = centres[photo]!;
    const slant = Math.hypot(x - cx, y - cy) / cz;
    const pixel = Math.hypot(x - cx, y - cy, cz) / adjustment.cameras[photo]!.focal;
    return (0.25 * pixel) ** 2 + (zSigma * slant) ** 2;
  });
  // Only the looks at one place are weighed against each other: the ring's shape needs every place alike.
  const least = new Float64Array(path.length).fill(Number.POSITIVE_INFINITY);
  points.forEach(({ row }, i) => {
    least[row] = Math.min(least[row]!, variances[i]!);
  });
  const normals = normalsOf(path);
  const hidden = path.filter(({ x, y }, i) => {
    const { x: nx, y: ny } = normals[i]!;
    return [-3, 0, 3].some((d) => cover.covers(x + d * nx, y + d * ny));
  }).length;
  const rows = new Set(points.map((p) => p.row)).size;
  return {
    path,
    points,
    weights: Float64Array.from(variances, (v, i) => least[points[i]!.row]! / v),
    support: Math.min(1, rows / Math.max(1, path.length - hidden)),
    hidden: hidden / path.length,
  };
}
