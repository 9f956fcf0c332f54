import {
  type Catalogue,
  type ChoiceReason,
  type Choices,
  choiceInputOf,
  choosing,
  defaultCatalogue,
  defaultFasteners,
  job,
  type MagnetChoice,
  magnet,
  type SteelStrip,
  type ThickGlassAnswer,
  thickGlassAnswers,
  thickGlassInputOf,
} from '@panewright/design';
import { ok } from '@panewright/quantity';
import { z } from 'zod';
import { sayInstead, sayReason } from '../answers/answers.ts';
import { english } from '../answers/english/english.ts';
import { type Language, showOf } from '../answers/show.ts';
import type { ChoiceShow, Messages } from '../answers/words.ts';
import { exampleJob } from '../examples.ts';
import { catalogueOrDefault } from './computations.ts';
import { panelOf } from './holdQuestions.ts';
import { computation } from './operation.ts';

const number = z.number();
const pair = {
  by: z.enum(['magnets', 'steel']).describe('a pair of magnets, or a magnet and a strip'),
  outside: z.string(),
  inside: z.string().describe('magnet or strip behind the glass'),
};
const holds = {
  points: z.int(),
  margin: z.nullable(number).describe('low end; null where nothing is asked'),
};

const choice = z.strictObject({
  ...pair,
  ...holds,
  cost: z.int().describe('of the magnets on one panel as used, minor units'),
  letsGoAt: z.nullable(number).describe('mean wind at which the panel comes off, m/s, low end'),
  pointGivesAt: z
    .nullable(number)
    .describe('mean wind at which its first point may begin to give, m/s, low end'),
  travel: number.describe('least room across the edge in any pocket, mm'),
});

const steel = z.strictObject({ id: z.string(), width: number, thickness: number, pricePerMetre: number });
const instead = z.strictObject({
  code: z.enum([
    'CATALOGUE_PAIR',
    'LARGER_DISCS',
    'BLOCKS',
    'STEEL_ON_FRAME',
    'OTHER_FASTENER',
    'FASTENER_TO_BE_TRIED',
  ]),
  text: z.string(),
  outside: z.exactOptional(z.string()),
  inside: z.exactOptional(z.string()),
  magnet: z.exactOptional(magnet),
  steel: z.exactOptional(steel),
  fastener: z.exactOptional(z.string()),
  pocket: z.exactOptional(number),
  points: z.exactOptional(z.int()),
  margin: z.exactOptional(z.nullable(number)),
  pull: z.exactOptional(number).describe('of one point, N'),
  pullNeeded: z.exactOptional(number),
  touching: z.exactOptional(number),
});

/** Which magnets hold one opening's panel, best first, why the others do not, and what would instead. */
export const magnetChoices = computation({
  summary:
    'Which magnets for one opening: every pair of the catalogue ranked by count, cost and margin, why the rest fail, and what would hold where the chosen pair does not. Estimates.',
  input: z.strictObject({
    job,
    catalogue: catalogueOrDefault,
    opening: z.string().max(60).describe('an opening of the job, by its id'),
  }),
  output: z.strictObject({
    opening: z.string(),
    chosen: z.strictObject({
      by: z.enum(['magnets', 'steel', 'fastener']),
      outside: z.string(),
      inside: z.string(),
    }),
    asked: number,
    wind: number,
    hottest: number,
    gap: z.strictObject({ corner: number, edge: number }),
    choices: z.array(choice),
    rejected: z.array(
      z.strictObject({
        ...pair,
        because: z.array(z.strictObject({ code: z.string(), text: z.string() })),
      }),
    ),
    instead: z.array(instead),
  }),
  documents: { job: 'job', catalogue: 'catalogue' },
  example: { job: exampleJob, opening: 'W1' },
  run: (input, { messages = english }) => {
    const shop = input.catalogue ?? defaultCatalogue;
    const held = panelOf(input.job, shop, input.opening);
    if (!held.ok) return held;
    const { opening, pattern } = held.value;
    const fasteners = shop.fasteners ?? defaultFasteners;
    const strips = (shop.steelStrips ?? []).map(steelItem);
    const owner = pattern.members[0]!.opening;
    const hand = input.job.heldByHand?.find((one) => one.opening === owner)?.placed ?? [];
    const about = { steel: strips, hand, flange: opening.glazing.flange ?? 0 };
    const question = choiceInputOf(held.value, input.job, shop, about);
    const { choices, rejected } = choosing(question);
    const chosen = chosenOf(opening.choices.hold);
    const fails = !choices.some((one) => one.outside === chosen.outside && one.inside === chosen.inside);
    const answers = fails
      ? thickGlassAnswers(thickGlassInputOf(held.value, shop, question, about.flange, fasteners))
      : [];
    const words = wordsOf(input.job, shop, fasteners, messages.language);
    const byOf = (inside: string) =>
      strips.some(({ id }) => id === inside) ? ('steel' as const) : ('magnets' as const);
    return ok({
      opening: input.opening,
      chosen,
      asked: question.asked,
      wind: question.load.wind,
      hottest: opening.choices.weather.hottest,
      gap: { ...question.gap },
      choices: choices.map((one) => ({ by: byOf(one.inside), ...plainChoice(one) })),
      rejected: rejected.map((one) => ({
        by: byOf(one.inside),
        outside: one.outside,
        inside: one.inside,
        because: one.because.map((reason: ChoiceReason) => ({
          code: reason.code,
          text: sayReason(reason, words, messages),
        })),
      })),
      instead: answers.map((answer) => plainAnswer(answer, words, messages)),
    });
  },
});

