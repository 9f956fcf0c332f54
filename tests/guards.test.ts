import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

type Problems = readonly string[];
type File = { readonly path: string; readonly text: () => string };
type Guard = {
  readonly guardImports: (files: readonly File[]) => Problems;
  readonly guardCitations: (files: readonly File[]) => Problems;
  readonly wordProblems: (path: string, text: string) => Problems;
  readonly pageWordProblems: (path: string, text: string) => Problems;
  readonly sideProblems: (path: string, text: string) => Problems;
};

/** The guards are plain Node: they run before anything is installed. */
const guard = async (file: string): Promise<Guard> =>
  import(/* @vite-ignore */ `${root}tools/guards/${file}.mjs`);
const { guardImports } = await guard('imports');
const { guardCitations } = await guard('citations');
const { wordProblems } = await guard('words');
const { pageWordProblems } = await guard('pageWords');
const { sideProblems } = await guard('sides');

/** Apart, so that the guards do not find what this file only speaks of. */
const FROM = 'from';
const PATH = 'packages/quantity/src/formatLength.ts';
const file = (text: string): readonly File[] => [{ path: PATH, text: () => text }];

test.each([
  [`import { z } ${FROM} 'zod';`, 'is not declared'],
  ["import type { Outline } from '@panewright/geometry';", 'is not declared'],
  ["import { x } from '@panewright/quantity/src/result.ts';", 'is not declared'],
  ["export { readFile } from 'node:fs';", 'is for apps and tests alone'],
  ["const a = await import('node:os');", 'is for apps and tests alone'],
  ["import { ok } from './result';", 'without its extension'],
  ["import { area } from '../../geometry/src/area.ts';", 'reaches into another folder'],
])('%s in the package of quantities is found: it %s', (line, why) => {
  const found = guardImports(file(`${line}\n`));
  expect(found).toHaveLength(1);
  expect(found[0]).toContain(why);
});

test('an import that is allowed, or only spoken of, is let pass', () => {
  const text = `// import { z } ${FROM} 'zod';\n/* import 'node:fs' */\nimport { ok } from './result.ts';\n`;
  expect(guardImports(file(text))).toEqual([]);
});

test('a citation of a source that is not listed is found', () => {
  const text = '/** @source sources.md' + '#no-such-source-2026, #nist-sp811 */\nexport const half = 0.5;\n';
  expect(guardCitations(file(text))).toEqual([
    `${PATH}: cites “no-such-source-2026”, which no file under docs/sources has`,
  ]);
});

test.each([
  ['export function size(): Millimetre {', true],
  ['export function size({ a, b }: { a: number; b: () => number }): Result<Newton, X> {', true],
  ['export const size = (a: number): number => a;', true],
  ['export function size(a: number): string {', false],
  ['export function isLong(a: number): a is Millimetre {', false],
  ['function size(): Millimetre {', false],
])('%s asks for a source: %s', (line, asks) => {
  expect(guardCitations(file(`${line}\n`))).toHaveLength(asks ? 1 : 0);
  expect(guardCitations(file(`/** @source none: it is stated. */\n${line}\n`))).toEqual([]);
});

test('a path of one machine and a leftover mark are found, with their line', () => {
  expect(wordProblems('a.ts', `\nconst data = '/${'home'}/me/data';\n`)).toEqual([
    expect.stringMatching(/^a\.ts:2: .* is a path of one machine$/),
  ]);
  expect(wordProblems('a.ts', `// ${'TO'}${'DO'}: later\n`)).toHaveLength(1);
  expect(wordProblems('packages/x/src/utils.ts', '')).toHaveLength(1);
  expect(wordProblems('packages/x/src/width.ts', 'export const home = 1;')).toEqual([]);
});

test.each([
  'return <p>Add an opening</p>;',
  'return (\n  <button\n    type="button"\n  >\n    Add\n  </button>\n);',
  'return <p>{count} of {all}</p>;',
  '<input aria-label="Width" />',
  '<img alt="The panel" src={url} />',
  "<p>{none ? 'Nothing yet' : null}</p>",
])('a word spelt out in a component is found: %s', (text) => {
  expect(pageWordProblems('a.tsx', text)).toHaveLength(1);
});

test('what is no word of the page is let pass', () => {
  const text = `// <p>Add</p>
const one: Readonly<Record<string, number>> = a < b && c > d ? {} : {};
if (event.key === 'ArrowLeft') { go(); } else { stay(); }
return <p className="about empty" title={w.add}>{w.none} × {\`\${id}/openings\`} °</p>;`;
  expect(pageWordProblems('a.tsx', text)).toEqual([]);
});

test.each([
  ['.a {\n  margin-left: 1rem;\n}', 1],
  ['.a {\n  left: 0;\n}', 1],
  ['.a {\n  text-align: right;\n}', 1],
  ['.a {\n  padding: 0 1rem 0 0;\n}', 1],
  ['.a {\n  margin-inline: 1rem auto;\n  inset-inline-start: 0;\n  padding: 0 1rem 2rem;\n}', 0],
  ['.reading-place {\n  left: var(--x);\n}', 0],
  ['/* left: 0 */ .left-over { margin: 0; }', 0],
])('%j has %d sides', (text, count) => {
  expect(sideProblems('a.css', text)).toHaveLength(count);
});
