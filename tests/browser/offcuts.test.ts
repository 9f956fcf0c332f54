import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { accessFaults } from './accessFaults.ts';
import { faultsOf, type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;

beforeAll(async () => {
  opened = await openBrowser(data, { keepsPage: true });
});
afterAll(() => opened?.close());

const workedOut = (page: Page) =>
  page.locator('.station-waits').first().waitFor({ state: 'detached', timeout: 100_000 });

// Oracle for the sizes: the 3-4-5 triangle. Sides 24 and 18 in have a diagonal of 30 in exactly.
const READINGS = {
  'Bottom side': '24',
  'Right side': '18',
  'Top side': '24',
  'Left side': '18',
  'Diagonal, bottom left to top right': '30',
  'Diagonal, top left to bottom right': '30',
  'Radius, bottom left': '2',
  'Radius, bottom right': '2',
  'Radius, top right': '2',
  'Radius, top left': '2',
};

/** 3000 × 2250 dots, as its frame header says. */
const A_PHOTO = fileURLToPath(new URL('../../packages/photo/src/reference/01_easy.jpg', import.meta.url));
const NO_PICTURE = { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('not a picture') };

/** A photo is taken of Rest A, looked at, taken out, put back, and there after the server was killed, and without a server. */
async function photographed(page: Page): Promise<void> {
  const choose = (file: string | typeof NO_PICTURE) =>
    page.locator('.offcut-list input[type=file]').setInputFiles(file);
  await choose(NO_PICTURE);
  await page.getByText('This browser cannot show “notes.jpg”').waitFor();
  await choose(A_PHOTO);
  await page.getByText('“Rest A” has a photo.').waitFor();
  const thumb = page.getByRole('button', { name: 'Show the photo large: Rest A' });
  await page.locator('.offcut-photo').scrollIntoViewIfNeeded();
  await thumb.locator('img').waitFor();
  await page.getByRole('button', { name: 'Remove the photo: Rest A' }).click();
  await page.getByText('The photo of “Rest A” is out.').waitFor();
  await thumb.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Put the earlier photo back' }).click();
  await thumb.locator('img').waitFor();
  await page.locator('.offcut-list summary').click();
  await page.getByRole('button', { name: 'Enter a hole: Rest A' }).click();
  await page.getByText('“Rest A” has a hole more').waitFor();
  await page.getByRole('button', { name: 'As before' }).click();
  await page.getByText('Holes and faults', { exact: true }).waitFor();
  await opened.stopServer();
  await opened.startServer();
  // Another browser has no copy: it is the server's.
  const other = await opened.browser.newPage({ viewport: { width: 390, height: 844 } });
  await other.goto(page.url());
  const there = other.getByRole('button', { name: 'Show the photo large: Rest A' });
  await other.locator('.offcut-photo').scrollIntoViewIfNeeded();
  await there.locator('img').waitFor();
  expect(await other.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
    0,
  );
  // From then on it has one, and shows it offline.
  await other.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await opened.stopServer();
  await other.reload();
  await other.locator('.offcut-photo').scrollIntoViewIfNeeded();
  await there.locator('img').waitFor();
  await opened.startServer();
  await there.press('Enter');
  const large = other.getByRole('dialog').getByRole('img', { name: 'Photo of the offcut “Rest A”' });
  const size = await large.evaluate((img: HTMLImageElement) => [img.naturalWidth, img.naturalHeight]);
  expect(size).toEqual([1600, 1200]);
  await other.keyboard.press('Escape');
  await other.getByRole('dialog').waitFor({ state: 'detached' });
  await other.close();
}

test('what one job leaves is kept, and the next job is cut from it before anything is bought', {
  timeout: 240_000,
}, async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1800 } });
  const faults = faultsOf(page);
  const origin = new URL(opened.address).origin;
  await page.goto(`${origin}/jobs/demo-camper/cutting/W1`);
  await workedOut(page);
  await page.getByText('No offcut is kept yet.').waitFor();
  await page
    .getByRole('button', { name: /^Keep it: / })
    .first()
    .click();
  await page.getByLabel('Name on its label').fill('');
  await page.getByRole('button', { name: 'Keep it', exact: true }).click();
  await page.getByText('Give it a name first: it is what its label says.').waitFor();
  await page.getByLabel('Name on its label').fill('Rest A');
  await page.getByLabel('Where it lies').fill('shelf 2');
  await page.getByRole('button', { name: 'Keep it', exact: true }).click();
  await page.getByText('“Rest A” is in stock.').waitFor();
  await page.getByText('kept as “Rest A”').waitFor();
  await photographed(page);

  await page.goto(`${origin}/`);
  await page.getByLabel('Name of the job').fill('One small window');
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.getByRole('button', { name: 'Add an opening' }).click();
  for (const [name, entered] of Object.entries(READINGS))
    await page.getByLabel(name, { exact: true }).fill(entered);
  await workedOut(page);
  await page.locator('.station', { hasText: 'Cutting' }).first().click();
  await page.getByRole('heading', { name: 'Lay L1: on the offcut “Rest A”' }).waitFor();
  await page.getByText(/^Offcuts save .* of /).waitFor();
  await page.getByText(/^Note\. Offcuts of the stock take \d+ of the pieces: Rest A \(shelf 2\)\./).waitFor();
  expect(await accessFaults(page, 'practice')).toEqual([]);
  await page.getByRole('button', { name: 'Not for this job: Rest A' }).click();
  await page.getByText('left be by this job').waitFor();
  await workedOut(page);
  await page.getByRole('heading', { name: /^Lay L1: on the offcut/ }).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('heading', { name: 'Lay L1: on the offcut “Rest A”' }).waitFor();
  await page.getByRole('button', { name: 'It is cut: Rest A' }).click();
  await page.getByText('used, lay L1, cut for this job').waitFor();
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await page.getByRole('button', { name: 'Remove: Rest A' }).click();
  await page.getByText('“Rest A” is out of stock.').waitFor();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByText('“Rest A” is in stock.').waitFor();
  expect(faults).toEqual([]);
  await page.close();
});
