import { expect, test } from 'vitest';
import { readHeat, readWind, showHeat, showWind, windEntry } from './wind.ts';

// 1 mi/h = 0.44704 m/s, 1 kn = 1852/3600 m/s, exactly (NIST SP 811). Beaufort 5 is 8.0 to 10.7 m/s (WMO No. 306).
test.each([
  ['20', 'mph', 8.9408],
  ['20 kn', 'mph', (20 * 1852) / 3600],
  ['36 km/h', 'm/s', 10],
  ['5', 'Bft', 10.7],
  ['F5', 'm/s', 10.7],
  ['5 Bft', 'kn', 10.7],
  ['7,5 m/s', 'mph', 7.5],
] as const)('a wind of “%s” in a field of %s is %d m/s', (text, unit, speed) => {
  const read = readWind(text, unit);
  expect(read.ok && read.value).toBeCloseTo(speed, 9);
});

test.each(['', 'breeze', '-3', '5.5 Bft', '12 Bft'])('“%s” is no wind', (text) => {
  expect(readWind(text, 'm/s').ok).toBe(false);
});

test('what was typed is what stands in the field again', () => {
  const read = readWind('20', 'mph');
  expect(read.ok && windEntry(read.value, 'mph')).toBe('20');
  expect(showWind(10.7, 'Bft')).toBe('10.7 m/s (5 Bft)');
});

// 70 °C is 158 °F by definition of the scales.
test('heat is read in either scale', () => {
  const read = readHeat('158 °F', 'C');
  expect(read.ok && read.value).toBeCloseTo(70, 9);
  expect(showHeat(70, 'F')).toBe('158 °F');
  expect(readHeat('warm', 'C').ok).toBe(false);
});
