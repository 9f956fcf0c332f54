import { documentText } from '../merge/documentText.ts';
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

/** A document is stored as its text: written for each key, and a text is written sooner than ten thousand small objects. */
interface StoredEdit {
  readonly document: unknown;
  readonly at: string;
}

interface StoredCopy {
  readonly document: unknown;
  readonly revision: number;
}

/** Earlier programs stored the document itself. */
const documentIn = <T>(stored: unknown): T => (typeof stored === 'string' ? JSON.parse(stored) : stored) as T;

const stored = <T>({ document, revision }: Copy<T>): StoredCopy => ({
  document: documentText(document as object),
  revision,
});

const copyIn = <T>(one: StoredCopy): Copy<T> => ({
  document: documentIn<T>(one.document),
  revision: one.revision,
});

const nameOf = (kind: Kind, id: string) => `${kind}/${id}`;
const separator = ' by ';

/** What the server has, as this page last heard it; undefined where it was never opened here. */
export async function copyOf<T>(kind: Kind, id: string): Promise<Copy<T> | undefined> {
  const found = (await read('copies', nameOf(kind, id))) as StoredCopy | undefined;
  return found && copyIn<T>(found);
}

export const keepCopy = <T>(kind: Kind, id: string, copy: Copy<T>): Promise<void> =>
  write((store) => store('copies').put(stored(copy), nameOf(kind, id)));

/** Everything the server was seen to have. */
export const allCopies = async <T>(kind: Kind): Promise<readonly Copy<T>[]> =>
  (await readAll('copies', `${kind}/`)).map(([, copy]) => copyIn<T>(copy as StoredCopy));

/** What an edit starts from: the revision it was made from, and fingerprints of what was sent since and not answered. */
export interface Origin<T> {
  readonly base: Copy<T> | null;
  readonly sent: readonly string[];
}

interface StoredOrigin {
  readonly base: StoredCopy | null;
  readonly sent: readonly string[];
}

/** Keeps an edit under a key of this page; resolves once it is on the disk. The origin only where it changed. */
export function keepEdit<T>(key: string, document: T, origin: Origin<T> | null): Promise<void> {
  const edit: StoredEdit = { document: documentText(document as object), at: new Date().toISOString() };
  const from = origin && { ...origin, base: origin.base && stored(origin.base) };
  return write((store) => {
    store('edits').put(edit, key);
    if (from) store('bases').put(from, key);
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
    .map(([key, edit]) => {
      const { document, at } = edit as StoredEdit;
      const { base, sent } = (originOf.get(key) ?? { base: null, sent: [] }) as StoredOrigin;
      return { document: documentIn<T>(document), at, key, base: base && copyIn<T>(base), sent };
    })
    .toSorted((a, b) => (a.at < b.at ? -1 : 1));
}
