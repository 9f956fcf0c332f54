import { defaultCatalogue, demoJob, derive, derivePanel, deriveShapes, type Job } from '@panewright/contract';
import { produce } from 'immer';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { setReading } from '../openings/readingEdits.ts';
import { createPlanner, type PlanWorker, type WorkRequest } from './planner.ts';
import { shapesReceived, shapesWork } from './shapesWork.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const oneOpening: Job = { ...demoJob, openings: demoJob.openings.slice(0, 1) };

/** Workers that note what they are asked and answer when told to: the first gives shapes, the next the whole plan. */
function bench() {
  const workers: (PlanWorker & { readonly asked: WorkRequest[]; gone: boolean })[] = [];
  const planner = createPlanner(() => {
    const worker = {
      onmessage: null,
      onerror: null,
      asked: [] as WorkRequest[],
      gone: false,
      postMessage(request: WorkRequest) {
        this.asked.push(structuredClone(request));
      },
      terminate() {
        this.gone = true;
      },
    };
    workers.push(worker);
    return worker;
  });
  const named = (name: string) => planner.show({ ...oneOpening, name }, defaultCatalogue);
  const namesAsked = (worker: number) => workers[worker]?.asked.map((one) => one.job.name) ?? [];
  return { planner, workers, named, namesAsked };
}

const common = shapesWork();
function answer(worker: PlanWorker, { ticket, part, job, catalogue, seed }: WorkRequest, work = common) {
  const said =
    part === 'shapes' ? { shapes: work(job, catalogue, seed) } : { plan: derive(job, catalogue, seed, 1) };
  worker.onmessage?.({ data: structuredClone({ ticket, ...said }) });
}

test('the openings are there at once; hold points and the lay follow, each from its own worker', async () => {
  const { planner, workers, named } = bench();
  named('a');
  expect(planner.store.getState().openings[0]?.shape?.outline.segments).toHaveLength(8);
  expect(planner.store.getState()).toMatchObject({ plan: null, late: null, working: true });
  await vi.advanceTimersByTimeAsync(10);
  answer(workers[0]!, workers[0]!.asked[0]!);
  expect(planner.store.getState().plan?.hold[0]?.points.length).toBeGreaterThan(3);
  expect(planner.store.getState().working).toBe(true);
  answer(workers[1]!, workers[1]!.asked[0]!);
  expect(planner.store.getState().working).toBe(false);
  expect(planner.store.getState().late?.price?.total.value).toBeGreaterThan(0);
});

test('of jobs shown while a worker is busy only the newest is worked out', async () => {
  const { planner, workers, named, namesAsked } = bench();
  named('a');
  await vi.advanceTimersByTimeAsync(10);
  for (const name of ['b', 'c', 'd']) named(name);
  await vi.advanceTimersByTimeAsync(300);
  for (const which of [0, 1]) {
    const worker = workers[which]!;
    expect(namesAsked(which)).toEqual(['a']);
    answer(worker, worker.asked[0]!);
    expect(planner.store.getState()).toMatchObject({ late: null, working: true });
    expect(namesAsked(which)).toEqual(['a', 'd']);
    answer(worker, worker.asked[1]!);
  }
  expect(planner.store.getState().working).toBe(false);
});

test('a lay nobody waits for any more is given up, and the newest job goes to a fresh worker', async () => {
  const { workers, named, namesAsked } = bench();
  named('a');
  await vi.advanceTimersByTimeAsync(10);
  named('b');
  await vi.advanceTimersByTimeAsync(3000);
  expect(workers.map((one) => one.gone)).toEqual([false, true, false]);
  expect(namesAsked(2)).toEqual(['b']);
});

test('a fault in a worker is told, and the drawing stays', async () => {
  const { planner, workers, named } = bench();
  named('a');
  await vi.advanceTimersByTimeAsync(10);
  workers[1]!.onmessage?.({ data: { ticket: workers[1]!.asked[0]!.ticket, fault: 'broken' } });
  expect(planner.store.getState()).toMatchObject({ working: false, fault: 'broken' });
  expect(planner.store.getState().openings).toHaveLength(1);
});

// Oracle: deriveShapes itself, on the whole job, in one go.
test('what travels in parts is the whole plan again, and the parts an edit leaves alone stay the same objects', () => {
  const work = shapesWork();
  const send = (job: Job) =>
    structuredClone(work(structuredClone(job), structuredClone(defaultCatalogue), 1));
  const job: Job = { ...demoJob, openings: demoJob.openings.slice(5) };
  const first = send(job);
  const before = shapesReceived(null, first);
  expect(before).toEqual(deriveShapes(job, defaultCatalogue, 1));
  const edited = produce(job, (draft) => void setReading(draft, 'W7', 'bottom', 0, '37'));
  const sent = send(edited);
  const after = shapesReceived(before, sent);
  expect(after).toEqual(deriveShapes(edited, defaultCatalogue, 1));
  expect(after.openings[0]).toBe(before.openings[0]);
  expect(JSON.stringify(sent).length).toBeLessThan(JSON.stringify(first).length / 2);
});

test('the panel drawn large follows every key at once, and a worker’s older answer does not take it back', async () => {
  const { planner, workers } = bench();
  const inWind = (wind: number): Job =>
    produce(oneOpening, (draft) => void (draft.choices.weather.wind = wind));
  const marginNow = () => planner.store.getState().plan?.hold[0]?.openings[0]?.byPoint?.[0]?.low;
  const marginOf = (wind: number) =>
    deriveShapes(inWind(wind), defaultCatalogue).hold[0]!.openings[0]!.byPoint![0]!.low;
  planner.show(inWind(5), defaultCatalogue);
  await vi.advanceTimersByTimeAsync(10);
  const [shapes] = workers;
  const work = shapesWork();
  answer(shapes!, shapes!.asked[0]!, work);
  planner.draw({ opening: oneOpening.openings[0]!.id, derive: derivePanel });
  planner.show(inWind(8), defaultCatalogue);
  expect(marginNow()).toBe(marginOf(8));
  planner.show(inWind(11), defaultCatalogue);
  answer(shapes!, shapes!.asked[1]!, work);
  expect(marginNow()).toBe(marginOf(11));
  answer(shapes!, shapes!.asked[2]!, work);
  expect(planner.store.getState().plan).toEqual(deriveShapes(inWind(11), defaultCatalogue, 1));
  planner.stop();
});
