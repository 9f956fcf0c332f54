import type { Point, Segment } from '@panewright/geometry';

/** A line as drawn: weight in mm, dashes in mm (drawn, left out, drawn, …), colour as `#rrggbb`. */
export interface LineStyle {
  readonly weight: number;
  readonly dash?: readonly number[];
  readonly colour: string;
}

/** Line and arc segments from `start`. A closed path returns to its start by a straight line if it is not there yet. */
export interface PathItem {
  readonly kind: 'path';
  readonly start: Point;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
  readonly line?: LineStyle;
  /** Colour as `#rrggbb`. */
  readonly fill?: string;
}

export type Face = 'regular' | 'bold';
export type Anchor = 'start' | 'middle' | 'end';

/** One line of text. `at` is on the baseline, at the start, middle or end of the text. */
export interface TextItem {
  readonly kind: 'text';
  readonly text: string;
  readonly at: Point;
  /** Size of the font (its em), mm. */
  readonly size: number;
  readonly face: Face;
  readonly anchor: Anchor;
  /** Radians anticlockwise. */
  readonly turn: number;
  readonly colour: string;
}

/** Layers of a drawing: a viewer may show or hide them, a reader may pick them. */
export type Layer =
  | 'cut'
  | 'finished'
  | 'stitch'
  | 'band'
  | 'pocket'
  | 'hold'
  | 'mark'
  | 'grain'
  | 'register'
  | 'measure'
  | 'frame'
  | 'opening'
  | 'roll'
  | 'text';

export interface GroupItem {
  readonly kind: 'group';
  readonly layer: Layer;
  readonly items: readonly Item[];
}

export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A symbol of the sheet drawn with its origin at `at`, seen through `window` (in page coordinates) where given. */
export interface UseItem {
  readonly kind: 'use';
  readonly symbol: string;
  readonly at: Point;
  readonly window?: Rectangle;
}

/** A picture from a file, its lower left corner at `at`. Only the shop's sign is one: drawings are lines, arcs and text. */
export interface ImageItem {
  readonly kind: 'image';
  readonly at: Point;
  readonly width: number;
  readonly height: number;
  readonly mediaType: 'image/png' | 'image/jpeg';
  readonly base64: string;
}

export type Item = PathItem | TextItem | GroupItem | UseItem | ImageItem;

/** One side of paper. Origin at the bottom-left corner of the paper, x right, y up, mm. */
export interface Page {
  /** e.g. the tile's row and column; empty where the number says enough. */
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
  /**
   * What a printer's own error is made up by, about the middle of the page: along its x and along its y. Only paper needs
   * it: a renderer for screens or machines leaves it.
   */
  readonly correction?: { readonly x: number; readonly y: number };
}

/** A table of plain values beside the drawing, for a spreadsheet. */
export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** A document: pages of lines, arcs and text in mm, with no device in mind. */
export interface Sheet {
  /** Where it is filed, without the ending, e.g. `patterns/P1-letter`. */
  readonly path: string;
  readonly title: string;
  readonly pages: readonly Page[];
  /** Drawings used on several pages. */
  readonly symbols: Readonly<Record<string, readonly Item[]>>;
  readonly table?: Table;
  /** Language of its text, by ISO 639-1; not told where not given. */
  readonly language?: string;
}

/**
 * Widths of the two faces the sheets are set in. All per unit of font size, so mm once multiplied by the size.
 * The drawing never looks at a font: whoever holds one measures it.
 */
export interface FontMetrics {
  /** Height of a capital. */
  readonly capital: number;
  /** Highest and lowest reach of ordinary letters, both positive. */
  readonly ascent: number;
  readonly descent: number;
  readonly width: (text: string, face: Face) => number;
}
