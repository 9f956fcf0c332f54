import type { HoldPlan, PanelPlan, PatternPlan, Plan } from '@panewright/design';
import { fineLengthText, lengthText, sizeText } from '../figures.ts';
import type { SheetInput } from '../options.ts';
import type { Words } from '../words.ts';
import { glassStep, panelHoldStep } from './holdSteps.ts';
import { materialsNamed, type Named } from './materialsOf.ts';
import { type Notice, shortCaution } from './notices.ts';
import type { Step } from './step.ts';

/** One pattern's panels as the maker meets them. */
export interface PanelWork {
  readonly input: SheetInput;
  readonly words: Words;
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly hold: HoldPlan | undefined;
  readonly named: Named;
  readonly panels: number;
  readonly points: number;
  /** What the front page says in full: a step says it in short. */
  readonly notices: readonly Notice[];
}

export function panelWork(
  input: SheetInput,
  pattern: PatternPlan,
  panel: PanelPlan,
  words: Words,
  notices: readonly Notice[],
): PanelWork {
  const hold = input.plan.hold.find((one) => one.pattern === pattern.pattern);
  return {
    ...{ input, words, pattern, panel, hold, notices },
    named: materialsNamed(panel.choices, input.catalogue),
    panels: pattern.members.length,
    points: hold?.points.length ?? 0,
  };
}

/** The steps for the panels of one pattern, in the order of work. */
export const panelSteps = (work: PanelWork): readonly Step[] => [
  cutStep(work),
  markStep(work),
  ...(work.points > 0 && work.named.fastener === undefined ? [pocketStep(work)] : []),
  ...(work.points > 0 && !lastly(work) ? [panelHoldStep(work)] : []),
  edgeStep(work),
  ...(work.points > 0 && lastly(work) ? [panelHoldStep(work)] : []),
  ...(work.points > 0 ? glassStep(work) : []),
  checkStep(work),
];

/** Fasteners go through the finished edge, magnets in before it is closed. */
const lastly = ({ named }: PanelWork): boolean => named.fastener !== undefined;

function cutStep({ input, words, pattern, panel, named, panels, notices }: PanelWork): Step {
  const { units } = input.options;
  const pieces = (input.plan.cutting?.pieces ?? []).filter(
    (one) => one.kind === 'panel' && one.pattern === pattern.pattern,
  );
  const turned = pattern.members.filter(({ turnedOver }) => turnedOver).length;
  return {
    title: words.work.cutPanels(panels, pattern.pattern),
    lines: [
      words.work.cloth(
        named.fabric?.name ?? panel.choices.fabric,
        sizeText(panel.cutWidth.value, panel.cutHeight.value, units),
      ),
      ...pieces.map((one) => words.work.piece(one.piece, one.count, laysOf(input.plan, one.piece))),
      ...(turned > 0 && named.fabric?.facesDiffer ? [words.work.turnedOver(turned)] : []),
      words.work.faceUp(),
    ],
    cautions: named.fabric?.heatCut ? shortCaution(notices, 'hotKnife', words) : [],
  };
}

const laysOf = (plan: Plan, piece: string): readonly string[] =>
  (plan.cutting?.lays ?? [])
    .filter(({ placements }) => placements.some((one) => one.piece === piece))
    .map(({ lay }) => lay);

function markStep({ words, points, panel }: PanelWork): Step {
  return {
    title: words.work.mark(points),
    lines: [words.work.markHow(), words.work.markSides(panel.edging.kind === 'binding')],
    cautions: [],
  };
}

function pocketStep({ input, words, hold, panels, points }: PanelWork): Step {
  const { units, language } = input.options;
  const { habits } = input.catalogue;
  const pieces = (hold?.pocketPieces ?? []).map(({ piece }) =>
    words.work.pocketPiece(
      piece,
      (hold?.points ?? []).filter((one) => one.pocketPiece === piece).map(({ number }) => number),
    ),
  );
  return {
    title: words.work.pockets(points * panels, points, panels),
    lines: [
      words.work.pocketPieces(pieces),
      words.work.pocketHow(
        fineLengthText(habits.pocketSeam, units, language),
        fineLengthText(habits.backTack, units, language),
      ),
    ],
    cautions: [],
  };
}

/** Thread, needle and stitch of all that is sewn on a panel. */
export function threadLine(named: Named, panel: PanelPlan, stitch: string, words: Words): string {
  return named.thread === undefined
    ? words.work.thread(panel.choices.thread, '', stitch)
    : words.work.thread(named.thread.name, named.thread.needle, stitch);
}

function edgeStep({ input, words, panel, named, panels, notices }: PanelWork): Step {
  const { units, language } = input.options;
  const { habits } = input.catalogue;
  const { edging } = panel;
  if (edging.kind === 'binding')
    return {
      title: words.work.bind(panels, named.binding?.name ?? edging.binding),
      lines: [
        words.work.bindingCut(lengthText(edging.cutLength.value, units), panels),
        words.work.bindingStart(words.edge(edging.startsAt.edge), lengthText(edging.overlap, units)),
        words.work.bindingSeam(
          fineLengthText(panel.bandWidth, units, language),
          fineLengthText(habits.stitchInset, units, language),
        ),
      ],
      cautions: [],
    };
  if (edging.kind === 'hem')
    return {
      title: words.work.hem(panels, lengthText(edging.width, units)),
      lines: [
        words.work.hemHow(
          lengthText(edging.run.value, units),
          fineLengthText(habits.stitchInset, units, language),
        ),
      ],
      cautions: [],
    };
  return {
    title: words.work.hotCut(panels),
    lines: [words.work.hotCutHow(lengthText(edging.run.value, units))],
    cautions: shortCaution(notices, 'hotKnife', words),
  };
}

function checkStep({ words }: PanelWork): Step {
  return { title: words.work.check(), lines: [words.work.checkLabel()], cautions: [] };
}
