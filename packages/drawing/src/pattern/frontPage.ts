import { point } from '@panewright/geometry';
import {
  type Block,
  beside,
  heading,
  indented,
  innerWidth,
  oneLine,
  paragraph,
  picture,
  space,
  stack,
} from '../block.ts';
import { correctionWords } from '../correctionWords.ts';
import { figureText, lengthText, sizeText } from '../figures.ts';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import { pageFrame } from '../pageFrame.ts';
import { boxOfPoints, group, lineAt, placePath, rectangle } from '../path.ts';
import type { FontMetrics, Item, LineStyle, Page } from '../sheet.ts';
import { fitText, text, widthOf } from '../text.ts';
import { bar } from './bar.ts';
import { grainWords, type PatternSubject } from './patternSubject.ts';
import { printedCount, type Tile, type Tiling } from './tiling.ts';

/** Page printed first: what the pattern is for, a square and a bar to measure, the key of its lines, the map of its tiles. */
export function frontPage(subject: PatternSubject, tiling: Tiling): Page {
  const { input, words } = subject;
  const frame = pageFrame(input, words.pattern.title(subject.pattern.pattern));
  const width = innerWidth(frame);
  const gap = 8;
  const left = subject.sizes.square + 2;
  const right = width - left - gap;
  const upper = beside([
    { at: 0, block: facts(subject, left) },
    { at: left + gap, block: tileMap(subject, tiling, right) },
  ]);
  const lower = beside([
    { at: 0, block: squareBlock(subject, left) },
    { at: left + gap, block: key(subject, right) },
  ]);
  const blocks = [upper, space(3), barBlock(subject, width), space(5), lower];
  const room = frame.height - frame.top - frame.bottom;
  let top = frame.height - frame.top;
  const items = blocks.flatMap((block) => {
    const drawn = block.draw(frame.left, top);
    top -= block.height;
    return drawn;
  });
  if (frame.height - frame.top - top > room + 1e-6)
    throw new RangeError('The front page of a pattern is over-full.');
  return {
    ...{ label: '', width: frame.width, height: frame.height },
    items: [...frame.furniture(1, printedCount(tiling) + 1), ...items],
  };
}

const FACTS_HEIGHT = 86;

function facts(subject: PatternSubject, width: number): Block {
  const { words, panel, pattern, hold, input } = subject;
  const { metrics, units } = input.options;
  const title = fitText(
    words.pattern.title(pattern.pattern),
    { width, height: 22 },
    metrics,
    { most: CAPITAL.title, least: CAPITAL.small },
    { face: 'bold' },
  ) ?? { lines: [pattern.pattern], capital: CAPITAL.small };
  const titleBlock = stack(
    title.lines.flatMap((one) =>
      paragraph(one, width + 1, metrics, { capital: title.capital, face: 'bold' }),
    ),
  );
  const small = { capital: CAPITAL.small };
  const lines = [
    words.pattern.finishedSize(sizeText(panel.finishedWidth.value, panel.finishedHeight.value, units)),
    words.pattern.cutSize(sizeText(panel.cutWidth.value, panel.cutHeight.value, units)),
    words.pattern.outsideFace(),
    words.pattern.grain(grainWords(panel, words)),
    words.pattern.holdCount(hold?.points.length ?? 0),
    ...farthestCheck(subject),
    ...correctionWords(input.options, words),
  ];
  const known = stack(lines.flatMap((one) => paragraph(one, width, metrics, small)));
  const room = FACTS_HEIGHT - titleBlock.height - known.height - 2;
  return {
    height: FACTS_HEIGHT,
    draw: stack([titleBlock, space(2), known, servesBlock(subject, width, room)]).draw,
  };
}

/** The openings served: as many as there is room for, the rest counted. */
function servesBlock(subject: PatternSubject, width: number, room: number): Block {
  const { words, serves, input } = subject;
  const { metrics } = input.options;
  for (let shown = serves.length; shown >= 0; shown--) {
    const names = serves.slice(0, shown);
    const sentence =
      shown === serves.length
        ? words.pattern.serves(names)
        : words.pattern.servesSome(names, serves.length - shown);
    const block = stack(paragraph(sentence, width, metrics, { capital: CAPITAL.small }));
    if (block.height <= room) return block;
  }
  return stack([]);
}

/** The longest way between two hold points: the check that the tiles were joined true. */
function farthestCheck(subject: PatternSubject): string[] {
  const points = subject.hold?.points ?? [];
  let far = { from: 0, to: 0, distance: 0 };
  for (const a of points)
    for (const b of points) {
      const distance = Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y);
      if (a.number < b.number && distance > far.distance + 1e-9)
        far = { from: a.number, to: b.number, distance };
    }
  if (far.distance === 0) return [];
  const length = lengthText(far.distance, subject.input.options.units);
  return [subject.words.pattern.joinCheck(far.from, far.to, length)];
}

/** Capitals of the map's smallest label, mm; below it the map shows frames alone, and each tile its own name. */
const LEAST_MAP_LABEL = 1.2;

