import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Catalogue, Job } from '../contract.ts';
import { droppingAdopted, editKeeper } from '../offline/editKeeper.ts';
import { keepCopy } from '../offline/keptDocuments.ts';
import { layOnTop, openKept } from '../offline/openKept.ts';
import type { Server } from '../server/server.ts';
import { words } from '../text/useWords.ts';
import { type Autosave, startAutosave } from './autosave.ts';
import { catalogueCheckLater, jobCheckLater, readCatalogueLater, readJobLater } from './checksLater.ts';
import { createDocumentStore, type DocumentState, type DocumentStore } from './documentStore.ts';
import { keepStops, type Stops } from './lastStop.ts';
import { createPlanner, type Planner, type PlanState, type PlanWorker } from './planner.ts';
import { plansAlike } from './plansAlike.ts';
import { whenDrawn } from './whenDrawn.ts';

/** Everything one open job needs: the two documents, their saving, and the plan that follows them. */
export interface Work {
  readonly id: string;
  readonly job: DocumentStore<Job>;
  readonly catalogue: DocumentStore<Catalogue>;
  readonly jobSave: Autosave<Job>;
  readonly planner: Planner;
  readonly stops: Stops;
  readonly server: Server;
  /** True when unacknowledged work was found in this browser and put on the page again. */
  readonly recovered: boolean;
  readonly stop: () => void;
}

const newWorker = (): PlanWorker =>
  new Worker(new URL('./plan.worker.ts', import.meta.url), { type: 'module' }) as unknown as PlanWorker;

/** Opens a job from the server, or from this browser where the server is away, with unsaved work laid on top. */
export async function openWork(server: Server, id: string): Promise<Work> {
  const [opened, shop] = await Promise.all([
    openKept<Job>({
      kind: 'job',
      id,
      read: readJobLater,
      fetch: async () => {
        const { job, revision } = await server.openJob(id);
        return { document: job, revision };
      },
    }),
    openKept<Catalogue>({
      kind: 'catalogue',
      id: 'shop',
      read: readCatalogueLater,
      fetch: async () => {
        const { catalogue, revision } = await server.openCatalogue();
        return { document: catalogue, revision };
      },
    }),
  ]);
  const { base, conflict, adopted } = opened;
  const recovered = opened.document !== base?.document;
  const job = createDocumentStore(base?.document ?? opened.document, base?.revision ?? 0, jobCheckLater());
  const shown = shop.base?.document ?? shop.document;
  const catalogue = createDocumentStore(shown, shop.base?.revision ?? 0, catalogueCheckLater());
  const planner = createPlanner(newWorker, whenDrawn);
  const stops = keepStops(planner.store, () => job.store.getState().history.done.length);
  const jobSave = startAutosave(job, {
    base,
    conflict,
    put: (document, basedOn, note) => server.saveJob(document, basedOn, note),
    newest: async () => {
      const newest = await server.openJob(id);
      return { document: newest.job, revision: newest.revision };
    },
    keeper: droppingAdopted(editKeeper<Job>('job', id), adopted),
    onCopy: (copy) => void keepCopy('job', id, copy).catch(() => {}),
    noAnswer: words().app.noAnswer,
  });
  layOnTop(opened, job, jobSave);
  const showPlan = () => planner.show(job.store.getState().document, catalogue.store.getState().document);
  showPlan();
  const ends = [
    job.store.subscribe((state, before) => {
      if (state.document !== before.document) showPlan();
    }),
    catalogue.store.subscribe((state, before) => {
      if (!plansAlike(before.document, state.document)) showPlan();
    }),
    () => jobSave.stop(),
    () => planner.stop(),
    () => stops.end(),
  ];
  return {
    id,
    job,
    catalogue,
    jobSave,
    planner,
    stops,
    server,
    recovered,
    stop: () => {
      for (const end of ends) end();
    },
  };
}

export const WorkContext = createContext<Work | null>(null);

export function useWork(): Work {
  const work = useContext(WorkContext);
  if (!work) throw new Error('no job is open here');
  return work;
}

export const useJob = <S>(select: (state: DocumentState<Job>) => S): S =>
  useStore(useWork().job.store, select);
export const useCatalogue = <S>(select: (catalogue: Catalogue) => S): S =>
  useStore(useWork().catalogue.store, (state) => select(state.document));
export const usePlan = <S>(select: (state: PlanState) => S): S => useStore(useWork().planner.store, select);
