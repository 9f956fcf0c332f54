import {
  catalogue,
  defaultCatalogue,
  derive,
  emptyJob,
  id,
  job,
  requiredLabel,
  unitName,
} from '@panewright/design';
import { ok } from '@panewright/quantity';
import { z } from 'zod';
import { inOne } from '../answers/answers.ts';
import { english } from '../answers/english/english.ts';
import { sayFinding } from '../answers/sayFinding.ts';
import { showOf } from '../answers/show.ts';
import { demoJob as demo } from '../demo.ts';
import { exampleJob } from '../examples.ts';
import { findingSchema, planSchema } from '../planSchema.ts';
import { documentSchemas as schemas } from '../schemas.ts';
import { computation } from './operation.ts';

export const seed = z
  .int()
  .min(0)
  .max(0xffffffff)
  .describe('of the lay’s search; the same seed gives the same plan');
export const catalogueOrDefault = z
  .optional(catalogue)
  .describe('the shop’s catalogue; the invented one a new shop begins with where left out');

const documents = { job: 'job', catalogue: 'catalogue' } as const;
export const effort = z
  .int()
  .min(0)
  .max(100_000_000)
  .describe('how long to search for each lay, in evaluations; 0 takes the first lay found');
const design = z.strictObject({
  job,
  catalogue: catalogueOrDefault,
  seed: z.optional(seed),
  effort: z.optional(effort),
});

export const plan = computation({
  summary:
    'Works out the whole plan of a job: outlines, patterns, panels, hold points, lay, take-off and price.',
  input: design,
  output: planSchema,
  documents,
  example: { job: exampleJob, seed: 1 },
  run: (input) => ok(derive(input.job, input.catalogue ?? defaultCatalogue, input.seed ?? 1, input.effort)),
});

const said = z.strictObject({ what: z.string(), why: z.string(), do: z.string() });
const counts = z.strictObject({ stop: z.int(), doubt: z.int(), caution: z.int(), note: z.int() });

export const check = computation({
  summary: 'Says what is wrong or doubtful in a job, and what can hurt someone.',
  input: design,
  output: z.strictObject({
    job: z.strictObject({ id: z.string(), name: z.string() }),
    counts,
    findings: z.array(z.strictObject({ ...findingSchema.shape, say: said, text: z.string() })),
  }),
  documents,
  example: { job: exampleJob },
  run: (input, { messages = english }) => {
    const shop = input.catalogue ?? defaultCatalogue;
    const { findings } = derive(input.job, shop, input.seed ?? 1, input.effort);
    const show = showOf(input.job, shop, messages.language);
    const count = (severity: string) => findings.filter((finding) => finding.severity === severity).length;
    return ok({
      job: { id: input.job.id, name: input.job.name },
      counts: { stop: count('stop'), doubt: count('doubt'), caution: count('caution'), note: count('note') },
      findings: findings.map((finding) => {
        const say = sayFinding(finding, show, messages.findings);
        return { ...finding, numbers: { ...finding.numbers }, say, text: inOne(say) };
      }),
    });
  },
});

export const newJob = computation({
  summary: 'A job with nothing measured yet.',
  input: z.strictObject({ id, name: requiredLabel(100), units: unitName }),
  output: job,
  example: { id: 'new-1', name: 'A new job', units: 'in' },
  run: (input) => ok(emptyJob(input.id, input.name, input.units)),
});

export const demoJob = computation({
  summary: 'The invented job to look around in.',
  input: z.strictObject({}),
  output: job,
  example: {},
  run: () => ok(demo),
});

export const documentSchemas = computation({
  summary: 'JSON Schemas of the documents: job, catalogue and plan.',
  input: z.strictObject({}),
  output: z.record(z.string(), z.unknown()),
  example: {},
  run: () => ok(schemas()),
});
