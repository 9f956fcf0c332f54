// Pictures of every screen for docs/screens, from the built program in Chromium. Run: node apps/web/screens.mjs [NAME …]
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBuilt } from '../../tools/run/build.mjs';
import { findChromium } from '../../tools/run/chromium.mjs';
import { at } from '../../tools/run/root.mjs';

const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
const BENCH = { viewport: { width: 1440, height: 900 } };
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const demo = (stage) => `/jobs/demo-camper/${stage}`;

/** name, path, device, theme, and what to do before the picture. */
const SCREENS = [
  ['openings', demo('openings/W7'), BENCH, 'light'],
  ['patterns', demo('patterns/W6'), BENCH, 'light'],
  ['panels', demo('panels/W8'), BENCH, 'light'],
  ['hold', demo('hold/W3'), BENCH, 'light'],
  ['hold-dark', demo('hold/W3'), BENCH, 'dark'],
  [
    'hold-wind',
    demo('hold/W3'),
    BENCH,
    'light',
    (page) => page.locator('.wind-plot').scrollIntoViewIfNeeded(),
  ],
  ['hold-which-magnet', demo('hold/W9'), BENCH, 'light', whichMagnet],
  ['cutting', demo('cutting'), BENCH, 'light'],
  ['take-off', demo('takeOff'), BENCH, 'light'],
  ['price', demo('price'), BENCH, 'light'],
  ['sheets', demo('sheets'), BENCH, 'light'],
  ['to-look-at', demo('findings'), BENCH, 'light'],
  ['catalogue', '/catalogue', BENCH, 'light'],
  ['jobs', '/', BENCH, 'light'],
  ['phone-openings', demo('openings/W7'), PHONE, 'light'],
  ['phone-hold', demo('hold/W9'), PHONE, 'dark'],
  // Last: it changes the demo.
  ['openings-suspect', demo('openings/W2'), BENCH, 'light', misread],
  ['photo', demo('openings/W5'), BENCH, 'light', tracePhoto],
  ['photo-setup', demo('openings/W5'), BENCH, 'dark', photoSetup],
  ['phone-photo', demo('openings/W6'), PHONE, 'light', tracePhoto],
];

/** Reads what a maker would for the reference picture (packages/photo/src/reference), up to the photo. */
async function photoSetup(page) {
  await page.getByLabel('How it is measured').selectOption('photo');
  await page.getByLabel('Paper of the sheets').selectOption('A4');
  await page.getByLabel('Bar x (200 mm), as ruled').fill('200.18 mm');
  await page.getByLabel('Bar y (150 mm), as ruled').fill('150.29 mm');
  await page.getByRole('button', { name: 'Add a taped distance' }).click();
  await page.getByLabel('Distance 1, from marker').selectOption('9');
  await page.getByLabel('Distance 1, its corner').selectOption('1');
  await page.getByLabel('Distance 1, to marker').selectOption('12');
  await page.getByLabel('Distance 1, that one’s corner').selectOption('0');
  await page.getByRole('textbox', { name: 'Distance 1, as taped' }).fill('1323.9 mm');
  await page.getByRole('heading', { name: 'Photo of the traced film' }).scrollIntoViewIfNeeded();
}

async function tracePhoto(page) {
  await photoSetup(page);
  const photo = at('packages/photo/src/reference/01_easy.jpg');
  await page.getByLabel('Choose or take photos').setInputFiles(photo);
  await page.getByRole('button', { name: 'Trace the line' }).click();
  await page.getByRole('slider', { name: /^Edge/ }).nth(2).focus({ timeout: 60_000 });
  await page.locator('.photo-view').scrollIntoViewIfNeeded();
}

async function whichMagnet(page) {
  await page.getByRole('button', { name: 'Work out which magnets would hold' }).click();
  await page.locator('.which-magnet[aria-busy=false]').waitFor({ timeout: 100_000 });
  await page.locator('.which-magnet').scrollIntoViewIfNeeded();
}

async function misread(page) {
  await page.getByLabel('Diagonal, bottom left to top right', { exact: true }).fill('28 3/4');
}

async function serve(data) {
  const server = spawn(process.execPath, [at('tools/run/start.mjs')], {
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: '0', PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const chunk of server.stdout) {
    const address = /http:\/\/127\.0\.0\.1:\d+/.exec(String(chunk));
    if (address) return { server, address: address[0] };
  }
  throw new Error('the server ended before it gave its address');
}

const asked = process.argv.slice(2);
const data = mkdtempSync(join(tmpdir(), 'panewright-screens-'));
await ensureBuilt();
mkdirSync(at('docs/screens'), { recursive: true });
const { server, address } = await serve(data);
const browser = await chromium.launch({ executablePath: findChromium(), args: FLAGS.split(' ') });
try {
  for (const [name, path, device, colorScheme, act] of SCREENS) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    const page = await browser.newPage({ ...device, colorScheme });
    await page.goto(`${address}${path}`);
    await page.locator('main h2').first().waitFor();
    await act?.(page);
    await page.waitForTimeout(700);
    for (const mark of ['.station-waits', '.working'])
      await page.locator(mark).first().waitFor({ state: 'detached', timeout: 100_000 });
    await page.waitForTimeout(200);
    await page.screenshot({ path: at('docs/screens', `${name}.png`) });
    await page.close();
  }
} finally {
  await browser.close();
  server.kill();
  rmSync(data, { recursive: true, force: true });
}
