import {
  LABEL_STOCKS,
  type LabelledPanel,
  labelSheet,
  patternSheet,
  printerTest,
  rollOf,
  type Sheet,
  type SheetOptions,
} from '@panewright/drawing';
import { nearest, point } from '@panewright/geometry';
import jsQR from 'jsqr';
import { expect, test } from 'vitest';
import { pieceDxf, pieceSvg, sheetPdf } from './index.ts';
import { demoJob, drawingsFor, fonts, inputFor } from './testing/demo.ts';
import { boxOf, pointOnCurve, type ReadPage, readPdf } from './testing/readPdf.ts';

// Oracle throughout: pdf.js reads the file; what it says is held against the plan.
const base = inputFor(demoJob, 'a4');
const withOptions = (more: Partial<SheetOptions>) => ({
  ...base,
  options: { ...base.options, units: 'mm' as const, ...more },
});
const read = async (sheet: Sheet) =>
  (
    await readPdf(
      await sheetPdf(sheet, { fonts, date: '2026-11-25', id: '0'.repeat(32), author: '', language: 'en' }),
    )
  ).pages;

/** Sizes of what is drawn to be measured. */
function measures(page: ReadPage) {
  // A sheet without symbols has no layers: then its squares and its longest lines are what is measured.
  const layered = page.paths.filter(({ layer }) => layer === 'measure');
  const drawn = layered.length > 0 ? layered : page.paths;
  const boxes = (curves: number) =>
    drawn.filter((one) => one.curves.length === curves).map((one) => boxOf(one.curves));
  const square = boxes(4).find((box) => Math.abs(box.maxX - box.minX - box.maxY + box.minY) < 5);
  const lines = boxes(1);
  return {
    square: [square!.maxX - square!.minX, square!.maxY - square!.minY],
    lengths: lines.map((box) => Math.max(box.maxX - box.minX, box.maxY - box.minY)),
    across: Math.max(...lines.map((box) => box.maxX - box.minX)),
    along: Math.max(...lines.map((box) => box.maxY - box.minY)),
  };
}

test('a pattern on a roll is one long page, its edge and its bar true', async () => {
  for (const width of [24, 36, 42].map((inches) => rollOf(inches).width)) {
    const input = withOptions({ paper: { kind: 'roll', width } });
    for (const { pattern } of input.plan.patterns.slice(0, 3)) {
      const pages = await read(patternSheet(input, pattern)!);
      expect(pages.length).toBe(2);
      const page = pages[1]!;
      expect(Math.min(Math.abs(page.width - width), Math.abs(page.height - width))).toBeLessThan(0.001);
      const { finished } = input.plan.panels.find((one) => one.pattern === pattern)!;
      const [drawn] = page.paths.filter(({ layer }) => layer === 'finished');
      const box = boxOf(drawn!.curves);
      const corners = finished.segments.map(({ to }) => to);
      const shifts = drawn!.curves.flatMap(({ points: [p] }) =>
        corners.map((corner) => ({ x: p.x - corner.x, y: p.y - corner.y })),
      );
      const miss = ({ x, y }: { x: number; y: number }) =>
        Math.max(
          ...drawn!.curves.flatMap((one) =>
            [0, 0.3, 0.7]
              .map((t) => pointOnCurve(one, t))
              .map((p) => nearest(finished, point(p.x - x, p.y - y)).distance),
          ),
        );
      expect(Math.min(...shifts.map(miss))).toBeLessThan(0.01);
      expect(box.minX).toBeGreaterThan(9);
      const { square, across, along } = measures(page);
      expect(square).toEqual([expect.closeTo(100, 3), expect.closeTo(100, 3)]);
      const steps = Math.max(across, along) / 50;
      expect(steps).toBeCloseTo(Math.round(steps), 4);
      expect(Math.max(across, along)).toBeGreaterThanOrEqual(250);
    }
  }
});

test('a printer’s factors stretch patterns about the middle of the page, and cut files never', async () => {
  const correction = { x: 1.01, y: 0.985 };
  const input = withOptions({ paper: 'a4', correction });
  const pages = await read(patternSheet(input, 'P1')!);
  expect(measures(pages[0]!).square).toEqual([expect.closeTo(101, 2), expect.closeTo(98.5, 2)]);
  expect([pages[0]!.width, pages[0]!.height]).toEqual([expect.closeTo(210, 3), expect.closeTo(297, 3)]);
  expect(pages[0]!.text).toContain('across × 1.0100, along × 0.9850');
  const plain = drawingsFor(withOptions({ paper: 'a4' })).pieces;
  const stretched = drawingsFor(input).pieces;
  for (const [index, piece] of stretched.entries()) {
    expect(pieceSvg(piece)).toBe(pieceSvg(plain[index]!));
    const options = { version: 'R12', centres: 'cross' } as const;
    expect(pieceDxf(piece, options)).toBe(pieceDxf(plain[index]!, options));
  }
});

test('the test page’s bars are as long as they say, corrected or not', async () => {
  for (const more of [{}, { correction: { x: 1.01, y: 0.985 } }]) {
    const [page] = await read(printerTest(withOptions({ paper: 'a4', ...more })));
    const { square, lengths } = measures(page!);
    expect(square[0]).toBeCloseTo(100, 3);
    for (const bar of [180, 240]) expect(lengths).toContainEqual(expect.closeTo(bar, 3));
    expect(page!.text).toContain('180 mm across');
    expect(page!.text).toContain('240 mm along');
  }
});

test('a label’s code is read off the page of the PDF', async () => {
  // Oracle: jsQR 1.4.0, on the dark rectangles that pdf.js finds on the page, 10 dots a millimetre.
  const [stock] = LABEL_STOCKS;
  const link = ({ job, opening }: LabelledPanel) => `http://shop.test/jobs/${job}#${opening}`;
  const labels = labelSheet(base, { kind: 'sewn', stock: stock!, link });
  if (!labels.ok) throw new Error(labels.refusal.code);
  const [page] = await read(labels.value);
  const { margin, width, height } = stock!;
  const [wide, high] = [Math.round(width * 10), Math.round(height * 10)];
  const dots = new Uint8ClampedArray(wide * high * 4).fill(255);
  const low = page!.height - margin.top - height;
  for (const { curves } of page!.paths.filter((one) => one.curves.length === 4)) {
    const box = boxOf(curves);
    const dot = (value: number) => Math.round(value * 10);
    for (
      let j = Math.max(0, dot(low + height - box.maxY));
      j < Math.min(high, dot(low + height - box.minY));
      j++
    )
      for (
        let i = Math.max(0, dot(box.minX - margin.left));
        i < Math.min(wide, dot(box.maxX - margin.left));
        i++
      )
        dots.fill(0, (j * wide + i) * 4, (j * wide + i) * 4 + 3);
  }
  const { id, openings } = demoJob;
  expect(jsQR(dots, wide, high)?.data).toBe(`http://shop.test/jobs/${id}#${openings[0]!.id}`);
});
