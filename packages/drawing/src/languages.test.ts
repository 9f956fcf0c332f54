import { readFileSync } from 'node:fs';
import { defaultCatalogue, type Job } from '@panewright/design';
import { expect, test } from 'vitest';
import { lengthText, moneyText, stockText } from './figures.ts';
import {
  english,
  german,
  type Item,
  LABEL_STOCKS,
  labelSheet,
  type SheetInput,
  sheetsOf,
  spanish,
  type TextItem,
  textClashes,
} from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const LANGUAGES = ['en', 'de', 'es'] as const;
const demo = JSON.parse(
  readFileSync(new URL('../../../demo/camper.job.json', import.meta.url), 'utf8'),
) as Job;
/** Forty letters, without and with spaces. Invented. */
const UNBROKEN = 'Wohnzimmerfensterscheibenabdeckungsrahme';
const SPACED = 'Ventana grande del rincón, lado de babor';

const rename = <T extends { readonly name: string }>(list: readonly T[]) =>
  list.map((one, index) => ({ ...one, name: index % 2 === 0 ? UNBROKEN : SPACED }));
const long = inputFor(
  {
    ...demo,
    name: `${UNBROKEN} ${SPACED}`,
    customer: { name: UNBROKEN, address: `${SPACED}\n${UNBROKEN}`, contact: SPACED },
    openings: rename(demo.openings).map((one) => ({ ...one, place: SPACED })),
  },
  {
    ...defaultCatalogue,
    shop: { name: UNBROKEN, address: SPACED.repeat(4), contact: UNBROKEN, terms: SPACED.repeat(9) },
    ...{ fabrics: rename(defaultCatalogue.fabrics), bindings: rename(defaultCatalogue.bindings) },
    ...{ magnets: rename(defaultCatalogue.magnets), wrapFilms: rename(defaultCatalogue.wrapFilms) },
    ...{ tapes: rename(defaultCatalogue.tapes), threads: rename(defaultCatalogue.threads) },
  },
);
const usual = inputFor(demo);
const textsOf = (items: readonly Item[]): readonly TextItem[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? textsOf(item.items) : []));
const spoken = (input: SheetInput, more: Partial<SheetInput['options']>): SheetInput => ({
  ...input,
  options: { ...input.options, ...more },
});

/** A further paper in each language: papers and languages have nothing to do with each other. */
const ALSO = { en: { kind: 'roll', width: 914.4 }, de: 'tabloid', es: 'a3' } as const;

for (const language of LANGUAGES)
  test(`no text touches another, a line or the edge in language ${language}, names of forty letters or not`, () => {
    for (const [input, paper, type] of [
      [usual, 'a4', 'standard'],
      [long, 'letter', 'large'],
      [usual, ALSO[language], 'large'],
    ] as const) {
      const own = spoken(input, {
        language,
        paper,
        type,
        printerTest: true,
        correction: { x: 1.0021, y: 0.9985 },
      });
      for (const sheet of sheetsOf(own))
        expect({ sheet: sheet.path, clashes: textClashes(sheet, testMetrics) }).toEqual({
          sheet: sheet.path,
          clashes: [],
        });
      const labels = labelSheet(own, { kind: 'sewn', stock: LABEL_STOCKS[0]! });
      expect(labels.ok && textClashes(labels.value, testMetrics)).toEqual([]);
    }
  });

/** Every sentence of a language, with stand-in figures. */
function sentences(words: object, path = ''): readonly (readonly [string, string])[] {
  return Object.entries(words).flatMap(([key, value]) => {
    const at = path === '' ? key : `${path}.${key}`;
    if (typeof value !== 'function') return sentences(value as object, at);
    return STAND_INS.flatMap((figures) => {
      try {
        const said = (value as (...all: unknown[]) => unknown)(...figures);
        return typeof said === 'string' ? [[at, said] as const] : [];
      } catch {
        return [];
      }
    });
  });
}
/** Arguments by kind: a sentence takes one of these sets. */
const STAND_INS: readonly (readonly unknown[])[] = [
  ['north', 'north', 'outside', 7],
  ['outside', 'left', 'x', 7],
  [5, 3, 2, 7],
  [5, 'Q1', 'Q2', 'Q3'],
  ['Q1', 3, ['Q2'], 7],
  [['Q1', 'Q2'], 2],
  ['Q1', 'Q2', 'Q3', 4],
  ['Q1', ['Q2'], 'Q3', 4],
  [5, ['Q1', 'Q2']],
];

