import type { FitPoints } from './solveChain.ts';

/** A line or circle through some of the points, and how badly it misses them. */
export type Primitive =
  | { readonly kind: 'line'; readonly x: number; readonly y: number; readonly heading: number }
  | {
      readonly kind: 'arc';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly turn: 1 | -1;
    };

/** A point further off than three sigma costs no more than that: it is an outlier or another edge's. */
const MOST = 9;
/** Points looked at in one run; more are thinned evenly. */
const MOST_LOOKED_AT = 40;
/** Three nodes make a circle of anything. */
const LEAST_IN_ARC = 4;

interface Moments {
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly xz: number;
  readonly yz: number;
  readonly zz: number;
}

const strideOf = (from: number, to: number) => Math.max(1, Math.floor((to - from) / MOST_LOOKED_AT));

/** Weighted mean and central moments (z = x² + y²) of the nodes `from` to `to` − 1. */
function momentsOf(points: FitPoints, trust: Float64Array, from: number, to: number): Moments {
  const stride = strideOf(from, to);
  let [weight, mx, my] = [0, 0, 0];
  for (let i = from; i < to; i += stride) {
    weight += trust[i]!;
    mx += trust[i]! * points.x[i]!;
    my += trust[i]! * points.y[i]!;
  }
  mx /= weight;
  my /= weight;
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (let i = from; i < to; i += stride) {
    const x = points.x[i]! - mx;
    const y = points.y[i]! - my;
    const w = trust[i]! / weight;
    const z = x * x + y * y;
    xx += w * x * x;
    xy += w * x * y;
    yy += w * y * y;
    xz += w * x * z;
    yz += w * y * z;
    zz += w * z * z;
  }
  return { x: mx, y: my, xx, xy, yy, xz, yz, zz };
}

/**
 * How badly the best line (total least squares) and the best circle (Taubin) through the nodes `from` to `to` − 1 miss
 * them: sums of squared distances in units of sigma, each cut off at nine. Written to `cost`: line, then arc.
 *
 * @param trust weight of each node, low where it lies off its neighbours' trend
 * @source sources.md#taubin-1991, sources.md#chernov-2010 (Newton's method for its smallest root)
 */
export function primitiveCost(
  points: FitPoints,
  trust: Float64Array,
  from: number,
  to: number,
  cost: Float64Array,
): void {
  const moments = momentsOf(points, trust, from, to);
  const stride = strideOf(from, to);
  const angle = Math.atan2(2 * moments.xy, moments.xx - moments.yy) / 2;
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  const circle = to - from >= LEAST_IN_ARC ? taubin(moments) : undefined;
  let line = 0;
  let arc = 0;
  for (let i = from; i < to; i += stride) {
    const x = points.x[i]! - moments.x;
    const y = points.y[i]! - moments.y;
    const s = points.sigma[i]!;
    line += Math.min(((nx * x + ny * y) / s) ** 2, MOST);
    if (!circle) continue;
    const dx = x - circle.x;
    const dy = y - circle.y;
    arc += Math.min(((Math.sqrt(dx * dx + dy * dy) - circle.radius) / s) ** 2, MOST);
  }
  cost[0] = line * stride;
  cost[1] = circle ? arc * stride : Number.POSITIVE_INFINITY;
}

/** That line or circle itself. */
export function primitiveFit(
  points: FitPoints,
  trust: Float64Array,
  from: number,
  to: number,
  kind: 'line' | 'arc',
): Primitive {
  const moments = momentsOf(points, trust, from, to);
  const { x, y } = moments;
  const circle = kind === 'arc' ? taubin(moments) : undefined;
  if (circle) return turned(points, from, to, { x: circle.x + x, y: circle.y + y, radius: circle.radius });
  const heading = forward(points, from, to, Math.atan2(2 * moments.xy, moments.xx - moments.yy) / 2);
  return { kind: 'line', x, y, heading };
}

/** The line's direction is the way its points run. */
function forward(points: FitPoints, from: number, to: number, angle: number): number {
  const [dx, dy] = [points.x[to - 1]! - points.x[from]!, points.y[to - 1]! - points.y[from]!];
  return dx * Math.cos(angle) + dy * Math.sin(angle) < 0 ? angle + Math.PI : angle;
}

/** Which way the points run round the centre. */
function turned(
  points: FitPoints,
  from: number,
  to: number,
  circle: { readonly x: number; readonly y: number; readonly radius: number },
): Primitive {
  const middle = Math.floor((from + to - 1) / 2);
  let cross = 0;
  for (const [a, b] of [
    [from, middle],
    [middle, to - 1],
  ] as const) {
    const [ax, ay] = [points.x[a]! - circle.x, points.y[a]! - circle.y];
    const [bx, by] = [points.x[b]! - circle.x, points.y[b]! - circle.y];
    cross += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }
  return { kind: 'arc', ...circle, turn: cross >= 0 ? 1 : -1 };
}

/** Taubin's circle from central moments (z = x² + y²), by Newton from 0 on its cubic; undefined when straight. */
function taubin({ xx, xy, yy, xz, yz, zz }: Moments) {
  const z = xx + yy;
  const covariance = xx * yy - xy * xy;
  const variance = zz - z * z;
  const a2 = 4 * covariance - 3 * z * z - zz;
  const a1 = variance * z + 4 * covariance * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - variance * covariance;
  let x = 0;
  let y = a0;
  for (let i = 0; i < 20; i++) {
    const slope = a1 + x * (2 * a2 + 12 * z * x);
    const next = x - y / slope;
    if (!Number.isFinite(next) || Math.abs(next - x) <= 1e-12 * Math.abs(x)) break;
    const value = a0 + next * (a1 + next * (a2 + 4 * z * next));
    if (Math.abs(value) >= Math.abs(y)) break;
    [x, y] = [next, value];
  }
  const determinant = x * x - x * z + covariance;
  const centreX = (xz * (yy - x) - yz * xy) / (2 * determinant);
  const centreY = (yz * (xx - x) - xz * xy) / (2 * determinant);
  const radius = Math.sqrt(centreX ** 2 + centreY ** 2 + z);
  return radius < 1e6 ? { x: centreX, y: centreY, radius } : undefined;
}
