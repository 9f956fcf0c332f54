import { expect, test } from 'vitest';
import { english } from './english/english.ts';
import { german } from './german/german.ts';
import { spanish } from './spanish/spanish.ts';

/** Every word by its path; one with numbers or names in it is asked with ‹1›, ‹2› … for them. */
function said(value: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') return [[path, asked(value as never)]];
  return Object.entries(value as object).flatMap(([key, one]) => said(one, `${path}.${key}`));
}
function asked(word: (...given: unknown[]) => unknown): string {
  const given = Array.from({ length: word.length }, (_, k) => `‹${k + 1}›`);
  try {
    return String(word(...given));
  } catch {
    return ''; // A word that takes more than numbers and names.
  }
}
const used = (text: string) => [...new Set(text.match(/‹\d›/g))].sort();

// Tables with open keys cannot be checked by the compiler; sentences that leave a number out cannot either.
test.each([
  ['German', german],
  ['Spanish', spanish],
] as const)('the page says all in %s, with the same numbers', (_, words) => {
  const own = new Map(said(words));
  const before = new Map(said(english));
  expect([...own.keys()].sort()).toEqual([...before.keys()].sort());
  for (const [path, text] of before) {
    expect(used(own.get(path)!), path).toEqual(used(text));
    expect(own.get(path)! === '', path).toBe(text === '');
    // Ends as the English does: a sentence with its full stop, a label without.
    if (text.includes(' ')) expect(/[.?]$/.test(own.get(path)!), path).toBe(/[.?]$/.test(text));
    expect(own.get(path), path).not.toMatch(/\b(the|and|of|is|with|from|to)\b/i);
  }
});
