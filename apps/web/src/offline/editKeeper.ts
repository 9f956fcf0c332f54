import { dropEdits, type Kind, keepEdit, type Origin, ownKey } from './keptDocuments.ts';

/** Keeps the newest state of one document in the browser, one write at a time. */
export interface EditKeeper<T> {
  readonly key: string;
  /** Resolves once this state, or a newer one, is on the disk; rejects where the browser keeps nothing. */
  readonly keep: (document: T, origin: Origin<T>) => Promise<void>;
  /** Forgets what was kept, once the server has acknowledged it. */
  readonly drop: () => Promise<void>;
}

export function editKeeper<T>(kind: Kind, id: string): EditKeeper<T> {
  const key = ownKey(kind, id);
  let last: Promise<void> = Promise.resolve();
  let waiting: { document: T; origin: Origin<T>; done: Promise<void> } | null = null;
  let stored: Origin<T> | null = null;

  const inTurn = (step: () => Promise<void>): Promise<void> => {
    const done = last.catch(() => {}).then(step);
    last = done;
    return done;
  };
  return {
    key,
    keep: (document, origin) => {
      if (waiting) {
        Object.assign(waiting, { document, origin });
        return waiting.done;
      }
      const next = { document, origin, done: Promise.resolve() };
      waiting = next;
      next.done = inTurn(async () => {
        waiting = null;
        const same = stored?.base === next.origin.base && stored.sent === next.origin.sent;
        await keepEdit(key, next.document, same ? null : next.origin);
        stored = next.origin;
      });
      return next.done;
    },
    drop: () =>
      inTurn(async () => {
        stored = null;
        await dropEdits([key]);
      }),
  };
}

/** Edits of pages that are gone are dropped once this page has kept them as its own. */
export function droppingAdopted<T>(keeper: EditKeeper<T>, adopted: readonly string[]): EditKeeper<T> {
  let left = adopted.filter((key) => key !== keeper.key);
  const settle = async () => {
    if (left.length === 0) return;
    const keys = left;
    left = [];
    await dropEdits(keys);
  };
  return {
    ...keeper,
    keep: (document, origin) => keeper.keep(document, origin).then(settle),
    drop: () => keeper.drop().then(settle),
  };
}
