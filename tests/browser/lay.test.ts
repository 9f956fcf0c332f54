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

/** A lay follows in a second or two; a busy machine takes longer. */
const SOON = { timeout: 20_000 };

const panels = (page: Page) => page.getByRole('button', { name: /^panel of / });
const figure = (page: Page, name: string) =>
  page.locator('dt', { hasText: name }).first().locator('xpath=following-sibling::dd[1]');
const settled = (page: Page) => page.locator('.working').waitFor({ state: 'detached', timeout: 60_000 });

/** Where a piece is drawn, as the drawing's own geometry has it. */
const boxOf = async (page: Page, name: string | RegExp) => {
  const box = await page.getByRole('button', { name }).first().boundingBox();
  if (!box) throw new Error(`${name} is not drawn`);
  return box;
};

test('a person drags a panel along the roll: it is held there, the lay is longer, undo takes it back', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1440, height: 1800 } });
  const faults = faultsOf(page);
  await page.goto(`${opened.address}/jobs/demo-camper/cutting`);
  await panels(page).first().waitFor();
  const length = async () => (await figure(page, 'Length of cloth').textContent())?.trim();
  const before = await length();
  const name = /^panel of Galley/;
  const from = await boxOf(page, name);
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await page.mouse.down();
  const frame = await page.locator('.lay-frame').first().boundingBox();
  await page.mouse.move(frame!.x + frame!.width - 20, from.y + from.height / 2, { steps: 8 });
  await page.mouse.up();
  await page.getByText('The program alone would take').waitFor();
  await expect.poll(length, SOON).not.toBe(before);
  expect(await page.getByRole('button', { name }).first().getAttribute('aria-label')).toMatch(/, held$/);
  expect(await figure(page, 'Ends with').textContent()).toContain('panel of Galley');
  expect(await accessFaults(page)).toEqual([]);
  await page.keyboard.press('Control+z');
  await expect.poll(length, SOON).toBe(before);
  expect(faults).toEqual([]);
  await page.close();
});

test('by the keyboard alone a piece is moved, held and the rest laid anew; saved, and there after a reload', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1800 } });
  await page.goto(`${opened.address}/jobs/demo-camper/cutting`);
  const piece = page.getByRole('button', { name: /^panel of Galley/ }).first();
  await piece.waitFor();
  await piece.focus();
  await page.keyboard.press('h');
  await expect.poll(() => piece.getAttribute('aria-label'), SOON).toMatch(/, held$/);
  await page.getByRole('button', { name: 'Lay the rest anew' }).click();
  await page.getByText('The program alone would take').waitFor();
  await settled(page);
  await page.getByText('Saved', { exact: false }).first().waitFor();
  await page.reload();
  await expect.poll(() => piece.getAttribute('aria-label'), SOON).toMatch(/, held$/);
  await page.getByRole('button', { name: 'Back to the program’s own lay' }).click();
  await expect.poll(() => piece.getAttribute('aria-label'), SOON).not.toMatch(/, held$/);
  await page.close();
});

test('a place kept clear is crossed on the roll and makes the lay anew; lays are set side by side', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1800 } });
  const faults = faultsOf(page);
  await page.goto(`${opened.address}/jobs/demo-camper/cutting`);
  await panels(page).first().waitFor();
  await page.getByRole('button', { name: 'Put this lay aside' }).first().click();
  await page.getByRole('button', { name: /^Side by side: Put aside 1/ }).click();
  await page.getByRole('img', { name: 'Lay put aside' }).waitFor();
  await page.getByRole('button', { name: 'Push together' }).first().click();
  await page.getByText(/^Pushed together: /).waitFor();
  await page.getByRole('button', { name: 'Keep a place clear' }).first().click();
  await page.getByLabel('To', { exact: true }).fill('20');
  await page.keyboard.press('Enter');
  await page.locator('.kept-clear').waitFor();
  await page.getByText('it fits no longer').first().waitFor();
  await page
    .getByText(/^What sets the length: /)
    .first()
    .waitFor();
  await settled(page);
  expect(await accessFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Remove place 1' }).click();
  await page.locator('.kept-clear').waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
  await page.close();
});

test('a longer look is watched, stopped, and what it found taken', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 390, height: 844 } });
  const faults = faultsOf(page);
  await page.goto(`${opened.address}/jobs/demo-camper/cutting`);
  await panels(page).first().waitFor();
  await page.getByRole('button', { name: 'Look longer for a shorter lay' }).first().click();
  const use = page.getByRole('button', { name: 'Use this lay' });
  const shorter = page.getByText(/shorter than the lay shown before|No shorter lay is possible/);
  await shorter.waitFor({ timeout: 60_000 });
  const stop = page.getByRole('button', { name: 'Stop' });
  if (await stop.isVisible()) {
    await stop.click();
    await page.getByRole('button', { name: 'Go on looking' }).click();
    await stop.click();
  }
  if (await use.isEnabled()) {
    await use.click();
    await page.getByText('The program alone would take').waitFor();
  }
  expect(faults).toEqual([]);
  await page.close();
});
