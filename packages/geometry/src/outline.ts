import type { Millimetre } from '@panewright/quantity';

/** A point of the plane. x to the right, y up, millimetres. */
export interface Point {
  readonly x: Millimetre;
  readonly y: Millimetre;
}

/** An edge, from wherever the previous one ended. `bulge` = tan(sweep / 4), anticlockwise positive, never 0. */
export type Segment =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'arc'; readonly to: Point; readonly bulge: number };

/** A closed ring, anticlockwise. It begins where its last edge ends. */
export interface Outline {
  readonly segments: readonly [Segment, ...Segment[]];
}
