import { type Catalogue, defaultCatalogue, type Job } from '@panewright/design';
import { ok, type Result, refuse } from '@panewright/quantity';
import { memoryPatterns } from './patterns/memoryPatterns.ts';
import { memoryPhotos } from './photos/memoryPhotos.ts';
import { namedPhotos } from './photos/namedPhotos.ts';
import type { CatalogueStore, JobStore, Ports, Revision, StoreRefusal } from './ports.ts';

interface Kept<D> extends Revision {
  readonly document: D;
  readonly removed: boolean;
}

/** What both stores are made of: for each id all its revisions, oldest first. */
class Shelf<D> {
  readonly kept = new Map<string, Kept<D>[]>();
  readonly now: () => string;

  constructor(now: () => string) {
    this.now = now;
  }

  add(id: string, basedOn: number | null, note: string, document: D, removed = false): Revision {
    const all = this.kept.get(id) ?? [];
    const revision = { revision: all.length + 1, savedAt: this.now(), basedOn, note };
    this.kept.set(id, [...all, { ...revision, document: structured(document), removed }]);
    return revision;
  }

  newest(id: string): Kept<D> | undefined {
    return this.kept.get(id)?.at(-1);
  }
}

/** A copy, so that nobody changes what is kept. */
const structured = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

const listed = ({ revision, savedAt, basedOn, note }: Revision): Revision => ({
  revision,
  savedAt,
  basedOn,
  note,
});

/** Jobs, the catalogue, patterns and photos kept in memory, with the same answers as a store on disk: for tests and for trying things. */
export function memoryStore(now: () => string): Ports {
  const { photos, name } = memoryPhotos();
  return {
    jobs: memoryJobs(new Shelf<Job>(now)),
    catalogues: memoryCatalogues(new Shelf<Catalogue>(now), name),
    patterns: memoryPatterns(now),
    photos,
  };
}

function memoryJobs(shelf: Shelf<Job>): JobStore {
  const check = (id: string, basedOn: number): Result<Kept<Job>, StoreRefusal> => {
    const newest = shelf.newest(id);
    if (!newest) return refuse({ code: 'JOB_NOT_FOUND', id });
    if (newest.revision === basedOn) return ok(newest);
    return refuse({ code: 'REVISION_STALE', id, basedOn, newest: newest.revision, savedAt: newest.savedAt });
  };
  const at = (id: string, revision: number | undefined): Result<Kept<Job>, StoreRefusal> => {
    const all = shelf.kept.get(id);
    if (!all) return refuse({ code: 'JOB_NOT_FOUND', id });
    const found = revision === undefined ? all.at(-1) : all[revision - 1];
    return found
      ? ok(found)
      : refuse({ code: 'REVISION_NOT_FOUND', id, revision: revision!, newest: all.length });
  };
  return {
    async list() {
      const newest = [...shelf.kept.values()].map((all) => all.at(-1)!);
      newest.sort((a, b) =>
        a.savedAt === b.savedAt ? (a.document.id < b.document.id ? -1 : 1) : a.savedAt < b.savedAt ? 1 : -1,
      );
      return newest.map(({ document, revision, savedAt, removed }) => ({
        id: document.id,
        name: document.name,
        customer: document.customer.name,
        openings: document.openings.length,
        revision,
        savedAt,
        removed,
      }));
    },
    async open(id, revision) {
      const found = at(id, revision);
      if (!found.ok) return found;
      const { document, savedAt } = found.value;
      return ok({
        job: structured(document),
        revision: found.value.revision,
        savedAt,
        removed: shelf.newest(id)!.removed,
      });
    },
    async save({ job, basedOn, note }) {
      const newest = shelf.newest(job.id);
      if (basedOn === null) {
        if (newest) return refuse({ code: 'JOB_EXISTS', id: job.id, newest: newest.revision });
        return ok(shelf.add(job.id, null, note, job));
      }
      const based = check(job.id, basedOn);
      return based.ok ? ok(shelf.add(job.id, basedOn, note, job)) : based;
    },
    async revisions(id) {
      const all = shelf.kept.get(id);
      return all ? ok(all.map(listed).reverse()) : refuse({ code: 'JOB_NOT_FOUND', id });
    },
    async restore({ id, revision, basedOn }) {
      const based = check(id, basedOn);
      if (!based.ok) return based;
      const old = at(id, revision);
      return old.ok ? ok(shelf.add(id, basedOn, `restored ${revision}`, old.value.document)) : old;
    },
    async remove({ id, basedOn }) {
      const based = check(id, basedOn);
      return based.ok ? ok(shelf.add(id, basedOn, 'removed', based.value.document, true)) : based;
    },
  };
}

function memoryCatalogues(
  shelf: Shelf<Catalogue>,
  name: (photos: readonly string[]) => void,
): CatalogueStore {
  const SHOP = 'shop';
  return {
    async open() {
      const newest = shelf.newest(SHOP);
      if (!newest) return { catalogue: structured(defaultCatalogue), revision: 0, savedAt: '' };
      return { catalogue: structured(newest.document), revision: newest.revision, savedAt: newest.savedAt };
    },
    async save({ catalogue, basedOn }) {
      const newest = shelf.newest(SHOP);
      if ((newest?.revision ?? 0) !== basedOn)
        return refuse({
          code: 'REVISION_STALE',
          id: SHOP,
          basedOn,
          newest: newest?.revision ?? 0,
          savedAt: newest?.savedAt ?? '',
        });
      name(namedPhotos(catalogue));
      return ok(shelf.add(SHOP, basedOn === 0 ? null : basedOn, '', catalogue));
    },
  };
}
