// All sheets and cut files of a job of many openings in one run: time and peak memory, part by part.
// Run: node bench/sheets.mjs [openings] [sizes] [paper] [--write]. As many sizes as openings is the hardest case.
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { pathToFileURL } from 'node:url';
import { nodeBuild } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const [count = 200, sizes = 200, paper = 'a4'] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith('--'));
const out = at('.cache', 'bench', 'sheets');
// The measured process is one of its own, with the memory that the program gives itself: the bundler's is not the sheets'.
if (!process.send) {
  const { build } = await import('vite');
  await build(nodeBuild({ sheetsRun: at('bench', 'sheetsRun.ts') }, out));
  const [status] = await once(
    fork(process.argv[1], process.argv.slice(2), { execArgv: ['--max-old-space-size=2000'] }),
    'exit',
  );
  process.exit(status ?? 1);
}
const { run } = await import(pathToFileURL(`${out}/sheetsRun.mjs`).href);

let peak = 0;
const watch = setInterval(() => (peak = Math.max(peak, process.memoryUsage().rss)), 20);
const font = (name) =>
  new Uint8Array(readFileSync(at('node_modules', 'dejavu-fonts-ttf', 'ttf', `${name}.ttf`)));
const lines = await run(
  Number(count),
  Number(sizes),
  paper,
  { regular: font('DejaVuSansCondensed'), bold: font('DejaVuSansCondensed-Bold') },
  () => {
    peak = Math.max(peak, process.memoryUsage().rss);
    return performance.now();
  },
  () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
  () => process.resourceUsage().maxRSS * 1024,
);
clearInterval(watch);
const most = Math.max(peak, process.resourceUsage().maxRSS * 1024);
const [{ model = 'unknown' } = {}] = cpus();
const text = [
  `## bench/sheets.mjs`,
  '',
  `${count} openings of ${sizes} sizes, ${paper}; one run. ${model.trim()}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB, Node ${process.versions.node}. Peak memory of the process, plan included: ${Math.round(most / 2 ** 20)} MB. Others ran beside it: ${loadavg()[0].toFixed(0)} programs wanted the cores at its end, so the last column, the processor's own time for it, is what counts.`,
  '',
  '| part | files | pages | s | of it at work |',
  '|---|---|---|---|---|',
  ...lines,
].join('\n');
console.log(text);

if (process.argv.includes('--write')) recordBench('bench/sheets.mjs', text);
process.disconnect();
