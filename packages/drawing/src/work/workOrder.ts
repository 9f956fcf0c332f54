import type { HoldOpening } from '@panewright/design';
import {
  type Block,
  beside,
  innerWidth,
  onOnePage,
  type PageFrame,
  paginate,
  paragraph,
  space,
  stack,
} from '../block.ts';
import { lengthText, minutesText, stockText, timesText } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { readingFrame } from '../pageFrame.ts';
import type { Sheet } from '../sheet.ts';
import { tableRows } from '../table.ts';
import { CLOSE } from '../text.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { cuttingRules } from './cuttingRules.ts';
import { formStep } from './formStep.ts';
import { isGrave, type Notice, noticeBlocks, noticesOf, shortCaution } from './notices.ts';
import { panelPage } from './panelPage.ts';
import { panelWork } from './panelSteps.ts';
import { perOf } from './perOf.ts';
import type { Step } from './step.ts';

/** What is to be done, in the order of work: a front page for the job and a page for the panels of each pattern. */
export function workOrder(input: SheetInput): Sheet {
  const words = wordsOf(input.options);
  const title = words.work.title();
  const frame = readingFrame(input, title);
  const notices = noticesOf(input, words);
  const panels = input.plan.patterns.flatMap((pattern) => {
    const panel = input.plan.panels.find((one) => one.pattern === pattern.pattern);
    return panel === undefined ? [] : [panelPage(panelWork(input, pattern, panel, words, notices), frame)];
  });
  return {
    path: 'work-order',
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: paginate([...front(input, frame, words, notices), ...panels.flat()], frame),
  };
}

function front(
  input: SheetInput,
  frame: PageFrame,
  words: Words,
  notices: readonly Notice[],
): readonly Block[] {
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const [name, figures] = [jobName(input, width, words), jobFigures(input, width, words)];
  const notes = shortNotes(input) === undefined ? input.job.notes.trim() : '';
  const title = (text: string) =>
    stack([space(2), ...paragraph(text, width, metrics, { capital: CAPITAL.body, face: 'bold' }), space(1)]);
  return onOnePage(
    (capital, fits) => [
      name,
      ...noticeBlocks(notices.filter(isGrave), width, metrics, words, capital),
      space(2),
      ...figures,
      ...(notes === ''
        ? []
        : [
            { ...title(words.work.notes()), keepWithNext: true },
            ...paragraph(notes, width, metrics, { capital, lead: CLOSE }),
          ]),
      space(3),
      ...noticeBlocks(
        notices.filter((one) => !isGrave(one)),
        width,
        metrics,
        words,
        capital,
      ),
      { ...title(words.work.wholeJob()), keepWithNext: true, startsPage: !fits },
      ...jobSteps(input, words, notices).flatMap((step) => formStep(step, width, metrics, words, capital)),
    ],
    frame,
  );
}

/** Notes of a line or two, which stand among the job's figures. */
function shortNotes({ job }: SheetInput): string | undefined {
  const notes = job.notes.trim();
  return notes.length <= MOST_SHORT && !notes.includes('\n') ? notes : undefined;
}

const MOST_SHORT = 120;

