import { type Outline, type Point, point } from '@panewright/geometry';
import { oneLine } from '../block.ts';
import { CAPITAL, STYLE } from '../ink.ts';
import { boxAround, largestFree, type Occupied } from '../labelPlacer.ts';
import { type Box, flattenPath, group, lineAt, outlinePath } from '../path.ts';
import type { Item } from '../sheet.ts';
import { fitText, leading, sizeFor, text } from '../text.ts';
import type { TileSubject } from './tilePage.ts';

/** The pattern's name, the openings it serves, which way is up and how the cloth runs, in the largest free place. */
export function nameBlock(subject: TileSubject, taken: Occupied, shift: Point): Item[] {
  const inside = insideOf(subject.outer, shift);
  const room = largestFree(taken, { width: 24, height: 16 }, inside);
  if (room === undefined) return [];
  const { metrics } = subject.input.options;
  const width = room.maxX - room.minX;
  const arrows = subject.arrows && width >= 44 ? 22 : 0;
  const box = {
    width: Math.min(width - arrows - 4, 110),
    height: Math.min(room.maxY - room.minY - 4, 60),
  };
  const full = fitText(subject.tileWords, box, metrics, { most: CAPITAL.lead, least: CAPITAL.small });
  const fitted =
    full ?? fitText(subject.shortWords, box, metrics, { most: CAPITAL.heading, least: CAPITAL.small });
  if (fitted === undefined) return [];
  const size = sizeFor(metrics, fitted.capital);
  const high =
    (fitted.lines.length - 1) * leading(fitted.capital) + size * (metrics.ascent + metrics.descent);
  const middleY = (room.minY + room.maxY) / 2;
  const left = room.minX + 2 + arrows + Math.max(0, (width - arrows - 4 - box.width) / 2);
  const texts = fitted.lines.map((words, index) =>
    text(
      words,
      point(left, middleY + high / 2 - size * metrics.ascent - index * leading(fitted.capital)),
      metrics,
      { capital: fitted.capital, face: index === 0 ? 'bold' : 'regular' },
    ),
  );
  const arrowBox = boxAround(point(left - arrows / 2 - 1, middleY), {
    width: arrows,
    height: Math.min(box.height, 44),
  });
  return arrows === 0 || box.height < 18 ? texts : [...texts, ...upArrow(subject, arrowBox)];
}

/** Whether a point of the page lies inside an outline. Asked row by row, so each row's crossings are kept. */
function insideOf(outline: Outline, shift: Point): (p: Point) => boolean {
  const ring = flattenPath(outlinePath(outline, {}), 0.2).map((p) => point(p.x + shift.x, p.y + shift.y));
  const rows = new Map<number, readonly number[]>();
  const crossings = (y: number): readonly number[] => {
    const known = rows.get(y);
    if (known !== undefined) return known;
    const found: number[] = [];
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1]!, ring[i]!];
      if (a.y > y !== b.y > y) found.push(a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y));
    }
    rows.set(y, found);
    return found;
  };
  return ({ x, y }) => crossings(y).filter((one) => one < x).length % 2 === 1;
}

/** Up on the opening, and the run of the warp beside it. */
function upArrow(subject: TileSubject, box: Box): Item[] {
  const { metrics } = subject.input.options;
  const x = box.minX + 6;
  const low = box.minY + 5;
  const up = subject.words.pattern.up();
  const label = oneLine(up, 12, metrics, { most: CAPITAL.small, least: 1.4 });
  const arrow = [
    lineAt(x, low + 1, x, box.maxY, STYLE.mark),
    lineAt(x, box.maxY, x - 2.5, box.maxY - 5, STYLE.mark),
    lineAt(x, box.maxY, x + 2.5, box.maxY - 5, STYLE.mark),
    text(label.words, point(x, box.minY), metrics, { capital: label.capital, anchor: 'middle' }),
  ];
  return [group('mark', arrow), group('grain', grainArrow(subject, box))];
}

/** A two-headed arrow along the warp; none where the cloth may run either way. */
function grainArrow(subject: TileSubject, box: Box): Item[] {
  const { grain } = subject;
  if (grain === 'either') return [];
  const centre = point(box.maxX - 6.5, (box.minY + box.maxY) / 2);
  const half = grain === 'warpUp' ? (box.maxY - box.minY) / 2 - 1 : 4;
  const turn = grain === 'warpUp' ? Math.PI / 2 : 0;
  const at = (along: number, aside: number) =>
    point(
      centre.x + along * Math.cos(turn) - aside * Math.sin(turn),
      centre.y + along * Math.sin(turn) + aside * Math.cos(turn),
    );
  const stroke = (a: Point, b: Point) => lineAt(a.x, a.y, b.x, b.y, STYLE.grain);
  return [
    stroke(at(-half, 0), at(half, 0)),
    ...[-1, 1].flatMap((end) =>
      [-1, 1].map((side) => stroke(at(end * half, 0), at(end * (half - 3), side * 1.6))),
    ),
  ];
}
