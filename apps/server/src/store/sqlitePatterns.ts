import {
  type KeptPattern,
  keptPatternSchema,
  leastDeviation,
  measureOf,
  ok,
  type PatternSearch,
  type PatternStore,
  patternWords,
  refuse,
  type ShapeMeasure,
  type StoredPattern,
} from '@panewright/contract';
import type { Kysely } from 'kysely';
import type { PatternTable, Tables } from './tables.ts';

type Db = Kysely<Tables>;

/** What the index on the length round the hull leaves out has to be told apart by `leastDeviation` too, mm. */
const SLACK = 0.1;

/** Kept patterns in a table of their own: a row's outline and measure never change. */
export function sqlitePatterns(db: Db, now: () => string): PatternStore {
  const rowOf = (id: string) => db.selectFrom('pattern').selectAll().where('id', '=', id).executeTakeFirst();
  const open = async (id: string) => {
    const row = await rowOf(id);
    return row ? ok(storedOf(row)) : refuse({ code: 'PATTERN_NOT_FOUND', id });
  };
  return {
    open,
    keep: async (pattern) => {
      const document = JSON.stringify(pattern);
      const measure = measureOf(pattern);
      const added = await db
        .insertInto('pattern')
        .values({
          ...{ id: pattern.id, kept_at: now(), removed: 0, words: patternWords(pattern) },
          ...{ around: measure.waves[0]!, measure: JSON.stringify(measure), document },
        })
        // The very same kept again: it only comes back where it was removed.
        .onConflict((conflict) =>
          conflict.column('id').doUpdateSet({ removed: 0 }).where('pattern.document', '=', document),
        )
        .executeTakeFirst();
      if (added.numInsertedOrUpdatedRows === 1n) return open(pattern.id);
      const before = storedOf((await rowOf(pattern.id))!);
      return refuse({ code: 'PATTERN_EXISTS', id: pattern.id, name: before.pattern.name });
    },
    find: async (search) => {
      const fits = search.like ? await likely(db, search, search.like) : await newest(db, search);
      const rows = await inOrder(db, fits.slice(0, search.most));
      return { found: rows.map(storedOf), more: Math.max(0, fits.length - search.most) };
    },
    change: async ({ id, name, notes, removed }) => {
      const before = await open(id);
      if (!before.ok) return before;
      if (removed !== undefined)
        await db
          .updateTable('pattern')
          .set({ removed: removed ? 1 : 0 })
          .where('id', '=', id)
          .execute();
      if (name !== undefined || notes !== undefined) {
        const { pattern } = before.value;
        const next: KeptPattern = { ...pattern, name: name ?? pattern.name, notes: notes ?? pattern.notes };
        await db
          .updateTable('pattern')
          .set({ words: patternWords(next), document: JSON.stringify(next) })
          .where('id', '=', id)
          .execute();
      }
      return open(id);
    },
  };
}

/** Ids of the patterns the words fit, newest first. */
async function newest(db: Db, search: PatternSearch): Promise<readonly string[]> {
  const rows = await worded(db, search).select('id').orderBy('kept_at', 'desc').orderBy('id').execute();
  return rows.map(({ id }) => id);
}

/** Ids of the patterns that may lie within what is asked for, the likeliest first. */
async function likely(
  db: Db,
  search: PatternSearch,
  { measure, within }: NonNullable<PatternSearch['like']>,
): Promise<readonly string[]> {
  const around = measure.waves[0]!;
  const rows = await worded(db, search)
    .select(['id', 'measure', 'kept_at'])
    .where('around', '>=', around - within - SLACK)
    .where('around', '<=', around + within + SLACK)
    .orderBy('kept_at', 'desc')
    .orderBy('id')
    .execute();
  return rows
    .map(({ id, measure: text }) => ({
      id,
      atLeast: leastDeviation(measure, JSON.parse(text) as ShapeMeasure),
    }))
    .filter(({ atLeast }) => atLeast <= within)
    .sort((a, b) => a.atLeast - b.atLeast)
    .map(({ id }) => id);
}

function worded(db: Db, { terms, removed }: PatternSearch) {
  let query = db.selectFrom('pattern').where('removed', '=', removed ? 1 : 0);
  for (const term of terms)
    query = query.where((where) => where(where.fn<number>('instr', ['words', where.val(term)]), '>', 0));
  return query;
}

async function inOrder(db: Db, ids: readonly string[]): Promise<readonly PatternTable[]> {
  if (ids.length === 0) return [];
  const rows = await db.selectFrom('pattern').selectAll().where('id', 'in', ids).execute();
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}

function storedOf({ id, document, kept_at, removed }: PatternTable): StoredPattern {
  const read = keptPatternSchema.safeParse(JSON.parse(document));
  if (!read.success) throw new Error(`kept pattern ${id} does not read back: ${read.error.message}`);
  return { pattern: read.data, keptAt: kept_at, removed: removed !== 0 };
}
