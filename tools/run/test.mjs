// npm test: installs what the tests need, builds, runs all tests; the last line is `N passed, N failed`.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureBuilt } from './build.mjs';
import { ensureTestTools, findChromium } from './chromium.mjs';
import { ensureInstalled } from './install.mjs';
import { at, giveUp, root } from './root.mjs';

const started = performance.now();
// The system's packages come over the network while npm compiles: each waits for nothing of the other.
const toolsReady = ensureTestTools();
await ensureInstalled();
const lacking = await toolsReady;
if (lacking) giveUp(lacking);
await ensureBuilt();

mkdirSync(at('.cache'), { recursive: true });
const report = at('.cache', `vitest-${process.pid}.json`);
const { status } = spawnSync(
  process.execPath,
  [
    at('node_modules/vitest/vitest.mjs'),
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...process.argv.slice(2),
  ],
  { cwd: root, stdio: 'inherit', env: { ...process.env, PANEWRIGHT_CHROMIUM: findChromium() } },
);
if (!existsSync(report)) giveUp('The test runner ended without a report.');
const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
rmSync(report, { force: true });
// A file that could not even be loaded has no tests to count: it counts as one failure.
const unloaded = testResults.filter(
  (file) => file.status === 'failed' && file.assertionResults.length === 0,
).length;
console.log(`Tests and set-up took ${((performance.now() - started) / 1000).toFixed(0)} s.`);
console.log(`${numPassedTests} passed, ${numFailedTests + unloaded} failed`);
process.exitCode = status ?? 1;
