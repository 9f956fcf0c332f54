// Density by time of the lay search on the benchmarks kept with the package, every lay checked by verifyLay.
// Run: node packages/packing/bench/lays.mjs [CPU seconds per lay] [seeds, 1,2,...] [NAME ...]
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { nodeBuild } from '../../../tools/run/build.mjs';
import { at } from '../../../tools/run/root.mjs';

const [seconds = '10', seeds = '1,2', ...names] = process.argv.slice(2);
const folder = at('packages', 'packing', 'src', 'reference');
const cpu = () => process.cpuUsage().user / 1e6;

async function load() {
  const { build } = await import('vite');
  const out = mkdtempSync(join(tmpdir(), 'lays-'));
  await build(nodeBuild({ index: at('packages/packing/src/index.ts') }, out));
  const packing = await import(pathToFileURL(join(out, 'index.mjs')).href);
  rmSync(out, { recursive: true });
  return packing;
}

const { benchmarkInstance, replan, startPacking, step, verifyLay } = await load();

/** Searches for the given CPU time; the plan follows the rate met. */
function search(instance, seed, budget) {
  const from = cpu();
  let state = startPacking(instance, seed).value;
  const first = state.best.density;
  for (let rate = 2e6; cpu() - from < budget && !state.done; rate = state.evaluations / (cpu() - from)) {
    state = step(replan(state, rate * budget), (rate * budget) / 50);
  }
  const checked = verifyLay(instance, state.best);
  if (!checked.ok) throw new Error(`${instance.name} seed ${seed}: ${checked.refusal.code}`);
  return { first, state, spent: cpu() - from };
}

const percent = (value) => (100 * value).toFixed(2);
const wanted = (name) => names.length === 0 || names.includes(name);
console.log(
  '| lay | pieces | first | by seed | least length | bound | evaluations/s |\n|---|---|---|---|---|---|---|',
);
for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
  const json = JSON.parse(readFileSync(join(folder, file), 'utf8'));
  const name = basename(file, '.json');
  if (!Array.isArray(json.pieces) || !wanted(name)) continue;
  const runs = seeds.split(',').map((seed) => search(benchmarkInstance(json), Number(seed), Number(seconds)));
  const length = Math.min(...runs.map(({ state }) => state.best.length));
  const rate = runs.reduce((sum, { state, spent }) => sum + state.evaluations / spent, 0) / runs.length;
  const pieces = json.pieces.reduce((sum, { demand }) => sum + demand, 0);
  const cells = [
    name,
    pieces,
    percent(runs[0].first),
    runs.map(({ state }) => percent(state.best.density)).join(' '),
    length.toFixed(3),
    runs[0].state.bound.toFixed(3),
    `${(rate / 1e6).toFixed(1)} M`,
  ];
  console.log(`| ${cells.join(' | ')} |`);
}
