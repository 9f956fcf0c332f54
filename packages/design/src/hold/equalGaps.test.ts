import { equalGaps } from '@panewright/design';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const inches = (value: number) => value * 25.4;

// Trade facts, common practice, no source: hold points at the corners, then equal gaps not over the shop's spacing.
test('an edge of 52 in has its middle hold point at 26 in when gaps up to 27 in are let pass', () => {
  const division = equalGaps(inches(52), inches(24), inches(27));
  expect(division.gaps).toBe(2);
  expect(division.positions[1]).toBeCloseTo(inches(26), 9);
  expect(division.reason).toBe('withinTolerance');
});

test('without that tolerance the edge of 52 in has one gap more', () => {
  const division = equalGaps(inches(52), inches(24), inches(24));
  expect(division.gaps).toBe(3);
  expect(division.reason).toBe('divided');
});

test('61 in gives 3 gaps of 20 1/3 in, so 4 hold points with both corners', () => {
  const division = equalGaps(inches(61), inches(24), inches(24));
  expect(division.gap).toBeCloseTo(inches(20 + 1 / 3), 9);
  expect(division.positions).toHaveLength(4);
});

test('24 in is one gap, 24.01 in is two', () => {
  expect(equalGaps(inches(24), inches(24), inches(24)).gaps).toBe(1);
  expect(equalGaps(inches(24.01), inches(24), inches(24)).gaps).toBe(2);
});

test('gaps are equal, fill the side, are not over the limit, and one fewer would be', () => {
  const size = fc.double({ min: 60, max: 5000, noNaN: true });
  fc.assert(
    fc.property(size, size, size, (length, spacing, upTo) => {
      const { gaps, gap, positions } = equalGaps(length, spacing, upTo);
      const limit = Math.max(spacing, upTo);
      expect(gap * gaps).toBeCloseTo(length, 6);
      expect(gap).toBeLessThanOrEqual(limit + 0.011);
      if (gaps > 1) expect(length / (gaps - 1)).toBeGreaterThan(limit);
      expect(positions).toHaveLength(gaps + 1);
    }),
  );
});
