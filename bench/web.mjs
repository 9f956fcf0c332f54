// Key press to new drawing on the nine-window demo, in Chromium against the real server; script bytes; first drawing.
// Run: node bench/web.mjs [runs] [--write]
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { ensureBuilt } from '../tools/run/build.mjs';
import { findChromium } from '../tools/run/chromium.mjs';
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

/** Time the page's own thread has spent on a processor, ms: what a loaded machine does not inflate. */
async function busyTime(client) {
  const { metrics } = await client.send('Performance.getMetrics');
  return 1000 * metrics.find((one) => one.name === 'TaskDuration').value;
}

/** The figures as a table; with --write it goes into docs/bench.md, in place of the one before. */
function report({ bytes, first, firsts, version, edits, panel }) {
  const both = (values) => `${ms(quantile(values, 0.5))} | ${ms(quantile(values, 0.95))}`;
  const rows = [
    `| script before the first drawing, kB gzip (${first.length} file) | ${(bytes / 1000).toFixed(1)} | |`,
    `| first drawing, warm server, ms (n ${firsts.length}) | ${both(firsts)} |`,
  ];
  for (const [name, { times, busy }] of [
    ['a reading, openings stage', edits],
    ['the fit allowance, panels stage', panel],
  ]) {
    for (const [what, words] of [
      ['drawn', 'key to new drawing in the page'],
      ['painted', 'key to painted'],
    ])
      rows.push(`| ${name}: ${words}, ms (n ${times.length}) | ${both(times.map((one) => one[what]))} |`);
    rows.push(`| ${name}: processor time of the page's thread per key, ms | ${ms(busy)} | |`);
  }
  const where = `${cpus()[0].model.trim()}, ${cpus().length} cores, load ${loadavg()[0].toFixed(1)}, Node ${process.versions.node}, Chromium ${version}`;
  const table = ['| nine-window demo | median | 95 % |', '|---|---|---|', ...rows].join('\n');
  console.log(`${where}\n\n${table}`);
  if (process.argv.includes('--write'))
    record('bench/web.mjs', `## The page: \`npm run bench -- web\`\n\n${where}.\n\n${table}`);
}

function record(name, text) {
  const path = at('docs', 'bench.md');
  const page = existsSync(path) ? readFileSync(path, 'utf8') : '# Benchmarks\n';
  const [open, close] = [`<!-- ${name} -->`, `<!-- end of ${name} -->`];
  const [from, to] = [page.indexOf(open), page.indexOf(close)];
  const block = `${open}\n${text}\n${close}`;
  const next =
    from >= 0 && to > from
      ? page.slice(0, from) + block + page.slice(to + close.length)
      : `${page.trimEnd()}\n\n${block}\n`;
  writeFileSync(path, next);
}

const data = mkdtempSync(join(tmpdir(), 'panewright-bench-'));
await ensureBuilt();
const assets = at('apps/web/dist/assets');
const html = readFileSync(at('apps/web/dist/index.html'), 'utf8');
const first = readdirSync(assets).filter((name) => name.endsWith('.js') && html.includes(name));
const bytes = first.reduce(
  (sum, name) => sum + gzipSync(readFileSync(join(assets, name)), { level: 9 }).length,
  0,
);
const { server, address } = await serve(data);
const browser = await chromium.launch({ executablePath: findChromium(), args: FLAGS.split(' ') });
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const client = await page.context().newCDPSession(page);
  await client.send('Performance.enable', { timeDomain: 'threadTicks' });
  const firsts = [];
  for (let run = 0; run < 6; run++) {
    await page.goto('about:blank');
    await page.goto(`${address}/openings/W3`);
    await page.waitForSelector('.opening-large');
    firsts.push(await page.evaluate(() => performance.now()));
  }
  await page.waitForSelector('.late-working', { state: 'detached', timeout: 60_000 });
  const edits = await keys(page, client, 'Bottom side', '36.5', ['4', '5'], 120);
  await page.goto(`${address}/panels/W3`);
  await page.waitForSelector('.panel-face');
  const panel = await keys(page, client, 'Fit allowance, all round', '0.25', ['4', '5'], 120);
  report({ bytes, first, firsts: firsts.slice(1), version: browser.version(), edits, panel });
} finally {
  await browser.close();
  server.kill();
  rmSync(data, { recursive: true, force: true });
}
