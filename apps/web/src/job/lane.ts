import type { PlanWorker, WorkAnswer, WorkRequest } from './planner.ts';

/** One worker that works on one request at a time; of those that come meanwhile only the newest is kept. */
export interface Lane {
  readonly ask: (request: WorkRequest) => void;
  readonly stop: () => void;
}

/** @param patience what runs longer than this while a newer request waits is given up, ms; endless where left out */
export function createLane(
  newWorker: () => PlanWorker,
  tell: (answer: WorkAnswer) => void,
  patience?: number,
): Lane {
  let worker: PlanWorker | null = null;
  let busy: { readonly ticket: number; readonly since: number } | null = null;
  let waiting: WorkRequest | null = null;
  let impatience: ReturnType<typeof setTimeout> | undefined;

  const start = (): PlanWorker => {
    const one = newWorker();
    one.onmessage = ({ data }) => answered(data);
    one.onerror = ({ message }) => answered({ ticket: busy?.ticket ?? 0, fault: message });
    return one;
  };
  const send = (request: WorkRequest) => {
    worker ??= start();
    busy = { ticket: request.ticket, since: performance.now() };
    worker.postMessage(request);
  };
  const next = () => {
    const request = waiting;
    waiting = null;
    if (request) send(request);
  };
  const answered = (answer: WorkAnswer) => {
    clearTimeout(impatience);
    busy = null;
    next();
    tell(answer);
  };
  const giveUp = () => {
    if (!waiting) return;
    worker?.terminate();
    worker = null;
    next();
  };

  return {
    ask: (request) => {
      if (!busy) return send(request);
      waiting = request;
      clearTimeout(impatience);
      if (patience !== undefined)
        impatience = setTimeout(giveUp, Math.max(0, patience - (performance.now() - busy.since)));
    },
    stop: () => {
      clearTimeout(impatience);
      worker?.terminate();
      worker = null;
      busy = null;
      waiting = null;
    },
  };
}
