import {
  type Block,
  beside,
  innerWidth,
  onOnePage,
  type PageFrame,
  paragraph,
  picture,
  space,
  stack,
} from '../block.ts';
import { fineLengthText, massText, sizeText } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import { panelPicture } from '../panel/panelPicture.ts';
import { grainWords, servedNames } from '../pattern/patternSubject.ts';
import { CLOSE } from '../text.ts';
import { explodedView } from './explodedView.ts';
import { formStep } from './formStep.ts';
import { isAbout, isGrave, oneNotice } from './notices.ts';
import { type PanelWork, panelSteps, threadLine } from './panelSteps.ts';
import { qualityChecks } from './qualityChecks.ts';

/** All that is to be done for the panels of one pattern: on one page, where the steps let it. */
export function panelPage(work: PanelWork, frame: PageFrame): readonly Block[] {
  const { input, words } = work;
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const above = [title(work, width), drawings(work, width), space(2)];
  const below = qualityChecks(work, width);
  return [
    { ...space(0), space: false, startsPage: true },
    ...onOnePage(
      (capital) => [
        ...above,
        ...sewing(work, width, capital),
        ...noticed(work, width, capital),
        ...exitNotice(work, width, capital),
        space(1.6),
        ...panelSteps(work).flatMap((step) => formStep(step, width, metrics, words, capital)),
        ...below,
      ],
      frame,
    ),
  ];
}

/** Which panels, and beside it the figures of one. */
function title(work: PanelWork, width: number): Block {
  const { input, words, pattern } = work;
  const { metrics } = input.options;
  const left = width * 0.36;
  const names = servedNames(pattern, input.plan.openings, words).join('; ');
  return beside([
    {
      at: 0,
      block: stack([
        ...paragraph(words.work.section(pattern.pattern, pattern.members.length), left, metrics, {
          ...{ capital: CAPITAL.heading, face: 'bold' },
        }),
        ...paragraph(names, left, metrics, { capital: CAPITAL.small, colour: INK.soft, lead: CLOSE }),
      ]),
    },
    { at: left + 4, block: facts(work, width - left - 4) },
  ]);
}

/** Two rows of three figures, each under its name. */
function facts(work: PanelWork, width: number): Block {
  const { input, words, panel, named, points } = work;
  const { metrics, units, language } = input.options;
  const each = width / 3;
  const fact = (name: string, value: string): Block =>
    stack([
      ...paragraph(name, each - 3, metrics, { capital: CAPITAL.least, colour: INK.soft, lead: CLOSE }),
      ...paragraph(value, each - 3, metrics, { capital: CAPITAL.small, lead: CLOSE }),
      space(1),
    ]);
  const row = (facts: readonly Block[]) => beside(facts.map((block, index) => ({ at: index * each, block })));
  return stack([
    row([
      fact(words.work.finished(), sizeText(panel.finishedWidth.value, panel.finishedHeight.value, units)),
      fact(words.work.cut(), sizeText(panel.cutWidth.value, panel.cutHeight.value, units)),
      fact(words.work.grain(), grainWords(panel, words)),
    ]),
    row([
      fact(words.work.clothName(), named.fabric?.name ?? panel.choices.fabric),
      fact(words.work.holdPoints(), String(points)),
      fact(words.work.mass(), massText(panel.mass, units, language)),
    ]),
  ]);
}

/** The layers on the left, the panel from outside on the right. */
function drawings(work: PanelWork, width: number): Block {
  const { input, words, panel, hold } = work;
  const { metrics } = input.options;
  const left = width * 0.68;
  const room = width - left - 4;
  const drawn = panelPicture(panel, hold, metrics, {
    ...{ width: room, height: 36, label: (number: number) => String(number) },
  });
  const note = paragraph(words.work.pictureNote(), room, metrics, {
    ...{ capital: CAPITAL.least, colour: INK.soft, lead: CLOSE },
  });
  return beside([
    { at: 0, block: explodedView(work, left) },
    { at: left + 4, block: stack([space(2), picture(drawn.items, drawn.height), space(1), ...note]) },
  ]);
}

/** Thread, needle and stitch, where anything is sewn. */
function sewing(
  { input, words, panel, named, points }: PanelWork,
  width: number,
  capital: number,
): readonly Block[] {
  const { metrics, units, language } = input.options;
  if (panel.stitch.length === 0 && (points === 0 || named.fastener !== undefined)) return [];
  const stitch = fineLengthText(input.catalogue.habits.stitchLength, units, language);
  return paragraph(threadLine(named, panel, stitch, words), width, metrics, { capital, lead: CLOSE });
}

/** What is said of this panel on the front page, by its number there. */
function noticed(
  { input, words, pattern, notices }: PanelWork,
  width: number,
  capital: number,
): readonly Block[] {
  const about = notices.filter((one) => one.finding && isGrave(one) && isAbout(one.finding, pattern));
  return (['stop', 'doubt'] as const).flatMap((kind) => {
    const numbers = about.flatMap((one) => (one.kind === kind ? [one.number] : []));
    if (numbers.length === 0) return [];
    const word = `${kind === 'stop' ? words.page.stop() : words.page.doubt()} · ${words.work.onFront(numbers)}`;
    return [space(1.4), ...oneNotice(word, '', width, input.options.metrics, capital)];
  });
}

/** The maker of a panel for an exit knows it: a pull tab or a lighter hold may be wanted. */
function exitNotice({ input, words, pattern }: PanelWork, width: number, capital: number): readonly Block[] {
  const exits = input.plan.openings.filter(
    ({ opening, exit }) => exit && pattern.members.some((member) => member.opening === opening),
  );
  if (exits.length === 0) return [];
  const sentence = words.caution.exitPanel(exits.map(({ name }) => name));
  return [
    space(1.4),
    ...oneNotice(words.caution.exitTitle(), sentence, width, input.options.metrics, capital),
  ];
}
