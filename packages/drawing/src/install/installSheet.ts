import type {
  HoldOpening,
  HoldPlan,
  Opening,
  OpeningPlan,
  OpeningShape,
  PanelPlan,
  PatternMember,
  PatternPlan,
} from '@panewright/design';
import { type Outline, point } from '@panewright/geometry';
import {
  type Block,
  beside,
  caution,
  heading,
  innerWidth,
  onOnePage,
  type PageFrame,
  paginate,
  paragraph,
  picture,
  space,
  stack,
} from '../block.ts';
import { sizeText } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { readingFrame } from '../pageFrame.ts';
import { panelPicture } from '../panel/panelPicture.ts';
import { shiftItems } from '../path.ts';
import type { Sheet } from '../sheet.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { cautionText } from '../work/cautionText.ts';
import { findingBlocks, noticeBlocks } from '../work/notices.ts';
import { stepBlocks } from '../work/step.ts';

import { DIMENSION_ROOM, dimensionLines } from './dimensionLines.ts';
import { fittingSteps } from './fittingSteps.ts';
import { edgesMeasured, holdTable, measuredFrom } from './holdTable.ts';

/** One opening with the panel that goes on it. */
interface Fitting {
  readonly opening: OpeningPlan;
  readonly own: Opening | undefined;
  readonly shape: OpeningShape;
  readonly pattern: PatternPlan;
  readonly member: PatternMember;
  readonly panel: PanelPlan;
  readonly hold: HoldPlan | undefined;
}

/** How the set is fitted: the order of work, then each opening from outside and from inside with its hold points. */
export function installSheet(input: SheetInput): Sheet {
  const words = wordsOf(input.options);
  const title = words.install.title();
  const frame = readingFrame(input, title);
  const blocks = [
    ...front(input, frame, words),
    ...fittings(input).flatMap((one) => openingBlocks(one, input, frame, words)),
  ];
  return {
    path: 'install-sheet',
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: paginate(blocks, frame),
  };
}

function fittings({ plan, job }: SheetInput): readonly Fitting[] {
  return plan.openings.flatMap((opening): Fitting[] => {
    const pattern = plan.patterns.find(({ members }) =>
      members.some((one) => one.opening === opening.opening),
    );
    const member = pattern?.members.find((one) => one.opening === opening.opening);
    const panel = plan.panels.find((one) => one.pattern === pattern?.pattern);
    if (!pattern || !member || !panel || !opening.shape) return [];
    const hold = plan.hold.find((one) => one.pattern === pattern.pattern);
    const own = job.openings.find(({ id }) => id === opening.opening);
    return [{ opening, own, shape: opening.shape, pattern, member, panel, hold }];
  });
}

/** Caution of the plan that a fitter reads besides the sheet's own. */
const ALSO_SAID = 'HOLD_IS_ESTIMATE';

