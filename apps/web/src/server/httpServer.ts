import type { OperationInput, OperationName, OperationOutput, Refused as RefusedBody } from '../contract.ts';
import type { SaveAnswer } from '../job/autosave.ts';
import { documentText } from '../merge/documentText.ts';
import { spoken } from '../text/useWords.ts';
import { callTold } from './callTold.ts';
import { Refused, type Server } from './server.ts';

/** As JSON; of a job that is saved again and again, only the opening that changed is worded anew. */
function bodyOf(input: { readonly job?: object }): string {
  const { job, ...rest } = input;
  if (typeof job !== 'object') return JSON.stringify(input);
  const others = JSON.stringify(rest).slice(1, -1);
  return `{"job":${documentText(job)}${others && `,${others}`}}`;
}

/** One operation over HTTP. Throws `Refused` where the server says no, another error where it does not answer. */
async function call<N extends OperationName>(
  name: N,
  input: OperationInput<N>,
  signal?: AbortSignal,
): Promise<OperationOutput<N>> {
  const response = await fetch(`/api/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'accept-language': spoken().language },
    body: bodyOf(input as { readonly job?: object }),
    ...(signal ? { signal } : {}),
  });
  const body: unknown = await response.json();
  if (response.ok) return body as OperationOutput<N>;
  if (typeof body === 'object' && body !== null && 'refusal' in body) throw new Refused(body as RefusedBody);
  throw new Error(`${name}: ${response.status}`);
}

/** A save's answer as a value: a conflict and a refusal are states of the page, not faults. */
async function saved(save: Promise<{ readonly revision: number }>): Promise<SaveAnswer> {
  try {
    return { kind: 'saved', revision: (await save).revision };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const { refusal } = error;
    if (refusal.code === 'REVISION_STALE' || refusal.code === 'JOB_EXISTS')
      return { kind: 'conflict', theirs: refusal.newest };
    return { kind: 'refused', why: error.message };
  }
}

export const httpServer: Server = {
  listJobs: async () => (await call('listJobs', {})).jobs,
  addJob: async (job) => {
    await call('saveJob', { job, basedOn: null });
  },
  demoJob: () => call('demoJob', {}),
  openJob: (id, revision) => call('openJob', revision === undefined ? { id } : { id, revision }),
  saveJob: (job, basedOn, note) =>
    saved(call('saveJob', note === undefined ? { job, basedOn } : { job, basedOn, note })),
  removeJob: async (id, basedOn) => {
    await call('removeJob', { id, basedOn });
  },
  revisions: async (id) => (await call('listRevisions', { id })).revisions,
  restore: (id, revision, basedOn) => saved(call('restoreJob', { id, revision, basedOn })),
  openCatalogue: () => call('openCatalogue', {}),
  saveCatalogue: (catalogue, basedOn) => saved(call('saveCatalogue', { catalogue, basedOn })),
  referenceSheets: (input) => call('referenceSheets', input),
  offcutLabels: (input) => call('offcutLabels', input),
  sheets: async (input, signal, told) => (await callTold('sheets', input, signal, told)).files,
  keepPhoto: (id, base64) => call('keepPhoto', { id, base64 }),
  openPhoto: (id) => call('openPhoto', { id }),
  findPatterns: (search) => call('findPatterns', search),
  keepPattern: async (pattern) => void (await call('keepPattern', { pattern })),
  describePattern: async (id, name, notes) => void (await call('describePattern', { id, name, notes })),
  removePattern: async (id) => void (await call('removePattern', { id })),
  restorePattern: async (id) => void (await call('restorePattern', { id })),
};
