import type { Point } from '@panewright/geometry';
import type { Millimetre } from '@panewright/quantity';
import type { FitChainRefusal } from '@panewright/survey';

export type FileFormat = 'dxf' | 'svg' | 'csv';

/**
 * What one unit of the file's coordinates is. `px` is the CSS pixel, 1/96 in; `px90` and `px72` are what older drawing
 * programs took it for; `pt` 1/72 in.
 */
export type FileUnit = 'mm' | 'cm' | 'dm' | 'm' | 'in' | 'ft' | 'yd' | 'px' | 'px90' | 'px72' | 'pt';

/** Where in the file: the line (1 is the first), the kind of entity, and its handle or id where it has one. */
export interface FilePlace {
  readonly line: number;
  readonly entity: string;
  readonly id?: string;
}

/** What is bounded: work on a file must end. */
export type Bounded =
  | 'bytes'
  | 'lines'
  | 'entities'
  | 'elements'
  | 'points'
  | 'edges'
  | 'outlines'
  | 'nesting';

export type FileRefusal =
  | { readonly code: 'OPTION_OUT_OF_RANGE'; readonly option: string; readonly value: number }
  | { readonly code: 'FILE_EMPTY' }
  /** A format that is not read; `format` names it where its first bytes tell. */
  | { readonly code: 'FILE_FORMAT_NOT_READ'; readonly format: string }
  | { readonly code: 'FILE_TOO_LARGE'; readonly what: Bounded; readonly found: number; readonly most: number }
  /** Bytes that are no letters of the encoding. `offset` counts bytes from 0. */
  | { readonly code: 'FILE_TEXT_DAMAGED'; readonly encoding: string; readonly offset: number }
  /**
   * The file does not say what its numbers are. State the unit: `offered` are the likely ones, most likely first;
   * `width` and `height` are the drawing's, in the file's own numbers.
   */
  | {
      readonly code: 'UNIT_NOT_STATED';
      readonly format: FileFormat;
      readonly offered: readonly FileUnit[];
      readonly width: number;
      readonly height: number;
    }
  /** A unit no window is drawn in (miles, ångström) or a number that means none: state the unit. */
  | { readonly code: 'UNIT_NOT_READ'; readonly stated: string }
  /** The file ends before `wanted`. */
  | { readonly code: 'FILE_CUT_SHORT'; readonly line: number; readonly wanted: string }
  | {
      readonly code: 'FILE_UNREADABLE_AT';
      readonly line: number;
      readonly column?: number;
      readonly wanted: string;
      readonly found: string;
    }
  | {
      readonly code: 'NUMBER_UNREADABLE';
      readonly place: FilePlace;
      readonly what: string;
      readonly text: string;
    }
  | {
      readonly code: 'NUMBER_OUT_OF_RANGE';
      readonly place: FilePlace;
      readonly what: string;
      readonly value: number;
    }
  | { readonly code: 'VALUE_MISSING'; readonly place: FilePlace; readonly what: string }
  | {
      readonly code: 'COUNT_WRONG';
      readonly place: FilePlace;
      readonly what: string;
      readonly stated: number;
      readonly found: number;
    }
  | { readonly code: 'ENTITY_NOT_FLAT'; readonly place: FilePlace }
  /** A spline given only by the points it passes: programs draw different curves through them. */
  | { readonly code: 'SPLINE_WITHOUT_CONTROL_POINTS'; readonly place: FilePlace }
  | { readonly code: 'SPLINE_KNOTS_WRONG'; readonly place: FilePlace }
  /** What is inserted or used is not in the file. */
  | { readonly code: 'REFERENCE_MISSING'; readonly place: FilePlace; readonly name: string }
  /** A block or symbol that holds itself. */
  | { readonly code: 'REFERENCE_CIRCULAR'; readonly place: FilePlace; readonly name: string }
  /** No chain of arcs keeps within the tolerance (a curve wilder than any window's). */
  | { readonly code: 'CURVE_NOT_FITTED'; readonly place: FilePlace; readonly tolerance: Millimetre }
  | { readonly code: 'NO_OUTLINE'; readonly layers: readonly string[] }
  /** A line whose ends do not meet within `closeWithin`. Points in mm. */
  | {
      readonly code: 'OUTLINE_OPEN';
      readonly from: Point;
      readonly to: Point;
      readonly gap: Millimetre;
      readonly closeWithin: Millimetre;
      readonly layer?: string;
      readonly place: FilePlace;
    }
  /** Three ends or more at one point: which two go on is not said. */
  | {
      readonly code: 'ENDS_MEET';
      readonly at: Point;
      readonly ends: number;
      readonly layer?: string;
      readonly place: FilePlace;
    }
  | {
      readonly code: 'FILE_OUTLINE_CROSSES_ITSELF';
      readonly at: Point;
      readonly layer?: string;
      readonly places: readonly [FilePlace, FilePlace];
    }
  | {
      readonly code: 'OUTLINE_TOO_LARGE';
      readonly size: Millimetre;
      readonly most: Millimetre;
      readonly place: FilePlace;
    }
  /** Columns x and y cannot be told: name them in the first line. */
  | { readonly code: 'COLUMNS_UNCLEAR'; readonly line: number; readonly columns: number }
  /** Commas between the numbers and in them: use semicolons or tabs, or decimal points. */
  | { readonly code: 'COMMAS_UNCLEAR'; readonly line: number }
  | { readonly code: 'POINTS_TOO_FEW'; readonly points: number; readonly least: number }
  | FitChainRefusal;

/** What was noticed and what was done about it; nothing is mended without one. Points in mm. */
export type FileNote =
  /** Ends that did not quite meet were brought together, half the gap each. */
  | { readonly code: 'GAPS_CLOSED'; readonly count: number; readonly widest: Millimetre; readonly at: Point }
  | { readonly code: 'DUPLICATES_LEFT_OUT'; readonly count: number; readonly place: FilePlace }
  /** Pieces shorter than can matter. */
  | {
      readonly code: 'TINY_PIECES_LEFT_OUT';
      readonly count: number;
      readonly longest: Millimetre;
      readonly place: FilePlace;
    }
  /** Open lines that look like marks or annotation, not like an outline. */
  | {
      readonly code: 'OPEN_LINES_LEFT_OUT';
      readonly count: number;
      readonly layer?: string;
      readonly place: FilePlace;
    }
  /** Entities of a kind that draws no outline (text, points, dimensions, hatching). */
  | { readonly code: 'KIND_LEFT_OUT'; readonly kind: string; readonly count: number }
  | { readonly code: 'HIDDEN_LEFT_OUT'; readonly count: number; readonly layer?: string }
  | { readonly code: 'PAPER_SPACE_LEFT_OUT'; readonly count: number }
  /** Curves that are no arcs were drawn as tangent arcs; `farthest` is the largest departure found. */
  | {
      readonly code: 'CURVES_FITTED';
      readonly curves: number;
      readonly arcs: number;
      readonly farthest: Millimetre;
    }
  /** The unit given is not the file's own. */
  | { readonly code: 'UNIT_OVERRULED'; readonly stated: FileUnit; readonly used: FileUnit }
  | { readonly code: 'STYLE_SHEET_NOT_READ'; readonly line: number }
  | { readonly code: 'ENCODING_NOT_KNOWN'; readonly encoding: string }
  /** Two outlines that cross each other. */
  | { readonly code: 'OUTLINES_OVERLAP'; readonly first: number; readonly second: number };