function front(input: SheetInput, frame: PageFrame, words: Words): readonly Block[] {
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const exits = input.plan.openings.filter(({ exit }) => exit).map(({ name }) => name);
  const driving = input.plan.openings.filter(({ driving: seen }) => seen).map(({ name }) => name);
  const without = input.plan.openings
    .filter(({ opening }) => !fittings(input).some((one) => one.opening.opening === opening))
    .map(({ name }) => name);
  const boat =
    input.job.site.kind === 'boat' &&
    input.plan.hold.some(({ openings }) => openings.some(({ by }) => by !== 'fastener'));
  const cautions = [
    ...(exits.length > 0 ? [words.caution.exits(exits)] : []),
    ...(input.job.site.kind === 'camper' ? [words.caution.driving(driving)] : []),
    words.caution.heatInside(),
    ...(boat ? [cautionText(input, 'MAGNETS_COMPASS', words.caution.compass())] : []),
    ...input.plan.findings
      .filter(({ code }) => code === ALSO_SAID)
      .map((finding) => input.options.say(finding, input.options.language)),
  ];
  const notices = cautions.map((words, index) => ({ kind: 'caution' as const, number: index + 1, words }));
  const name = stack([
    ...paragraph(words.install.title(), width, metrics, {
      ...{ capital: CAPITAL.small, face: 'bold', colour: INK.accent },
    }),
    ...paragraph(input.job.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    space(2),
  ]);
  return onOnePage(
    (capital) => [
      name,
      ...noticeBlocks(notices, width, metrics, words, Math.min(capital, CAPITAL.small)),
      space(3),
      ...(without.length === 0
        ? []
        : [...paragraph(words.install.without(without), width, metrics, { capital }), space(2)]),
      ...fittingSteps(input, words).flatMap((step) => stepBlocks(step, width, metrics, words, capital)),
    ],
    frame,
    SIZES,
  );
}

/** Capitals of the steps, mm: as large as leaves them on one page. */
const SIZES = [CAPITAL.body, 3, 2.8, 2.6, 2.5, 2.4, 2.3] as const;

function openingBlocks(one: Fitting, input: SheetInput, frame: PageFrame, words: Words): Block[] {
  const { metrics, units } = input.options;
  const width = innerWidth(frame);
  const { opening, shape, pattern, member } = one;
  const size = sizeText(shape.width.value, shape.height.value, units);
  const found = input.plan.findings.filter(
    ({ severity, where }) =>
      (severity === 'stop' || severity === 'doubt') && where.opening === opening.opening,
  );
  return [
    { ...space(0), space: false, startsPage: true },
    ...paragraph(opening.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...(opening.place === '' ? [] : paragraph(opening.place, width, metrics, { colour: INK.soft })),
    ...paragraph(words.install.panel(pattern.pattern, member.turnedOver, size), width, metrics),
    space(2),
    ...(opening.exit ? [caution(words.caution.exitHere(), width, metrics, words.caution.exitTitle())] : []),
    ...(opening.driving ? [caution(words.caution.drivingHere(), width, metrics, words.page.caution())] : []),
    ...findingBlocks(found, width, input, words),
    views(one, input, width, words),
    ...holdTable(one, input, width, words),
  ];
}

/** The opening seen from outside and from inside, side by side. */
function views(one: Fitting, input: SheetInput, width: number, words: Words): Block {
  const { metrics, units } = input.options;
  const gap = 14;
  const each = (width - gap) / 2;
  const own = one.hold?.openings.find(({ opening }) => opening === one.opening.opening);
  const view = (side: 'outside' | 'inside') => {
    const faces = marksOf(own, side, words);
    const from = measuredFrom(one.shape, side);
    const room = (one.hold?.points.length ?? 0) > 0 ? DIMENSION_ROOM[units] : { side: 0, below: 0 };
    const drawn = panelPicture(one.panel, one.hold, metrics, {
      ...{
        width: each - room.side,
        height: 84 - room.below,
        place: one.member.place,
        mirrored: side === 'inside',
      },
      opening: one.shape.outline,
      label: (number) => [number, ...faces.letter(number)].join(' '),
      lines: (at) => dimensionLines(one, from, at, input).extensions,
      obstacles: (one.own?.obstructions ?? []).map(box),
    });
    const head = side === 'outside' ? words.install.fromOutside() : words.install.fromInside();
    const dimensions = dimensionLines(one, from, drawn.at, input);
    const whole = [...drawn.items, ...edgesMeasured(drawn.at, from), ...dimensions.items];
    const height = room.below + Math.max(drawn.height, dimensions.top);
    const shifted = shiftItems(whole, from.hand === 'left' ? room.side : 0, room.below);
    const note = paragraph(faces.note, each, metrics, { capital: CAPITAL.small, colour: INK.soft });
    return stack([
      heading(head, each, metrics),
      picture(shifted, height),
      space(room.below > 0 ? 1 : 4),
      ...note,
    ]);
  };
  return beside([
    { at: 0, block: view('outside') },
    { at: each + gap, block: view('inside') },
  ]);
}

/** The letter at each point of a view, and what it means there. */
function marksOf(own: HoldOpening | undefined, side: 'outside' | 'inside', words: Words) {
  const none = { letter: (_point: number): readonly string[] => [] };
  const { install } = words;
  if (own === undefined) return { ...none, note: '' };
  if (own.by === 'fastener') return { ...none, note: install.fastenerNote() };
  const pole = side === 'outside' ? own.poles.panelOut : own.poles.insideOut;
  if (own.by === 'steel' && side === 'inside') return { ...none, note: install.steelNote() };
  const faces = side === 'outside' ? own.marking?.outside : own.marking?.inside;
  const keyed = faces?.some((face) => face.pole !== pole) ?? false;
  if (!faces || !keyed)
    return { letter: () => [install.pole(pole)], note: install.poleNote(install.pole(pole), pole, side) };
  const dot = faces.find((face) => face.dot)?.pole ?? 'north';
  const letters = [install.pole(dot), install.pole(dot === 'north' ? 'south' : 'north')] as const;
  const note = `${install.markNote(...letters, side)}${side === 'outside' ? ` ${install.keyedOnly()}` : ''}`;
  return {
    letter: (point: number) =>
      faces.filter((face) => face.point === point).map((face) => install.pole(face.pole)),
    note,
  };
}

function box({ x, y, width, height }: Opening['obstructions'][number]): Outline {
  const corners = [point(x + width, y), point(x + width, y + height), point(x, y + height), point(x, y)];
  const [first, ...rest] = corners.map((to) => ({ kind: 'line', to }) as const);
  return { segments: [first!, ...rest] };
}
