import type { LocalCopy } from './autosave.ts';

interface Kept<T> {
  readonly document: T;
  readonly basedOn: number;
}

const nameOf = (kind: string, id: string) => `panewright.unsaved.${kind}.${id}`;

/** The work the server has not acknowledged, kept in this browser so that a closed tab loses nothing. */
export function localCopy<T>(kind: string, id: string): LocalCopy<T> {
  const name = nameOf(kind, id);
  return {
    keep: (document, basedOn) => {
      try {
        localStorage.setItem(name, JSON.stringify({ document, basedOn }));
      } catch {
        // Storage full or closed to us: the server's copy is then the only one, and its state is on the page.
      }
    },
    drop: () => {
      try {
        localStorage.removeItem(name);
      } catch {
        // As above.
      }
    },
  };
}

/** What was kept and never acknowledged, if anything. */
export function readLocalCopy<T>(kind: string, id: string): Kept<T> | null {
  try {
    const text = localStorage.getItem(nameOf(kind, id));
    return text === null ? null : (JSON.parse(text) as Kept<T>);
  } catch {
    return null;
  }
}
