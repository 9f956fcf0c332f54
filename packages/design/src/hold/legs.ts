import { signedDistance } from '@panewright/geometry';
import { fewestOnSpan, type Span } from './chain.ts';
import { freeStretches, type Stretch, without } from './freeStretches.ts';
import type { Foot } from './holdPoints.ts';
import type { KeepOut, Mirrors, PlacedPoint, PlacingInput } from './layout.ts';
import { mirrorRun } from './mirrors.ts';
import { cornerFoot, footOnRun, type Run } from './runs.ts';

/** What lies between two points that stand: corners, what was fixed by hand, the ends of a zone too wide to bridge. */
export interface Leg {
  readonly run: number;
  readonly span: Span;
  /** True where it is worked out from its far end, as the mirror image of another leg. */
  readonly reversed: boolean;
  /** The point it begins at; null where the leg before ends there. */
  readonly start: PlacedPoint | null;
  /** The point it ends at, where no leg or corner begins there. */
  readonly end: PlacedPoint | null;
  readonly foot: (t: number) => Foot;
}

type Zoned = PlacingInput & { readonly zones: readonly KeepOut[] };

export const limitOf = ({ spacing, upTo }: Pick<PlacingInput, 'spacing' | 'upTo'>): number =>
  Math.max(spacing, upTo);

/** By how much a foot's magnet is clear of every zone, and the zone nearest to it. */
export function clearOf(input: Zoned, foot: Foot): { readonly clear: number; readonly zone?: KeepOut } {
  const centre = input.centreOf(foot);
  let clear = Number.POSITIVE_INFINITY;
  let nearest: KeepOut | undefined;
  for (const zone of input.zones) {
    const room = signedDistance(zone.outline, centre) - input.reach - zone.clearance;
    if (room < clear) [clear, nearest] = [room, zone];
  }
  return nearest ? { clear, zone: nearest } : { clear };
}

/** The legs of all runs in order, with the points they stand on. */
export function legsOf(
  input: Zoned,
  runs: readonly Run[],
  mirrors: Mirrors,
  stops: readonly (readonly number[])[],
): readonly Leg[] {
  return runs.flatMap((run, index) => {
    const foot = (t: number) => footOnRun(run, t, input.rim);
    const free = freeOnRun(input, run, foot);
    const fixed = stops[index] ?? [];
    const ends = endsOf(input, run, index, free, foot);
    const marks = [
      ...fixed.map((t) => ({ t, by: 'hand' as const })),
      ...wideZones(free, ends.from, ends.to, limitOf(input)),
    ]
      .filter(({ t }) => t > ends.from + 1e-6 && t < ends.to - 1e-6)
      .sort((a, b) => a.t - b.t);
    const twin = mirrorRun(runs, index, mirrors, input.alike);
    return between(input, index, free, ends, marks, foot, twin);
  });
}

function freeOnRun(input: Zoned, run: Run, foot: (t: number) => Foot): readonly Stretch[] {
  const whole = [{ from: 0, to: run.length }];
  const clear =
    input.zones.length === 0 ? whole : freeStretches(run.length, (t) => clearOf(input, foot(t)).clear);
  // A patch does not lie over a corner that points into the panel.
  return run.sides
    .slice(1)
    .reduce<readonly Stretch[]>(
      (left, { from }) => without(left, from - input.apart / 2, from + input.apart / 2),
      clear,
    );
}

interface Ends {
  readonly from: number;
  readonly to: number;
  readonly start: PlacedPoint;
  readonly end: PlacedPoint | null;
}

/** Where a run's points begin and end: at its corners, or beside one that is blocked. */
function endsOf(
  input: Zoned,
  run: Run,
  index: number,
  free: readonly Stretch[],
  foot: (t: number) => Foot,
): Ends {
  const open = (corner: Foot) => clearOf(input, corner).clear >= 0;
  const corner = cornerFoot(run.from, input.rim);
  const beside = (t: number) => placed(input, foot(t), index, t, 'besideCorner');
  const [first, last] = [free[0]?.from ?? 0, free.at(-1)?.to ?? run.length];
  const starts = open(corner);
  const ends = open(cornerFoot(run.to, input.rim));
  const from = starts ? 0 : Math.max(first, Math.min(input.apart / 2, run.length / 2));
  const to = ends ? run.length : Math.min(last, Math.max(run.length - input.apart / 2, run.length / 2));
  return {
    from,
    to,
    start: starts ? placed(input, corner, index, 0, 'corner') : beside(from),
    end: ends || to <= from ? null : beside(to),
  };
}

function placed(input: Zoned, foot: Foot, run: number, t: number, by: PlacedPoint['by']): PlacedPoint {
  return { ...foot, centre: input.centreOf(foot), run, t, by, shift: 0 };
}

/** Both ends of every blocked stretch wider than the limit: no spacing bridges it. */
function wideZones(free: readonly Stretch[], from: number, to: number, limit: number) {
  const marks: { readonly t: number; readonly by: 'besideZone' }[] = [];
  const open = [{ from, to: from }, ...free, { from: to, to }];
  for (let k = 0; k + 1 < open.length; k++) {
    const [a, b] = [Math.max(open[k]!.to, from), Math.min(open[k + 1]!.from, to)];
    if (b - a > limit) marks.push({ t: a, by: 'besideZone' }, { t: b, by: 'besideZone' });
  }
  return marks;
}

function between(
  input: Zoned,
  run: number,
  free: readonly Stretch[],
  ends: Ends,
  marks: readonly { readonly t: number; readonly by: PlacedPoint['by'] }[],
  foot: (t: number) => Foot,
  twin: number | null,
): readonly Leg[] {
  const stops = [ends.from, ...marks.map(({ t }) => t), Math.max(ends.to, ends.from)];
  return stops.slice(1).map((to, k): Leg => {
    const from = stops[k]!;
    const mark = marks[k - 1];
    const inside = free
      .map((part) => ({ from: Math.max(part.from, from), to: Math.min(part.to, to) }))
      .filter((part) => part.to - part.from >= 0);
    return {
      run,
      span: { from, to, free: inside, symmetric: twin === run && marks.length === 0 },
      reversed: twin !== null && twin < run,
      start: mark ? placed(input, foot(mark.t), run, mark.t, mark.by) : k === 0 ? ends.start : null,
      end: k === stops.length - 2 ? ends.end : null,
      foot,
    };
  });
}

/** The fewest points each leg needs; null where a leg that is to be symmetric cannot be. */
export function chainCounts(legs: readonly Leg[], input: PlacingInput): readonly number[] | null {
  const counts: number[] = [];
  for (const { span } of legs) {
    const count = fewestOnSpan(span, limitOf(input));
    if (count === null && span.symmetric) return null;
    counts.push(count ?? 0);
  }
  return counts;
}
