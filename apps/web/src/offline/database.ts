/** The browser's own store of this program: copies of what the server has, and edits it does not have yet. */
const NAME = 'panewright';
const STORES = ['copies', 'edits', 'bases'] as const;
export type StoreName = (typeof STORES)[number];

let opening: Promise<IDBDatabase> | null = null;

/** Rejects where the browser keeps nothing (a private window, a full disk). */
function database(): Promise<IDBDatabase> {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      for (const store of STORES) request.result.createObjectStore(store);
    };
    request.onsuccess = () => {
      // A later program may need the store for itself.
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('the store in the browser is held by another page'));
  });
  opening.catch(() => {
    opening = null;
  });
  return opening;
}

/** One transaction: resolves once all it wrote is on the disk. */
export async function write(put: (store: (name: StoreName) => IDBObjectStore) => void): Promise<void> {
  const db = await database();
  await new Promise<void>((resolve, reject) => {
    const transaction = db.transaction(STORES, 'readwrite', { durability: 'strict' });
    transaction.oncomplete = () => resolve();
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error ?? new Error('the browser took the change back'));
    put((name) => transaction.objectStore(name));
  });
}

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

export async function read(store: StoreName, key: string): Promise<unknown> {
  const db = await database();
  return answerOf(db.transaction(store).objectStore(store).get(key));
}

/** Everything whose key begins so, with its key. */
export async function readAll(
  store: StoreName,
  prefix: string,
): Promise<readonly (readonly [string, unknown])[]> {
  const db = await database();
  const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`);
  const objects = db.transaction(store).objectStore(store);
  const [keys, values] = await Promise.all([
    answerOf(objects.getAllKeys(range)),
    answerOf(objects.getAll(range) as IDBRequest<unknown[]>),
  ]);
  return keys.map((key, index) => [String(key), values[index]] as const);
}
