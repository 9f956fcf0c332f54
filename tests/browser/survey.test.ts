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

const outline = (page: Page) => page.locator('path.opening-large');
const strip = (page: Page) => page.getByRole('navigation', { name: /^Openings of this job/ });

async function newOpening(page: Page, method: string): Promise<void> {
  await page.goto(opened.address);
  await page.getByLabel('Name of the job').fill('Any shape');
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.getByRole('button', { name: 'Add an opening' }).click();
  await page.getByLabel('How it is measured').selectOption(method);
}

// Oracle: 9² + 40² = 41² and 40² + 42² = 58². Marks 9 in under the lower corners of an opening of 40 × 33 in.
test('a person tapes an opening from two marks, misreads one tape, and is told which', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 2400 } });
  const faults = faultsOf(page);
  await newOpening(page, 'marks');
  const tape = (from: string, to: string) => page.getByLabel(`Tape from ${from} to ${to}`, { exact: true });
  await page.getByLabel('From', { exact: true }).selectOption('M1');
  await page.getByLabel('To', { exact: true }).selectOption('M2');
  await tape('M1', 'M2').fill('40');
  const tapes: readonly (readonly [string, string, string])[] = [
    ['M1', '1', '9'],
    ['M2', '1', '41'],
    ['M1', '2', '41'],
    ['M2', '2', '9'],
    ['M1', '3', '58'],
    ['M2', '3', '42'],
    ['M1', '4', '42'],
    ['M2', '4', '58'],
    ['1', '2', '40'],
    ['2', '3', '33'],
    ['3', '4', '40'],
    ['4', '1', '33'],
  ];
  for (const [from, to, entered] of tapes) await tape(from, to).fill(entered);
  await outline(page).waitFor();
  await strip(page).getByText('40 × 33 in').waitFor();
  await tape('M2', '3').fill('43');
  await page
    .getByText(/tape from M2 to 3, read as 43, does not fit the others/)
    .first()
    .waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(faults).toEqual([]);
  await page.close();
});

// A drawing without a unit: 24 by 14 of whatever it is. In inches the opening is 24 × 14 in.
const UNITLESS = `0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n${[
  [0, 0],
  [24, 0],
  [24, 14],
  [0, 14],
]
  .map(([x, y]) => `10\n${x}\n20\n${y}\n`)
  .join('')}0\nENDSEC\n0\nEOF\n`;

test('a person loads a drawing, is asked for its unit, takes the outline, and the job follows', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 2400 } });
  const faults = faultsOf(page);
  await newOpening(page, 'outline');
  await page
    .getByLabel(/^Drawing or table of points/)
    .setInputFiles({ name: 'hatch.dxf', mimeType: 'image/vnd.dxf', buffer: Buffer.from(UNITLESS) });
  await page
    .getByText(/does not say what its numbers are/)
    .first()
    .waitFor();
  await page.getByRole('button', { name: 'inches' }).click();
  await page.getByRole('button', { name: 'Use this outline' }).click();
  await outline(page).waitFor();
  await strip(page).getByText('24 × 14 in').waitFor();
  await page.getByText(/^From hatch\.dxf/).waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(faults).toEqual([]);
  await page.close();
});
