import {
  fromInches,
  fromKnots,
  fromMilesPerHour,
  fromOuncesPerSquareYard,
  fromPoundsForce,
  fromPoundsForcePerInch,
  fromPoundsPerSquareFoot,
  fromYards,
  toInches,
  toKnots,
  toMilesPerHour,
  toOuncesPerSquareYard,
  toPoundsForce,
  toYards,
} from '@panewright/quantity';
import { expect, test } from 'vitest';

// Oracle: exact by definition (international yard and pound, 1959; NIST SP 811 App. B, from memory), the derived
// ones recomputed in exact fractions.
test.each([
  ['1 in in mm', fromInches(1), 25.4],
  ['3 in in mm', fromInches(3), 76.2],
  ['1 yd in mm', fromYards(1), 914.4],
  ['1 oz/yd² in g/m²', fromOuncesPerSquareYard(1), 33.9057474748],
  ['1 lbf in N', fromPoundsForce(1), 4.4482216152605],
  ['1 lbf/in in N/m', fromPoundsForcePerInch(1), 175.12683524647],
  ['1 lb/ft² in Pa', fromPoundsPerSquareFoot(1), 47.880258980336],
  ['1 mph in m/s', fromMilesPerHour(1), 0.44704],
  ['1 kn in m/s', fromKnots(1), 0.5144444444444445],
])('%s', (_, value, expected) => {
  expect(Math.abs(value / expected - 1)).toBeLessThan(1e-11);
});

test('every conversion undoes its opposite', () => {
  expect(toInches(fromInches(24.375))).toBeCloseTo(24.375, 12);
  expect(toYards(fromYards(2.5))).toBeCloseTo(2.5, 12);
  expect(toOuncesPerSquareYard(fromOuncesPerSquareYard(9))).toBeCloseTo(9, 12);
  expect(toPoundsForce(fromPoundsForce(7))).toBeCloseTo(7, 12);
  expect(toMilesPerHour(fromMilesPerHour(30))).toBeCloseTo(30, 12);
  expect(toKnots(fromKnots(25))).toBeCloseTo(25, 12);
});
