import type { Choices } from '@panewright/design';
import { type Outline, type Point, point } from '@panewright/geometry';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import { type Occupied, occupied, placeNear } from '../labelPlacer.ts';
import type { SheetInput } from '../options.ts';
import { boxOfPoints, circle, flattenPath, group, lineAt, rectangle } from '../path.ts';
import type { Item, Page, PathItem, Rectangle, TextItem } from '../sheet.ts';
import { sizeFor, text, widthOf } from '../text.ts';
import type { Words } from '../words.ts';
import type { CheckSizes } from './checkSizes.ts';
import { nameBlock } from './nameBlock.ts';
import { tileFoot } from './tileFoot.ts';
import { OVERLAP, type Tile, type Tiling } from './tiling.ts';

/** A name to set beside a mark. */
export interface MarkLabel {
  readonly at: Point;
  readonly words: string;
  readonly strong: boolean;
}

/** What is drawn on tiles, in its own frame, and what the tiles say about it. */
export interface TileSubject {
  readonly input: SheetInput;
  readonly words: Words;
  /** The symbol that draws it. */
  readonly symbol: string;
  readonly name: string;
  readonly outer: Outline;
  readonly grain: Choices['grain'];
  /** Whether up and grain are shown. */
  readonly arrows: boolean;
  /** Its lines, flattened: what a text may not touch. */
  readonly lines: readonly (readonly Point[])[];
  readonly marks: readonly MarkLabel[];
  /** On the tile with the most room, first line first. */
  readonly tileWords: string;
  readonly shortWords: string;
  readonly footWords: string;
  readonly sizes: CheckSizes;
}

/** One tile at true size: its part of the pattern in a window, marks to join it by, its name and its check square. */
export function tilePage(subject: TileSubject, tiling: Tiling, one: Tile): Page {
  const { margin, paper } = tiling;
  const { width, height } = paper;
  const shift = point(margin.left - one.window.minX, margin.foot - one.window.minY);
  const window = {
    x: margin.left,
    y: margin.foot,
    width: one.window.maxX - one.window.minX,
    height: one.window.maxY - one.window.minY,
  };
  const registers = registerMarks(tiling, one, shift);
  return {
    label: one.label,
    width,
    height,
    items: [
      { kind: 'use', symbol: subject.symbol, at: shift, window },
      group('frame', [rectangle(window, { line: STYLE.frame })]),
      group('register', registers),
      group('text', [...labels(subject, window, shift, registers), ...neighbours(subject, tiling, one)]),
      ...tileFoot(subject, tiling, one),
    ],
  };
}

const REGISTER = { radius: 2.2, reach: 5 } as const;

/** A ringed cross in the middle of each overlap with a printed neighbour: at its corners and half-way along. */
function registerMarks(tiling: Tiling, one: Tile, shift: Point): PathItem[] {
  const { window } = one;
  const half = OVERLAP / 2;
  const xs = [window.minX + half, (window.minX + window.maxX) / 2, window.maxX - half];
  const ys = [window.minY + half, (window.minY + window.maxY) / 2, window.maxY - half];
  const printed = (row: number, column: number) =>
    tiling.tiles.some((other) => other.printed && other.row === row && other.column === column);
  return xs.flatMap((x, i) =>
    ys.flatMap((y, j) => {
      const [dc, dr] = [i - 1, 1 - j];
      const around = [
        [dr, dc],
        [0, dc],
        [dr, 0],
      ] as const;
      const shared = around.some(([r, c]) => (r !== 0 || c !== 0) && printed(one.row + r, one.column + c));
      return shared ? registerMark(point(x + shift.x, y + shift.y)) : [];
    }),
  );
}

function registerMark(at: Point): PathItem[] {
  const { radius, reach } = REGISTER;
  return [
    lineAt(at.x - reach, at.y, at.x + reach, at.y, STYLE.register),
    lineAt(at.x, at.y - reach, at.x, at.y + reach, STYLE.register),
    circle(at, radius, { line: STYLE.register }),
  ];
}

/** Names on the pattern itself: hold point numbers, the start of the binding, and the pattern's name where there is room. */
function labels(
  subject: TileSubject,
  window: Rectangle,
  shift: Point,
  registers: readonly PathItem[],
): Item[] {
  const inner = {
    minX: window.x + 1.5,
    minY: window.y + 1.5,
    maxX: window.x + window.width - 1.5,
    maxY: window.y + window.height - 1.5,
  };
  const taken = occupied(inner);
  const onPage = (p: Point) => point(p.x + shift.x, p.y + shift.y);
  for (const points of subject.lines) taken.addLine(points.map(onPage));
  for (const mark of registers) taken.addBox(boxOfPoints(flattenPath(mark)));
  const marks = subject.marks.flatMap((mark) => {
    const at = onPage(mark.at);
    const inside = at.x > inner.minX && at.x < inner.maxX && at.y > inner.minY && at.y < inner.maxY;
    return inside ? markLabel(subject, taken, at, mark) : [];
  });
  return [...marks, ...nameBlock(subject, taken, shift)];
}

function markLabel(subject: TileSubject, taken: Occupied, at: Point, mark: MarkLabel): Item[] {
  const { metrics } = subject.input.options;
  const look = {
    capital: mark.strong ? CAPITAL.lead : CAPITAL.small,
    face: mark.strong ? 'bold' : 'regular',
  } as const;
  const size = sizeFor(metrics, look.capital);
  const box = {
    width: widthOf(mark.words, metrics, look) + 1,
    height: size * (metrics.ascent + metrics.descent),
  };
  const middle = placeNear(taken, at, box, { from: 6, to: 60 });
  if (middle === undefined) return [];
  const base = point(middle.x, middle.y - (size * (metrics.ascent - metrics.descent)) / 2);
  return [text(mark.words, base, metrics, { ...look, anchor: 'middle' })];
}

/** In the clear margin: which tile joins on which side. */
function neighbours(subject: TileSubject, tiling: Tiling, one: Tile): TextItem[] {
  const { metrics } = subject.input.options;
  const { margin, paper } = tiling;
  const { width, height } = paper;
  const find = (row: number, column: number) =>
    tiling.tiles.find((other) => other.printed && other.row === row && other.column === column);
  const middleX = margin.left + (width - margin.left - margin.right) / 2;
  const middleY = margin.foot + (height - margin.foot - margin.top) / 2;
  const sides = [
    { tile: find(one.row, one.column - 1), at: point(margin.left - 2.5, middleY), turn: Math.PI / 2 },
    {
      tile: find(one.row, one.column + 1),
      at: point(width - margin.right + 2.5, middleY),
      turn: -Math.PI / 2,
    },
    { tile: find(one.row - 1, one.column), at: point(middleX, height - margin.top + 2.5), turn: 0 },
    { tile: find(one.row + 1, one.column), at: point(middleX, margin.foot - 4.5), turn: 0 },
  ];
  return sides.flatMap(({ tile, at, turn }) =>
    tile === undefined
      ? []
      : [
          text(subject.words.pattern.joins(tile.label), at, metrics, {
            ...{ capital: CAPITAL.small, anchor: 'middle', turn, colour: INK.soft },
          }),
        ],
  );
}
