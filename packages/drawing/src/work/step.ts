import { type Block, indented, paragraph, space, stack } from '../block.ts';
import { INK, WEIGHT } from '../ink.ts';
import { rectangle } from '../path.ts';
import type { FontMetrics } from '../sheet.ts';
import { CLOSE } from '../text.ts';
import type { Words } from '../words.ts';
import { oneNotice } from './notices.ts';

/** One step of the work: what to do, with the job's figures, and what can go wrong at this place. */
export interface Step {
  readonly title: string;
  readonly lines: readonly string[];
  readonly cautions: readonly string[];
}

const BOX = 6;
const TEXT_AT = 10;

/**
 * A step with a box to tick, each sentence on lines of its own. Its lines may go on to the next page, but two of them stay
 * with its title, and the last with the caution.
 */
export function stepBlocks(
  step: Step,
  width: number,
  metrics: FontMetrics,
  words: Words,
  capital: number,
): readonly Block[] {
  const inner = width - TEXT_AT;
  const look = { capital, lead: CLOSE };
  const title = stack(paragraph(step.title, inner, metrics, { ...look, face: 'bold' }));
  const said = step.lines.flatMap((one) => paragraph(one, inner, metrics, look));
  const lines = said.length;
  const cautions =
    step.cautions.length === 0
      ? []
      : [space(1), ...oneNotice(words.page.caution(), step.cautions.join('\n'), inner, metrics, capital)];
  const first: Block = {
    height: title.height,
    keepWithNext: lines > 0,
    draw: (x, top) => [
      rectangle({ x, y: top - BOX - 0.4, width: BOX, height: BOX }, { line: PEN }),
      ...title.draw(x + TEXT_AT, top),
    ],
  };
  return [
    first,
    ...[...said, ...cautions].map((one, index) => ({
      ...indented(one, TEXT_AT),
      keepWithNext:
        (index === 0 && lines > 1) ||
        (index >= lines - 1 && index < lines && cautions.length > 0) ||
        one.keepWithNext === true,
    })),
    space(2.2),
  ];
}

const PEN = { weight: WEIGHT.thin, colour: INK.ink };
