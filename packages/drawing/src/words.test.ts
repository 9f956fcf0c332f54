import { defaultCatalogue } from '@panewright/design';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayAfter, minutesText, moneyText, tint } from './figures.ts';
import { testMetrics } from './testing/metrics.ts';
import { cleanText, fitText, widthOf, wrap } from './text.ts';

test('a day so many days on is the calendar’s', () => {
  // Oracle: the engine's own calendar.
  fc.assert(
    fc.property(fc.integer({ min: -20000, max: 40000 }), fc.integer({ min: 0, max: 800 }), (start, days) => {
      const iso = (day: number) => new Date(day * 86_400_000).toISOString().slice(0, 10);
      expect(dayAfter(iso(start), days)).toBe(iso(start + days));
    }),
  );
  expect(dayAfter('2028-02-28', 1)).toBe('2028-02-29');
});

test('money reads as the engine writes it', () => {
  // Oracle: Intl.NumberFormat.
  const oracle = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' });
  fc.assert(
    fc.property(fc.integer({ min: -1e11, max: 1e11 }), (minor) => {
      expect(moneyText(minor, defaultCatalogue.currency)).toBe(
        oracle.format(minor / 100).replace('-$0.00', '$0.00'),
      );
    }),
  );
  expect(moneyText(1234, { code: 'JPY', symbol: '¥', decimals: 0 })).toBe('¥1,234');
});

test('minutes become hours and minutes', () => {
  expect([0.2, 59.4, 60, 135].map(minutesText)).toEqual(['1 min', '59 min', '1 h', '2 h 15 min']);
});

test('a tint goes from the colour to white', () => {
  expect([tint('#204060', 1), tint('#204060', 0), tint('#000000', 0.5)]).toEqual([
    '#204060',
    '#ffffff',
    '#808080',
  ]);
});

test('wrapped lines fit their width and lose no letter', () => {
  fc.assert(
    fc.property(
      fc.string({ maxLength: 120 }),
      fc.double({ min: 8, max: 120, noNaN: true }),
      (words, width) => {
        const lines = wrap(words, width, testMetrics);
        for (const line of lines)
          if ([...line].length > 1) expect(widthOf(line, testMetrics)).toBeLessThanOrEqual(width + 1e-9);
        expect(lines.join('').replaceAll(' ', '')).toBe(cleanText(words).replaceAll(' ', ''));
      },
    ),
  );
});

test('text is set as large as its box allows, and not at all where it cannot be read', () => {
  const sizes = { most: 6, least: 2 };
  const name = 'Wohnzimmerfensterscheibenabdeckungsrahme';
  const wide = fitText(name, { width: 230, height: 20 }, testMetrics, sizes);
  const narrow = fitText(name, { width: 120, height: 20 }, testMetrics, sizes);
  expect(wide?.lines).toEqual([name]);
  expect(narrow?.lines).toEqual([name]);
  expect(narrow!.capital).toBeLessThan(wide!.capital);
  expect(fitText(name, { width: 10, height: 5 }, testMetrics, sizes)).toBeUndefined();
});
