import { catalogue, defaultCatalogue, id, job, label } from '@panewright/design';
import { ok } from '@panewright/quantity';
import { z } from 'zod';
import { exampleJob } from '../examples.ts';
import { storeOperation } from './operation.ts';

const revisionNumber = z.int().min(1).max(1_000_000_000);
const savedAt = z.string().describe('ISO 8601, UTC');
const revision = z.strictObject({
  revision: z.int(),
  savedAt,
  basedOn: z.nullable(z.int()),
  note: z.string(),
});
const basedOn = revisionNumber.describe('the revision it was made from; refused when that is not the newest');
const note = label(200).describe('what changed, for the list of revisions');

export const listJobs = storeOperation({
  summary: 'All jobs, last saved first; removed ones too, marked so.',
  input: z.strictObject({}),
  output: z.strictObject({
    jobs: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        customer: z.string(),
        openings: z.int(),
        revision: z.int(),
        savedAt,
        removed: z.boolean(),
      }),
    ),
  }),
  example: {},
  run: async (_, { jobs }) => ok({ jobs: [...(await jobs.list())] }),
});

export const openJob = storeOperation({
  summary: 'One job: its newest revision, or the one asked for.',
  input: z.strictObject({ id, revision: z.optional(revisionNumber) }),
  output: z.strictObject({ job, revision: z.int(), savedAt, removed: z.boolean() }),
  example: { id: 'example' },
  run: (input, { jobs }) => jobs.open(input.id, input.revision),
});

export const saveJob = storeOperation({
  summary: 'Saves a job as a new revision. Answered only once it is on the disk.',
  input: z.strictObject({
    job,
    basedOn: z.nullable(basedOn).describe('null makes a new job'),
    note: z.optional(note),
  }),
  output: revision,
  documents: { job: 'job' },
  example: { job: exampleJob, basedOn: null, note: 'first' },
  run: (input, { jobs }) => jobs.save({ job: input.job, basedOn: input.basedOn, note: input.note ?? '' }),
});

export const listRevisions = storeOperation({
  summary: 'All revisions of a job, newest first.',
  input: z.strictObject({ id }),
  output: z.strictObject({ revisions: z.array(revision) }),
  example: { id: 'example' },
  run: async (input, { jobs }) => {
    const found = await jobs.revisions(input.id);
    return found.ok ? ok({ revisions: [...found.value] }) : found;
  },
});

export const restoreJob = storeOperation({
  summary: 'Makes an old revision the newest again, as a revision of its own; brings back a removed job.',
  input: z.strictObject({ id, revision: revisionNumber, basedOn }),
  output: revision,
  example: { id: 'example', revision: 1, basedOn: 1 },
  run: (input, { jobs }) => jobs.restore(input),
});

export const removeJob = storeOperation({
  summary: 'Takes a job off the list. All its revisions are kept.',
  input: z.strictObject({ id, basedOn }),
  output: revision,
  example: { id: 'example', basedOn: 2 },
  run: (input, { jobs }) => jobs.remove(input),
});

export const openCatalogue = storeOperation({
  summary: 'The shop’s catalogue.',
  input: z.strictObject({}),
  output: z.strictObject({ catalogue, revision: z.int(), savedAt }),
  example: {},
  run: async (_, { catalogues }) => ok(await catalogues.open()),
});

export const saveCatalogue = storeOperation({
  summary: 'Saves the shop’s catalogue as a new revision.',
  input: z.strictObject({ catalogue, basedOn: z.int().min(0).max(1_000_000_000) }),
  output: revision,
  documents: { catalogue: 'catalogue' },
  example: { catalogue: defaultCatalogue, basedOn: 0 },
  run: (input, { catalogues }) => catalogues.save(input),
});
