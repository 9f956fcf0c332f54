// Pictures of every screen for docs/screens, from the built program in Chromium. Run: node apps/web/screens.mjs [NAME …]
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBuilt } from '../../tools/run/build.mjs';
import { findChromium } from '../../tools/run/chromium.mjs';
import { at } from '../../tools/run/root.mjs';
import { EVERY_SCREEN, showScreen } from './everyScreen.mjs';

const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
const BENCH = { viewport: { width: 1440, height: 900 } };
/** Pictured in the dark theme too, and as a phone shows them. */
const IN_DARK = ['openings', 'hold', 'cutting', 'conflict'];
const ON_PHONE = [
  'openings',
  'hold',
  'window',
  'photo',
  'price',
  'search',
  'library',
  'conflict',
  'compare',
  'elevations',
  'empty',
];
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
/** The pictures: file, screen, device, theme. In the order of the screens, as the later ones change the demo. */
const PICTURES = EVERY_SCREEN.flatMap(([name]) => [
  [name, name, BENCH, 'light'],
  ...(IN_DARK.includes(name) ? [[`${name}-dark`, name, BENCH, 'dark']] : []),
  ...(ON_PHONE.includes(name) ? [[`phone-${name}`, name, PHONE, name === 'hold' ? 'dark' : 'light']] : []),
]);

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
  for (const [name, screen, device, colorScheme] of PICTURES) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    const page = await browser.newPage({ ...device, colorScheme });
    await showScreen(
      page,
      address,
      EVERY_SCREEN.find((one) => one[0] === screen),
    );
    await page.waitForTimeout(200);
    await page.screenshot({ path: at('docs/screens', `${name}.png`) });
    await page.close();
  }
} finally {
  await browser.close();
  server.kill();
  rmSync(data, { recursive: true, force: true });
}
