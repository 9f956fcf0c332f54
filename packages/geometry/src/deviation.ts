import type { Turn } from './alignPoints.ts';
import { type Curve, directionOn, nearestFraction, pointOn } from './curve.ts';
import type { EdgeTree } from './edgeTree.ts';
import type { Vector } from './point.ts';

/** Corners of closed curves and points between them no farther apart than `spacing`, or 0.1 rad along arcs. */
export function sampled(curves: readonly Curve[], spacing: number): Vector[] {
  return curves.flatMap((c) => {
    const steps = Math.max(1, Math.ceil(c.length / spacing), Math.ceil(Math.abs(c.sweep) / 0.1));
    return Array.from({ length: steps }, (_, k) => pointOn(c, k / steps));
  });
}

/** `count` points at equal steps along closed curves. */
export function evenlySampled(curves: readonly Curve[], count: number): Vector[] {
  const whole = curves.reduce((sum, c) => sum + c.length, 0);
  const points: Vector[] = [];
  let before = 0;
  let k = 0;
  for (const c of curves) {
    for (; k < count && (k * whole) / count < before + c.length; k++)
      points.push(pointOn(c, ((k * whole) / count - before) / c.length));
    before += c.length;
  }
  while (points.length < count) points.push(pointOn(curves.at(-1)!, 1));
  return points;
}

export function turnedBy({ angle, x, y }: Turn): (p: Vector) => Vector {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return (p) => ({ x: cos * p.x - sin * p.y + x, y: sin * p.x + cos * p.y + y });
}

export function turnedBack({ angle, x, y }: Turn): (p: Vector) => Vector {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return (p) => ({ x: cos * (p.x - x) + sin * (p.y - y), y: -sin * (p.x - x) + cos * (p.y - y) });
}

/** Distance off a curve along a direction: how far, and which way is away from its foot. */
export interface Residual {
  readonly off: number;
  readonly nx: number;
  readonly ny: number;
}

/** Residual of a point: along the edge's right normal, signed, when the foot is inside an edge; else from the corner. */
export function residual(tree: EdgeTree, p: Vector): Residual {
  const { index, distance } = tree.nearest(p);
  const edge = tree.curves[index]!;
  const t = nearestFraction(edge, p);
  const foot = pointOn(edge, t);
  if ((t === 0 || t === 1) && distance > 1e-9)
    return { off: distance, nx: (p.x - foot.x) / distance, ny: (p.y - foot.y) / distance };
  const u = directionOn(edge, t);
  const side = u.y * (p.x - foot.x) - u.x * (p.y - foot.y);
  return { off: side < 0 ? -distance : distance, nx: u.y, ny: -u.x };
}

/** The farthest distance of points from edges, or `least` if none is farther. Neighbouring points share a nearest edge. */
export function farthest(tree: EdgeTree, points: readonly Vector[], least = 0): number {
  let most = least;
  let guess = 0;
  for (const p of points) {
    const { index, distance } = tree.nearest(p, most, guess);
    guess = index;
    most = Math.max(most, distance);
  }
  return most;
}

export interface Peak {
  readonly at: Vector;
  readonly distance: number;
}

/**
 * The places along `along` that are farthest from `from`: local peaks within `share` of the highest, found on a grid of
 * `spacing` and closed in on by golden section.
 */
export function peaks(along: readonly Curve[], from: EdgeTree, spacing: number, share: number): Peak[] {
  const grids = along.map((c) => {
    const steps = Math.max(2, Math.ceil(c.length / spacing));
    return Array.from({ length: steps + 1 }, (_, k) => from.nearest(pointOn(c, k / steps)).distance);
  });
  const highest = grids.flat().reduce((high, height) => Math.max(high, height), 0);
  const found = along.flatMap((c, i) => {
    const heights = grids[i]!;
    const steps = heights.length - 1;
    // Between grid points the distance rises by no more than half a step along the edge.
    const least = share * highest - c.length / steps;
    return heights.flatMap((height, k): Peak[] => {
      if (height < least || height < (heights[k - 1] ?? 0) || height < (heights[k + 1] ?? 0)) return [];
      const fine = closedIn(c, from, Math.max(0, k - 1) / steps, Math.min(steps, k + 1) / steps);
      return [fine.distance > height ? fine : { at: pointOn(c, k / steps), distance: height }];
    });
  });
  const most = found.reduce((high, { distance }) => Math.max(high, distance), 0);
  return found.filter(({ distance }) => distance >= share * most).sort((p, q) => q.distance - p.distance);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

function closedIn(c: Curve, from: EdgeTree, t0: number, t1: number): Peak {
  let [low, high] = [t0, t1];
  for (let k = 0; k < 24; k++) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (from.nearest(pointOn(c, a)).distance > from.nearest(pointOn(c, b)).distance) high = b;
    else low = a;
  }
  const at = pointOn(c, (low + high) / 2);
  return { at, distance: from.nearest(at).distance };
}
