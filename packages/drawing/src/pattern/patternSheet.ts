import { corrected } from '../correction.ts';
import type { SheetInput } from '../options.ts';
import { paperLabel } from '../paper.ts';
import type { Sheet } from '../sheet.ts';
import { frontPage } from './frontPage.ts';
import { patternSubject } from './patternSubject.ts';
import { tilePage } from './tilePage.ts';
import { tile } from './tiling.ts';

/**
 * One pattern at full size on tiles of the paper, behind a front page to measure.
 *
 * @param name the pattern's, as in the plan
 * @returns undefined where the plan has no such pattern or no panel for it
 */
export function patternSheet(input: SheetInput, name: string): Sheet | undefined {
  const pattern = input.plan.patterns.find((one) => one.pattern === name);
  const panel = input.plan.panels.find((one) => one.pattern === name);
  if (pattern === undefined || panel === undefined) return undefined;
  const subject = patternSubject(input, pattern, panel);
  const tiling = tile(subject.lines, input.options.paper);
  const printed = tiling.tiles.filter((one) => one.printed);
  return {
    path: `patterns/${name}-${paperLabel(input.options.paper)}`,
    title: subject.words.pattern.title(name),
    symbols: { pattern: subject.drawing },
    pages: [frontPage(subject, tiling), ...printed.map((one) => tilePage(subject, tiling, one))].map((page) =>
      corrected(page, input.options.correction),
    ),
  };
}
