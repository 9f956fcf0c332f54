import { createStore, type StoreApi } from 'zustand';
import type { LateStages, PlanState } from './planner.ts';

/** Where the plan stood once all of it had been worked out. */
export interface Stop {
  readonly plan: NonNullable<PlanState['plan']>;
  readonly late: LateStages;
}

export interface Stops {
  /** What was worked out before the last step; null until a step was taken. */
  readonly store: StoreApi<{ readonly before: Stop | null }>;
  readonly end: () => void;
}

/** @param steps how many steps are done; typing on in one entry is one, and is compared with what stood before all of it */
export function keepStops(plans: StoreApi<PlanState>, steps: () => number): Stops {
  const store = createStore<{ readonly before: Stop | null }>(() => ({ before: null }));
  let now: Stop | null = null;
  let at = 0;
  const end = plans.subscribe(({ plan, late, working, fault }) => {
    if (working || fault || !plan || !late || (now?.plan === plan && now.late === late)) return;
    const step = steps();
    if (now && step !== at) store.setState({ before: now });
    now = { plan, late };
    at = step;
  });
  return { store, end };
}
