import type { Show } from '../show.ts';
import type { ChoiceWords } from '../words.ts';

const PULLS: Readonly<Record<string, string>> = {
  STEEL_SATURATES: 'the strip is too thin for this magnet: it is full of its field',
  GAP_TOO_SMALL: 'the gap is closer than the formula is good for',
};

/** Why a pair was turned down. */
const reasons: ChoiceWords['reasons'] = {
  POCKET_TOO_SMALL_FOR_MAGNET: ({ room, need }, { show }) =>
    `The pocket leaves ${show.fine(room)} for a magnet that needs ${show.fine(need)}: it takes a larger patch.`,
  GLASS_TOO_SMALL_FOR_MAGNET: ({ inset }, { show }) =>
    `Inside there is no place for it: ${show.fine(inset)} of glass along the edge is kept for tape and flange.`,
  MAGNETS_CANNOT_MEET: ({ apart }, { show }) =>
    `The two cannot stand opposite one another: they miss by ${show.fine(apart)}. A larger patch or a smaller magnet would do.`,
  GRADE_UNKNOWN: ({ grade }) => `The grade “${grade}” is not known.`,
  PULL_REFUSED: ({ gap, refusal }, { show }) =>
    `The pull across ${show.fine(gap)} cannot be worked out${PULLS[refusal] ? `: ${PULLS[refusal]}` : ''}.`,
  TOO_HOT_FOR_MAGNET: ({ magnet, limit, hottest }, { name, show }) =>
    `${name(magnet)} weakens for good above about ${show.number(limit, 0)} °C; it is to bear ${show.number(hottest, 0)} °C (estimate). The same size in a grade for heat would do.`,
  PUSHES_OFF_CENTRE: () => 'The sizes are so unlike that they push each other off centre.',
  MARGIN_TOO_LOW: ({ margin, asked, points, pull }, { show }) =>
    `Even ${points} pairs of ${show.force(pull)} hold only ${show.number(margin, 2)} times what the wind asks; ${show.number(asked, 2)} times is wanted (estimate).`,
};

const holding = (points: number, margin: number | 'unloaded', show: Show): string =>
  `${points} points hold ${margin === 'unloaded' ? 'with nothing asked of them' : `${show.number(margin, 2)} times what the wind asks`} (estimate)`;

const larger: ChoiceWords['instead']['BLOCKS'] = ({ magnet, choice, pocket, touching }, { show }) =>
  `${choice.points} pairs of ${magnet.name} in ${magnet.grade}, in pockets of ${show.length(pocket)}: ${holding(choice.points, choice.margin, show)}. They are not in the catalogue, and snap together with ${show.force(touching)}: mind the fingers.`;

/** What can hold where the chosen pair does not. */
const instead: ChoiceWords['instead'] = {
  CATALOGUE_PAIR: ({ choice }, { name, show }) =>
    `${name(choice.outside)} in the panel and ${name(choice.inside)} inside: ${holding(choice.points, choice.margin, show)}.`,
  LARGER_DISCS: larger,
  BLOCKS: larger,
  STEEL_ON_FRAME: ({ magnet, steel, points, pull, margin }, { name, show }) =>
    `A steel strip of ${show.fine(steel.width)} × ${show.fine(steel.thickness)} on the frame beside the glass, ${name(magnet)} in the panel: each draws with ${show.force(pull)} or more, and ${holding(points, margin, show)}.`,
  OTHER_FASTENER: ({ fastener, points, pull, margin }, { name, show }) =>
    `${name(fastener)}: at ${show.force(pull)} each, ${holding(points, margin, show)}.`,
  FASTENER_TO_BE_TRIED: ({ fastener, pullNeeded }, { name, show }) =>
    `${name(fastener)}: it would do if each holds ${show.force(pullNeeded)}. Nobody has tried it here: pull one with a spring balance, then enter what it held.`,
};

export const choiceWords: ChoiceWords = {
  reasons,
  instead,
  none: 'No pair of the catalogue holds this panel through this glass.',
};
