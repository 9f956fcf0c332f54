import type { FileNote, FilePlace, FileRefusal, FileUnit } from '@panewright/files';
import { joinWords, type Show } from '../show.ts';

type Words<U extends { readonly code: string }> = {
  readonly [C in U['code']]: (of: Extract<U, { readonly code: C }>, show: Show) => string;
};

const at = ({ line, entity, id }: FilePlace) =>
  `${entity}${id === undefined ? '' : ` ${id}`} in line ${line}`;
const where = ({ x, y }: { readonly x: number; readonly y: number }, show: Show) =>
  `${show.number(x, 2)}, ${show.number(y, 2)} mm`;
const onLayer = (layer: string | undefined) => (layer === undefined ? '' : ` on layer “${layer}”`);

const UNITS: Readonly<Record<FileUnit, string>> = {
  ...{ mm: 'mm', cm: 'cm', dm: 'dm', m: 'm', in: 'inches', ft: 'feet', yd: 'yards' },
  ...{ px: 'pixels of 1/96 in', px90: 'pixels of 1/90 in', px72: 'pixels of 1/72 in', pt: 'points' },
};
export const sayFileUnit = (unit: FileUnit): string => UNITS[unit];

const refusals: Words<FileRefusal> = {
  OPTION_OUT_OF_RANGE: ({ option, value }) => `${option} may not be ${value}`,
  FILE_EMPTY: () => 'it is empty',
  FILE_FORMAT_NOT_READ: ({ format }) =>
    format === 'unknown' ? 'it is neither DXF, SVG nor CSV' : `${format} is not read`,
  FILE_TOO_LARGE: ({ what, found, most }) => `it has ${found} ${what}, and ${most} are read at most`,
  FILE_TEXT_DAMAGED: ({ encoding, offset }) => `byte ${offset} is no letter of ${encoding}`,
  UNIT_NOT_STATED: ({ width, height, offered }, show) =>
    `it does not say what its numbers are; it is ${show.number(width, 3)} by ${show.number(height, 3)} of them, perhaps ${joinWords(offered.map(sayFileUnit), 'or')}`,
  UNIT_NOT_READ: ({ stated }) => `its unit, “${stated}”, is none a window is drawn in`,
  FILE_CUT_SHORT: ({ line, wanted }) => `it ends in line ${line}, before ${wanted}`,
  FILE_UNREADABLE_AT: ({ line, wanted, found }) =>
    `line ${line} should be ${wanted} and is “${found.slice(0, 40)}”`,
  NUMBER_UNREADABLE: ({ place, what, text }) => `${what} of ${at(place)} reads “${text.slice(0, 40)}”`,
  NUMBER_OUT_OF_RANGE: ({ place, what, value }) => `${what} of ${at(place)} is ${value}`,
  VALUE_MISSING: ({ place, what }) => `${at(place)} has no ${what}`,
  COUNT_WRONG: ({ place, what, stated, found }) => `${at(place)} says ${stated} ${what} and has ${found}`,
  ENTITY_NOT_FLAT: ({ place }) => `${at(place)} does not lie in the plane of the drawing`,
  SPLINE_WITHOUT_CONTROL_POINTS: ({ place }) => `${at(place)} is a spline without control points`,
  SPLINE_KNOTS_WRONG: ({ place }) => `the knots of ${at(place)} make no spline`,
  REFERENCE_MISSING: ({ place, name }) => `${at(place)} uses “${name}”, which is not in the file`,
  REFERENCE_CIRCULAR: ({ place, name }) => `${at(place)}: “${name}” holds itself`,
  CURVE_NOT_FITTED: ({ place, tolerance }) => `no arcs follow ${at(place)} within ${tolerance} mm`,
  NO_OUTLINE: ({ layers }) =>
    `it has no closed line${layers.length > 0 ? ` on ${joinWords(layers.map((layer) => `“${layer}”`))}` : ''}`,
  OUTLINE_OPEN: ({ from, to, gap, layer, place }, show) =>
    `the line that begins with ${at(place)}${onLayer(layer)} is open by ${show.number(gap, 2)} mm, between ${where(from, show)} and ${where(to, show)}`,
  ENDS_MEET: ({ at: point, ends, layer }, show) =>
    `${ends} ends${onLayer(layer)} meet at ${where(point, show)}, and which go on is not said`,
  FILE_OUTLINE_CROSSES_ITSELF: ({ at: point, layer }, show) =>
    `an outline${onLayer(layer)} crosses itself at ${where(point, show)}`,
  OUTLINE_TOO_LARGE: ({ size, most, place }, show) =>
    `the outline of ${at(place)} is ${show.number(size, 0)} mm large, ${show.number(most, 0)} mm at most: is the unit right`,
  COLUMNS_UNCLEAR: ({ line, columns }) =>
    `line ${line} has ${columns} columns, and which are x and y is not said`,
  COMMAS_UNCLEAR: ({ line }) => `line ${line} has commas between its numbers and in them`,
  POINTS_TOO_FEW: ({ points, least }) => `${points} points are too few; ${least} are needed`,
  TRACE_TOO_FEW_POINTS: ({ points, least }) => `${points} points are too few; ${least} are needed`,
  TRACE_POINT_NOT_FINITE: ({ index }) => `point ${index + 1} is not finite`,
  TRACE_SIGMA_NOT_POSITIVE: ({ index, sigma }) => `the spread of point ${index + 1} is ${sigma}`,
  TRACE_ENCLOSES_NOTHING: () => 'its points enclose nothing',
  TRACE_NO_LINES_OR_ARCS: ({ points }) => `no lines and arcs follow its ${points} points`,
  TRACE_TOO_MANY_EDGES: ({ edges, most }) => `its points need ${edges} lines and arcs, ${most} at most`,
  TRACE_MISFIT: ({ share }, show) => `only ${show.percent(share)} of its points lie on the best outline`,
};

