import type { ReshapeRefusal } from '@panewright/geometry';
import type { TraceQuestion, TraceRefusal } from '@panewright/photo';
import type { Show } from '../show.ts';

type Words<U extends { readonly code: string }> = {
  readonly [C in U['code']]: (of: Extract<U, { readonly code: C }>) => string;
};

const mm = (value: number) => `${value.toFixed(1)} mm`;
const percent = (share: number) => `${Math.round(share * 100)} %`;
const photo = (index: number) => `photo ${index + 1}`;
const tape = (index: number) => `taped distance ${index + 1}`;

/** Why photos give no outline: what is the matter, and what would do. */
export const traceRefusals: Words<TraceRefusal> = {
  NO_PHOTO: () => 'No photo was given.',
  ULTRA_WIDE_LENS: ({ photo: at, focalLength35, least }) =>
    `The lens of ${photo(at)} is too wide (${focalLength35} mm, 35 mm equivalent; ${least} mm or longer is needed): use the phone’s main camera.`,
  SCALE_NOT_MEASURED: () =>
    'Nothing tells the true size: tape one distance between two markers, or rule the printed bars.',
  TAPE_NOT_A_LENGTH: ({ tape: at, length }) => `The ${tape(at)} is ${length} mm: it must be above 0.`,
  TAPE_CORNER_UNKNOWN: ({ tape: at, marker, corner }) =>
    `The ${tape(at)} names marker ${marker}, corner ${corner}: markers are 0 to 15, corners 0 to 3, and its two ends differ.`,
  TAPE_MARKER_NOT_SEEN: ({ tape: at, marker }) =>
    `The ${tape(at)} ends at marker ${marker}, and no photo shows its sheet: take a photo that does.`,
  RULER_IMPLAUSIBLE: ({ x, y, most }) =>
    `The printed bars were ruled as ${mm(x)} and ${mm(y)}: more than ${percent(most)} off 200 and 150 mm. Print at actual size, or rule again.`,
  TOO_FEW_MARKERS: ({ photo: at, found, least }) =>
    `Only ${found} markers are seen in ${photo(at)}; ${least} are needed: step back, and keep the sheets flat and in the light.`,
  ONE_SHEET_ONLY: ({ photo: at }) =>
    `Only one sheet is seen in ${photo(at)}: no true size without two sheets or more in the picture.`,
  PHOTO_TOO_SMALL: ({ photo: at, side, least }) =>
    `The markers of ${photo(at)} are ${Math.round(side)} pixels wide, ${least} are needed: send the photo at its full size, or step nearer.`,
  PHOTO_BLURRED: ({ photo: at }) =>
    `The picture of ${photo(at)} is blurred: hold still, or take it in more light.`,
  PHOTOS_NOT_LINKED: () =>
    'The photos cannot be brought together: each needs sheets that another shows too, and the film must lie unmoved.',
  MARKERS_DISAGREE: ({ photo: at, residualPx, most }) =>
    `The markers of ${photo(at)} do not lie as the sheets have them (${residualPx.toFixed(2)} px off, ${most} at most): a sheet was moved or bent, the lens zoomed, or the sheets are on other paper than said (A4, Letter).`,
  TAPE_DISAGREES: ({ tape: at, length, predicted, sigma }) =>
    `The ${tape(at)} of ${mm(length)} contradicts the rest, which gives ${mm(predicted)} ± ${mm(1.96 * sigma)}: measure it again.`,
  NO_INK_LINE: () =>
    'No closed ink line is found: trace with a broad dark pen, all the way round, and keep the whole line in the picture.',
  INK_INCOMPLETE: ({ support, least }) =>
    `Only ${percent(support)} of the line is seen, ${percent(least)} is needed: take away what lies on it, or take a second photo.`,
  OUTLINE_NOT_FITTED: () =>
    'The ink line does not come out as lines and arcs: trace the corners again, or draw the outline by hand.',
  FIT_POOR: ({ inliers, least }) =>
    `Only ${percent(inliers)} of the ink fits an outline, ${percent(least)} is needed: is there more than one line?`,
  STOPPED: () => 'The work was stopped.',
};

/** What to look at before cutting from a traced outline. */
export const traceQuestions: Words<TraceQuestion> = {
  PARALLEL_LINE: ({ offset }) =>
    `There are two parallel lines, ${mm(Math.abs(offset))} apart: which one is meant?`,
  TAPE_DOUBTFUL: ({ tape: at, length, predicted }) =>
    `The ${tape(at)} of ${mm(length)} hardly agrees with the rest, which gives ${mm(predicted)}: measure it again.`,
  INK_PARTLY_SEEN: ({ support }) => `Only ${percent(support)} of the line is seen: look at the rest.`,
  INK_SCATTERED: ({ inliers }) =>
    `Only ${percent(inliers)} of the ink lies on the outline: look where it does not.`,
  FILM_NOT_FLAT: ({ scatter }) =>
    `The film does not lie flat (the ink scatters by ${mm(scatter)}): smooth it and take the photo again.`,
};

/** Why an edge is not moved by hand. */
export const reshapeRefusals: {
  readonly [C in ReshapeRefusal['code']]: (
    of: Extract<ReshapeRefusal, { readonly code: C }>,
    show: Show,
  ) => string;
} = {
  EDGE_NOT_THERE: ({ edge, edges }) => `There is no edge ${edge + 1}; the outline has ${edges}.`,
  EDGE_NOT_ROUND: ({ edge }) => `Edge ${edge + 1} is straight and has no radius.`,
  CORNER_NOT_SHARP: ({ edge }) =>
    `Edge ${edge + 1} ends smoothly: move the edge, or change the radius beside it.`,
  RADIUS_TOO_SMALL: ({ edge, least }, show) =>
    `The radius of edge ${edge + 1} must be above ${show.length(least)}.`,
  NEIGHBOURS_DO_NOT_MEET: ({ edge }) =>
    `Edge ${edge + 1} cannot go there: the edges beside it would no longer meet it.`,
};
