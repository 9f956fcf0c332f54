import type { Outline } from '@panewright/geometry';
import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import { type Adjustment, adjust, type TapeCheck } from './adjust.ts';
import { toPlane } from './camera.ts';
import { detectMarkers, type SeenMarker } from './detectMarkers.ts';
import { fitOutline, type OutlineFit } from './fitOutline.ts';
import {
  checkAdjustment,
  checkFit,
  checkInput,
  checkMarkers,
  type TraceQuestion,
  type TraceRefusal,
} from './gate.ts';
import { type GreyImage, type Photo, toGrey } from './image.ts';
import type { OpenCv } from './openCv.ts';
import { type PhotoView, photoView } from './photoView.ts';
import { readInk } from './readInk.ts';
import type { Ruler, Tape } from './reading.ts';
import type { Paper } from './referenceSheet.ts';
import { extent, type Frame, longestSide, toOutline } from './ringShape.ts';
import { ringUncertainty } from './uncertainty.ts';

/** One photo of the film, upright or not, with what its file says of the lens. */
export interface TracePhoto {
  readonly image: Photo;
  readonly focalLength35?: number;
}

/** Points on the ink in the order they follow one another round it, px of one photo (counted from 0). */
export interface TappedLine {
  readonly photo: number;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

export type LineChoice = 'darkest' | 'inner' | 'outer';
export type TraceStage = 'markers' | 'adjustment' | 'ink' | 'fit' | 'uncertainty';

export interface TraceInput {
  readonly cv: OpenCv;
  /** All of one film, lying unmoved, with one lens and no zooming in between. */
  readonly photos: readonly TracePhoto[];
  readonly tapes: readonly Tape[];
  readonly ruler?: Ruler;
  /** Size of the printed sheets; A4 if left out. */
  readonly paper?: Paper;
  /** Standard deviation of the film's height about its plane, mm; 0.7 if left out (flat within about 2.5 mm). */
  readonly heightSigma?: number;
  /** Which of two parallel lines is meant; left out, the darkest is traced and the question is put. */
  readonly line?: LineChoice;
  /** The line shown by hand: points tapped on it in one photo, in order; left out, it is looked for. */
  readonly taps?: TappedLine;
  readonly onProgress?: (stage: TraceStage, photo: number) => void;
  /** Asked between steps; true ends the work with the refusal STOPPED. */
  readonly shouldStop?: () => boolean;
  /** Milliseconds from any start; with it the trace tells how long each stage took. */
  readonly clock?: () => number;
}

/** A length and how well it is known. */
export interface Measure {
  readonly value: Millimetre;
  /** One standard deviation, mm. */
  readonly sigma: Millimetre;
  /** Ends of the interval that holds the truth 95 times in 100, mm. */
  readonly interval: readonly [Millimetre, Millimetre];
}

export interface TracedEdge {
  readonly kind: 'line' | 'arc';
  /** How it meets the edge before it. */
  readonly joint: 'tangent' | 'sharp';
  /** One standard deviation of the edge across itself, mm. */
  readonly sigma: Millimetre;
  /** Only an arc's; `value` is positive whichever way it bends. */
  readonly radius?: Measure;
}

export interface Trace {
  /** x along the longest straight side, or across it where the outline is longer across; y up as in the first photo, origin amid the bounding box, mm. */
  readonly outline: Outline;
  /** One per segment of the outline, in its order. */
  readonly edges: readonly TracedEdge[];
  /** Extent along x and along y. */
  readonly width: Measure;
  readonly height: Measure;
  /** RMS standard deviation of the whole edge, mm; twice this holds 95 % of its points. */
  readonly edgeSigma: Millimetre;
  readonly verdict: 'ok' | 'ask';
  readonly questions: readonly TraceQuestion[];
  readonly residuals: {
    /** RMS of the marker corners after adjustment, per photo, px. */
    readonly markersPx: readonly number[];
    /** Robust scatter of the ink about the fitted edges, mm. */
    readonly inkMm: Millimetre;
    /** Share of the way round where ink was measured, and of its points that fit, 0..1. */
    readonly support: number;
    readonly inliers: number;
  };
  readonly tapes: readonly TapeCheck[];
  readonly lens: { readonly focalPx: number; readonly k1: number; readonly k2: number };
  readonly printScale: readonly [number, number];
  readonly markers: readonly number[];
  /** How each photo sees the film, to lay the outline over it. */
  readonly views: readonly PhotoView[];
  /** Milliseconds per stage; empty without a clock. */
  readonly timings: Readonly<Partial<Record<TraceStage, number>>>;
}

/** Flat within about 2.5 mm. */
const HEIGHT_SIGMA = 0.7;

/**
 * From photos of a traced film with reference sheets to its outline at true size, with honest uncertainty.
 *
 * @range outlines up to about 1.5 x 1.0 m, ink 1.5 to 5 mm wide and darker than the film, 2 to 4 sheets seen
 * @accuracy design goal: 95 % of edge points within 0.8 mm. Checked on rendered photos only; no real phone
 *   photo has been measured yet, so treat it as an estimate
 * @refuses see TraceRefusal: too few markers, one sheet only, blurred, no scale, no closed ink line, poor fit,
 *   a tape reading that contradicts the rest
 * @source docs/sources/photo.md
 */
export function tracePhotos(input: TraceInput): Result<Trace, TraceRefusal> {
  const watch = stopwatch(input);
  const wrong = checkInput(input);
  if (wrong) return refuse(wrong);
  const images = input.photos.map(({ image }) => toGrey(image));
  const seen: (readonly SeenMarker[])[] = [];
  for (const [i, image] of images.entries()) {
    if (watch.stage('markers', i)) return refuse({ code: 'STOPPED' });
    seen.push(detectMarkers(input.cv, image));
  }
  const unusable = checkMarkers(input, images, seen);
  if (unusable) return refuse(unusable);
  if (watch.stage('adjustment', 0)) return refuse({ code: 'STOPPED' });
  const adjustment = adjust(adjustInput(input, images, seen));
  if (!adjustment) return refuse({ code: 'PHOTOS_NOT_LINKED' });
  const checked = checkAdjustment(adjustment);
  if (checked.refusal) return refuse(checked.refusal);
  if (watch.stage('ink', 0)) return refuse({ code: 'STOPPED' });
  const ink = readInk(images, adjustment, input);
  if (!ink.ok) return ink;
  if (watch.stage('fit', 0)) return refuse({ code: 'STOPPED' });
  const fit = fitOutline(ink.value);
  if (!fit) return refuse({ code: 'OUTLINE_NOT_FITTED' });
  const judged = checkFit(fit, ink.value);
  if (judged.refusal) return refuse(judged.refusal);
  if (watch.stage('uncertainty', 0)) return refuse({ code: 'STOPPED' });
  const questions = [...checked.questions, ...judged.questions];
  return ok(composeTrace(images, adjustment, fit, questions, seen, watch, input.heightSigma ?? HEIGHT_SIGMA));
}

const adjustInput = (
  input: TraceInput,
  images: readonly GreyImage[],
  seen: readonly (readonly SeenMarker[])[],
) => ({
  photos: input.photos.map(({ focalLength35 }, i) => ({
    width: images[i]!.width,
    height: images[i]!.height,
    markers: seen[i]!,
    ...(focalLength35 === undefined ? {} : { focalLength35 }),
  })),
  paper: input.paper ?? 'A4',
  tapes: input.tapes,
  heightSigma: input.heightSigma ?? HEIGHT_SIGMA,
  ...(input.ruler ? { ruler: input.ruler } : {}),
});

function stopwatch({ onProgress, shouldStop, clock }: TraceInput) {
  const timings: Partial<Record<TraceStage, number>> = {};
  let [current, since]: [TraceStage | undefined, number] = [undefined, 0];
  const close = () => {
    const now = clock?.() ?? 0;
    if (clock && current) timings[current] = (timings[current] ?? 0) + now - since;
    since = now;
  };
  return {
    timings,
    close,
    /** True when the work is to stop. */
    stage: (stage: TraceStage, photo: number): boolean => {
      close();
      current = stage;
      onProgress?.(stage, photo);
      return shouldStop?.() ?? false;
    },
  };
}

function composeTrace(
  images: readonly GreyImage[],
  adjustment: Adjustment,
  found: OutlineFit,
  questions: readonly TraceQuestion[],
  seen: readonly (readonly SeenMarker[])[],
  watch: ReturnType<typeof stopwatch>,
  heightSigma: number,
): Trace {
  const { fit, data, points } = found;
  const caution = cautionOf(adjustment.tapes);
  const sigma = ringUncertainty(fit, data, points, adjustment, heightSigma, caution);
  const frame = frameOf(images[0]!, adjustment, found);
  const box = extent(fit, frame.direction);
  const lens = adjustment.cameras[0]!;
  const edges = fit.parts.map(({ kind, joint, primitive }, p): TracedEdge => {
    const radius = sigma.parts[p]!.radius;
    const arc = radius === undefined ? {} : { radius: measure(1 / Math.abs(primitive.curvature), radius) };
    return { kind, joint, sigma: mm(sigma.parts[p]!.edge), ...arc };
  });
  watch.close();
  return {
    outline: toOutline(fit, frame),
    edges: fit.parts.length === 1 ? [edges[0]!, edges[0]!] : edges,
    width: measure(box[2] - box[0], frame.across ? sigma.height : sigma.width),
    height: measure(box[3] - box[1], frame.across ? sigma.width : sigma.height),
    edgeSigma: mm(sigma.edge),
    verdict: questions.length > 0 ? 'ask' : 'ok',
    questions,
    residuals: {
      markersPx: adjustment.residualPx,
      inkMm: mm(fit.scale),
      support: found.support,
      inliers: found.inliers,
    },
    tapes: adjustment.tapes,
    lens: { focalPx: lens.focal, k1: lens.k1, k2: lens.k2 },
    printScale: [
      adjustment.unknowns[adjustment.layout.printScaleAt]!,
      adjustment.unknowns[adjustment.layout.printScaleAt + 1]!,
    ],
    markers: [...new Set(seen.flatMap((list) => list.map((marker) => marker.id)))].sort((a, b) => a - b),
    views: adjustment.cameras.map((camera, i) => photoView(camera, frame, images[i]!)),
    timings: watch.timings,
  };
}

const measure = (value: number, sigma: number): Measure => ({
  value: mm(value),
  sigma: mm(sigma),
  interval: [mm(value - 1.96 * sigma), mm(value + 1.96 * sigma)],
});

/** Birge's ratio of the tapes' disagreement, never below 1: readings that quarrel widen every interval. */
function cautionOf(tapes: readonly TapeCheck[]): number {
  if (tapes.length === 0) return 1;
  return Math.max(1, tapes.reduce((sum, { deviation }) => sum + deviation ** 2, 0) / tapes.length);
}

/**
 * x along the longest straight side, or across it where the outline is longer across (two long bowed sides, say);
 * upright as the first photo shows it.
 */
function frameOf(
  image: GreyImage,
  adjustment: Adjustment,
  { fit }: OutlineFit,
): Frame & { readonly across: boolean } {
  const side = longestSide(fit);
  let direction = side === undefined ? 0 : fit.parts[side]!.primitive.heading;
  const [low, high] = [new Float64Array(2), new Float64Array(2)];
  const bare = extent(fit, direction);
  const across = bare[3] - bare[1] > bare[2] - bare[0];
  if (across) direction += Math.PI / 2;
  const camera = adjustment.cameras[0]!;
  const middle = { x: image.width / 2, y: image.height / 2 };
  const seen =
    toPlane(camera, middle.x, middle.y + 50, 0, low) && toPlane(camera, middle.x, middle.y - 50, 0, high);
  const [upX, upY] = seen ? [high[0]! - low[0]!, high[1]! - low[1]!] : [0, 1];
  if (-Math.sin(direction) * upX + Math.cos(direction) * upY < 0) direction += Math.PI;
  const box = extent(fit, direction);
  const [u, v] = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2];
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  return { direction, across, x: c * u - s * v, y: s * u + c * v };
}
