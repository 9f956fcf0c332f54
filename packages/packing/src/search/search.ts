import { type Lay, lengthOf, type Prepared } from '../prepared.ts';
import type { Random } from '../random.ts';
import { Board, type Snapshot, tablesOf } from './board.ts';
import { compact } from './compact.ts';
import { disrupt } from './disrupt.ts';
import { FEW } from './pairViews.ts';
import { type Attempt, newAttempt, sweep } from './separate.ts';

/** A lay with little overlap that could not be freed of it, kept as a start for another try. */
export interface NearMiss {
  readonly lay: Snapshot;
  readonly loss: number;
}

/** The search at rest. */
export interface SearchState {
  readonly phase: 'explore' | 'compress';
  /** Shortest lay without overlap. */
  readonly best: Lay;
  readonly board: Snapshot;
  readonly length: number;
  /** Weights of pairs above 1: where in the board's table, and how much. */
  readonly raised: { readonly at: Int32Array; readonly weight: Float64Array };
  readonly attempt: Attempt;
  readonly pool: readonly NearMiss[];
  /** Loss of the lay last put through the linear program. */
  readonly triedLoss: number;
  /** Share of the length the next shrink takes while exploring. */
  readonly shrink: number;
  /** Evaluations at which exploring and compressing end; then the next, longer round begins. */
  readonly exploreUntil: number;
  readonly compressUntil: number;
}

const FIRST_SHRINK = 0.02;
const LEAST_SHRINK = 0.001;
/** Sweeps below which a cut came free of overlap easily, so the next may be coarser. */
const EASY = 100;
const COMPRESS_FROM = 5e-4;
const COMPRESS_TO = 1e-5;

/** The state with its exploring to end at four fifths of what is left of the plan. */
export function replanned(state: SearchState, used: number, plan: number): SearchState {
  if (state.phase === 'compress') return { ...state, compressUntil: Math.max(plan, used) };
  return { ...state, exploreUntil: 0.8 * plan, compressUntil: plan };
}

/** Overlap minimisation on a strip that shrinks: explore, then compress. */
export class Search {
  private readonly board: Board;
  /** Half the mean length of a piece: a longer cut would lay whole pieces over one another. */
  private readonly halfAPiece: number;
  private phase: SearchState['phase'];
  best: Lay;
  private attempt: Attempt;
  private pool: readonly NearMiss[];
  private triedLoss: number;
  private shrink: number;
  private exploreUntil: number;
  private compressUntil: number;

  private constructor(
    private readonly prep: Prepared,
    private readonly dice: Random,
    used: number,
    from: Omit<SearchState, 'attempt'> & { readonly attempt?: Attempt },
  ) {
    this.board = new Board(tablesOf(prep), from.best.length);
    this.board.used = used;
    const long = prep.items.reduce((sum, { shape }) => sum + prep.shapes[shape]!.variants[0]!.width, 0);
    this.halfAPiece = long / prep.items.length / 2;
    this.phase = from.phase;
    this.best = from.best;
    this.pool = from.pool;
    this.triedLoss = from.triedLoss;
    this.shrink = from.shrink;
    this.exploreUntil = from.exploreUntil;
    this.compressUntil = from.compressUntil;
    this.board.length = from.length;
    this.board.restore(from.board);
    this.board.raise(from.raised);
    this.board.survey();
    this.attempt = from.attempt ?? newAttempt(this.board, this.patience());
  }

  static begin(prep: Prepared, dice: Random, best: Lay, used: number, plan: number): Search {
    const search = new Search(prep, dice, used, {
      phase: 'explore',
      best,
      board: best,
      length: best.length,
      raised: { at: new Int32Array(0), weight: new Float64Array(0) },
      pool: [],
      triedLoss: -1,
      shrink: FIRST_SHRINK,
      exploreUntil: used + 0.8 * (plan - used),
      compressUntil: plan,
    });
    search.shortenFromBest();
    return search;
  }

  static resume(prep: Prepared, dice: Random, used: number, state: SearchState): Search {
    return new Search(prep, dice, used, state);
  }

  state(): SearchState {
    const { phase, best, attempt, pool, triedLoss, shrink, exploreUntil, compressUntil, board } = this;
    const { length } = board;
    return {
      phase,
      best,
      board: board.save(),
      length,
      raised: board.raised(),
      attempt,
      pool,
      triedLoss,
      shrink,
      exploreUntil,
      compressUntil,
    };
  }

  get used(): number {
    return this.board.used;
  }

  /** One sweep, and what follows from it. */
  advance(): void {
    const { attempt, outcome } = sweep(this.board, this.attempt, this.dice);
    this.attempt = attempt;
    if (outcome === 'separated') this.onSeparated();
    else if (outcome !== 'going on' && !this.rescued() && outcome === 'given up') this.onGivenUp();
    this.onClock();
  }

