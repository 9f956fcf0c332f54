// Straight lengths from stock on the published one-dimensional instances: how many are solved to the proven optimum.
// Run: npm run bench -- strips [FAMILY …] [--every N] [--effort OPERATIONS] [--write]
import { readdirSync, readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    every: { type: 'string', default: '1' },
    effort: { type: 'string' },
    write: { type: 'boolean', default: false },
  },
});
const out = at('.cache', 'bench', 'strips');
const { build } = await import('vite');
await build(nodeBuild({ packing: at('packages/packing/src/index.ts') }, out));
const { cutStrips } = await import(pathToFileURL(`${out}/packing.mjs`).href);

const effort = values.effort === undefined ? undefined : Number(values.effort);
const folder = at('packages', 'packing', 'bench', 'strips');
const families = readdirSync(folder).map((name) => basename(name, '.json'));
const wanted = positionals.length > 0 ? positionals : families;

/** Throws unless the plan cuts exactly what is wanted and no piece of stock is overfull: counted anew. */
function check({ name, stockLength, items }, plan) {
  const cut = items.map(() => 0);
  let bars = 0;
  for (const { times, cuts } of plan.patterns) {
    bars += times;
    for (const { itemId, count } of cuts) cut[itemId] += times * count;
    const used = cuts.reduce((sum, { itemId, count }) => sum + count * items[itemId][0], 0);
    if (used > stockLength) throw new Error(`${name}: a piece of stock holds ${used} of ${stockLength}`);
  }
  if (bars !== plan.pieces || cut.some((count, k) => count !== items[k][1]))
    throw new Error(`${name}: the plan does not cut what is wanted`);
}

function solve(instance) {
  const items = instance.items.map(([length, demand], id) => ({ id, length, demand }));
  const stocks = [{ id: 'stock', length: instance.stockLength, cost: 1 }];
  const start = process.cpuUsage().user;
  const order = { kerf: 0, stocks, items };
  const result = effort === undefined ? cutStrips(order) : cutStrips(order, effort);
  const seconds = (process.cpuUsage().user - start) / 1e6;
  if (!result.ok) throw new Error(`${instance.name}: ${result.refusal.code}`);
  check(instance, result.value);
  const { pieces, bound, proven } = result.value;
  if (pieces < instance.optimum || bound > instance.optimum)
    throw new Error(`${instance.name}: better than the proven optimum`);
  return { extra: pieces - instance.optimum, proven, tight: bound === instance.optimum, seconds };
}

const lines = [
  '| family | instances | optimal | proven by our bound | bars above the optimum | median s | most s |',
  '|---|---|---|---|---|---|---|',
];
const all = [];
const row = (name, runs) => {
  const times = runs.map(({ seconds }) => seconds).sort((a, b) => a - b);
  const count = (test) => runs.filter(test).length;
  const extra = runs.reduce((sum, one) => sum + one.extra, 0);
  lines.push(
    `| ${name} | ${runs.length} | ${count((one) => one.extra === 0)} | ${count((one) => one.proven)} | ${extra} | ${times[Math.floor(times.length / 2)].toFixed(3)} | ${times.at(-1).toFixed(2)} |`,
  );
  console.error(lines.at(-1));
};
for (const family of wanted) {
  const { instances } = JSON.parse(readFileSync(`${folder}/${family}.json`, 'utf8'));
  const runs = instances.filter((_, k) => k % Number(values.every) === 0).map(solve);
  all.push(...runs);
  row(family, runs);
}
row('all', all);
const command = [
  'npm run bench -- strips',
  ...positionals,
  ...(effort ? ['--effort', values.effort] : []),
].join(' ');
const text = [
  `## Strips: \`${command}\``,
  '',
  `Instances and their proven optima: packages/packing/bench/strips (each file names its source). Every plan counted anew. Processor seconds of one core (${cpus()[0].model.trim()}, load ${loadavg()[0].toFixed(1)}, Node ${process.versions.node}).`,
  '',
  ...lines,
].join('\n');
console.log(text);
if (values.write) recordBench(`bench/strips.mjs${effort ? ` ${values.effort}` : ''}`, text);
