import type { Adjustment } from './adjust.ts';
import type { SeenMarker } from './detectMarkers.ts';
import type { OutlineFit } from './fitOutline.ts';
import type { GreyImage } from './image.ts';
import type { Ink } from './readInk.ts';
import { BAR_X, BAR_Y, type CornerName } from './reading.ts';
import { MARKERS_PER_SHEET, SHEETS } from './referenceSheet.ts';
import type { TraceInput } from './tracePhotos.ts';

/** Why no outline is given. Photos are counted from 0; lengths in mm, shares 0..1. */
export type TraceRefusal =
  | { readonly code: 'NO_PHOTO' }
  | {
      readonly code: 'ULTRA_WIDE_LENS';
      readonly photo: number;
      readonly focalLength35: number;
      readonly least: number;
    }
  | { readonly code: 'SCALE_NOT_MEASURED' }
  | { readonly code: 'TAPE_NOT_A_LENGTH'; readonly tape: number; readonly length: number }
  | {
      readonly code: 'TAPE_CORNER_UNKNOWN';
      readonly tape: number;
      readonly marker: number;
      readonly corner: number;
    }
  | { readonly code: 'TAPE_MARKER_NOT_SEEN'; readonly tape: number; readonly marker: number }
  | { readonly code: 'RULER_IMPLAUSIBLE'; readonly x: number; readonly y: number; readonly most: number }
  | {
      readonly code: 'TOO_FEW_MARKERS';
      readonly photo: number;
      readonly found: number;
      readonly least: number;
    }
  | { readonly code: 'ONE_SHEET_ONLY'; readonly photo: number; readonly sheet: number }
  | {
      readonly code: 'PHOTO_TOO_SMALL';
      readonly photo: number;
      /** Pixels a marker's side takes. */
      readonly side: number;
      readonly least: number;
    }
  | {
      readonly code: 'PHOTO_BLURRED';
      readonly photo: number;
      readonly edgeWidth: number;
      readonly most: number;
    }
  | { readonly code: 'PHOTOS_NOT_LINKED' }
  | {
      readonly code: 'MARKERS_DISAGREE';
      readonly photo: number;
      readonly residualPx: number;
      readonly most: number;
    }
  | {
      readonly code: 'TAPE_DISAGREES';
      readonly tape: number;
      readonly length: number;
      readonly predicted: number;
      readonly sigma: number;
      readonly deviation: number;
    }
  | { readonly code: 'NO_INK_LINE' }
  | { readonly code: 'INK_INCOMPLETE'; readonly support: number; readonly least: number }
  | { readonly code: 'OUTLINE_NOT_FITTED' }
  | { readonly code: 'FIT_POOR'; readonly inliers: number; readonly least: number }
  | { readonly code: 'STOPPED' };

/** What the maker must answer or look at before the outline is cut from. */
export type TraceQuestion =
  | { readonly code: 'PARALLEL_LINE'; readonly offset: number; readonly share: number }
  | {
      readonly code: 'TAPE_DOUBTFUL';
      readonly tape: number;
      readonly length: number;
      readonly predicted: number;
      readonly deviation: number;
    }
  | { readonly code: 'INK_PARTLY_SEEN'; readonly support: number; readonly hidden: number }
  | { readonly code: 'INK_SCATTERED'; readonly inliers: number }
  | { readonly code: 'FILM_NOT_FLAT'; readonly scatter: number };

interface Checked {
  readonly refusal?: TraceRefusal;
  readonly questions: readonly TraceQuestion[];
}

/** Shorter lenses bend too much for two radial terms. */
const LEAST_FOCAL_35 = 20;
const LEAST_MARKERS = 4;
/** A printer farther off than this printed "fit to page". */
const MOST_PRINT_ERROR = 0.06;
/** Widest step from black to paper, as a share of a marker's side. */
const MOST_BLUR = 0.11;
/** A marker of 60 mm smaller than this leaves the ink narrower than two pixels, px. */
const LEAST_SIDE = 36;
const MOST_RESIDUAL_PX = 1;
const DOUBT = 2.5;
const CONTRADICTION = 3.5;

export function checkInput({ photos, tapes, ruler }: TraceInput): TraceRefusal | undefined {
  if (photos.length === 0) return { code: 'NO_PHOTO' };
  const wide = photos.findIndex((p) => p.focalLength35 !== undefined && p.focalLength35 < LEAST_FOCAL_35);
  if (wide >= 0) {
    const focalLength35 = photos[wide]!.focalLength35!;
    return { code: 'ULTRA_WIDE_LENS', photo: wide, focalLength35, least: LEAST_FOCAL_35 };
  }
  if (tapes.length === 0 && !ruler) return { code: 'SCALE_NOT_MEASURED' };
  for (const [tape, { from, to, length }] of tapes.entries()) {
    if (!(length > 0) || !Number.isFinite(length)) return { code: 'TAPE_NOT_A_LENGTH', tape, length };
    for (const { marker, corner } of [from, to]) {
      if (!knownCorner({ marker, corner })) return { code: 'TAPE_CORNER_UNKNOWN', tape, marker, corner };
    }
    const same = from.marker === to.marker && from.corner === to.corner;
    if (same) return { code: 'TAPE_CORNER_UNKNOWN', tape, marker: to.marker, corner: to.corner };
  }
  if (ruler) {
    const { x, y } = ruler;
    const error = Math.max(Math.abs(x / BAR_X - 1), Math.abs(y / BAR_Y - 1));
    if (!(error <= MOST_PRINT_ERROR)) return { code: 'RULER_IMPLAUSIBLE', x, y, most: MOST_PRINT_ERROR };
  }
  return undefined;
}

