import { point } from '@panewright/geometry';
import { type Block, baseline, caution, indented, paragraph, space, stack } from '../block.ts';
import { CAPITAL, INK, WEIGHT } from '../ink.ts';
import { lineAt, rectangle } from '../path.ts';
import type { FontMetrics, Item } from '../sheet.ts';
import { text } from '../text.ts';
import type { Words } from '../words.ts';

/** One step of the work: what to do, with the job's figures, and what can go wrong at this place. */
export interface Step {
  readonly title: string;
  readonly lines: readonly string[];
  readonly cautions: readonly string[];
}

const BOX = 6;
const TEXT_AT = 11;
const MINUTES = 27;

/**
 * A step with a box to tick and a line for the minutes it took. Its lines may go on to the next page, but two of them
 * stay with its title, and the last with the caution.
 */
export function stepBlocks(
  step: Step,
  width: number,
  metrics: FontMetrics,
  words: Words,
  minutes = true,
): readonly Block[] {
  const inner = width - TEXT_AT - (minutes ? MINUTES : 0);
  const title = stack(paragraph(step.title, inner, metrics, { face: 'bold' }));
  const said = step.lines.flatMap((one) => paragraph(one, inner, metrics));
  const lines = said.length;
  const rest = [
    ...said,
    ...(step.cautions.length > 0 ? [space(1.5)] : []),
    ...(step.cautions.length > 0
      ? [caution(step.cautions.join('\n'), inner, metrics, words.page.caution())]
      : []),
  ];
  const first: Block = {
    height: Math.max(title.height, BOX + 1),
    keepWithNext: rest.length > 0,
    draw: (x, top) => [
      ...tickBox(x, top),
      ...title.draw(x + TEXT_AT, top),
      ...(minutes ? minutesLine(x + width, top, metrics, words) : []),
    ],
  };
  return [
    first,
    ...rest.map((one, index) => ({
      ...indented(one, TEXT_AT),
      keepWithNext: (index === 0 && lines > 1) || (index >= lines - 1 && index < rest.length - 1),
    })),
    space(2.4),
  ];
}

const PEN = { weight: WEIGHT.thin, colour: INK.ink };

const tickBox = (x: number, top: number): Item[] => [
  rectangle({ x, y: top - BOX - 0.4, width: BOX, height: BOX }, { line: PEN }),
];

function minutesLine(right: number, top: number, metrics: FontMetrics, words: Words): Item[] {
  const y = top - BOX;
  return [
    lineAt(right - MINUTES + 5, y, right - 8.5, y, PEN),
    text(words.work.minutes(), point(right, baseline(0, top, CAPITAL.small).y - 1), metrics, {
      ...{ capital: CAPITAL.small, anchor: 'end', colour: INK.soft },
    }),
  ];
}
