import {
  type Catalogue,
  type DocumentRefusal,
  type Issue,
  type Job,
  type LengthRefusal,
  makeShow,
  messages,
  type Result,
  readCatalogue,
  readJob,
  sayRefusal,
} from '@panewright/contract';
import type { Problem } from './job/documentStore.ts';

// What the page takes from the contract; nothing else is imported from outside of it.
export * from '@panewright/contract';

/** The seed of the lay's search. One for all, so that a job has the same lay on every page and sheet. */
export const PLAN_SEED = 1;

export type MoneySign = Catalogue['currency'];

export const checkJob = (document: Job): Problem | null => problemOf(readJob(document));
export const checkCatalogue = (document: Catalogue): Problem | null => problemOf(readCatalogue(document));

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

/** Why a text is not a length, as a sentence. */
export function sayLength(refusal: LengthRefusal): string {
  const word = messages.en.lengths[refusal.code] as (refusal: LengthRefusal) => string;
  const text =
    refusal.text.trim() === '' ? 'Nothing is entered' : `“${refusal.text.slice(0, 40)}” is not a length`;
  return `${text}: ${word(refusal)}.`;
}
