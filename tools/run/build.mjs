import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled } from './install.mjs';
import { takeLock } from './lock.mjs';
import { at, root } from './root.mjs';

/** What the built files are made from, and where each build puts them. */
const SOURCES = ['packages', 'apps', 'demo', 'package-lock.json'];
const OUTPUTS = ['apps/server/dist', 'apps/cli/dist', 'apps/web/dist'];
const STAMP = at('apps', 'server', 'dist', '.stamp');

/** A fingerprint of the sources: path, size and time of change of each file. */
export function fingerprint() {
  const hash = createHash('sha256').update(process.versions.node.split('.')[0]);
  const visit = (path) => {
    const stat = statSync(path);
    if (!stat.isDirectory()) {
      hash.update(`${relative(root, path)}\0${stat.size}\0${Math.floor(stat.mtimeMs)}\n`);
      return;
    }
    for (const name of readdirSync(path).sort()) {
      if (name === 'node_modules' || name === 'dist' || /\.(test|bench)\.tsx?$/.test(name)) continue;
      visit(join(path, name));
    }
  };
  for (const source of SOURCES) if (existsSync(at(source))) visit(at(source));
  return hash.digest('hex');
}

export function isBuilt() {
  return (
    OUTPUTS.every((path) => existsSync(at(path))) &&
    existsSync(STAMP) &&
    readFileSync(STAMP, 'utf8') === fingerprint()
  );
}

/** A Node program as ES modules: our packages inside, npm packages outside. */
export function nodeBuild(entries, outDir) {
  return {
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: [/^@panewright\//], target: 'node' },
    build: {
      ssr: true,
      target: 'node20',
      outDir,
      // A program that runs may still load parts of the build before: those are taken away a day later.
      emptyOutDir: false,
      minify: false,
      sourcemap: true,
      rolldownOptions: {
        input: entries,
        external: (name) => !/^(\.|\/|\0|@panewright\/)/.test(name) && !/^[A-Za-z]:/.test(name),
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  };
}

export async function build() {
  const before = fingerprint();
  // Also where a test runner, which says otherwise, asks for the build.
  process.env.NODE_ENV = 'production';
  const { build: viteBuild } = await import('vite');
  await viteBuild(
    nodeBuild(
      { server: at('apps/server/src/bin.ts'), worker: at('apps/server/src/worker.ts') },
      at('apps/server/dist'),
    ),
  );
  await viteBuild(
    nodeBuild(
      { panewright: at('apps/cli/src/bin.ts'), packWorker: at('apps/cli/src/packWorker.ts') },
      at('apps/cli/dist'),
    ),
  );
  await viteBuild({ root: at('apps/web'), logLevel: 'error' });
  for (const output of OUTPUTS) clear(at(output));
  writeFileSync(STAMP, before);
}

/** Takes away parts of builds more than a day old. */
function clear(folder) {
  const yesterday = Date.now() - 86_400_000;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (/\.mjs(\.map)?$/.test(name) && statSync(path).mtimeMs < yesterday) rmSync(path);
  }
}

/** Builds when the sources changed since the last build. One build at a time: others wait for it. */
export async function ensureBuilt() {
  await ensureInstalled();
  if (isBuilt()) return;
  const free = await takeLock('build');
  try {
    if (isBuilt()) return;
    const start = performance.now();
    console.log('Building …');
    await build();
    console.log(`Built in ${((performance.now() - start) / 1000).toFixed(1)} s.`);
  } finally {
    free();
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await ensureBuilt();
