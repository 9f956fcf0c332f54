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

export interface PrimitiveCost {
  readonly line: number;
  readonly arc: number;
  readonly lineFit: Primitive;
  readonly arcFit: Primitive | undefined;
}

/** A point further off than three sigma costs no more than that: it is an outlier or another edge's. */
const MOST = 9;
/** Points looked at in one run; more are thinned evenly. */
const MOST_LOOKED_AT = 40;

/**
 * Best line (total least squares) and best circle (Taubin) through the nodes `from` to `to` − 1, with the sum of
 * squared distances in units of sigma, each cut off at nine.
 *
 * @param trust weight of each node, low where it lies off its neighbours' trend
 * @source sources.md#taubin-1991, sources.md#chernov-2010 (Newton's method for its smallest root)
 */
export function primitiveCost(
  points: FitPoints,
  trust: Float64Array,
  from: number,
  to: number,
): PrimitiveCost {
  const stride = Math.max(1, Math.floor((to - from) / MOST_LOOKED_AT));
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
    const [x, y, w] = [points.x[i]! - mx, points.y[i]! - my, trust[i]! / weight];
    const z = x * x + y * y;
    xx += w * x * x;
    xy += w * x * y;
    yy += w * y * y;
    xz += w * x * z;
    yz += w * y * z;
    zz += w * z * z;
  }
  const heading = forward(points, from, to, Math.atan2(2 * xy, xx - yy) / 2);
  const lineFit: Primitive = { kind: 'line', x: mx, y: my, heading };
  const circle = to - from >= 4 ? taubin(xx, xy, yy, xz, yz, zz) : undefined;
  const [nx, ny] = [-Math.sin(heading), Math.cos(heading)];
  let [line, arc] = [0, 0];
  for (let i = from; i < to; i += stride) {
    const [x, y, s] = [points.x[i]! - mx, points.y[i]! - my, points.sigma[i]!];
    line += Math.min(((nx * x + ny * y) / s) ** 2, MOST);
    if (circle) arc += Math.min(((Math.hypot(x - circle.x, y - circle.y) - circle.radius) / s) ** 2, MOST);
  }
  const arcFit =
    circle && turned(points, from, to, { x: circle.x + mx, y: circle.y + my, radius: circle.radius });
  return { line: line * stride, arc: arcFit ? arc * stride : Number.POSITIVE_INFINITY, lineFit, arcFit };
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
function taubin(xx: number, xy: number, yy: number, xz: number, yz: number, zz: number) {
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
