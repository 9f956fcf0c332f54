import { expect, test } from 'vitest';
import { withMeasure } from './placeMeasures.ts';

const place = { from: 0, to: 100, near: 0, far: 100 };
const cloth = { along: 690, across: 1360 };

// Oracle: by hand.
test('a place goes where it is said to begin, as large as it was, and no farther than the cloth', () => {
  expect(withMeasure(place, 'from', 300, cloth)).toEqual({ ...place, from: 300, to: 400 });
  expect(withMeasure(place, 'from', 40, cloth)).toEqual({ ...place, from: 40 });
  expect(withMeasure(place, 'from', 650, cloth)).toEqual({ ...place, from: 650, to: 690 });
  expect(withMeasure(place, 'near', 127, cloth)).toEqual({ ...place, near: 127, far: 227 });
  // One that begins off the cloth, or ends before it begins, is left to be refused.
  expect(withMeasure(place, 'from', 700, cloth)).toEqual({ ...place, from: 700, to: 690 });
  const later = { ...place, from: 50 };
  expect(withMeasure(later, 'to', 40, cloth)).toEqual({ ...later, to: 40 });
});