/** A strip of the catalogue as the laws take it. */
const steelItem = ({ id, width, thickness, pack }: SteelStrip) => ({
  id,
  width,
  thickness,
  pricePerMetre: (1000 * pack.price) / pack.quantity,
});

/** What the job has now: a pair, a magnet and its strip, or a fastener twice. */
function chosenOf({ by, outside, inside }: Choices['hold']) {
  if (by?.kind === 'steel') return { by: by.kind, outside, inside: by.strip };
  if (by?.kind === 'fastener') return { by: by.kind, outside: by.fastener, inside: by.fastener };
  return { by: 'magnets' as const, outside, inside };
}

type Named = { readonly id: string; readonly name: string };

function wordsOf(
  one: Parameters<typeof showOf>[0],
  shop: Catalogue,
  fasteners: readonly Named[],
  language: Language,
): ChoiceShow {
  const names = new Map(
    [...shop.magnets, ...(shop.steelStrips ?? []), ...fasteners].map(({ id, name }) => [id, name]),
  );
  return { show: showOf(one, shop, language), name: (id) => names.get(id) ?? id };
}

const ratio = (margin: number | 'unloaded') => (margin === 'unloaded' ? null : margin);
const speed = (wind: number | 'beyondRange') => (wind === 'beyondRange' ? null : wind);

const plainChoice = (one: MagnetChoice): Omit<z.output<typeof choice>, 'by'> => ({
  outside: one.outside,
  inside: one.inside,
  points: one.points,
  cost: one.cost,
  margin: ratio(one.margin),
  letsGoAt: speed(one.letsGoAt),
  pointGivesAt: speed(one.pointGivesAt),
  travel: one.travel,
});

function plainAnswer(
  answer: ThickGlassAnswer,
  words: ChoiceShow,
  messages: Messages,
): z.output<typeof instead> {
  const { code } = answer;
  const base = { code, text: sayInstead(answer, words, messages) };
  switch (answer.code) {
    case 'CATALOGUE_PAIR': {
      const { outside, inside, points, margin } = answer.choice;
      return { ...base, outside, inside, points, margin: ratio(margin) };
    }
    case 'LARGER_DISCS':
    case 'BLOCKS': {
      const { magnet: one, pocket, touching } = answer;
      const { points, margin } = answer.choice;
      return { ...base, magnet: one, pocket, touching, points, margin: ratio(margin) };
    }
    case 'STEEL_ON_FRAME': {
      const { magnet: outside, steel: strip, points, pull, margin } = answer;
      return { ...base, outside, steel: { ...strip }, points, pull, margin: ratio(margin) };
    }
    case 'OTHER_FASTENER': {
      const { fastener, points, pull, margin } = answer;
      return { ...base, fastener, points, pull, margin: ratio(margin) };
    }
    case 'FASTENER_TO_BE_TRIED':
      return { ...base, fastener: answer.fastener, pullNeeded: answer.pullNeeded };
  }
}
