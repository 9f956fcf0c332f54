import {
  type Catalogue,
  type DocumentRefusal,
  type Issue,
  type Job,
  makeShow,
  messages,
  type Result,
  readCatalogue,
  readJob,
  sayLength,
  sayRefusal,
} from '../contract.ts';
import type { Problem } from './documentStore.ts';

// The schemas and their sentences: a file of script of its own, fetched once the first drawing stands.

export { readCatalogue, readJob } from '../contract.ts';

/** Says what is wrong with a job. Of an edit that left the row of openings as it was, only what it changed is read. */
export const checkJob = (document: Job, before?: Job): Problem | null =>
  problemOf(readJob(before && sameRow(document, before) ? changedOnly(document, before) : document));

export const checkCatalogue = (document: Catalogue): Problem | null => problemOf(readCatalogue(document));

const sameRow = (a: Job, b: Job): boolean =>
  a.openings.length === b.openings.length &&
  a.openings.every(({ id }, index) => id === b.openings[index]!.id);

const changedOnly = (document: Job, before: Job): Job => ({
  ...document,
  openings: document.openings.filter((one, index) => one !== before.openings[index]),
});

function problemOf(read: Result<unknown, DocumentRefusal>): Problem | null {
  if (read.ok) return null;
  const { refusal } = read;
  if (refusal.code !== 'DOCUMENT_INVALID' || !refusal.issues[0])
    return { sentence: sayRefusal(refusal, plain).what, issue: null };
  const issue = refusal.issues[0];
  return { sentence: sayAtField(issue), issue };
}

const plain = makeShow({ units: 'mm' });

/** The sentence for an issue, said at its field: the field stands for the path. */
function sayAtField(issue: Issue): string {
  if (issue.kind === 'length') return sayLength(issue.refusal);
  const word = messages.en.issues[issue.kind] as (issue: Issue, show: typeof plain) => string;
  return word({ ...issue, path: [] } as Issue, plain).replace(/^The document /, 'This ');
}
