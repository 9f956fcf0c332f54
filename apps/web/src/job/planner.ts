import { createStore, type StoreApi } from 'zustand';
import { type Catalogue, deriveShapes, type Finding, type Job, PLAN_SEED, type Plan } from '../contract.ts';

/** The stages that follow the lay, as last worked out. */
export interface LateStages {
  readonly cutting: Plan['cutting'];
  readonly takeOff: Plan['takeOff'];
  readonly price: Plan['price'];
  readonly findings: readonly Finding[];
}

export interface PlanState {
  /** Everything before the lay, always of the job on the page; null before the first. */
  readonly plan: Plan | null;
  readonly late: LateStages | null;
  /** True while `late` is of an earlier job than the one on the page. */
  readonly working: boolean;
  /** A fault of ours, as its message. */
  readonly fault: string | null;
}

export interface WorkRequest {
  readonly ticket: number;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly seed: number;
}
export type WorkAnswer =
  | { readonly ticket: number; readonly plan: Plan }
  | { readonly ticket: number; readonly fault: string };

/** The part of a Worker that is used here, so that a test can stand in for it. */
export interface PlanWorker {
  onmessage: ((event: { readonly data: WorkAnswer }) => void) | null;
  onerror: ((event: { readonly message: string }) => void) | null;
  postMessage(request: WorkRequest): void;
  terminate(): void;
}

/** The whole plan is begun when no key came for this long, ms: what is typed on would only be thrown away. */
const LULL = 250;
/** A lay that runs longer than this for a job no longer on the page is given up, ms; a fresh worker starts slowly. */
const PATIENCE = 2500;

export interface Planner {
  readonly store: StoreApi<PlanState>;
  readonly show: (job: Job, catalogue: Catalogue) => void;
  readonly stop: () => void;
}

/** Draws at once what comes before the lay; the whole plan follows from a worker. A newer job supersedes an older. */
export function createPlanner(newWorker: () => PlanWorker): Planner {
  const store = createStore<PlanState>(() => ({ plan: null, late: null, working: false, fault: null }));
  let worker: PlanWorker | null = null;
  let ticket = 0;
  let shown = false;
  let waiting: WorkRequest | null = null;
  let busy: { readonly ticket: number; readonly since: number } | null = null;
  let impatience: ReturnType<typeof setTimeout> | undefined;
  let lull: ReturnType<typeof setTimeout> | undefined;

  const start = () => {
    worker = newWorker();
    worker.onmessage = ({ data }) => answered(data);
    worker.onerror = ({ message }) => answered({ ticket, fault: message });
  };
  const send = (request: WorkRequest) => {
    if (!worker) start();
    busy = { ticket: request.ticket, since: performance.now() };
    worker!.postMessage(request);
  };
  const giveUp = () => {
    if (!waiting) return;
    worker?.terminate();
    worker = null;
    const request = waiting;
    waiting = null;
    send(request);
  };
  const answered = (answer: WorkAnswer) => {
    clearTimeout(impatience);
    busy = null;
    if (waiting) {
      const request = waiting;
      waiting = null;
      send(request);
    }
    if (answer.ticket !== ticket) return;
    if ('fault' in answer) store.setState({ working: false, fault: answer.fault });
    else {
      const { cutting, takeOff, price, findings } = answer.plan;
      store.setState({ late: { cutting, takeOff, price, findings }, working: false });
    }
  };

  const show = (job: Job, catalogue: Catalogue) => {
    ticket += 1;
    const request = { ticket, job, catalogue, seed: PLAN_SEED };
    try {
      store.setState({ plan: deriveShapes(job, catalogue, PLAN_SEED), working: true, fault: null });
    } catch (fault) {
      console.error(fault);
      store.setState({ working: false, fault: fault instanceof Error ? fault.message : String(fault) });
      return;
    }
    clearTimeout(lull);
    lull = setTimeout(() => ask(request), shown ? LULL : 0);
    shown = true;
  };

  const ask = (request: WorkRequest) => {
    if (!busy) return send(request);
    waiting = request;
    clearTimeout(impatience);
    impatience = setTimeout(giveUp, Math.max(0, PATIENCE - (performance.now() - busy.since)));
  };

  return {
    store,
    show,
    stop: () => {
      clearTimeout(lull);
      clearTimeout(impatience);
      worker?.terminate();
      worker = null;
    },
  };
}
