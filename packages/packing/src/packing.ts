import { type Millimetre, ok, type Result } from '@panewright/quantity';
import { checkInstance } from './checkInstance.ts';
import { construct, MANNERS, type Manner } from './construct/construct.ts';
import type { Instance, InstanceRefusal, Layout } from './instance.ts';
import { boundOf } from './lowerBound.ts';
import { layoutOf, type Prepared, prepared } from './prepared.ts';
import { type RandomState, random, randomState } from './random.ts';

/**
 * A search for a short lay, at rest. Plain data: it can be stored, sent to a worker and taken up again.
 * `best` is always a lay without overlap; `done` says that it meets the bound and no search can better it.
 */
export interface PackingState {
  readonly instance: Instance;
  readonly seed: number;
  readonly evaluations: number;
  readonly bound: Millimetre;
  readonly best: Layout;
  readonly done: boolean;
  readonly dice: RandomState;
  readonly tried: number;
}

/**
 * The first lay, at once, and a search ready to better it.
 *
 * @param seed any whole number; the same seed and the same steps give the same lays
 * @refuses every InstanceRefusal
 */
export function startPacking(instance: Instance, seed: number): Result<PackingState, InstanceRefusal> {
  const checked = checkInstance(instance);
  if (!checked.ok) return checked;
  const prep = prepared(instance);
  const dice = random(randomState(seed));
  const bound = boundOf(prep);
  const best = layoutOf(prep, construct(prep, MANNERS[0]!, dice));
  const done = best.length <= bound + prep.touch;
  return ok({ instance, seed, evaluations: 0, bound, best, done, dice: dice.state(), tried: 1 });
}

/** Carries the search on by about `evaluations`; it stops at the first resting place past them. */
export function step(state: PackingState, evaluations: number): PackingState {
  const prep = prepared(state.instance);
  const dice = random(state.dice);
  let { best, tried, done } = state;
  let used = 0;
  while (used < evaluations && !done) {
    const layout = layoutOf(prep, construct(prep, mannerFor(tried, dice), dice));
    tried++;
    used += costOf(prep);
    if (layout.length < best.length - prep.touch) best = layout;
    done = best.length <= state.bound + prep.touch;
  }
  return { ...state, evaluations: state.evaluations + used, best, done, dice: dice.state(), tried };
}

/** Evaluations a construction counts for. */
function costOf(prep: Prepared): number {
  return 20 * prep.items.length ** 2;
}

function mannerFor(tried: number, dice: { below(count: number): number }): Manner {
  const fixed = MANNERS[tried];
  if (fixed) return fixed;
  return {
    ...MANNERS[dice.below(MANNERS.length)]!,
    shuffle: 0.1 + 0.1 * dice.below(4),
    whim: 0.15 * dice.below(3),
  };
}

/**
 * A lay of an instance within a budget of evaluations (a few million a second). `startPacking` and `step` give the
 * same lay piece by piece.
 *
 * @refuses every InstanceRefusal
 */
export function pack(instance: Instance, budget: number, seed: number): Result<Layout, InstanceRefusal> {
  const started = startPacking(instance, seed);
  return started.ok ? ok(step(started.value, budget).best) : started;
}
