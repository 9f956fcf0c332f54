// Every screen of the page, and what brings it up: for the pictures (screens.mjs) and for what is measured (bench/look.mjs).
import { at } from '../../tools/run/root.mjs';

const demo = (stage) => `/jobs/demo-camper/${stage}`;
const A_PHOTO = at('packages/photo/src/reference/01_easy.jpg');

/** name, path, what to do before it is looked at. The later ones change the demo. */
export const EVERY_SCREEN = [
  ['jobs', '/'],
  ['search-jobs', '/', searchJobs],
  ['catalogue', '/catalogue'],
  ['job', demo('job')],
  ['openings', demo('openings/W7')],
  ['search', demo('openings/W7'), search],
  ['menu', demo('openings/W7'), menu],
  ['keys', demo('openings/W7'), keys],
  ['patterns', demo('patterns/W6')],
  ['panels', demo('panels/W8')],
  ['hold', demo('hold/W3')],
  ['hold-wind', demo('hold/W3'), windPlot],
  ['hold-which-magnet', demo('hold/W9'), whichMagnet],
  ['cutting', demo('cutting')],
  ['take-off', demo('takeOff')],
  ['price', demo('price')],
  ['sheets', demo('sheets')],
  ['print-preview', demo('sheets'), preview],
  ['to-look-at', demo('findings')],
  ['window', demo('window/W3')],
  ['photo-setup', demo('openings/W5'), photoSetup],
  ['photo', demo('openings/W6'), tracePhoto],
  ['openings-suspect', demo('openings/W2'), misread],
  ['elevations', demo('elevations'), elevations],
  ['elevations-photo', demo('elevations'), elevationPhoto],
  ['library', '/jobs/demo-camper/patterns/W8', library],
  ['conflict', demo('openings/W4'), conflict],
  ['revisions', demo('revisions'), revisions],
  ['compare', demo('revisions'), compare],
  ['empty', '/', empty],
];

async function searchJobs(page) {
  // The copies are fetched a moment after the list.
  await page.getByLabel('Find a job, an opening, a material').fill('rear');
  await page
    .locator('.hits li, .find li')
    .first()
    .waitFor({ timeout: 10_000 })
    .catch(() => {});
}

async function menu(page) {
  await page.getByRole('button', { name: 'Menu' }).click();
}

async function keys(page) {
  await menu(page);
  await page.getByRole('button', { name: 'Keys' }).click();
}

async function search(page) {
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await page.getByRole('dialog').getByRole('searchbox').fill('quarter');
}

/** Reads what a maker would for the reference picture (packages/photo/src/reference), up to the photo. */
async function photoSetup(page) {
  await page.getByLabel('How it is measured').selectOption('photo');
  await page.getByLabel('Paper of the sheets').selectOption('A4');
  await page.getByLabel('Bar x (200 mm), as ruled').fill('200.18 mm');
  await page.getByLabel('Bar y (150 mm), as ruled').fill('150.29 mm');
  await page.getByRole('button', { name: 'Add a taped distance' }).click();
  await page.getByLabel('Distance 1, from marker').selectOption('9');
  await page.getByLabel('Distance 1, its corner').selectOption('1');
  await page.getByLabel('Distance 1, to marker').selectOption('12');
  await page.getByLabel('Distance 1, that one’s corner').selectOption('0');
  await page.getByRole('textbox', { name: 'Distance 1, as taped' }).fill('1323.9 mm');
  await page.getByRole('heading', { name: 'Photo of the traced film' }).scrollIntoViewIfNeeded();
}

async function tracePhoto(page) {
  await photoSetup(page);
  await page.getByLabel('Choose or take photos').setInputFiles(A_PHOTO);
  await page.getByRole('button', { name: 'Trace the line' }).click();
  await page.getByRole('slider', { name: /^Edge/ }).nth(2).focus({ timeout: 60_000 });
  await page.locator('.photo-view').scrollIntoViewIfNeeded();
}

/** With its foot at the window's, so that no control is left half under the row of stations. */
async function windPlot(page) {
  await page.locator('.wind-plot').evaluate((plot) => plot.scrollIntoView({ block: 'end' }));
}

