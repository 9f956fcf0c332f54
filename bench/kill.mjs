// Edits in the page while the server, the network or the tab is ended at random moments: is any reading lost that the
// page had said to be kept? Run: node bench/kill.mjs [rounds] [seed] [--write]
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBuilt } from '../tools/run/build.mjs';
import { recordBench } from '../tools/run/recordBench.mjs';
import { at } from '../tools/run/root.mjs';
import { addressOf, ask, startBrowser } from '../tools/run/served.mjs';
import { ledger } from './killLedger.mjs';

const MEANS = ['server', 'network', 'tab', 'crash'];
const FIELDS = ['Bottom side', 'Right side', 'Top side', 'Left side'];
/** Somewhat below what stands in the demo, mm: what is typed lies within 30 mm above. */
const LEAST = [900, 495, 900, 495];
const JOB = 'killed';
/** A random moment of a round's edits, ms. */
const LONGEST = 1200;
/** The server's own document is compared with the page after so many rounds, and after the last. */
const COMPARED = 10;

/** A server that has read its program and waits to be let go: the next round's, made ready while this one runs. */
function spareServer(data) {
  const built = JSON.stringify(at('apps/server/dist/server.mjs'));
  const program = `const { serve } = await import(${built});
process.stdin.once('data', async (port) => {
  process.env.PANEWRIGHT_PORT = String(port).trim();
  await serve({ root: ${JSON.stringify(at('.'))} });
});`;
  return spawn(process.execPath, ['--input-type=module', '-e', program], {
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
}

async function started(server, port) {
  server.stdin.write(`${port}\n`);
  return (await addressOf(server)).address;
}

const ended = (server) =>
  new Promise((gone) => {
    server.once('exit', gone);
    server.kill('SIGKILL');
  });

/** In the page: types a reading; null once the page calls it kept, else what it says of it after `patience`. */
async function typeReading({ field, value, patience }) {
  const { control } = [...document.querySelectorAll('.reading label')].find(
    (one) => one.textContent === field,
  );
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(control, value);
  control.dispatchEvent(new Event('input', { bubbles: true }));
  const until = performance.now() + patience;
  while (performance.now() < until) {
    await new Promise((then) => setTimeout(then, 1));
    if (document.querySelector('[data-kept="true"]')) return null;
  }
  return document.querySelector('[data-kept]')?.textContent ?? '';
}

/** In the page: the readings as they stand there. */
const readingsThere = (fields) =>
  fields.map(
    (field) =>
      [...document.querySelectorAll('.reading label')].find((one) => one.textContent === field).control.value,
  );

/** Throws of a dice that are the same for the same seed. */
function diceOf(seed) {
  let state = seed;
  return (sides) => {
    state = (state * 48271) % 2147483647;
    return Math.floor((sides * state) / 2147483647);
  };
}

/** The program, a browser on it, and a job of two windows, small so that little else than keeping is at work. */
async function setUp() {
  const data = mkdtempSync(join(tmpdir(), 'panewright-kill-'));
  const server = spareServer(data);
  const address = await started(server, '0');
  const { job } = await ask(address, 'openJob', { id: 'demo-camper' });
  const openings = job.openings.filter(({ id }) => id === 'W3' || id === 'W4');
  await ask(address, 'saveJob', { job: { ...job, id: JOB, openings }, basedOn: null });
  const browser = await startBrowser();
  const context = await browser.newContext();
  const url = `${address}/jobs/${JOB}/openings/W3`;
  const state = { late: 0, data, server, spare: spareServer(data), address, url, browser, context };
  state.page = await context.newPage();
  return state;
}

/** Gives the readings as they stand; a page that does not open in time is told of, and opened once more. */
async function open(state, again = false) {
  await state.page.goto(state.url);
  const drawn = state.page.waitForSelector('.opening-large', { timeout: 60_000 });
  const fault = await drawn.then(
    () => null,
    (error) => error,
  );
  if (fault && again) throw fault;
  if (fault) {
    state.late++;
    console.log(`not open in a minute: ${(await state.page.locator('body').textContent()).slice(0, 200)}`);
    return open(state, true);
  }
  return state.page.evaluate(readingsThere, FIELDS);
}

async function tabGone(state, means) {
  const { page } = state;
  if (means === 'crash') {
    const client = await state.context.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    client.send('Page.crash').catch(() => {});
    await crashed;
  }
  await page.close();
  state.page = await state.context.newPage();
}

/** Types into one field after another until told to stop or the page is gone. */
async function edits(state, book, throwDice, until) {
  const { page } = state;
  try {
    while (!until.over) {
      const field = throwDice(FIELDS.length);
      const value = `${(LEAST[field] + (book.typed() % 3000) / 100).toFixed(2)} mm`;
      const place = book.type(field, value);
      const unsaid = await page.evaluate(typeReading, { field: FIELDS[field], value, patience: 400 });
      if (unsaid === null) book.said(place, until.away);
      else if (process.env.PANEWRIGHT_SHOW_ROUNDS) console.log(`not said: ${unsaid}`);
      // Now and then a pause, up to longer than the page waits before it saves.
      if (throwDice(3) === 0) await new Promise((then) => setTimeout(then, throwDice(700)));
    }
  } catch (fault) {
    // The tab is gone amid an edit: whether it is kept is not known, and the book says so.
    if (!page.isClosed() && !/crash/i.test(fault.message)) console.log(fault.message);
  }
}

/** One round: edits, an end at a random moment, edits on while away, the job opened anew and read. */
async function round(state, book, throwDice) {
  const means = MEANS[throwDice(MEANS.length)];
  const until = { over: false, away: false };
  const typing = edits(state, book, throwDice, until);
  await new Promise((then) => setTimeout(then, throwDice(LONGEST)));
  const isTab = means === 'tab' || means === 'crash';
  until.away = !isTab;
  const upTo = book.saidCount();
  if (means === 'server') await ended(state.server);
  else if (means === 'network') await state.context.setOffline(true);
  if (!isTab) await new Promise((then) => setTimeout(then, throwDice(LONGEST)));
  // In two of three rounds without a server or a network the tab goes too, while they are still away.
  if (isTab || throwDice(3) > 0) await tabGone(state, isTab ? means : MEANS[2 + throwDice(2)]);
  until.over = true;
  await typing;
  const found = [];
  if (!isTab && throwDice(2) === 0) found.push(['away', await open(state)]);
  if (means === 'server') {
    state.server = state.spare;
    await started(state.server, new URL(state.address).port);
    state.spare = spareServer(state.data);
  } else if (means === 'network') await state.context.setOffline(false);
  // Now and then the list of jobs comes first: it saves what closed pages left.
  if (throwDice(5) === 0) {
    await state.page.goto(`${state.address}/`);
    await state.page
      .getByRole('link', { name: /camper/i })
      .first()
      .waitFor();
  }
  found.push(['back', await open(state)]);
  return { means, upTo, lost: found.flatMap(([when, values]) => book.check(values, when)) };
}

/** What the server has, once the page says that all is saved. */
async function compare(state, book) {
  await state.page.getByText(/^Saved, revision \d+$/).waitFor({ timeout: 30_000 });
  const { job } = await ask(state.address, 'openJob', { id: JOB });
  const { readings } = job.openings.find(({ id }) => id === 'W3').survey;
  const value = (of) => readings.find((one) => one.of === of).entered;
  return book.check(['bottom', 'right', 'top', 'left'].map(value), 'at the server');
}

/** Runs the rounds; gives what was lost, and how often each means was used. */
export async function killRounds(rounds, seed = 1) {
  const throwDice = diceOf(seed);
  const state = await setUp();
  const counts = { server: 0, network: 0, tab: 0, crash: 0 };
  const lost = [];
  let withSaid = 0;
  try {
    const book = ledger(await open(state));
    await state.page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
    for (let done = 0; done < rounds; done++) {
      const before = book.saidCount();
      const one = await round(state, book, throwDice);
      counts[one.means]++;
      if (one.upTo > before) withSaid++;
      const end = (done + 1) % COMPARED === 0 || done + 1 === rounds;
      for (const fault of [...one.lost, ...(end ? await compare(state, book) : [])])
        lost.push({ round: done, means: one.means, ...fault });
      if (process.env.PANEWRIGHT_SHOW_ROUNDS) console.log(done, one.means, JSON.stringify(book.sums()));
    }
    return { rounds, counts, ...book.sums(), withSaid, late: state.late, lost };
  } finally {
    await state.browser.close();
    state.server.kill('SIGKILL');
    state.spare.kill('SIGKILL');
    rmSync(state.data, { recursive: true, force: true });
  }
}

if (process.argv[1]?.endsWith('kill.mjs')) {
  await ensureBuilt();
  const start = performance.now();
  const [rounds, seed] = process.argv.slice(2).map(Number);
  const run = await killRounds(rounds || 300, seed || 1);
  const { counts } = run;
  const table = [
    '| | |',
    '|---|---|',
    `| rounds (server ended, network cut, tab closed, tab crashed) | ${run.rounds} (${counts.server}, ${counts.network}, ${counts.tab}, ${counts.crash}) |`,
    `| rounds in which a reading had been said to be kept before the end came | ${run.withSaid} |`,
    `| readings typed | ${run.typed} |`,
    `| readings the page had said to be kept | ${run.said} |`,
    `| of these, without a server or a network: kept in the browser only | ${run.saidAway} |`,
    `| times the readings were looked at anew (job opened without server or network, opened again, at the server) | ${run.checks} (${run.checkedAway}, ${run.checkedBack}, ${run.checkedServer}) |`,
    `| times a job took more than a minute to open | ${run.late} |`,
    `| readings lost | ${run.lost.length} |`,
  ].join('\n');
  for (const one of run.lost) console.log(JSON.stringify(one));
  const seconds = (performance.now() - start) / 1000 / run.rounds;
  const about = `Readings typed into four fields of a job of two windows while the server (SIGKILL), the network or the tab is ended at a random moment; where the server or the network goes, typing goes on, and in two of three such rounds the tab goes as well. Then the job is opened anew, in half of those rounds while still away, and read; every ${COMPARED} rounds the server's own document too. A reading counts as said once the page shows that it is kept; what is read must be a state the page was in then or later. ${seconds.toFixed(1)} s a round, load ${loadavg()[0].toFixed(1)} on 2 cores.`;
  console.log(`${about}\n\n${table}`);
  if (process.argv.includes('--write'))
    recordBench('bench/kill.mjs', `## Nothing lost: \`npm run bench -- kill\`\n\n${about}\n\n${table}`);
  process.exitCode = run.lost.length === 0 ? 0 : 1;
}
