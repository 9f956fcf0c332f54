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

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
const press = async (page: Page, ...keys: readonly string[]) => {
  for (const key of keys) await page.locator('.keypad button', { hasText: new RegExp(`^${key}$`) }).tap();
};

/** A stand-in for the browser's speech recognition, which asks a service: hears what the test says. */
function fakeSpeech(said: string): void {
  class Recognition {
    onresult: ((event: object) => void) | null = null;
    onend: (() => void) | null = null;
    start() {
      setTimeout(() => {
        this.onresult?.({ results: [[{ transcript: said }]] });
        this.onend?.();
      }, 20);
    }
    abort() {}
  }
  Object.assign(globalThis, { SpeechRecognition: Recognition });
}

// Oracle for the sizes: the 3-4-5 triangle. Sides 24 and 18 in have a diagonal of 30 in exactly.
test('a label’s address opens the opening; it is measured with the thumb, one reading after the other', async () => {
  const context = await opened.browser.newContext(phone);
  const page = await context.newPage();
  const faults = faultsOf(page);
  await page.addInitScript(fakeSpeech, 'eighteen inches');
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W4`);
  await page.locator('.strip [aria-current="true"]', { hasText: 'W4' }).waitFor();
  await page.getByRole('button', { name: 'Add an opening' }).tap();
  await page.getByRole('link', { name: 'One reading at a time' }).tap();
  await page.getByText('Reading 1 of 12').waitFor();
  const next = () => page.getByRole('button', { name: 'Next', exact: true }).tap();
  const entry = page.locator('.window-entry input');

  await press(page, '2', '4', '1/8', '1/8', '⌫');
  expect(await entry.inputValue()).toBe('24');
  await next();
  await page.getByText('Up the right side').waitFor();
  await page.getByRole('button', { name: 'Say it' }).tap();
  await expect.poll(() => entry.inputValue()).toBe('18 in');
  await next();
  for (const keys of [['2', '4'], ['1', '8'], ['3', '0'], ['3', '0', '/'], ['2'], ['2'], ['2'], ['2']]) {
    await press(page, ...keys);
    if (keys.length === 3) {
      await page.getByText('“30/” is not a length').waitFor();
      await press(page, '⌫');
      expect(await entry.inputValue()).toBe('30');
    }
    await next();
  }
  expect(await page.getByRole('img').first().getAttribute('aria-label')).toContain('half height');
  for (const button of await page.locator('.window-stage button').all()) {
    const box = (await button.boundingBox())!;
    expect(Math.min(box.width, box.height), (await button.textContent()) ?? '').toBeGreaterThanOrEqual(44);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await next();
  await next();
  await page.getByText('As measured: 24 × 18 in.').waitFor();
  await page.getByRole('link', { name: 'All readings' }).tap();
  await page.locator('path.opening-large').waitFor();
  expect(await page.getByLabel('Right side', { exact: true }).inputValue()).toBe('18 in');
  expect(faults).toEqual([]);
  await context.close();
});
