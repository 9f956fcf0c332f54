import type { HandPlaced, LayoutProblem, PlacedPoint, PlacingInput } from './layout.ts';
import { footOnRun, onRuns, type Run } from './runs.ts';

/** Where points fixed by hand stop each run, mm along it. */
export function handStops(hand: readonly HandPlaced[], runs: readonly Run[]): readonly (readonly number[])[] {
  const stops: number[][] = runs.map(() => []);
  for (const one of hand) {
    if (one.kind !== 'fixed') continue;
    const place = onRuns(runs, one.on, one.at);
    if (place) stops[place.run]!.push(place.t);
  }
  return stops;
}

/** The rule's points with what the maker moved, removed and added; what could not be followed is told. */
export function placeByHand(
  points: readonly PlacedPoint[],
  runs: readonly Run[],
  input: PlacingInput,
): { readonly points: readonly PlacedPoint[]; readonly problems: readonly LayoutProblem[] } {
  const problems: LayoutProblem[] = [];
  const rules = ruleOf(points);
  const ruled = points.map((point, at): PlacedPoint => (rules[at] ? { ...point, rule: rules[at] } : point));
  const left: (PlacedPoint | null)[] = [...ruled];
  const added: PlacedPoint[] = [];
  for (const one of input.hand) {
    if (one.kind === 'fixed' || one.kind === 'added') {
      const place = onRuns(runs, one.on, one.at);
      if (!place) problems.push({ code: 'HAND_EDGE_UNKNOWN', on: one.on, at: one.at });
      else if (one.kind === 'added') added.push(byHand(runs, place.run, place.t, 0, input));
      continue;
    }
    const mine = ruled.map((point, at) => ({ point, at })).filter(({ point }) => point.rule?.on === one.on);
    const found = mine[one.index < 0 ? mine.length + one.index : one.index - 1];
    if (!found) {
      const index = Math.abs(one.index);
      problems.push({ code: 'HAND_POINT_UNKNOWN', on: one.on, index, points: mine.length });
    } else if (one.kind === 'removed') left[found.at] = null;
    else {
      const moved = movedAlong(found.point, one.by, runs, input);
      if (moved) left[found.at] = { ...moved, rule: found.point.rule! };
      else problems.push({ code: 'HAND_POINT_OFF_EDGE', on: one.on, index: one.index, by: one.by });
    }
  }
  const all = [...left.filter((point) => point !== null), ...added];
  return { points: all.sort((a, b) => a.run - b.run || a.t - b.t), problems };
}

/** Which of its edge's points each of the rule's is, from 1; none for those that stand by hand. */
export function ruleOf(
  points: readonly { readonly on: string; readonly by?: PlacedPoint['by'] }[],
): readonly (PlacedPoint['rule'] | undefined)[] {
  const counts = new Map<string, number>();
  return points.map(({ on, by }) => {
    if (by === 'hand') return undefined;
    const index = (counts.get(on) ?? 0) + 1;
    counts.set(on, index);
    return { on, index };
  });
}

/** A point moved along its run; a corner's point may go onto either of its two. */
function movedAlong(
  from: PlacedPoint,
  by: number,
  runs: readonly Run[],
  input: PlacingInput,
): PlacedPoint | null {
  const ahead = from.t + by;
  if (ahead >= 0 && ahead <= runs[from.run]!.length) return byHand(runs, from.run, ahead, by, input);
  const before = (from.run + runs.length - 1) % runs.length;
  const behind = runs[before]!.length + ahead;
  return from.t === 0 && ahead < 0 && behind >= 0 ? byHand(runs, before, behind, by, input) : null;
}

function byHand(
  runs: readonly Run[],
  run: number,
  t: number,
  shift: number,
  input: PlacingInput,
): PlacedPoint {
  const foot = footOnRun(runs[run]!, t, input.rim);
  return { ...foot, centre: input.centreOf(foot), run, t, by: 'hand', shift };
}
