import { isFree, nearestFree, type Stretch } from './freeStretches.ts';

/** A gap over the limit by less than this is at the limit: a tape is read to far less, mm. */
export const SLACK = 0.01;

/** Points to be set between two that stand, on the free stretches between them. */
export interface Span {
  readonly from: number;
  readonly to: number;
  /** Only what lies between `from` and `to` counts. */
  readonly free: readonly Stretch[];
  /** True where the free stretches are the same from both ends and the points are to be so too. */
  readonly symmetric: boolean;
}

export interface Chain {
  /** Between the two ends, in order. */
  readonly positions: readonly number[];
  readonly widest: number;
}

/** More points than this on one span are a mistake in the input. */
const MOST_POINTS = 20_000;

/**
 * The fewest points that leave no gap over the limit; null where a blocked stretch alone is wider than it.
 *
 * @source each point as far along as it goes, which needs the fewest (induction on the gaps)
 */
export function fewestOnSpan(span: Span, limit: number): number | null {
  if (!span.symmetric) return strides(span, limit + SLACK, false);
  const [across, onMiddle] = [strides(span, limit + SLACK, true), strides(span, limit + SLACK, false)];
  const counts = [
    ...(across === null ? [] : [2 * across]),
    ...(onMiddle === null || !middleFree(span) ? [] : [2 * onMiddle + 1]),
  ];
  return counts.length === 0 ? null : Math.min(...counts);
}

/**
 * A stated number of points on a span: the widest gap as small as can be, then the gaps as equal as can be.
 *
 * @returns null where that many cannot be set apart on what is free
 * @source bisection on the widest gap, then descent on the sum of squared gaps, which is convex on one choice of stretches
 */
export function spread(span: Span, count: number): Chain | null {
  const whole = span.to - span.from;
  if (count === 0) return { positions: [], widest: whole };
  if (!fits(span, count, whole)) return null;
  let low = whole / (count + 1);
  let high = whole;
  if (fits(span, count, low + 1e-9)) high = low + 1e-9;
  while (high - low > 1e-7) {
    const middle = (low + high) / 2;
    if (fits(span, count, middle)) high = middle;
    else low = middle;
  }
  const positions = evened(span, count, high + 1e-7);
  return positions && { positions, widest: widestOf([span.from, ...positions, span.to]) };
}

const widestOf = (points: readonly number[]): number =>
  Math.max(...points.slice(1).map((t, k) => t - points[k]!));

const middleOf = (span: Span): number => (span.from + span.to) / 2;
const middleFree = (span: Span): boolean => isFree(span.free, middleOf(span));

/** The half a symmetric chain is worked out on: its points, its end, and whether the last gap lies across the middle. */
function halfOf(span: Span, count: number) {
  if (!span.symmetric) return { points: count, end: span.to, across: false };
  return { points: Math.floor(count / 2), end: middleOf(span), across: count % 2 === 0 };
}

/** Fewest points up to the end (of a symmetric span: up to its middle, or to a gap across it); null where none reach. */
function strides(span: Span, gap: number, across: boolean): number | null {
  const end = span.symmetric ? middleOf(span) : span.to;
  let t = span.from;
  for (let count = 0; count <= MOST_POINTS; count++) {
    if ((across ? 2 * (end - t) : end - t) <= gap) return count;
    const next = lastFree(span.free, Math.min(t + gap, end));
    if (next === null || next <= t + 1e-9) return null;
    t = next;
  }
  return null;
}

function lastFree(free: readonly Stretch[], most: number): number | null {
  let best: number | null = null;
  for (const { from, to } of free) if (from <= most) best = Math.max(best ?? -Infinity, Math.min(to, most));
  return best;
}

/** Whether `count` points can leave no gap over `gap`. */
function fits(span: Span, count: number, gap: number): boolean {
  const { points, end, across } = halfOf(span, count);
  if (span.symmetric && !across && !middleFree(span)) return false;
  const needed = strides(span, gap, across);
  if (needed === null || needed > points) return false;
  return (
    points === needed || span.free.some(({ from, to }) => Math.min(to, end) - Math.max(from, span.from) > 1)
  );
}

