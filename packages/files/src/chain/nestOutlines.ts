import { bounds, contains, edges, type Outline, type Point } from '@panewright/geometry';
import { mm, ok, type Result, refuse } from '@panewright/quantity';
import type { FileNote, FileRefusal } from '../fileRefusal.ts';
import type { PlacedOutline } from './ringOutline.ts';

/** An outline that lies in another. `depth` 1 is directly within the outer one. */
export interface InnerOutline {
  readonly outline: Outline;
  readonly layer?: string;
  readonly name?: string;
  readonly depth: number;
}

/** Points nearer to an edge than this, mm, are on it: outlines that share a side are not said to overlap. */
const ON_EDGE = 0.01;

/** Edges of an outline that are looked at, spread evenly. */
const LOOKED_AT = 100;
const MOST_PAIRS = 20_000;

export interface Nested extends PlacedOutline {
  readonly inner: readonly InnerOutline[];
}

/**
 * The outermost outlines in the order of the file, each with all that lies within it.
 *
 * @refuses FILE_TOO_LARGE where more than 20 000 pairs of outlines lie over each other
 */
export function nestOutlines(
  outlines: readonly PlacedOutline[],
): Result<{ readonly outer: readonly Nested[]; readonly notes: readonly FileNote[] }, FileRefusal> {
  const pairs = nearPairs(outlines);
  if (pairs.length > MOST_PAIRS)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'nesting', found: pairs.length, most: MOST_PAIRS });
  const around = outlines.map((): number[] => []);
  const overlaps: (readonly [number, number])[] = [];
  for (const [i, j] of pairs) {
    const verdict = relation(outlines[i]!.outline, outlines[j]!.outline);
    if (verdict === 'first within') around[i]!.push(j);
    else if (verdict === 'second within') around[j]!.push(i);
    else if (verdict === 'overlap') overlaps.push([i, j]);
  }
  const outerIndex = new Map(
    outlines.flatMap((_, i) => (around[i]!.length === 0 ? [i] : [])).map((i, k) => [i, k]),
  );
  const outer = [...outerIndex.keys()].map((index): Nested => {
    const inner = outlines.flatMap(({ place: _, ...own }, i): readonly InnerOutline[] =>
      around[i]!.includes(index) ? [{ ...own, depth: around[i]!.length }] : [],
    );
    return { ...outlines[index]!, inner };
  });
  const notes = overlaps.flatMap(([i, j]): readonly FileNote[] => {
    const [first, second] = [outerIndex.get(i), outerIndex.get(j)];
    return first === undefined || second === undefined ? [] : [{ code: 'OUTLINES_OVERLAP', first, second }];
  });
  return ok({ outer, notes });
}

/** Pairs whose boxes meet, a little more than the most if there are more. */
function nearPairs(outlines: readonly PlacedOutline[]): readonly (readonly [number, number])[] {
  const boxes = outlines.map(({ outline }) => bounds(outline));
  const pairs: (readonly [number, number])[] = [];
  for (let i = 0; i < boxes.length && pairs.length <= MOST_PAIRS; i++)
    for (let j = i + 1; j < boxes.length; j++) if (!apart(boxes[i]!, boxes[j]!)) pairs.push([i, j]);
  return pairs;
}

type Box = ReturnType<typeof bounds>;
const apart = (a: Box, b: Box) => a.minX > b.maxX || b.minX > a.maxX || a.minY > b.maxY || b.minY > a.maxY;

type Relation = 'first within' | 'second within' | 'overlap' | 'apart';

/** By the corners and the middles of edges; where all of them touch, by nothing: such outlines are apart. */
function relation(first: Outline, second: Outline): Relation {
  const [a, b] = [sides(first, second), sides(second, first)];
  if (a.inside && !a.outside) return 'first within';
  if (b.inside && !b.outside) return 'second within';
  return a.inside || b.inside ? 'overlap' : 'apart';
}

function sides(of: Outline, about: Outline): { readonly inside: boolean; readonly outside: boolean } {
  let [inside, outside] = [false, false];
  const all = edges(of);
  const stride = Math.ceil(all.length / LOOKED_AT);
  for (let index = 0; index < all.length; index += stride) {
    const { from, to, bulge } = all[index]!;
    const middle = {
      x: mm((from.x + to.x + bulge * (to.y - from.y)) / 2),
      y: mm((from.y + to.y - bulge * (to.x - from.x)) / 2),
    };
    for (const p of [to, middle] satisfies Point[]) {
      const place = contains(about, p, mm(ON_EDGE));
      inside ||= place === 'inside';
      outside ||= place === 'outside';
      if (inside && outside) return { inside, outside };
    }
  }
  return { inside, outside };
}
