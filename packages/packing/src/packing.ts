import { type Millimetre, ok, type Result } from '@panewright/quantity';
import { checkInstance } from './checkInstance.ts';
import { boxLay } from './construct/boxLay.ts';
import { construct, costOfConstructing, MANNERS, mannerFor } from './construct/construct.ts';
import type { Instance, InstanceRefusal, Layout } from './instance.ts';
import { layOf } from './layOf.ts';
import { boundOf } from './lowerBound.ts';
import { type Lay, layoutOf, type Prepared, prepared } from './prepared.ts';
import { type Random, type RandomState, random, randomState } from './random.ts';
import { replanned, Search, type SearchState } from './search/search.ts';
import { packNumbers, type Stored, unpackNumbers } from './search/stored.ts';
import { type LayRefusal, verifyLay } from './verify/verifyLay.ts';

/** Evaluations a search plans for when it is told nothing: about a minute of one core. */
const USUAL_PLAN = 100_000_000;

/** Share of the plan spent on constructions before the search proper. */
const CONSTRUCTING = 0.03;

/** Where the first construction would take more evaluations than this, the first lay is one of boxes. */
const AT_ONCE = 2_000_000;
/** Share of the plan that one construction may take, where the first lay was one of boxes. */
const WORTH = 0.3;

/**
 * A search for a short lay, at rest. Plain data: it can be stored as JSON, sent to a worker and taken up again.
 * `best` is always a lay without overlap; `done` says that it meets the bound, so no search can better it.
 */
export interface PackingState {
  readonly instance: Instance;
  readonly seed: number;
  /** Evaluations planned for: exploring ends at four fifths, then the lay is compressed. A later end is allowed. */
  readonly plan: number;
  readonly evaluations: number;
  readonly bound: Millimetre;
  readonly best: Layout;
  readonly done: boolean;
  /** Where the search stands; of no meaning outside this package. */
  readonly inner: {
    readonly dice: RandomState;
    readonly tried: number;
    readonly lay: Stored<Lay>;
    readonly search?: Stored<SearchState>;
  };
}

/**
 * The first lay, at once, and a search ready to better it.
 *
 * @param seed any whole number; the same seed, plan and steps give the same lays
 * @param plan evaluations the caller means to spend in all (some two million a second)
 * @refuses every InstanceRefusal
 */
export function startPacking(
  instance: Instance,
  seed: number,
  plan: number = USUAL_PLAN,
): Result<PackingState, InstanceRefusal> {
  const checked = checkInstance(instance);
  if (!checked.ok) return checked;
  const prep = prepared(instance);
  const dice = random(randomState(seed));
  const bound = boundOf(prep);
  const { lay, tried } = firstLay(prep, dice);
  const best = layoutOf(prep, lay);
  const done = best.length <= bound + prep.touch;
  const inner = { dice: dice.state(), tried, lay: packNumbers(lay) };
  return ok({ instance, seed, plan, evaluations: 0, bound, best, done, inner });
}

function firstLay(prep: Prepared, dice: Random): { readonly lay: Lay; readonly tried: number } {
  const boxes = prep.still.length === 0 ? boxLay(prep) : undefined;
  if (boxes && costOfConstructing(prep) > AT_ONCE) return { lay: boxes, tried: 0 };
  const { lay } = construct(prep, MANNERS[0]!, dice);
  return { lay: boxes && boxes.length < lay.length - prep.touch ? boxes : lay, tried: 1 };
}

/** Carries the search on by about `evaluations`; it rests at the end of the sweep or construction past them. */
export function step(state: PackingState, evaluations: number): PackingState {
  if (state.done) return state;
  const prep = prepared(state.instance);
  const until = state.evaluations + evaluations;
  const dice = random(state.inner.dice);
  const run = new Run(prep, dice, state);
  while (run.used < until && !run.done) run.advance();
  return run.rest();
}

