// Random small instances: no lay overlaps, loses a piece or leaves the strip; tiny ones against trying every place.
// Run: npm run bench -- packing-trials [instances] [exact instances] [--write]
import { cpus, loadavg } from 'node:os';
import { pathToFileURL } from 'node:url';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const [count = 100_000, exact = 1000] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith('--'))
  .map(Number);
const { build } = await import('vite');
const out = at('.cache', 'bench', 'packing-trials');
await build(nodeBuild({ packingTrialsRun: at('bench', 'packingTrialsRun.ts') }, out));
const { exactTrials, smallTrials } = await import(pathToFileURL(`${out}/packingTrialsRun.mjs`).href);

const SEED = 2026;
const start = process.cpuUsage().user;
const small = smallTrials(count, SEED);
const tiny = exactTrials(exact, SEED);
const spent = ((process.cpuUsage().user - start) / 1e6).toFixed(0);
const number = (value) => value.toLocaleString('en');
const text = [
  '## Lays of random small instances: `npm run bench -- packing-trials`',
  '',
  `Seed ${SEED}; rectangles, angles and stars of 3 to 10 corners, 1 to 12 pieces, with and without spacing, margins, free turns and flips; one in ten also searched. Checked by verifyLay (triangles in whole numbers, no code of the engine). ${spent} s of one core (${cpus()[0].model.trim()}, load ${loadavg()[0].toFixed(1)}).`,
  '',
  '| | |',
  '|---|---|',
  `| instances laid (also searched) | ${number(small.laid)} (${number(small.searched)}) |`,
  `| pieces | ${number(small.pieces)} |`,
  `| lays with overlap, a piece lost or outside, or shorter than the bound | ${small.wrong.length} |`,
  `| tiny sets of rectangles against trying every place: least length found | ${number(tiny.optimal)} of ${number(tiny.tried)} |`,
  `| longest against the least | +${(100 * tiny.worst).toFixed(1)} % |`,
].join('\n');
console.log(text);
for (const line of small.wrong.slice(0, 20)) console.log(line);
if (process.argv.includes('--write')) recordBench('bench/packing-trials.mjs', text);
process.exitCode = small.wrong.length > 0 ? 1 : 0;
