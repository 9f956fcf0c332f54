import type { DocumentStore } from './documentStore.ts';

/** What the server said to a save. */
export type SaveAnswer =
  | { readonly kind: 'saved'; readonly revision: number }
  | { readonly kind: 'conflict'; readonly theirs: number }
  | { readonly kind: 'refused'; readonly why: string };

export interface Autosave {
  /** Saves now what waits, and resolves when nothing does. */
  readonly flush: () => Promise<void>;
  /** Saves what is on the page on top of the revision that is in the way. */
  readonly keepMine: () => void;
  readonly stop: () => void;
}

interface Options<T> {
  readonly put: (document: T, basedOn: number) => Promise<SaveAnswer>;
  /** Kept in the browser from the first change until the server has acknowledged it. */
  readonly local: LocalCopy<T>;
  readonly wait?: number;
  /** What to say when the server does not answer. */
  readonly noAnswer: string;
}

export interface LocalCopy<T> {
  readonly keep: (document: T, basedOn: number) => void;
  readonly drop: () => void;
}

const RETRY = 3000;

/** Saves the document a moment after each change, one save at a time, and reports each through the store. */
export function startAutosave<T extends object>(
  { store }: DocumentStore<T>,
  { put, local, wait = 500, noAnswer }: Options<T>,
): Autosave {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: Promise<void> | null = null;
  let acknowledged = store.getState().document;

  const later = (delay: number) => {
    clearTimeout(timer);
    timer = setTimeout(() => void save(), delay);
  };

  const attempt = async (): Promise<void> => {
    const { document, revision, save: state } = store.getState();
    if (document === acknowledged || state.kind === 'conflict') return;
    store.setState({ save: { kind: 'saving' } });
    let answer: SaveAnswer;
    try {
      answer = await put(document, revision);
    } catch {
      store.setState({ save: { kind: 'failed', why: noAnswer } });
      later(RETRY);
      return;
    }
    if (answer.kind === 'conflict') store.setState({ save: { kind: 'conflict', theirs: answer.theirs } });
    else if (answer.kind === 'refused') store.setState({ save: { kind: 'failed', why: answer.why } });
    else {
      acknowledged = document;
      const current = store.getState().document;
      store.setState({
        revision: answer.revision,
        save: current === document ? { kind: 'saved' } : { kind: 'waiting' },
      });
      if (current === document) local.drop();
      else {
        local.keep(current, answer.revision);
        later(0);
      }
    }
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
    if (state.save.kind === 'saved') acknowledged = state.document;
    else {
      local.keep(state.document, state.revision);
      later(wait);
    }
  });

  const flush = async () => {
    do await save();
    while (store.getState().save.kind === 'waiting');
  };

  return {
    flush,
    keepMine: () => {
      const state = store.getState();
      if (state.save.kind !== 'conflict') return;
      store.setState({ revision: state.save.theirs, save: { kind: 'waiting' } });
      void save();
    },
    stop: () => {
      clearTimeout(timer);
      unsubscribe();
    },
  };
}
