import { chiSquareExceeded, chiSquareQuantile } from '@panewright/survey';
import { expect, test } from 'vitest';

// Oracle: NIST/SEMATECH e-Handbook, table 1.3.6.7.4 (critical values of chi-square), three decimals; from memory.
test.each([
  [0.95, 1, 3.841],
  [0.95, 2, 5.991],
  [0.95, 5, 11.07],
  [0.95, 10, 18.307],
  [0.95, 30, 43.773],
  [0.99, 1, 6.635],
  [0.99, 2, 9.21],
  [0.99, 10, 23.209],
  [0.999, 1, 10.828],
  [0.9, 100, 118.498],
])('%s of chi-square with %s degrees lies below %s', (probability, freedom, value) => {
  expect(Math.abs(chiSquareQuantile(probability, freedom) - value)).toBeLessThan(0.0006);
  expect(Math.abs(chiSquareExceeded(value, freedom) - (1 - probability))).toBeLessThan(2e-4);
});

test('with two degrees the chance of exceeding x is exp(−x/2)', () => {
  for (const x of [0, 0.1, 1, 3, 10, 50, 300]) {
    expect(chiSquareExceeded(x, 2)).toBeCloseTo(Math.exp(-x / 2), 13);
  }
});
