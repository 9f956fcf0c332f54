import { SLACK } from './chain.ts';
import type { Foot } from './holdPoints.ts';
import type { KeepOut, LayoutProblem, PlacedPoint, PlacingGap, PlacingInput } from './layout.ts';
import { clearOf, limitOf } from './legs.ts';

/** A point moved by less than this has not been shifted, mm. */
const WORTH_A_WORD = 0.5;

/** Lengths of the runs, and the foot at a distance along each. */
export interface Rounds {
  readonly lengths: readonly number[];
  readonly foot: (run: number, t: number) => Foot;
  /** True where the counts were given: more than the fewest may be asked for. */
  readonly raised: boolean;
}

/** Along the edge from one point to the next one round the panel. */
export function gapLength(from: PlacedPoint, to: PlacedPoint, lengths: readonly number[]): number {
  if (to.run === from.run && to.t > from.t) return to.t - from.t;
  let along = lengths[from.run]! - from.t;
  for (let run = (from.run + 1) % lengths.length; run !== to.run; run = (run + 1) % lengths.length)
    along += lengths[run]!;
  return along + to.t;
}

/** Where a gap within one run ends. */
const gapEnd = (from: PlacedPoint, to: PlacedPoint, { lengths }: Rounds): number =>
  to.run === from.run && to.t > from.t ? to.t : lengths[from.run]!;

/** The reason for every gap of a layout. */
export function gapsOf(
  points: readonly PlacedPoint[],
  input: PlacingInput,
  zones: readonly KeepOut[],
  rounds: Rounds,
): readonly PlacingGap[] {
  return points.map((from, k) => {
    const to = points[(k + 1) % points.length]!;
    return reasonOf(from, to, points, { ...input, zones }, rounds);
  });
}

function reasonOf(
  from: PlacedPoint,
  to: PlacedPoint,
  points: readonly PlacedPoint[],
  input: PlacingInput,
  rounds: Rounds,
): PlacingGap {
  const length = gapLength(from, to, rounds.lengths);
  const run = from.run;
  const onRun = points.filter((point) => point.run === run && point.t > 0).length;
  const equal = rounds.lengths[run]! / (onRun + 1);
  const strict = Math.max(1, Math.ceil((rounds.lengths[run]! - SLACK) / input.spacing));
  const base = { length, equal, strict };
  const over = length > limitOf(input) + SLACK;
  if (from.by === 'hand' || to.by === 'hand') return { ...base, reason: over ? 'overLimit' : 'byHand' };
  // No point on the corner between the two: it is blocked, or was removed by hand.
  if (to.run !== from.run && to.t > 0) {
    const corner = zoneAt(0, to.run, input, rounds);
    return { ...base, reason: corner.zone ? 'cornerBlocked' : 'overLimit', ...corner };
  }
  if (over) {
    const wide = zoneAt((from.t + gapEnd(from, to, rounds)) / 2, run, input, rounds);
    return { ...base, reason: wide.zone ? 'zoneWide' : 'overLimit', ...wide };
  }
  const shifted = Math.abs(from.shift) > Math.abs(to.shift) ? from : to;
  if (Math.abs(shifted.shift) > WORTH_A_WORD) {
    const zone = zoneAt(shifted.t - shifted.shift, shifted.run, input, rounds);
    return { ...base, reason: 'shifted', shift: shifted.shift, ...zone };
  }
  if (rounds.raised && onRun + 1 > Math.ceil((rounds.lengths[run]! - SLACK) / limitOf(input)))
    return { ...base, reason: 'raised' };
  const plain = strict === 1 ? 'oneGap' : length > input.spacing + SLACK ? 'withinTolerance' : 'divided';
  return { ...base, reason: plain };
}

/** The zone that blocks a place, where one does. */
function zoneAt(
  t: number,
  run: number,
  input: PlacingInput,
  rounds: Rounds,
): { readonly zone?: string; readonly mirrored?: boolean } {
  const { clear, zone } = clearOf(input, rounds.foot(run, t));
  if (!zone || clear >= 0) return {};
  return zone.mirrored ? { zone: zone.id, mirrored: true } : { zone: zone.id };
}

/** Points that lie on a zone, and neighbours whose pockets would lie over one another. */
export function placeProblems(points: readonly PlacedPoint[], input: PlacingInput): readonly LayoutProblem[] {
  return points.flatMap((point, k): LayoutProblem[] => {
    const found: LayoutProblem[] = [];
    const { clear, zone } = clearOf(input, point);
    if (zone && clear < -1e-5) found.push({ code: 'POINT_ON_ZONE', point: k, zone: zone.id, clear });
    const next = (k + 1) % points.length;
    const other = points[next]!;
    const apart = Math.hypot(other.centre.x - point.centre.x, other.centre.y - point.centre.y);
    if (next !== k && apart < input.apart - 1e-6)
      found.push({ code: 'POINTS_CROWDED', point: k, next, apart });
    return found;
  });
}
