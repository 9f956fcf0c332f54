// A public function that answers with a number says where the formula comes from, and every key it names exists.
import { filesBelow, isTest } from './sources.mjs';
import { sourceKeys } from './sourcesPage.mjs';

const NUMERIC = /^packages\/(quantity|geometry|survey|magnets|packing|costing|design|photo)\/src\//;
const RETURNS =
  /\b(number|Millimetre|SquareMillimetre|Radian|Tesla|Newton|Pascal|Gram|Minute|Celsius|MetrePerSecond|Money)\b/;
const EXPORT = /^export (?:async )?(?:function\*? (\w+)|const (\w+) = (?:async )?(?=(?:<[^>\n]*>)?\())/gm;

/** Text from `open` (an opening bracket) to just past the bracket that closes it. */
function pastBracket(text, open) {
  let depth = 0;
  for (let i = open; i < text.length; i++) {
    if ('([{'.includes(text[i])) depth++;
    else if (')]}'.includes(text[i]) && --depth === 0) return i + 1;
  }
  return text.length;
}

/** The written return type, or '' where there is none. */
function returnType(text, from) {
  const open = text.indexOf('(', from);
  const after = text.slice(pastBracket(text, open));
  const match = /^\s*:\s*/.exec(after);
  if (!match) return '';
  let type = after.slice(match[0].length);
  if (/^(asserts\s|\w+\s+is\s)/.test(type)) return '';
  // An object type is written between braces; a function body opens with a brace after a space.
  if (type.startsWith('{')) type = type.slice(0, pastBracket(type, 0));
  else type = type.slice(0, /\s=>|\s\{/.exec(type)?.index ?? 0);
  return type;
}

/** The doc comment that ends right above `position`. */
function docAbove(text, position) {
  const before = text.slice(0, position).trimEnd();
  return before.endsWith('*/') ? before.slice(before.lastIndexOf('/**')) : '';
}

export const keysIn = (text) =>
  [...text.matchAll(/sources\.md((?:#[a-z0-9][a-z0-9-]*(?:,\s*)?)+)/g)].flatMap((m) =>
    [...m[1].matchAll(/#([a-z0-9-]+)/g)].map((k) => k[1]),
  );

/** What a package's index.ts lets out: file -> names, or 'all'. */
function publicNames(indexText) {
  const names = new Map();
  for (const match of indexText.matchAll(/^export (?:\*|(?:type )?\{([^}]*)\}) from '\.\/([^']+)'/gm)) {
    const listed = match[1]?.split(',').map(
      (name) =>
        name
          .trim()
          .replace(/^type /, '')
          .split(' as ')[0],
    );
    names.set(match[2], listed ? [...(names.get(match[2]) ?? []), ...listed] : 'all');
  }
  return names;
}

const SOURCES = () => filesBelow(['packages', 'apps', 'tests'], /\.tsx?$/);

/** What is wrong with the citations of `files`: of all of them, where not told. */
export function guardCitations(files = SOURCES()) {
  const problems = [];
  const doors = new Map(
    SOURCES()
      .filter(({ path }) => path.endsWith('/src/index.ts'))
      .map(({ path, text }) => [path.replace('index.ts', ''), publicNames(text())]),
  );
  const isPublic = (path, name) => {
    const folder = path.slice(0, path.indexOf('/src/') + 5);
    const names = doors.get(folder)?.get(path.slice(folder.length));
    return names === 'all' || names?.includes(name);
  };
  const keys = new Set(sourceKeys().map(({ key }) => key));
  for (const { path, text: read } of files) {
    const text = read();
    for (const key of new Set(keysIn(text))) {
      if (!keys.has(key)) problems.push(`${path}: cites “${key}”, which no file under docs/sources has`);
    }
    if (!NUMERIC.test(path) || isTest(path)) continue;
    for (const match of text.matchAll(EXPORT)) {
      const name = match[1] ?? match[2];
      if (!isPublic(path, name) || !RETURNS.test(returnType(text, match.index))) continue;
      if (!/@source\s+\S/.test(docAbove(text, match.index))) {
        problems.push(
          `${path}: ${name} answers with a number and has no @source (a key of docs/sources, or “none: why”)`,
        );
      }
    }
  }
  return problems;
}
