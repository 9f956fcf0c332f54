import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { accessFaults, nameless } from './accessFaults.ts';
import { type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;

beforeAll(async () => {
  opened = await openBrowser(data);
});
afterAll(() => opened?.close());

const STAGES = [
  'Job',
  'Openings',
  'Patterns',
  'Panels',
  'Hold',
  'Cutting',
  'Take-off',
  'Price',
  'Sheets',
  'To look at',
];

// Oracle: axe-core's rules for WCAG 2.0, 2.1 and 2.2, levels A and AA, run in the browser; contrast is measured by it.
test('no screen has a fault of access, in the light theme or in the dark', {
  timeout: 300_000,
}, async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 900 } });
  const found: string[] = [];
  const look = async (screen: string) => {
    await page.locator('.working').first().waitFor({ state: 'detached', timeout: 100_000 });
    found.push(...(await nameless(page)).map((one) => `${screen}: ${one}`));
    for (const [colorScheme, asked] of [
      ['light', 'practice'],
      ['dark', 'contrast'],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      found.push(...(await accessFaults(page, asked)).map((one) => `${screen}, ${colorScheme}: ${one}`));
    }
  };
  const go = async (path: string) => {
    await page.goto(`${opened.address}${path}`);
    await page.locator('main h2').first().waitFor();
  };
  await go('/');
  await look('jobs');
  await go('/jobs/demo-camper/openings/W7');
  for (const stage of STAGES) {
    await page.locator('.station', { hasText: stage }).first().click();
    await page.locator('.station[aria-current]', { hasText: stage }).waitFor();
    await look(stage);
  }
  await page.getByRole('link', { name: /^Saved, revision/ }).click();
  await page.getByRole('heading', { name: 'Revisions' }).waitFor();
  await page.getByRole('button', { name: 'Compare revision 1 with another' }).click();
  await page.locator('.compare [role="status"]').waitFor();
  await look('revisions');
  const menu = page.getByRole('button', { name: 'Menu' });
  await menu.click();
  await look('menu');
  await page.getByRole('button', { name: 'Keys' }).click();
  await look('keys');
  await page.keyboard.press('Escape');
  // The menu went with the dialog, and its button has the focus again.
  expect(await menu.evaluate((button) => button === document.activeElement)).toBe(true);
  expect(await page.getByRole('group', { name: 'Menu' }).isVisible()).toBe(false);
  await page.keyboard.press('/');
  await page.getByRole('dialog').getByRole('searchbox').fill('quarter');
  await look('search');
  await page.keyboard.press('Escape');
  await page.goto(`${opened.address}/jobs/demo-camper/window/W3`);
  await page.locator('.keypad').waitFor();
  await look('at the window');
  await go('/jobs/demo-camper/elevations');
  await page.getByRole('button', { name: 'Add a side' }).click();
  await page.getByRole('button', { name: /^Put W1/ }).click();
  await page.locator('.side-opening').waitFor();
  await look('elevations');
  await page.goto(`${opened.address}/patterns`);
  await page.getByLabel(/^Find by name/).waitFor();
  await look('library');
  await go('/catalogue');
  await page.evaluate(() => {
    for (const one of document.querySelectorAll('details')) one.open = true;
  });
  await look('catalogue');
  expect(found).toEqual([]);
  await page.close();
});
