import { readFile } from 'node:fs/promises';
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

/** Types readings where they were measured, as the drawing names them. */
async function measure(page: Page, readings: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, entered] of Object.entries(readings))
    await page.getByLabel(name, { exact: true }).fill(entered);
}

const rectangle = (width: string, height: string, diagonal: string, radius: string) => ({
  'Bottom side': width,
  'Right side': height,
  'Top side': width,
  'Left side': height,
  'Diagonal, bottom left to top right': diagonal,
  'Diagonal, top left to bottom right': diagonal,
  'Radius, bottom left': radius,
  'Radius, bottom right': radius,
  'Radius, top right': radius,
  'Radius, top left': radius,
});

const outline = (page: Page) => page.locator('path.opening-large').getAttribute('d');
const saved = (page: Page) => page.getByText(/^Saved, revision \d+$/).waitFor();
const workedOut = (page: Page) =>
  page.locator('.station-waits').first().waitFor({ state: 'detached', timeout: 100_000 });

// Oracle for the sizes: the 3-4-5 triangle. Sides 24 and 18 in have a diagonal of 30 in exactly.
test('a person measures three openings, changes a radius, undoes it, prints the pattern, and finds all of it again', async () => {
  const context = await opened.browser.newContext({
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const faults = faultsOf(page);
  await page.goto(opened.address.replace(/\/jobs.*/, '/'));
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.getByText('Give the job a name first.').waitFor();
  await page.getByLabel('Name of the job').fill('Three windows');
  await page.getByRole('button', { name: 'Start the job' }).click();

  const add = page.getByRole('button', { name: 'Add an opening' });
  for (const [width, height, diagonal, radius] of [
    ['24', '18', '30', '2'],
    ['24', '18', '30', '2'],
    ['16 1/2', '22', '27 1/2', '1 1/2'],
  ] as const) {
    await add.click();
    await measure(page, rectangle(width, height, diagonal, radius));
  }
  const strip = page.getByRole('navigation', { name: /^Openings of this job/ });
  await strip.getByText('24 × 18 in').first().waitFor();
  await strip.getByText('16 1/2 × 22 in').waitFor();
  await page
    .getByRole('link', { name: /^Patterns/ })
    .getByText('2 for 3')
    .waitFor();

  // The entry is left, so that what follows is a step of its own.
  await page.getByRole('heading', { name: 'W3 Window 3' }).click();
  const before = await outline(page);
  const radius = page.getByLabel('Radius, top left', { exact: true });
  await radius.fill('3');
  await expect.poll(() => outline(page)).not.toBe(before);
  await radius.fill('3 1/');
  await page.getByText('“3 1/” is not a length').waitFor();
  await page.getByText('Drawn from the last entries that could be read').waitFor();
  expect(await radius.inputValue()).toBe('3 1/');
  await page.getByRole('heading', { name: 'W3 Window 3' }).click();
  await page.keyboard.press('Control+z');
  await expect.poll(() => outline(page)).toBe(before);
  expect(await radius.inputValue()).toBe('1 1/2');

  await saved(page);
  await workedOut(page);
  const price = await page.getByRole('link', { name: /^Price/ }).textContent();
  await page.getByRole('link', { name: /^Sheets/ }).click();
  const download = page.waitForEvent('download', { timeout: 100_000 });
  await page.getByRole('button', { name: /^Download Pattern P2/ }).click({ timeout: 100_000 });
  const file = await (await download).path();
  expect((await readFile(file)).subarray(0, 5).toString()).toBe('%PDF-');

  await saved(page);
  await page.reload();
  await strip.getByText('16 1/2 × 22 in').waitFor();
  await workedOut(page);
  expect(await page.getByRole('link', { name: /^Price/ }).textContent()).toBe(price);
  await page.getByRole('link', { name: /^Openings/ }).click();
  await strip.getByRole('link', { name: /W3/ }).click();
  expect(await radius.inputValue()).toBe('1 1/2');
  expect(await outline(page)).toBe(before);
  expect(faults).toEqual([]);
  await context.close();
});

/** From now on, every height on the page at which what is below the bar, the row and the stations was drawn. */
const watchTop = (page: Page) =>
  page.evaluate(() => {
    const tops = new Set<number>();
    const look = () => {
      tops.add(document.querySelector('main')!.offsetTop);
      requestAnimationFrame(look);
    };
    look();
    Object.assign(globalThis, { tops });
  });
const topsSeen = (page: Page) =>
  page.evaluate(() => [...(globalThis as unknown as { readonly tops: ReadonlySet<number> }).tops]);

// Oracle for the place: the opening is 914.44 mm wide (36 in as read, 0.04 mm as adjusted), so that a handle of 101.6 mm in
// its middle begins at 406.42 mm; two keys' steps are 1/8 in, 3.175 mm.
test('an obstruction is dragged until it catches, moved by keys and by number; a corner is pulled; each undone at once', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1400 } });
  const faults = faultsOf(page);
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W4`);
  await page.getByRole('button', { name: 'Add an obstruction' }).click();
  await watchTop(page);
  await page.getByLabel('Wide', { exact: true }).fill('4');
  const fromLeft = page.getByLabel('From the left', { exact: true });
  await fromLeft.fill('2');
  await fromLeft.blur();
  const handle = page.getByRole('button', { name: /^Handle, / });
  await page.locator('path.opening-large').scrollIntoViewIfNeeded();
  await handle.hover();
  const sheet = (await page.locator('path.opening-large').boundingBox())!;
  const from = (await handle.locator('.obstruction').boundingBox())!;
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(sheet.x + sheet.width / 2 + 3, from.y - 40, { steps: 6 });
  await page.locator('.guide-line').first().waitFor({ state: 'attached' });
  await page.mouse.up();
  expect(await fromLeft.inputValue()).toBe('406.42 mm');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  expect(await fromLeft.inputValue()).toMatch(/^409\.(59|6) mm$/);
  await handle.blur();
  await page.keyboard.press('Control+z');
  expect(await fromLeft.inputValue()).toBe('406.42 mm');
  await page.keyboard.press('Control+z');
  expect(await fromLeft.inputValue()).toBe('2');

  await workedOut(page);
  const radius = page.getByLabel('Radius, top right', { exact: true });
  const before = await radius.inputValue();
  const grip = page.getByRole('slider', { name: 'Pull on the drawing: Radius, top right' });
  await grip.hover();
  const at = (await grip.locator('.handle-grip').boundingBox())!;
  await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
  await page.mouse.down();
  await page.mouse.move(at.x - 20, at.y + 20, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => radius.inputValue()).not.toBe(before);
  await page
    .getByRole('region', { name: 'What it comes to' })
    .getByText(/^was /)
    .first()
    .waitFor({ timeout: 100_000 });
  await grip.blur();
  await page.keyboard.press('Control+z');
  expect(await radius.inputValue()).toBe(before);
  // Neither saving nor the plan that follows moves what is under the hand.
  expect(await topsSeen(page)).toHaveLength(1);
  expect(faults).toEqual([]);
  await page.close();
});

test('two pages change one job, and neither change is lost', async () => {
  const context = await opened.browser.newContext();
  const [one, other] = [await context.newPage(), await context.newPage()];
  await one.goto(`${opened.address}/jobs/demo-camper/job`);
  await other.goto(`${opened.address}/jobs/demo-camper/job`);
  const note = (page: Page) => page.getByLabel('Notes on the job');
  await note(other).waitFor();
  await note(one).fill('from one');
  await saved(one);
  const link = one.getByRole('link', { name: /^Saved, revision/ });
  const ofOne = /\d+/.exec((await link.textContent())!)![0];
  await note(other).fill('from the other');
  await other.getByRole('heading', { name: 'Changed on two devices' }).waitFor();
  expect(await note(other).inputValue()).toBe('from the other');
  await other.getByLabel('The other device').check();
  await other.getByRole('button', { name: 'Save it so' }).click();
  await expect.poll(() => note(other).inputValue()).toBe('from one');
  await other.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => note(other).inputValue()).toBe('from the other');
  await saved(other);
  await one.reload();
  await expect.poll(() => note(one).inputValue()).toBe('from the other');
  await link.click();
  await one.getByRole('button', { name: `Restore revision ${ofOne}` }).click();
  await one.getByRole('link', { name: /^Job\b/ }).click();
  await expect.poll(() => note(one).inputValue()).toBe('from one');
  await context.close();
});

test('work is done with the keyboard alone', async () => {
  const page = await opened.browser.newPage();
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W1`);
  await page.locator('path.opening-large').waitFor();
  const focused = () =>
    page.evaluate(() => document.activeElement?.textContent || document.activeElement?.getAttribute('id'));
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('Go to the drawing');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  const label = () =>
    page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent);
  expect(await label()).toContain('How it is measured');
  await page.keyboard.press('Tab');
  expect(await focused()).toContain('One reading at a time');
  await page.keyboard.press('Tab');
  expect(await label()).toContain('Bottom side');
  const before = await outline(page);
  await page.keyboard.type('25 1/4');
  await expect.poll(() => outline(page)).not.toBe(before);
  for (const name of ['Right side', 'Top side', 'Left side', 'Diagonal']) {
    await page.keyboard.press('Tab');
    expect(await label()).toContain(name);
  }
  await page.keyboard.press('Control+z');
  await expect.poll(() => outline(page)).toBe(before);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => outline(page)).not.toBe(before);
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
  expect(ring).toBe('solid');
  await page.close();
});

test('on a phone nothing has to be scrolled sideways, and the reading is typed below the drawing', async () => {
  const context = await opened.browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  const page = await context.newPage();
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W9`);
  await page.locator('.station').first().waitFor();
  for (const stage of await page.locator('.station').all()) {
    await stage.click();
    await page.locator('.working').first().waitFor({ state: 'detached', timeout: 100_000 });
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth),
      (await stage.textContent()) ?? '',
    ).toBeLessThanOrEqual(390);
  }
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W7`);
  const reading = await page.getByLabel('Bottom side', { exact: true }).boundingBox();
  const drawing = await page.locator('.drawing-sheet svg').boundingBox();
  expect(reading!.y).toBeGreaterThan(drawing!.y + drawing!.height);
  expect(reading!.height).toBeGreaterThanOrEqual(44);
  await context.close();
});
