// What the repository does not say: paths of one machine, addresses of package registries, leftovers.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { at, root } from '../run/root.mjs';

const REFUSED = [
  [/(^|[\s"'`(=])\/(work|root|home|Users|private|tmp\/pw)\/[\w.-]/m, 'a path of one machine'],
  [/\.\.\/shared\b/, 'a path outside of the clone'],
  [/\bregistry\.[a-z-]+\.(org|com|io|dev)\b/i, 'the address of a package registry'],
  [/\b(TODO|FIXME|XXX|HACK)\b/, 'a leftover mark'],
  [/\blorem ipsum\b/i, 'filler text'],
];
/** This file spells out what it looks for. */
const EXEMPT = new Set(['tools/guards/words.mjs']);
const BINARY = /\.(png|jpe?g|pdf|ttf|woff2?|wasm|ico|gz|zip)$/;

/** What is wrong with the words of one file. */
export function wordProblems(path, text) {
  const problems = [];
  for (const [pattern, what] of REFUSED) {
    const match = pattern.exec(text);
    if (!match) continue;
    const line = text.slice(0, match.index).split('\n').length;
    problems.push(`${path}:${line}: “${match[0].trim()}” is ${what}`);
  }
  if (/(^|\/)utils?\.(ts|tsx|mjs)$/.test(path)) problems.push(`${path}: a file is named for its main export`);
  return problems;
}

export function guardWords() {
  const list = ['ls-files', '-z', '--cached', '--others', '--exclude-standard'];
  const paths = execFileSync('git', list, { cwd: root, maxBuffer: 1e8 }).toString().split('\0');
  return paths.flatMap((path) => {
    if (path === '' || BINARY.test(path) || EXEMPT.has(path)) return [];
    try {
      return wordProblems(path, readFileSync(at(path), 'utf8'));
    } catch {
      return []; // listed, but taken away
    }
  });
}
