import { type LengthRefusal, mm, parseLength } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// Oracle: 1 in = 25.4 mm and 1 ft = 304.8 mm exactly (international yard and pound, 1959; NIST SP 811 App. B,
// from memory). The expected millimetres were worked by hand from those two numbers.
test.each([
  ['24 3/8', 'in', 619.125],
  ['24-3/8"', 'in', 619.125],
  ['24 3/8 in', 'mm', 619.125],
  ['24 3/8 in.', 'mm', 619.125],
  ['24 3/8 inches', 'mm', 619.125],
  [`2' 0 3/8"`, 'in', 619.125],
  [`2' 0 3/8`, 'mm', 619.125],
  ['2′ 0⅜″', 'mm', 619.125],
  [`2'-0 3/8"`, 'mm', 619.125],
  ['2 ft 3 in', 'mm', 685.8],
  [`2'`, 'mm', 609.6],
  [`1 1/2'`, 'mm', 457.2],
  ['3/8', 'in', 9.525],
  ['⅜', 'in', 9.525],
  ['24⅜”', 'in', 619.125],
  ['24 ³⁄₈ in', 'mm', 619.125],
  ['24 3 / 8 in', 'mm', 619.125],
  [`24 3/8''`, 'mm', 619.125],
  ['24.375', 'in', 619.125],
  ['.5', 'in', 12.7],
  ['1/64', 'in', 0.396875],
  ['619', 'mm', 619],
  ['619', 'in', 15722.6],
  ['619.1 mm', 'in', 619.1],
  ['619,1 mm', 'in', 619.1],
  ['619.1 Millimetres', 'in', 619.1],
  ['61.9 cm', 'in', 619],
  ['61,9cm', 'in', 619],
  ['0.619 m', 'in', 619],
  ['0,619 m', 'in', 619],
  ['1,234.5 mm', 'in', 1234.5],
  ['1.234,5 mm', 'in', 1234.5],
  ['1,234,567', 'mm', undefined],
  ['0', 'mm', 0],
  ['0 in', 'mm', 0],
  ['100 m', 'mm', 100_000],
  ['  619\u00a0mm ', 'in', 619],
] as const)('“%s” with %s understood is %s mm', (text, unit, expected) => {
  const read = parseLength(text, unit);
  if (expected === undefined) expect(read).toMatchObject({ ok: false, refusal: { code: 'LENGTH_TOO_LONG' } });
  else expect(read).toEqual({ ok: true, value: expected });
});

const refusals: readonly (readonly [string, 'in' | 'mm', LengthRefusal['code']])[] = [
  ['', 'in', 'LENGTH_EMPTY'],
  [' \t ', 'in', 'LENGTH_EMPTY'],
  ['-24', 'in', 'LENGTH_NEGATIVE'],
  ['−3/8', 'in', 'LENGTH_NEGATIVE'],
  ['3/0', 'in', 'LENGTH_ZERO_DENOMINATOR'],
  ['24 3/0"', 'in', 'LENGTH_ZERO_DENOMINATOR'],
  ['3/8/2', 'in', 'LENGTH_UNREADABLE'],
  ['24 3/8/2', 'in', 'LENGTH_UNREADABLE'],
  ['24 in mm', 'in', 'LENGTH_UNITS_CLASH'],
  [`2' 61 mm`, 'in', 'LENGTH_UNITS_CLASH'],
  ['1 m 20 cm', 'mm', 'LENGTH_UNITS_CLASH'],
  ['24" 619 mm', 'in', 'LENGTH_UNITS_CLASH'],
  ['Infinity', 'mm', 'LENGTH_NOT_FINITE'],
  ['∞ mm', 'mm', 'LENGTH_NOT_FINITE'],
  ['NaN', 'mm', 'LENGTH_NOT_FINITE'],
  ['100.1 m', 'mm', 'LENGTH_TOO_LONG'],
  ['9'.repeat(400), 'mm', 'LENGTH_TOO_LONG'],
  ['123/8', 'in', 'LENGTH_FRACTION_NOT_BELOW_ONE'],
  ['24 8/8', 'in', 'LENGTH_FRACTION_NOT_BELOW_ONE'],
  ['24 3/8', 'mm', 'LENGTH_FRACTION_NEEDS_UNIT'],
  ['⅜', 'mm', 'LENGTH_FRACTION_NEEDS_UNIT'],
  ['1,234', 'mm', 'LENGTH_COMMA_AMBIGUOUS'],
  [`2' 14"`, 'in', 'LENGTH_INCHES_OVER_FOOT'],
  [`2.5' 3"`, 'in', 'LENGTH_UNREADABLE'],
  ['24.5 3/8', 'in', 'LENGTH_UNREADABLE'],
  ['5 1/2 1/4', 'in', 'LENGTH_UNREADABLE'],
  ['24 - 3/8', 'in', 'LENGTH_UNREADABLE'],
  ['24 kg', 'in', 'LENGTH_UNREADABLE'],
  ['about 24', 'in', 'LENGTH_UNREADABLE'],
  ['1e3', 'mm', 'LENGTH_UNREADABLE'],
  ['1.2.3', 'mm', 'LENGTH_UNREADABLE'],
  ['1,2,3', 'mm', 'LENGTH_UNREADABLE'],
  ['mm', 'mm', 'LENGTH_UNREADABLE'],
  ['.', 'mm', 'LENGTH_UNREADABLE'],
];
test.each(refusals)('“%s” with %s understood is refused as %s', (text, unit, code) => {
  expect(parseLength(text, unit)).toMatchObject({ ok: false, refusal: { code, text } });
});

test('any text is answered with a length between 0 and 100 m or with a refusal that carries the text', () => {
  const scraps = fc.constantFrom(
    '1',
    '24',
    '3/8',
    ' ',
    '.',
    ',',
    '-',
    '/',
    "'",
    '"',
    'mm',
    'in',
    'm',
    '⅜',
    'ft',
    '0',
  );
  const text = fc.oneof(
    fc.string(),
    fc.array(scraps, { maxLength: 8 }).map((pieces) => pieces.join('')),
  );
  fc.assert(
    fc.property(text, fc.constantFrom('in', 'mm'), (entered, unit) => {
      const read = parseLength(entered, unit);
      if (read.ok) return read.value >= 0 && read.value <= mm(100_000);
      return read.refusal.text === entered;
    }),
    { numRuns: 2000, seed: 1 },
  );
});

test('every sixteenth up to ten feet is read exactly, by whichever way it is written', () => {
  for (let sixteenths = 0; sixteenths < 1920; sixteenths++) {
    const whole = Math.floor(sixteenths / 16);
    const exact = (sixteenths * 254) / 160;
    const feet = Math.floor(whole / 12);
    for (const text of [
      `${whole} ${sixteenths % 16}/16 in`,
      `${whole}-${sixteenths % 16}/16"`,
      `${feet}' ${whole % 12} ${sixteenths % 16}/16"`,
      `${sixteenths / 16} in`,
    ]) {
      expect(parseLength(text, 'mm'), text).toEqual({ ok: true, value: exact });
    }
  }
});
