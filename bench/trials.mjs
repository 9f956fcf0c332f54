// Two-mark taping by simulation, and verdicts on pairs of outlines: how often what is stated is true.
// Run: node bench/trials.mjs [openings] [pairs] [--write]
import { pathToFileURL } from 'node:url';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const [openings = 1000, pairs = 10000] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith('--'))
  .map(Number);
const { build } = await import('vite');
const out = at('.cache', 'bench', 'trials');
await build(nodeBuild({ trialsRun: at('bench', 'trialsRun.ts') }, out));
const { markTrials, pairTrials } = await import(pathToFileURL(`${out}/trialsRun.mjs`).href);

const percent = (share) => `${(100 * share).toFixed(1)} %`;
const marks = markTrials(openings, 2026);
const shared = pairTrials(pairs, 2026);
const text = [
  '## What is stated against what is true: `npm run bench -- trials`',
  '',
  `Seed 2026. Openings of 5 to 8 corners, three marks, every mark to every point and point to point, 1/32 in noise; one tape 1/2 in off, where that is 4.13 standard deviations of its residual or more. Outlines of 3 to 6 corners, about half of them with corners that point inward, grown by a known distance, turned, half of them turned over.`,
  '',
  '| two-mark taping | |',
  '|---|---|',
  `| openings adjusted (refused as ambiguous) | ${marks.adjusted} (${marks.refused}) |`,
  `| true places within their stated 95 % region, of ${marks.points} | ${percent(marks.inside)} |`,
  `| gross error named first, of ${marks.shown} that can be shown | ${percent(marks.named)} |`,
  '',
  '| shared patterns | |',
  '|---|---|',
  `| pairs | ${shared.pairs} |`,
  `| given one pattern beyond 1.1 times the tolerance | ${shared.wronglyShared} |`,
  `| parted below 0.9 times the tolerance | ${shared.wronglyParted} |`,
].join('\n');
console.log(text);

if (process.argv.includes('--write')) recordBench('bench/trials.mjs', text);
