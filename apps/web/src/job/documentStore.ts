import { applyPatches, type Draft, enablePatches, freeze, type Patch, produceWithPatches } from 'immer';
import { createStore, type StoreApi } from 'zustand';
import type { Issue } from '../contract.ts';
import { emptyHistory, type History, record, redone, type Step, settled, undone } from './history.ts';

enablePatches();

/** An entry that could not be taken over: as it was typed, and the sentence that says why. */
export interface RefusedEntry {
  readonly text: string;
  readonly sentence: string;
}

export type SaveState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'conflict'; readonly theirs: number };

/** A document being edited: always one that its schema accepts. What cannot be accepted is kept in `refused`. */
export interface DocumentState<T> {
  readonly document: T;
  readonly revision: number;
  readonly history: History;
  readonly refused: Readonly<Record<string, RefusedEntry>>;
  readonly save: SaveState;
  /** Counts undo, redo and replacement, so that fields drop what was being typed. */
  readonly turns: number;
}

export interface DocumentStore<T> {
  readonly store: StoreApi<DocumentState<T>>;
  /** Changes the document under the entry's key; where its schema refuses the result, nothing changes. */
  readonly edit: (key: string, recipe: (draft: Draft<T>) => void) => Problem | null;
  /** Puts another document in this one's place, as a step of its own; it waits to be saved. */
  readonly put: (key: string, document: T) => Problem | null;
  /** Keeps what was typed and cannot be read, with the sentence that says so. */
  readonly refuse: (key: string, text: string, sentence: string) => void;
  readonly settle: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Puts a document the server already has in this one's place, as a step that can be undone. */
  readonly replace: (document: T, revision: number) => void;
}

/** Why a document is refused: in a sentence, and as what its schema found, for a field that words it in its own unit. */
export interface Problem {
  readonly sentence: string;
  readonly issue: Issue | null;
}

/** Says what is wrong with a document, or null. `before`: the one it was made from, which was accepted. */
export type Check<T> = (document: T, before?: T) => Problem | null;

/**
 * @param checking may still be on its way: what is edited before it comes is checked then, and taken back where it does
 * not pass. Where it never comes, the server's own check decides.
 */
export function createDocumentStore<T extends object>(
  document: T,
  revision: number,
  checking: Check<T> | Promise<Check<T>>,
): DocumentStore<T> {
  let check: Check<T> = () => null;
  const store = createStore<DocumentState<T>>(() => ({
    document: freeze(document, true),
    revision,
    history: emptyHistory,
    refused: {},
    save: { kind: 'saved' },
    turns: 0,
  }));

  const arm = (armed: Check<T>) => {
    check = armed;
    let problem = history().done.length > 0 ? check(store.getState().document) : null;
    while (problem && history().done.length > 0) {
      const { step, history: rest } = undone(history())!;
      store.setState((state) => ({
        document: applyPatches(state.document, [...step.back]),
        history: { ...rest, undone: [] },
        refused: { ...state.refused, [step.key]: { text: '', sentence: problem!.sentence } },
        save: changed(state.save),
      }));
      problem = check(store.getState().document);
    }
  };
  const history = () => store.getState().history;
  if (typeof checking === 'function') check = checking;
  else checking.then(arm, () => {});

  const refuse = (key: string, text: string, sentence: string) =>
    store.setState((state) => ({ refused: { ...state.refused, [key]: { text, sentence } } }));

  const edit = (key: string, recipe: (draft: Draft<T>) => void): Problem | null => {
    const [next, forth, back] = produceWithPatches(store.getState().document, (draft) => {
      recipe(draft);
    });
    return commit({ key, forth, back }, next);
  };

  const commit = ({ key, forth, back }: Step, next: T): Problem | null => {
    const state = store.getState();
    const problem = forth.length === 0 ? null : check(next, state.document);
    if (problem) return problem;
    const refused = without(state.refused, key);
    if (forth.length === 0) {
      if (refused !== state.refused) store.setState({ refused });
      return null;
    }
    const history = record(state.history, { key, forth, back });
    store.setState({ document: next, history, refused, save: changed(state.save) });
    return null;
  };

  const turn = (taken: ReturnType<typeof undone>, patches: readonly Patch[]) => {
    if (!taken) return;
    store.setState((state) => ({
      document: applyPatches(state.document, [...patches]),
      history: taken.history,
      refused: {},
      save: changed(state.save),
      turns: state.turns + 1,
    }));
  };

  return {
    store,
    edit,
    put: (key, next) => {
      const problem = commit(exchange(key, store.getState().document, next), freeze(next, true));
      if (!problem) store.setState((state) => ({ history: settled(state.history), turns: state.turns + 1 }));
      return problem;
    },
    refuse,
    settle: () => store.setState((state) => ({ history: settled(state.history) })),
    undo: () => {
      const taken = undone(store.getState().history);
      turn(taken, taken?.step.back ?? []);
    },
    redo: () => {
      const taken = redone(store.getState().history);
      turn(taken, taken?.step.forth ?? []);
    },
    replace: (next, nextRevision) =>
      store.setState((state) => {
        const step = exchange(`replace:${nextRevision}`, state.document, next);
        return {
          document: freeze(next, true),
          revision: nextRevision,
          history: settled(record(state.history, step)),
          refused: {},
          save: { kind: 'saved' },
          turns: state.turns + 1,
        };
      }),
  };
}

/** The step from one whole document to another. */
const exchange = (key: string, from: object, to: object): Step => ({
  key,
  forth: [{ op: 'replace', path: [], value: to }],
  back: [{ op: 'replace', path: [], value: from }],
});

/** A conflict stays until it is resolved; everything else now waits to be saved. */
const changed = (save: SaveState): SaveState => (save.kind === 'conflict' ? save : { kind: 'waiting' });

function without(
  entries: Readonly<Record<string, RefusedEntry>>,
  key: string,
): Readonly<Record<string, RefusedEntry>> {
  if (!(key in entries)) return entries;
  const { [key]: _gone, ...rest } = entries;
  return rest;
}
