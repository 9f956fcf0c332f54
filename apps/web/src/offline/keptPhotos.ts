import { read, readAll, write } from './database.ts';

const PREFIX = 'photo/';

/** Photos of the server's that this browser has seen. An id is never used for another photo, so a copy is never old. */
export async function photoCopy(id: string): Promise<Blob | undefined> {
  try {
    return (await read('copies', `${PREFIX}${id}`)) as Blob | undefined;
  } catch {
    return undefined;
  }
}

/** Where the browser keeps nothing, the photo is fetched again the next time. */
export const keepPhotoCopy = (id: string, photo: Blob): Promise<void> =>
  write((store) => store('copies').put(photo, `${PREFIX}${id}`)).catch(() => {});

/** Gives back the room of photos that no offcut has any more. */
export async function forgetPhotosBut(ids: readonly string[]): Promise<void> {
  try {
    const named = new Set(ids.map((id) => `${PREFIX}${id}`));
    const gone = (await readAll('copies', PREFIX)).filter(([key]) => !named.has(key));
    if (gone.length > 0) await write((store) => gone.forEach(([key]) => void store('copies').delete(key)));
  } catch {
    // A browser that keeps nothing has nothing to forget.
  }
}