function jobName({ job, options }: SheetInput, width: number, words: Words): Block {
  const { metrics } = options;
  const soft = { capital: CAPITAL.small, colour: INK.soft };
  const site = [job.site.name, words.site(job.site.kind)].filter((one) => one !== '').join(' · ');
  const customer = job.customer.name === '' ? '' : words.work.customer(job.customer.name);
  const line = [site, customer].filter((one) => one !== '').join(' · ');
  return stack([
    ...paragraph(words.work.title(), width, metrics, {
      ...{ capital: CAPITAL.small, face: 'bold', colour: INK.accent },
    }),
    ...paragraph(job.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...(line === '' ? [] : paragraph(line, width, metrics, soft)),
    space(2),
  ]);
}

/** Most operations whose minutes stand beside the job's figures; more have a table of their own. */
const MOST_BESIDE = 14;

/** Width that two tables stand side by side in, mm: large type leaves less. */
const WIDE = 160;

/** The job's figures, and the minutes of each kind of work beside them. */
function jobFigures(input: SheetInput, width: number, words: Words): readonly Block[] {
  const labour = input.plan.takeOff?.labour ?? [];
  if (labour.length === 0) return numbers(input, width, words);
  if (labour.length > MOST_BESIDE || width < WIDE)
    return [...numbers(input, width, words), space(3), ...times(input, width, words)];
  const left = width * 0.38;
  return [
    beside([
      { at: 0, block: stack(numbers(input, left, words)) },
      { at: left + 6, block: stack(times(input, width - left - 6, words)) },
    ]),
  ];
}

function numbers(input: SheetInput, width: number, words: Words): readonly Block[] {
  const { plan, options } = input;
  const { units, language, metrics } = options;
  const panels = plan.patterns.reduce((sum, { members }) => sum + members.length, 0);
  const points = plan.hold.reduce((sum, one) => {
    const pattern = plan.patterns.find(({ pattern: name }) => name === one.pattern);
    return sum + one.points.length * (pattern?.members.length ?? 0);
  }, 0);
  const rows: (readonly [string, string])[] = [
    [words.work.panels(), words.work.panelsOf(panels, plan.patterns.length)],
    [words.work.holdPoints(), String(points)],
    ...(plan.cutting?.lays ?? []).map((lay): readonly [string, string] => {
      const cloth = input.catalogue.fabrics.find(({ id }) => id === lay.fabric)?.name ?? lay.fabric;
      return [
        words.work.layName(lay.lay),
        lay.offcut
          ? words.work.layOffcut(cloth, lay.offcut.name, lay.offcut.place)
          : words.work.layFigures(
              cloth,
              lengthText(lay.rollWidth, units),
              stockText(lay.length.value, units, language),
            ),
      ];
    }),
    ...(plan.takeOff === null
      ? []
      : [[words.work.estimate(), minutesText(plan.takeOff.minutes.value)] as const]),
    ...(shortNotes(input) ? [[words.work.notes(), shortNotes(input)!] as const] : []),
  ];
  const columns = [
    { title: words.work.job(), width: width * 0.4 },
    { title: '', width: width * 0.6 },
  ];
  return tableRows(columns, rows, metrics, { close: true, capital: CAPITAL.least });
}

const hasMagnets = ({ by }: HoldOpening): boolean => by !== 'fastener';

/** Steps done once, before and after the panels. */
function jobSteps(input: SheetInput, words: Words, notices: readonly Notice[]): readonly Step[] {
  const { plan, catalogue } = input;
  const patterns = plan.patterns.map(({ pattern }) => pattern);
  const strips = (plan.cutting?.strips ?? []).filter(({ kind }) => kind === 'binding');
  const heat = catalogue.fabrics.some(
    ({ id, heatCut }) => heatCut && plan.panels.some(({ choices }) => choices.fabric === id),
  );
  const { together, oneWay } = cuttingRules(input);
  const rules = [
    ...(together ? [words.work.keptTogether(together)] : []),
    ...(oneWay ? [words.work.oneWay()] : []),
  ];
  return [
    { title: words.work.printPatterns(patterns.length), lines: [words.work.printHow()], cautions: [] },
    {
      title: words.work.layCloth(plan.cutting?.lays.length ?? 0),
      lines: [words.work.layHow(), ...rules],
      cautions: heat ? shortCaution(notices, 'hotKnife', words) : [],
    },
    ...(strips.length > 0
      ? [
          {
            title: words.work.cutBinding(
              strips.reduce((sum, one) => sum + one.stocks.flatMap(({ cuts }) => cuts).length, 0),
            ),
            lines: [words.work.cutBindingHow()],
            cautions: [],
          },
        ]
      : []),
    ...(plan.hold.some(({ openings, poles }) => poles === 'uniform' && openings.some(hasMagnets))
      ? [
          {
            title: words.work.markTest(),
            lines: [words.work.markTestHow()],
            cautions: shortCaution(notices, 'magnets', words),
          },
        ]
      : []),
    { title: words.work.makePanels(plan.panels.length), lines: [words.work.makeHow()], cautions: [] },
    {
      title: words.work.fit(),
      lines: [words.work.fitHow()],
      cautions: shortCaution(notices, 'magnets', words),
    },
  ];
}

function times(input: SheetInput, width: number, words: Words): readonly Block[] {
  const { metrics, units, language } = input.options;
  const columns = [
    { title: words.work.operation(), width: width * 0.49 },
    { title: words.work.times(), width: width * 0.16, align: 'end' as const },
    { title: words.work.estimated(), width: width * 0.19, align: 'end' as const },
    { title: words.work.used(), width: width * 0.16, align: 'end' as const },
  ];
  const rows = (input.plan.takeOff?.labour ?? []).map((one) => [
    one.name,
    timesText(one.times, perOf(input, one.operation), units, language),
    minutesText(one.minutes.value),
    '',
  ]);
  return tableRows(columns, rows, metrics, { close: true, capital: CAPITAL.least });
}
