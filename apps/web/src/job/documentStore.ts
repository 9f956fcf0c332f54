import { applyPatches, type Draft, enablePatches, freeze, type Patch, produceWithPatches } from 'immer';
import { createStore, type StoreApi } from 'zustand';
import type { Issue } from '../contract.ts';
import type { FieldChange } from '../merge/merge.ts';
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
  /** The server does not answer; it is asked again. */
  | { readonly kind: 'away'; readonly why: string }
  /** The server refuses it as it stands. */
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'conflict'; readonly theirs: number };

/** A document being edited: always one that its schema accepts. What cannot be accepted is kept in `refused`. */
export interface DocumentState<T> {
  readonly document: T;
  readonly revision: number;
  readonly history: History;
  readonly refused: Readonly<Record<string, RefusedEntry>>;
  readonly save: SaveState;
  /** Whether this state is on the disk in this browser (or at the server, which is as good). */
  readonly kept: 'yes' | 'no' | 'cannot';
  /** What came from another device and was brought together with this page's, until it is put away. */
  readonly merged: { readonly revision: number; readonly taken: readonly FieldChange[] } | null;
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
  /** Puts this page's work on top of another revision: the same steps can still be undone. */
  readonly rebase: (document: T, revision: number, taken: readonly FieldChange[]) => Problem | null;
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
    kept: 'yes',
    merged: null,
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
    rebase: (next, nextRevision, taken) => {
      const problem = check(next);
      if (problem) return problem;
      store.setState((state) => ({
        document: freeze(next, true),
        revision: nextRevision,
        history: rebased(state.history, state.document, next, taken),
        save: { kind: 'waiting' },
        merged: taken.length > 0 ? { revision: nextRevision, taken } : state.merged,
        turns: state.turns + 1,
      }));
      return null;
    },
  };
}

/** The step from one whole document to another. */
const exchange = (key: string, from: object, to: object): Step => ({
  key,
  forth: [{ op: 'replace', path: [], value: to }],
  back: [{ op: 'replace', path: [], value: from }],
});

/**
 * The steps stay where they fit the new document: where the other side only changed values, undo takes back this page's
 * own and leaves the other's alone. Where it added, removed or moved entries, bringing together is a step like any other.
 */
function rebased<T extends object>(history: History, from: T, to: T, taken: readonly FieldChange[]): History {
  const onlyValues = taken.every(({ before, after }) => before !== undefined && after !== undefined);
  if (onlyValues && skeleton(from) === skeleton(to)) return settled(history);
  return settled(record(history, exchange('rebase', from, to)));
}

/** Which lists there are, how long, and in which order. */
const skeleton = (document: object): string =>
  JSON.stringify(document, (key, value: unknown) =>
    typeof value === 'object' || key === 'id' || key === 'name' || key === 'of' ? value : 0,
  );

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
