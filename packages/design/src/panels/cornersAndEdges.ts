import { arcOf, type Edge, edges, type Outline, type Point, point } from '@panewright/geometry';

/** A corner of a panel: a sharp joint, or a corner arc together with the point at its middle. */
export interface Corner {
  /** Segment index of the arc, or of the segment that ends at the joint. */
  readonly segment: number;
  readonly round: boolean;
  /** On the outline: the joint, or the middle of the arc. */
  readonly at: Point;
  /** Arc length from the outline's start, mm. */
  readonly s: number;
  /** Direction into the panel, radians: the bisector. */
  readonly inward: number;
  /** Anticlockwise turning, radians; negative at a re-entrant corner. */
  readonly turn: number;
  /** Radius of a corner arc, 0 for a joint. */
  readonly radius: number;
  /** From the corner's sharp point to where the side begins, mm. */
  readonly setback: number;
}

/** What runs from one corner to the next. */
export interface Side {
  readonly from: Corner;
  readonly to: Corner;
  /** Segment indices, in order. */
  readonly segments: readonly number[];
  /** Arc length from the outline's start to where the side begins, and its own length, mm. */
  readonly start: number;
  readonly run: number;
  /** Between the sharp corners, mm. */
  readonly length: number;
}

/** A turn below this is a bend in a side, not a corner. Common practice, no source. */
const LEAST_TURN = (20 * Math.PI) / 180;
/** An arc rounder than this is a curved side, not a corner, mm. Common practice, no source. */
const MOST_CORNER_RADIUS = 160;

/**
 * The corners and sides of an outline. A corner is a joint or an arc of at most 160 mm radius that turns by 20° or more.
 *
 * @returns sides in order round the outline; none where there is no corner (a circle, an ellipse)
 * @source common practice, no source
 */
export function cornersAndSides(outline: Outline): { corners: readonly Corner[]; sides: readonly Side[] } {
  const all = edges(outline);
  const starts = startsOf(all);
  const total = starts.at(-1)! + all.at(-1)!.length;
  const corners: Corner[] = [];
  for (let i = 0; i < all.length; i++) {
    const arc = cornerArc(all[i]!, i, starts[i]!);
    if (arc) corners.push(arc);
    const joint = jointAfter(all, i, starts[i]! + all[i]!.length, total);
    if (joint) corners.push(joint);
  }
  corners.sort((a, b) => a.s - b.s);
  const sides = corners.map((from, k) =>
    sideBetween(all, starts, total, from, corners[(k + 1) % corners.length]!),
  );
  return { corners, sides };
}

/** A corner arc has its own name; a joint those of both its neighbours. `names` has one for each segment. */
export function cornerName(corner: Corner, names: readonly string[]): string {
  const name = names[corner.segment]!;
  return corner.round ? name : `corner:${name}-${names[(corner.segment + 1) % names.length]!}`;
}

export function startsOf(all: readonly Edge[]): readonly number[] {
  let s = 0;
  return all.map((edge) => {
    const start = s;
    s += edge.length;
    return start;
  });
}

function cornerArc(edge: Edge, segment: number, start: number): Corner | null {
  const arc = arcOf(edge);
  if (!arc || arc.radius > MOST_CORNER_RADIUS || Math.abs(arc.sweep) < LEAST_TURN) return null;
  const middle = arc.start + arc.sweep / 2;
  const inward = arc.sweep > 0 ? middle + Math.PI : middle;
  return {
    segment,
    round: true,
    at: point(arc.centre.x + arc.radius * Math.cos(middle), arc.centre.y + arc.radius * Math.sin(middle)),
    s: start + edge.length / 2,
    inward,
    turn: arc.sweep,
    radius: arc.radius,
    setback:
      Math.abs(arc.sweep) < 0.95 * Math.PI ? arc.radius * Math.tan(Math.abs(arc.sweep) / 2) : arc.radius,
  };
}

function jointAfter(all: readonly Edge[], i: number, s: number, total: number): Corner | null {
  const before = all[i]!;
  const after = all[(i + 1) % all.length]!;
  const come = headingAt(before, 1);
  const go = headingAt(after, 0);
  const turn = wrap(go - come);
  if (Math.abs(turn) < LEAST_TURN) return null;
  return {
    segment: i,
    round: false,
    at: before.to,
    s: s >= total - 1e-9 ? 0 : s,
    inward: come + turn / 2 + Math.PI / 2,
    turn,
    radius: 0,
    setback: 0,
  };
}

/** Direction of travel at the start (0) or end (1) of an edge, radians. */
function headingAt(edge: Edge, end: 0 | 1): number {
  const chord = Math.atan2(edge.to.y - edge.from.y, edge.to.x - edge.from.x);
  const half = 2 * Math.atan(edge.bulge);
  return end === 0 ? chord - half : chord + half;
}

export function wrap(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

function sideBetween(
  all: readonly Edge[],
  starts: readonly number[],
  total: number,
  from: Corner,
  to: Corner,
): Side {
  const n = all.length;
  const first = (from.segment + 1) % n;
  const last = to.round ? (to.segment + n - 1) % n : to.segment;
  const segments: number[] = [];
  // Two corners that meet leave no segment between them.
  const none = to.round && to.segment === first;
  if (!none)
    for (let i = first; ; i = (i + 1) % n) {
      segments.push(i);
      if (i === last || segments.length > n) break;
    }
  const run = segments.reduce((sum, i) => sum + all[i]!.length, 0);
  const start = starts[first]! % total;
  return { from, to, segments, start, run, length: run + from.setback + to.setback };
}
