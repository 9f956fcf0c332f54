import type { Sheet, TextItem } from '@panewright/drawing';
import { point } from '@panewright/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csv, loadFonts, pageSvg, renderFiles, sheetPdf } from './index.ts';
import { num } from './number.ts';
import { demoJob, drawingsFor, fonts, inputFor, options } from './testing/demo.ts';
import { readPdf } from './testing/readPdf.ts';

const drawings = drawingsFor(inputFor(demoJob, 'letter'));

test('the same job gives the same files, byte for byte, and another date gives others', async () => {
  const some = { ...drawings, sheets: [0, 1, -4, -1].map((at) => drawings.sheets.at(at)!) };
  const [first, second] = [await renderFiles(some, options), await renderFiles(some, options)];
  expect(first.map(({ path }) => path)).toEqual(second.map(({ path }) => path));
  for (const [index, { path, bytes }] of first.entries())
    expect({ path, same: Buffer.compare(bytes, second[index]!.bytes) }).toEqual({ path, same: 0 });
  const order = drawings.sheets.slice(0, 1);
  const later = await renderFiles(
    { sheets: order, pieces: [], lays: [] },
    { ...options, date: '2026-11-26' },
  );
  expect(Buffer.compare(later[0]!.bytes, first[0]!.bytes)).not.toBe(0);
});

test('files have their places and no two share one', async () => {
  const paths = (await renderFiles({ ...drawings, sheets: drawings.sheets.slice(0, 2) }, options)).map(
    ({ path }) => path,
  );
  expect(paths.slice(0, 2)).toEqual(['work-order.pdf', 'patterns/P1-letter.pdf']);
  expect(paths).toEqual(
    expect.arrayContaining(['pieces/P1-panel.dxf', 'pieces/P1-panel.svg', 'lay.svg', 'lay.dxf']),
  );
  expect(new Set(paths).size).toBe(paths.length);
});

test('a PDF names its title, its day and its maker, and its text can be read out', async () => {
  const sheet = drawings.sheets.find(({ path }) => path === 'quote')!;
  const { info, pages } = await readPdf(
    await sheetPdf(sheet, {
      fonts,
      date: '2026-11-25',
      id: '0'.repeat(32),
      author: 'Your shop',
      language: 'en',
    }),
  );
  expect(info).toMatchObject({
    Title: sheet.title,
    Author: 'Your shop',
    CreationDate: 'D:20261125000000Z',
    PDFFormatVersion: '1.7',
    Language: 'en',
  });
  expect(pages[0]!.text).toContain('Galley');
  expect(pages.map(({ text }) => text).join(' ')).toContain('Total');
});

const sheetWith = (words: string): Sheet => {
  const item: TextItem = {
    ...{ kind: 'text', text: words, at: point(10, 50), size: 5, face: 'regular' },
    ...{ anchor: 'start', turn: 0, colour: '#000000' },
  };
  return {
    path: 'test',
    title: words,
    symbols: {},
    pages: [{ label: '', width: 100, height: 100, items: [item] }],
  };
};
const pdfOptions = { fonts, date: '2026-11-25', id: '0'.repeat(32), author: '', language: 'en' };

test('letters of many scripts come out of the PDF as they went in', async () => {
  for (const words of [
    'Größe Añil café',
    'Čeština Ελληνικά Кириллица',
    '3/16 × ½ ≥ 20 °C',
    'fi ffi ligatures off',
  ]) {
    const { pages } = await readPdf(await sheetPdf(sheetWith(words), pdfOptions));
    expect(pages[0]!.text.replace(/\s+/g, ' ').trim()).toBe(words);
  }
});

test('any text a person can type makes a file, never a fault', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 40 }), async (words) => {
      expect((await sheetPdf(sheetWith(words), pdfOptions)).length).toBeGreaterThan(500);
      expect(pageSvg(sheetWith(words), 0, fonts.metrics)).toContain('</svg>');
    }),
    { numRuns: 15 },
  );
});

