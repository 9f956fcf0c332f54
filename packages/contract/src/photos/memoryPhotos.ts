import { ok, refuse } from '@panewright/quantity';
import type { KeptPhoto, PhotoStore } from '../ports.ts';

interface MemoryPhotos {
  readonly photos: PhotoStore;
  /** Told which photos the newest catalogue names. */
  readonly name: (photos: readonly string[]) => void;
}

/** Photos kept in memory, with the same answers as on disk; none is ever cleared out. */
export function memoryPhotos(): MemoryPhotos {
  const all = new Map<string, KeptPhoto>();
  let named: readonly string[] = [];
  return {
    photos: {
      async keep(photo) {
        const before = all.get(photo.id);
        if (before && !samePhoto(before, photo)) return refuse({ code: 'PHOTO_EXISTS', id: photo.id });
        all.set(photo.id, photo);
        return ok(photo);
      },
      async open(id) {
        const photo = named.includes(id) ? all.get(id) : undefined;
        return photo ? ok(photo) : refuse({ code: 'PHOTO_NOT_FOUND', id });
      },
    },
    name: (photos) => {
      named = photos;
    },
  };
}

const samePhoto = (a: KeptPhoto, b: KeptPhoto): boolean =>
  a.bytes.length === b.bytes.length && a.bytes.every((byte, k) => byte === b.bytes[k]);
