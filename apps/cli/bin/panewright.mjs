#!/usr/bin/env node
// The command of a clone: installs and builds when the sources changed, then runs what was built.
import { spawn } from 'node:child_process';
import { ensureBuilt } from '../../../tools/run/build.mjs';
import { at } from '../../../tools/run/root.mjs';

const log = console.log;
// What a command prints may be read by another program: building talks to the person only.
console.log = console.error;
await ensureBuilt();
console.log = log;

/**
 * Most memory for what is in use, MB. With a limit below 2 GB the collector lets rubbish grow to twice what is in use, not
 * to four times: all sheets of 200 openings then peak at 672 MB in place of 1,051 MB, in the same time.
 */
const MOST = 2000;
const named = [...process.execArgv, process.env.NODE_OPTIONS ?? ''].some((one) =>
  one.includes('max-old-space-size'),
);
const flags = named ? process.execArgv : [...process.execArgv, `--max-old-space-size=${MOST}`];
const child = spawn(
  process.execPath,
  [...flags, at('apps', 'cli', 'bin', 'run.mjs'), ...process.argv.slice(2)],
  { stdio: 'inherit' },
);
// The terminal's Ctrl+C reaches both; what is sent to this process alone is passed on.
process.on('SIGINT', () => {});
process.on('SIGTERM', () => child.kill('SIGTERM'));
child.once('exit', (code, signal) => {
  if (signal) {
    process.removeAllListeners();
    process.kill(process.pid, signal);
  } else process.exitCode = code ?? 1;
});
