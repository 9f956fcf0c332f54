// npm run docs: writes the pages that are made from other files.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { pathToFileURL } from 'node:url';
import { sourcesPage } from '../guards/sourcesPage.mjs';
import { nodeBuild } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { at } from './root.mjs';

await ensureInstalled();
const { build } = await import('vite');
const out = at('.cache', 'docs');
await build(nodeBuild({ pages: at('packages/contract/src/pages.ts') }, out));
const { madePages } = await import(pathToFileURL(`${out}/pages.mjs`).href);
const pages = { 'docs/sources.md': sourcesPage(), ...madePages() };
for (const [path, text] of Object.entries(pages)) {
  let before;
  try {
    before = readFileSync(at(path), 'utf8');
  } catch {}
  if (before === text) continue;
  mkdirSync(dirname(at(path)), { recursive: true });
  writeFileSync(at(path), text);
  console.log(`wrote ${path}`);
}
