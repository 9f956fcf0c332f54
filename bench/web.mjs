// Key press to new drawing at nine and at 200 openings, in Chromium against the real server; script bytes; first drawing;
// memory after 5,000 edits. Run: node bench/web.mjs [runs] [--write]
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { ensureBuilt } from '../tools/run/build.mjs';
import { findChromium } from '../tools/run/chromium.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const RUNS = Number(process.argv[2] ?? 120) || 120;
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

const quantile = (values, share) =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))];
const ms = (value) => value.toFixed(1);

/** Serves a fresh data folder on a free port; answers with the address of the demo. */
async function serve(data) {
  const server = spawn(process.execPath, [at('tools/run/start.mjs')], {
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: '0', PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const chunk of server.stdout) {
    text += chunk;
    const address = /http:\S+/.exec(text);
    if (address) return { server, address: address[0] };
  }
  throw new Error('the server ended before it gave its address');
}

/** In the page: notes when a key went down, when the outline changed, and when that was painted. */
function watch() {
  const times = [];
  let down = null;
  addEventListener('keydown', (event) => (down = event.timeStamp), true);
  new MutationObserver(() => {
    if (down === null) return;
    const record = { drawn: performance.now() - down };
    const from = down;
    down = null;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => {
        record.painted = performance.now() - from;
        times.push(record);
      };
      channel.port2.postMessage(null);
    });
  }).observe(document.querySelector('main'), { subtree: true, attributes: true, attributeFilter: ['d'] });
  window.benchTimes = times;
}

/** Types the last digit of a decimal anew, over and over: with it and without it the entry is a good one. */
async function keys(page, client, field, start, pairs, pause) {
  await page.evaluate(watch);
  await page.getByLabel(field).first().fill(start);
  await page.keyboard.press('End');
  await page.waitForTimeout(1000);
  const before = await busyTime(client);
  for (let run = 0; run < RUNS; run++) {
    await page.keyboard.press('Backspace');
    await page.waitForTimeout(pause);
    await page.keyboard.press(pairs[run % pairs.length]);
    await page.waitForTimeout(pause);
  }
  await page.waitForTimeout(300);
  const busy = ((await busyTime(client)) - before) / (2 * RUNS);
  return { times: await page.evaluate(() => window.benchTimes.slice(10)), busy };
}

/** Presses two keys in turn on a slider or a list, over and over: each is a change of the plan and a new drawing. */
async function presses(page, client, field, pair, pause) {
  await page.evaluate(watch);
  await field.focus();
  await page.waitForTimeout(500);
  const before = await busyTime(client);
  for (let run = 0; run < 2 * RUNS; run++) {
    await page.keyboard.press(pair[run % 2]);
    await page.waitForTimeout(pause);
  }
  await page.waitForTimeout(300);
  const busy = ((await busyTime(client)) - before) / (2 * RUNS);
  return { times: await page.evaluate(() => window.benchTimes.slice(10)), busy };
}

/** The hold stage of a window: wind, glass and magnet changed by key. */
async function holdStage(page, client, address) {
  await page.goto(`${address}/hold/W3`);
  await page.waitForSelector('.wind-plot');
  await page.waitForSelector('.station-waits', { state: 'detached', timeout: 300_000 });
  const slider = (name) => page.getByRole('slider', { name });
  const arrows = ['ArrowRight', 'ArrowLeft'];
  const wind = await presses(page, client, slider('Mean wind it is to stand, parked, slider'), arrows, 120);
  const gap = await presses(page, client, slider('Thickest pane of W3, slider'), arrows, 120);
  const magnet = page.getByLabel('Magnet in the panel');
  const pair = await presses(page, client, magnet, ['ArrowDown', 'ArrowUp'], 120);
  const point = page.getByRole('slider', { name: /^Hold point 2,/ });
  const moved = await presses(page, client, point, arrows, 120);
  return [
    ['9 openings, the wind slider, hold stage', wind],
    ['9 openings, the glass slider, hold stage', gap],
    ['9 openings, another magnet, hold stage', pair],
    ['9 openings, a hold point moved, hold stage', moved],
  ];
}

/** Time the page's own thread has spent on a processor, ms: what a loaded machine does not inflate. */
async function busyTime(client) {
  const { metrics } = await client.send('Performance.getMetrics');
  return 1000 * metrics.find((one) => one.name === 'TaskDuration').value;
}

