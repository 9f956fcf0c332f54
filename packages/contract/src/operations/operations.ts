import { ok, type Result, refuse } from '@panewright/quantity';
import type { z } from 'zod';
import { type DocumentRefusal, readCatalogue, readJob } from '../document/readDocument.ts';
import { scan } from '../document/scan.ts';
import { issuesOf } from '../document/zodIssues.ts';
import type { Ports, Tools } from '../ports.ts';
import type { Refusal } from '../refusal.ts';
import * as computations from './computations.ts';
import { holdPoints, stackSections, windMargin } from './hold.ts';
import { magnetChoices } from './magnetChoices.ts';
import { offcutLabels } from './offcutLabels.ts';
import type { Operation } from './operation.ts';
import { pack } from './pack.ts';
import * as patterns from './patternOperations.ts';
import { keepPhoto, openPhoto } from './photoOperations.ts';
import { pull } from './pull.ts';
import { readDrawing } from './readDrawing.ts';
import { referenceSheets } from './referenceSheets.ts';
import { sheets } from './sheets.ts';
import * as stores from './storeOperations.ts';

const { plan, check, newJob, demoJob, documentSchemas } = computations;
const { listJobs, openJob, saveJob, listRevisions, restoreJob, removeJob, openCatalogue, saveCatalogue } =
  stores;
const { keepPattern, findPatterns, openPattern, describePattern, removePattern, restorePattern } = patterns;

/** Everything that can be asked, by name. Every door is made from this table. */
export const operations = {
  plan,
  check,
  sheets,
  referenceSheets,
  offcutLabels,
  newJob,
  demoJob,
  documentSchemas,
  holdPoints,
  windMargin,
  stackSections,
  magnetChoices,
  pull,
  pack,
  readDrawing,
  listJobs,
  openJob,
  saveJob,
  listRevisions,
  restoreJob,
  removeJob,
  openCatalogue,
  saveCatalogue,
  keepPhoto,
  openPhoto,
  keepPattern,
  findPatterns,
  openPattern,
  describePattern,
  removePattern,
  restorePattern,
} as const;

export type Operations = typeof operations;
export type OperationName = keyof Operations;
export type OperationInput<N extends OperationName> = z.input<Operations[N]['input']>;
export type OperationOutput<N extends OperationName> = z.output<Operations[N]['output']>;

export const operationNames = Object.keys(operations) as readonly OperationName[];
export const isOperation = (name: string): name is OperationName => Object.hasOwn(operations, name);

/**
 * One operation on an input from outside. This is the one way in: every door calls it, and nothing else parses.
 *
 * @param outside where jobs are kept, for operations on them; fonts, for the sheets
 * @refuses any `Refusal`. A fault of ours throws.
 */
export async function callOperation(
  name: string,
  input: unknown,
  outside: Partial<Ports> & Tools = {},
): Promise<Result<unknown, Refusal>> {
  if (!isOperation(name)) return refuse({ code: 'OPERATION_UNKNOWN', name, known: operationNames });
  const operation: Operation = operations[name] as unknown as Operation;
  const read = readInput(name, operation, input);
  if (!read.ok) return read;
  if (operation.needs === 'nothing') return operation.run(read.value, outside);
  const { jobs, catalogues, patterns: kept, photos } = outside;
  if (!jobs || !catalogues || !kept || !photos) throw new Error(`${name} needs a door that keeps jobs`);
  return operation.run(read.value, { jobs, catalogues, patterns: kept, photos });
}

/** The documents in an input are read first: what is wrong with a job is said of the job, wherever it came from. */
function readInput(name: string, operation: Operation, input: unknown): Result<unknown, Refusal> {
  let current = input;
  for (const [key, kind] of Object.entries(operation.documents ?? {})) {
    const document = member(current, key);
    if (document === undefined) continue;
    const read: Result<unknown, DocumentRefusal> =
      kind === 'job' ? readJob(document) : readCatalogue(document);
    if (!read.ok) return read;
    current = { ...(current as object), [key]: read.value };
  }
  const found = scan(current);
  if (found) return refuse({ code: 'INPUT_INVALID', operation: name, issues: [found] });
  const parsed = operation.input.safeParse(current);
  if (parsed.success) return ok(parsed.data);
  return refuse({ code: 'INPUT_INVALID', operation: name, issues: issuesOf(parsed.error, current) });
}

function member(value: unknown, key: string): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Readonly<Record<string, unknown>>)[key];
}
