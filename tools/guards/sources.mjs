import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { at, root } from '../run/root.mjs';

const SKIP = new Set(['node_modules', 'dist', '.git', '.cache', 'data', 'coverage']);

/** All files below the given folders, as `{ path, text() }` with the path relative to the clone. */
export function filesBelow(folders, matching) {
  const found = [];
  const visit = (folder) => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      if (SKIP.has(entry.name)) continue;
      const path = join(folder, entry.name);
      if (entry.isDirectory()) visit(path);
      else if (matching.test(entry.name)) {
        found.push({
          path: relative(root, path).replaceAll('\\', '/'),
          text: () => readFileSync(path, 'utf8'),
        });
      }
    }
  };
  for (const folder of folders) if (existsSync(at(folder))) visit(at(folder));
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Files that are not part of the product: they may use the root's development packages. */
export const isTest = (path) =>
  /\.(test|bench|suite|config)\.tsx?$/.test(path) ||
  /^(tests|bench)\//.test(path) ||
  /\/src\/testing\//.test(path);

/** The workspace a file belongs to: its folder, name and declared packages; undefined outside of one. */
export function workspaceOf(path) {
  const match = /^(packages|apps)\/([^/]+)\//.exec(path);
  if (!match) return undefined;
  const folder = `${match[1]}/${match[2]}`;
  const { name, dependencies = {} } = JSON.parse(readFileSync(at(folder, 'package.json'), 'utf8'));
  return { kind: match[1], folder, name, dependencies: Object.keys(dependencies) };
}
