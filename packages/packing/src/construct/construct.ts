import { type Lay, lengthOf, type Prepared } from '../prepared.ts';
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

export interface Constructed {
  readonly lay: Lay;
  /** In evaluations. */
  readonly cost: number;
}

/** Pieces one by one, biggest first, each at the leftmost free spot over its turns. Always free of overlap. */
export function construct(prep: Prepared, manner: Manner, dice: Random): Constructed {
  const n = prep.items.length;
  const variant = new Int32Array(n);
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const items: number[] = [];
  const placed: Placed = { items, variant, x, y, visits: 0 };
  for (const i of orderOf(prep, manner, dice)) {
    const chosen = bestTurn(prep, placed, i, manner, dice);
    variant[i] = chosen.v;
    x[i] = chosen.x;
    y[i] = chosen.y;
    items.push(i);
  }
  const length = lengthOf(prep, variant, x);
  return { lay: { variant, x, y, length }, cost: Math.ceil(placed.visits / VISITS_PER_EVALUATION) };
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

function bestTurn(
  prep: Prepared,
  placed: Placed,
  i: number,
  manner: Manner,
  dice: Random,
): Spot & { readonly v: number } {
  let best: (Spot & { readonly v: number }) | undefined;
  let bestScore = Infinity;
  const all = prep.shapes[prep.items[i]!.shape]!.variants;
  const turns = manner.whim > 0 && dice.next() < manner.whim ? [all[dice.below(all.length)]!] : all;
  for (const variant of turns) {
    const ahead = manner.prefer === 'left edge' ? 0 : variant.width * (manner.prefer === 'narrow' ? 2 : 1);
    const spot = leftmostSpot(prep, placed, variant.index, bestScore - ahead);
    if (spot === undefined) continue;
    const score = spot.x + ahead;
    if (score < bestScore - prep.touch) {
      best = { ...spot, v: variant.index };
      bestScore = score;
    }
  }
  if (best === undefined) throw new Error('a piece that fits the strip found no spot on it');
  return best;
}
