import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import {
  bytesOfBase64,
  callOperation,
  defaultCatalogue,
  exampleJob,
  inOne,
  makeShow,
  type OperationOutput,
  type Refusal,
  sayRefusal,
  type Tools,
} from '@panewright/contract';
import { expect, test } from 'vitest';

const folder = dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json'));
const font = (name: string) => new Uint8Array(readFileSync(join(folder, 'ttf', `${name}.ttf`)));
const fonts = async () => ({
  regular: font('DejaVuSansCondensed'),
  bold: font('DejaVuSansCondensed-Bold'),
});
const ask = (more: object, progress?: Tools['progress']) =>
  callOperation(
    'sheets',
    { job: exampleJob, effort: 0, date: '2026-11-25', ...more },
    { fonts, ...(progress ? { progress } : {}) },
  );
async function made(more: object, progress?: Tools['progress']) {
  const result = await ask(more, progress);
  if (!result.ok) throw new Error(inOne(sayRefusal(result.refusal, makeShow({ units: 'mm' }))));
  return (result.value as OperationOutput<'sheets'>).files;
}
const paths = (files: Awaited<ReturnType<typeof made>>) => files.map(({ path }) => path);

/** The first pattern but for the file's own id, which is of all that was asked for. */
function patternOf(files: Awaited<ReturnType<typeof made>>): string {
  const file = files.find(({ path }) => path.startsWith('patterns/P1'))!;
  return String.fromCharCode(...bytesOfBase64(file.base64)!).replace(/<[0-9a-f]{32}>/gi, '');
}

const printer = {
  ...{ id: 'roll', name: 'Roll printer', paper: { kind: 'roll', width: 914.4 } },
  correction: { x: 1.002, y: 0.998 },
};
const shop = { ...defaultCatalogue, printers: [printer] };

const withLogo = (base64: string) => ({
  ...defaultCatalogue,
  shop: { ...defaultCatalogue.shop, logo: { mediaType: 'image/png', base64 } },
});

test('a printer of the catalogue brings its paper and its correction, and what is asked for goes first', async () => {
  const own = await made({ catalogue: shop, printer: 'roll' });
  expect(paths(own)).toContain('patterns/P1-roll-36in.pdf');
  const given = { paper: { kind: 'roll', width: 914.4 } };
  const same = await made({ catalogue: shop, correction: printer.correction, ...given });
  expect(patternOf(own)).toBe(patternOf(same));
  expect(patternOf(await made({ catalogue: shop, ...given }))).not.toBe(patternOf(own));
  expect(paths(await made({ catalogue: shop, printer: 'roll', paper: 'a3' }))).toContain(
    'patterns/P1-a3.pdf',
  );
});

test('labels, plotter files and the printer’s page are made where they are asked for', async () => {
  const plain = paths(await made({}));
  for (const path of ['labels-shelf.pdf', 'lay.plt', 'printer-test-letter.pdf'])
    expect(plain).not.toContain(path);
  const all = await made({
    labels: { stock: '4 × 2 in, 2 × 5', start: 3 },
    ...{ hpgl: { knife: { offset: 0.5, overcut: 2 } }, printerTest: true, address: 'http://127.0.0.1:4750' },
  });
  for (const path of ['labels-shelf.pdf', 'lay.plt', 'pieces/P1-panel.plt', 'printer-test-letter.pdf'])
    expect(paths(all)).toContain(path);
});

test('each page of a sheet can be looked at, and what the pages share is sent once', async () => {
  const files = (await made({ previews: true })).filter(({ pages = 0 }) => pages > 1);
  expect(files.length).toBeGreaterThan(3);
  for (const { pages, preview, looks } of files) {
    const drawn = looks!.pages.map((places) => places.map((place) => looks!.parts[place]).join(''));
    expect(drawn.length).toBe(pages);
    expect(new Set(drawn).size).toBe(pages);
    expect(drawn[0]).toBe(preview);
    for (const one of drawn) expect(one).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
    expect(looks!.parts.join('').length).toBeLessThan(drawn.join('').length);
  }
});

test('sheets have the shop’s language, the quote the customer’s', async () => {
  const job = { ...exampleJob, customer: { ...exampleJob.customer, language: 'es' } };
  const german = { ...defaultCatalogue, shop: { ...defaultCatalogue.shop, language: 'de' } };
  const files = await made({ job, catalogue: german });
  const title = (path: string) => files.find((one) => one.path === path)?.title;
  expect(title('work-order.pdf')).toMatch(/^Arbeitsauftrag/);
  expect(title('quote.pdf')).toMatch(/^Presupuesto/);
  const english = await made({ job, catalogue: german, language: 'en' });
  expect(english.find(({ path }) => path === 'work-order.pdf')?.title).toMatch(/^Work order/);
});

