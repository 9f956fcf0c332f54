import { compose, movePoint, type Point, point, type Rigid } from '@panewright/geometry';
import { radian } from '@panewright/quantity';

/** A way to lay a panel on its window so that its hold points meet others of the window's. */
export interface Fit {
  readonly motion: Rigid;
  /** True where the panel is turned over, so that its inner face is outside. */
  readonly turnedOver: boolean;
  /** Point k of the panel meets point `onto[k]` of the window, or none where that is -1. */
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

/**
 * Every wrong way to lay a panel on its window in which more than half of its points, and three, meet one of the window's: as
 * it is or turned over, turned, or shifted along by a point or more. Those in which all meet come first.
 *
 * @param within how near a magnet must come to its partner to be drawn to it, mm
 * @returns no way whose meetings are all among another's
 * @range points in order round the panel, farther apart than twice `within`
 * @source if half of a ring of points meet, two of them are neighbours or next but one: those pairs are tried on all others
 */
export function wrongWaysToFit(points: readonly Point[], within: number): readonly Fit[] {
  const [right, ...whole] = waysToFit(points, within);
  const count = points.length;
  const least = Math.max(3, Math.floor(count / 2) + 1);
  const found: Fit[] = [];
  for (const turnedOver of [false, true])
    for (const [from, to] of pairsToTry(points, within)) {
      const { motion, onto } = laidBy(points, from, to, turnedOver, within);
      if (onto.filter((k) => k >= 0).length >= least) found.push({ motion, turnedOver, onto });
    }
  found.sort((a, b) => meetingsOf(b) - meetingsOf(a));
  const ways: Fit[] = [right!, ...whole];
  for (const fit of found) if (!ways.some((other) => amongThose(fit, other))) ways.push(fit);
  return ways.slice(1);
}

/** Neighbours and next but one, with every ordered pair as far apart. */
function* pairsToTry(points: readonly Point[], within: number): Generator<readonly [PointPair, PointPair]> {
  const count = points.length;
  for (const [i, p] of points.entries())
    for (const q of new Set([points[(i + 1) % count]!, points[(i + 2) % count]!])) {
      if (q === p) continue;
      const span = apart(p, q);
      for (const a of points)
        for (const b of points)
          if (a !== b && Math.abs(apart(a, b) - span) <= 2 * within)
            yield [
              [p, q],
              [a, b],
            ];
    }
}

/** How many points of the panel meet one of the window's. */
export const meetingsOf = ({ onto }: Fit): number => onto.filter((k) => k >= 0).length;

/** Whether all that meets in one way meets so in the other. */
const amongThose = (fit: Fit, other: Fit): boolean =>
  fit.turnedOver === other.turnedOver && fit.onto.every((k, i) => k < 0 || k === other.onto[i]);

type PointPair = readonly [Point, Point];

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

/** A way in which every point meets one, or null. */
function fitBy(
  points: readonly Point[],
  from: PointPair,
  to: PointPair,
  mirrored: boolean,
  within: number,
): Fit | null {
  const { motion, onto } = laidBy(points, from, to, mirrored, within);
  return onto.includes(-1) ? null : { motion, turnedOver: mirrored, onto };
}

/** The motion that carries the middle and the direction of one pair of points to another's, and what then meets. */
function laidBy(
  points: readonly Point[],
  from: PointPair,
  to: PointPair,
  mirrored: boolean,
  within: number,
): Pick<Fit, 'motion' | 'onto'> {
  const sign = mirrored ? -1 : 1;
  const direction = ([p, q]: PointPair, flip: number) => Math.atan2(q.y - p.y, flip * (q.x - p.x));
  const turn = direction(to, 1) - direction(from, sign);
  const unshifted = motionOf(turn, point(0, 0), mirrored);
  const middle = ([p, q]: PointPair) => point((p.x + q.x) / 2, (p.y + q.y) / 2);
  const [here, there] = [movePoint(unshifted, middle(from)), middle(to)];
  const motion = compose(motionOf(0, point(there.x - here.x, there.y - here.y), false), unshifted);
  const taken = new Set<number>();
  const onto = points.map((p) => {
    const image = movePoint(motion, p);
    const met = points.findIndex((q, k) => !taken.has(k) && apart(q, image) <= within);
    if (met >= 0) taken.add(met);
    return met;
  });
  return { motion, onto };
}
