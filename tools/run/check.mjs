// npm run check: format and lint, types, guards. Each step says what it does; the exit code tells whether all passed.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled } from './install.mjs';
import { at, root } from './root.mjs';

await ensureInstalled();
const node = (label, ...args) => ({ label, args });
const projects = ['packages', 'apps'].flatMap((folder) =>
  readdirSync(at(folder))
    .filter((name) => existsSync(at(folder, name, 'tsconfig.json')) && existsSync(at(folder, name, 'src')))
    .map((name) => join(folder, name)),
);
const steps = [
  node('format and lint', 'node_modules/@biomejs/biome/bin/biome', 'ci', '.'),
  ...projects.map((path) => node(`types of ${path}`, 'node_modules/typescript/bin/tsc', '-p', path)),
  node('types of the tests', 'node_modules/typescript/bin/tsc', '-p', 'tsconfig.tests.json'),
  node('guards', 'tools/guards/all.mjs'),
];
let failed = 0;
for (const { label, args } of steps) {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
  if (status !== 0) failed++;
  console.log(
    `${status === 0 ? 'ok    ' : 'FAILED'} ${label} (${((performance.now() - start) / 1000).toFixed(1)} s)`,
  );
}
console.log(failed === 0 ? 'All checks passed.' : `${failed} of ${steps.length} checks failed.`);
process.exitCode = failed === 0 ? 0 : 1;
