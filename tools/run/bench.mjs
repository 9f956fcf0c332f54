// npm run bench: every benchmark of the packages; `npm run bench -- NAME …` those whose file or name has NAME in it.
// A file *.bench.ts exports `benches`: [{ name, run, unit?, perRun? }]. A program bench/NAME.mjs is run by its name alone.
// With --write the tables go into docs/bench.md.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { cpus, release, totalmem } from 'node:os';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { filesBelow } from '../guards/sources.mjs';
import { nodeBuild } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { recordBench } from './recordBench.mjs';
import { at, giveUp, root } from './root.mjs';

const WARM_UPS = 3;
const RUNS = 12;
/** A sample shorter than this is made of several runs, ms. */
const LEAST_SAMPLE = 5;

/** Results pass through here, so that none is thought unused. */
let kept = 0;
function keep(value) {
  if (typeof value === 'number') kept += value;
  else if (value !== undefined) kept += 1;
}

async function once(bench, times) {
  const start = performance.now();
  for (let i = 0; i < times; i++) keep(await bench.run());
  return (performance.now() - start) / times;
}

async function measure(bench) {
  let longest = 0;
  for (let i = 0; i < WARM_UPS; i++) longest = Math.max(longest, await once(bench, 1));
  const times = Math.max(1, Math.ceil(LEAST_SAMPLE / Math.max(await once(bench, 1), 1e-6)));
  const samples = [];
  for (let i = 0; i < RUNS; i++) samples.push(await once(bench, times));
  const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
  const spread = samples.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (samples.length - 1);
  return { least: Math.min(...samples), mean, deviation: Math.sqrt(spread) };
}

const ms = (value) =>
  value >= 100 ? value.toFixed(0) : value >= 1 ? value.toFixed(2) : value.toPrecision(3);

function row(bench, { least, mean, deviation }) {
  const rate = bench.perRun
    ? `${Math.round((1000 * bench.perRun) / mean).toLocaleString('en')} ${bench.unit ?? ''}/s`
    : '';
  return `| ${bench.name} | ${ms(least)} | ${ms(mean)} ± ${ms(deviation)} | ${rate.trim()} |`;
}

function machine() {
  const [{ model = 'unknown' } = {}, ...rest] = cpus();
  return `${model.trim()}, ${rest.length + 1} cores, ${Math.round(totalmem() / 2 ** 30)} GB, ${process.platform} ${release()}, Node ${process.versions.node}`;
}

const [first, ...others] = process.argv.slice(2);
const programs = readdirSync(at('bench'))
  .filter((name) => name.endsWith('.mjs'))
  .map((name) => basename(name, '.mjs'));
await ensureInstalled();
if (first && programs.includes(first)) {
  const { status } = spawnSync(process.execPath, [at('bench', `${first}.mjs`), ...others], {
    cwd: root,
    stdio: 'inherit',
  });
  process.exit(status ?? 1);
}
const words = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const write = process.argv.includes('--write');
const files = filesBelow(['packages', 'apps', 'bench'], /\.bench\.ts$/);
const { build } = await import('vite');
let found = 0;
console.log(machine());
for (const { path } of files) {
  const name = basename(path, '.bench.ts');
  const out = at('.cache', 'bench', name);
  await build(nodeBuild({ [name]: at(path) }, out));
  const { benches } = await import(pathToFileURL(`${out}/${name}.mjs`).href);
  if (!Array.isArray(benches)) giveUp(`${path} exports no list called benches.`);
  const chosen = benches.filter(
    (bench) => words.length === 0 || words.some((word) => path.includes(word) || bench.name.includes(word)),
  );
  if (chosen.length === 0) continue;
  const lines = ['| | least ms | mean ms | |', '|---|---|---|---|'];
  console.log(`\n${path}`);
  for (const bench of chosen) {
    found++;
    lines.push(row(bench, await measure(bench)));
    console.log(lines.at(-1));
  }
  if (write)
    recordBench(
      path,
      `## ${path}\n\n${machine()}; ${RUNS} samples after ${WARM_UPS} warm-ups.\n\n${lines.join('\n')}`,
    );
}
if (found === 0)
  giveUp(`No benchmark has ${words.join(' or ')} in its name. Programs: ${programs.join(', ')}.`);
if (words.length === 0 && programs.length > 0) console.log(`\nBy name only: ${programs.join(', ')}.`);
if (!Number.isFinite(kept)) process.exitCode = 1;
