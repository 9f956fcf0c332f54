import { length, nearest, type Point } from '@panewright/geometry';
import type { Foot } from './holdPoints.ts';
import { cornerName, type Rim, type Run, runsOf } from './runs.ts';

/** A place on a panel's edge as hold points are set by hand: on which edge, how far along it, and along its run between corners. */
export interface EdgePlace {
  readonly on: string;
  /** From the first sharp corner of the edge, anticlockwise, and the edge's own length between its sharp corners, mm. */
  readonly at: number;
  readonly length: number;
  readonly run: number;
  readonly t: number;
}

/**
 * The place on a panel's edge nearest a point.
 *
 * @param from in the panel's frame
 * @returns null for a panel without corners: it has no edge to measure from
 * @accuracy exact on straight and curved edges; on a rounded corner the place of the nearer edge's end
 * @source none: distances along the outline
 */
export function nearestEdgePlace(rim: Rim, from: Point): EdgePlace | null {
  return edgePlaceAt(rim, nearest(rim.finished, from).s);
}

/**
 * The place on a panel's edge at a distance along its outline, mm.
 *
 * @source as nearestEdgePlace
 */
export function edgePlaceAt(rim: Rim, s: number): EdgePlace | null {
  const runs = runsOf(rim);
  let best: { readonly place: EdgePlace; readonly off: number } | null = null;
  for (const [run, { sides }] of runs.entries())
    for (const part of sides) {
      const { along, off } = alongSide(part, s, rim);
      if (best && off >= best.off) continue;
      const place = { on: part.name, at: along, length: part.side.length, run, t: part.from + along };
      best = { place, off };
    }
  return best?.place ?? null;
}

/**
 * The place of a hold point. A corner's stands at the beginning of the run that its corner opens.
 *
 * @source as nearestEdgePlace
 */
export function footPlace(rim: Rim, { kind, on, s }: Pick<Foot, 'kind' | 'on' | 's'>): EdgePlace | null {
  if (kind === 'edge') return edgePlaceAt(rim, s);
  const runs = runsOf(rim);
  const run = runs.findIndex(({ from }) => cornerName(from, rim) === on);
  const first = runs[run]?.sides[0];
  return first ? { on: first.name, at: 0, length: first.side.length, run, t: 0 } : null;
}

/** How far along a side a distance along the outline lies between its sharp corners, and how far off the side's ends it is. */
function alongSide({ side }: Run['sides'][number], s: number, rim: Rim) {
  const total = length(rim.finished);
  const past = (((s - side.start) % total) + total) % total;
  if (past <= side.run) return { along: side.from.setback + past, off: 0 };
  const before = total - past;
  const after = past - side.run;
  // On a rounded corner its middle is the sharp corner of both sides.
  const end = (beyond: number, setback: number) => Math.max(0, setback - beyond);
  return before < after
    ? { along: end(before, side.from.setback), off: before }
    : { along: side.length - end(after, side.to.setback), off: after };
}

/**
 * How far along the edge one place lies from another, anticlockwise positive, mm. From a corner it may be on either of the
 * two runs that meet there.
 *
 * @returns null where the two are not on one run
 * @source as nearestEdgePlace
 */
export function alongRun(rim: Rim, from: Pick<EdgePlace, 'run' | 't'>, to: EdgePlace): number | null {
  if (from.run === to.run) return to.t - from.t;
  const runs = runsOf(rim);
  const before = (from.run + runs.length - 1) % runs.length;
  return from.t === 0 && to.run === before ? to.t - runs[before]!.length : null;
}

/**
 * The place so far along the edge from another, anticlockwise positive, mm; from a corner backwards it is on the run before.
 *
 * @returns null past the run's ends
 * @source as nearestEdgePlace
 */
export function placeAlong(rim: Rim, from: Pick<EdgePlace, 'run' | 't'>, by: number): EdgePlace | null {
  const runs = runsOf(rim);
  const back = from.t === 0 && by < 0;
  const run = back ? (from.run + runs.length - 1) % runs.length : from.run;
  const t = back ? runs[run]!.length + by : from.t + by;
  const part = runs[run]?.sides.findLast(({ from: start }) => start <= t + 1e-9);
  if (!part || t < 0 || t > runs[run]!.length) return null;
  return { on: part.name, at: t - part.from, length: part.side.length, run, t };
}