const notes: Words<FileNote> = {
  GAPS_CLOSED: ({ count, widest, at: point }, show) =>
    `${count} gaps were closed, the widest of ${show.number(widest, 3)} mm at ${where(point, show)}.`,
  DUPLICATES_LEFT_OUT: ({ count }) => `${count} lines drawn twice were left out.`,
  TINY_PIECES_LEFT_OUT: ({ count, longest }, show) =>
    `${count} pieces of at most ${show.number(longest, 4)} mm were left out.`,
  OPEN_LINES_LEFT_OUT: ({ count, layer }) => `${count} open lines${onLayer(layer)} were left out.`,
  KIND_LEFT_OUT: ({ kind, count }) => `${count} of kind ${kind} were left out.`,
  HIDDEN_LEFT_OUT: ({ count }) => `${count} hidden lines were left out.`,
  PAPER_SPACE_LEFT_OUT: ({ count }) => `${count} lines of the paper’s frame were left out.`,
  CURVES_FITTED: ({ curves, arcs, farthest }, show) =>
    `${curves} curves were drawn as ${arcs} arcs, at most ${show.number(farthest, 3)} mm off.`,
  UNIT_OVERRULED: ({ stated, used }) =>
    `The file says ${sayFileUnit(stated)}; ${sayFileUnit(used)} were used, as told.`,
  STYLE_SHEET_NOT_READ: ({ line }) => `The style sheet in line ${line} was not read.`,
  ENCODING_NOT_KNOWN: ({ encoding }) => `The encoding “${encoding}” is not known; names may be misspelt.`,
  OUTLINES_OVERLAP: ({ first, second }) => `Outlines ${first + 1} and ${second + 1} overlap.`,
};

/** Why a file gives no outline, as the end of a sentence. */
export const sayFileRefusal = (refusal: FileRefusal, show: Show): string =>
  (refusals[refusal.code] as (of: FileRefusal, show: Show) => string)(refusal, show);

export const sayFileNote = (note: FileNote, show: Show): string =>
  (notes[note.code] as (of: FileNote, show: Show) => string)(note, show);

/** What would do. */
export function fileRemedy({ code }: FileRefusal): string {
  switch (code) {
    case 'UNIT_NOT_STATED':
    case 'UNIT_NOT_READ':
      return 'Say what one unit of the file is.';
    case 'OUTLINE_OPEN':
    case 'ENDS_MEET':
    case 'FILE_OUTLINE_CROSSES_ITSELF':
    case 'NO_OUTLINE':
      return 'Close the line where it was drawn, and save it again.';
    case 'FILE_FORMAT_NOT_READ':
      return 'Save it as DXF (text), SVG or CSV.';
    default:
      return 'Look at the file where it was made, and save it again.';
  }
}
