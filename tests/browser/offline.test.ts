import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary.ts';
import { accessFaults, nameless } from './accessFaults.ts';
import { type Opened, openBrowser } from './openBrowser.ts';

const data = temporaryFolder();
let opened: Opened;

beforeAll(async () => {
  opened = await openBrowser(data, { keepsPage: true });
});
afterAll(() => opened?.close());

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const keptState = (page: Page) => page.locator('[data-kept="true"]').first().waitFor();
const savedState = (page: Page) =>
  page
    .getByText(/^Saved, revision \d+$/)
    .first()
    .waitFor({ timeout: 20_000 });

/** The job as the server has it. */
async function atServer(id: string): Promise<string> {
  const response = await fetch(`${opened.address}/api/openJob`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ id }),
  });
  return JSON.stringify(await response.json());
}

/** In the page: waits until the service worker has taken all files, for a while. */
async function pageKept(): Promise<string> {
  for (let round = 0; round < 200; round++) {
    const state = (await navigator.serviceWorker.getRegistration())?.active?.state;
    if (state === 'activated') return state;
    await new Promise((then) => setTimeout(then, 100));
  }
  return 'not kept';
}

/** A device that has opened the program once, so that the page itself is kept in its browser. */
async function device(path: string): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
  const context = await opened.browser.newContext(phone);
  const page = await context.newPage();
  await page.goto(`${opened.address}${path}`);
  expect(await page.evaluate(pageKept)).toBe('activated');
  return { context, page };
}

test('without a server a job is opened, measured, closed and started anew, and all of it arrives later', async () => {
  const { context, page } = await device('/jobs/demo-camper/openings/W3');
  await field(page, 'Top side').waitFor();
  await opened.stopServer();

  await page.goto(`${opened.address}/jobs/demo-camper/openings/W3`);
  await field(page, 'Bottom side').fill('25 3/8');
  await page.getByText('The server does not answer; it gets your work when it does.').waitFor();
  await keptState(page);
  // The tab goes, and another opens the job from this browser alone.
  await page.close({ runBeforeUnload: false });
  const later = await context.newPage();
  await later.goto(`${opened.address}/jobs/demo-camper/openings/W3`);
  await expect.poll(() => field(later, 'Bottom side').inputValue()).toBe('25 3/8');
  await field(later, 'Top side').fill('25 1/4');
  await later.locator('path.opening-large').waitFor();
  await later.getByRole('link', { name: /^Hold/ }).click();
  await later.locator('.panel-face').waitFor({ timeout: 30_000 });

  await later.goto(`${opened.address}/`);
  await later.getByText('These jobs are kept in this browser').waitFor();
  await field(later, 'Name of the job').fill('Made on the quay');
  await later.getByRole('button', { name: 'Start the job' }).click();
  await later.getByLabel('Notes on the job').fill('no network here');
  await keptState(later);
  const made = new URL(later.url()).pathname.split('/')[2]!;
  await later.close();

  await opened.startServer();
  const back = await context.newPage();
  await back.goto(`${opened.address}/`);
  await back.getByText('Made on the quay').waitFor();
  await expect.poll(() => atServer(made), { timeout: 10_000 }).toContain('no network here');
  await expect.poll(() => atServer('demo-camper'), { timeout: 10_000 }).toContain('25 1/4');
  expect(await atServer('demo-camper')).toContain('25 3/8');
  await context.close();
});

test('two devices measure one job: other fields are brought together, one field is asked about', async () => {
  const [one, other] = [
    await device('/jobs/demo-camper/openings/W7'),
    await device('/jobs/demo-camper/openings/W7'),
  ];
  await field(other.page, 'Top side').waitFor();
  await other.context.setOffline(true);
  await field(one.page, 'Left side').fill('15 1/8');
  await field(one.page, 'Bottom side').fill('36 1/8');
  await savedState(one.page);
  await field(other.page, 'Right side').fill('15 3/16');
  await field(other.page, 'Bottom side').fill('36 1/4');
  await keptState(other.page);
  await other.context.setOffline(false);

  await other.page.getByRole('heading', { name: 'Changed on two devices' }).waitFor({ timeout: 20_000 });
  const asked = other.page.getByRole('group', { name: /Bottom side$/ });
  await asked.getByText('36 1/4').waitFor();
  await asked.getByText('36 1/8').waitFor();
  expect([...(await accessFaults(other.page, 'practice')), ...(await nameless(other.page))]).toEqual([]);
  expect(await other.page.getByRole('button', { name: 'Save it so' }).isDisabled()).toBe(true);
  await asked.getByLabel('The other device').check();
  await other.page.getByRole('button', { name: 'Save it so' }).click();
  await savedState(other.page);
  await other.page.getByText(/Brought together with revision \d+/).waitFor();
  expect(await field(other.page, 'Bottom side').inputValue()).toBe('36 1/8');
  expect(await field(other.page, 'Left side').inputValue()).toBe('15 1/8');
  expect(await field(other.page, 'Right side').inputValue()).toBe('15 3/16');
  const stored = await atServer('demo-camper');
  for (const value of ['15 1/8', '36 1/8', '15 3/16']) expect(stored).toContain(value);
  await one.context.close();
  await other.context.close();
});

test('the page turns to German where it stands, and is in German again with no server at all', async () => {
  const { context, page } = await device('/jobs/demo-camper/openings/W2');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('combobox', { name: 'Language', exact: true }).selectOption('de');
  await page.keyboard.press('Escape');
  await field(page, 'Name').fill('Küche');
  await field(page, 'Diagonale von unten links nach oben rechts').fill('28 3/4');
  const finding = page.getByText('abgelesen als 28 3/4, passt nicht zu den anderen Messungen');
  await finding.first().waitFor();
  await keptState(page);
  expect(await accessFaults(page)).toEqual([]);

  await opened.stopServer();
  await page.goto(`${opened.address}/jobs/demo-camper/openings/W2`);
  await finding.first().waitFor();
  expect(await page.getAttribute('html', 'lang')).toBe('de');
  expect(await field(page, 'Name').inputValue()).toBe('Küche');
  await field(page, 'Untere Seite').fill('24 3//8');
  await page.getByText('„24 3//8“ ist keine Länge: so eintragen, wie das Maßband es sagt').waitFor();
  await context.close();
  await opened.startServer();
});
