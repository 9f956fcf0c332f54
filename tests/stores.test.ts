import { join } from 'node:path';
import { exampleJob, memoryStore } from '@panewright/contract';
import { type SqliteStore, sqliteStore } from '@panewright/server';
import { afterAll, expect, test } from 'vitest';
import { offcut, photoOf, storeSuite } from './stores.suite.ts';
import { temporaryFolder, ticking } from './temporary.ts';

const folder = temporaryFolder();
const open: SqliteStore[] = [];
let count = 0;
const sqlite = (name = `store-${count++}`) => {
  const store = sqliteStore(join(folder, name), ticking());
  open.push(store);
  return store;
};
afterAll(async () => {
  await Promise.all(open.map((store) => store.close()));
});

storeSuite('in memory', () => memoryStore(ticking()));
storeSuite('SQLite', () => sqlite());

test('SQLite: what was saved is there when the store is opened again', async () => {
  const first = sqlite('again');
  await first.jobs.save({ job: exampleJob, basedOn: null, note: '' });
  await first.close();
  expect(await sqlite('again').jobs.open('example')).toMatchObject({ ok: true, value: { job: exampleJob } });
});

test('SQLite: two programs on one data folder take turns, and neither loses a save', async () => {
  const stores = [sqlite('shared'), sqlite('shared')];
  await stores[0]!.jobs.save({ job: exampleJob, basedOn: null, note: '' });
  let taken = 0;
  const work = async (store: SqliteStore) => {
    for (let i = 0; i < 20; ) {
      const now = await store.jobs.open('example');
      if (!now.ok) throw new Error('lost');
      const saved = await store.jobs.save({ job: exampleJob, basedOn: now.value.revision, note: '' });
      if (!saved.ok) continue;
      taken++;
      i++;
    }
  };
  await Promise.all(stores.map(work));
  const revisions = await stores[1]!.jobs.revisions('example');
  expect(revisions.ok && revisions.value.length).toBe(1 + taken);
});

test('SQLite: a photo outlives a restart; a day after no offcut names it any more it is gone for good', async () => {
  let hours = 0;
  const at = () => new Date(Date.UTC(2026, 0, 1, hours)).toISOString();
  const again = () => {
    const store = sqliteStore(join(folder, 'photos'), at);
    open.push(store);
    return store;
  };
  const first = again();
  await first.photos.keep(photoOf(7));
  const { catalogue } = await first.catalogues.open();
  const save = (store: SqliteStore, offcuts: (typeof offcut)[], basedOn: number) =>
    store.catalogues.save({ catalogue: { ...catalogue, offcuts }, basedOn });
  await save(first, [offcut], 0);
  await first.close();
  hours = 100;
  const second = again();
  expect(await second.photos.open('photo1')).toMatchObject({ ok: true });
  await save(second, [], 1);
  hours = 123;
  await save(second, [offcut], 2);
  expect(await second.photos.open('photo1')).toMatchObject({ ok: true });
  await save(second, [], 3);
  await second.close();
  hours = 148;
  const third = again();
  await save(third, [offcut], 4);
  expect(await third.photos.open('photo1')).toMatchObject({ refusal: { code: 'PHOTO_NOT_FOUND' } });
  // Its id is free again, so its bytes are gone.
  expect(await third.photos.keep(photoOf(8))).toMatchObject({ ok: true });
});