/** Points with no gap over `most`, their gaps as equal as descent from several starts makes them. */
function evened(span: Span, count: number, most: number): readonly number[] | null {
  const { points, end, across } = halfOf(span, count);
  const early = earliest(span, points, most, end, across);
  const equal = (k: number) => span.from + ((k + 1) * (span.to - span.from)) / (count + 1);
  const starts = [(k: number) => equal(k), () => span.to, (k: number) => early[k] ?? span.from]
    .map((target) => started(span, target, early, points, most))
    .filter((start) => start !== null);
  if (starts.length === 0) return null;
  // Equal gaps cannot be bettered.
  if (starts[0]!.every((t, k) => Math.abs(t - equal(k)) < 1e-6)) return whole(span, starts[0]!, across, end);
  const tried = starts.map((start) => descend(span, start, most, end, across));
  const cost = (chain: readonly number[]) => squares([span.from, ...chain, end], across);
  const best = tried.reduce((a, b) => (cost(b) < cost(a) - 1e-9 ? b : a));
  return whole(span, best, across, end);
}

/** Both halves of a symmetric chain; any other as it is. */
function whole(span: Span, half: readonly number[], across: boolean, end: number): readonly number[] {
  if (!span.symmetric) return half;
  const mirrored = half.map((t) => span.from + span.to - t).reverse();
  return across ? [...half, ...mirrored] : [...half, end, ...mirrored];
}

/** Each point as near its target as what is free and the widest gap let it, and near enough the end for the rest. */
function started(
  span: Span,
  target: (k: number) => number,
  early: readonly number[],
  points: number,
  most: number,
): readonly number[] | null {
  const chain: number[] = [];
  for (let k = 0; k < points; k++) {
    const before = chain.at(-1) ?? span.from;
    const least = Math.max(early[k] ?? Infinity, before + 1e-6);
    const at = within(span.free, target(k), least, before + most);
    if (at === null) return null;
    chain.push(at);
  }
  return chain;
}

/** As far back as each point can be and still let the rest reach the end. */
function earliest(span: Span, points: number, most: number, end: number, across: boolean): number[] {
  const early: number[] = Array.from({ length: points }, () => span.from);
  let t = end;
  for (let k = points - 1; k >= 0; k--) {
    const reach = k === points - 1 && across ? most / 2 : most;
    const next = firstFree(span.free, Math.max(t - reach, span.from));
    if (next === null) return [];
    early[k] = t = next;
  }
  return early;
}

function firstFree(free: readonly Stretch[], least: number): number | null {
  let best: number | null = null;
  for (const { from, to } of free) if (to >= least) best = Math.min(best ?? Infinity, Math.max(from, least));
  return best;
}

function within(free: readonly Stretch[], target: number, least: number, most: number): number | null {
  const clipped = free
    .map(({ from, to }) => ({ from: Math.max(from, least), to: Math.min(to, most) }))
    .filter(({ from, to }) => from <= to);
  return nearestFree(clipped, target);
}

const squares = (points: readonly number[], across: boolean): number =>
  points.slice(1).reduce((sum, t, k) => {
    const gap = t - points[k]!;
    // The gap across the middle is whole, and there is one of it to two of each other.
    return sum + (across && k === points.length - 2 ? 2 * gap * gap : gap * gap);
  }, 0);

/** Each point in turn to the middle of its neighbours, as far as what is free and the widest gap let it. */
function descend(
  span: Span,
  start: readonly number[],
  most: number,
  end: number,
  across: boolean,
): readonly number[] {
  const chain = [...start];
  for (let pass = 0; pass < 400; pass++) {
    let moved = 0;
    for (let k = 0; k < chain.length; k++) {
      const before = k === 0 ? span.from : chain[k - 1]!;
      const last = k === chain.length - 1;
      const after = last ? end : chain[k + 1]!;
      const double = last && across;
      const target = double ? (before + 2 * end) / 3 : (before + after) / 2;
      const least = Math.max(before, after - (double ? most / 2 : most));
      const at = within(span.free, target, least, Math.min(before + most, after));
      if (at === null) continue;
      moved = Math.max(moved, Math.abs(at - chain[k]!));
      chain[k] = at;
    }
    if (moved < 1e-7) break;
  }
  return chain;
}
