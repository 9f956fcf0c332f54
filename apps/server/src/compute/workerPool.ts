import { Worker } from 'node:worker_threads';
import { httpAnswer, type Language, messagesOf, refuse, type WorkStage } from '@panewright/contract';
import { type Answer, type Compute, GivenUp, type Told } from './compute.ts';

/** What goes to a worker and comes back from it. */
export interface Order {
  readonly name: string;
  readonly text: string;
  readonly language?: Language | undefined;
}
export type Delivery =
  | { readonly answer: Answer }
  | { readonly fault: string }
  | { readonly done: number; readonly of: number; readonly stage?: WorkStage };

interface Task {
  readonly order: Order;
  readonly told?: Told | undefined;
  readonly settle: (answer: Answer) => void;
  readonly fail: (error: Error) => void;
}

/** Nothing an operation does may take longer than this, s. */
const LONGEST = 180;

/** Most memory of a thread for what is in use, MB; below 2 GB the collector also lets less rubbish gather. */
const MOST = 2000;

/** A few threads that run the operations which only compute, so that the server keeps answering. */
export function workerPool(script: URL, size: number): Compute {
  const idle: Worker[] = [];
  const waiting: Task[] = [];
  const all = new Set<Worker>();
  let closed = false;

  const hire = (): Worker => {
    const worker = new Worker(script, { execArgv: [], resourceLimits: { maxOldGenerationSizeMb: MOST } });
    worker.unref();
    all.add(worker);
    return worker;
  };
  const dismiss = (worker: Worker): void => {
    all.delete(worker);
    void worker.terminate();
  };
  const next = (): void => {
    if (closed || waiting.length === 0) return;
    const worker = idle.pop() ?? (all.size < size ? hire() : undefined);
    if (worker) perform(worker, waiting.shift()!);
  };
  const perform = (worker: Worker, task: Task): void => {
    const done = (reuse: boolean): void => {
      clearTimeout(clock);
      // Only our own: a thread's inner listeners are among “all”, and without them it hears nothing more.
      worker.off('message', deliver).off('error', fault).off('exit', gone);
      running.delete(task);
      if (reuse && !closed) idle.push(worker);
      else dismiss(worker);
      next();
    };
    const deliver = (delivery: Delivery): void => {
      if ('done' in delivery) {
        task.told?.(delivery.done, delivery.of, delivery.stage);
        return;
      }
      done(true);
      if ('answer' in delivery) task.settle(delivery.answer);
      else task.fail(new Error(delivery.fault));
    };
    const fault = (error: Error): void => {
      done(false);
      task.fail(error);
    };
    const gone = (): void => fault(new Error(`the thread for ${task.order.name} ended before it answered`));
    const clock = setTimeout(() => {
      done(false);
      const { status, body } = httpAnswer(
        refuse({ code: 'TAKES_TOO_LONG', seconds: LONGEST }),
        messagesOf[task.order.language ?? 'en'],
      );
      task.settle({ status, body: JSON.stringify(body) });
    }, LONGEST * 1000);
    running.set(task, () => done(false));
    worker.on('message', deliver).on('error', fault).on('exit', gone);
    worker.postMessage(task.order);
  };
  const running = new Map<Task, () => void>();
  const drop = (task: Task): void => {
    const at = waiting.indexOf(task);
    if (at >= 0) waiting.splice(at, 1);
    else running.get(task)?.();
  };
  return {
    run: (name, text, signal, { told, language } = {}) =>
      new Promise((settle, fail) => {
        const task: Task = { order: { name, text, language }, told, settle, fail };
        const stop = () => {
          drop(task);
          fail(new GivenUp());
        };
        if (signal.aborted) return fail(new GivenUp());
        signal.addEventListener('abort', stop, { once: true });
        waiting.push(task);
        next();
      }),
    close: async () => {
      closed = true;
      await Promise.all([...all].map((worker) => worker.terminate()));
    },
  };
}
