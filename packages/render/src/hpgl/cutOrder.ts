import { bounds, containsOutline, type Outline, type Point, point } from '@panewright/geometry';
import { beginnings } from './stroke.ts';

/** A contour to be cut, and the segment in whose middle the cut begins. */
export interface Cut {
  readonly contour: number;
  readonly segment: number;
}

/**
 * The order in which contours are cut. A contour comes after all that lie in it, so that nothing is cut in a piece that
 * is already loose; of those that may come next, the one whose beginning is nearest to where the last cut ended.
 *
 * @param contours that do not cross
 * @source nearest neighbour: common practice, no source
 */
export function cutOrder(contours: readonly Outline[], from: Point = point(0, 0)): readonly Cut[] {
  const holders = holdersOf(contours);
  const waiting = contours.map(() => 0);
  for (const held of holders) for (const holder of held) waiting[holder]! += 1;
  const starts = contours.map(beginnings);
  const open = new Set(contours.map((_, index) => index));
  const order: Cut[] = [];
  let at = from;
  while (open.size > 0) {
    const next = nearestOf(open, waiting, starts, at);
    order.push(next);
    open.delete(next.contour);
    for (const holder of holders[next.contour]!) waiting[holder]! -= 1;
    at = starts[next.contour]![next.segment]!;
  }
  return order;
}

function nearestOf(
  open: ReadonlySet<number>,
  waiting: readonly number[],
  starts: readonly (readonly Point[])[],
  at: Point,
): Cut {
  let best: Cut | undefined;
  let least = Infinity;
  for (const contour of open) {
    if (waiting[contour]! > 0) continue;
    starts[contour]!.forEach((p, segment) => {
      const away = (p.x - at.x) ** 2 + (p.y - at.y) ** 2;
      if (away < least) [best, least] = [{ contour, segment }, away];
    });
  }
  if (best === undefined) throw new Error('Contours that lie in each other have no order.');
  return best;
}

/** For each contour, those that it lies in. Of two that are equal, the later is taken to lie in the earlier. */
function holdersOf(contours: readonly Outline[]): readonly (readonly number[])[] {
  const boxes = contours.map(bounds);
  return contours.map((inner, i) =>
    contours.flatMap((outer, j) => {
      const [a, b] = [boxes[i]!, boxes[j]!];
      const fits = a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY;
      if (i === j || !fits || !containsOutline(outer, inner)) return [];
      return i < j && containsOutline(inner, outer) ? [] : [j];
    }),
  );
}

/** What a pen draws, nearest-next from either end of each; closed strokes are begun where they begin. */
export function nearestNext<T extends { readonly ends: readonly Point[] }>(
  all: readonly T[],
  from: Point,
): readonly { readonly one: T; readonly end: number }[] {
  const open = new Set(all);
  const order: { one: T; end: number }[] = [];
  let at = from;
  while (open.size > 0) {
    let best: { one: T; end: number } | undefined;
    let least = Infinity;
    for (const one of open)
      one.ends.forEach((p, end) => {
        const away = (p.x - at.x) ** 2 + (p.y - at.y) ** 2;
        if (away < least) [best, least] = [{ one, end }, away];
      });
    order.push(best!);
    open.delete(best!.one);
    at = best!.one.ends[best!.one.ends.length === 1 ? 0 : 1 - best!.end]!;
  }
  return order;
}
