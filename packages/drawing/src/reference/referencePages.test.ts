import { referenceSheets } from '@panewright/photo';
import { describe, expect, test } from 'vitest';
import { type Item, type Page, type PathItem, referencePages, type TextItem, textClashes } from '../index.ts';
import { testMetrics } from '../testing/metrics.ts';

const all = (items: readonly Item[]): (PathItem | TextItem)[] =>
  items.flatMap((item) => {
    if (item.kind === 'group') return all(item.items);
    return item.kind === 'path' || item.kind === 'text' ? [item] : [];
  });
const texts = (page: Page) => all(page.items).filter((item) => item.kind === 'text');

const CASES = (['A4', 'Letter'] as const).flatMap((paper) =>
  (['en', 'de', 'es'] as const).map((language) => [paper, language] as const),
);

describe.each(CASES)('the reference sheets on %s in %s', (paper, language) => {
  const sheet = referencePages({ paper, language, metrics: testMetrics });
  const { pages } = sheet;
  const sheets = referenceSheets(paper);

  test('have all words apart and on the paper, and none in a marker’s white rim', () => {
    expect(textClashes(sheet, testMetrics)).toEqual([]);
    pages.forEach((page, n) => {
      for (const { at, text, size, anchor } of texts(page)) {
        const long = testMetrics.width(text, 'regular') * size;
        const left = anchor === 'middle' ? at.x - long / 2 : at.x;
        expect(left > 5 && left + long < page.width - 5 && at.y > 5 && at.y < page.height - 5).toBe(true);
        for (const { corners } of sheets[n]!.markers)
          expect(
            at.x > corners[0].x - 5 &&
              at.x < corners[1].x + 5 &&
              at.y > corners[3].y - 5 - size * 0.7 &&
              at.y < corners[0].y + 4.9,
          ).toBe(false);
      }
    });
  });

  test('say each marker’s number and place, and the length of the bars', () => {
    pages.forEach((page, n) => {
      const said = texts(page).map(({ text }) => text);
      for (const { id, corners } of sheets[n]!.markers) {
        expect(said).toContain(`${id}`);
        const numbers = [corners[3].x, corners[3].y].map((value) =>
          value.toFixed(1).replace('.', language === 'en' ? '.' : ','),
        );
        const place = said.find(
          (one) => one.startsWith(`${id}: `) && numbers.every((value) => one.includes(value)),
        );
        expect(place, `marker ${id}`).toBeDefined();
      }
      expect(said).toEqual(expect.arrayContaining(['x: 200 mm', 'y: 150 mm']));
    });
  });

  test('draw the markers and bars as they are given, and nothing else in black', () => {
    pages.forEach((page, n) => {
      const paths = all(page.items).filter((item) => item.kind === 'path');
      const black = sheets[n]!.markers.flatMap((marker) => marker.black).length;
      expect(paths.filter((one) => one.fill === '#000000').length).toBe(black);
      expect(paths.length).toBe(black + 2 + 4);
    });
  });
});
