import { length } from '@panewright/geometry';
import { fewestOnSpan, SLACK, type Span, spread } from './chain.ts';
import { freeStretches } from './freeStretches.ts';
import { handStops, placeByHand, ruleOf } from './handPlaced.ts';
import type { KeepOut, Layout, Mirrors, PlacedPoint, PlacingInput } from './layout.ts';
import { chainCounts, clearOf, type Leg, legsOf, limitOf } from './legs.ts';
import { mirrorClasses, mirrorSets, zonesWith } from './mirrors.ts';
import { gapsOf, placeProblems, type Rounds } from './placingGaps.ts';
import { footAllRound, footOnRun, LEAST_ROUND, type Run, runsOf } from './runs.ts';

/**
 * Hold points of a panel: one at each corner that points outward, then as few as leave no gap over the shop's limit, as
 * equal as what they must keep clear of allows; the same left and right, top and bottom where the shape is and no point
 * more is needed for it. What was set by hand stays where it was set.
 *
 * @returns points with the reason for every gap
 * @range zones in the panel's frame: for a pattern that serves several openings, those of all of them
 * @accuracy clear of zones to 1e-6 mm for edges that bend no tighter than the magnet's depth; a zone narrower than
 *   0.25 mm seen from the edge may be missed
 * @source common practice, no source
 */
export function placing(input: PlacingInput): Layout {
  const best = placer(input)(input.counts);
  if (!best) throw new Error('no layout could be made of the counts given');
  return best;
}

/**
 * Layouts of one panel by the counts asked for, or by the rule where there are none; null where the counts find no room:
 * so many points cannot keep clear of the zones, or no longer have the mirrors they were counted for.
 */
export type Placer = (counts?: PlacingInput['counts']) => Layout | null;

/**
 * The same for many counts: what lies free along the edges is looked at once. `input.counts` is left out of account.
 *
 * @range as placing
 * @source as placing
 */
export function placer({ counts: _, ...input }: PlacingInput): Placer {
  const runs = runsOf(input.rim);
  if (runs.length === 0) return (counts) => roundLayout(counts ? { ...input, counts } : input);
  const shape = mirrorSets(runs, input.rim, input.alike);
  const grounds = new Map<string, Ground>();
  const groundOf = (mirrors: Mirrors): Ground => {
    const key = `${mirrors.leftRight} ${mirrors.topBottom}`;
    const ground = grounds.get(key) ?? groundFor(input, runs, mirrors);
    grounds.set(key, ground);
    return ground;
  };
  return (counts) => {
    const asked = counts ? { ...input, counts } : input;
    let best: Layout | null = null;
    for (const mirrors of counts ? [counts.mirrors] : shape) {
      const layout = layoutWith(asked, runs, mirrors, shape[0]!, groundOf(mirrors));
      if (layout && (!best || better(layout, best, input))) best = layout;
    }
    return best;
  };
}

/** What counts do not change: the zones with their mirror images, and the legs between what stands. */
interface Ground {
  readonly zones: readonly KeepOut[];
  readonly legs: readonly Leg[];
}

function groundFor(input: PlacingInput, runs: readonly Run[], mirrors: Mirrors): Ground {
  const zones = zonesWith(input.zones, mirrors);
  return { zones, legs: legsOf({ ...input, zones }, runs, mirrors, handStops(input.hand, runs)) };
}

/** Less beyond what the shop lets pass, then fewer points. */
function better(layout: Layout, than: Layout, input: PlacingInput): boolean {
  const over = ({ gaps }: Layout) =>
    gaps.reduce((sum, { length: gap }) => sum + Math.max(0, gap - limitOf(input) - SLACK), 0);
  const less = over(than) - over(layout);
  return less > 1 || (less > -1 && layout.points.length < than.points.length);
}

