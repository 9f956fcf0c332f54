import type { Database } from 'better-sqlite3';

/** One step of the tables each, oldest first. A step once released is never changed. */
const STEPS: readonly string[] = [
  `create table document (
     kind text not null, id text not null, newest integer not null, removed integer not null, saved_at text not null,
     name text not null, customer text not null, openings integer not null,
     primary key (kind, id)) without rowid;
   create table revision (
     kind text not null, id text not null, revision integer not null, saved_at text not null, based_on integer,
     note text not null, document text not null,
     primary key (kind, id, revision));`,
  `create table pattern (
     id text not null primary key, kept_at text not null, removed integer not null, words text not null,
     around real not null, measure text not null, document text not null);
   create index pattern_kept on pattern (removed, kept_at);
   create index pattern_around on pattern (removed, around);`,
  `create table photo (
     id text not null primary key, media_type text not null, width integer not null, height integer not null,
     named integer not null, since text not null, bytes blob not null);`,
];

/** Brings the tables to the newest step, in one transaction: two servers starting at once do it once. */
export function migrateTables(db: Database): void {
  db.exec('begin immediate');
  try {
    const done = db.pragma('user_version', { simple: true }) as number;
    if (done > STEPS.length)
      throw new Error(
        `The data folder was written by a newer program (tables ${done}, known ${STEPS.length}).`,
      );
    for (const step of STEPS.slice(done)) db.exec(step);
    db.pragma(`user_version = ${STEPS.length}`);
    db.exec('commit');
  } catch (error) {
    db.exec('rollback');
    throw error;
  }
}
