import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Catalogue,
  defaultCatalogue,
  type Job,
  namedPhotos,
  ok,
  type Ports,
  type Revision,
  readCatalogue,
  readJob,
  refuse,
  type Stored,
  type StoreRefusal,
} from '@panewright/contract';
import Database from 'better-sqlite3';
import { type Compilable, Kysely, SqliteDialect } from 'kysely';
import { migrateTables } from './migrateTables.ts';
import { sqlitePatterns } from './sqlitePatterns.ts';
import { clearPhotos, namePhotos, sqlitePhotos } from './sqlitePhotos.ts';
import type { DocumentTable, Tables } from './tables.ts';

/** How long a save waits for another program's save, ms. */
const PATIENCE = 3000;
const SHOP = 'shop';

export interface SqliteStore extends Ports {
  close(): Promise<void>;
}

type Db = Kysely<Tables>;

interface Shelf {
  readonly file: Database.Database;
  readonly db: Db;
  readonly now: () => string;
}

type Kind = DocumentTable['kind'];
type Face = Pick<DocumentTable, 'name' | 'customer' | 'openings'>;

interface Change {
  readonly kind: Kind;
  readonly id: string;
  readonly basedOn: number | null;
  readonly note: string;
  readonly document: string;
  readonly removed: boolean;
  readonly face: Face;
  /** Done in the same transaction. */
  readonly also?: () => void;
}

/**
 * Jobs, the catalogue, kept patterns and photos in one SQLite file of the data folder. WAL with synchronous=FULL: a save
 * is answered after fsync, so neither the end of the process nor of the power takes it back.
 */
export function sqliteStore(folder: string, now: () => string): SqliteStore {
  mkdirSync(folder, { recursive: true });
  const file = new Database(join(folder, 'panewright.sqlite'), { timeout: PATIENCE });
  file.pragma('journal_mode = WAL');
  file.pragma('synchronous = FULL');
  migrateTables(file);
  clearPhotos(file, now());
  const db: Db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: file }) });
  const shelf = { file, db, now };
  return {
    jobs: jobsOf(shelf),
    catalogues: cataloguesOf(shelf),
    patterns: sqlitePatterns(db, now),
    photos: sqlitePhotos(db, now),
    close: () => db.destroy(),
  };
}

function jobsOf(shelf: Shelf): Ports['jobs'] {
  const { db } = shelf;
  const change = (job: Job, rest: Pick<Change, 'basedOn' | 'note' | 'removed'>) =>
    save(shelf, { kind: 'job', id: job.id, document: JSON.stringify(job), face: faceOf(job), ...rest });
  const open = async (id: string, revision?: number) => {
    const found = await find(db, 'job', id, revision);
    if (!found.ok) return found;
    const job = readJob(JSON.parse(found.value.document));
    if (!job.ok) throw new Error(`job ${id} does not read back: ${JSON.stringify(job.refusal)}`);
    return ok({ ...found.value, job: job.value });
  };
  return {
    list: async () => {
      const rows = await db
        .selectFrom('document')
        .selectAll()
        .where('kind', '=', 'job')
        .orderBy('saved_at', 'desc')
        .orderBy('id')
        .execute();
      return rows.map(({ id, name, customer, openings, newest, saved_at, removed }) => ({
        id,
        name,
        customer,
        openings,
        revision: newest,
        savedAt: saved_at,
        removed: removed !== 0,
      }));
    },
    open: async (id, revision) => {
      const found = await open(id, revision);
      if (!found.ok) return found;
      const { job, savedAt, removed } = found.value;
      return ok({ job, revision: found.value.revision, savedAt, removed });
    },
    save: ({ job, basedOn, note }) => change(job, { basedOn, note, removed: false }),
    revisions: async (id) => {
      const rows = await db
        .selectFrom('revision')
        .select(['revision', 'saved_at', 'based_on', 'note'])
        .where('kind', '=', 'job')
        .where('id', '=', id)
        .orderBy('revision', 'desc')
        .execute();
      if (rows.length === 0) return refuse({ code: 'JOB_NOT_FOUND', id });
      return ok(
        rows.map(({ revision, saved_at, based_on, note }) => ({
          revision,
          savedAt: saved_at,
          basedOn: based_on,
          note,
        })),
      );
    },
    // Revisions never change, so reading the old one before the save is as good as during it.
    restore: async ({ id, revision, basedOn }) => {
      const stale = await notNewest(db, 'job', id, basedOn);
      if (stale) return refuse(stale);
      const old = await open(id, revision);
      return old.ok ? change(old.value.job, { basedOn, note: `restored ${revision}`, removed: false }) : old;
    },
    remove: async ({ id, basedOn }) => {
      const stale = await notNewest(db, 'job', id, basedOn);
      if (stale) return refuse(stale);
      const last = await open(id, basedOn);
      return last.ok ? change(last.value.job, { basedOn, note: 'removed', removed: true }) : last;
    },
  };
}

