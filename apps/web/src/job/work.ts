import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Catalogue, Job } from '../contract.ts';
import type { Server } from '../server/server.ts';
import { words } from '../text/useWords.ts';
import { type Autosave, startAutosave } from './autosave.ts';
import { catalogueCheckLater, jobCheckLater, readJobLater } from './checksLater.ts';
import { createDocumentStore, type DocumentState, type DocumentStore } from './documentStore.ts';
import { localCopy, readLocalCopy } from './localCopy.ts';
import { createPlanner, type Planner, type PlanState, type PlanWorker } from './planner.ts';
import { whenDrawn } from './whenDrawn.ts';

/** Everything one open job needs: the two documents, their saving, and the plan that follows them. */
export interface Work {
  readonly id: string;
  readonly job: DocumentStore<Job>;
  readonly catalogue: DocumentStore<Catalogue>;
  readonly jobSave: Autosave;
  readonly planner: Planner;
  readonly server: Server;
  /** True when unacknowledged work was found in this browser and put on the page again. */
  readonly recovered: boolean;
  readonly stop: () => void;
}

const newWorker = (): PlanWorker =>
  new Worker(new URL('./plan.worker.ts', import.meta.url), { type: 'module' }) as unknown as PlanWorker;

/** Opens a job from the server, with what this browser had not yet saved laid on top. */
export async function openWork(server: Server, id: string): Promise<Work> {
  const [opened, shop] = await Promise.all([server.openJob(id), server.openCatalogue()]);
  const job = createDocumentStore(opened.job, opened.revision, jobCheckLater());
  const catalogue = createDocumentStore(shop.catalogue, shop.revision, catalogueCheckLater());
  const planner = createPlanner(newWorker, whenDrawn);
  const jobSave = startAutosave(job, {
    put: (document, basedOn) => server.saveJob(document, basedOn),
    local: localCopy('job', id),
    noAnswer: words().app.noAnswer,
  });
  const showPlan = () => planner.show(job.store.getState().document, catalogue.store.getState().document);
  showPlan();
  const recovered = await recover(job, id, opened.revision);
  if (recovered) showPlan();
  const stops = [
    job.store.subscribe((state, before) => {
      if (state.document !== before.document) showPlan();
    }),
    () => jobSave.stop(),
    () => planner.stop(),
  ];
  return {
    id,
    job,
    catalogue,
    jobSave,
    planner,
    server,
    recovered,
    stop: () => {
      for (const stop of stops) stop();
    },
  };
}

/** Lays unacknowledged work of this browser on the page; from an older revision it is a conflict to be resolved. */
async function recover(job: DocumentStore<Job>, id: string, revision: number): Promise<boolean> {
  const kept = readLocalCopy<Job>('job', id);
  if (!kept) return false;
  const read = await readJobLater(kept.document);
  if (!read.ok) return false;
  const document = read.value;
  if (JSON.stringify(document) === JSON.stringify(job.store.getState().document)) {
    localCopy('job', id).drop();
    return false;
  }
  job.store.setState({ revision: kept.basedOn });
  job.put('recovered', document);
  if (kept.basedOn !== revision) job.store.setState({ save: { kind: 'conflict', theirs: revision } });
  return true;
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