/** A layout that has these mirror images; null where it cannot have them. */
function layoutWith(
  input: PlacingInput,
  runs: readonly Run[],
  mirrors: Mirrors,
  shapeMirrors: Mirrors,
  { zones, legs }: Ground,
): Layout | null {
  const counts = input.counts?.each ?? chainCounts(legs, input);
  if (!counts) return null;
  const points: PlacedPoint[] = [];
  for (const [k, leg] of legs.entries()) {
    const inner = onLeg(leg, counts[k] ?? 0, input);
    if (!inner) return null;
    points.push(...(leg.start ? [leg.start] : []), ...inner, ...(leg.end ? [leg.end] : []));
  }
  const rounds: Rounds = {
    lengths: runs.map((run) => run.length),
    foot: (run, t) => footOnRun(runs[run]!, t, input.rim),
    raised: input.counts !== undefined,
  };
  const placed = placeByHand(points, runs, input);
  return {
    points: placed.points,
    gaps: gapsOf(placed.points, input, zones, rounds),
    mirrors,
    shapeMirrors,
    counts,
    orbits: orbitsOf(legs, runs, mirrors, input.alike),
    problems: [...placed.problems, ...placeProblems(placed.points, input)],
  };
}

/** Legs of runs that mirror one another go together, where no stop breaks a run. */
function orbitsOf(
  legs: readonly Leg[],
  runs: readonly Run[],
  mirrors: Mirrors,
  alike: number,
): readonly number[] {
  if (legs.length !== runs.length) return legs.map((_, leg) => leg);
  const classes = mirrorClasses(runs, mirrors, alike);
  const met = [...new Set(classes)];
  return legs.map(({ run }) => met.indexOf(classes[run]!));
}

/** The points of one leg, worked out from its far end where it is a mirror image. */
function onLeg(leg: Leg, count: number, input: PlacingInput): readonly PlacedPoint[] | null {
  const { span } = leg;
  const turned = (t: number) => span.from + span.to - t;
  const way: Span = leg.reversed
    ? {
        ...span,
        free: span.free.map(({ from, to }) => ({ from: turned(to), to: turned(from) })).reverse(),
      }
    : span;
  const chain = spread(way, count);
  if (!chain) return null;
  const positions = leg.reversed ? chain.positions.map(turned).reverse() : chain.positions;
  return positions.map((t, k) => {
    const foot = leg.foot(t);
    const equal = span.from + ((k + 1) * (span.to - span.from)) / (count + 1);
    return { ...foot, centre: input.centreOf(foot), run: leg.run, t, by: 'rule', shift: t - equal };
  });
}

/** A panel without corners: gaps all the way about, from the free place nearest its lowest point. */
function roundLayout(input: PlacingInput): Layout {
  const total = length(input.rim.finished);
  const foot = footAllRound(input.rim);
  const free =
    input.zones.length === 0
      ? [{ from: 0, to: total }]
      : freeStretches(total, (t) => clearOf(input, foot(t)).clear);
  const start = free[0]?.from ?? 0;
  const span: Span = {
    from: start,
    to: start + total,
    free: [...free, ...free.map(({ from, to }) => ({ from: from + total, to: to + total }))],
    symmetric: false,
  };
  const least = Math.min(limitOf(input), total / LEAST_ROUND);
  const count = input.counts?.each[0] ?? fewestOnSpan(span, least) ?? 0;
  const inner = spread(span, count)?.positions ?? [];
  const points = [start, ...inner].map((t, k): PlacedPoint => {
    const here = foot(t);
    const shift = t - start - (k * total) / (count + 1);
    return { ...here, centre: input.centreOf(here), run: 0, t: t - start, by: 'rule', shift };
  });
  const none: Mirrors = { leftRight: null, topBottom: null };
  const rounds: Rounds = {
    lengths: [total],
    foot: (_, t) => foot(t + start),
    raised: input.counts !== undefined,
  };
  return {
    points: ruled(points),
    gaps: gapsOf(points, input, input.zones, rounds),
    mirrors: none,
    shapeMirrors: none,
    counts: [count],
    orbits: [0],
    problems: [
      ...input.hand.map(({ on }) => ({ code: 'HAND_EDGE_UNKNOWN' as const, on, at: 0 })),
      ...placeProblems(points, input),
    ],
  };
}

function ruled(points: readonly PlacedPoint[]): readonly PlacedPoint[] {
  const rules = ruleOf(points);
  return points.map((point, k) => ({ ...point, rule: rules[k]! }));
}
