import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
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

// Oracle: the outline the picture was rendered from, and the readings a maker would take (see README.md there).
const reference = new URL('../../packages/photo/src/reference/', import.meta.url);
const photo = fileURLToPath(new URL('01_easy.jpg', reference));
const truth = JSON.parse(readFileSync(new URL('01_easy.json', reference), 'utf8')) as {
  readonly outline: { readonly bbox: readonly [readonly [number, number], readonly [number, number]] };
  readonly reference: {
    readonly ruler_check: { readonly measured_x_mm: number; readonly measured_y_mm: number };
  };
  readonly tape: readonly {
    readonly from_marker: number;
    readonly from_corner: number;
    readonly to_marker: number;
    readonly to_corner: number;
    readonly measured_mm: number;
  }[];
};
const [[left, low], [right, high]] = truth.outline.bbox;

async function newOpening(page: Page): Promise<void> {
  await page.goto(opened.address);
  await page.getByLabel('Name of the job').fill('Film');
  await page.getByLabel('Lengths in').last().selectOption('mm');
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.getByRole('button', { name: 'Add an opening' }).click();
  await page.getByLabel('How it is measured').selectOption('photo');
}

/** Width and height the job has now, mm, as its strip of openings says. */
async function sizeInJob(page: Page): Promise<readonly [number, number]> {
  const strip = page.getByRole('navigation', { name: /^Openings of this job/ });
  const text = (await strip.getByText(/\d+ × \d+ mm/).textContent())!;
  const [, wide, tall] = /(\d+) × (\d+) mm/.exec(text)!;
  return [Number(wide), Number(tall)];
}