  /** Many pieces need perseverance, few need another try. */
  private patience() {
    const count = this.prep.items.length;
    const sweeps = Math.max(60, Math.min(200, 2 * count));
    const orders = this.orders();
    if (this.phase === 'compress') return { sweeps: Math.ceil(sweeps / 2), strikes: 3, orders };
    // A coarse cut that will not come free is soon given up where every sweep is dear.
    const dear = this.prep.variants.length > FEW && this.shrink > LEAST_SHRINK;
    return dear ? { sweeps: Math.ceil(sweeps / 4), strikes: 1, orders } : { sweeps, strikes: 3, orders };
  }

  private orders(): number {
    return 1 + this.dice.below(3);
  }

  private onSeparated(): void {
    this.accept(this.board.save(), this.board.length);
    this.pool = [];
    if (this.attempt.swept < EASY) this.shrink = Math.min(FIRST_SHRINK, 1.3 * this.shrink);
    this.shortenFromBest();
  }

  /** Keeps a lay without overlap if it is the shortest, compacted. */
  private accept(lay: Snapshot, length: number): void {
    const packed = this.compacted(lay, length);
    if (packed.length < this.best.length) this.best = packed;
  }

  private compacted(lay: Snapshot, length: number): Lay {
    const found = compact(this.prep, lay, length, length, this.reach);
    this.board.used += found.cost;
    const free = found.worst <= this.prep.touch && found.length < length;
    const end = lengthOf(this.prep, lay.variant, lay.x);
    return free ? { ...found.lay, length: found.length } : { ...lay, length: end };
  }

  /** Whether sliding all pieces frees the least overlapping lay of this attempt. */
  private rescued(): boolean {
    // The same lay as at the strike before would slide no further.
    if (this.attempt.bestLoss === this.triedLoss) return false;
    this.triedLoss = this.attempt.bestLoss;
    const longest = this.best.length - 4 * this.prep.touch;
    const found = compact(this.prep, this.attempt.best, this.board.length, longest, this.reach);
    this.board.used += found.cost;
    if (found.worst > this.prep.touch || found.length > longest) return false;
    this.best = { ...found.lay, length: found.length };
    this.pool = [];
    this.shortenFromBest();
    return true;
  }

  private get reach(): number {
    return 0.02 * this.prep.height;
  }

  private onGivenUp(): void {
    // A shorter lay was adopted from another search meanwhile.
    const overtaken = this.board.length >= this.best.length;
    const coarse = this.phase === 'explore' && this.shrink > LEAST_SHRINK;
    if (coarse) this.shrink = Math.max(LEAST_SHRINK, this.shrink / 2);
    if (overtaken || coarse || this.phase === 'compress') this.shortenFromBest();
    else this.retryFromPool();
  }

  private retryFromPool(): void {
    const miss: NearMiss = { lay: this.attempt.best, loss: this.attempt.bestLoss };
    this.pool = [...this.pool, miss].sort((a, b) => a.loss - b.loss).slice(0, 40);
    const rank = Math.min(
      this.pool.length - 1,
      Math.floor(Math.abs(this.dice.normal() * 0.25) * this.pool.length),
    );
    this.board.restore(this.pool[rank]!.lay);
    disrupt(this.board, this.dice);
    this.attempt = newAttempt(this.board, this.patience());
  }

  /** Cuts the strip of the best lay; what lies right of a cut moves left. */
  private shortenFromBest(): void {
    const { board, best, prep, dice } = this;
    const share = this.phase === 'explore' ? this.shrink : this.compressShare();
    const by = Math.max(Math.min(share * best.length, this.halfAPiece), 4 * prep.touch);
    const cut = (0.1 + 0.8 * dice.next()) * best.length;
    board.length = best.length - by;
    for (let i = 0; i < prep.items.length; i++) {
      const v = best.variant[i]!;
      const width = board.tables.width[v]!;
      const x = best.x[i]! + width / 2 > cut ? best.x[i]! - by : best.x[i]!;
      board.put(i, v, Math.max(0, Math.min(x, board.length - width)), best.y[i]!);
    }
    this.attempt = newAttempt(board, this.patience());
  }

  private compressShare(): number {
    const whole = this.compressUntil - this.exploreUntil;
    const done = Math.max(0, Math.min(1, (this.used - this.exploreUntil) / whole));
    return COMPRESS_FROM + (COMPRESS_TO - COMPRESS_FROM) * done;
  }

  private onClock(): void {
    if (this.phase === 'explore' && this.used >= this.exploreUntil) {
      this.phase = 'compress';
      this.pool = [];
      this.shortenFromBest();
    } else if (this.phase === 'compress' && this.used >= this.compressUntil) {
      this.phase = 'explore';
      this.shrink = LEAST_SHRINK;
      const round = Math.max(this.compressUntil, 1e6);
      this.exploreUntil = this.used + 0.8 * round;
      this.compressUntil = this.used + round;
      this.shortenFromBest();
    }
  }
}
