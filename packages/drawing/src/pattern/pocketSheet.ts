import type { CutPiece } from '@panewright/design';
import { bounds, point } from '@panewright/geometry';
import { type Block, innerWidth, paragraph, space, stack } from '../block.ts';
import { corrected } from '../correction.ts';
import { correctionWords } from '../correctionWords.ts';
import { dateText } from '../figures.ts';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { pageFrame } from '../pageFrame.ts';
import { sheetPaper } from '../paper.ts';
import { flattenPath, group, lineAt, outlinePath, placePath } from '../path.ts';
import type { GroupItem, Item, Page, Sheet } from '../sheet.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { bar } from './bar.ts';
import { checkSizes } from './checkSizes.ts';
import { type TileSubject, tilePage } from './tilePage.ts';
import { tile } from './tiling.ts';

interface Template {
  readonly piece: CutPiece;
  readonly width: number;
  readonly height: number;
  readonly label: ReturnType<typeof stack>;
}

const GAP = 8;
const FOOT = 14;

/** Pocket patches at full size, several to a page; one too large for a page is tiled. Undefined where there are none. */
export function pocketSheet(input: SheetInput): Sheet | undefined {
  const words = wordsOf(input.options);
  const pieces = (input.plan.cutting?.pieces ?? []).filter(({ kind }) => kind === 'pocket');
  if (pieces.length === 0) return undefined;
  const paper = sheetPaper(input.options.paper, input.options.units);
  const frame = pageFrame(input, words.pocket.title(), 'upright', paper);
  const top = head(input, words, innerWidth(frame));
  const room = {
    width: innerWidth(frame),
    height: frame.height - frame.top - frame.bottom - top.height - FOOT,
  };
  const templates = pieces.map((piece) => template(piece, input, words, room.width));
  const small = templates.filter(
    ({ width, height, label }) => width <= room.width && height + label.height <= room.height,
  );
  const large = templates
    .filter((one) => !small.includes(one))
    .map(({ piece }) => tiled(piece, input, words));
  const shelves = shelve(small, room);
  const count = shelves.length + large.reduce((sum, { pages }) => sum + pages.length, 0);
  return {
    path: `patterns/pockets-${paper}`,
    title: `${words.pocket.title()}: ${input.job.name}`,
    symbols: Object.fromEntries(large.map(({ symbol, drawing }) => [symbol, drawing])),
    pages: [
      ...shelves.map(
        (placed, index): Page => ({
          ...{ label: '', width: frame.width, height: frame.height },
          items: [
            ...frame.furniture(index + 1, count),
            ...top.draw(frame.left, frame.height - frame.top),
            ...placed.flatMap((one) => draw(one, frame.left, frame.height - frame.top - top.height)),
            ...scaleBar(input, frame.left, frame.bottom + 2),
          ],
        }),
      ),
      ...large.flatMap(({ pages }) => pages),
    ].map((page) => corrected(page, input.options.correction)),
  };
}

function template(piece: CutPiece, input: SheetInput, words: Words, most: number): Template {
  const box = bounds(piece.outline);
  const lines = [words.pocket.name(piece.piece, piece.count), words.pocket.for(piece.pattern.split(' '))];
  const width = Math.max(box.width, Math.min(52, most));
  const label = stack(
    lines.flatMap((one, index) =>
      paragraph(one, width, input.options.metrics, {
        capital: CAPITAL.small,
        face: index === 0 ? 'bold' : 'regular',
      }),
    ),
  );
  return { piece, width, height: box.height + 2, label };
}

interface Placed {
  readonly one: Template;
  readonly x: number;
  /** Down from the top of the room. */
  readonly down: number;
}

/** Row by row from the top left; a row is as tall as its tallest. */
function shelve(
  templates: readonly Template[],
  room: { readonly width: number; readonly height: number },
): readonly (readonly Placed[])[] {
  const pages: Placed[][] = [];
  let [x, down, tall] = [0, Infinity, 0];
  for (const one of templates) {
    const height = one.height + one.label.height;
    if (x + one.width > room.width + 1e-9) {
      x = 0;
      down += tall + GAP;
      tall = 0;
    }
    if (down + height > room.height + 1e-9) {
      pages.push([]);
      [x, down, tall] = [0, 0, 0];
    }
    pages.at(-1)!.push({ one, x, down });
    x += one.width + GAP;
    tall = Math.max(tall, height);
  }
  return pages;
}

function draw({ one, x, down }: Placed, left: number, top: number): Item[] {
  const box = bounds(one.piece.outline);
  const placing = { x: left + x - box.minX, y: top - down - box.maxY };
  const low = top - down - box.height;
  const middle = placing.x;
  return [
    group('cut', [placePath(outlinePath(one.piece.outline, { line: STYLE.cut }), placing)]),
    group('mark', [lineAt(middle, low, middle, low + 5, STYLE.mark)]),
    group('text', one.label.draw(left + x, top - down - box.height - 2)),
  ];
}

function head(input: SheetInput, words: Words, width: number): Block {
  const { metrics } = input.options;
  return stack([
    ...paragraph(words.pocket.title(), width, metrics, { capital: CAPITAL.heading, face: 'bold' }),
    ...paragraph([words.pocket.note(), ...correctionWords(input.options, words)].join(' '), width, metrics, {
      capital: CAPITAL.small,
      colour: INK.soft,
    }),
    space(2),
  ]);
}

function scaleBar(input: SheetInput, left: number, low: number): Item[] {
  const sizes = checkSizes(input.options.units);
  const label = stack(
    paragraph(sizes.tileBarText, 40, input.options.metrics, { capital: CAPITAL.small, colour: INK.soft }),
  );
  return [
    group('measure', bar(point(left, low), sizes.tileBar, sizes.step)),
    group('text', label.draw(left + sizes.tileBar + 3, low + 4)),
  ];
}

/** A patch larger than the paper, on tiles like a pattern. */
function tiled(piece: CutPiece, input: SheetInput, words: Words) {
  const { options, job } = input;
  const path = outlinePath(piece.outline, { line: STYLE.cut });
  const drawing: readonly GroupItem[] = [group('cut', [path])];
  const symbol = `pocket-${piece.piece}`;
  const subject: TileSubject = {
    ...{ input, words, symbol, name: piece.piece, outer: piece.outline, grain: 'either', arrows: false },
    lines: [flattenPath(path, 0.02)],
    marks: [],
    tileWords: words.pocket.name(piece.piece, piece.count),
    shortWords: piece.piece,
    footWords: words.page.jobLine(job.name, dateText(options.date, options.language), options.revision),
    sizes: checkSizes(options.units),
  };
  const tiling = tile(subject.lines, sheetPaper(options.paper, options.units));
  const pages = tiling.tiles.filter(({ printed }) => printed).map((one) => tilePage(subject, tiling, one));
  return { symbol, drawing, pages };
}