const knownCorner = ({ marker, corner }: CornerName) =>
  Number.isInteger(marker) &&
  marker >= 0 &&
  marker < MARKERS_PER_SHEET * SHEETS &&
  Number.isInteger(corner) &&
  corner >= 0 &&
  corner <= 3;

export function checkMarkers(
  { tapes }: TraceInput,
  images: readonly GreyImage[],
  seen: readonly (readonly SeenMarker[])[],
): TraceRefusal | undefined {
  for (const photo of images.keys()) {
    const markers = seen[photo]!;
    if (markers.length < LEAST_MARKERS) {
      return { code: 'TOO_FEW_MARKERS', photo, found: markers.length, least: LEAST_MARKERS };
    }
    const sheets = new Set(markers.map(({ id }) => Math.floor(id / MARKERS_PER_SHEET)));
    if (sheets.size < 2) return { code: 'ONE_SHEET_ONLY', photo, sheet: [...sheets][0]! };
    const side = median(markers.map(sideOf));
    if (side < LEAST_SIDE) return { code: 'PHOTO_TOO_SMALL', photo, side, least: LEAST_SIDE };
    const blur = median(markers.map((marker) => marker.edgeWidth / sideOf(marker)));
    if (blur > MOST_BLUR) {
      return { code: 'PHOTO_BLURRED', photo, edgeWidth: blur * side, most: MOST_BLUR * side };
    }
  }
  const sheets = new Set(seen.flat().map(({ id }) => Math.floor(id / MARKERS_PER_SHEET)));
  for (const [tape, { from, to }] of tapes.entries()) {
    for (const { marker } of [from, to]) {
      if (!sheets.has(Math.floor(marker / MARKERS_PER_SHEET)))
        return { code: 'TAPE_MARKER_NOT_SEEN', tape, marker };
    }
  }
  return undefined;
}

function sideOf({ corners }: SeenMarker): number {
  const lengths = corners.map((p, k) =>
    Math.hypot(corners[(k + 1) % 4]!.x - p.x, corners[(k + 1) % 4]!.y - p.y),
  );
  return lengths.reduce((sum, length) => sum + length, 0) / 4;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

export function checkAdjustment({ residualPx, tapes }: Adjustment): Checked {
  const photo = residualPx.findIndex((px) => !(px < MOST_RESIDUAL_PX));
  if (photo >= 0) {
    const residual = residualPx[photo]!;
    const refusal = {
      code: 'MARKERS_DISAGREE',
      photo,
      residualPx: residual,
      most: MOST_RESIDUAL_PX,
    } as const;
    return { refusal, questions: [] };
  }
  const questions: TraceQuestion[] = [];
  for (const [tape, { tape: reading, predicted, sigma, deviation }] of tapes.entries()) {
    const { length } = reading;
    if (Math.abs(deviation) > CONTRADICTION) {
      return {
        refusal: { code: 'TAPE_DISAGREES', tape, length, predicted, sigma, deviation },
        questions: [],
      };
    }
    if (Math.abs(deviation) > DOUBT)
      questions.push({ code: 'TAPE_DOUBTFUL', tape, length, predicted, deviation });
  }
  return { questions };
}

/** More of the outline than this under the sheets is guesswork. */
const MOST_HIDDEN = 0.12;
const LEAST_SUPPORT = 0.85;
const FULL_SUPPORT = 0.97;
const LEAST_INLIERS = 0.8;
const GOOD_INLIERS = 0.92;
/** Ink that scatters more than this about smooth edges lies on a film with folds or waves, mm. */
const FLAT_SCATTER = 0.3;

export function checkFit({ fit, support, inliers }: OutlineFit, { parallel, hidden }: Ink): Checked {
  if (hidden > MOST_HIDDEN)
    return {
      refusal: { code: 'INK_INCOMPLETE', support: 1 - hidden, least: 1 - MOST_HIDDEN },
      questions: [],
    };
  if (support < LEAST_SUPPORT) {
    return { refusal: { code: 'INK_INCOMPLETE', support, least: LEAST_SUPPORT }, questions: [] };
  }
  if (inliers < LEAST_INLIERS)
    return { refusal: { code: 'FIT_POOR', inliers, least: LEAST_INLIERS }, questions: [] };
  const questions: TraceQuestion[] = [];
  if (parallel) questions.push({ code: 'PARALLEL_LINE', offset: parallel.offset, share: parallel.share });
  if (support < FULL_SUPPORT || hidden > 0.02) questions.push({ code: 'INK_PARTLY_SEEN', support, hidden });
  if (inliers < GOOD_INLIERS) questions.push({ code: 'INK_SCATTERED', inliers });
  if (fit.scale > FLAT_SCATTER) questions.push({ code: 'FILM_NOT_FLAT', scatter: fit.scale });
  return { questions };
}
