// Photos of traced films: the given ones and made-up ones. How far the trace is off, how often its intervals hold.
// Run: node bench/photo.mjs [scenes per class] [--write]
import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const scenes = Number(process.argv.slice(2).find((word) => !word.startsWith('--')) ?? 10);
const { build } = await import('vite');
const out = at('packages', 'photo', '.cache', 'bench');
await build(nodeBuild({ photoRun: at('bench', 'photoRun.ts') }, out));

/** One process a class, so that each has its own peak of memory. */
function runClass(name) {
  const child = spawnSync(process.execPath, [`${out}/photoRun.mjs`, name, String(scenes)], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
    maxBuffer: 1e8,
  });
  if (child.status !== 0) throw new Error(`${name} ended with ${child.status}`);
  return JSON.parse(child.stdout);
}

const middle = (values) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const most = (values) => Math.max(...values);
const share = (values, holds) => `${values.filter(holds).length} of ${values.length}`;

function row(name) {
  const { photos, memory } = runClass(name);
  const traced = photos.filter((photo) => !photo.refusal);
  for (const { id, refusal, p95 } of photos) {
    if (refusal) console.log(`${id}: ${refusal}`);
    else if (p95 >= 0.8) console.log(`${id}: 95 % within ${p95.toFixed(2)} mm`);
  }
  const sizes = traced.flatMap((photo) => photo.sizes);
  return [
    name,
    `${traced.length} of ${photos.length}`,
    share(traced, ({ p95 }) => p95 < 0.8),
    `${middle(traced.map(({ p95 }) => p95)).toFixed(2)}, ${most(traced.map(({ p95 }) => p95)).toFixed(2)}`,
    share(sizes, ({ error, sigma }) => Math.abs(error) <= 1.96 * sigma),
    middle(sizes.map(({ sigma }) => 1.96 * sigma)).toFixed(2),
    share(traced, ({ segments }) => segments),
    `${(middle(traced.map(({ ms }) => ms)) / 1000).toFixed(1)}, ${(most(traced.map(({ ms }) => ms)) / 1000).toFixed(1)}`,
    memory.toFixed(0),
  ];
}

const head = [
  '',
  'traced',
  'edge 95 % below 0.8 mm',
  'edge 95 %: median, worst, mm',
  'sizes within their 95 % interval',
  'half interval, median, mm',
  'every line and arc right',
  'processor s: median, worst',
  'peak MB',
];
const rows = ['given', 'easy', 'medium', 'hard'].map(row);
const line = (cells) => `| ${cells.join(' | ')} |`;
const text = [
  '## Photos of traced films: `npm run bench -- photo`',
  '',
  `${cpus()[0].model.trim()}, ${cpus().length} cores, Node ${process.versions.node}. 3000 x 2250 px, one photo each, four (now and then three) A4 sheets, two taped distances of sigma 0.5 mm, a ruled print. Given: the two pictures kept with the tests. Easy, medium, hard: ${scenes} made-up scenes each, seeds 101 and up (packages/photo/src/testing/scene.ts): plain, bowed, re-entrant, S-curved and sharp outlines on five grounds. All rendered; no real phone photo has been measured. Sizes are width and height. Time is the processor's, decoding included; memory includes the renderer's where a scene is made up.`,
  '',
  line(head),
  line(head.map(() => '---')),
  ...rows.map(line),
].join('\n');
console.log(text);

if (process.argv.includes('--write')) recordBench('bench/photo.mjs', text);
