import { point } from '@panewright/geometry';
import { oneLine, type PageFrame } from './block.ts';
import { dateText } from './figures.ts';
import { CAPITAL, INK, STYLE } from './ink.ts';
import type { SheetInput } from './options.ts';
import { PAPERS, type PaperName, type PaperSize, writtenPaper } from './paper.ts';
import { group, lineAt, rectangle } from './path.ts';
import type { Item } from './sheet.ts';
import { text, widthOf } from './text.ts';
import { wordsOf } from './wordsOf.ts';

const EDGE = { left: 14, right: 14, top: 23, bottom: 19 } as const;

/** How much larger than usual large type is. */
const LARGE = 1.35;

/** The frame of a sheet that is read from a distance: larger where large type is asked for. */
export const readingFrame = (input: SheetInput, title: string): PageFrame =>
  pageFrame(input, title, 'upright', undefined, input.options.type === 'large' ? LARGE : 1);

/** The frame every written sheet shares: shop and job at the head, the sheet's name, date and page at the foot. */
export function pageFrame(
  input: SheetInput,
  title: string,
  way: 'upright' | 'across' = 'upright',
  on: PaperName | PaperSize = writtenPaper(input.options.paper, input.options.units),
  scale = 1,
): PageFrame {
  const paper = typeof on === 'string' ? PAPERS[on] : on;
  const width = (way === 'upright' ? paper.width : paper.height) / scale;
  const height = (way === 'upright' ? paper.height : paper.width) / scale;
  return {
    ...{ width, height, ...EDGE, scale },
    furniture: (page, pages) => [
      group('frame', [
        rectangle({ x: EDGE.left, y: height - 10, width: 14, height: 1.4 }, { fill: INK.accent }),
        lineAt(EDGE.left, 13, width - EDGE.right, 13, STYLE.rule),
      ]),
      group('text', [...head(input, width, height), ...foot(input, title, width, page, pages)]),
    ],
  };
}

function head(input: SheetInput, width: number, height: number): Item[] {
  const { metrics } = input.options;
  const room = (width - EDGE.left - EDGE.right) / 2 - 3;
  const y = height - 16;
  const sizes = { most: CAPITAL.small, least: 2 };
  const shop = oneLine(input.catalogue.shop.name, room, metrics, sizes, { face: 'bold' });
  const job = oneLine(input.job.name, room, metrics, sizes);
  return [
    ...(shop.words === ''
      ? []
      : [text(shop.words, point(EDGE.left, y), metrics, { capital: shop.capital, face: 'bold' })]),
    text(job.words, point(width - EDGE.right, y), metrics, {
      capital: job.capital,
      anchor: 'end',
      colour: INK.soft,
    }),
  ];
}

function foot(input: SheetInput, title: string, width: number, page: number, pages: number): Item[] {
  const { metrics, date, revision } = input.options;
  const words = wordsOf(input.options);
  const look = { capital: CAPITAL.small, colour: INK.soft } as const;
  const number = words.page.number(page, pages);
  const made = words.page.made(dateText(date, input.options.language), revision);
  const right = width - EDGE.right;
  const used = widthOf(number, metrics, look) + 4;
  const madeFit = oneLine(made, (right - EDGE.left) * 0.4, metrics, { most: CAPITAL.small, least: 2 });
  const madeWidth = widthOf(madeFit.words, metrics, { capital: madeFit.capital }) + 4;
  const room = right - EDGE.left - used - madeWidth;
  const name = oneLine(title, room, metrics, { most: CAPITAL.small, least: 2 });
  return [
    text(name.words, point(EDGE.left, 8), metrics, { ...look, capital: name.capital }),
    text(madeFit.words, point(right - used, 8), metrics, {
      ...look,
      capital: madeFit.capital,
      anchor: 'end',
    }),
    text(number, point(right, 8), metrics, { ...look, anchor: 'end' }),
  ];
}
