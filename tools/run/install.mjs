import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { takeLock } from './lock.mjs';
import { at, checkNode, giveUp, root } from './root.mjs';
import { runProgram } from './runProgram.mjs';

/** Left by our own install: the lockfile it was of. */
const STAMP = at('node_modules', '.panewright-lock');
const lockHash = () =>
  createHash('sha256')
    .update(readFileSync(at('package-lock.json')))
    .digest('hex');

/** True when every package the lockfile names (but for other platforms' optional ones) is there in its version. */
export function isInstalled() {
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === lockHash()) return true;
  if (!existsSync(at('node_modules', '.package-lock.json'))) return false;
  const wanted = JSON.parse(readFileSync(at('package-lock.json'), 'utf8')).packages;
  const found = JSON.parse(readFileSync(at('node_modules', '.package-lock.json'), 'utf8')).packages;
  return Object.entries(wanted).every(([path, entry]) => {
    if (!path.startsWith('node_modules/') || entry.optional) return true;
    if (entry.link) return existsSync(at(path));
    return found[path]?.version === entry.version && existsSync(at(path, 'package.json'));
  });
}

/** Installs what the lockfile says when it is not there yet. */
export async function ensureInstalled() {
  checkNode();
  if (isInstalled()) return;
  const free = await takeLock('install');
  try {
    if (!isInstalled()) await install();
  } finally {
    free();
  }
}

async function install() {
  console.log('Installing the packages of the lockfile (once) …');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const status = await runProgram(npm, ['ci', '--no-fund', '--no-audit'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
    // node-gyp compiles as many files at once as there are processors.
    env: { ...process.env, JOBS: process.env.JOBS ?? String(availableParallelism()) },
  });
  if (status !== 0) {
    rmSync(at('.cache', 'install.lock'), { recursive: true, force: true });
    giveUp(
      'npm ci did not succeed (its own words are above). It needs the network once; ' +
        'the embedded database is compiled where no ready-made file fits, which takes python3, make and g++.',
    );
  }
  writeFileSync(STAMP, lockHash());
}
