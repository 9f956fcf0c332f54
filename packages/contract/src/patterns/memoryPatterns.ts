import { type KeptPattern, outlineOfSegments } from '@panewright/design';
import { leastDeviation, measureShape, type ShapeMeasure } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { PatternStore, StoredPattern, StoreRefusal } from '../ports.ts';
import { patternWords } from './patternSearch.ts';

interface Kept extends StoredPattern {
  readonly measure: ShapeMeasure;
}

/** Patterns kept in memory, with the same answers as on disk. */
export function memoryPatterns(now: () => string): PatternStore {
  const all = new Map<string, Kept>();
  const at = (id: string): Result<Kept, StoreRefusal> => {
    const kept = all.get(id);
    return kept ? ok(kept) : refuse({ code: 'PATTERN_NOT_FOUND', id });
  };
  const put = (kept: Kept) => {
    all.set(kept.pattern.id, kept);
    return ok(stored(kept));
  };
  return {
    async keep(pattern) {
      const before = all.get(pattern.id);
      if (!before)
        return put({
          ...{ pattern: copied(pattern), keptAt: now(), removed: false },
          measure: measureOf(pattern),
        });
      if (JSON.stringify(before.pattern) === JSON.stringify(pattern))
        return put({ ...before, removed: false });
      return refuse({ code: 'PATTERN_EXISTS', id: pattern.id, name: before.pattern.name });
    },
    async open(id) {
      const kept = at(id);
      return kept.ok ? ok(stored(kept.value)) : kept;
    },
    async find({ terms, removed, like, most }) {
      const fits = [...all.values()]
        .filter((one) => one.removed === removed)
        .filter(({ pattern }) => {
          const words = patternWords(pattern);
          return terms.every((term) => words.includes(term));
        })
        .map((kept) => ({ kept, atLeast: like ? leastDeviation(like.measure, kept.measure) : 0 }))
        .filter(({ atLeast }) => !like || atLeast <= like.within)
        .sort((a, b) => a.atLeast - b.atLeast || newestFirst(a.kept, b.kept));
      return {
        found: fits.slice(0, most).map(({ kept }) => stored(kept)),
        more: Math.max(0, fits.length - most),
      };
    },
    async change({ id, name, notes, removed }) {
      const kept = at(id);
      if (!kept.ok) return kept;
      const { pattern } = kept.value;
      return put({
        ...kept.value,
        pattern: { ...pattern, name: name ?? pattern.name, notes: notes ?? pattern.notes },
        removed: removed ?? kept.value.removed,
      });
    },
  };
}

/** How a kept pattern is measured, so that a shape like it is found; its outline was read before it was kept. */
export function measureOf({ id, segments }: KeptPattern): ShapeMeasure {
  const outline = outlineOfSegments(segments);
  if (!outline.ok) throw new Error(`kept pattern ${id} is no outline: ${outline.refusal.code}`);
  return measureShape(outline.value);
}

const newestFirst = (a: StoredPattern, b: StoredPattern): number =>
  a.keptAt === b.keptAt ? (a.pattern.id < b.pattern.id ? -1 : 1) : a.keptAt < b.keptAt ? 1 : -1;

const stored = ({ pattern, keptAt, removed }: Kept): StoredPattern => ({
  pattern: copied(pattern),
  ...{ keptAt, removed },
});

/** A copy, so that nobody changes what is kept. */
const copied = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
