import { defaultCatalogue, demoJob, derive } from '@panewright/contract';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createPlanner, type PlanWorker, type WorkRequest } from './planner.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Workers that note what they are asked and answer when told to. */
function bench() {
  const workers: (PlanWorker & { readonly asked: WorkRequest[]; gone: boolean })[] = [];
  const planner = createPlanner(() => {
    const worker = {
      onmessage: null,
      onerror: null,
      asked: [] as WorkRequest[],
      gone: false,
      postMessage(request: WorkRequest) {
        this.asked.push(request);
      },
      terminate() {
        this.gone = true;
      },
    };
    workers.push(worker);
    return worker;
  });
  const named = (name: string) =>
    planner.show({ ...demoJob, openings: demoJob.openings.slice(0, 1), name }, defaultCatalogue);
  return { planner, workers, named };
}
const answer = (worker: PlanWorker, { ticket, job, catalogue, seed }: WorkRequest) =>
  worker.onmessage?.({ data: { ticket, plan: derive(job, catalogue, seed, 1) } });

test('what comes before the lay is there at once; the rest follows from the worker', async () => {
  const { planner, workers, named } = bench();
  named('a');
  expect(planner.store.getState().plan?.openings[0]?.shape?.outline.segments).toHaveLength(8);
  expect(planner.store.getState()).toMatchObject({ late: null, working: true });
  await vi.advanceTimersByTimeAsync(10);
  answer(workers[0]!, workers[0]!.asked[0]!);
  expect(planner.store.getState().working).toBe(false);
  expect(planner.store.getState().late?.price?.total.value).toBeGreaterThan(0);
});

test('of jobs shown while the worker is busy only the newest is worked out', async () => {
  const { planner, workers, named } = bench();
  named('a');
  await vi.advanceTimersByTimeAsync(10);
  for (const name of ['b', 'c', 'd']) named(name);
  await vi.advanceTimersByTimeAsync(300);
  const [worker] = workers;
  expect(worker!.asked.map((one) => one.job.name)).toEqual(['a']);
  answer(worker!, worker!.asked[0]!);
  expect(planner.store.getState()).toMatchObject({ late: null, working: true });
  expect(worker!.asked.map((one) => one.job.name)).toEqual(['a', 'd']);
  answer(worker!, worker!.asked[1]!);
  expect(planner.store.getState().working).toBe(false);
});

test('a lay nobody waits for any more is given up, and the newest job goes to a fresh worker', async () => {
  const { workers, named } = bench();
  named('a');
  await vi.advanceTimersByTimeAsync(10);
  named('b');
  await vi.advanceTimersByTimeAsync(3000);
  expect(workers.map((one) => one.gone)).toEqual([true, false]);
  expect(workers[1]!.asked.map((one) => one.job.name)).toEqual(['b']);
});

test('a fault in the worker is told, and the drawing stays', async () => {
  const { planner, workers, named } = bench();
  named('a');
  await vi.advanceTimersByTimeAsync(10);
  workers[0]!.onmessage?.({ data: { ticket: workers[0]!.asked[0]!.ticket, fault: 'broken' } });
  expect(planner.store.getState()).toMatchObject({ working: false, fault: 'broken' });
  expect(planner.store.getState().plan?.openings).toHaveLength(1);
});
