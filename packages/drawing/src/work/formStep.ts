import { point } from '@panewright/geometry';
import { type Block, baseline, indented, paragraph, space, stack } from '../block.ts';
import { INK, WEIGHT } from '../ink.ts';
import { lineAt, polygon, rectangle } from '../path.ts';
import type { FontMetrics, Item } from '../sheet.ts';
import { CLOSE, text } from '../text.ts';
import type { Words } from '../words.ts';
import type { Step } from './step.ts';

const BOX = 4.6;
const TEXT_AT = 7.6;
const MINUTES = 26;

/**
 * A step of a form: a box to tick, a line for the minutes it took, its sentences run together, and each caution on a line
 * with a sign. Its lines may go on to the next page, but not from its title.
 */
export function formStep(
  step: Step,
  width: number,
  metrics: FontMetrics,
  words: Words,
  capital: number,
): readonly Block[] {
  const inner = width - TEXT_AT;
  const look = { capital, lead: CLOSE };
  const title = stack(paragraph(step.title, inner - MINUTES, metrics, { ...look, face: 'bold' }));
  const rest = [
    ...paragraph(step.lines.join(' '), inner, metrics, look),
    ...step.cautions.map((one) => signed(one, inner, metrics, look)),
  ];
  const head: Block = {
    height: title.height,
    keepWithNext: true,
    draw: (x, top) => [
      rectangle({ x, y: top - BOX, width: BOX, height: BOX }, { line: PEN }),
      ...title.draw(x + TEXT_AT, top),
      ...minutesLine(x + width, top, metrics, words, capital),
    ],
  };
  return [
    head,
    ...rest.map((one, index) => ({
      ...indented(one, TEXT_AT),
      keepWithNext: index === 0 ? rest.length > 1 : index === rest.length - 2,
    })),
    space(1.6),
  ];
}

const PEN = { weight: WEIGHT.thin, colour: INK.ink };

function minutesLine(
  right: number,
  top: number,
  metrics: FontMetrics,
  words: Words,
  capital: number,
): readonly Item[] {
  const { y } = baseline(right, top, capital, CLOSE);
  return [
    lineAt(right - MINUTES + 4, y + 0.1, right - 7.5, y + 0.1, PEN),
    text(words.work.minutes(), point(right, y), metrics, { capital, anchor: 'end', colour: INK.soft }),
  ];
}

const SIGN = 4.6;

/** A line of caution with its sign: three corners and a stroke over a dot. */
function signed(
  words: string,
  width: number,
  metrics: FontMetrics,
  look: { readonly capital: number; readonly lead: number },
): Block {
  const body = stack(
    paragraph(words, width - SIGN - 1.2, metrics, { ...look, face: 'bold', colour: INK.warning }),
  );
  return {
    height: body.height,
    draw: (x, top) => [
      ...sign(x, top - look.capital * look.lead, look.capital * 1.35),
      ...body.draw(x + SIGN + 1.2, top),
    ],
  };
}

function sign(x: number, foot: number, height: number): readonly Item[] {
  const y = foot + 0.35;
  const half = height * 0.58;
  const middle = x + half;
  return [
    polygon([point(x, y), point(x + 2 * half, y), point(middle, y + height)], { fill: INK.warning }),
    rectangle({ x: middle - 0.22, y: y + 1.2, width: 0.44, height: height * 0.34 }, { fill: INK.paper }),
    rectangle({ x: middle - 0.24, y: y + 0.45, width: 0.48, height: 0.45 }, { fill: INK.paper }),
  ];
}
