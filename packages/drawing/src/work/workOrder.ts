import type { Finding, HoldOpening, PanelPlan, PatternPlan } from '@panewright/design';
import {
  type Block,
  beside,
  caution,
  heading,
  innerWidth,
  type PageFrame,
  paginate,
  paragraph,
  picture,
  rule,
  space,
  stack,
} from '../block.ts';
import { figureText, lengthText, massText, minutesText, sizeText, stockText } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { readingFrame } from '../pageFrame.ts';
import { panelPicture } from '../panel/panelPicture.ts';
import { grainWords, servedNames } from '../pattern/patternSubject.ts';
import type { Sheet } from '../sheet.ts';
import { tableRows } from '../table.ts';
import type { Words } from '../words.ts';
import { type Language, wordsOf } from '../wordsOf.ts';
import { cautionText } from './cautionText.ts';
import { explodedView } from './explodedView.ts';
import { type PanelWork, panelSteps, panelWork } from './panelSteps.ts';
import { qualityChecks } from './qualityChecks.ts';
import { type Step, stepBlocks } from './step.ts';

/** What is to be done, in the order of work: a front page for the job and a section for the panels of each pattern. */
export function workOrder(input: SheetInput): Sheet {
  const words = wordsOf(input.options);
  const title = words.work.title();
  const frame = readingFrame(input, title);
  const made = input.plan.patterns.flatMap((pattern) => {
    const panel = input.plan.panels.find((one) => one.pattern === pattern.pattern);
    return panel === undefined ? [] : [{ pattern, panel }];
  });
  const blocks = [
    ...front(input, frame, words),
    ...made.flatMap(({ pattern, panel }) => section(input, frame, pattern, panel, words)),
  ];
  return {
    path: 'work-order',
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: paginate(blocks, frame),
  };
}

function front(input: SheetInput, frame: PageFrame, words: Words): Block[] {
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const { job, plan } = input;
  const site = [job.site.name, words.site(job.site.kind)].filter((one) => one !== '').join(' · ');
  const soft = { capital: CAPITAL.body, colour: INK.soft };
  return [
    ...paragraph(words.work.title(), width, metrics, {
      capital: CAPITAL.small,
      face: 'bold',
      colour: INK.accent,
    }),
    ...paragraph(job.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...(site === '' ? [] : paragraph(site, width, metrics, soft)),
    ...(job.customer.name === ''
      ? []
      : paragraph(words.work.customer(job.customer.name), width, metrics, soft)),
    space(2),
    ...notices(plan.findings.filter(isGrave), width, input, words),
    ...numbers(input, width, words),
    ...(job.notes.trim() === ''
      ? []
      : [
          space(4),
          heading(words.work.notes(), width, metrics),
          ...paragraph(job.notes.trim(), width, metrics),
        ]),
    space(4),
    heading(words.work.wholeJob(), width, metrics),
    ...jobSteps(input, words).flatMap((step) => stepBlocks(step, width, metrics, words)),
    ...times(input, width, words),
  ];
}

const isGrave = ({ severity }: Finding): boolean => severity === 'stop' || severity === 'doubt';

/** Findings in the contract's words, the gravest first. */
export function notices(
  findings: readonly Finding[],
  width: number,
  input: SheetInput,
  words: Words,
): Block[] {
  const { metrics, say, language } = input.options;
  const grade = { stop: 0, doubt: 1, caution: 2, note: 3 } as const;
  const title = (finding: Finding) =>
    finding.severity === 'stop'
      ? words.page.stop()
      : finding.severity === 'doubt'
        ? words.page.doubt()
        : words.page.caution();
  return findings
    .toSorted((a, b) => grade[a.severity] - grade[b.severity])
    .map((finding) => caution(say(finding, language), width, metrics, title(finding)));
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
  ];
  const columns = [
    { title: words.work.job(), width: width * 0.3 },
    { title: '', width: width * 0.7 },
  ];
  return tableRows(columns, rows, metrics, { capital: CAPITAL.body });
}

const hasMagnets = ({ by }: HoldOpening): boolean => by !== 'fastener';

/** Steps done once, before and after the panels. */
function jobSteps(input: SheetInput, words: Words): readonly Step[] {
  const { plan, catalogue } = input;
  const patterns = plan.patterns.map(({ pattern }) => pattern);
  const strips = (plan.cutting?.strips ?? []).filter(({ kind }) => kind === 'binding');
  const heat = catalogue.fabrics.some(
    ({ id, heatCut }) => heatCut && plan.panels.some(({ choices }) => choices.fabric === id),
  );
  return [
    { title: words.work.printPatterns(patterns.length), lines: [words.work.printHow()], cautions: [] },
    {
      title: words.work.layCloth(plan.cutting?.lays.length ?? 0),
      lines: [words.work.layHow()],
      cautions: heat ? [words.caution.hotKnife()] : [],
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
            cautions: [cautionText(input, 'MAGNETS_PINCH', words.caution.magnetsPinch())],
          },
        ]
      : []),
    { title: words.work.makePanels(plan.panels.length), lines: [words.work.makeHow()], cautions: [] },
    { title: words.work.fit(), lines: [words.work.fitHow()], cautions: [] },
  ];
}

