import { ok, type PhotoStore, refuse } from '@panewright/contract';
import type { Database } from 'better-sqlite3';
import type { Kysely } from 'kysely';
import type { PhotoTable, Tables } from './tables.ts';

/** How long a photo is kept that no offcut names: until its catalogue is saved, or what was taken out is put back, ms. */
const UNNAMED = 24 * 3600 * 1000;

/** Photos in a table of their own: the catalogue keeps every revision, and a photo in it would be kept as often. */
export function sqlitePhotos(db: Kysely<Tables>, now: () => string): PhotoStore {
  const rowOf = (id: string) => db.selectFrom('photo').selectAll().where('id', '=', id).executeTakeFirst();
  return {
    keep: async (photo) => {
      const { id, mediaType: media_type, width, height } = photo;
      const bytes = Buffer.from(photo.bytes);
      await db
        .insertInto('photo')
        .values({ id, media_type, width, height, named: 0, since: now(), bytes })
        .onConflict((conflict) => conflict.doNothing())
        .execute();
      const row = await rowOf(id);
      return row && bytes.equals(row.bytes) ? ok(photoOf(row)) : refuse({ code: 'PHOTO_EXISTS', id });
    },
    open: async (id) => {
      const row = await rowOf(id);
      return row?.named ? ok(photoOf(row)) : refuse({ code: 'PHOTO_NOT_FOUND', id });
    },
  };
}

const photoOf = ({ id, media_type, width, height, bytes }: PhotoTable) => ({
  id,
  ...{ mediaType: media_type, width, height },
  bytes: new Uint8Array(bytes),
});

/** Marks which photos a catalogue names, as part of its save, and clears out what none has named for a day. */
export function namePhotos(file: Database, named: readonly string[], now: string): void {
  const is = 'id in (select value from json_each(?))';
  const ids = JSON.stringify(named);
  file.prepare(`update photo set named = 1, since = ? where named = 0 and ${is}`).run(now, ids);
  file.prepare(`update photo set named = 0, since = ? where named = 1 and not ${is}`).run(now, ids);
  clearPhotos(file, now);
}

export function clearPhotos(file: Database, now: string): void {
  const before = new Date(Date.parse(now) - UNNAMED).toISOString();
  file.prepare('delete from photo where named = 0 and since < ?').run(before);
}
