import { ok, type Result, refuse } from '@panewright/quantity';
import type { Layout, PlacingInput } from './layout.ts';
import { type Placer, placer, placing } from './placing.ts';

/** A layout's low margin: the weakest point's, or `unloaded` where nothing is asked of any. */
export type MarginOf = (layout: Layout) => number | 'unloaded';

export interface FewestPoints {
  readonly layout: Layout;
  readonly margin: number | 'unloaded';
  /** Layouts worked out; every one with fewer points is among them. */
  readonly tried: number;
}

export type FewestRefusal =
  /** Pockets would lie over one another before the margin is met; the best found is given. */
  | {
      readonly code: 'MARGIN_OUT_OF_REACH';
      readonly asked: number;
      readonly best: number;
      readonly points: number;
    }
  /** Too many layouts to try: the best of those tried. */
  | {
      readonly code: 'SEARCH_TOO_LONG';
      readonly asked: number;
      readonly best: number;
      readonly points: number;
      readonly tried: number;
    };

/** Layouts tried at most. */
const MOST_TRIED = 2000;

interface Found {
  readonly layout: Layout;
  readonly margin: number | 'unloaded';
}

/**
 * The fewest hold points that meet a margin. The shop's spacing gives the least; then every layout with one point more is
 * tried, with two more, and so on, stretches that mirror one another raised together.
 *
 * @param asked low margin wanted, a true ratio
 * @param place where the layouts come from: the input's own placer, or one that remembers them
 * @param most layouts tried before the search is given up
 * @returns of the layouts with the fewest points that meet it, the one with the most margin
 * @range as placing; the fewest among layouts as symmetric as the first, with gaps as equal as can be on each stretch
 * @refuses MARGIN_OUT_OF_REACH, SEARCH_TOO_LONG
 * @source exhaustive search by number of points
 */
export function fewestPoints(
  input: PlacingInput,
  marginOf: MarginOf,
  asked: number,
  place: Placer = placer(input),
  most = MOST_TRIED,
): Result<FewestPoints, FewestRefusal> {
  const layout = place() ?? placing(input);
  let best: Found = { layout, margin: marginOf(layout) };
  let tried = 1;
  if (meets(best.margin, asked)) return ok({ ...best, tried });
  const sizes = orbitSizes(layout);
  let crowded = 0;
  for (let extra = 1; crowded < Math.max(...sizes); extra++) {
    const choices = raises(sizes, extra);
    if (tried + choices.length > most)
      return refuse({ code: 'SEARCH_TOO_LONG', asked, ...figures(best), tried });
    const found = choices.flatMap((raise): Found[] => {
      tried++;
      const raised = place({ mirrors: layout.mirrors, each: raisedBy(layout, raise) });
      return !raised || isCrowded(raised, layout) ? [] : [{ layout: raised, margin: marginOf(raised) }];
    });
    crowded = found.length === 0 ? crowded + 1 : 0;
    for (const one of found) if (ratio(one.margin) > ratio(best.margin)) best = one;
    if (meets(best.margin, asked)) return ok({ ...best, tried });
  }
  return refuse({ code: 'MARGIN_OUT_OF_REACH', asked, ...figures(best) });
}

const ratio = (margin: number | 'unloaded'): number =>
  margin === 'unloaded' ? Number.POSITIVE_INFINITY : margin;
const meets = (margin: number | 'unloaded', asked: number): boolean => ratio(margin) >= asked;
const figures = ({ layout, margin }: Found) => ({ best: ratio(margin), points: layout.points.length });

/** How many legs are raised together, by orbit. */
function orbitSizes({ orbits }: Layout): readonly number[] {
  const sizes: number[] = [];
  for (const orbit of orbits) sizes[orbit] = (sizes[orbit] ?? 0) + 1;
  return sizes;
}

const raisedBy = ({ counts, orbits }: Layout, raise: readonly number[]): readonly number[] =>
  counts.map((count, leg) => count + raise[orbits[leg]!]!);

/** Every way to add `extra` points, so many on each leg of an orbit. */
function raises(sizes: readonly number[], extra: number): readonly (readonly number[])[] {
  const [size, ...rest] = sizes;
  if (size === undefined) return extra === 0 ? [[]] : [];
  const all: (readonly number[])[] = [];
  for (let here = 0; here * size <= extra; here++)
    for (const others of raises(rest, extra - here * size)) all.push([here, ...others]);
  return all;
}

/** Pockets lie over one another where they did not before. */
function isCrowded(layout: Layout, before: Layout): boolean {
  const crowds = ({ problems }: Layout) => problems.filter(({ code }) => code === 'POINTS_CROWDED').length;
  return crowds(layout) > crowds(before);
}
