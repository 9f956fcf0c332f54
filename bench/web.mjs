// Key press to new drawing at nine and at 200 openings, in Chromium against the real server; script bytes; first drawing;
// memory after 5,000 edits. Run: node bench/web.mjs [runs] [--write]; --only hold,panels names the parts to run, of
// first, openings, panels, hold, memory, many; with --only nothing is written.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { ensureBuilt } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';
import { ask, serve, startBrowser } from '../tools/run/served.mjs';
import { keys, memoryHeld, presses } from './web/edits.mjs';
import { rectangles } from './web/rectangles.mjs';

const RUNS = Number(process.argv[2] ?? 120) || 120;
const PAUSE = 120;
const only = process.argv[process.argv.indexOf('--only') + 1];
const wanted = process.argv.includes('--only') ? (only ?? '').split(',') : null;

const quantile = (values, share) =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))];
const ms = (value) => value.toFixed(1);

/** The figures as a table; with --write it goes into docs/bench.md, in place of the one before. */
function report({ rows, notes, version }) {
  const where = `${cpus()[0].model.trim()}, ${cpus().length} cores, load ${loadavg()[0].toFixed(1)}, Node ${process.versions.node}, Chromium ${version}`;
  const table = ['| | median | 95 % |', '|---|---|---|', ...rows].join('\n');
  const text = [`${where}.`, table, ...notes].join('\n\n');
  console.log(text);
  if (process.argv.includes('--write') && !wanted)
    recordBench('bench/web.mjs', `## The page: \`npm run bench -- web\`\n\n${text}`);
}

const both = (values) => `${ms(quantile(values, 0.5))} | ${ms(quantile(values, 0.95))}`;

/** The rows of one kind of edit. */
function editRows(name, { times, busy, spent }) {
  const row = (what, words) =>
    `| ${name}: ${words}, ms (n ${times.length}) | ${both(times.map((one) => one[what]))} |`;
  return [
    row('drawn', 'key to new drawing in the page'),
    row('painted', 'key to painted'),
    `| ${name}: processor time of the page's thread from key to drawing, ms (n ${spent.length}) | ${both(spent)} |`,
    `| ${name}: processor time of the page's thread per key, ms | ${ms(busy)} | |`,
  ];
}

const gzipped = (name) => gzipSync(readFileSync(at('apps/web/dist', name)), { level: 9 }).length;

/** In the page: the scripts asked for up to a time, those of its workers not counted. */
const scriptsUntil = (time) =>
  performance
    .getEntriesByType('resource')
    .filter((one) => one.startTime < (time ?? Infinity))
    .map((one) => new URL(one.name).pathname)
    .filter((path) => path.endsWith('.js') && !path.includes('worker'));

/** In the page, before all else: notes when the opening stands in it. */
function watchFirst() {
  const observer = new MutationObserver(() => {
    if (!document.querySelector('.opening-large')) return;
    observer.disconnect();
    window.firstDrawn = performance.now();
  });
  observer.observe(document, { subtree: true, childList: true });
}

const worked = (page) => page.waitForSelector('.station-waits', { state: 'detached', timeout: 300_000 });

/** First drawings one after another, and the scripts they ask for. */
async function firstDrawings({ page, address }) {
  const firsts = [];
  let before;
  for (let run = 0; run < 6; run++) {
    await page.goto('about:blank');
    await page.goto(`${address}/openings/W3`);
    await page.waitForSelector('.opening-large');
    firsts.push(await page.evaluate(() => window.firstDrawn));
    before ??= await page.evaluate(scriptsUntil, firsts[0]);
  }
  await worked(page);
  const after = await page.evaluate(scriptsUntil, null);
  const bytes = (list) => (list.reduce((sum, name) => sum + gzipped(name), 0) / 1000).toFixed(1);
  return [
    `| script before the first drawing, kB gzip (${before.length} files) | ${bytes(before)} | |`,
    `| script by the time all is worked out, kB gzip (${after.length} files) | ${bytes(after)} | |`,
    `| first drawing, warm server, ms (n ${firsts.length - 1}) | ${both(firsts.slice(1))} |`,
  ];
}

/** A reading typed on the openings stage. */
async function readings({ page, client, address }) {
  await page.goto(`${address}/openings/W3`);
  await page.waitForSelector('.opening-large');
  await worked(page);
  const times = await keys(page, client, RUNS, 'Bottom side', '36.5', ['4', '5'], PAUSE);
  return editRows('9 openings, a reading', times);
}

async function allowance({ page, client, address }) {
  await page.goto(`${address}/panels/W3`);
  await page.waitForSelector('.panel-face');
  await worked(page);
  const times = await keys(page, client, RUNS, 'Fit allowance, all round', '0.25', ['4', '5'], PAUSE);
  return editRows('9 openings, the fit allowance, panels stage', times);
}

/** The hold stage of a window: wind, glass and magnet changed by key, and a point moved. */
async function holdStage({ page, client, address }) {
  await page.goto(`${address}/hold/W3`);
  await page.waitForSelector('.wind-plot');
  await worked(page);
  const slider = (name) => page.getByRole('slider', { name });
  const arrows = ['ArrowRight', 'ArrowLeft'];
  const fields = [
    ['the wind slider', slider('Mean wind it is to stand, parked, slider'), arrows],
    ['the glass slider', slider('Thickest pane of W3, slider'), arrows],
    ['another magnet', page.getByLabel('Magnet in the panel'), ['ArrowDown', 'ArrowUp']],
    ['a hold point moved', slider(/^Hold point 2,/), arrows],
  ];
  const rows = [];
  for (const [name, field, pair] of fields) {
    const times = await presses(page, client, RUNS, field, pair, PAUSE);
    rows.push(...editRows(`9 openings, ${name}, hold stage`, times));
  }
  return rows;
}

/** 200 openings, each of a size of its own: what no memory of like shapes helps with. */
async function many({ page, client, address }) {
  const job = rectangles((await ask(address, 'openJob', { id: 'demo-camper' })).job, 200);
  await ask(address, 'saveJob', { job, basedOn: null });
  await page.goto(new URL(`/jobs/${job.id}/openings/W100`, address).href);
  await page.waitForSelector('.opening-large');
  await page.waitForTimeout(15_000);
  const times = await keys(page, client, RUNS, 'Bottom side', '797.5', ['4', '5'], 300);
  return editRows('200 openings of 200 sizes, a reading', times);
}

async function memory({ page, client, address }) {
  await page.goto(`${address}/openings/W3`);
  await page.waitForSelector('.opening-large');
  await worked(page);
  const found = await memoryHeld(page, client, [500, 2500, 5000]);
  const held = found.map(([edits, mb]) => `${mb.toFixed(1)} MB after ${edits} edits`).join(', ');
  return [`Memory of the page's own scripts, nine openings, after collection: ${held}.`];
}

const PARTS = { first: firstDrawings, openings: readings, panels: allowance, hold: holdStage, many };
const asked = (part) => !wanted || wanted.includes(part);

const data = mkdtempSync(join(tmpdir(), 'panewright-bench-'));
await ensureBuilt();
const { server, demo: address } = await serve(data);
const browser = await startBrowser();
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const client = await page.context().newCDPSession(page);
  await client.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.addInitScript(watchFirst);
  const bench = { page, client, address };
  const rows = [];
  for (const [name, part] of Object.entries(PARTS)) if (asked(name)) rows.push(...(await part(bench)));
  const notes = asked('memory') ? await memory(bench) : [];
  report({ rows, notes, version: browser.version() });
} finally {
  await browser.close();
  server.kill();
  rmSync(data, { recursive: true, force: true });
}
