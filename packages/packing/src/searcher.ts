import { type Millimetre, ok, type Result } from '@panewright/quantity';
import type { Instance, InstanceRefusal, Layout } from './instance.ts';
import { adopt, type PackingState, replan, startPacking, step } from './packing.ts';

/** What one of several searches side by side is asked. Plain data, fit for a message to a worker. */
export type SearcherCall =
  | { readonly kind: 'begin'; readonly instance: Instance; readonly seed: number; readonly plan: number }
  | {
      readonly kind: 'go on';
      /** Evaluations to do, and to plan for in all. */
      readonly evaluations: number;
      readonly plan: number;
      /** A verified lay of another search, to go on from if it is shorter. */
      readonly lay?: Layout;
    };

export interface SearcherReport {
  readonly best: Layout;
  readonly evaluations: number;
  readonly bound: Millimetre;
  readonly done: boolean;
}

/** Carries one search from call to call; the state stays where it is computed, only lays travel. */
export type Searcher = (call: SearcherCall) => Result<SearcherReport, InstanceRefusal>;

export function searcher(): Searcher {
  let state: PackingState | undefined;
  return (call) => {
    if (call.kind === 'begin') {
      const started = startPacking(call.instance, call.seed, call.plan);
      if (!started.ok) return started;
      state = started.value;
    } else {
      if (state === undefined) throw new Error('a search was to go on that had not begun');
      const known = call.lay ? adopt(state, call.lay) : ok(state);
      if (!known.ok) throw new Error(`a search was given what is no lay: ${known.refusal.code}`);
      state = step(replan(known.value, call.plan), call.evaluations);
    }
    const { best, evaluations, bound, done } = state;
    return ok({ best, evaluations, bound, done });
  };
}

/** Shares of the plan at which all searches go on from the shortest lay; from the last on, after every round. */
const SHARED_AT = [0.3, 0.5, 0.65, 0.8] as const;

/**
 * The lay each search is to go on from in the next round, or none: so that a search that fell into a poor valley
 * does not stay there, yet all look for themselves for most of the time. A function of lays and shares alone, so
 * the same seeds and the same rounds give the same lays.
 *
 * @param from share of the plan spent before the round just done
 * @param to share spent after it
 */
export function exchange(
  reports: readonly SearcherReport[],
  from: number,
  to: number,
): readonly (Layout | undefined)[] {
  const last = SHARED_AT.at(-1)!;
  const shared = to >= last || SHARED_AT.some((at) => from < at && to >= at);
  if (!shared) return reports.map(() => undefined);
  const best = reports.reduce(
    (least, { best }) => (best.length < least.length ? best : least),
    reports[0]!.best,
  );
  return reports.map((report) => (report.best.length > best.length ? best : undefined));
}

/**
 * Seed of the k-th of several searches; the first keeps the seed given.
 *
 * @source none: only apart from one another; the generator spreads near seeds itself
 */
export const seedOf = (seed: number, k: number): number => (seed + Math.imul(k, 0x9e3779b9)) >>> 0;
