import { readFileSync } from 'node:fs';
import { at } from '../run/root.mjs';
import { filesBelow } from './sources.mjs';

/** Every entry of docs/sources/*.md: `## key`, then its text. */
export function sourceKeys() {
  return filesBelow(['docs/sources'], /\.md$/).flatMap(({ path, text }) =>
    text()
      .split(/^## /m)
      .slice(1)
      .map((block) => {
        const [key, ...lines] = block.split('\n');
        return { key: key.trim(), text: lines.join('\n').trim(), path };
      }),
  );
}

/** docs/sources.md: the fragments in one page, by key; what several of them say of one source stands together. */
export function sourcesPage() {
  const entries = new Map();
  for (const { key, text } of sourceKeys()) entries.set(key, new Set([...(entries.get(key) ?? []), text]));
  const body = [...entries]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, texts]) => `## ${key}\n\n${[...texts].join('\n\n')}\n`);
  return `# Sources\n\nMade from the files in docs/sources by \`npm run docs\`. A citation in the code names a key of this page.\n\n${body.join('\n')}`;
}

export function guardSourcesPage() {
  const problems = [];
  for (const { key, text, path } of sourceKeys()) {
    if (!/^[a-z0-9][a-z0-9-]*$/.test(key))
      problems.push(`${path}: “${key}” is not a key (small letters, digits and dashes)`);
    if (text === '') problems.push(`${path}: “${key}” says nothing`);
  }
  let page = '';
  try {
    page = readFileSync(at('docs/sources.md'), 'utf8');
  } catch {}
  if (page !== sourcesPage())
    problems.push('docs/sources.md is not what the fragments give: run npm run docs');
  return problems;
}
