import type { Measured } from './tapeSurvey.ts';

export type Pair = readonly [number, number];
export type Four<T> = readonly [T, T, T, T];

/** Sharp corners anticlockwise from bottom left, and the radius at each (0 is sharp). Bare mm inside this folder. */
export interface Quadrilateral {
  readonly corners: Four<Pair>;
  readonly radii: Four<number>;
}

/** Unknowns: bottomRight.x, topRight.x, topRight.y, topLeft.x, topLeft.y, then the radii not fixed at 0. */
export function quadrilateralOf(parameters: ArrayLike<number>, rounded: readonly number[]): Quadrilateral {
  const radii: [number, number, number, number] = [0, 0, 0, 0];
  rounded.forEach((corner, i) => {
    radii[corner] = parameters[5 + i]!;
  });
  return {
    corners: [
      [0, 0],
      [parameters[0]!, 0],
      [parameters[1]!, parameters[2]!],
      [parameters[3]!, parameters[4]!],
    ],
    radii,
  };
}

const distance = ([ax, ay]: Pair, [bx, by]: Pair) => Math.hypot(bx - ax, by - ay);
const middle = ([ax, ay]: Pair, [bx, by]: Pair): Pair => [(ax + bx) / 2, (ay + by) / 2];

/** Interior angle at corner k, rad; above π where the figure is re-entrant. */
export function interiorAngle({ corners }: Quadrilateral, k: number): number {
  const [at, next, before] = [corners[k]!, corners[(k + 1) % 4]!, corners[(k + 3) % 4]!];
  const [ux, uy] = [next[0] - at[0], next[1] - at[1]];
  const [vx, vy] = [before[0] - at[0], before[1] - at[1]];
  const angle = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

export const sideLength = ({ corners }: Quadrilateral, k: number): number =>
  distance(corners[k]!, corners[(k + 1) % 4]!);

/** Centre of the arc that rounds corner k: on the bisector, radius / sin(angle / 2) from the corner. */
function roundingCentre(shape: Quadrilateral, k: number): Pair {
  const { corners, radii } = shape;
  const [at, next, before] = [corners[k]!, corners[(k + 1) % 4]!, corners[(k + 3) % 4]!];
  const [nextLength, beforeLength] = [distance(at, next), distance(at, before)];
  const [ux, uy] = [(next[0] - at[0]) / nextLength, (next[1] - at[1]) / nextLength];
  const [vx, vy] = [(before[0] - at[0]) / beforeLength, (before[1] - at[1]) / beforeLength];
  const reach = radii[k]! / (ux * vy - uy * vx);
  return [at[0] + reach * (ux + vx), at[1] + reach * (uy + vy)];
}

/** Between sharp corners, or the greatest distance over the rounded ones: centre distance plus both radii. */
function diagonal(shape: Quadrilateral, from: number, to: number, toRound: boolean): number {
  if (!toRound) return distance(shape.corners[from]!, shape.corners[to]!);
  const centres = distance(roundingCentre(shape, from), roundingCentre(shape, to));
  return centres + shape.radii[from]! + shape.radii[to]!;
}

/**
 * What a tape would read on this figure, mm.
 *
 * @source elementary geometry; sources.md#rounded-diagonal
 */
export function wouldRead(shape: Quadrilateral, of: Measured, toRound: boolean): number {
  const [bottomLeft, bottomRight, topRight, topLeft] = shape.corners;
  switch (of) {
    case 'bottom':
      return sideLength(shape, 0);
    case 'right':
      return sideLength(shape, 1);
    case 'top':
      return sideLength(shape, 2);
    case 'left':
      return sideLength(shape, 3);
    case 'rising':
      return diagonal(shape, 0, 2, toRound);
    case 'falling':
      return diagonal(shape, 3, 1, toRound);
    case 'midWidth':
      return distance(middle(topLeft, bottomLeft), middle(topRight, bottomRight));
    case 'midHeight':
      return distance(middle(bottomLeft, bottomRight), middle(topLeft, topRight));
    case 'radiusBottomLeft':
      return shape.radii[0];
    case 'radiusBottomRight':
      return shape.radii[1];
    case 'radiusTopRight':
      return shape.radii[2];
    case 'radiusTopLeft':
      return shape.radii[3];
  }
}
