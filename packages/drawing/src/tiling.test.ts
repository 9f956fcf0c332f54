import { point } from '@panewright/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipSegment } from './clip.ts';
import { type Paper, rollOf } from './index.ts';
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
      fc.constantFrom<Paper>('letter', 'a4', 'a3', 'tabloid', rollOf(24), { kind: 'roll', width: 900 }),
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

test('a pattern goes on a roll as one page, along it or across it as takes the least', () => {
  // By hand: a 36 in roll shows 914.4 - 20 = 894.4 mm of its width.
  const along = tile([ring(600, 1200)], rollOf(36));
  expect([along.orientation, printedCount(along), along.paper.width]).toEqual(['upright', 1, 914.4]);
  const across = tile([ring(1200, 600)], rollOf(36));
  expect([across.orientation, printedCount(across), across.paper.height]).toEqual(['across', 1, 914.4]);
  expect(across.paper.width).toBeCloseTo(1200 + 2 + 10 + 124, 6);
  // Wider than the roll both ways: two strips, joined.
  expect(printedCount(tile([ring(1200, 1000)], rollOf(36)))).toBe(2);
  // A pattern that fits either way takes the shorter length of paper.
  expect(tile([ring(500, 850)], rollOf(36)).orientation).toBe('across');
});

test('no page is longer than a PDF page may be, and long patterns go on over pages of one length', () => {
  const long = tile([ring(12000, 500)], { kind: 'roll', width: 610 });
  expect(printedCount(long)).toBe(3);
  expect(long.paper.width).toBeLessThanOrEqual(5080);
  const [first, second] = long.tiles;
  expect(first!.window.maxX - second!.window.minX).toBeCloseTo(OVERLAP, 6);
  expect(printedCount(tile([ring(4900, 500)], { kind: 'roll', width: 610 }))).toBe(1);
});

test('larger sheets take fewer tiles', () => {
  const count = (paper: 'letter' | 'a4' | 'a3' | 'tabloid') => printedCount(tile([ring(1000, 700)], paper));
  expect(count('a3')).toBeLessThan(count('a4'));
  expect(count('tabloid')).toBeLessThan(count('letter'));
});
