// Pictures of every screen for docs/screens, from the built program in Chromium. Run: node apps/web/screens.mjs [NAME …]
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBuilt } from '../../tools/run/build.mjs';
import { at } from '../../tools/run/root.mjs';
import { serve, startBrowser } from '../../tools/run/served.mjs';
import { EVERY_SCREEN, showScreen } from './everyScreen.mjs';

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

const asked = process.argv.slice(2);
const data = mkdtempSync(join(tmpdir(), 'panewright-screens-'));
await ensureBuilt();
mkdirSync(at('docs/screens'), { recursive: true });
const { server, address } = await serve(data);
const browser = await startBrowser();
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
