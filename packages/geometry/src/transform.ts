import { type Radian, radian } from '@panewright/quantity';
import { edges } from './edges.ts';
import type { Outline, Point, Segment } from './outline.ts';
import { point } from './point.ts';

/**
 * A rigid motion. In this order: if `mirrored`, x changes sign; then a turn anticlockwise by `angle` about the
 * origin; then the `shift`.
 */
export interface Rigid {
  readonly angle: Radian;
  readonly shift: Point;
  readonly mirrored: boolean;
}

/** The motion that moves nothing. */
export const still: Rigid = { angle: radian(0), shift: point(0, 0), mirrored: false };

/** Only a shift, in mm. */
export const shiftBy = (x: number, y: number): Rigid => ({ ...still, shift: point(x, y) });

/**
 * Only a turn, anticlockwise, about a point.
 *
 * @param angle radians
 * @source rotation about a centre: p' = c + R (p - c)
 */
export function turnAbout(centre: Point, angle: Radian): Rigid {
  const image = movePoint({ ...still, angle }, centre);
  return { angle, shift: point(centre.x - image.x, centre.y - image.y), mirrored: false };
}

/** The mirror image left for right, about the upright line at `x` mm. */
export const mirrorAbout = (x: number): Rigid => ({
  angle: radian(0),
  shift: point(2 * x, 0),
  mirrored: true,
});

/**
 * A point moved.
 *
 * @returns mm
 * @source rotation matrix
 */
export function movePoint({ angle, shift, mirrored }: Rigid, p: Point): Point {
  const x = mirrored ? -p.x : p.x;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return point(cos * x - sin * p.y + shift.x, sin * x + cos * p.y + shift.y);
}

/**
 * An outline moved. It stays anticlockwise and starts at the image of its start point. Unmirrored, segment i stays
 * segment i; mirrored, the ring is run the other way and segment i becomes segment n - 1 - i.
 *
 * @source rotation matrix; a mirror image turns arcs about and running backwards turns them back, so bulges stay
 */
export function moveOutline(motion: Rigid, outline: Outline): Outline {
  const moved = motion.mirrored
    ? edges(outline)
        .toReversed()
        .map(({ from, bulge }) => segment(movePoint(motion, from), bulge))
    : edges(outline).map(({ to, bulge }) => segment(movePoint(motion, to), bulge));
  return { segments: moved as [Segment, ...Segment[]] };
}

const segment = (to: Point, bulge: number): Segment =>
  bulge === 0 ? { kind: 'line', to } : { kind: 'arc', to, bulge };

/**
 * The one motion that does `first`, then `second`.
 *
 * @source a mirror turns a rotation about: M R(a) = R(-a) M
 */
export function compose(second: Rigid, first: Rigid): Rigid {
  const angle = second.mirrored ? second.angle - first.angle : second.angle + first.angle;
  return {
    angle: radian(angle),
    shift: movePoint(second, first.shift),
    mirrored: second.mirrored !== first.mirrored,
  };
}

/**
 * The motion that undoes this one.
 *
 * @source inverse of a rotation is its transpose; a mirrored turn undoes itself
 */
export function invert(motion: Rigid): Rigid {
  const angle = radian(motion.mirrored ? motion.angle : -motion.angle);
  const back = movePoint({ angle, shift: point(0, 0), mirrored: motion.mirrored }, motion.shift);
  return { angle, shift: point(-back.x, -back.y), mirrored: motion.mirrored };
}
