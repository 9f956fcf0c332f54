import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { faultsOf, type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;

beforeAll(async () => {
  opened = await openBrowser(data);
});
afterAll(() => opened?.close());

test('a side is drawn, an opening put on it, dragged, moved by a key, and found there again', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1400 } });
  const faults = faultsOf(page);
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W7`);
  await page.getByRole('link', { name: 'Elevations' }).click();
  await page.getByText('No side is drawn yet.').waitFor();
  await page.getByRole('button', { name: 'Add a side' }).click();
  await page.getByLabel('Name of the side').fill('Left side');
  await page.getByRole('button', { name: /^Put W7/ }).click();
  const opening = page.getByRole('button', { name: /^W7/ });
  const left = page.getByRole('group', { name: /^W7/ }).getByLabel('From the left');
  const before = (await opening.boundingBox())!;
  const at = await left.inputValue();
  await page.mouse.move(before.x + before.width / 2, before.y + before.height / 2);
  await page.mouse.down();
  await page.mouse.move(before.x + before.width / 2 + 60, before.y + before.height / 2 - 20, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => Math.round((await opening.boundingBox())!.x - before.x)).toBeCloseTo(60, -1);
  expect(await left.inputValue()).not.toBe(at);

  // In inches an arrow moves by one inch: 25.4 mm.
  await left.fill('40');
  await opening.focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => left.inputValue()).toBe('41');
  await page.keyboard.press('Control+z');
  await expect.poll(() => left.inputValue()).toBe('40');
  await page
    .getByText(/^Saved, revision \d+$/)
    .first()
    .waitFor({ timeout: 20_000 });
  await page.reload();
  await page.getByRole('group', { name: 'Left side with 1 opening in place' }).waitFor();
  expect(await left.inputValue()).toBe('40');
  await opening.focus();
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/openings\/W7$/);
  expect(faults).toEqual([]);
  await page.close();
});
