import { point } from '@panewright/geometry';
import { oneLine, paragraph, stack } from '../block.ts';
import { correctionWords } from '../correctionWords.ts';
import { figureText } from '../figures.ts';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import { group, placePath, rectangle } from '../path.ts';
import type { Item, PathItem } from '../sheet.ts';
import { text } from '../text.ts';
import { bar } from './bar.ts';
import type { TileSubject } from './tilePage.ts';
import { printedCount, type Tile, type Tiling } from './tiling.ts';

/** What stands in the margin of a tile besides its neighbours: its name, what to measure, the printer's correction. */
export function tileFoot(subject: TileSubject, tiling: Tiling, one: Tile): Item[] {
  const marks = !tiling.roll
    ? sheetFoot(subject, tiling, one)
    : tiling.orientation === 'upright'
      ? rollFoot(subject, tiling, one)
      : rollSide(subject, tiling, one);
  return [...marks, ...correctionLine(subject, tiling)];
}

const LOW = 6;

function sheetFoot(subject: TileSubject, tiling: Tiling, one: Tile): Item[] {
  const { metrics } = subject.input.options;
  const { sizes, words } = subject;
  const { margin } = tiling;
  const y = LOW;
  const squareX = tiling.paper.width - margin.right - sizes.smallSquare;
  const barX = squareX - 10 - sizes.tileBar;
  const room = barX - margin.left - 5;
  const place = words.pattern.tileOf(one.label, printedCount(tiling));
  const name = oneLine(
    subject.name,
    room,
    metrics,
    { most: CAPITAL.lead, least: CAPITAL.small },
    { face: 'bold' },
  );
  const below = oneLine(place, room, metrics, { most: CAPITAL.small, least: 2 });
  const job = oneLine(subject.footWords, room, metrics, { most: CAPITAL.small, least: 2 });
  const check = oneLine(
    words.pattern.tileCheck(sizes.tileBarText, sizes.smallSquareText),
    sizes.tileBar,
    metrics,
    {
      ...{ most: CAPITAL.small, least: 2 },
    },
  );
  return [
    group('text', [
      text(name.words, point(margin.left, y + 8.6), metrics, { capital: name.capital, face: 'bold' }),
      text(below.words, point(margin.left, y + 3.9), metrics, { capital: below.capital }),
      text(job.words, point(margin.left, y - 0.4), metrics, { capital: job.capital, colour: INK.soft }),
    ]),
    group('measure', [
      rectangle(
        { x: squareX, y, width: sizes.smallSquare, height: sizes.smallSquare },
        { line: STYLE.measure },
      ),
      ...bar(point(barX, y), sizes.tileBar, sizes.step),
    ]),
    group('text', [
      text(check.words, point(barX, y + 6), metrics, { capital: check.capital, colour: INK.soft }),
    ]),
  ];
}

/** Room beside the square and the bar, mm. */
const GAP = 8;

/** At the foot of a roll's page: words on the left, the square on the right, the bar along the foot between them. */
function rollFoot(subject: TileSubject, tiling: Tiling, one: Tile): Item[] {
  const { sizes } = subject;
  const { margin, paper } = tiling;
  const room = paper.width - margin.left - margin.right - sizes.square - GAP;
  const long = longBar(room, sizes.step);
  const top = LOW + sizes.square;
  return [
    group('measure', [
      square(paper.width - margin.right - sizes.square, sizes.square),
      ...bar(point(margin.left, LOW), long.length, sizes.step),
    ]),
    group('text', rollWords(subject, tiling, one, long.text(subject), { x: margin.left, top, width: room })),
  ];
}

/** At the right end of a roll's page drawn across: words above, the square below, the bar up the edge. */
function rollSide(subject: TileSubject, tiling: Tiling, one: Tile): Item[] {
  const { sizes } = subject;
  const { margin, paper } = tiling;
  const left = paper.width - margin.right + GAP;
  const width = sizes.square;
  const top = paper.height - margin.top;
  const long = longBar(paper.height - margin.top - LOW, sizes.step);
  const upright = bar(point(0, 0), long.length, sizes.step).map((item) =>
    item.kind === 'path'
      ? placePath(item as PathItem, { turn: Math.PI / 2, x: paper.width - 5, y: LOW })
      : item,
  );
  return [
    group('measure', [square(left, sizes.square), ...upright]),
    group('text', rollWords(subject, tiling, one, long.text(subject), { x: left, top, width })),
  ];
}

const square = (x: number, side: number): PathItem =>
  rectangle({ x, y: LOW, width: side, height: side }, { line: STYLE.measure });

/** Longest bar of whole steps for a room: half a metre or twenty inches at the most. */
function longBar(room: number, step: number) {
  const inches = step > 20;
  const unit = inches ? 2 * step : 5 * step;
  const length = Math.max(unit, Math.min(10 * unit, Math.floor(room / unit) * unit));
  return {
    length,
    text: ({ words }: TileSubject): string =>
      words.pattern.longBar(inches ? `${Math.round(length / step)} in` : `${length} mm`),
  };
}

function rollWords(
  subject: TileSubject,
  tiling: Tiling,
  one: Tile,
  barWords: string,
  area: { readonly x: number; readonly top: number; readonly width: number },
): readonly Item[] {
  const { input, words, sizes } = subject;
  const { metrics } = input.options;
  const small = { capital: CAPITAL.small };
  const count = printedCount(tiling);
  const named = oneLine(
    subject.name,
    area.width,
    metrics,
    { most: CAPITAL.heading, least: CAPITAL.small },
    { face: 'bold' },
  );
  return stack([
    ...paragraph(named.words, area.width + 1, metrics, { capital: named.capital, face: 'bold' }),
    ...(count > 1 ? paragraph(words.pattern.tileOf(one.label, count), area.width, metrics, small) : []),
    ...paragraph(subject.footWords, area.width, metrics, { ...small, colour: INK.soft }),
    ...paragraph(
      words.pattern.rollMeasure(
        sizes.squareText,
        barWords,
        figureText(sizes.mostOut, input.options.language),
      ),
      area.width,
      metrics,
      small,
    ),
  ]).draw(area.x, area.top);
}

/** In the upper margin, so that nobody corrects twice. */
function correctionLine(subject: TileSubject, tiling: Tiling): Item[] {
  const { metrics } = subject.input.options;
  const [said] = correctionWords(subject.input.options, subject.words);
  if (said === undefined) return [];
  const { paper, margin } = tiling;
  const room = paper.width / 2 - margin.left - 14;
  const fitted = oneLine(said, room, metrics, { most: CAPITAL.small, least: 1.8 });
  const at = point(margin.left, paper.height - margin.top + 2.5);
  return [group('text', [text(fitted.words, at, metrics, { capital: fitted.capital, colour: INK.soft })])];
}
