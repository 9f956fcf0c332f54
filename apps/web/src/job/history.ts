import type { Patch } from 'immer';

/** One step a person would undo: the patches forth and back, and the key of the entry that made it. */
export interface Step {
  readonly key: string;
  readonly forth: readonly Patch[];
  readonly back: readonly Patch[];
}

export interface History {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
  /** Key of the entry still being typed; further changes by it join the last step. */
  readonly open: string | null;
}

export const emptyHistory: History = { done: [], undone: [], open: null };

/** Adds a change. Typing on in one entry makes one step, so that one undo takes back one entry. */
export function record(history: History, step: Step): History {
  const last = history.done.at(-1);
  if (last && history.open === step.key && last.key === step.key) {
    const joined = {
      key: step.key,
      forth: [...last.forth, ...step.forth],
      back: [...step.back, ...last.back],
    };
    return { done: [...history.done.slice(0, -1), joined], undone: [], open: step.key };
  }
  return { done: [...history.done, step], undone: [], open: step.key };
}

/** The entry is finished: the next change is a step of its own. */
export const settled = (history: History): History =>
  history.open === null ? history : { ...history, open: null };

/** The step to take back, and the history after it. */
export function undone(history: History): { readonly step: Step; readonly history: History } | null {
  const step = history.done.at(-1);
  if (!step) return null;
  return {
    step,
    history: { done: history.done.slice(0, -1), undone: [...history.undone, step], open: null },
  };
}

/** The step to do again, and the history after it. */
export function redone(history: History): { readonly step: Step; readonly history: History } | null {
  const step = history.undone.at(-1);
  if (!step) return null;
  return {
    step,
    history: { done: [...history.done, step], undone: history.undone.slice(0, -1), open: null },
  };
}
