import { mm } from '@panewright/quantity';
import type { Point } from './outline.ts';

/** A point from two numbers in millimetres. Checks nothing: foreign numbers are parsed at the document's schema. */
export const point = (x: number, y: number): Point => ({ x: mm(x), y: mm(y) });

/** A pair of bare numbers: a direction, or a point inside the kernels. A {@link Point} is one. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}
