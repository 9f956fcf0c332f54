import type { Show } from '../show.ts';
import type { ChoiceWords } from '../words.ts';

const PULLS: Readonly<Record<string, string>> = {
  STEEL_SATURATES: 'das Band ist für diesen Magneten zu dünn: es ist von seinem Feld gesättigt',
  GAP_TOO_SMALL: 'der Spalt ist enger, als die Formel gilt',
};

/** Why a pair was turned down. */
const reasons: ChoiceWords['reasons'] = {
  POCKET_TOO_SMALL_FOR_MAGNET: ({ room, need }, { show }) =>
    `Die Tasche lässt ${show.fine(room)} für einen Magneten, der ${show.fine(need)} braucht: ein größeres Taschenteil ist nötig.`,
  GLASS_TOO_SMALL_FOR_MAGNET: ({ inset }, { show }) =>
    `Innen ist kein Platz dafür: ${show.fine(inset)} Glas an der Kante bleiben für Klebeband und Rahmen frei.`,
  MAGNETS_CANNOT_MEET: ({ apart }, { show }) =>
    `Die beiden können nicht einander gegenüber sitzen: es fehlen ${show.fine(apart)}. Ein größeres Taschenteil oder ein kleinerer Magnet hilft.`,
  GRADE_UNKNOWN: ({ grade }) => `Die Güte „${grade}“ ist nicht bekannt.`,
  PULL_REFUSED: ({ gap, refusal }, { show }) =>
    `Die Zugkraft über ${show.fine(gap)} lässt sich nicht berechnen${PULLS[refusal] ? `: ${PULLS[refusal]}` : ''}.`,
  TOO_HOT_FOR_MAGNET: ({ magnet, limit, hottest }, { name, show }) =>
    `${name(magnet)} verliert über etwa ${show.number(limit, 0)} °C dauerhaft an Kraft; er soll ${show.number(hottest, 0)} °C vertragen (Schätzung). Dieselbe Größe in einer Güte für Wärme geht.`,
  PUSHES_OFF_CENTRE: () => 'Die Größen sind so ungleich, dass sie einander aus der Mitte drängen.',
  MARGIN_TOO_LOW: ({ margin, asked, points, pull }, { show }) =>
    `Selbst ${points} Paare zu ${show.force(pull)} halten nur ${show.number(margin, 2)} mal, was der Wind verlangt; gefordert ist ${show.number(asked, 2)} mal (Schätzung).`,
};

const holding = (points: number, margin: number | 'unloaded', show: Show): string =>
  margin === 'unloaded'
    ? `${points} Punkte halten, und nichts wird von ihnen verlangt (Schätzung)`
    : `${points} Punkte halten ${show.number(margin, 2)} mal, was der Wind verlangt (Schätzung)`;

const larger: ChoiceWords['instead']['BLOCKS'] = ({ magnet, choice, pocket, touching }, { show }) =>
  `${choice.points} Paare ${magnet.name} in ${magnet.grade}, in Taschen von ${show.length(pocket)}: ${holding(choice.points, choice.margin, show)}. Sie sind nicht im Katalog und schlagen mit ${show.force(touching)} zusammen: auf die Finger achten.`;

/** What can hold where the chosen pair does not. */
const instead: ChoiceWords['instead'] = {
  CATALOGUE_PAIR: ({ choice }, { name, show }) =>
    `${name(choice.outside)} in der Blende und ${name(choice.inside)} innen: ${holding(choice.points, choice.margin, show)}.`,
  LARGER_DISCS: larger,
  BLOCKS: larger,
  STEEL_ON_FRAME: ({ magnet, steel, points, pull, margin }, { name, show }) =>
    `Ein Stahlband von ${show.fine(steel.width)} × ${show.fine(steel.thickness)} am Rahmen neben dem Glas, ${name(magnet)} in der Blende: jeder zieht mit mindestens ${show.force(pull)}, und ${holding(points, margin, show)}.`,
  OTHER_FASTENER: ({ fastener, points, pull, margin }, { name, show }) =>
    `${name(fastener)}: mit je ${show.force(pull)}: ${holding(points, margin, show)}.`,
  FASTENER_TO_BE_TRIED: ({ fastener, pullNeeded }, { name, show }) =>
    `${name(fastener)}: geht, wenn jede ${show.force(pullNeeded)} hält. Noch niemand hat es hier erprobt: eine mit der Federwaage abziehen und eintragen, was sie hielt.`,
};

export const choiceWords: ChoiceWords = {
  reasons,
  instead,
  none: 'Kein Paar des Katalogs hält diese Blende durch dieses Glas.',
};
