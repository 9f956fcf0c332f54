import type { Find, Finding } from '../plan/finding.ts';

/**
 * Remembers the last answer of a pure piece of work for each object it was done for, findings included. The answer is
 * the same as without it; an edit then works out again only what it touches, since what it leaves alone keeps its
 * objects.
 *
 * @param same whether two contexts give the same answer for the same object
 */
export function remember<K extends object, C, V>(
  work: (key: K, context: C, find: Find) => V,
  same: (a: C, b: C) => boolean,
): (key: K, context: C, find: Find) => V {
  const known = new WeakMap<
    K,
    { readonly context: C; readonly value: V; readonly findings: readonly Finding[] }
  >();
  return (key, context, find) => {
    let entry = known.get(key);
    if (!entry || !same(entry.context, context)) {
      const findings: Finding[] = [];
      const value = work(key, context, (finding) => findings.push(finding));
      entry = { context, value, findings };
      known.set(key, entry);
    }
    for (const finding of entry.findings) find(finding);
    return entry.value;
  };
}

/** Contexts that are lists: equal where each entry is the same object or value. */
export const sameEntries = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((entry, index) => Object.is(entry, b[index]));
