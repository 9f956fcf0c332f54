import { crossings } from './contacts.ts';
import { arcCurve, bendOf, type Curve, directionOn, lineCurve } from './curve.ts';
import type { Vector } from './point.ts';
import { MEANT_SMOOTH, SAME_POINT, TANGENT } from './tolerance.ts';

/** An edge of the outline and where its allowance takes it. */
export interface Side {
  readonly edge: Curve;
  readonly distance: number;
  /** The moved edge, before its neighbours cut it or run it on. Undefined when an arc shrinks to nothing. */
  moved: Curve | undefined;
  /** Ends of the moved edge as its neighbours leave them; the outline's own corners when there is none. */
  start: Vector;
  end: Vector;
  /** Left out: its neighbours meet without it. */
  gone: boolean;
  /** The joint after this side is already closed. */
  welded: boolean;
}

export function sidesOf(curves: readonly Curve[], distances: readonly number[]): Side[] {
  const sides = curves.map((edge, i): Side => {
    const distance = distances[i]!;
    const side: Side = {
      ...{ edge, distance, gone: false, welded: false, moved: undefined },
      ...{ start: { x: edge.ax, y: edge.ay }, end: { x: edge.bx, y: edge.by } },
    };
    place(side, parallel(edge, distance));
    return side;
  });
  for (const run of unevenRuns(sides)) blend(run);
  return sides;
}

function place(side: Side, moved: Curve | undefined): void {
  if (!moved) return;
  side.moved = moved;
  side.start = { x: moved.ax, y: moved.ay };
  side.end = { x: moved.bx, y: moved.by };
}

/** The edge moved `distance` to its right, which is outward; undefined when an arc has no radius left. */
function parallel(c: Curve, distance: number): Curve | undefined {
  if (c.bulge === 0) {
    const { x: ux, y: uy } = directionOn(c, 0);
    return shifted(c, { x: uy * distance, y: -ux * distance });
  }
  const r = c.r + Math.sign(c.bulge) * distance;
  return r > SAME_POINT ? aboutSameCentre(c, r) : undefined;
}

function aboutSameCentre(c: Curve, r: number): Curve {
  const k = r / c.r;
  const a = { x: c.cx + (c.ax - c.cx) * k, y: c.cy + (c.ay - c.cy) * k };
  const b = { x: c.cx + (c.bx - c.cx) * k, y: c.cy + (c.by - c.cy) * k };
  return arcCurve({ x: c.cx, y: c.cy }, r, a, b, c.sweep);
}

function shifted(c: Curve, by: Vector): Curve {
  const a = { x: c.ax + by.x, y: c.ay + by.y };
  const b = { x: c.bx + by.x, y: c.by + by.y };
  if (c.bulge === 0) return lineCurve(a, b);
  return arcCurve({ x: c.cx + by.x, y: c.cy + by.y }, c.r, a, b, c.sweep);
}

/** The moved edge with its ends where its neighbours left them; it may run backwards. Undefined when it is used up. */
export function finished({ moved: c, start: a, end: b }: Side): Curve | undefined {
  if (!c) return undefined;
  if (c.bulge === 0) return lineCurve(a, b);
  const centre = { x: c.cx, y: c.cy };
  const lead = angleAt(c, { x: c.ax, y: c.ay }, a);
  const lag = angleAt(c, { x: c.bx, y: c.by }, b);
  return arcCurve(centre, c.r, a, b, c.sweep - lead + lag);
}