function times(input: SheetInput, width: number, words: Words): readonly Block[] {
  const { takeOff } = input.plan;
  if (takeOff === null || takeOff.labour.length === 0) return [];
  const { metrics } = input.options;
  const columns = [
    { title: words.work.operation(), width: width * 0.5 },
    { title: words.work.times(), width: width * 0.14, align: 'end' as const },
    { title: words.work.estimated(), width: width * 0.18, align: 'end' as const },
    { title: words.work.used(), width: width * 0.18, align: 'end' as const },
  ];
  const rows = takeOff.labour.map((one) => [
    one.name,
    quantity(one.times, input.options.language),
    minutesText(one.minutes.value),
    '',
  ]);
  const [head, ...rest] = tableRows(columns, rows, metrics);
  return [
    space(4),
    { ...heading(words.work.minutesHeading(), width, metrics), keepWithNext: true },
    head!,
    ...rest,
  ];
}

/** A count as it is, a length in metres with one decimal. */
const quantity = (value: number, language: Language | undefined): string =>
  Number.isInteger(value) ? String(value) : figureText(value.toFixed(1), language);

function section(
  input: SheetInput,
  frame: PageFrame,
  pattern: PatternPlan,
  panel: PanelPlan,
  words: Words,
): Block[] {
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const work = panelWork(input, pattern, panel, words);
  const found = input.plan.findings.filter((one) => isGrave(one) && isAbout(one, pattern));
  const names = servedNames(pattern, input.plan.openings, words);
  return [
    { ...space(0), space: false, startsPage: true },
    ...paragraph(words.work.section(pattern.pattern, pattern.members.length), width, metrics, {
      ...{ capital: CAPITAL.title, face: 'bold' },
    }),
    ...paragraph(names.join('; '), width, metrics, { capital: CAPITAL.body, colour: INK.soft }),
    space(3),
    overview(work, width),
    space(3),
    explodedView(work, width),
    space(3),
    ...notices(found, width, input, words),
    ...exitNotice(input, pattern, width, words),
    rule(width),
    ...panelSteps(work).flatMap((step) => stepBlocks(step, width, metrics, words)),
    ...qualityChecks(work, width),
  ];
}

/** The maker of a panel for an exit knows it: a pull tab or a lighter hold may be wanted. */
function exitNotice(input: SheetInput, pattern: PatternPlan, width: number, words: Words): Block[] {
  const exits = input.plan.openings.filter(
    ({ opening, exit }) => exit && pattern.members.some((member) => member.opening === opening),
  );
  if (exits.length === 0) return [];
  const sentence = words.caution.exitPanel(exits.map(({ name }) => name));
  return [caution(sentence, width, input.options.metrics, words.caution.exitTitle())];
}

export const isAbout = (finding: Finding, pattern: PatternPlan): boolean =>
  finding.where.pattern === pattern.pattern ||
  pattern.members.some(({ opening }) => opening === finding.where.opening);

/** Figures on the left, the panel from outside on the right. */
function overview(work: PanelWork, width: number): Block {
  const { input, words, panel, hold, named, points } = work;
  const { metrics, units, language } = input.options;
  const left = width * 0.5;
  const rows = [
    [words.work.finished(), sizeText(panel.finishedWidth.value, panel.finishedHeight.value, units)],
    [words.work.cut(), sizeText(panel.cutWidth.value, panel.cutHeight.value, units)],
    [words.work.clothName(), named.fabric?.name ?? panel.choices.fabric],
    [words.work.grain(), grainWords(panel, words)],
    [words.work.holdPoints(), String(points)],
    [words.work.mass(), massText(panel.mass, units, language)],
  ] as const;
  const facts = tableRows(
    [
      { title: words.work.onePanel(), width: left * 0.36 },
      { title: '', width: left * 0.64 },
    ],
    rows,
    metrics,
  );
  const drawn = panelPicture(panel, hold, metrics, {
    ...{ width: width - left - 10, height: 62, label: (number: number) => String(number) },
  });
  const note = paragraph(words.work.pictureNote(), width - left - 10, metrics, {
    ...{ capital: CAPITAL.small, colour: INK.soft },
  });
  return beside([
    { at: 0, block: stack(facts) },
    { at: left + 10, block: stack([picture(drawn.items, drawn.height), space(1), ...note]) },
  ]);
}
