import {
  type Catalogue,
  exampleJob,
  type Job,
  type KeptPhoto,
  type Offcut,
  type Ports,
} from '@panewright/contract';
import { expect, test } from 'vitest';

const named = (name: string): Job => ({ ...exampleJob, name });

/** Of a store's own bytes, which it does not look into. */
export const photoOf = (byte: number): KeptPhoto => ({
  ...{ id: 'photo1', mediaType: 'image/png', width: 1, height: 1 },
  bytes: Uint8Array.of(1, 2, byte),
});

/** With that photo. */
export const offcut: Offcut = {
  ...{ id: 'rest', name: 'Rest', fabric: 'mesh-black', along: 820, across: 610, place: '', worth: 1 },
  ...{ notes: '', from: { job: 'van', jobName: 'Van', lay: 'L1', date: '2026-11-20' } },
  photo: { id: 'photo1', width: 1, height: 1 },
};

/** What every store must do, whatever it keeps jobs in. `make` gives an empty one. */
export function storeSuite(kind: string, make: () => Ports): void {
  const saved = async (ports: Ports, job: Job, basedOn: number | null) => {
    const result = await ports.jobs.save({ job, basedOn, note: `as ${job.name}` });
    if (!result.ok) throw new Error(result.refusal.code);
    return result.value;
  };

  test(`${kind}: a job comes back as it was saved, revision by revision`, async () => {
    const ports = make();
    expect(await saved(ports, named('first'), null)).toMatchObject({
      revision: 1,
      basedOn: null,
      note: 'as first',
    });
    expect(await saved(ports, named('second'), 1)).toMatchObject({ revision: 2, basedOn: 1 });
    expect(await ports.jobs.open('example')).toMatchObject({
      ok: true,
      value: { revision: 2, job: named('second') },
    });
    expect(await ports.jobs.open('example', 1)).toMatchObject({
      ok: true,
      value: { revision: 1, job: named('first') },
    });
    const revisions = await ports.jobs.revisions('example');
    expect(revisions.ok && revisions.value.map(({ revision, note }) => [revision, note])).toEqual([
      [2, 'as second'],
      [1, 'as first'],
    ]);
  });

  test(`${kind}: a save made from an old revision is refused and changes nothing`, async () => {
    const ports = make();
    await saved(ports, named('first'), null);
    await saved(ports, named('here'), 1);
    const late = await ports.jobs.save({ job: named('there'), basedOn: 1, note: '' });
    expect(late).toMatchObject({
      ok: false,
      refusal: { code: 'REVISION_STALE', id: 'example', basedOn: 1, newest: 2 },
    });
    expect(await ports.jobs.open('example')).toMatchObject({
      ok: true,
      value: { revision: 2, job: { name: 'here' } },
    });
  });

  test(`${kind}: a new job does not hide one of the same id`, async () => {
    const ports = make();
    await saved(ports, named('first'), null);
    const again = await ports.jobs.save({ job: named('again'), basedOn: null, note: '' });
    expect(again).toMatchObject({ ok: false, refusal: { code: 'JOB_EXISTS', newest: 1 } });
  });

  test(`${kind}: of two saves from one revision at the same time one is taken`, async () => {
    const ports = make();
    await saved(ports, named('first'), null);
    const both = await Promise.all(
      ['a', 'b', 'c', 'd'].map((name) => ports.jobs.save({ job: named(name), basedOn: 1, note: '' })),
    );
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.flatMap((result) => (result.ok ? [] : [result.refusal.code]))).toEqual(
      Array(3).fill('REVISION_STALE'),
    );
  });

  test(`${kind}: an old revision is restored as a new one, and nothing is lost`, async () => {
    const ports = make();
    await saved(ports, named('first'), null);
    await saved(ports, named('second'), 1);
    expect(await ports.jobs.restore({ id: 'example', revision: 1, basedOn: 2 })).toMatchObject({
      ok: true,
      value: { revision: 3, basedOn: 2, note: 'restored 1' },
    });
    expect(await ports.jobs.open('example')).toMatchObject({ ok: true, value: { job: { name: 'first' } } });
    expect(await ports.jobs.open('example', 2)).toMatchObject({
      ok: true,
      value: { job: { name: 'second' } },
    });
  });

  test(`${kind}: a removed job keeps its revisions and can be brought back`, async () => {
    const ports = make();
    await saved(ports, named('first'), null);
    expect(await ports.jobs.remove({ id: 'example', basedOn: 1 })).toMatchObject({
      ok: true,
      value: { revision: 2 },
    });
    expect(await ports.jobs.list()).toMatchObject([{ id: 'example', removed: true, revision: 2 }]);
    expect(await ports.jobs.open('example')).toMatchObject({ ok: true, value: { removed: true } });
    expect(await ports.jobs.restore({ id: 'example', revision: 1, basedOn: 2 })).toMatchObject({ ok: true });
    expect(await ports.jobs.list()).toMatchObject([{ id: 'example', removed: false, revision: 3 }]);
  });

  test(`${kind}: what is not there is said`, async () => {
    const ports = make();
    const missing = { ok: false, refusal: { code: 'JOB_NOT_FOUND', id: 'none' } };
    expect(await ports.jobs.open('none')).toMatchObject(missing);
    expect(await ports.jobs.revisions('none')).toMatchObject(missing);
    expect(await ports.jobs.save({ job: { ...exampleJob, id: 'none' }, basedOn: 1, note: '' })).toMatchObject(
      missing,
    );
    expect(await ports.jobs.remove({ id: 'none', basedOn: 1 })).toMatchObject(missing);
    expect(await ports.jobs.restore({ id: 'none', revision: 1, basedOn: 1 })).toMatchObject(missing);
    await saved(ports, named('first'), null);
    const late = { ok: false, refusal: { code: 'REVISION_NOT_FOUND', revision: 9, newest: 1 } };
    expect(await ports.jobs.open('example', 9)).toMatchObject(late);
    expect(await ports.jobs.restore({ id: 'example', revision: 9, basedOn: 1 })).toMatchObject(late);
  });

  test(`${kind}: the list shows the last saved first, with what a maker looks for`, async () => {
    const ports = make();
    await saved(ports, named('one'), null);
    await saved(
      ports,
      { ...named('two'), id: 'other', customer: { name: 'R. Sample', address: '', contact: '' } },
      null,
    );
    await saved(ports, named('one again'), 1);
    expect(await ports.jobs.list()).toMatchObject([
      { id: 'example', name: 'one again', openings: 1, revision: 2, removed: false },
      { id: 'other', name: 'two', customer: 'R. Sample', revision: 1 },
    ]);
  });

  test(`${kind}: the catalogue begins as the invented one and is then the shop's own`, async () => {
    const ports = make();
    const first = await ports.catalogues.open();
    expect(first.revision).toBe(0);
    const own = { ...first.catalogue, name: 'Ours' };
    expect(await ports.catalogues.save({ catalogue: own, basedOn: 0 })).toMatchObject({
      ok: true,
      value: { revision: 1 },
    });
    expect(await ports.catalogues.open()).toMatchObject({ revision: 1, catalogue: { name: 'Ours' } });
    const late = await ports.catalogues.save({ catalogue: first.catalogue, basedOn: 0 });
    expect(late).toMatchObject({ ok: false, refusal: { code: 'REVISION_STALE', basedOn: 0, newest: 1 } });
    expect(await ports.catalogues.save({ catalogue: own, basedOn: 1 })).toMatchObject({
      ok: true,
      value: { revision: 2 },
    });
    const future = await ports.catalogues.save({ catalogue: own, basedOn: 7 });
    expect(future).toMatchObject({ ok: false, refusal: { code: 'REVISION_STALE', newest: 2 } });
  });

  test(`${kind}: a photo is answered while an offcut names it, comes back with it, and is not written over`, async () => {
    const ports = make();
    const photo = photoOf(7);
    expect(await ports.photos.keep(photo)).toMatchObject({ ok: true });
    expect(await ports.photos.keep(photo)).toMatchObject({ ok: true });
    expect(await ports.photos.keep(photoOf(8))).toMatchObject({ refusal: { code: 'PHOTO_EXISTS' } });
    const missing = { ok: false, refusal: { code: 'PHOTO_NOT_FOUND', id: 'photo1' } };
    expect(await ports.photos.open('photo1')).toMatchObject(missing);
    const { catalogue } = await ports.catalogues.open();
    const save = (offcuts: Catalogue['offcuts'], basedOn: number) =>
      ports.catalogues.save({ catalogue: { ...catalogue, offcuts }, basedOn });
    await save([offcut], 0);
    expect(await ports.photos.open('photo1')).toEqual({ ok: true, value: photo });
    await save([], 1);
    expect(await ports.photos.open('photo1')).toMatchObject(missing);
    await save([offcut], 2);
    expect(await ports.photos.open('photo1')).toEqual({ ok: true, value: photo });
    // A save that is refused changes nothing.
    await save([], 2);
    expect(await ports.photos.open('photo1')).toEqual({ ok: true, value: photo });
  });
}
