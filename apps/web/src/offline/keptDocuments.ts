import { read, readAll, write } from './database.ts';
import { otherPages, writer } from './writer.ts';

export type Kind = 'job' | 'catalogue';

/** A document as the server has it. Revision 0: the server does not have it yet. */
export interface Copy<T> {
  readonly document: T;
  readonly revision: number;
}

/** Work the server has not acknowledged, and the revision it was made from. */
export interface Edit<T> {
  readonly document: T;
  readonly base: Copy<T> | null;
  /** Fingerprints of what was sent to the server and not answered. */
  readonly sent: readonly string[];
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly key: string;
}

interface StoredEdit {
  readonly document: unknown;
  readonly at: string;
}

const nameOf = (kind: Kind, id: string) => `${kind}/${id}`;
const separator = ' by ';

/** What the server has, as this page last heard it; undefined where it was never opened here. */
export const copyOf = async <T>(kind: Kind, id: string): Promise<Copy<T> | undefined> =>
  (await read('copies', nameOf(kind, id))) as Copy<T> | undefined;

export const keepCopy = <T>(kind: Kind, id: string, copy: Copy<T>): Promise<void> =>
  write((store) => store('copies').put(copy, nameOf(kind, id)));

/** Everything the server was seen to have. */
export const allCopies = async <T>(kind: Kind): Promise<readonly Copy<T>[]> =>
  (await readAll('copies', `${kind}/`)).map(([, copy]) => copy as Copy<T>);

/** What an edit starts from: the revision it was made from, and fingerprints of what was sent since and not answered. */
export interface Origin<T> {
  readonly base: Copy<T> | null;
  readonly sent: readonly string[];
}

/** Keeps an edit under a key of this page; resolves once it is on the disk. The origin only where it changed. */
export function keepEdit<T>(key: string, document: T, origin: Origin<T> | null): Promise<void> {
  const stored: StoredEdit = { document, at: new Date().toISOString() };
  return write((store) => {
    store('edits').put(stored, key);
    if (origin) store('bases').put(origin, key);
  });
}

export const dropEdits = (keys: readonly string[]): Promise<void> =>
  write((store) => {
    for (const key of keys) {
      store('edits').delete(key);
      store('bases').delete(key);
    }
  });

/** The key under which this page keeps its edits of a document. */
export const ownKey = (kind: Kind, id: string): string => `${nameOf(kind, id)}${separator}${writer}`;

/** Edits no other open page is about to save: of pages that were closed, or died, and of this one. The oldest first. */
export async function leftBehind<T>(kind: Kind, id?: string): Promise<readonly Edit<T>[]> {
  const prefix = id === undefined ? `${kind}/` : `${nameOf(kind, id)}${separator}`;
  const [edits, origins, pages] = await Promise.all([
    readAll('edits', prefix),
    readAll('bases', prefix),
    otherPages(),
  ]);
  const originOf = new Map(origins);
  return edits
    .filter(([key]) => !pages.has(key.slice(key.lastIndexOf(separator) + separator.length)))
    .map(([key, stored]) => {
      const { document, at } = stored as StoredEdit;
      const { base, sent } = (originOf.get(key) ?? { base: null, sent: [] }) as Origin<T>;
      return { document: document as T, at, key, base, sent };
    })
    .toSorted((a, b) => (a.at < b.at ? -1 : 1));
}
