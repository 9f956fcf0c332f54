import type { Random } from '../random.ts';
import type { Board } from './board.ts';

/** Pieces that make up this share of the hull area, largest first, count as large. */
const LARGE = 0.75;

/**
 * Exchanges two large unlike pieces; small ones whose middle lay inside one of them go along into the hole it left.
 *
 * @source sources.md#gardeyn-2025
 */
export function disrupt(board: Board, dice: Random): void {
  const { hullArea, diameter, shapeOf, movable } = board.tables;
  const order = Array.from({ length: movable }, (_, i) => i).sort(
    (a, b) => hullArea[b]! - hullArea[a]! || a - b,
  );
  const total = order.reduce((sum, i) => sum + hullArea[i]!, 0);
  let sum = 0;
  const large = order.filter((i) => (sum += hullArea[i]!) - hullArea[i]! < LARGE * total);
  const unlike = (i: number, j: number) =>
    shapeOf[i] !== shapeOf[j] &&
    (Math.abs(hullArea[i]! / hullArea[j]! - 1) > 0.01 || Math.abs(diameter[i]! / diameter[j]! - 1) > 0.01);
  const first = large[dice.below(large.length)]!;
  const others = large.filter((j) => unlike(first, j));
  const rest = others.length > 0 ? others : order.filter((j) => shapeOf[j] !== shapeOf[first]);
  if (rest.length === 0) scatter(board, first, dice);
  else exchange(board, first, rest[dice.below(rest.length)]!, dice);
}

/** All pieces are alike: one goes anywhere. */
function scatter(board: Board, i: number, dice: Random): void {
  const { firstVariant, turns, width, height, prep } = board.tables;
  const v = firstVariant[i]! + dice.below(turns[i]!);
  const roomX = Math.max(0, board.length - width[v]!);
  board.put(i, v, dice.next() * roomX, dice.next() * (prep.height - height[v]!));
}

const middle = (board: Board, i: number) =>
  [(board.x[i]! + board.right[i]!) / 2, (board.y[i]! + board.top[i]!) / 2] as const;

function exchange(board: Board, i: number, j: number, dice: Random): void {
  const [cix, ciy] = middle(board, i);
  const [cjx, cjy] = middle(board, j);
  const movers = followers(board, i, j);
  centre(board, i, cjx, cjy, dice);
  centre(board, j, cix, ciy, dice);
  for (const { k, to } of movers) {
    const [kx, ky] = middle(board, k);
    const [sx, sy] = to === j ? [cjx - cix, cjy - ciy] : [cix - cjx, ciy - cjy];
    centreAs(board, k, board.variant[k]!, kx + sx, ky + sy);
  }
}

/** Smaller pieces whose middle lies where the other large piece is about to come. */
function followers(board: Board, i: number, j: number) {
  const { hullArea, movable } = board.tables;
  const least = Math.min(hullArea[i]!, hullArea[j]!) / 2;
  const out: { k: number; to: number }[] = [];
  const [wi, hi] = [board.right[i]! - board.x[i]!, board.top[i]! - board.y[i]!];
  const [wj, hj] = [board.right[j]! - board.x[j]!, board.top[j]! - board.y[j]!];
  const [cix, ciy] = middle(board, i);
  const [cjx, cjy] = middle(board, j);
  for (let k = 0; k < movable; k++) {
    if (k === i || k === j || hullArea[k]! > least) continue;
    const [kx, ky] = middle(board, k);
    if (Math.abs(kx - cix) < wj / 2 && Math.abs(ky - ciy) < hj / 2) out.push({ k, to: j });
    else if (Math.abs(kx - cjx) < wi / 2 && Math.abs(ky - cjy) < hi / 2) out.push({ k, to: i });
  }
  return out;
}

/** A random turn, middle at (x, y), pushed into the strip. */
function centre(board: Board, i: number, x: number, y: number, dice: Random): void {
  const { firstVariant, turns } = board.tables;
  const keep = dice.next() < 0.5;
  centreAs(board, i, keep ? board.variant[i]! : firstVariant[i]! + dice.below(turns[i]!), x, y);
}

function centreAs(board: Board, i: number, v: number, x: number, y: number): void {
  const { width, height, prep } = board.tables;
  const clamp = (value: number, most: number) => Math.max(0, Math.min(most, value));
  board.put(
    i,
    v,
    clamp(x - width[v]! / 2, Math.max(0, board.length - width[v]!)),
    clamp(y - height[v]! / 2, prep.height - height[v]!),
  );
}
