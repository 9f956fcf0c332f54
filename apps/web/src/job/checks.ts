import {
  type Catalogue,
  type DocumentRefusal,
  type Issue,
  type Job,
  makeShow,
  type Result,
  readCatalogue,
  readJob,
  sayIssueAtField,
  sayRefusal,
} from '../contract.ts';
import { sayLength } from '../text/sayLength.ts';
import { spoken } from '../text/useWords.ts';
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
  const issue = refusal.code === 'DOCUMENT_INVALID' ? refusal.issues[0] : undefined;
  return issue
    ? { sentence: sayAtField(issue), issue }
    : { sentence: sayRefusal(refusal, plain(), spoken().messages).what, issue: null };
}

const plain = () => makeShow({ units: 'mm', language: spoken().language });

/** The sentence for an issue, said at its field: the field stands for the path. */
const sayAtField = (issue: Issue): string =>
  issue.kind === 'length' ? sayLength(issue.refusal) : sayIssueAtField(issue, plain(), spoken().messages);
