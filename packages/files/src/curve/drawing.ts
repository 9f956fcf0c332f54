import type { Vector } from '@panewright/geometry';
import type { FileNote, FilePlace, FileUnit } from '../fileRefusal.ts';

/** A control point times its weight, and the weight. */
export interface Weighted {
  readonly x: number;
  readonly y: number;
  readonly w: number;
}

/**
 * One curve as a file has it. `ellipse` is `centre + u cos t + v sin t`, t from `start` to `end`: any affine image of a
 * circle. `bezier` is rational, of degree `points.length - 1`.
 */
export type FileCurve =
  | { readonly kind: 'line'; readonly from: Vector; readonly to: Vector }
  | { readonly kind: 'arc'; readonly from: Vector; readonly to: Vector; readonly bulge: number }
  | EllipseCurve
  | { readonly kind: 'bezier'; readonly points: readonly Weighted[] };

export interface EllipseCurve {
  readonly kind: 'ellipse';
  readonly centre: Vector;
  readonly u: Vector;
  readonly v: Vector;
  readonly start: number;
  readonly end: number;
}

/** Curves drawn in one go, each from where the last ended; y up. */
export interface Stroke {
  readonly curves: readonly FileCurve[];
  readonly layer?: string;
  readonly name?: string;
  readonly place: FilePlace;
}

/** A line or arc in mm: what outlines are joined from. `bulge` 0 is a line. */
export interface Piece {
  readonly from: Vector;
  readonly to: Vector;
  readonly bulge: number;
  readonly place: FilePlace;
}

/** Pieces that follow one another. */
export interface Chain {
  readonly pieces: readonly Piece[];
  readonly layer?: string;
  readonly name?: string;
}

/** What a reader makes of a file: strokes in the file's own unit, y up. */
export interface Drawing {
  readonly strokes: readonly Stroke[];
  /** What the file says its unit is. */
  readonly unit: FileUnit | undefined;
  /** What one of its units is by its own account, mm, where that is not the plain unit. */
  readonly millimetres?: number;
  /** Pixels to one of its units, where its page is sized in pixels. */
  readonly pixels?: number;
  /** Units to offer where it does not say, most likely first. */
  readonly offered: readonly FileUnit[];
  readonly notes: readonly FileNote[];
}
