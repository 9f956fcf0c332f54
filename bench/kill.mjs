// Edits in the page while the server, the network or the tab is ended at random moments: is any reading lost that the
// page had said to be kept? Run: node bench/kill.mjs [rounds] [--write]
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBuilt } from '../tools/run/build.mjs';
import { findChromium } from '../tools/run/chromium.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';

const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
const MEANS = ['server', 'network', 'tab'];

/** Starts the built server on a data folder; the same port again after the first time. */
async function serve(data, port) {
  const built = JSON.stringify(at('apps/server/dist/server.mjs'));
  const program = `const { serve } = await import(${built}); await serve({ root: ${JSON.stringify(at('.'))} });`;
  const server = spawn(process.execPath, ['--input-type=module', '-e', program], {
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: port, PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const chunk of server.stdout) {
    text += chunk;
    const address = /http:\/\/127\.0\.0\.1:\d+/.exec(text);
    if (address) return { server, address: address[0] };
  }
  throw new Error('the server ended before it gave its address');
}

const ended = (server) =>
  new Promise((gone) => {
    server.once('exit', gone);
    server.kill('SIGKILL');
  });

/** In the page: types a reading; says whether the page called it kept before `patience` was over. */
async function typeReading({ value, patience }) {
  const field = [...document.querySelectorAll('.reading label')].find(
    (one) => one.textContent === 'Bottom side',
  ).control;
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(field, value);
  field.dispatchEvent(new Event('input', { bubbles: true }));
  const until = performance.now() + patience;
  while (performance.now() < until) {
    await new Promise((then) => setTimeout(then, 1));
    if (document.querySelector('[data-kept="true"]')) return true;
  }
  return false;
}

/** Runs the rounds; gives what was lost, and how often each means was used. */
export async function killRounds(rounds, seed = 1) {
  let dice = seed;
  const throwDice = (sides) => {
    dice = (dice * 48271) % 2147483647;
    return dice % sides;
  };
  const data = mkdtempSync(join(tmpdir(), 'panewright-kill-'));
  let { server, address } = await serve(data, '0');
  const { port } = new URL(address);
  const browser = await chromium.launch({ executablePath: findChromium(), args: FLAGS.split(' ') });
  const context = await browser.newContext();
  const url = `${address}/jobs/demo-camper/openings/W3`;
  const counts = { server: 0, network: 0, tab: 0 };
  const lost = [];
  let [said, number] = [0, 0];
  /** The last value that was said to be kept, or stood there before; what was typed after it may be there or not. */
  let typed = [];
  /** Whether the first of them was said to be kept. */
  let isSaid = false;
  let page = await context.newPage();
  const open = async () => {
    await page.goto(url);
    await page.waitForSelector('.opening-large', { timeout: 60_000 });
  };
  try {
    await open();
    typed = [await page.locator('.reading input').first().inputValue()];
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
    for (let round = 0; round < rounds; round++) {
      const means = MEANS[throwDice(3)];
      counts[means]++;
      const wait = throwDice(700);
      const edits = (async () => {
        for (let edit = 0; edit <= throwDice(4); edit++) {
          const value = `${600 + (number++ % 5000) / 10} mm`;
          typed.push(value);
          if (await page.evaluate(typeReading, { value, patience: 400 })) {
            typed = [value];
            isSaid = true;
            said++;
          }
        }
      })().catch(() => {});
      await new Promise((then) => setTimeout(then, wait));
      if (means === 'server') await ended(server);
      else if (means === 'network') await context.setOffline(true);
      else {
        await page.close();
        page = await context.newPage();
      }
      await edits;
      // Every third time the tab goes too, while the server or the network is still away.
      if (means !== 'tab' && throwDice(3) === 0) {
        await page.close();
        page = await context.newPage();
        if (throwDice(2) === 0) await page.goto(url).catch(() => {});
      }
      if (means === 'server') ({ server } = await serve(data, port));
      else if (means === 'network') await context.setOffline(false);
      await open();
      const found = await page.locator('.reading input').first().inputValue();
      if (!typed.includes(found)) lost.push({ round, means, found, typed, isSaid });
      typed = [found];
      isSaid = false;
    }
  } finally {
    await browser.close();
    server.kill('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  }
  return { rounds, counts, said, lost };
}

if (process.argv[1]?.endsWith('kill.mjs')) {
  await ensureBuilt();
  const { rounds, counts, said, lost } = await killRounds(Number(process.argv[2]) || 300);
  const table = [
    '| | |',
    '|---|---|',
    `| rounds (server ended, network cut, tab closed) | ${rounds} (${counts.server}, ${counts.network}, ${counts.tab}) |`,
    `| readings the page had said to be kept | ${said} |`,
    `| of these lost | ${lost.length} |`,
  ].join('\n');
  for (const one of lost) console.log(JSON.stringify(one));
  console.log(table);
  const about =
    'Readings typed into the demo while the server (SIGKILL), the network or the tab is ended at a random moment, in every third round the tab as well; then the job is opened anew and the field read. A reading counts as said once the page shows that it is kept.';
  if (process.argv.includes('--write'))
    recordBench('bench/kill.mjs', `## Nothing lost: \`npm run bench -- kill\`\n\n${about}\n\n${table}`);
  process.exitCode = lost.length === 0 ? 0 : 1;
}
