import { point } from '@panewright/geometry';
import { type Block, innerWidth, paragraph, space, stack } from '../block.ts';
import { figureText } from '../figures.ts';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { pageFrame } from '../pageFrame.ts';
import { PAPERS, paperLabel } from '../paper.ts';
import { group, placePath, rectangle } from '../path.ts';
import type { Item, Sheet } from '../sheet.ts';
import { tableRows } from '../table.ts';
import { text } from '../text.ts';
import { type Language, wordsOf } from '../wordsOf.ts';
import { bar } from './bar.ts';
import { checkSizes } from './checkSizes.ts';

/** Length of a roll's test page, mm. */
const ROLL_LENGTH = 600;
/** Room of the bar up the left side, mm. */
const SIDE = 20;

/**
 * A page to find a printer's error by: a bar across the paper and one along it, each as long as goes, and a square. It is
 * printed without any correction, so that nominal over measured is the factor to enter.
 */
export function printerTest(input: SheetInput): Sheet {
  const { paper, metrics, units } = input.options;
  const words = wordsOf(input.options);
  const sizes = checkSizes(units);
  const size = typeof paper === 'string' ? PAPERS[paper] : { width: paper.width, height: ROLL_LENGTH };
  const title = words.printer.title();
  const frame = pageFrame(input, title, 'upright', size);
  const { step } = sizes;
  const across = Math.floor((innerWidth(frame) - 1) / step) * step;
  const along = Math.floor((frame.height - frame.top - frame.bottom - 14) / step) * step;
  const lengthOf = (length: number) =>
    units === 'in' ? `${Math.round(length / step)} in` : `${Math.round(length)} mm`;
  const [x, low] = [frame.left + 5, frame.bottom + 13];
  const upright = bar(point(0, 0), along, step).map((item) =>
    item.kind === 'path' ? placePath(item, { turn: Math.PI / 2, x, y: low }) : item,
  );
  const small = { capital: CAPITAL.small, anchor: 'middle' } as const;
  const bars: Item[] = [
    group('measure', [...bar(point(frame.left, frame.bottom), across, step), ...upright]),
    group('text', [
      text(
        words.printer.across(lengthOf(across)),
        point(frame.left + across / 2, frame.bottom + 6),
        metrics,
        {
          ...small,
        },
      ),
      text(words.printer.along(lengthOf(along)), point(x + 5.5, low + along / 2), metrics, {
        ...{ ...small, turn: Math.PI / 2 },
      }),
    ]),
  ];
  const width = Math.min(innerWidth(frame) - SIDE, 170);
  const block = stack([
    ...paragraph(title, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...paragraph(words.printer.how(), width, metrics),
    space(4),
    ...record(input, width, lengthOf(across), lengthOf(along)),
    space(2),
    ...paragraph(
      words.printer.example(lengthOf(across), ...example(across, step, input.options.language)),
      width,
      metrics,
      {
        ...{ capital: CAPITAL.small, colour: INK.soft },
      },
    ),
    space(6),
    measuringSquare(sizes.square, sizes.squareText, width, input),
  ]);
  const drawn = block.draw(frame.left + SIDE, frame.height - frame.top);
  return {
    path: `printer-test-${paperLabel(paper)}`,
    title,
    symbols: {},
    pages: [
      {
        label: '',
        width: size.width,
        height: size.height,
        items: [...frame.furniture(1, 1), ...bars, ...drawn],
      },
    ],
  };
}

/** A reading a little short of the bar, and the factor it gives. */
function example(length: number, step: number, language: Language | undefined): readonly [string, string] {
  const unit = step > 20 ? 25.4 : 1;
  const nominal = length / unit;
  const measured = nominal - (unit === 1 ? 0.5 : 0.02);
  return [
    figureText(unit === 1 ? `${measured.toFixed(1)} mm` : `${measured.toFixed(2)} in`, language),
    figureText((nominal / measured).toFixed(4), language),
  ];
}

/** A table to write in: what each bar should be, was, and what follows. */
function record(input: SheetInput, width: number, across: string, along: string): readonly Block[] {
  const words = wordsOf(input.options);
  const columns = [
    { title: words.printer.axis(), width: width * 0.34 },
    { title: words.printer.nominal(), width: width * 0.22 },
    { title: words.printer.measured(), width: width * 0.22 },
    { title: words.printer.factor(), width: width * 0.22 },
  ];
  const rows = [
    [`x: ${words.printer.acrossName()}`, across, '', ''],
    [`y: ${words.printer.alongName()}`, along, '', ''],
  ];
  return tableRows(columns, rows, input.options.metrics, { capital: CAPITAL.lead });
}

function measuringSquare(side: number, label: string, width: number, input: SheetInput): Block {
  const words = paragraph(label, width, input.options.metrics, { capital: CAPITAL.body });
  return {
    height: side + 2,
    draw: (x, top) => [
      group('measure', [rectangle({ x, y: top - side, width: side, height: side }, { line: STYLE.measure })]),
      ...stack(words).draw(x + 5, top - 4),
    ],
  };
}
