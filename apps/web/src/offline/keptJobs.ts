import type { Job, JobSummary } from '../contract.ts';
import { fingerprint } from '../merge/documentText.ts';
import type { Server } from '../server/server.ts';
import { Refused } from '../server/server.ts';
import { type CaughtUp, catchUp } from './catchUp.ts';
import { allCopies, keepCopy, keepEdit, leftBehind, ownKey } from './keptDocuments.ts';

/** A job of the list, and what this browser knows of it besides. */
export interface ListedJob extends JobSummary {
  /** Edits that wait here: for the server, or for a person to choose. */
  readonly waits: CaughtUp | null;
}

export interface JobList {
  readonly jobs: readonly ListedJob[];
  /** False where the server did not answer and the list is of what is kept here. */
  readonly reached: boolean;
}

/** Jobs fetched into this browser at a time, so that they open where there is no network. */
const MOST_COPIES = 40;

/** The jobs of the server, what waits here saved to it first; without a server, the jobs kept in this browser. */
export async function listJobs(server: Server): Promise<JobList> {
  const became = await catchUp(server).catch(() => new Map<string, CaughtUp>());
  try {
    const listed = await server.listJobs();
    return { jobs: await withOwn(listed, became), reached: true };
  } catch (error) {
    if (error instanceof Refused) throw error;
    const own = await withOwn((await allCopies<Job>('job')).map(summaryOf), became);
    if (own.length === 0) throw error;
    return { jobs: own, reached: false };
  }
}

/** The list, with the jobs only this browser has, and with what waits of each. */
async function withOwn(
  listed: readonly JobSummary[],
  became: ReadonlyMap<string, CaughtUp>,
): Promise<readonly ListedJob[]> {
  const edits = await leftBehind<Job>('job').catch(() => []);
  const waitsOf = new Map(
    edits.map(({ document }) => [document.id, became.get(document.id) ?? 'away'] as const),
  );
  const known = new Set(listed.map(({ id }) => id));
  const only = edits.filter(({ document }) => !known.has(document.id));
  const own = only.map(({ document, at }) => ({ ...summaryOf({ document, revision: 0 }), savedAt: at }));
  return [...own, ...listed].map((one) => ({ ...one, waits: waitsOf.get(one.id) ?? null }));
}

const summaryOf = ({
  document,
  revision,
}: {
  readonly document: Job;
  readonly revision: number;
}): JobSummary => ({
  id: document.id,
  name: document.name,
  customer: document.customer.name,
  openings: document.openings.length,
  revision,
  savedAt: '',
  removed: false,
});

/** A new job: at the server, or, where it does not answer, in this browser until it does. */
export async function addJob(server: Server, job: Job): Promise<void> {
  try {
    await server.addJob(job);
  } catch (error) {
    if (error instanceof Refused) throw error;
    await keepEdit(ownKey('job', job.id), job, { base: null, sent: [fingerprint(job)] });
  }
}

/** Fetches into this browser what the server has newer of each job, and the catalogue, last saved first. */
export async function fetchCopies(server: Server, jobs: readonly JobSummary[]): Promise<void> {
  const have = new Map(
    (await allCopies<Job>('job')).map(({ document, revision }) => [document.id, revision]),
  );
  const wanted = jobs.filter(({ id, revision, removed }) => !removed && have.get(id) !== revision);
  for (const { id } of wanted.slice(0, MOST_COPIES)) {
    const { job, revision } = await server.openJob(id);
    await keepCopy('job', id, { document: job, revision });
  }
  const { catalogue, revision } = await server.openCatalogue();
  await keepCopy('catalogue', 'shop', { document: catalogue, revision });
}
