import { fingerprint } from '../merge/documentText.ts';
import { type Merged, merge, type Picks } from '../merge/merge.ts';
import { sameValue } from '../merge/parts.ts';
import type { Copy, Origin } from '../offline/keptDocuments.ts';
import type { DocumentStore } from './documentStore.ts';

/** What the server said to a save. */
export type SaveAnswer =
  | { readonly kind: 'saved'; readonly revision: number }
  | { readonly kind: 'conflict'; readonly theirs: number }
  | { readonly kind: 'refused'; readonly why: string };

export interface Autosave<T = unknown> {
  /** Saves now what waits, and resolves when nothing does or nothing more can be done. */
  readonly flush: () => Promise<void>;
  /** While in conflict: both versions brought together, with what is picked so far. */
  readonly together: (picks: Picks) => Merged<T> | null;
  /** Ends the conflict with what was picked for each field; false while one is not picked. */
  readonly resolve: (picks: Picks) => boolean;
  /** Saves what is on the page as a revision with a name; false where it has to wait for something first. */
  readonly saveAs: (note: string) => Promise<boolean>;
  readonly stop: () => void;
}

/** Keeps the newest state in the browser; see `editKeeper`. */
export interface Keeper<T> {
  readonly keep: (document: T, origin: Origin<T>) => Promise<void>;
  readonly drop: () => Promise<void>;
}

interface Options<T> {
  /** What the page's document was made from; null where the server does not have it. */
  readonly base: Copy<T> | null;
  /** The revision the page is in conflict with from the start, if any. */
  readonly conflict?: Copy<T> | null;
  readonly put: (document: T, basedOn: number | null, note?: string) => Promise<SaveAnswer>;
  /** The newest revision the server has. */
  readonly newest: () => Promise<Copy<T>>;
  readonly keeper: Keeper<T>;
  /** Told of each revision the server is known to have. */
  readonly onCopy?: (copy: Copy<T>) => void;
  readonly wait?: number;
  /** What to say when the server does not answer. */
  readonly noAnswer: string;
}

const allMine = (picks: Picks): Picks => Object.fromEntries(Object.keys(picks).map((key) => [key, 'mine']));

const RETRY = 3000;
/** More saves than this without an answer are not remembered. */
const MOST_SENT = 100;

/**
 * Keeps each change in the browser at once, and saves it to the server a moment later, one save at a time. Where another
 * revision was saved meanwhile, both are brought together by field; what both changed waits for a person.
 */
export function startAutosave<T extends object>(
  document: DocumentStore<T>,
  options: Options<T>,
): Autosave<T> {
  const { store } = document;
  const { put, newest, keeper, onCopy, wait = 500, noAnswer } = options;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: Promise<void> | null = null;
  let base = options.base;
  let theirs = options.conflict ?? null;
  /** Fingerprints of what was sent to the server and never answered. */
  let sent: readonly string[] = [];

  const later = (delay: number) => {
    clearTimeout(timer);
    timer = setTimeout(() => void save(), delay);
  };
  const isBase = (one: T) => base !== null && one === base.document;
  const keep = (one: T) =>
    keeper.keep(one, { base, sent }).then(
      () => store.getState().document === one && store.setState({ kept: 'yes' }),
      () => store.getState().document === one && store.setState({ kept: 'cannot' }),
    );
  const known = (copy: Copy<T>) => {
    base = copy;
    onCopy?.(copy);
  };

  const attempt = async (): Promise<void> => {
    const { document: one, save: state } = store.getState();
    if (isBase(one) || state.kind === 'conflict') return;
    store.setState({ save: { kind: 'saving' } });
    sent = [...sent, fingerprint(one)].slice(-MOST_SENT);
    // On the disk first: whatever becomes of the answer, it is known here what the server may have.
    await keep(one);
    try {
      const answer = await put(one, base?.revision ?? null);
      if (answer.kind === 'refused') store.setState({ save: { kind: 'failed', why: answer.why } });
      else if (answer.kind === 'conflict') meet(await newest());
      else saved(one, answer.revision);
    } catch {
      store.setState({ save: { kind: 'away', why: noAnswer } });
      later(RETRY);
    }
  };
  const saved = (one: T, revision: number) => {
    sent = [];
    known({ document: one, revision });
    const current = store.getState().document;
    const done = current === one;
    store.setState({ revision, save: { kind: done ? 'saved' : 'waiting' } });
    if (done) void keeper.drop().catch(() => {});
    else {
      void keep(current);
      later(0);
    }
  };
  /** Another revision stands where ours was to go. */
  const meet = (other: Copy<T>) => {
    // Not another's, but our own save whose answer was lost.
    if (sent.includes(fingerprint(other.document))) known(other);
    sent = [];
    theirs = other;
    if (!resolve({})) store.setState({ save: { kind: 'conflict', theirs: other.revision } });
  };
  const together = (picks: Picks): Merged<T> | null =>
    theirs && merge<T>(base?.document ?? ({} as T), store.getState().document, theirs.document, picks);
  const resolve = (picks: Picks): boolean => {
    const merged = together(picks);
    if (!merged || !theirs || merged.conflicts.length > 0) return false;
    const from = theirs;
    const before = base?.document ?? ({} as T);
    theirs = null;
    known(from);
    if (Object.keys(picks).length === 0 && sameValue(merged.document, from.document)) {
      document.rebase(from.document, from.revision, merged.taken);
      store.setState({ save: { kind: 'saved' }, kept: 'yes' });
      void keeper.drop().catch(() => {});
      return true;
    }
    // What was picked of the other side is a step of its own: undo brings one's own value back, and only that.
    const own = merge<T>(before, store.getState().document, from.document, allMine(picks)).document;
    const problem =
      document.rebase(own, from.revision, merged.taken) ??
      (sameValue(own, merged.document) ? null : document.put('picked', merged.document));
    if (problem) {
      theirs = from;
      store.setState({ save: { kind: 'failed', why: problem.sentence } });
      return true;
    }
    later(0);
    return true;
  };

  const save = async (): Promise<void> => {
    clearTimeout(timer);
    while (running) await running;
    running = attempt().finally(() => {
      running = null;
    });
    await running;
  };

  const unsubscribe = store.subscribe((state, before) => {
    if (state.document === before.document) return;
    if (state.save.kind === 'saved') known({ document: state.document, revision: state.revision });
    else {
      store.setState({ kept: 'no' });
      void keep(state.document);
      later(wait);
    }
  });
  const online = () => later(0);
  globalThis.addEventListener?.('online', online);

  const flush = async () => {
    do await save();
    while (store.getState().save.kind === 'waiting');
  };
  const saveAs = async (note: string): Promise<boolean> => {
    await flush();
    const { document: one, save: state } = store.getState();
    if (state.kind !== 'saved') return false;
    const answer = await put(one, base?.revision ?? null, note);
    if (answer.kind !== 'saved') return false;
    known({ document: one, revision: answer.revision });
    store.setState({ revision: answer.revision });
    return true;
  };

  return {
    together,
    resolve,
    flush,
    saveAs,
    stop: () => {
      clearTimeout(timer);
      globalThis.removeEventListener?.('online', online);
      unsubscribe();
    },
  };
}
