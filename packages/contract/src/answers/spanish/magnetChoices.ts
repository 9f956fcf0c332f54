import type { Show } from '../show.ts';
import type { ChoiceWords } from '../words.ts';

const PULLS: Readonly<Record<string, string>> = {
  STEEL_SATURATES: 'la pletina es demasiado fina para este imán: está saturada de su campo',
  GAP_TOO_SMALL: 'la separación es menor de lo que abarca la fórmula',
};

/** Why a pair was turned down. */
const reasons: ChoiceWords['reasons'] = {
  POCKET_TOO_SMALL_FOR_MAGNET: ({ room, need }, { show }) =>
    `El bolsillo deja ${show.fine(room)} para un imán que necesita ${show.fine(need)}: hace falta una pieza de bolsillo mayor.`,
  GLASS_TOO_SMALL_FOR_MAGNET: ({ inset }, { show }) =>
    `Por dentro no hay sitio: ${show.fine(inset)} de cristal junto al borde quedan para la cinta y el marco.`,
  MAGNETS_CANNOT_MEET: ({ apart }, { show }) =>
    `Los dos no pueden quedar uno frente a otro: faltan ${show.fine(apart)}. Serviría una pieza de bolsillo mayor o un imán menor.`,
  GRADE_UNKNOWN: ({ grade }) => `No se conoce el grado «${grade}».`,
  PULL_REFUSED: ({ gap, refusal }, { show }) =>
    `No se puede calcular la fuerza a través de ${show.fine(gap)}${PULLS[refusal] ? `: ${PULLS[refusal]}` : ''}.`,
  TOO_HOT_FOR_MAGNET: ({ magnet, limit, hottest }, { name, show }) =>
    `${name(magnet)} pierde fuerza para siempre por encima de unos ${show.number(limit, 0)} °C; debe aguantar ${show.number(hottest, 0)} °C (estimación). Serviría el mismo tamaño en un grado para calor.`,
  PUSHES_OFF_CENTRE: () => 'Los tamaños son tan distintos que se empujan fuera del centro.',
  MARGIN_TOO_LOW: ({ margin, asked, points, pull }, { show }) =>
    `Ni ${points} pares de ${show.force(pull)} sujetan más de ${show.number(margin, 2)} veces lo que pide el viento; se quieren ${show.number(asked, 2)} veces (estimación).`,
};

const holding = (points: number, margin: number | 'unloaded', show: Show): string =>
  margin === 'unloaded'
    ? `${points} puntos sujetan sin que se les pida nada (estimación)`
    : `${points} puntos sujetan ${show.number(margin, 2)} veces lo que pide el viento (estimación)`;

const larger: ChoiceWords['instead']['BLOCKS'] = ({ magnet, choice, pocket, touching }, { show }) =>
  `${choice.points} pares de ${magnet.name} en ${magnet.grade}, en bolsillos de ${show.length(pocket)}: ${holding(choice.points, choice.margin, show)}. No están en el catálogo, y chocan con ${show.force(touching)}: cuidado con los dedos.`;

/** What can hold where the chosen pair does not. */
const instead: ChoiceWords['instead'] = {
  CATALOGUE_PAIR: ({ choice }, { name, show }) =>
    `${name(choice.outside)} en el panel y ${name(choice.inside)} dentro: ${holding(choice.points, choice.margin, show)}.`,
  LARGER_DISCS: larger,
  BLOCKS: larger,
  STEEL_ON_FRAME: ({ magnet, steel, points, pull, margin }, { name, show }) =>
    `Una pletina de acero de ${show.fine(steel.width)} × ${show.fine(steel.thickness)} en el marco junto al cristal, ${name(magnet)} en el panel: cada uno tira con ${show.force(pull)} o más, y ${holding(points, margin, show)}.`,
  OTHER_FASTENER: ({ fastener, points, pull, margin }, { name, show }) =>
    `${name(fastener)}: con ${show.force(pull)} cada uno, ${holding(points, margin, show)}.`,
  FASTENER_TO_BE_TRIED: ({ fastener, pullNeeded }, { name, show }) =>
    `${name(fastener)}: serviría si cada uno sujeta ${show.force(pullNeeded)}. Nadie lo ha probado aquí: tire de uno con un dinamómetro y anote lo que aguantó.`,
};

export const choiceWords: ChoiceWords = {
  reasons,
  instead,
  none: 'Ningún par del catálogo sujeta este panel a través de este cristal.',
};