async function whichMagnet(page) {
  await page.getByRole('button', { name: 'Work out which magnets would hold' }).click();
  await page.locator('.which-magnet[aria-busy=false]').waitFor({ timeout: 200_000 });
  await page.locator('.which-magnet').scrollIntoViewIfNeeded();
}

async function preview(page) {
  await page.getByRole('button', { name: /^Look through Work order/ }).click({ timeout: 100_000 });
  await page.getByRole('dialog').locator('img').waitFor();
}

async function misread(page) {
  const diagonal = page.getByLabel('Diagonal, bottom left to top right', { exact: true });
  await diagonal.fill('28 3/4');
}

async function elevations(page) {
  const placed = page.locator('.side-opening');
  await placed.or(page.getByText('No side is drawn yet.')).first().waitFor();
  if ((await placed.count()) > 0) return;
  await page.getByRole('button', { name: 'Add a side' }).click();
  for (const opening of ['W3', 'W7', 'W9'])
    await page.getByRole('button', { name: new RegExp(`^Put ${opening}`) }).click();
  await page.getByRole('button', { name: 'Add a shape' }).click();
  for (const [opening, left] of [
    ['W3', '20'],
    ['W7', '70'],
    ['W9', '125'],
  ])
    await page
      .getByRole('group', { name: new RegExp(`^${opening}`) })
      .getByLabel('From the left')
      .fill(left);
  await page.getByRole('heading', { name: 'Elevations' }).scrollIntoViewIfNeeded();
}

async function elevationPhoto(page) {
  await elevations(page);
  await page.getByLabel('A photo to draw over').setInputFiles(A_PHOTO);
  await page.locator('.drawing image').waitFor();
  await page.getByRole('heading', { name: 'Elevations' }).scrollIntoViewIfNeeded();
}

async function library(page) {
  const keep = page.getByText('Keep this pattern', { exact: true }).first();
  const kept = page.getByText(/^This pattern is kept already/);
  await keep.or(kept).first().waitFor();
  if (!(await kept.isVisible())) {
    await keep.click();
    await page.getByLabel('Name', { exact: true }).fill('Cab side window, long');
    await page.getByRole('button', { name: 'Keep this pattern' }).click();
    await kept.waitFor();
  }
  const link = page.getByRole('link', { name: 'Library' });
  if (!(await link.isVisible())) await menu(page);
  await link.click();
  await page.locator('.kept-card').first().waitFor();
}

/** The same field on two pages: the second is shown. */
async function conflict(page) {
  const other = await page.context().browser().newPage();
  await other.goto(page.url());
  const field = (on) => on.getByLabel('Bottom side', { exact: true });
  await field(other).waitFor();
  const value = (on, n) => field(on).fill(`36 ${n}/16`);
  const asked = page.getByRole('heading', { name: 'Changed on two devices' });
  const n = Number(/(\d+)\/16/.exec(await field(page).inputValue())?.[1] ?? 1) % 12;
  await value(other, n + 1);
  await other
    .getByText(/^Saved, revision \d+$/)
    .first()
    .waitFor({ timeout: 20_000 });
  await value(page, n + 3);
  await asked.waitFor({ timeout: 20_000 });
  await other.close();
  await asked.scrollIntoViewIfNeeded();
}

async function revisions(page) {
  await page.getByLabel('Name for the job as it stands now').fill('as agreed');
  await page.getByRole('button', { name: 'Keep it under this name' }).click();
  await page.locator('.revisions').getByText('as agreed').first().waitFor();
}

async function compare(page) {
  await page.getByRole('button', { name: 'Compare revision 1 with another' }).click();
  await page.locator('.compare [role="status"]').waitFor();
  await page.locator('.compare').scrollIntoViewIfNeeded();
}

async function empty(page) {
  await page.getByLabel('Name of the job').fill('First job');
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.locator('.station', { hasText: 'Openings' }).click();
  await page.locator('.empty-first').waitFor();
}

/** Opens a screen on a page, and waits until all of it has been worked out. */
export async function showScreen(page, address, [, path, act]) {
  await page.goto(`${address}${path}`);
  await page.locator('main h2, main h1, .keypad').first().waitFor();
  await act?.(page);
  await page.waitForTimeout(700);
  for (const mark of ['.station-waits', '.working'])
    await page.locator(mark).first().waitFor({ state: 'detached', timeout: 200_000 });
}
