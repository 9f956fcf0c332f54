import { point } from '@panewright/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipSegment } from './clip.ts';
import { OVERLAP, printedCount, tile } from './pattern/tiling.ts';

const ring = (width: number, height: number, x = 0, y = 0) => [
  point(x, y),
  point(x + width, y),
  point(x + width, y + height),
  point(x, y + height),
  point(x, y),
];

test('every point of a line is on a printed tile', () => {
  // Oracle: the points themselves, sampled along each side.
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 2500, noNaN: true }),
      fc.double({ min: 20, max: 2500, noNaN: true }),
      fc.double({ min: -900, max: 900, noNaN: true }),
      fc.constantFrom('letter' as const, 'a4' as const),
      (width, height, shift, paper) => {
        const points = ring(width, height, shift, -shift);
        const windows = tile([points], paper).tiles.filter(({ printed }) => printed);
        for (let i = 1; i < points.length; i++)
          for (let t = 0; t <= 1; t += 0.02) {
            const x = points[i - 1]!.x + t * (points[i]!.x - points[i - 1]!.x);
            const y = points[i - 1]!.y + t * (points[i]!.y - points[i - 1]!.y);
            const shown = windows.some(
              ({ window: w }) =>
                x >= w.minX - 1e-6 && x <= w.maxX + 1e-6 && y >= w.minY - 1e-6 && y <= w.maxY + 1e-6,
            );
            expect(shown).toBe(true);
          }
      },
    ),
    { numRuns: 60 },
  );
});

test('neighbouring tiles share twelve millimetres and blank ones are left out', () => {
  const tiling = tile([ring(1500, 1500)], 'a4');
  const at = (row: number, column: number) =>
    tiling.tiles.find((one) => one.row === row && one.column === column)!;
  expect(at(0, 0).window.maxX - at(0, 1).window.minX).toBeCloseTo(OVERLAP, 9);
  expect(at(1, 0).window.maxY - at(0, 0).window.minY).toBeCloseTo(OVERLAP, 9);
  expect(printedCount(tiling)).toBeLessThan(tiling.columns * tiling.rows);
  const middle = tiling.tiles.filter(
    ({ row, column }) => row > 1 && column > 1 && row < tiling.rows - 2 && column < tiling.columns - 2,
  );
  expect(middle.length).toBeGreaterThan(0);
  expect(middle.every(({ printed }) => !printed)).toBe(true);
});

test('paper is turned where that takes fewer tiles', () => {
  // By hand: A4 across shows 277 mm, so a 270 x 150 mm piece fits one sheet; upright, 190 mm wide, it takes two.
  const tiling = tile([ring(270, 150)], 'a4');
  expect(tiling.orientation).toBe('across');
  expect(printedCount(tiling)).toBe(1);
});

test('a segment clipped to a box keeps its line and ends on the box', () => {
  const box = { minX: 0, minY: 0, maxX: 10, maxY: 10 };
  expect(clipSegment(point(-5, 5), point(15, 5), box)).toEqual([point(0, 5), point(10, 5)]);
  expect(clipSegment(point(-5, -5), point(15, 15), box)).toEqual([point(0, 0), point(10, 10)]);
  expect(clipSegment(point(-5, 6), point(6, 17), box)).toBeUndefined();
});
