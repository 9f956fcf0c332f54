import type { DocumentRefusal, Result } from '../contract.ts';
import type { Autosave } from '../job/autosave.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import { fingerprint } from '../merge/documentText.ts';
import { merge } from '../merge/merge.ts';
import { Refused } from '../server/server.ts';
import { type Copy, copyOf, type Edit, type Kind, keepCopy, leftBehind } from './keptDocuments.ts';

/** A document as it is put on the page: what the server has, with what this browser had not yet saved laid on top. */
export interface OpenedDocument<T> {
  /** What the edits start from; null for a document the server does not have. */
  readonly base: Copy<T> | null;
  readonly document: T;
  /** Set where the edits and the server's newest revision each changed one field otherwise. */
  readonly conflict: Copy<T> | null;
  /** Edits of pages that are gone, now in `document`: to be dropped once this page has kept it. */
  readonly adopted: readonly string[];
  /** False where the server did not answer and the document is this browser's copy. */
  readonly reached: boolean;
}

interface Ask<T> {
  readonly kind: Kind;
  readonly id: string;
  readonly fetch: () => Promise<Copy<T>>;
  /** A stored value as a document of the newest version. */
  readonly read: (value: unknown) => Promise<Result<T, DocumentRefusal>>;
}

/** How long a server is waited for when there is a copy to work from, ms. */
const PATIENCE = 4000;

/** Opens a document from the server, or from the browser's own store where the server does not answer. */
export async function openKept<T extends object>({
  kind,
  id,
  fetch,
  read,
}: Ask<T>): Promise<OpenedDocument<T>> {
  const asked = fetch();
  asked.catch(() => {});
  const [found, edits] = await kept<T>(kind, id);
  const fallBack = found !== undefined || edits.length > 0;
  const fetched = await answerOrNull(asked, fallBack, edits.length > 0);
  if (fetched) void keepCopy(kind, id, fetched).catch(() => {});
  const copy = fetched ?? (found ? await readCopy(found, read) : null);
  let state: OpenedDocument<T> | null = copy
    ? { base: copy, document: copy.document, conflict: null, adopted: [], reached: fetched !== null }
    : null;
  for (const edit of edits) {
    state = await withEdit(state, edit, read);
    if (state?.conflict) break;
  }
  if (!state) throw new Error(`the ${kind} kept in this browser cannot be read`);
  return { ...state, reached: fetched !== null };
}

/** What the browser has; nothing where it keeps nothing. */
async function kept<T>(kind: Kind, id: string) {
  try {
    return await Promise.all([copyOf<T>(kind, id), leftBehind<T>(kind, id)]);
  } catch {
    return [undefined, [] as readonly Edit<T>[]] as const;
  }
}

/** The server's answer; null where it gives none in time and there is something to work from instead. */
async function answerOrNull<T>(
  asked: Promise<Copy<T>>,
  fallBack: boolean,
  hasEdits: boolean,
): Promise<Copy<T> | null> {
  if (!fallBack) return asked;
  try {
    return await Promise.race([
      asked,
      new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE)),
    ]);
  } catch (error) {
    if (error instanceof Refused && !hasEdits) throw error;
    return null;
  }
}

async function readCopy<T>(copy: Copy<T>, read: Ask<T>['read']): Promise<Copy<T> | null> {
  const document = await read(copy.document);
  return document.ok ? { document: document.value, revision: copy.revision } : null;
}

/** Lays an edit on what is there, field by field. What cannot be read is left in the store, untouched. */
async function withEdit<T extends object>(
  state: OpenedDocument<T> | null,
  edit: Edit<T>,
  read: Ask<T>['read'],
): Promise<OpenedDocument<T> | null> {
  const [mine, from] = await Promise.all([read(edit.document), edit.base && readCopy(edit.base, read)]);
  if (!mine.ok) return state;
  // Sent, and never answered: where the server has it nonetheless, it is what the edit was made from.
  const arrived = state?.base && edit.sent.includes(fingerprint(state.base.document));
  const base = arrived ? state.base : from;
  const adopted = [...(state?.adopted ?? []), edit.key];
  if (!state) return { base, document: mine.value, conflict: null, adopted, reached: false };
  const merged = merge<T>(base?.document ?? ({} as T), mine.value, state.document);
  if (merged.conflicts.length === 0) return { ...state, document: merged.document, adopted };
  if (!state.base) return state;
  const theirs = { document: state.document, revision: state.base.revision };
  return { ...state, base, document: mine.value, conflict: theirs, adopted };
}

/** Puts what was opened on the page: unsaved work as a step, to be saved, or resolved first where fields collide. */
export function layOnTop<T extends object>(
  { base, document, conflict }: OpenedDocument<T>,
  store: DocumentStore<T>,
  save: Autosave<T>,
): void {
  if (base !== null && document === base.document) return;
  const problem = document === store.store.getState().document ? null : store.put('recovered', document);
  if (problem) {
    store.store.setState({ save: { kind: 'failed', why: problem.sentence } });
    return;
  }
  store.store.setState({
    kept: 'no',
    save: conflict ? { kind: 'conflict', theirs: conflict.revision } : { kind: 'waiting' },
  });
  void save.flush();
}
