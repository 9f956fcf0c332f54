import { type Point, point } from '@panewright/geometry';
import { clipSegment } from './clip.ts';
import { type Box, boxOfPoints, flattenPath, shiftItems } from './path.ts';
import type { FontMetrics, ImageItem, Item, Page, Rectangle, Sheet, TextItem } from './sheet.ts';
import { textCorners } from './text.ts';

export interface TextClash {
  /** From 1. */
  readonly page: number;
  readonly text: string;
  /** The other text; `line` for a drawn line, `edge` for the edge of the paper or of the window it is seen through. */
  readonly with: string;
}

/** A text may touch a neighbour's room by this much, mm: its box is as tall as its tallest letter. */
const SLACK = 0.15;

/**
 * Texts of a sheet that run into another text, a drawn line or the edge of the paper.
 *
 * @range texts turned by quarter turns; for others the upright box around them is taken
 */
export function textClashes(sheet: Sheet, metrics: FontMetrics): readonly TextClash[] {
  return sheet.pages.flatMap((page, index) =>
    clashesOnPage(page, sheet, metrics).map((clash) => ({ page: index + 1, ...clash })),
  );
}

interface Flat {
  readonly texts: { readonly item: TextItem; readonly box: Box; readonly window: Box }[];
  readonly lines: (readonly [Point, Point])[];
}

function clashesOnPage(page: Page, sheet: Sheet, metrics: FontMetrics): readonly Omit<TextClash, 'page'>[] {
  const flat: Flat = { texts: [], lines: [] };
  const paper = { minX: 0, minY: 0, maxX: page.width, maxY: page.height };
  collect(page.items, sheet, metrics, paper, flat);
  const found: Omit<TextClash, 'page'>[] = [];
  flat.texts.forEach(({ item, box, window }, index) => {
    if (box.minX < window.minX || box.maxX > window.maxX || box.minY < window.minY || box.maxY > window.maxY)
      found.push({ text: item.text, with: 'edge' });
    const tight = grow(box, -SLACK);
    for (const other of flat.texts.slice(index + 1))
      if (overlap(tight, grow(other.box, -SLACK))) found.push({ text: item.text, with: other.item.text });
    if (flat.lines.some(([a, b]) => clipSegment(a, b, tight) !== undefined))
      found.push({ text: item.text, with: 'line' });
  });
  return found;
}

function collect(items: readonly Item[], sheet: Sheet, metrics: FontMetrics, window: Box, flat: Flat): void {
  for (const item of items) {
    if (item.kind === 'group') collect(item.items, sheet, metrics, window, flat);
    else if (item.kind === 'text') {
      const box = boxOfPoints(textCorners(item, metrics));
      if (item.text.trim() !== '' && overlap(box, window)) flat.texts.push({ item, box, window });
    } else if (item.kind === 'path') {
      if (item.line === undefined) continue;
      const points = flattenPath(item, 0.05);
      for (let i = 1; i < points.length; i++) {
        const kept = clipSegment(points[i - 1]!, points[i]!, window);
        if (kept !== undefined) flat.lines.push(kept);
      }
    } else if (item.kind === 'image') flat.lines.push(...edgesOf(item));
    else {
      const shown = shiftItems(sheet.symbols[item.symbol] ?? [], item.at.x, item.at.y);
      const seen = item.window === undefined ? window : boxOfRectangle(item.window);
      collect(shown, sheet, metrics, seen, flat);
    }
  }
}

/** A picture's edges: no text may lie across them. */
function edgesOf({ at, width, height }: ImageItem): (readonly [Point, Point])[] {
  const [a, b] = [at, point(at.x + width, at.y)];
  const [c, d] = [point(at.x + width, at.y + height), point(at.x, at.y + height)];
  return [[a, b] as const, [b, c] as const, [c, d] as const, [d, a] as const];
}

const boxOfRectangle = ({ x, y, width, height }: Rectangle): Box =>
  boxOfPoints([point(x, y), point(x + width, y + height)]);

const grow = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

const overlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