test('every sentence is said in every language, with the same figures and no word left in English', () => {
  const said = (words: object) => sentences(words);
  const [first, ...others] = [english, german, spanish].map(said);
  for (const other of others) {
    expect(other!.map(([path]) => path)).toEqual(first!.map(([path]) => path));
    const alike = first!.filter(
      ([path, sentence], index) =>
        other![index]![1] === sentence &&
        sentence.replace(/\bQ\d\b|undefined|[^A-Za-z]/g, '').length > 14 &&
        !/^quote\.job|^page\.(made|job)|^cut\.lengthFor/.test(path),
    );
    expect(alike).toEqual([]);
    first!.forEach(([path, sentence], index) => {
      // A pole and a side are put in words there, so that a stand-in for them is seen in English alone.
      if (path === 'install.poleNote' || path === 'install.across') return;
      const figures = (text: string) => [...new Set(text.match(/Q\d/g) ?? [])].toSorted();
      expect({ path, figures: figures(other![index]![1]) }).toEqual({ path, figures: figures(sentence) });
    });
  }
});

test('a sheet speaks its language throughout, and says which', () => {
  // The catalogue a shop begins with is in its language too: nothing of it is renamed here.
  const input = inputFor(smallJob());
  const titles = { en: 'Work order', de: 'Arbeitsauftrag', es: 'Orden de trabajo' };
  for (const language of LANGUAGES) {
    const sheets = sheetsOf(spoken(input, { language, say: () => 'Q' }));
    expect(sheets.every((sheet) => sheet.language === language)).toBe(true);
    const words = sheets.map((sheet) =>
      textsOf(sheet.pages.flatMap(({ items }) => items))
        .map(({ text }) => text)
        .join(' '),
    );
    expect(words[0]).toContain(titles[language]);
    if (language === 'en') continue;
    for (const one of words)
      expect(one).not.toMatch(/\b(the|and|with|each|of|to|panel for|opening|mesh|binding|cut)\b/i);
  }
});

test('figures and money are written as the language writes them', () => {
  // Oracle: Intl.NumberFormat, its no-break space made a plain one. Spanish groups from five digits on, which sheets do always.
  const euro = { code: 'EUR', symbol: '€', decimals: 2 };
  for (const minor of [123456789, 99, 1234500, -4200050])
    for (const language of ['de', 'es'] as const) {
      const oracle = new Intl.NumberFormat(language, {
        style: 'currency',
        currency: 'EUR',
        useGrouping: 'always',
      });
      expect(moneyText(minor, euro, language)).toBe(oracle.format(minor / 100).replace(/\u00a0/g, ' '));
    }
  expect([stockText(1234, 'mm', 'de'), stockText(1234, 'mm')]).toEqual(['1,23 m', '1.23 m']);
  expect(lengthText(1234.4, 'mm')).toBe('1234 mm');
});

test('a figure is not parted from its fraction or its unit at the end of a line', () => {
  for (const language of LANGUAGES)
    for (const sheet of sheetsOf(spoken(usual, { language, paper: 'letter' }))) {
      const lines = textsOf(sheet.pages.flatMap(({ items }) => items)).map(({ text }) => text);
      const parted = lines.filter((line, index) => {
        const next = lines[index + 1] ?? '';
        return /\d$/.test(line) && /^(\d+\/\d|(mm|in|yd)\b|%)/.test(next) && line.length > 24;
      });
      expect({ language, sheet: sheet.path, parted }).toEqual({ language, sheet: sheet.path, parted: [] });
    }
});

test('every layer between the magnets has a name in every language', () => {
  const layers = ['fabric', 'wrapFilm', 'tape', 'glass', 'laminated', 'acrylic', 'air', 'film', 'standOff'];
  for (const words of [english, german, spanish])
    for (const layer of layers)
      if (!['air', 'tape', 'film', 'glass', 'acrylic'].includes(layer))
        expect(words.exploded.layer(layer)).not.toBe(layer);
  for (const words of [german, spanish])
    for (const layer of layers) expect(words.exploded.layer(layer)).not.toBe(layer);
});
