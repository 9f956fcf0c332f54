import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { accessFaults } from './accessFaults.ts';
import { faultsOf, type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;

beforeAll(async () => {
  opened = await openBrowser(data);
});
afterAll(() => opened?.close());

/** A window of four corners as a drawing in millimetres; the other is it seen from inside. Invented. */
const WINDOW = [
  [0, 0],
  [600, 0],
  [560, 400],
  [0, 380],
] as const;
const MIRRORED = WINDOW.toReversed().map(([x, y]) => [600 - x, y] as const);

const drawingOf = (corners: readonly (readonly [number, number])[]) => ({
  name: 'window.svg',
  mimeType: 'image/svg+xml',
  buffer: Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="400mm" viewBox="0 0 600 400"><path d="M${corners
      .map(([x, y]) => `${x} ${400 - y}`)
      .join('L')}Z"/></svg>`,
  ),
});

async function startJob(page: Page, name: string, site: string): Promise<void> {
  await page.goto(`${new URL(opened.address).origin}/`);
  await page.getByLabel('Name of the job').fill(name);
  await page.getByLabel('Lengths in').last().selectOption('mm');
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.getByLabel('Which one').fill(site);
}

async function addDrawn(page: Page, corners: readonly (readonly [number, number])[]): Promise<void> {
  await page.getByRole('button', { name: 'Add an opening' }).click();
  await page.getByLabel('How it is measured').selectOption('outline');
  await page.getByLabel(/^Drawing or table of points/).setInputFiles(drawingOf(corners));
  await page.getByRole('button', { name: 'Use this outline' }).click();
  await page.locator('path.opening-large').waitFor();
}

const station = (page: Page, name: string) => page.locator('.station', { hasText: name }).first().click();

test('a pattern is kept in one job, known again in the next by its shape and by its site, and used', {
  timeout: 180_000,
}, async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1800 } });
  const faults = faultsOf(page);

  await startJob(page, 'First camper', 'Marsh long');
  await addDrawn(page, WINDOW);
  await station(page, 'Patterns');
  await page.getByText('No kept pattern comes near this shape').waitFor();
  await page.getByText('Keep this pattern', { exact: true }).first().click();
  await page.getByLabel('Name', { exact: true }).fill('Marsh side window');
  await page.getByRole('button', { name: 'Keep this pattern' }).click();
  await page.getByText('Kept as “Marsh side window”.').waitFor();
  await page.getByText('This pattern is kept already, as “Marsh side window”.').waitFor();

  await startJob(page, 'Second camper', 'Another');
  await addDrawn(page, MIRRORED);
  await station(page, 'Patterns');
  const card = page.getByRole('listitem').filter({ hasText: 'Marsh side window' });
  await card.getByText(/^Fits: worst difference 0\.00 mm.* It is turned over\.$/).waitFor();
  await card.getByText('From “First camper”: W1 Window 1.').waitFor();
  expect(await accessFaults(page, 'practice')).toEqual([]);
  await card.getByRole('button', { name: 'Use it for W1: Marsh side window' }).click();
  await card.getByText(/^W1 uses it\./).waitFor();
  await station(page, 'Openings');
  await page.getByText('From the kept pattern “Marsh side window”, turned over').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText(/^From window\.svg/).waitFor();

  await page.getByRole('button', { name: 'Add an opening' }).click();
  await page.getByText('Begin from a kept pattern').click();
  await page.getByText('No kept pattern has all of “Another” in it.').waitFor();
  await page.getByLabel(/^Find by name/).fill('marsh');
  await page.getByRole('button', { name: 'Begin from it: Marsh side window', exact: true }).click();
  await page
    .getByRole('navigation', { name: /^Openings of this job/ })
    .getByText('600 × 400 mm')
    .nth(1)
    .waitFor();
  await page.getByText(/^Saved, revision/).waitFor();
  expect(await accessFaults(page, 'practice')).toEqual([]);
  expect(faults).toEqual([]);
  await page.close();
});

test('kept patterns are listed, named, taken off the list and brought back, on a phone too', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 390, height: 844 } });
  const faults = faultsOf(page);
  await page.goto(`${new URL(opened.address).origin}/patterns`);
  await page.getByText('1 pattern', { exact: true }).waitFor();
  await page.getByText('Name and notes').click();
  await page.getByLabel('Name', { exact: true }).fill(' ');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('Give the pattern a name first.').waitFor();
  await page.getByLabel('Name', { exact: true }).fill('Marsh galley');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('heading', { name: 'Marsh galley' }).waitFor();
  expect(await accessFaults(page, 'practice')).toEqual([]);
  const wide = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(await wide()).toBeLessThanOrEqual(0);
  await page.getByLabel(/^Find by name/).fill('nowhere');
  await page.getByText('No kept pattern has all of “nowhere” in it.').waitFor();
  await page.getByLabel(/^Find by name/).fill('first galley');
  await page.getByRole('button', { name: 'Remove: Marsh galley' }).click();
  await page.getByText('“Marsh galley” is off the list.').waitFor();
  await page.getByLabel('Look among removed ones').check();
  await page.getByRole('button', { name: 'Bring back: Marsh galley' }).click();
  await page.getByText('“Marsh galley” is on the list again.').waitFor();
  await page.getByLabel('Look among removed ones').uncheck();
  await page.getByRole('link', { name: 'Open where it came from: Marsh galley' }).click();
  await page.getByRole('heading', { name: 'Was W1 made before?' }).waitFor();
  expect(await wide()).toBeLessThanOrEqual(0);
  expect(faults).toEqual([]);
  await page.close();
});
