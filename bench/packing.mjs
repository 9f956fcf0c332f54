// Density of the lay search on the open benchmarks, two threads, every lay checked by verifyLay; beside the published.
// Run: npm run bench -- packing [NAME …] [--seconds 60] [--seeds 1,2,3] [--processor] [--write]
// NAME is an instance or a group: classics, traced, jigsaw, poly, shop. Finished runs are kept in .cache/bench and not
// repeated; --again forgets them, --finished only shows them. --processor counts processor time, half of both threads' sum, in place of the clock:
// on a machine that is busy with other work the search then gets what it would have got alone.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { filesBelow } from '../tools/guards/sources.mjs';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '60' },
    seeds: { type: 'string', default: '1,2,3' },
    processor: { type: 'boolean', default: false },
    again: { type: 'boolean', default: false },
    finished: { type: 'boolean', default: false },
    write: { type: 'boolean', default: false },
  },
});
const seconds = Number(values.seconds);
const seeds = values.seeds.split(',').map(Number);

const out = at('.cache', 'bench', 'packing');
const { build } = await import('vite');
await build(
  nodeBuild({ packingRun: at('bench/packingRun.ts'), packWorker: at('apps/cli/src/packWorker.ts') }, out),
);
const engine = await import(pathToFileURL(`${out}/packingRun.mjs`).href);

const read = (...path) => JSON.parse(readFileSync(at('packages', 'packing', 'bench', ...path), 'utf8'));
const { classics: known, traced } = read('bestKnown.json');
const all = readdirSync(at('packages', 'packing', 'bench', 'instances')).map((name) =>
  basename(name, '.json'),
);
const groups = {
  classics: Object.keys(known),
  traced: all.filter((name) => name in traced),
  jigsaw: ['dighe1', 'dighe2', 'han'],
  poly: all.filter((name) => name.startsWith('poly')),
  shop: all.filter((name) => name.startsWith('panels')),
};
const chosen = positionals.length === 0 ? Object.keys(groups) : positionals;
const unknown = chosen.find((name) => !(name in groups || all.includes(name)));
if (unknown)
  throw new Error(
    `No benchmark is called ${unknown}; there are ${[...Object.keys(groups), ...all].join(', ')}.`,
  );
const asked = [...new Set(chosen.flatMap((name) => groups[name] ?? [name]))];

const processorSeconds = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 2e6;
};
const clock = values.processor ? processorSeconds : () => performance.now() / 1000;

/** Runs done before with the same sources, so that a stopped benchmark goes on where it was. */
const file = at('.cache', 'bench', `packing-${seconds}${values.processor ? '-processor' : ''}.json`);
mkdirSync(at('.cache', 'bench'), { recursive: true });
const hash = createHash('sha256');
for (const { path } of filesBelow(['packages/packing/src'], /\.ts$/))
  if (!/\.(test|bench)\.ts$/.test(path)) hash.update(readFileSync(at(path)));
const sources = hash.update(readFileSync(at('packages/contract/src/packing.ts'))).digest('hex');
const stored = existsSync(file) && !values.again ? JSON.parse(readFileSync(file, 'utf8')) : {};
const runs = stored.sources === sources ? stored.runs : {};

async function run(name, seed) {
  const given = engine.readInstance(read('instances', `${name}.json`));
  if (!given.ok) throw new Error(`${name}: ${given.refusal.code}`);
  const [start, wall, load] = [clock(), performance.now(), loadavg()[0]];
  const threads = engine.searchThreads(2, pathToFileURL(`${out}/packWorker.mjs`));
  const budget = {
    unit: 'seconds',
    whole: seconds,
    spent: () => clock() - start,
    plan: seconds * 2e6,
    stride: 1e5,
  };
  const result = await engine.packTogether(given.value, seed, budget, threads.searchers);
  const spent = clock() - start;
  await threads.end();
  if (!result.ok) throw new Error(`${name}: ${result.refusal.code}`);
  const { length, density, placements, improvements } = result.value;
  const copies = new Map();
  const numbered = placements.map((one) => {
    const copy = copies.get(one.pieceId) ?? 0;
    copies.set(one.pieceId, copy + 1);
    return { ...one, copy };
  });
  const lay = { length, density: density / 100, placements: numbered };
  const checked = engine.verifyLay(given.value.instance, lay);
  if (!checked.ok) throw new Error(`${name}, seed ${seed}: ${JSON.stringify(checked.refusal)}`);
  const first = improvements[0].density;
  return { length, density, first, spent, wall: (performance.now() - wall) / 1000, load };
}

for (const seed of seeds)
  for (const name of asked) {
    const key = `${name} ${seed}`;
    if (runs[key] || values.finished) continue;
    runs[key] = await run(name, seed);
    writeFileSync(file, JSON.stringify({ sources, runs }));
    const { density, spent, load } = runs[key];
    console.error(`${key}: ${density.toFixed(2)} % in ${spent.toFixed(0)} s, load ${load.toFixed(1)}`);
  }

