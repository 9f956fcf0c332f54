import { join } from 'node:path';
import { exampleJob, memoryStore } from '@panewright/contract';
import { type SqliteStore, sqliteStore } from '@panewright/server';
import { afterAll, expect, test } from 'vitest';
import { storeSuite } from './stores.suite.ts';
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
