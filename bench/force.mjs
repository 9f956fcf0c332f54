// Forces between pairs of magnets, by processor time of one core. Run: node bench/force.mjs [seconds] [--write]
import { cpus, loadavg } from 'node:os';
import { pathToFileURL } from 'node:url';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const SECONDS = Number(process.argv[2]) || 3;
/** Pairs a second that are wanted. */
const GOALS = {
  'equal coaxial discs': 1_000_000,
  'displaced blocks, equal': 250_000,
  'displaced blocks, unequal': 250_000,
  'displaced discs': 60_000,
};

const { build } = await import('vite');
const out = at('.cache', 'bench', 'force');
await build(nodeBuild({ pull: at('packages/magnets/src/pull.bench.ts') }, out));
const { benches } = await import(pathToFileURL(`${out}/pull.mjs`).href);

const used = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Pairs for each second of processor time, in order; each sample is one run, the first second is not counted. */
function rates({ run, perRun }) {
  const found = [];
  let kept = 0;
  const begun = used();
  for (let from = begun; from - begun < SECONDS + 1; ) {
    kept += run();
    const now = used();
    if (from - begun > 1) found.push(perRun / (now - from));
    from = now;
  }
  if (!Number.isFinite(kept)) throw new Error('a force was no number');
  return found.sort((a, b) => a - b);
}

const count = (value) => Math.round(value).toLocaleString('en');
const rows = benches.map((bench) => {
  const found = rates(bench);
  const middle = found[Math.floor(found.length / 2)];
  const goal = GOALS[bench.name];
  return `| ${bench.name} | ${count(middle)} | ${count(found.at(-1))} | ${goal ? count(goal) : ''} |`;
});
const where = `${cpus()[0].model.trim()}, one core, load ${loadavg()[0].toFixed(1)}, Node ${process.versions.node}`;
const text = `## Forces: \`npm run bench -- force\`

${where}. Pairs for each second of processor time; 256 pairs of each kind, gaps 2 to 10 mm, offsets to 8 mm, drawn anew from one seed; pull and side force both.

| pair | median | best run | goal |
|---|---|---|---|
${rows.join('\n')}`;
console.log(text);
if (process.argv.includes('--write')) recordBench('bench/force.mjs', text);