/** The same search with another plan; for a caller who learns by the clock how many evaluations there will be. */
export function replan(state: PackingState, plan: number): PackingState {
  const { search } = state.inner;
  if (!search) return { ...state, plan };
  const moved = replanned(unpackNumbers<SearchState>(search), state.evaluations, plan);
  return { ...state, plan, inner: { ...state.inner, search: packNumbers(moved) } };
}

/**
 * The same search knowing a lay from elsewhere: that of another worker, of an earlier day, or one made by hand.
 * If it is shorter it becomes the best, and the search goes on from it after its present attempt.
 *
 * @refuses every LayRefusal, when the layout is no true lay of the instance
 */
export function adopt(state: PackingState, layout: Layout): Result<PackingState, LayRefusal> {
  const verified = verifyLay(state.instance, layout);
  if (!verified.ok) return verified;
  const prep = prepared(state.instance);
  const lay = layOf(prep, layout);
  if (lay.length >= unpackNumbers<Lay>(state.inner.lay).length - prep.touch) return ok(state);
  const best = layoutOf(prep, lay);
  const { search } = state.inner;
  const moved = search ? { search: packNumbers({ ...unpackNumbers<SearchState>(search), best: lay }) } : {};
  const inner = { ...state.inner, lay: packNumbers(lay), ...moved };
  return ok({ ...state, best, done: best.length <= state.bound + prep.touch, inner });
}

/** A state taken off its resting place. */
class Run {
  used: number;
  private tried: number;
  private lay: Lay;
  private search: Search | undefined;

  constructor(
    private readonly prep: Prepared,
    private readonly dice: Random,
    private readonly from: PackingState,
  ) {
    this.used = from.evaluations;
    this.tried = from.inner.tried;
    this.lay = unpackNumbers<Lay>(from.inner.lay);
    const { search } = from.inner;
    if (search) this.search = Search.resume(prep, dice, this.used, unpackNumbers<SearchState>(search));
  }

  get done(): boolean {
    const { spacing, margin } = this.prep.instance;
    return this.lay.length - spacing + 2 * margin.end <= this.from.bound + this.prep.touch;
  }

  advance(): void {
    if (this.search) {
      this.search.advance();
      this.used = this.search.used;
      this.lay = this.search.best;
      return;
    }
    // Nothing constructed yet: the lay is one of boxes, and one construction may take longer than is planned for.
    const worth = this.tried > 0 || costOfConstructing(this.prep) <= WORTH * this.from.plan;
    if (worth) this.construct();
    const enough = !worth || this.used >= CONSTRUCTING * this.from.plan;
    if (enough || this.tried >= 300) {
      this.search = Search.begin(
        this.prep,
        this.dice,
        this.lay,
        this.used,
        Math.max(this.from.plan, 2 * this.used),
      );
    }
  }

  private construct(): void {
    const { lay, cost } = construct(this.prep, mannerFor(this.tried, this.dice), this.dice);
    this.tried++;
    this.used += cost;
    if (lay.length < this.lay.length - this.prep.touch) this.lay = lay;
  }

  rest(): PackingState {
    const { lay, used, done, tried, search, from } = this;
    const best =
      lay.length < unpackNumbers<Lay>(from.inner.lay).length ? layoutOf(this.prep, lay) : from.best;
    const state = search ? { search: packNumbers(search.state()) } : {};
    const inner = { dice: this.dice.state(), tried, lay: packNumbers(lay), ...state };
    return { ...from, evaluations: used, best, done, inner };
  }
}

/**
 * A lay of an instance within a budget of evaluations (some two million a second). `startPacking`, `adopt` and
 * `step` give the same lay piece by piece.
 *
 * @param start a lay to better, if there is one
 * @refuses every InstanceRefusal; every LayRefusal about `start`
 */
export function pack(
  instance: Instance,
  budget: number,
  seed: number,
  start?: Layout,
): Result<Layout, InstanceRefusal | LayRefusal> {
  const started = startPacking(instance, seed, budget);
  if (!started.ok) return started;
  const known = start ? adopt(started.value, start) : started;
  return known.ok ? ok(step(known.value, budget).best) : known;
}
