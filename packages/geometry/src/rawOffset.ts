import type { Strand } from './arrangement.ts';
import { crossings } from './contacts.ts';
import { arcCurve, type Curve, directionOn, lineCurve } from './curve.ts';
import { finished, type Side, sidesOf, turnBetween } from './offsetSides.ts';
import type { Vector } from './point.ts';
import { MEANT_SMOOTH, SAME_POINT, SMOOTH_GAP, TANGENT } from './tolerance.ts';

/** How corners are turned. `limit`: a sharp corner may reach this many allowances from the old one, else it is rounded. */
export interface Corners {
  readonly sharp: boolean;
  readonly limit: number;
}

/**
 * The closed curve that winds once or more about every point of the offset shape, and about no other.
 *
 * It is the outline plus, for each edge, the strip its allowance sweeps, plus the wedge at each corner that opens:
 * strips share their ends with the wedges and cancel there. At a corner that closes, the strips simply overlap, and
 * the curve goes from strip to strip by way of the old corner. An arc that would shrink past its centre sweeps its
 * sector only, by way of the centre. Strips inward wind the other way and take the shape away.
 *
 * Tags: 2 i for edge i, 2 i + 1 for the joint after it.
 */
export function rawOffset(
  curves: readonly Curve[],
  distances: readonly number[],
  corners: Corners,
): Strand[] {
  const sides = sidesOf(curves, distances);
  const n = sides.length;
  const joints = sides.map((side, i) => {
    let k = (i + 1) % n;
    while (sides[k]!.gone) k = (k + 1) % n;
    return side.gone || side.welded ? undefined : closeJoint(side, sides[k]!, corners);
  });
  const strands: Strand[] = [];
  const add = (curve: Curve, tag: number) => {
    if (curve.length > SAME_POINT / 100) strands.push({ curve, family: 0, tag });
  };
  sides.forEach((side, i) => {
    if (side.gone) return;
    const whole = finished(side);
    if (whole) add(whole, 2 * i);
    else for (const line of throughCentre(side.edge)) add(line, 2 * i + 1);
    for (const curve of joints[i]?.curves() ?? []) add(curve, 2 * i + 1);
  });
  return strands;
}

function throughCentre(c: Curve): Curve[] {
  const centre = { x: c.cx, y: c.cy };
  return [lineCurve({ x: c.ax, y: c.ay }, centre), lineCurve(centre, { x: c.bx, y: c.by })];
}

interface Joint {
  /** Read once all joints are closed, since closing one may move an end the next one starts from. */
  readonly curves: () => Curve[];
}

function closeJoint(side: Side, next: Side, corners: Corners): Joint {
  const v = { x: side.edge.bx, y: side.edge.by };
  const turn = turnBetween(side.edge, next.edge);
  const even = Math.abs(side.distance - next.distance) < 1e-9;
  if (even && isMeantSmooth(side, next, turn)) {
    weld(side, next, { x: (side.end.x + next.start.x) / 2, y: (side.end.y + next.start.y) / 2 });
    return { curves: () => [] };
  }
  if (even && turn * side.distance > 0 && Math.abs(turn) > TANGENT)
    return opened(side, next, v, turn, corners);
  if (!side.moved || !next.moved) return { curves: () => path(side.end, v, next.start) };
  if (even) {
    const closes = Math.abs(turn) > TANGENT && side.distance !== 0;
    return {
      curves: () => (closes ? path(side.end, v, next.start) : path(side.end, next.start)),
    };
  }
  return uneven(side, next, v, turn, corners);
}

/** Whether a joint is smooth but for rounding of the outline's coordinates: it shall not get a corner of its own. */
function isMeantSmooth({ moved: c, distance }: Side, { moved: d }: Side, turn: number): boolean {
  const bend = Math.abs(turn);
  return c !== undefined && d !== undefined && bend < MEANT_SMOOTH && bend * Math.abs(distance) < SMOOTH_GAP;
}

function path(...points: Vector[]): Curve[] {
  return points.slice(1).map((p, i) => lineCurve(points[i]!, p));
}

/** A corner that the offset opens: the edges run on to where they meet, or an arc about the old corner joins them. */
function opened(side: Side, next: Side, v: Vector, turn: number, corners: Corners): Joint {
  if (corners.sharp && side.moved && next.moved) {
    const meeting = meetingOf(side.moved, next.moved, v);
    const reach = meeting && Math.hypot(meeting.x - v.x, meeting.y - v.y);
    const isNear = meeting && reach! <= corners.limit * Math.abs(side.distance);
    if (isNear && progress(side, next, meeting).every((ahead) => ahead > -SAME_POINT)) {
      weld(side, next, meeting);
      return { curves: () => [] };
    }
  }
  const from = outFrom(v, directionOn(side.edge, 1), side.distance);
  const to = outFrom(v, directionOn(next.edge, 0), side.distance);
  const arc = arcCurve(v, Math.abs(side.distance), from, to, turn);
  return { curves: () => [...path(side.end, from), arc, ...path(to, next.start)] };
}

/** Allowances that differ: the moved edges are cut or run on to where they meet; where they do not, a step. */
function uneven(side: Side, next: Side, v: Vector, turn: number, corners: Corners): Joint {
  const straight = { curves: () => path(side.end, next.start) };
  if (Math.abs(turn) < MEANT_SMOOTH) return straight;
  const meeting = meetingOf(side.moved!, next.moved!, v);
  if (!meeting) return straight;
  if (overlapAt(turn, side.distance, next.distance)) return { curves: () => path(side.end, v, next.start) };
  const reach = Math.hypot(meeting.x - v.x, meeting.y - v.y);
  if (reach > corners.limit * Math.max(Math.abs(side.distance), Math.abs(next.distance))) return straight;
  weld(side, next, meeting);
  return { curves: () => [] };
}

/** Whether strips on one side overlap right at the corner, seen as straight: each would be cut, neither run on. */
function overlapAt(turn: number, first: number, second: number): boolean {
  if (first * second < 0) return false;
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  return (second - first * cos) / sin < 0 && (first - second * cos) / sin < 0;
}

function weld(side: Side, next: Side, meeting: Vector): void {
  side.end = meeting;
  next.start = meeting;
}

function meetingOf(c: Curve, d: Curve, v: Vector): Vector | undefined {
  const far = (p: Vector) => Math.hypot(p.x - v.x, p.y - v.y);
  return crossings(c, d, 0).sort((p, q) => far(p) - far(q))[0];
}

/** How far the meeting lies past the end of one moved edge and before the start of the next, along their directions. */
function progress({ moved: c }: Side, { moved: d }: Side, meeting: Vector): [ahead: number, behind: number] {
  const [u, v] = [directionOn(c!, 1), directionOn(d!, 0)];
  return [
    (meeting.x - c!.bx) * u.x + (meeting.y - c!.by) * u.y,
    (d!.ax - meeting.x) * v.x + (d!.ay - meeting.y) * v.y,
  ];
}

const outFrom = (v: Vector, u: Vector, distance: number) => ({
  x: v.x + u.y * distance,
  y: v.y - u.x * distance,
});
