import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { asKept } from '../text/decimals.ts';
import { showLength, showMoney, showSmall } from '../text/show.ts';
import { useSpoken } from '../text/useWords.ts';
import { lengthEntry, readLengthEntry, sayInUnit } from './lengthEntry.ts';
import { moneyEntry, readMoney, readPercent } from './numberEntry.ts';

// Lengths a person sets are multiples of 0.01 mm or of 1/32 in; the text in the field must say the same length.
test('a length put into a field as text reads back as itself', () => {
  const hundredths = fc.integer({ min: -10_000, max: 200_000 }).map((n) => n / 100);
  const fractions = fc.integer({ min: -100, max: 4000 }).map((n) => (n * 25.4) / 32);
  fc.assert(
    fc.property(
      fc.oneof(hundredths, fractions),
      fc.constantFrom('in' as const, 'mm' as const),
      (value, unit) => {
        const read = readLengthEntry(lengthEntry(value, unit), unit);
        expect(read.ok && Math.abs(read.value - value)).toBeLessThan(0.0051);
      },
    ),
  );
});

// 1 in = 25.4 mm exactly (NIST SP 811).
for (const [value, unit, text] of [
  [6.35, 'in', '1/4'],
  [-6.35, 'in', '-1/4'],
  [609.6, 'in', '24'],
  [619.125, 'in', '24 3/8'],
  [7, 'in', '7 mm'],
  [7, 'mm', '7'],
  [619.125, 'mm', '619.125'],
] as const)
  test(`${value} mm stands in a field of ${unit} as ${text}`, () => {
    expect(lengthEntry(value, unit)).toBe(text);
  });

test('a bound is told in the unit of the field', () => {
  const problem = {
    sentence: '',
    issue: { kind: 'tooLow', path: [], least: 50.8, including: true, found: 1 },
  } as const;
  expect(sayInUnit(problem, 'in')).toBe('This must be 2 in or more.');
  expect(sayInUnit(problem, 'mm')).toBe('This must be 50.8 mm or more.');
});

test('money in minor units and back loses nothing, whatever the currency’s decimals', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1_000_000_000 }),
      fc.integer({ min: 0, max: 3 }),
      (minor, decimals) => {
        expect(readMoney(moneyEntry(minor, decimals), decimals)).toEqual({ ok: true, value: minor });
      },
    ),
  );
});

test('an amount with more decimals than the currency has is refused, not rounded', () => {
  expect(readMoney('12.345', 2).ok).toBe(false);
  expect(readMoney('12,5', 2)).toEqual({ ok: true, value: 1250 });
});

test('per cent is a move of the decimal point: 35 % is 0.35 and 17.5 % is 0.175', () => {
  expect(readPercent.read('35')).toEqual({ ok: true, value: 0.35 });
  expect(readPercent.read('17.5 %')).toEqual({ ok: true, value: 0.175 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000 }), (n) => {
      const ratio = n / 10_000;
      expect(readPercent.read(readPercent.show(ratio))).toEqual({ ok: true, value: ratio });
    }),
  );
});

describe('where decimals are set apart by a comma', () => {
  afterEach(() => useSpoken.setState({ mark: '.', language: 'en' }));

  test('fields show it, and read both', () => {
    useSpoken.setState({ mark: ',', language: 'de' });
    expect(lengthEntry(619.125, 'mm')).toBe('619,125');
    expect(lengthEntry(619.125, 'in')).toBe('24 3/8');
    for (const text of ['619,125', '619.125', '-619,125 mm'])
      expect(readLengthEntry(text, 'mm')).toEqual({
        ok: true,
        value: text.startsWith('-') ? -619.125 : 619.125,
      });
    expect(moneyEntry(1250, 2)).toBe('12,50');
    expect(readMoney('12,50', 2)).toEqual(readMoney('12.50', 2));
    expect(readPercent.show(0.355)).toBe('35,5');
    expect(showSmall(1.25)).toBe('1,25 mm');
    expect(showMoney(1250, { code: 'EUR', symbol: '€', decimals: 2 })).toBe('12,50 €');
  });

  test('a reading is kept as typed, but where that alone could mean thousands', () => {
    expect(asKept('619,125')).toBe('619,125');
    useSpoken.setState({ mark: ',' });
    expect(asKept('619,125')).toBe('619.125');
    expect(asKept('619,5')).toBe('619,5');
    expect(asKept('24 3/8')).toBe('24 3/8');
  });
});

// Left-to-right isolate and its end: U+2066 and U+2069 (Unicode UAX 9).
test('amid words from the right a figure keeps its unit behind it', () => {
  useSpoken.setState({ dir: 'rtl' });
  expect(showLength(619.125, 'in')).toBe('\u206624 3/8 in\u2069');
  useSpoken.setState({ dir: 'ltr' });
  expect(showLength(619.125, 'in')).toBe('24 3/8 in');
});