/** Signed angle about the centre from one point to another, at most half a turn. */
function angleAt(c: Curve, p: Vector, q: Vector): number {
  const turn = Math.atan2(q.y - c.cy, q.x - c.cx) - Math.atan2(p.y - c.cy, p.x - c.cx);
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

/**
 * Left turn from one edge into the next, -π to π. At a cusp the directions alone do not tell a point of the shape from
 * a slit in it, within what counts as one point; the bends do.
 */
export function turnBetween(c: Curve, d: Curve): number {
  const [u, v] = [directionOn(c, 1), directionOn(d, 0)];
  const turn = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  const lean = bendOf(c) + bendOf(d);
  return Math.abs(turn) > Math.PI - 1e-3 && lean !== 0 ? -Math.sign(lean) * Math.abs(turn) : turn;
}

/** A run of arcs between two lines, tangent all along, whose allowances are not all alike. */
interface Run {
  readonly before: Side;
  readonly arcs: readonly Side[];
  readonly after: Side;
}

function unevenRuns(sides: readonly Side[]): Run[] {
  const n = sides.length;
  const runs: Run[] = [];
  for (let i = 0; i < n; i++) {
    const before = sides[i]!;
    if (before.edge.bulge !== 0) continue;
    const arcs: Side[] = [];
    let last = before;
    for (let k = 1; k < n; k++) {
      const next = sides[(i + k) % n]!;
      if (Math.abs(turnBetween(last.edge, next.edge)) > MEANT_SMOOTH) break;
      if (next.edge.bulge === 0) {
        if (arcs.length > 0 && isUneven(before, arcs, next)) runs.push({ before, arcs, after: next });
        break;
      }
      if (arcs.length > 0 && next.distance !== arcs[0]!.distance) break;
      arcs.push(next);
      last = next;
    }
  }
  return runs;
}

const isUneven = (before: Side, [arc]: readonly Side[], after: Side) =>
  before.distance !== arc!.distance || after.distance !== arc!.distance;

/** Moves the arcs of a run bodily until they touch both moved lines, or leaves them out when none is left. */
function blend(run: Run): void {
  const { before, arcs, after } = run;
  if (arcs.some((side) => side.moved === undefined)) {
    meetWithout(run);
    return;
  }
  const ends = blended(before, arcs, after);
  if (!ends) return;
  arcs.forEach((side, i) => {
    place(side, ends[i]!);
    side.welded = true;
  });
  before.welded = true;
  before.end = arcs[0]!.start;
  after.start = arcs.at(-1)!.end;
}

/** Shift t with t·n1 = d1 - dc and t·n2 = d2 - dc, the normals being those of the lines and dc the arcs' own. */
function blended(before: Side, arcs: readonly Side[], after: Side): Curve[] | undefined {
  const [u, v] = [directionOn(before.edge, 1), directionOn(after.edge, 0)];
  const own = arcs[0]!.distance;
  const [p, q] = [before.distance - own, after.distance - own];
  const sin = u.x * v.y - u.y * v.x;
  const cos = u.x * v.x + u.y * v.y;
  if (Math.abs(sin) < TANGENT) {
    if (cos > 0 && p === q) return arcs.map((side) => shifted(side.moved!, { x: u.y * p, y: -u.x * p }));
    const round = cos < 0 && arcs.length === 1 ? halfRound(arcs[0]!, before, after) : undefined;
    return round && [round];
  }
  // n = (u.y, -u.x); Cramer's rule.
  const t = { x: (p * -v.x + q * u.x) / sin, y: (u.y * q - v.y * p) / sin };
  if (Math.hypot(t.x, t.y) > 4 * (Math.abs(p) + Math.abs(q))) return undefined;
  return arcs.map((side) => shifted(side.moved!, t));
}

/** A half-round end between parallel lines: its radius follows the lines, its crown keeps the arc's own allowance. */
function halfRound({ edge, distance }: Side, before: Side, after: Side): Curve | undefined {
  const sign = Math.sign(edge.bulge);
  const mean = (before.distance + after.distance) / 2;
  const r = edge.r + sign * mean;
  if (r <= SAME_POINT) return undefined;
  const u = directionOn(before.edge, 1);
  const across = (before.distance - after.distance) / 2;
  const along = sign * (distance - mean);
  return shifted(aboutSameCentre(edge, r), {
    x: u.y * across + u.x * along,
    y: -u.x * across + u.y * along,
  });
}

function meetWithout({ before, arcs, after }: Run): void {
  const meeting = crossings(before.moved!, after.moved!, 0)[0];
  if (!meeting) return;
  for (const side of arcs) side.gone = true;
  before.welded = true;
  before.end = meeting;
  after.start = meeting;
}
