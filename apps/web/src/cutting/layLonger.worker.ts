import { type LaidPlace, type LayFrame, type LaySearch, startLaySearch, stepLaySearch } from '../contract.ts';

export interface LongerRequest {
  readonly frame: LayFrame;
  readonly places: readonly LaidPlace[];
  readonly seed: number;
}

/** The best so far, sent after each stretch of the search. */
export interface LongerAnswer {
  readonly places: readonly LaidPlace[];
  readonly length: number;
  readonly done: boolean;
}

/** Evaluations planned for, about a minute of one core, and between two answers, a third of a second. */
const PLAN = 100_000_000;
const STRETCH = 600_000;

/** Looks for a shorter lay until it is done or terminated. */
self.onmessage = ({ data }: MessageEvent<LongerRequest>) => {
  const started = startLaySearch(data.frame, data.places, data.seed, PLAN);
  if (!started.ok) throw new Error(started.refusal.code);
  go(started.value);
};

function go(search: LaySearch): void {
  const { places, length, done } = search;
  self.postMessage({ places, length, done } satisfies LongerAnswer);
  if (!done) setTimeout(() => go(stepLaySearch(search, STRETCH)), 0);
}
