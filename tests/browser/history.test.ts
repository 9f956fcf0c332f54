import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { faultsOf, type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;

beforeAll(async () => {
  opened = await openBrowser(data);
});
afterAll(() => opened?.close());

const saved = (page: Page) =>
  page
    .getByText(/^Saved, revision \d+$/)
    .first()
    .waitFor({ timeout: 20_000 });

test('a state is kept under a name, compared with what came after, and restored', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 900 } });
  const faults = faultsOf(page);
  await page.goto(`${opened.address}/jobs/demo-camper/revisions`);
  await page.getByRole('button', { name: 'Keep it under this name' }).click();
  await page.getByText('Give it a name first.').waitFor();
  await page.getByLabel('Name for the job as it stands now').fill('as agreed');
  await page.getByRole('button', { name: 'Keep it under this name' }).click();
  await page.locator('.revisions').getByText('as agreed').waitFor();
  const before = await page.evaluate(() => document.querySelectorAll('.revisions li').length);

  await page.goto(`${opened.address}/jobs/demo-camper/openings/W7`);
  const bottom = page.getByLabel('Bottom side', { exact: true });
  const old = await bottom.inputValue();
  await bottom.fill('37 1/8');
  await saved(page);
  await page.getByRole('link', { name: /^Saved, revision/ }).click();
  const named = page.locator('.revisions li', { hasText: 'as agreed' });
  await named.getByRole('button', { name: /^Compare revision/ }).click();
  await page.getByText('One field differs.').waitFor();
  const row = page.getByRole('row', { name: /Bottom side/ });
  expect(await row.textContent()).toContain(old);
  expect(await row.textContent()).toContain('37 1/8');
  const drawing = page.locator('.compare-drawings svg');
  expect(await drawing.locator('.compare-before').getAttribute('d')).not.toBe(
    await drawing.locator('.compare-after').getAttribute('d'),
  );
  await named.getByRole('button', { name: /^Restore revision/ }).click();
  await expect.poll(() => page.locator('.revisions li').count()).toBe(before + 2);
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W7`);
  await expect.poll(() => bottom.inputValue()).toBe(old);
  expect(faults).toEqual([]);
  await page.close();
});

test('with the keys alone an opening is found, the next one gone to, and the keys are told', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W1`);
  await page.locator('path.opening-large').waitFor();
  await page.keyboard.press('/');
  await page.getByRole('dialog', { name: 'Find in this job' }).waitFor();
  await page.keyboard.type('w7');
  await page.getByRole('dialog').getByText('1 found').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/openings\/W7$/);
  await page.keyboard.press('Alt+ArrowDown');
  await page.waitForURL(/\/openings\/W8$/);
  await page.keyboard.press('Alt+5');
  await page.waitForURL(/\/hold\/W8$/);
  await page.keyboard.press('?');
  await page
    .getByRole('dialog', { name: 'What the keys do' })
    .getByText('Take back the last entry')
    .waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await page.close();
});

test('over all jobs an opening is found by its name', async () => {
  const page = await opened.browser.newPage();
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W2`);
  const name = (await page.locator('.stage-side h2').first().textContent())!;
  await page.goto(`${opened.address}/`);
  await page.getByLabel('Find a job, an opening, a material').fill(name);
  await page.getByRole('link', { name: new RegExp(name) }).click();
  await page.waitForURL(/\/openings\/W2$/);
  await page.close();
});