function tileMap(subject: PatternSubject, tiling: Tiling, width: number): Block {
  const { words, input } = subject;
  const { metrics } = input.options;
  const head = heading(words.pattern.tiles(printedCount(tiling)), width, metrics);
  const notes = stack(
    [
      ...(printedCount(tiling) > 1 ? [words.pattern.joining()] : []),
      ...(tiling.roll ? [words.pattern.rollNote()] : []),
    ].flatMap((one) => paragraph(one, width, metrics, { capital: CAPITAL.small })),
  );
  const room = FACTS_HEIGHT - head.height - notes.height - 2;
  const box = boxOfPoints(
    tiling.tiles.flatMap(({ window }) => [point(window.minX, window.minY), point(window.maxX, window.maxY)]),
  );
  const scale = Math.min(width / (box.maxX - box.minX), room / (box.maxY - box.minY));
  const placing = { scale, x: -box.minX * scale, y: -box.minY * scale };
  const outlines = subject.drawing
    .filter(({ layer }) => layer === 'cut')
    .flatMap(({ items }) => items.flatMap((item) => (item.kind === 'path' ? [placePath(item, placing)] : [])))
    .map(({ line: _, ...path }) => ({ ...path, fill: INK.band }));
  const frames = tiling.tiles
    .filter(({ printed }) => printed)
    .flatMap((one) => mapFrame(one, placing, metrics));
  return {
    height: FACTS_HEIGHT,
    draw: stack([head, picture([...outlines, ...frames], (box.maxY - box.minY) * scale), space(2), notes])
      .draw,
  };
}

/** One tile on the map, with its name where that can be read. */
function mapFrame(
  one: Tile,
  placing: { readonly scale: number; readonly x: number; readonly y: number },
  metrics: FontMetrics,
): readonly Item[] {
  const { scale } = placing;
  const at = point(one.window.minX * scale + placing.x, one.window.minY * scale + placing.y);
  const size = {
    width: (one.window.maxX - one.window.minX) * scale,
    height: (one.window.maxY - one.window.minY) * scale,
  };
  const inset = 0.5;
  const frame = {
    x: at.x + inset,
    y: at.y + inset,
    width: size.width - 2 * inset,
    height: size.height - 2 * inset,
  };
  const bold = { capital: 1, face: 'bold' } as const;
  const capital = Math.min(
    CAPITAL.small,
    size.height * 0.4,
    (size.width * 0.75) / widthOf(one.label, metrics, bold),
  );
  const middle = point(at.x + size.width / 2, at.y + size.height / 2 - capital / 2);
  if (capital < LEAST_MAP_LABEL) return [rectangle(frame, { line: STYLE.dimension })];
  return [
    rectangle(frame, { line: STYLE.dimension }),
    text(one.label, middle, metrics, { capital, face: 'bold', anchor: 'middle' }),
  ];
}

function barBlock(subject: PatternSubject, width: number): Block {
  const { words, sizes, input } = subject;
  const { metrics } = input.options;
  const head = heading(words.pattern.measureFirst(), width, metrics);
  const note = stack(
    paragraph(
      words.pattern.measureNote(
        sizes.squareText,
        sizes.barText,
        figureText(sizes.mostOut, input.options.language),
      ),
      width,
      metrics,
      {
        capital: CAPITAL.small,
      },
    ),
  );
  const drawn = picture([group('measure', bar(point(0, 1), sizes.bar, sizes.step))], 8);
  const label = oneLine(sizes.barText, width - sizes.bar - 4, metrics, { most: CAPITAL.body, least: 2 });
  const named: Block = {
    height: 8,
    draw: (x, top) => [
      ...drawn.draw(x, top),
      text(label.words, point(x + sizes.bar + 3, top - 7), metrics, { capital: label.capital }),
    ],
  };
  return stack([head, note, space(2), named]);
}

function squareBlock(subject: PatternSubject, width: number): Block {
  const { sizes, input } = subject;
  const { metrics } = input.options;
  const half = sizes.square / 2;
  return {
    height: sizes.square + 4,
    draw: (x, top) => [
      group('measure', [
        rectangle(
          { x, y: top - sizes.square - 2, width: sizes.square, height: sizes.square },
          { line: STYLE.measure },
        ),
      ]),
      ...stack(paragraph(sizes.squareText, width, metrics, { capital: CAPITAL.body })).draw(
        x + 5,
        top - half,
      ),
    ],
  };
}

/** What each line of the pattern means. */
function key(subject: PatternSubject, width: number): Block {
  const { words, input, drawing, panel } = subject;
  const { metrics } = input.options;
  const has = (layer: string) => drawing.some((one) => one.layer === layer && one.items.length > 0);
  const rows: readonly (readonly [LineStyle, string])[] = [
    [STYLE.cut, words.pattern.keyCut()],
    [STYLE.finished, words.pattern.keyFinished()],
    ...(has('stitch') ? ([[STYLE.stitch, words.pattern.keyStitch()]] as const) : []),
    ...(has('pocket') ? ([[STYLE.pocket, words.pattern.keyPocket()]] as const) : []),
  ];
  const sample = 18;
  const lines = rows.map(([style, meaning]) => {
    const block = stack(paragraph(meaning, width - sample - 4, metrics, { capital: CAPITAL.small }));
    return beside([
      { at: sample + 4, block },
      { at: 0, block: { height: 6, draw: (x, top) => [lineAt(x, top - 2.5, x + sample, top - 2.5, style)] } },
    ]);
  });
  const signs = [words.pattern.keyHold(), words.pattern.keyCentre()];
  if (panel.edging.kind === 'binding') signs.push(words.pattern.keyBindingStart());
  const notes = signs.flatMap((one) => paragraph(one, width, metrics, { capital: CAPITAL.small }));
  return stack(
    [
      heading(words.pattern.key(), width, metrics),
      ...lines.flatMap((one) => [one, space(1)]),
      space(1.5),
      ...notes,
    ].map((one) => indented(one, 0)),
  );
}
