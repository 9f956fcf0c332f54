import type { Issue, IssuePath } from './issue.ts';

/** Deeper or larger than any document a person could make here. */
export const MOST_DEPTH = 40;
export const MOST_VALUES = 500_000;

/** Keys that mean something to the language itself and could be lost or misread on the way. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * The first thing about a foreign value that no schema should have to meet: too deep, too large, a key of the
 * language's own, text with half a character. Undefined where there is none.
 */
export function scan(root: unknown): Issue | undefined {
  const stack: { readonly value: unknown; readonly path: IssuePath }[] = [{ value: root, path: [] }];
  let count = 0;
  for (let next = stack.pop(); next !== undefined; next = stack.pop()) {
    const { value, path } = next;
    if (++count > MOST_VALUES) return { kind: 'tooMany', path: [], most: MOST_VALUES };
    if (path.length > MOST_DEPTH) return { kind: 'tooDeep', path: path.slice(0, 3), most: MOST_DEPTH };
    if (typeof value === 'string' && /\p{Surrogate}/u.test(value)) return { kind: 'brokenText', path };
    if (Array.isArray(value)) {
      if (value.length > MOST_VALUES) return { kind: 'tooMany', path, most: MOST_VALUES };
      for (const [index, one] of value.entries()) stack.push({ value: one, path: [...path, index] });
    } else if (typeof value === 'object' && value !== null) {
      for (const key of Object.keys(value)) {
        if (FORBIDDEN.has(key)) return { kind: 'forbiddenKey', path, key };
        if (/\p{Surrogate}/u.test(key)) return { kind: 'brokenText', path };
        stack.push({ value: (value as Record<string, unknown>)[key], path: [...path, key] });
      }
    }
  }
  return undefined;
}
