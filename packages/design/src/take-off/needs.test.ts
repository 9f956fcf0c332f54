import { lockstitchRatio, threadLength } from '@panewright/design';
import { expect, test } from 'vitest';

// Oracle: two textile-course articles, T 0.01 in at 10 stitches per inch: 2.2 in per inch of seam.
test('a lockstitch through 0.01 in at 10 stitches an inch takes 2.2 in of thread an inch', () => {
  expect(lockstitchRatio(0.01, 1 / 10)).toBeCloseTo(2.2, 9);
});

// Oracle: the same formula in metric, worked by hand.
test('1.5 mm of cloth at a 5 mm stitch takes 2.6 m a metre', () => {
  expect(lockstitchRatio(1.5, 5)).toBeCloseTo(2.6, 9);
});

// Oracle: a thread maker's guide (name withheld): ratio 2.5 for stitch type 301, 220 cm of seam takes 550 cm.
test('220 cm of lockstitch seam takes 550 cm of thread, 632.5 cm with 15 % waste', () => {
  expect(threadLength(2200, 2.5, 0)).toBeCloseTo(5500, 9);
  expect(threadLength(2200, 2.5, 0.15)).toBeCloseTo(6325, 9);
});
