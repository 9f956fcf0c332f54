import type { Finding, PatternPlan } from '@panewright/design';
import { type Block, caution, paragraph, stack } from '../block.ts';
import { INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { rectangle } from '../path.ts';
import type { FontMetrics } from '../sheet.ts';
import { CLOSE } from '../text.ts';
import type { Words } from '../words.ts';
import { cautionText } from './cautionText.ts';

/** What the front page says once and in full, by the number it has there: steps and panels refer to it. */
export interface Notice {
  readonly number: number;
  readonly kind: 'stop' | 'doubt' | 'caution';
  readonly words: string;
  readonly finding?: Finding;
  readonly about?: 'hotKnife' | 'magnets';
}

/** Findings that ask for a decision, then what can hurt someone at the work of this job. */
export function noticesOf(input: SheetInput, words: Words): readonly Notice[] {
  const { findings } = input.plan;
  const said = (kind: 'stop' | 'doubt') =>
    findings
      .filter(({ severity }) => severity === kind)
      .map((finding) => ({ kind, finding, words: input.options.say(finding, input.options.language) }));
  const cautions = [
    ...(usesHotKnife(input)
      ? [{ kind: 'caution', about: 'hotKnife', words: words.caution.hotKnife() } as const]
      : []),
    ...(usesMagnets(input)
      ? [{ kind: 'caution', about: 'magnets', words: magnetWords(input, words) } as const]
      : []),
  ];
  return [...said('stop'), ...said('doubt'), ...cautions].map((one, index) => ({
    ...one,
    number: index + 1,
  }));
}

const magnetWords = (input: SheetInput, words: Words): string =>
  [
    cautionText(input, 'MAGNETS_PINCH', words.caution.magnetsPinch()),
    words.caution.magnetsSwallow(),
    cautionText(input, 'MAGNETS_IMPLANTS', words.caution.magnetsImplants()),
  ].join('\n');

const usesMagnets = ({ plan }: SheetInput): boolean =>
  plan.hold.some(({ openings }) => openings.some(({ by }) => by !== 'fastener'));

/** Cloth of the job may be cut hot, or an edge of it is sealed so. */
const usesHotKnife = ({ plan, catalogue }: SheetInput): boolean =>
  plan.panels.some(
    ({ choices, edging }) =>
      edging.kind === 'hotCut' ||
      catalogue.fabrics.some(({ id, heatCut }) => heatCut && id === choices.fabric),
  );

export const isGrave = ({ kind }: Notice): boolean => kind !== 'caution';

export const isAbout = ({ where }: Finding, pattern: PatternPlan): boolean =>
  where.pattern === pattern.pattern || pattern.members.some(({ opening }) => opening === where.opening);

/** What a step says of a caution that the front page has in full. */
export function shortCaution(
  notices: readonly Notice[],
  about: Notice['about'],
  words: Words,
): readonly string[] {
  const notice = notices.find((one) => one.about === about);
  if (notice === undefined) return [];
  const short = about === 'magnets' ? words.caution.magnetsShort() : words.caution.hotKnifeShort();
  return [`${short} ${words.work.onFront([notice.number])}`];
}

const titleOf = (kind: Notice['kind'], words: Words): string =>
  ({ stop: words.page.stop, doubt: words.page.doubt, caution: words.page.caution })[kind]();

/** Notices of one kind after another, each kind under its own word, numbered. */
export function noticeBlocks(
  notices: readonly Notice[],
  width: number,
  metrics: FontMetrics,
  words: Words,
  capital: number,
): readonly Block[] {
  return notices.flatMap((one, index) => {
    const first = notices[index - 1]?.kind !== one.kind;
    const last = notices[index + 1]?.kind !== one.kind;
    return washed(one.words, width, metrics, {
      ...{ capital, last, number: one.number },
      ...(first ? { word: titleOf(one.kind, words) } : {}),
    });
  });
}

const [BAR, PADDING, NUMBER] = [1.6, 2, 6];

interface WashLook {
  readonly capital: number;
  readonly word?: string;
  readonly number?: number;
  /** The last under its word. */
  readonly last: boolean;
}

/** A notice by itself under its word. */
export const oneNotice = (
  word: string,
  words: string,
  width: number,
  metrics: FontMetrics,
  capital: number,
): readonly Block[] => washed(words, width, metrics, { word, capital, last: true });

/** A bar and a wash behind, so that it shows in one colour too; a page may end between its lines. */
function washed(words: string, width: number, metrics: FontMetrics, look: WashLook): readonly Block[] {
  const { capital, word, number, last } = look;
  const inner = width - BAR - 2 * PADDING;
  const indent = number === undefined ? 0 : NUMBER;
  const close = { capital, lead: CLOSE };
  const bold = (text: string, room: number) =>
    stack(paragraph(text, room, metrics, { ...close, face: 'bold', colour: INK.warning }));
  const rows = [
    ...(word === undefined ? [] : [bold(word, inner)]),
    ...(words === '' ? [] : paragraph(words, inner - indent, metrics, close)).map((line, index): Block => {
      const count = index === 0 && number !== undefined ? bold(String(number), NUMBER) : undefined;
      return {
        height: line.height,
        draw: (x, top) => [...(count?.draw(x, top) ?? []), ...line.draw(x + indent, top)],
      };
    }),
  ];
  return rows.map((row, index) => {
    const above = word !== undefined && index === 0 ? PADDING * 0.7 : 0;
    const below = index < rows.length - 1 ? 0 : last ? PADDING * 0.7 : 0.6;
    return wash(row, width, above, below, index < rows.length - 1);
  });
}

function wash(row: Block, width: number, above: number, below: number, keepWithNext: boolean): Block {
  const height = row.height + above + below;
  return {
    ...{ height, keepWithNext },
    draw: (x, top) => [
      rectangle({ x, y: top - height, width, height }, { fill: INK.warningWash }),
      rectangle({ x, y: top - height, width: BAR, height }, { fill: INK.warning }),
      ...row.draw(x + BAR + PADDING, top - above),
    ],
  };
}

/** Findings in the contract's words, the gravest first. */
export function findingBlocks(
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
