import { type OpenCv, type Paper, referenceSheets } from '@panewright/photo';
import { beforeAll, describe, expect, test } from 'vitest';
import { openCv, readTruth } from './testing/score.ts';

let box: { readonly cv: OpenCv };
beforeAll(async () => {
  box = await openCv();
});

/** 6 x 6 cells of a drawn marker, true where the middle of the cell is black. */
function drawnCells(paper: Paper, id: number): boolean[] {
  const marker = referenceSheets(paper).flatMap((sheet) => sheet.markers)[id]!;
  const { x, y } = marker.corners[0];
  return Array.from({ length: 36 }, (_, k) => {
    const [u, v] = [x + 10 * (k % 6) + 5, y - 10 * Math.floor(k / 6) - 5];
    return marker.black.some((r) => u > r.x && u < r.x + r.width && v > r.y && v < r.y + r.height);
  });
}

describe('reference sheets', () => {
  // Oracle: OpenCV 5.0 draws the same markers from its own table of DICT_4X4_50.
  test.each(Array.from({ length: 16 }, (_, id) => id))('marker %i is drawn as OpenCV draws it', (id) => {
    const { cv } = box;
    const dictionary = cv.getPredefinedDictionary(0);
    const image = new cv.Mat();
    dictionary.generateImageMarker(id, 6, image, 1);
    const expected = Array.from(image.data, (grey) => grey === 0);
    image.delete();
    dictionary.delete();
    expect(drawnCells('A4', id)).toEqual(expected);
    expect(drawnCells('Letter', id)).toEqual(expected);
  });

  // Oracle: the layout the rendered photographs were printed with (reference/README.md).
  test('the A4 layout is that of the photographed sheets', () => {
    const nominal = readTruth('01_easy').reference.nominal_marker_corners_mm;
    for (const sheet of referenceSheets('A4')) {
      sheet.markers.forEach((marker, k) => {
        expect(marker.id).toBe(4 * sheet.index + k);
        expect(marker.corners.map((p) => [p.x, p.y])).toEqual(nominal[String(k)]);
      });
    }
  });

  test.each(['A4', 'Letter'] as const)(
    'on %s all ink keeps 5 mm off the paper edge and off the markers',
    (paper) => {
      for (const { size, markers, bars, ticks } of referenceSheets(paper)) {
        const ink = [...bars.flatMap((bar) => [bar.from, bar.to]), ...ticks.flat()];
        for (const p of [...ink, ...markers.flatMap((marker) => marker.corners)]) {
          expect(Math.min(p.x, p.y, size.width - p.x, size.height - p.y)).toBeGreaterThan(5);
        }
        for (const p of ink) {
          for (const {
            corners: [a, , c],
          } of markers) {
            const clear = Math.max(a.x - p.x, p.x - c.x, c.y - p.y, p.y - a.y);
            expect(clear).toBeGreaterThan(5);
          }
        }
      }
    },
  );

  test('the bars measure what they say', () => {
    for (const { bars } of referenceSheets('Letter')) {
      for (const { from, to, nominal } of bars)
        expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(nominal, 9);
      expect(bars.map((bar) => bar.nominal)).toEqual([200, 150]);
    }
  });
});