const mean = (list) => list.reduce((sum, value) => sum + value, 0) / list.length;
const runsOf = (name) => seeds.flatMap((seed) => runs[`${name} ${seed}`] ?? []);
const meanOf = (name) => mean(runsOf(name).map(({ density }) => density));
const percent = (value) => (value === undefined ? '' : value.toFixed(2));
const lines = [];
const row = (...cells) => lines.push(`| ${cells.join(' | ')} |`);
const names = asked.filter((name) => runsOf(name).length > 0);
const inGroup = (group) => names.filter((name) => groups[group].includes(name));
const pieces = (name) =>
  read('instances', `${name}.json`).pieces.reduce((sum, { demand }) => sum + demand, 0);
const bySeed = (name) =>
  runsOf(name)
    .map(({ density }) => percent(density))
    .join(' ');

function classicTable(list) {
  row(
    'lay',
    'pieces',
    'first',
    `seeds ${seeds.join(', ')}`,
    'mean',
    'published mean',
    'difference',
    'best before 2025',
    'best known',
  );
  row(...Array(9).fill('---'));
  for (const name of list) {
    const { published, before2025, bestKnown } = known[name];
    row(
      name,
      pieces(name),
      percent(runsOf(name)[0].first),
      bySeed(name),
      percent(meanOf(name)),
      percent(published),
      percent(meanOf(name) - published),
      percent(before2025),
      percent(bestKnown),
    );
  }
  const over = (of) => mean(list.map(of));
  const published = over((name) => known[name].published);
  const ours = over(meanOf);
  row(
    'mean',
    '',
    '',
    '',
    `**${percent(ours)}**`,
    percent(published),
    percent(ours - published),
    percent(over((name) => known[name].before2025)),
    percent(over((name) => known[name].bestKnown)),
  );
  const level = list.filter(
    (name) => Math.max(...runsOf(name).map(({ density }) => density)) >= known[name].before2025 - 0.005,
  );
  lines.push(
    '',
    `At or above the best known before 2025 with one seed at least: ${level.length === 0 ? 'none' : level.join(', ')}.`,
    '',
  );
}

function otherTable(list) {
  row('lay', 'pieces', 'first', `seeds ${seeds.join(', ')}`, 'mean', 'best known', 'difference');
  row(...Array(7).fill('---'));
  for (const name of list) {
    const best = traced[name]?.bestKnown ?? (name.startsWith('dighe') ? 100 : undefined);
    row(
      name,
      pieces(name),
      percent(runsOf(name)[0].first),
      bySeed(name),
      percent(meanOf(name)),
      percent(best),
      best ? percent(meanOf(name) - best) : '',
    );
  }
  lines.push('');
}

function shopTable(list) {
  row(
    'shop job',
    'pieces',
    'boxes, leftmost',
    `least of seeds ${seeds.join(', ')}, mm`,
    'bound, mm',
    'cloth saved against boxes',
  );
  row(...Array(6).fill('---'));
  for (const name of list) {
    const { instance } = engine.readInstance(read('instances', `${name}.json`)).value;
    const boxes = engine.boxLay(instance);
    const length = Math.min(...runsOf(name).map((one) => one.length));
    const saved = boxes - length;
    row(
      name,
      pieces(name),
      boxes.toFixed(1),
      length.toFixed(1),
      engine.lowerBound(instance).value.toFixed(1),
      `${((100 * saved) / boxes).toFixed(1)} %: ${saved.toFixed(0)} mm of the roll, ${((saved * instance.stripWidth) / 1e6).toFixed(2)} m²`,
    );
  }
  lines.push('');
}

const classics = inGroup('classics');
const others = names.filter((name) => !classics.includes(name) && !groups.shop.includes(name));
const shop = inGroup('shop');
if (classics.length > 0) classicTable(classics);
if (others.length > 0) otherTable(others);
if (shop.length > 0) shopTable(shop);
const used = names.flatMap(runsOf);
const rest = `${(mean(used.map(({ wall }) => wall))).toFixed(0)} s by the clock on average; load ${Math.min(...used.map(({ load }) => load)).toFixed(1)} to ${Math.max(...used.map(({ load }) => load)).toFixed(1)} on ${cpus().length} cores`;
const budget = values.processor
  ? `${seconds} s of processor time for each of two threads (${rest})`
  : `${seconds} s, two threads (${rest})`;
const text = [
  `## Lays: \`npm run bench -- packing ${chosen.join(' ')} --seconds ${seconds}\``,
  '',
  `Density in percent, ${budget}. ${cpus()[0].model.trim()}, Node ${process.versions.node}. Every lay passed verifyLay. Published: packages/packing/bench/bestKnown.json.`,
  '',
  ...lines,
]
  .join('\n')
  .trimEnd();
console.log(text);
if (values.write) recordBench(`bench/packing.mjs ${chosen.join(' ')} ${seconds}`, text);
