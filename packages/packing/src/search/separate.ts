import type { Random } from '../random.ts';
import type { Board, Snapshot } from './board.ts';
import { Mover } from './move.ts';

/** How long an attempt to remove all overlap goes on. */
export interface Patience {
  /** Sweeps without 2 % gain before a strike. */
  readonly sweeps: number;
  readonly strikes: number;
  /** Orders tried per sweep; the best is kept. */
  readonly orders: number;
}

/** An attempt at rest. `best` is the least overlap met; its loss is plain, not weighted. */
export interface Attempt {
  readonly patience: Patience;
  readonly best: Snapshot;
  readonly bestLoss: number;
  readonly strikeLoss: number;
  readonly idle: number;
  readonly strikes: number;
  /** Sweeps in all. */
  readonly swept: number;
}

export function newAttempt(board: Board, patience: Patience): Attempt {
  board.weight.fill(1);
  board.survey();
  const loss = board.loss(false);
  return { patience, best: board.save(), bestLoss: loss, strikeLoss: loss, idle: 0, strikes: 0, swept: 0 };
}

/** 'struck': no gain for a while; the board is back at the best. */
export type Outcome = 'going on' | 'struck' | 'separated' | 'given up';

/**
 * One sweep of an attempt: every overlapping piece once, in random order; then the weights.
 *
 * @source guided local search on overlap: sources.md#egeblad-2007, loop as in #gardeyn-2025
 */
export function sweep(board: Board, attempt: Attempt, dice: Random): { attempt: Attempt; outcome: Outcome } {
  relieveAll(board, attempt.patience.orders, dice);
  board.survey();
  const loss = board.loss(false);
  if (loss === 0) {
    return {
      attempt: { ...attempt, best: board.save(), bestLoss: 0, swept: attempt.swept + 1 },
      outcome: 'separated',
    };
  }
  let { best, bestLoss, strikeLoss, idle, strikes } = attempt;
  const swept = attempt.swept + 1;
  if (loss < bestLoss) {
    if (loss < 0.98 * bestLoss) idle = 0;
    best = board.save();
    bestLoss = loss;
  } else idle++;
  board.reweigh();
  let outcome: Outcome = 'going on';
  if (idle >= attempt.patience.sweeps) {
    strikes = bestLoss > 0.98 * strikeLoss ? strikes + 1 : 0;
    strikeLoss = bestLoss;
    idle = 0;
    board.restore(best);
    board.survey();
    outcome = strikes >= attempt.patience.strikes ? 'given up' : 'struck';
  }
  return { attempt: { ...attempt, best, bestLoss, strikeLoss, idle, strikes, swept }, outcome };
}

function relieveAll(board: Board, orders: number, dice: Random): void {
  const mover = new Mover(board, dice);
  const colliding = board.colliding();
  if (orders === 1) {
    for (const i of shuffled(colliding, dice)) mover.relieve(i);
    return;
  }
  const from = board.save();
  let best: Snapshot = from;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < orders && least > 0; k++) {
    if (k > 0) board.restore(from);
    for (const i of shuffled(colliding, dice)) mover.relieve(i);
    board.survey();
    const loss = board.loss(true);
    if (loss >= least) continue;
    least = loss;
    best = board.save();
  }
  board.restore(best);
}

export function shuffled(list: readonly number[], dice: Random): number[] {
  const out = [...list];
  for (let k = out.length - 1; k > 0; k--) {
    const l = dice.below(k + 1);
    const kept = out[k]!;
    out[k] = out[l]!;
    out[l] = kept;
  }
  return out;
}
