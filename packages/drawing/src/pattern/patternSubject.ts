import type { HoldPlan, OpeningPlan, PanelPlan, PatternPlan } from '@panewright/design';
import { dateText, sizeText } from '../figures.ts';
import type { SheetInput } from '../options.ts';
import { flattenPath } from '../path.ts';
import type { GroupItem } from '../sheet.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { checkSizes } from './checkSizes.ts';
import { patternDrawing } from './patternDrawing.ts';
import type { MarkLabel, TileSubject } from './tilePage.ts';

/** One pattern with all that its sheets say about it. */
export interface PatternSubject extends TileSubject {
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly hold: HoldPlan | undefined;
  readonly drawing: readonly GroupItem[];
  readonly serves: readonly string[];
}

export function patternSubject(input: SheetInput, pattern: PatternPlan, panel: PanelPlan): PatternSubject {
  const { plan, options } = input;
  const words = wordsOf(options);
  const hold = plan.hold.find((one) => one.pattern === pattern.pattern);
  const drawing = patternDrawing(panel, hold);
  const serves = servedNames(pattern, plan.openings, words);
  const size = sizeText(panel.finishedWidth.value, panel.finishedHeight.value, options.units);
  return {
    ...{ input, words, pattern, panel, hold, drawing, serves },
    ...{
      symbol: 'pattern',
      name: pattern.pattern,
      outer: panel.finished,
      grain: panel.choices.grain,
      arrows: true,
    },
    lines: drawing.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'path' ? [flattenPath(item, 0.02)] : [])),
    ),
    marks: markLabels(panel, hold, words),
    tileWords: [
      pattern.pattern,
      words.pattern.outsideFace(),
      words.pattern.finishedSize(size),
      words.pattern.grain(grainWords(panel, words)),
      words.pattern.servesCount(pattern.members.length),
    ].join('\n'),
    shortWords: `${pattern.pattern}\n${words.pattern.outsideFace()}`,
    footWords: words.page.jobLine(input.job.name, dateText(options.date, options.language), options.revision),
    sizes: checkSizes(options.units),
  };
}

/** Names of the openings a pattern serves, each with whether the pattern is turned over for it. */
export function servedNames(
  pattern: PatternPlan,
  openings: readonly OpeningPlan[],
  words: Words,
): readonly string[] {
  return pattern.members.map((member) => {
    const opening = openings.find((one) => one.opening === member.opening);
    const name = opening?.name ?? member.opening;
    const degrees = Math.round((member.place.angle * 180) / Math.PI);
    const turned = Math.abs(degrees) >= 5 ? words.pattern.turned(name, degrees) : name;
    return member.turnedOver ? words.pattern.turnedOver(turned) : turned;
  });
}

export const grainWords = (panel: PanelPlan, words: Words): string =>
  ({
    warpUp: words.pattern.warpUp(),
    warpAcross: words.pattern.warpAcross(),
    either: words.pattern.warpEither(),
  })[panel.choices.grain];

function markLabels(panel: PanelPlan, hold: HoldPlan | undefined, words: Words): MarkLabel[] {
  const points = (hold?.points ?? []).map((one) => ({
    at: one.centre,
    words: words.pattern.holdLabel(one.number, one.pocketPiece),
    strong: true,
  }));
  const { edging } = panel;
  return edging.kind === 'binding'
    ? [...points, { at: edging.startsAt.at, words: words.pattern.bindingStarts(), strong: false }]
    : points;
}
