import { formatLength, mm, parseLength, splitFraction } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// Oracle: worked by hand from 1 in = 25.4 mm; halves up is the practice of the trade (common practice, no source).
test.each([
  [619.125, 16, '24 3/8 in'],
  [619.125, 8, '24 3/8 in'],
  [609.6, 16, '24 in'],
  [22.225, 16, '7/8 in'],
  [0, 16, '0 in'],
  [0.79375, 16, '1/16 in'], // exactly half a sixteenth
  [0.79, 16, '0 in'],
  [0.79375, 32, '1/32 in'],
  [25.3, 16, '1 in'],
  [0.396875, 64, '1/64 in'],
  [76.2, 64, '3 in'],
  [-6.35, 16, '-1/4 in'],
  [-0.3, 16, '0 in'],
] as const)('%s mm to the nearest 1/%s in is %s', (length, denominator, text) => {
  expect(formatLength(mm(length), { unit: 'in', denominator })).toBe(text);
});

test.each([
  [619.125, 1, '619.1 mm'],
  [619.15, 1, '619.2 mm'], // the double lies below the half; the half was meant
  [619.5, 0, '620 mm'],
  [619.25, 1, '619.3 mm'],
  [-0.04, 1, '0.0 mm'],
  [-1.25, 1, '-1.3 mm'],
  [619, 1, '619.0 mm'],
] as const)('%s mm with %s decimals is %s', (length, decimals, text) => {
  expect(formatLength(mm(length), { unit: 'mm', decimals })).toBe(text);
});

test('millimetres take one decimal unless told, and the unit can be left off', () => {
  expect(formatLength(mm(619.125), { unit: 'mm' })).toBe('619.1 mm');
  expect(formatLength(mm(619.125), { unit: 'mm', bare: true })).toBe('619.1');
  expect(formatLength(mm(619.125), { unit: 'in', denominator: 16, bare: true })).toBe('24 3/8');
});

test('a fraction is reduced, and says what the rounding cost', () => {
  const split = splitFraction(mm(620), 16);
  expect(split).toMatchObject({ negative: false, whole: 24, numerator: 7, denominator: 16 });
  expect(split.rounding).toBeCloseTo(24.4375 * 25.4 - 620, 12);
});

test('a number that is not finite is a fault of ours and throws', () => {
  expect(() => formatLength(mm(Number.NaN), { unit: 'mm' })).toThrow(RangeError);
  expect(() => splitFraction(mm(Number.POSITIVE_INFINITY), 16)).toThrow(RangeError);
});

test('what is shown reads back within half of the last place', () => {
  const denominators = fc.constantFrom(8, 16, 32, 64);
  fc.assert(
    fc.property(fc.double({ min: 0, max: 99_000, noNaN: true }), denominators, (length, denominator) => {
      const inch = parseLength(formatLength(mm(length), { unit: 'in', denominator }), 'mm');
      const metric = parseLength(formatLength(mm(length), { unit: 'mm' }), 'in');
      return (
        inch.ok &&
        Math.abs(inch.value - length) <= 12.7 / denominator + 1e-6 &&
        metric.ok &&
        Math.abs(metric.value - length) <= 0.05 + 1e-6
      );
    }),
    { seed: 2 },
  );
});
