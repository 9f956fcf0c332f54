import { parseLength } from '@panewright/contract';
import { expect, test } from 'vitest';
import { addFraction, back, otherUnit, press } from './keypad.ts';
import { spokenLength } from './spokenLength.ts';

// Oracle: arithmetic by hand; 1 in = 25.4 mm exactly (ISO 31-1).
test.each([
  ['twenty four and three eighths', 24 + 3 / 8],
  ['24 and 3/8 inches', 24 + 3 / 8],
  ['thirty six and a half', 36.5],
  ['thirty three quarters', 30.75],
  ['fifteen and one sixteenth', 15 + 1 / 16],
  ['twelve and 5 16ths', 12 + 5 / 16],
  ['three quarters', 0.75],
  ['one hundred and two and seven eighths', 102 + 7 / 8],
  ['twenty-one', 21],
  ['forty five point two five', 45.25],
  ['six hundred and twelve millimetres', 612 / 25.4],
  ['612mm', 612 / 25.4],
  ['61.2 centimeters', 61.2 / 2.54],
])('“%s” is %f in', (said, inches) => {
  const read = parseLength(spokenLength(said), 'in');
  expect(read.ok && Math.abs(read.value / 25.4 - inches) < 1e-9, spokenLength(said)).toBe(true);
});

test.each([
  ['612,5 Millimeter', 'de', 612.5],
  ['24 Zoll und drei Achtel', 'de', null],
  ['24 und 3 Achtel', 'de', 24.375 * 25.4],
  ['36 Komma 2 5', 'de', 36.25 * 25.4],
  ['24 y medio', 'es', 24.5 * 25.4],
  ['61,2 centímetros', 'es', 612],
] as const)('“%s”, said in %s, is %s mm', (said, language, length) => {
  const read = parseLength(spokenLength(said, language), 'in');
  if (length === null) expect(read.ok).toBe(false);
  else expect(read.ok && Math.abs(read.value - length) < 1e-9, spokenLength(said, language)).toBe(true);
});

test('what is not understood is kept to be seen, and is no length', () => {
  expect(spokenLength('twenty four ish')).toBe('24 ish');
  expect(parseLength(spokenLength('twenty four ish'), 'in').ok).toBe(false);
});

test('the fraction keys add up to the fraction that was read, in its lowest terms', () => {
  const typed = (...keys: readonly (2 | 4 | 8 | 16)[]) => keys.reduce(addFraction, '24');
  expect(typed(8)).toBe('24 1/8');
  expect(typed(8, 8, 8)).toBe('24 3/8');
  expect(typed(2, 8)).toBe('24 5/8');
  expect(typed(4, 16)).toBe('24 5/16');
  expect(typed(2, 4, 8, 16)).toBe('24 15/16');
  expect(typed(2, 4, 8, 16, 16)).toBe('24');
  expect(addFraction('', 2)).toBe('1/2');
  expect(addFraction('24 1/3', 8)).toBe('24 1/3');
});

test('keys go before the unit, and back takes a fraction as one', () => {
  expect(press(press('6', '1'), '2')).toBe('612');
  expect(otherUnit('612', 'in')).toBe('612 mm');
  expect(press('61 mm', '2')).toBe('612 mm');
  expect(otherUnit('612 mm', 'in')).toBe('612');
  expect(back('24 3/8')).toBe('24');
  expect(back('24')).toBe('2');
  expect(back('24 mm')).toBe('24');
  expect(press('24', ' ')).toBe('24 ');
});
