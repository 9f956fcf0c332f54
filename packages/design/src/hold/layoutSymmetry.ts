import { compose, movePoint, type Point, point, type Rigid } from '@panewright/geometry';
import { radian } from '@panewright/quantity';

/** A way to lay a panel on its window so that its hold points meet others of the window's. */
export interface Fit {
  readonly motion: Rigid;
  /** True where the panel is turned over, so that its inner face is outside. */
  readonly turnedOver: boolean;
  /** Point k of the panel meets point `onto[k]` of the window. */
  readonly onto: readonly number[];
}

/**
 * Every way, the right one first, to lay a set of points on itself so that each meets one, as it is or turned over.
 *
 * @param within how near a magnet must come to its partner to be drawn to it, mm
 * @returns motions that carry every point to within `within` of a point, no two the same assignment
 * @range points farther apart than twice `within`
 * @source a rigid motion of the plane is fixed by two points and its side: tried for every pair
 */
export function waysToFit(points: readonly Point[], within: number): readonly Fit[] {
  const right: Fit = {
    motion: motionOf(0, point(0, 0), false),
    turnedOver: false,
    onto: points.map((_, k) => k),
  };
  if (points.length < 2) return [right];
  const far = farthestFrom(points, 0);
  const span = apart(points[0]!, points[far]!);
  const found = [right];
  for (const mirrored of [false, true])
    for (const [i, a] of points.entries())
      for (const [j, b] of points.entries()) {
        if (i === j || Math.abs(apart(a, b) - span) > 2 * within) continue;
        const fit = fitBy(points, [points[0]!, points[far]!], [a, b], mirrored, within);
        if (fit && !found.some((other) => sameFit(other, fit))) found.push(fit);
      }
  return found;
}

const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

const sameFit = (a: Fit, b: Fit): boolean =>
  a.turnedOver === b.turnedOver && a.onto.every((k, i) => k === b.onto[i]);

function farthestFrom(points: readonly Point[], from: number): number {
  return points.reduce(
    (best, p, k) => (apart(p, points[from]!) > apart(points[best]!, points[from]!) ? k : best),
    from === 0 ? 1 : 0,
  );
}

const motionOf = (angle: number, shift: Point, mirrored: boolean): Rigid => ({
  angle: radian(angle),
  shift,
  mirrored,
});

/** The motion that carries the middle and the direction of one pair of points to another's. */
function fitBy(
  points: readonly Point[],
  from: readonly [Point, Point],
  to: readonly [Point, Point],
  mirrored: boolean,
  within: number,
): Fit | null {
  const sign = mirrored ? -1 : 1;
  const direction = ([p, q]: readonly [Point, Point], flip: number) =>
    Math.atan2(q.y - p.y, flip * (q.x - p.x));
  const turn = direction(to, 1) - direction(from, sign);
  const unshifted = motionOf(turn, point(0, 0), mirrored);
  const middle = ([p, q]: readonly [Point, Point]) => point((p.x + q.x) / 2, (p.y + q.y) / 2);
  const [here, there] = [movePoint(unshifted, middle(from)), middle(to)];
  const motion = compose(motionOf(0, point(there.x - here.x, there.y - here.y), false), unshifted);
  const onto = points.map((p) => {
    const image = movePoint(motion, p);
    return points.findIndex((q) => apart(q, image) <= within);
  });
  if (onto.includes(-1) || new Set(onto).size < points.length) return null;
  return { motion, turnedOver: mirrored, onto };
}