/** Advance width of a letter of the Basic Multilingual Plane. @source the OpenType tables head, hhea, hmtx, cmap format 4 */
function advance(letter: string): number {
  const { buffer, byteOffset, byteLength } = fonts.bytes.regular;
  const view = new DataView(buffer, byteOffset, byteLength);
  const table = (tag: string): number => {
    for (let i = 0; i < view.getUint16(4); i++) {
      const at = 12 + 16 * i;
      if ([0, 1, 2, 3].map((k) => String.fromCharCode(view.getUint8(at + k))).join('') === tag)
        return view.getUint32(at + 8);
    }
    throw new Error(`no ${tag}`);
  };
  const cmap = table('cmap');
  const subtables = Array.from(
    { length: view.getUint16(cmap + 2) },
    (_, i) => cmap + view.getUint32(cmap + 4 + 8 * i + 4),
  );
  const four = subtables.find((at) => view.getUint16(at) === 4)!;
  const segments = view.getUint16(four + 6) / 2;
  const code = letter.charCodeAt(0);
  for (let i = 0; i < segments; i++) {
    const [end, start] = [view.getUint16(four + 14 + 2 * i), view.getUint16(four + 16 + 2 * (segments + i))];
    if (code < start || code > end) continue;
    const rangeAt = four + 16 + 2 * (3 * segments + i);
    const [delta, range] = [view.getUint16(four + 16 + 2 * (2 * segments + i)), view.getUint16(rangeAt)];
    const glyph =
      range === 0 ? (code + delta) & 0xffff : view.getUint16(rangeAt + range + 2 * (code - start));
    return view.getUint16(table('hmtx') + 4 * Math.min(glyph, view.getUint16(table('hhea') + 34) - 1));
  }
  throw new Error(`no ${letter}`);
}

test('a text is as wide as its letters in the font’s own table', () => {
  // Oracle: the file's hmtx and cmap tables, read here by hand.
  const width = (advance('H') + advance('a')) / 2048;
  expect(fonts.metrics.width('Ha', 'regular')).toBeCloseTo(width, 9);
  expect(fonts.metrics.width('Ha'.repeat(50), 'regular')).toBeCloseTo(50 * width, 9);
  expect(() => loadFonts({ regular: new Uint8Array(10), bold: new Uint8Array(10) })).toThrow();
});

test('numbers in the files are rounded to 0.001 and never written with an exponent', () => {
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
      expect(num(value)).toMatch(/^-?\d+(\.\d{1,3})?$/);
      expect(Math.abs(Number(num(value)) - value)).toBeLessThanOrEqual(0.0005 + 1e-9);
    }),
  );
  expect([num(-0.0001), num(1e-9), num(120), num(0.1 + 0.2)]).toEqual(['0', '0', '120', '0.3']);
  expect(() => num(Number.NaN)).toThrow('a number that is none');
});

test('a table’s cells are quoted where they must be and never run as a formula', () => {
  const text = csv({
    header: ['name', 'count'],
    rows: [
      ['a, "b"', 1.23456],
      ['=1+1', 2],
    ],
  });
  expect(text).toBe('name,count\r\n"a, ""b""",1.235\r\n\'=1+1,2\r\n');
});

test('a page as SVG has the paper’s size in millimetres and the pattern once', () => {
  const sheet = drawings.sheets.find(({ path }) => path === 'patterns/P1-letter')!;
  const svg = pageSvg(sheet, 1, fonts.metrics);
  expect(svg).toMatch(/^<svg [^>]*width="(215\.9|279\.4)mm" height="(279\.4|215\.9)mm"/);
  expect(svg.match(/<g id="pattern">/g)?.length).toBe(1);
  expect(svg.match(/<use href="#pattern"/g)?.length).toBe(1);
  expect(() => pageSvg(sheet, 99, fonts.metrics)).toThrow('no page 100');
});