const faceOf = (job: Job): Face => ({
  name: job.name,
  customer: job.customer.name,
  openings: job.openings.length,
});

function cataloguesOf(shelf: Shelf): Ports['catalogues'] {
  const { file, db, now } = shelf;
  return {
    open: async () => {
      const found = await find(db, 'catalogue', SHOP);
      if (!found.ok) return { catalogue: defaultCatalogue, revision: 0, savedAt: '' };
      const read = readCatalogue(JSON.parse(found.value.document));
      if (!read.ok) throw new Error(`the catalogue does not read back: ${JSON.stringify(read.refusal)}`);
      return { catalogue: read.value, revision: found.value.revision, savedAt: found.value.savedAt };
    },
    save: async ({ catalogue, basedOn }: { readonly catalogue: Catalogue; readonly basedOn: number }) => {
      const saved = await save(shelf, {
        kind: 'catalogue',
        id: SHOP,
        basedOn: basedOn === 0 ? null : basedOn,
        note: '',
        document: JSON.stringify(catalogue),
        removed: false,
        face: { name: catalogue.name, customer: '', openings: 0 },
        also: () => namePhotos(file, namedPhotos(catalogue), now()),
      });
      if (saved.ok || saved.refusal.code === 'REVISION_STALE') return saved;
      const newest = await newestOf(db, 'catalogue', SHOP);
      return refuse(stale(SHOP, basedOn, newest));
    },
  };
}

/**
 * One new revision: what is not based on the newest changes nothing. The transaction begins by taking the right to
 * write and runs without a pause, so another program waits for no more than one fsync.
 */
async function save({ file, db, now }: Shelf, change: Change): Stored<Revision> {
  const { kind, id, basedOn, note, document, removed, face, also } = change;
  const revision = (basedOn ?? 0) + 1;
  const savedAt = now();
  const row = { newest: revision, removed: removed ? 1 : 0, saved_at: savedAt, ...face };
  const place =
    basedOn === null
      ? db
          .insertInto('document')
          .values({ kind, id, ...row })
          .onConflict((conflict) => conflict.doNothing())
      : db
          .updateTable('document')
          .set(row)
          .where('kind', '=', kind)
          .where('id', '=', id)
          .where('newest', '=', basedOn);
  const keep = db
    .insertInto('revision')
    .values({ kind, id, revision, saved_at: savedAt, based_on: basedOn, note, document });
  const saved = file
    .transaction(() => {
      if (run(file, place) === 0 || run(file, keep) === 0) return false;
      also?.();
      return true;
    })
    .immediate();
  if (saved) return ok({ revision, savedAt, basedOn, note });
  const newest = await newestOf(db, kind, id);
  if (!newest) return refuse({ code: 'JOB_NOT_FOUND', id });
  if (basedOn === null) return refuse({ code: 'JOB_EXISTS', id, newest: newest.newest });
  return refuse(stale(id, basedOn, newest));
}

/** Runs a statement at once; gives the number of rows it changed. */
function run(file: Database.Database, statement: Compilable): number {
  const { sql, parameters } = statement.compile();
  return file.prepare(sql).run(...parameters).changes;
}

type Newest = { readonly newest: number; readonly saved_at: string; readonly removed: number };

const newestOf = (db: Db, kind: Kind, id: string): Promise<Newest | undefined> =>
  db
    .selectFrom('document')
    .select(['newest', 'saved_at', 'removed'])
    .where('kind', '=', kind)
    .where('id', '=', id)
    .executeTakeFirst();

const stale = (id: string, basedOn: number, newest: Newest | undefined): StoreRefusal => ({
  code: 'REVISION_STALE',
  id,
  basedOn,
  newest: newest?.newest ?? 0,
  savedAt: newest?.saved_at ?? '',
});

async function notNewest(db: Db, kind: Kind, id: string, basedOn: number): Promise<StoreRefusal | undefined> {
  const newest = await newestOf(db, kind, id);
  if (!newest) return { code: 'JOB_NOT_FOUND', id };
  return newest.newest === basedOn ? undefined : stale(id, basedOn, newest);
}

interface Found {
  readonly document: string;
  readonly revision: number;
  readonly savedAt: string;
  readonly removed: boolean;
}

async function find(db: Db, kind: Kind, id: string, revision?: number): Stored<Found> {
  const newest = await newestOf(db, kind, id);
  if (!newest) return refuse({ code: 'JOB_NOT_FOUND', id });
  const row = await db
    .selectFrom('revision')
    .selectAll()
    .where('kind', '=', kind)
    .where('id', '=', id)
    .where('revision', '=', revision ?? newest.newest)
    .executeTakeFirst();
  if (!row) return refuse({ code: 'REVISION_NOT_FOUND', id, revision: revision ?? 0, newest: newest.newest });
  return ok({
    document: row.document,
    revision: row.revision,
    savedAt: row.saved_at,
    removed: newest.removed !== 0,
  });
}
