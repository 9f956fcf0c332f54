import { deflateSync } from 'node:zlib';
import { defaultCatalogue } from '@panewright/design';
import { expect, test } from 'vitest';
import { costSheet, type Item, imageSize, quote, type Sheet, textClashes } from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const small = inputFor(smallJob());
const textsOf = (items: readonly Item[]): readonly string[] =>
  items.flatMap((item) =>
    item.kind === 'text' ? [item.text] : item.kind === 'group' ? textsOf(item.items) : [],
  );
const wordsOf = (sheet: Sheet) => textsOf(sheet.pages.flatMap(({ items }) => items)).join(' ');
const dollars = (minor: number) =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(minor / 100);

/** A PNG of one grey, made here chunk by chunk; its checksums are left out, for nothing here reads them. */
function png(width: number, height: number): string {
  const chunk = (type: string, data: Buffer) => {
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    return Buffer.concat([length, Buffer.from(type), data, Buffer.alloc(4)]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8;
  const rows = deflateSync(Buffer.alloc((width + 1) * height));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const chunks = [chunk('IHDR', head), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))];
  return Buffer.concat([signature, ...chunks]).toString('base64');
}

/** The head of a JPEG as ITU-T T.81 has it: an APP0 segment of 16 bytes, then a frame header. */
const jpeg = (width: number, height: number) =>
  Buffer.from([
    ...[0xff, 0xd8, 0xff, 0xe0, 0, 16, ...Array<number>(14).fill(0), 0xff, 0xc2, 0, 11, 8],
    ...[height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0, 0xff, 0xd9],
  ]).toString('base64');

test('a picture’s size is read from the head of its file', () => {
  expect(imageSize({ mediaType: 'image/png', base64: png(300, 70) })).toEqual({ width: 300, height: 70 });
  expect(imageSize({ mediaType: 'image/jpeg', base64: jpeg(1200, 480) })).toEqual({
    width: 1200,
    height: 480,
  });
  expect(imageSize({ mediaType: 'image/jpeg', base64: png(300, 70) })).toBeUndefined();
  expect(imageSize({ mediaType: 'image/png', base64: png(0, 70) })).toBeUndefined();
});

test('the shop’s sign stands at the head of the quote, in its own proportions and in no one’s way', () => {
  const logo = { mediaType: 'image/png' as const, base64: png(300, 70) };
  const catalogue = { ...defaultCatalogue, shop: { ...defaultCatalogue.shop, logo } };
  const sheet = quote({ ...small, catalogue })!;
  const [image] = sheet.pages[0]!.items.filter((item) => item.kind === 'image');
  expect(image!.width / image!.height).toBeCloseTo(300 / 70, 9);
  expect(image!.width).toBeLessThanOrEqual(55);
  expect(image!.height).toBeLessThanOrEqual(22);
  expect(textClashes(sheet, testMetrics)).toEqual([]);
});

test('the shop’s own page leads from each material and minute to the price the customer pays', () => {
  const { price, takeOff } = small.plan;
  const sheet = costSheet(small)!;
  const words = wordsOf(sheet);
  for (const { name, costCharged } of takeOff!.materials) {
    expect(words).toContain(name.slice(0, 12));
    expect(words).toContain(dollars(costCharged.value));
  }
  for (const { name } of takeOff!.labour) expect(words).toContain(name);
  for (const one of [price!.cost, price!.price, price!.total]) expect(words).toContain(dollars(one.value));
  expect(words).toContain(dollars(price!.price.value - price!.cost.value));
  // The table's materials and labour add up to the plan's, to half a cent a line.
  const sum = (kind: string) =>
    sheet
      .table!.rows.filter(([first]) => first === kind)
      .reduce((all, row) => all + 100 * Number(row.at(-1)), 0);
  expect(Math.abs(sum('material') - price!.material.value)).toBeLessThan(1);
  expect(Math.abs(sum('labour') - price!.labour.value)).toBeLessThan(takeOff!.labour.length);
});

test('the quote’s table has a line for each opening, and they add up to the total', () => {
  const { rows, header } = quote(small)!.table!;
  expect(header.at(-1)).toBe('price, USD');
  const last = rows.map((row) => Math.round(100 * Number(row.at(-1))));
  const openings = rows.filter(([id]) => id !== '').length;
  expect(openings).toBe(small.plan.price!.byOpening.length);
  expect(last.slice(0, openings).reduce((a, b) => a + b, 0)).toBe(last[openings]);
  expect(last[openings]! + last[openings + 1]!).toBe(last[openings + 2]);
});

test('alternatives stand in the quote with their own total and by how much it differs, in each language', () => {
  const price = small.plan.price!;
  const [dearer, cheaper] = [price.total.value + 12_345, price.total.value - 5_000];
  const total = (value: number) => ({ ...price, total: { ...price.total, value } });
  const offers = [
    { offer: { fabric: 'mesh-sand' }, price: total(dearer), stops: 0 },
    { offer: { finish: { kind: 'hotCut' as const } }, price: total(cheaper), stops: 99 },
    { offer: { fabric: 'mesh-insect' }, price: null, stops: 1 },
  ];
  const said = { en: 'Options', de: 'Wahlweise', es: 'Opciones' };
  for (const [language, title] of Object.entries(said)) {
    const options = { ...small.options, language: language as 'en' };
    const sheet = quote({ ...small, offers, options })!;
    const words = wordsOf(sheet);
    expect(words).toContain(title);
    expect(textClashes(sheet, testMetrics)).toEqual([]);
    if (language !== 'en') continue;
    expect(words).toContain(`+${dollars(12_345)} ${dollars(dearer)}`);
    expect(words).toContain(`${dollars(-5_000)} ${dollars(cheaper)}`);
    expect(words).toContain('edge cut hot (how it is made is not settled yet)');
    expect(words).not.toContain('Insect mesh');
  }
});