test('a person prints sheets, loads a photo, sees the outline, drags an edge, takes it, and the job follows', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 1280, height: 1000 } });
  const faults = faultsOf(page);
  await newOpening(page);

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download the sheets' }).click();
  const sheets = readFileSync(await (await download).path());
  expect(sheets.subarray(0, 5).toString()).toBe('%PDF-');
  expect(sheets.toString('latin1').match(/\/Type \/Page\b/g)?.length).toBe(4);

  const { measured_x_mm, measured_y_mm } = truth.reference.ruler_check;
  await page.getByLabel('Bar x (200 mm), as ruled').fill(String(measured_x_mm));
  await page.getByLabel('Bar y (150 mm), as ruled').fill(String(measured_y_mm));
  for (const [k, tape] of truth.tape.entries()) {
    const n = k + 1;
    await page.getByRole('button', { name: 'Add a taped distance' }).click();
    await page.getByLabel(`Distance ${n}, from marker`).selectOption(String(tape.from_marker));
    await page.getByLabel(`Distance ${n}, its corner`).selectOption(String(tape.from_corner));
    await page.getByLabel(`Distance ${n}, to marker`).selectOption(String(tape.to_marker));
    await page.getByLabel(`Distance ${n}, that one’s corner`).selectOption(String(tape.to_corner));
    await page.getByRole('textbox', { name: `Distance ${n}, as taped` }).fill(String(tape.measured_mm));
  }
  await page.getByLabel('Choose or take photos').setInputFiles(photo);
  await page.getByRole('button', { name: 'Trace the line' }).click();
  const edges = page.getByRole('slider', { name: /^Edge \d/ });
  await edges.first().waitFor({ timeout: 120_000 });
  expect(await edges.count()).toBe(8);

  // The width's own interval, as the page states it, holds the truth.
  const said = (await page.getByText(/wide \(±/).textContent())!;
  const [, width, plusMinus] = /([\d.]+) mm wide \(± ([\d.]+) mm/.exec(said)!;
  expect(Math.abs(Number(width) - (right - left))).toBeLessThan(Number(plusMinus));
  expect(Number(plusMinus)).toBeLessThan(6);
  expect(await accessFaults(page)).toEqual([]);

  await page.getByRole('button', { name: 'Use this outline' }).click();
  await page.getByText('This outline is now the opening’s.').waitFor();
  const [wide, tall] = await sizeInJob(page);
  expect(Math.abs(wide - (right - left))).toBeLessThan(Number(plusMinus) + 0.5);
  expect(Math.abs(tall - (high - low))).toBeLessThan(4);
  await page.getByText(/^Traced from 01_easy\.jpg/).waitFor();

  // The right side is dragged outward by some millimetres of film, the outline taken again: the job is as much wider.
  const side = await rightSide(page);
  const box = (await side.locator('.photo-line').boundingBox())!;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height * 0.3 };
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down();
  await page.mouse.move(middle.x + 6, middle.y, { steps: 4 });
  await page.mouse.up();
  const state = await side.getAttribute('aria-valuetext');
  const [, moved, known] = /moved by ([\d.]+) mm, known to ± ([\d.]+) mm, by hand/.exec(state!)!;
  expect(Number(moved)).toBeGreaterThan(3);
  expect(Number(known)).toBeGreaterThan(1);
  await page.getByRole('button', { name: 'Use this outline' }).click();
  await expect.poll(async () => (await sizeInJob(page))[0]).toBeGreaterThan(wide + 2);
  expect(Math.abs((await sizeInJob(page))[0] - wide - Number(moved))).toBeLessThan(1.6);
  await page.getByText(/1 edge moved by hand/).waitFor();

  // By keys: taken back, nudged by a whole millimetre, and taken back again.
  await side.focus();
  await page.keyboard.press('Control+z');
  expect(Number(await side.getAttribute('aria-valuenow'))).toBe(0);
  await page.keyboard.press('Shift+ArrowRight');
  expect(Number(await side.getAttribute('aria-valuenow'))).toBeCloseTo(1, 1);

  // Shown larger, the photo and what lies over it grow alike.
  const widths = async () =>
    Promise.all(
      ['.photo-picture img', '.photo-over'].map(
        async (part) => (await page.locator(part).boundingBox())!.width,
      ),
    );
  const [was] = await widths();
  await page.getByRole('button', { name: 'Larger' }).click();
  await expect.poll(async () => (await widths())[0]! / was!).toBeCloseTo(1.5, 2);
  const [picture, over] = await widths();
  expect(over).toBeCloseTo(picture!, 1);

  // The same on a telephone: the photo is as wide as the screen, and nothing runs off it.
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(() => widthOf(page)).toBeLessThanOrEqual(390);
  expect(await accessFaults(page)).toEqual([]);
  expect(faults).toEqual([]);
  await page.close();
});

const widthOf = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth);

/** The edge whose middle lies farthest to the right of the picture. */
async function rightSide(page: Page) {
  const edges = page.getByRole('slider', { name: /straight$/ });
  const all = await edges.all();
  const places = await Promise.all(all.map(async (one) => (await one.locator('.photo-line').boundingBox())!));
  const far = places.map((box) => box.x + box.width / 2);
  return all[far.indexOf(Math.max(...far))]!;
}

test('on a narrow screen what is no photo of the film is refused in words, and nothing runs off the side', async () => {
  const page = await opened.browser.newPage({ viewport: { width: 390, height: 844 } });
  const faults = faultsOf(page);
  await newOpening(page);
  await page
    .getByLabel('Choose or take photos')
    .setInputFiles({ name: 'film.png', mimeType: 'image/png', buffer: Buffer.from('no picture') });
  await page.getByRole('button', { name: 'Trace the line' }).click();
  await page
    .getByText(/“film\.png” is not a JPEG picture that can be read\. Save the photo as JPEG/)
    .waitFor();
  await page.getByRole('button', { name: 'Add a taped distance' }).click();
  expect(await widthOf(page)).toBeLessThanOrEqual(390);
  expect(await accessFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Remove film.png' }).click();
  await page.getByText('No photo yet.').waitFor();
  // A picture that cannot be shown is told by the browser; nothing else is.
  expect(faults.filter((one) => !/blob:|film\.png/.test(one))).toEqual([]);
  await page.close();
});
