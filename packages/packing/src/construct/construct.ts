import { emptyLay, type Lay, lengthOf, type Prepared, type Variant } from '../prepared.ts';
import type { Random } from '../random.ts';
import { leftmostSpot, type Placed, type Spot } from './leftmost.ts';

/** How a construction orders the pieces and chooses among a piece's turns. */
export interface Manner {
  readonly order: 'hull' | 'area' | 'length' | 'width' | 'height';
  readonly prefer: 'right edge' | 'left edge' | 'narrow';
  /** 0 keeps the order; otherwise each piece's key is multiplied by a normal factor of this spread. */
  readonly shuffle: number;
  /** Chance that a piece is held to one turn, drawn at random, instead of the turn that scores best. */
  readonly whim: number;
}

/** The manners tried first, best on average first. */
export const MANNERS: readonly Manner[] = [
  { order: 'hull', prefer: 'right edge', shuffle: 0, whim: 0 },
  { order: 'width', prefer: 'right edge', shuffle: 0, whim: 0 },
  { order: 'height', prefer: 'right edge', shuffle: 0, whim: 0 },
  { order: 'area', prefer: 'left edge', shuffle: 0, whim: 0 },
  { order: 'length', prefer: 'narrow', shuffle: 0, whim: 0 },
  { order: 'width', prefer: 'narrow', shuffle: 0, whim: 0 },
];

/** Blockers visited in the time of one evaluation of the search. */
const VISITS_PER_EVALUATION = 12;

/**
 * Roughly what a construction will cost, in evaluations: every piece in every turn looks at all laid before, but like
 * ones only from where the last of them went. Much too little for hundreds of like pieces of several turns: a turn that
 * none of them took looks at all.
 */
export function costOfConstructing({ items, shapes }: Prepared): number {
  const turns = items.reduce((sum, { shape }) => sum + shapes[shape]!.variants.length, 0);
  return 36 * turns * shapes.length;
}

export interface Constructed {
  readonly lay: Lay;
  /** Items that found a place, in the order laid; all of them on a strip without end. */
  readonly placed: readonly number[];
  /** In evaluations. */
  readonly cost: number;
}

/** Items that lie where they are, clear of one another. */
export interface Kept {
  readonly items: readonly number[];
  readonly lay: Lay;
}

/**
 * Pieces one by one, biggest first, each at the leftmost free spot over its turns. Always free of overlap.
 *
 * @param longest length of the grown strip; what finds no place on it is left out
 * @param kept items laid before the first, and not moved
 */
export function construct(
  prep: Prepared,
  manner: Manner,
  dice: Random,
  longest = Number.POSITIVE_INFINITY,
  kept?: Kept,
): Constructed {
  const from = kept?.lay ?? emptyLay(prep);
  const [variant, x, y] = [from.variant.slice(), from.x.slice(), from.y.slice()];
  const items: number[] = prep.still.map((_, k) => prep.items.length + k);
  items.push(...(kept?.items ?? []));
  const last = new Float64Array(prep.variants.length);
  const placed: Placed = { items, variant, x, y, last, visits: 0 };
  const still = new Set(items);
  for (const i of orderOf(prep, manner, dice)) {
    if (still.has(i)) continue;
    const chosen = bestTurn(prep, placed, i, manner, dice, longest);
    if (chosen === undefined) {
      if (longest < Number.POSITIVE_INFINITY) continue;
      throw new Error('a piece that fits the strip found no spot on it');
    }
    variant[i] = chosen.v;
    x[i] = chosen.x;
    y[i] = chosen.y;
    last[chosen.v] = chosen.x;
    items.push(i);
  }
  const length = lengthOf(prep, variant, x);
  const cost = Math.ceil(placed.visits / VISITS_PER_EVALUATION);
  return { lay: { variant, x, y, length }, placed: items.slice(prep.still.length), cost };
}

function orderOf(prep: Prepared, { order, shuffle }: Manner, dice: Random): readonly number[] {
  const key = prep.shapes.map((shape) => {
    const wide = Math.max(...shape.variants.map((v) => v.width));
    const tall = Math.max(...shape.variants.map((v) => v.height));
    const flat = Math.min(...shape.variants.map((v) => v.height));
    if (order === 'hull') return shape.hullArea * shape.diameter;
    if (order === 'area') return shape.area;
    if (order === 'length') return Math.max(wide, tall) + 1e-3 * Math.min(wide, tall);
    return order === 'width' ? tall + 1e-3 * wide : flat + 1e-3 * wide;
  });
  const weight = prep.items.map(
    (item) => key[item.shape]! * (shuffle > 0 ? Math.exp(shuffle * dice.normal()) : 1),
  );
  return prep.items.map((_, i) => i).sort((a, b) => weight[b]! - weight[a]! || a - b);
}

type Turned = Spot & { readonly v: number };

function bestTurn(
  prep: Prepared,
  placed: Placed,
  i: number,
  manner: Manner,
  dice: Random,
  longest: number,
): Turned | undefined {
  const all = prep.shapes[prep.items[i]!.shape]!.variants;
  if (manner.whim > 0 && dice.next() < manner.whim) {
    const held = bestOf(prep, placed, [all[dice.below(all.length)]!], manner, longest);
    if (held) return held;
  }
  return bestOf(prep, placed, all, manner, longest);
}

function bestOf(
  prep: Prepared,
  placed: Placed,
  turns: readonly Variant[],
  manner: Manner,
  longest: number,
): Turned | undefined {
  let best: Turned | undefined;
  let bestScore = Number.POSITIVE_INFINITY;
  for (const variant of turns) {
    const ahead = manner.prefer === 'left edge' ? 0 : variant.width * (manner.prefer === 'narrow' ? 2 : 1);
    const limit = Math.min(bestScore - ahead, longest - variant.width + prep.touch);
    if (limit <= 0) continue;
    const spot = leftmostSpot(prep, placed, variant.index, limit);
    if (spot === undefined || spot.x + ahead >= bestScore - prep.touch) continue;
    best = { ...spot, v: variant.index };
    bestScore = spot.x + ahead;
  }
  return best;
}

/** The k-th manner tried: first the fixed ones, then shuffled. */
export function mannerFor(k: number, dice: Random): Manner {
  const fixed = MANNERS[k];
  if (fixed) return fixed;
  const manner = MANNERS[dice.below(MANNERS.length)]!;
  return { ...manner, shuffle: 0.1 + 0.1 * dice.below(4), whim: 0.15 * dice.below(3) };
}
