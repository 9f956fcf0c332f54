import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;
beforeAll(async () => {
  opened = await openBrowser(data);
});
afterAll(() => opened?.close());

test('sheets are stopped and begun again, in the printer, language and labels that were chosen', async () => {
  const page = await opened.browser.newPage();
  page.setDefaultTimeout(100_000);
  await page.goto(`${opened.address}/catalogue`);
  await page.getByRole('button', { name: 'Add a printer' }).click();
  await page.getByLabel('Paper in it').selectOption({ label: 'Roll, 36 in wide' });
  for (const [axis, nominal, measured] of [
    ['Across', '180 mm', '179.6 mm'],
    ['Along', '240 mm', '240.2 mm'],
  ]) {
    await page.getByLabel(`${axis} the paper: the bar should be`).fill(nominal!);
    await page.getByLabel(`${axis} the paper: it measures`).fill(measured!);
  }
  await page.getByRole('button', { name: 'Take the factors from what was measured' }).click();
  // By hand: 180 / 179.6 and 240 / 240.2.
  expect(await page.getByLabel('Across the paper: factor').inputValue()).toBe('1.0022');
  expect(await page.getByLabel('Along the paper: factor').inputValue()).toBe('0.9992');
  await page.getByText(/^Saved, revision \d/).waitFor();

  await page.goto(`${opened.address}/jobs/demo-camper/sheets`);
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByText('Stopped. Nothing was made.').waitFor();
  await page.getByLabel('Printer', { exact: true }).selectOption({ label: 'New printer' });
  await page.getByText('Correction 1.0022 across, 0.9992 along').waitFor();
  await page.getByText('How they are made').click();
  await page.getByLabel('Language of the sheets').selectOption('German');
  await page.getByText('Labels', { exact: true }).click();
  await page.getByLabel('Sheet of labels').selectOption('4 × 2 in, 2 × 5');
  await page.getByLabel('Begin at label').fill('11');
  await page.getByText('There is no label 11 on this sheet of labels').waitFor({ timeout: 60_000 });
  await page.getByLabel('Begin at label').fill('3');
  const pattern = page.getByRole('button', { name: 'Download Schnittmuster P1 as PDF' });
  const download = page.waitForEvent('download', { timeout: 100_000 });
  await pattern.click({ timeout: 100_000 });
  const file = await download;
  expect(file.suggestedFilename()).toBe('P1-roll-36in.pdf');
  expect((await readFile(await file.path())).subarray(0, 5).toString()).toBe('%PDF-');
  await page.getByRole('button', { name: /^Download Regaletiketten.* as PDF$/ }).waitFor();

  const names = await page
    .locator('main button')
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? one.textContent));
  expect(names.length).toBeGreaterThan(50);
  expect(new Set(names).size).toBe(names.length);

  await page.getByRole('button', { name: /^Look through Arbeitsauftrag/ }).click();
  const picture = page.getByRole('dialog').locator('img');
  const seen = new Set<string>();
  const first = await page.getByText(/^Page 1 of \d+$/).textContent();
  const pages = Number(/\d+$/.exec(first!)![0]);
  expect(pages).toBeGreaterThan(2);
  for (let number = 1; number <= pages; number++) {
    await page.getByText(`Page ${number} of ${pages}`, { exact: true }).waitFor();
    expect(await picture.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBeGreaterThan(100);
    seen.add((await picture.getAttribute('src'))!);
    await page.keyboard.press('ArrowRight');
  }
  expect(seen.size).toBe(pages);
  await page.getByRole('button', { name: 'Page before' }).click();
  await page.getByText(`Page ${pages - 1} of ${pages}`, { exact: true }).waitFor();
  await page.keyboard.press('Escape');
  await page.reload();
  await page.getByText('Correction 1.0022 across').waitFor();
  await page.close();
});

test('a panel is laid into a photo by its corners, and the picture is saved as it is seen', async () => {
  const page = await opened.browser.newPage();
  page.setDefaultTimeout(100_000);
  // A photo made here: a light wall and a dark window in it, in perspective.
  const photo = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(800, 600);
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#e6e6e6';
    pen.fillRect(0, 0, 800, 600);
    const blob = await canvas.convertToBlob({ type: 'image/png' });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  await page.goto(`${opened.address}/jobs/demo-camper/panels/W3`);
  await page.getByText('In a photo of the window').click();
  const file = { name: 'window.png', mimeType: 'image/png', buffer: Buffer.from(photo) };
  await page.getByLabel('Photo of the window, from outside').setInputFiles(file);
  const corner = page.getByRole('button', { name: 'Top left corner' });
  await corner.focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('Shift+ArrowUp');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the picture' }).click();
  const saved = await readFile(await (await download).path());
  // The middle is the cloth's near black, a corner of the photo still its wall; 5 % of the wall shows through.
  const [middle, edge] = await page.evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([new Uint8Array(bytes)]));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const pen = canvas.getContext('2d')!;
      pen.drawImage(image, 0, 0);
      return [
        [400, 300],
        [20, 20],
      ].map(([x, y]) => pen.getImageData(x!, y!, 1, 1).data[0]!);
    },
    [...saved],
  );
  expect(middle).toBeLessThan(70);
  expect(edge).toBeGreaterThan(220);
  await corner.focus();
  for (let i = 0; i < 40; i++) await page.keyboard.press('Shift+ArrowRight');
  await page.getByText('The corners do not go round the window').waitFor();
  await page.close();
});
