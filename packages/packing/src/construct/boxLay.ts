import { emptyLay, type Lay, lengthOf, type Prepared, type Shape, type Variant } from '../prepared.ts';

/** Turns of a shape that are looked at, those of the least boxes. */
const TURNS = 8;

/** A stretch across the strip, and how far along it the boxes laid so far reach there. */
interface Stretch {
  readonly y: number;
  readonly tall: number;
  readonly reach: number;
}

/**
 * A lay by boxes alone: where the boxes laid so far reach least, the one that fills the gap best, until none is left.
 * Poor where shapes are far from boxes, but there at once for thousands of unlike pieces, for which the leftmost spots
 * of the true shapes take minutes. For strips without reserved places.
 *
 * @source sources.md#burke-2004 (best fit), with the gap's lower end as the place
 */
export function boxLay(prep: Prepared): Lay {
  const { variant, x, y } = emptyLay(prep);
  const turns = prep.shapes.map(leastBoxes);
  const waiting = new Map(prep.items.map(({ shape }, i) => [i, turns[shape]!]));
  let line: readonly Stretch[] = [{ y: 0, tall: prep.height, reach: 0 }];
  while (waiting.size > 0) {
    const at = line.reduce((least, { reach }, k) => (reach < line[least]!.reach ? k : least), 0);
    const gap = line[at]!;
    const found = bestIn(waiting, gap.tall + prep.touch);
    if (found === undefined) {
      line = filled(line, at);
      continue;
    }
    const { i, v } = found;
    waiting.delete(i);
    variant[i] = v.index;
    x[i] = gap.reach;
    y[i] = Math.min(gap.y, prep.height - v.height);
    const rest = { y: gap.y + v.height, tall: gap.tall - v.height, reach: gap.reach };
    const laid = { y: gap.y, tall: Math.min(v.height, gap.tall), reach: gap.reach + v.width };
    line = [...line.slice(0, at), laid, ...(rest.tall > prep.touch ? [rest] : []), ...line.slice(at + 1)];
  }
  return { variant, x, y, length: lengthOf(prep, variant, x) };
}

const leastBoxes = ({ variants }: Shape): readonly Variant[] =>
  [...variants].sort((a, b) => a.width * a.height - b.width * b.height || a.index - b.index).slice(0, TURNS);

/** The waiting item that is tallest within the gap, the longest of these. */
function bestIn(waiting: ReadonlyMap<number, readonly Variant[]>, tall: number) {
  let best: { readonly i: number; readonly v: Variant } | undefined;
  for (const [i, turns] of waiting)
    for (const v of turns) {
      if (v.height > tall) continue;
      const better = best === undefined || v.height > best.v.height;
      if (better || (v.height === best!.v.height && v.width > best!.v.width)) best = { i, v };
    }
  return best;
}

/** The stretch at `at`, which nothing fits, given up to its neighbour that reaches less far. */
function filled(line: readonly Stretch[], at: number): readonly Stretch[] {
  const gap = line[at]!;
  const [below, above] = [line[at - 1], line[at + 1]];
  const joinsBelow = below !== undefined && (above === undefined || below.reach <= above.reach);
  if (joinsBelow)
    return [...line.slice(0, at - 1), { ...below, tall: below.tall + gap.tall }, ...line.slice(at + 1)];
  const joined = { y: gap.y, tall: gap.tall + above!.tall, reach: above!.reach };
  return [...line.slice(0, at), joined, ...line.slice(at + 2)];
}