/** The figures as a table; with --write it goes into docs/bench.md, in place of the one before. */
function report({ scripts, firsts, version, keyed, memory }) {
  const both = (values) => `${ms(quantile(values, 0.5))} | ${ms(quantile(values, 0.95))}`;
  const bytes = (list) => (list.reduce((sum, name) => sum + gzipped(name), 0) / 1000).toFixed(1);
  const rows = [
    `| script before the first drawing, kB gzip (${scripts.before.length} files) | ${bytes(scripts.before)} | |`,
    `| script by the time all is worked out, kB gzip (${scripts.after.length} files) | ${bytes(scripts.after)} | |`,
    `| first drawing, warm server, ms (n ${firsts.length}) | ${both(firsts)} |`,
  ];
  for (const [name, { times, busy }] of keyed) {
    for (const [what, words] of [
      ['drawn', 'key to new drawing in the page'],
      ['painted', 'key to painted'],
    ])
      rows.push(`| ${name}: ${words}, ms (n ${times.length}) | ${both(times.map((one) => one[what]))} |`);
    rows.push(`| ${name}: processor time of the page's thread per key, ms | ${ms(busy)} | |`);
  }
  const where = `${cpus()[0].model.trim()}, ${cpus().length} cores, load ${loadavg()[0].toFixed(1)}, Node ${process.versions.node}, Chromium ${version}`;
  const table = ['| | median | 95 % |', '|---|---|---|', ...rows].join('\n');
  const kept = `Memory of the page's own scripts, nine openings, after collection: ${memory.map(([edits, mb]) => `${mb.toFixed(1)} MB after ${edits} edits`).join(', ')}.`;
  const text = `${where}.\n\n${table}\n\n${kept}`;
  console.log(text);
  if (process.argv.includes('--write'))
    recordBench('bench/web.mjs', `## The page: \`npm run bench -- web\`\n\n${text}`);
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

/** A job of rectangles, each of a size of its own, every side, diagonal and corner read. */
function rectangles(job, count) {
  const reading = (of, value) => ({ of, entered: `${value.toFixed(1)}`, unit: 'mm' });
  const openings = Array.from({ length: count }, (_, index) => {
    const [wide, high] = [500 + 3 * index, 400 + ((7 * index) % 300)];
    const across = Math.hypot(wide, high);
    const readings = [
      ...['bottom', 'top'].map((of) => reading(of, wide)),
      ...['right', 'left'].map((of) => reading(of, high)),
      ...['rising', 'falling'].map((of) => reading(of, across)),
      ...['radiusBottomLeft', 'radiusBottomRight', 'radiusTopRight', 'radiusTopLeft'].map((of) =>
        reading(of, 40),
      ),
    ];
    const { glazing } = job.openings[0];
    return {
      ...{
        id: `W${index + 1}`,
        name: `Window ${index + 1}`,
        place: '',
        glazing,
        exit: false,
        driving: false,
      },
      ...{
        survey: { method: 'tape', diagonalsTo: 'sharp', readings },
        obstructions: [],
        choices: {},
        notes: '',
      },
    };
  });
  return { ...job, id: `bench-${count}`, name: `${count} openings`, units: 'mm', openings };
}

async function ask(address, name, input) {
  const response = await fetch(new URL(`/api/${name}`, address), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(input),
  });
  if (!response.ok) throw new Error(`${name}: ${await response.text()}`);
  return response.json();
}

/** Edits one reading over and over in the page itself, a frame for each; says what memory is held on the way. */
async function hold(page, client, edits) {
  const used = async () => {
    await client.send('HeapProfiler.collectGarbage');
    return (await client.send('Runtime.getHeapUsage')).usedSize / 1e6;
  };
  const found = [[0, await used()]];
  for (const until of edits) {
    const count = until - found.at(-1)[0];
    await page.evaluate(typeFor, { label: 'Bottom side', count });
    await page.waitForTimeout(1500);
    found.push([until, await used()]);
  }
  return found;
}

async function typeFor({ label, count }) {
  const field = [...document.querySelectorAll('label')].find((one) =>
    one.textContent.includes(label),
  ).control;
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
  for (let edit = 0; edit < count; edit++) {
    set.call(field, `${36 + (edit % 16) / 16}`);
    field.dispatchEvent(new Event('input', { bubbles: true }));
    if (edit % 10 === 9) field.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
    await new Promise((then) => requestAnimationFrame(then));
  }
}

const data = mkdtempSync(join(tmpdir(), 'panewright-bench-'));
await ensureBuilt();
const { server, address } = await serve(data);
const browser = await chromium.launch({ executablePath: findChromium(), args: FLAGS.split(' ') });
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const client = await page.context().newCDPSession(page);
  await client.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.addInitScript(watchFirst);
  const worked = () => page.waitForSelector('.station-waits', { state: 'detached', timeout: 300_000 });
  const firsts = [];
  const scripts = {};
  for (let run = 0; run < 6; run++) {
    await page.goto('about:blank');
    await page.goto(`${address}/openings/W3`);
    await page.waitForSelector('.opening-large');
    firsts.push(await page.evaluate(() => window.firstDrawn));
    scripts.before ??= await page.evaluate(scriptsUntil, firsts[0]);
  }
  await worked();
  scripts.after = await page.evaluate(scriptsUntil, null);
  const edits = await keys(page, client, 'Bottom side', '36.5', ['4', '5'], 120);
  await page.goto(`${address}/panels/W3`);
  await page.waitForSelector('.panel-face');
  await worked();
  const panel = await keys(page, client, 'Fit allowance, all round', '0.25', ['4', '5'], 120);
  const held = await holdStage(page, client, address);
  await page.goto(`${address}/openings/W3`);
  await page.waitForSelector('.opening-large');
  await worked();
  const memory = process.argv.includes('--no-memory') ? [] : await hold(page, client, [500, 2500, 5000]);
  const many = rectangles((await ask(address, 'openJob', { id: 'demo-camper' })).job, 200);
  await ask(address, 'saveJob', { job: many, basedOn: null });
  await page.goto(new URL(`/jobs/${many.id}/openings/W100`, address).href);
  await page.waitForSelector('.opening-large');
  await page.waitForTimeout(15_000);
  const two = await keys(page, client, 'Bottom side', '797.5', ['4', '5'], 300);
  report({
    scripts,
    firsts: firsts.slice(1),
    version: browser.version(),
    keyed: [
      ['9 openings, a reading', edits],
      ['9 openings, the fit allowance, panels stage', panel],
      ...held,
      ['200 openings of 200 sizes, a reading', two],
    ],
    memory,
  });
} finally {
  await browser.close();
  server.kill();
  rmSync(data, { recursive: true, force: true });
}