test('how far the work is, is told panel by panel of the plan, then sheet by sheet to the end', async () => {
  const told: { readonly done: number; readonly of: number; readonly stage: string | undefined }[] = [];
  await made({}, (done, of, stage) => told.push({ done, of, stage }));
  for (const [stage, least] of [
    ['plan', 2],
    ['sheets', 5],
  ] as const) {
    const own = told.filter((one) => one.stage === stage);
    expect(own.length).toBeGreaterThan(least);
    for (const [index, { done, of }] of own.entries()) {
      expect(done).toBeGreaterThan(own[index - 1]?.done ?? -1);
      expect(of).toBe(own[0]!.of);
    }
    expect(own.at(-1)!.done).toBe(own[0]!.of);
  }
  expect(told.findLastIndex(({ stage }) => stage === 'plan')).toBeLessThan(
    told.findIndex(({ stage }) => stage === 'sheets'),
  );
});

test('an alternative has the price of the job made that way', async () => {
  const quoted = await made({ offers: [{ fabric: 'mesh-sand' }, { finish: { kind: 'hem', width: 20 } }] });
  const rows = new TextDecoder()
    .decode(bytesOfBase64(quoted.find(({ path }) => path === 'quote.csv')!.base64)!)
    .trim()
    .split(/\r?\n/)
    .slice(-2);
  // Oracle: the job with the choice made in the job itself, its openings saying nothing of it.
  const choices = [{ fabric: 'mesh-sand' }, { finish: { kind: 'hem' as const, width: 20 } }];
  for (const [index, choice] of choices.entries()) {
    const job = { ...exampleJob, choices: { ...exampleJob.choices, ...choice } };
    const plan = await callOperation('plan', { job, effort: 0 });
    const { price } = (plan.ok && (plan.value as OperationOutput<'plan'>)) as OperationOutput<'plan'>;
    expect(rows[index]!.endsWith(`,${price!.total.value / 100}`)).toBe(true);
  }
});

test.each<[object, string, RegExp]>([
  [{ paper: { kind: 'roll', width: 90 } }, 'ROLL_WIDTH_OUT_OF_RANGE', /90 mm wide.*200 to 5080/],
  [{ correction: { x: 1, y: 1.2 } }, 'CORRECTION_OUT_OF_RANGE', /along the paper is 1.2/],
  [{ templateCopies: 0 }, 'TEMPLATE_COPIES_OUT_OF_RANGE', /1 to 10000/],
  [{ printer: 'attic' }, 'PRINTER_UNKNOWN', /no printer “attic”/],
  [{ catalogue: withLogo('iVBORw0K') }, 'LOGO_UNREADABLE', /sign in the catalogue is not a PNG or JPEG/],
  [{ offers: [{ fabric: 'silk' }] }, 'OFFER_UNKNOWN', /names “silk”, which the catalogue does not have/],
  [{ labels: { stock: 'none' } }, 'LABEL_STOCK_UNKNOWN', /“99 × 38 mm, 2 × 7”/],
  [{ labels: { stock: '4 × 2 in, 2 × 5', start: 11 } }, 'LABEL_START_OUT_OF_RANGE', /no label 11.*1 to 10/],
  [{ labels: { stock: '4 × 2 in, 2 × 5', copies: 51 } }, 'LABEL_COPIES_OUT_OF_RANGE', /51 labels.*1 to 50/],
  [
    {
      labels: { stock: '38 × 21 mm, 5 × 13' },
      address: `https://${'a-long-name.'.repeat(12)}example`,
    },
    'LABEL_TOO_SMALL_FOR_CODE',
    /too small for their codes/,
  ],
])('%j is refused with a sentence', async (more, code, sentence) => {
  const result = await ask(more);
  const refusal = (result.ok ? null : result.refusal) as Extract<Refusal, { code: 'SHEETS_REFUSED' }> | null;
  expect(refusal?.code).toBe('SHEETS_REFUSED');
  expect(refusal?.refusal.code).toBe(code);
  expect(inOne(sayRefusal(refusal!, makeShow({ units: 'mm' })))).toMatch(sentence);
});
