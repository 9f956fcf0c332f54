import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { sayPart } from './readings.ts';
import { opening } from './where.ts';
import { wrongWay } from './wrongWay.ts';

const points = (text: string): string => joinWords(text.split(' '), 'y');

const APART: Readonly<Record<string, string>> = {
  pocket: 'El bolsillo deja muy poco sitio al imán exterior.',
  glass: 'En el cristal libre por dentro no caben el imán interior y su cinta.',
  apart: 'El imán interior no llega más lejos, y el bolsillo acaba antes.',
};
const NO_KEY: Readonly<Record<string, string>> = {
  tooFew: 'Un solo punto no dice de qué lado va.',
  alike: 'Con cualquier elección de polos el panel se pegaría también al revés.',
  steel: 'El acero atrae cualquier polo.',
  fastener: 'Los cierres no tienen polos.',
};

/** Qué sujeta y dónde, cuando no es la regla. */
export const holdByFindings = {
  FASTENER_STRENGTH_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: nadie ha probado aún cuánto sujeta «${f.numbers.fastener}».`,
    why: `Cada uno de ${show.number(f.numbers.count, 0)} necesitaría ${show.force(f.numbers.pull)} tirando recto y ${show.force(f.numbers.along)} a lo largo de la superficie (estimación).`,
    do: 'Tire de unos cuantos con un dinamómetro y anote el menor y el mayor valor en el catálogo.',
  }),
  FASTENER_ALLOWANCE: (f, show) => ({
    what: `«${f.numbers.fastener}» pide ${show.length(f.numbers.beyond)} más allá de la línea trazada; eso vale en lugar de los ${show.length(f.numbers.fit)} del trabajo.`,
    why: 'Un cierre va en el marco, un imán en el cristal.',
    do: 'Para otro margen, indique uno propio en el hueco.',
  }),
  HAND_EDGE_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: hay un punto de sujeción puesto a mano en ${f.numbers.edge}, donde el panel no tiene tal borde o es más corto.`,
    why: `Sus bordes son ${joinWords(f.numbers.known.split(' ').map(sayPart), 'y')}.`,
    do: 'Quite el punto, o póngalo en un borde que el panel tenga.',
  }),
  HAND_POINT_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: el punto ${show.number(f.numbers.index, 0)} de ${sayPart(f.where.edge)} está movido o quitado a mano, y la regla pone ahí ${show.number(f.numbers.points, 0)}.`,
    why: 'El panel o la separación han cambiado desde entonces.',
    do: 'Quite ese cambio, o hágalo de nuevo.',
  }),
  HAND_POINT_OFF_EDGE: (f, show) => ({
    what: `${opening(f, show)}: el punto ${show.number(f.numbers.index, 0)} de ${sayPart(f.where.edge)} está movido ${show.length(f.numbers.by)}, más allá del final de su borde.`,
    why: 'Se queda donde lo pone la regla.',
    do: 'Muévalo menos, o ponga un punto en el borde siguiente.',
  }),
  HAND_ELSEWHERE: (f, show) => ({
    what: `${opening(f, show)}: sus puntos puestos a mano no se siguen; su patrón sigue los de ${show.opening(f.numbers.follows)}.`,
    why: 'Un panel sirve a los dos huecos, así que tienen una sola disposición.',
    do: 'Conserve una de las dos, o dé a este hueco un patrón propio.',
  }),
  HAND_OPENING_UNKNOWN: (f, show) => ({
    what: `Se guardan ${show.number(f.numbers.points, 0)} cambios de puntos de sujeción para ${f.numbers.opening}, que no es un hueco de este trabajo.`,
    why: '',
    do: 'Se siguen otra vez cuando el hueco vuelva; si no, no estorban.',
  }),
  HAND_GAP_WIDE: (f, show) => ({
    what: `${opening(f, show)}: puestos a mano, los puntos de sujeción ${points(f.where.point ?? '')} distan ${show.length(f.numbers.gap)}; el taller admite ${show.length(f.numbers.limit)}.`,
    why: 'Un borde largo se levanta y tira más de sus extremos.',
    do: 'Añada un punto en medio, o mueva uno.',
  }),
  POINTS_CANNOT_MEET_MARGIN: (f, show) => ({
    what: `${opening(f, show)}: más puntos de sujeción no llevan el margen a ${show.number(f.numbers.asked, 2)}; con ${show.number(f.numbers.points, 0)} es ${show.number(f.numbers.best, 2)} (estimación).`,
    why: 'Más quedarían uno sobre otro. La disposición es la de la separación.',
    do: 'Use imanes más fuertes, o mire cuáles sujetarían.',
  }),
  MAGNETS_CANNOT_MEET: (f, show) => {
    const { pocket, outside, inside, moved, flange } = f.numbers;
    const ways = [
      ...(pocket === undefined ? [] : [`un bolsillo de ${show.length(pocket)}`]),
      ...(outside === undefined ? [] : [`${outside} fuera con ${inside} dentro`]),
      ...(moved === undefined ? [] : [`el punto movido ${show.length(moved)} por su borde`]),
    ];
    const frame = flange === 0 ? '' : ` El marco interior tapa ${show.length(flange)} del cristal.`;
    return {
      what: `${opening(f, show)}: en el punto de sujeción ${points(f.where.point ?? '')} los dos imanes no pueden quedar uno frente a otro; faltan ${show.length(f.numbers.lacking)}.`,
      why: `${APART[f.numbers.because] ?? ''}${frame}`,
      do:
        ways.length === 0
          ? 'No se halló bolsillo mayor, otro imán ni otro sitio; use ahí otro cierre.'
          : `Serviría: ${joinWords(ways, 'o')}.`,
    };
  },
  HOLD_PROPOSAL: (f, show) => {
    const n = f.numbers;
    const count = (value: number | undefined) => show.number(value ?? 0, 0);
    const ways = [
      ...(n.outside === undefined
        ? []
        : [
            `${count(n.points)} pares de ${n.outside} con ${n.inside}, margen ${show.number(n.margin ?? 0, 2)}`,
          ]),
      ...(n.discs === undefined
        ? []
        : [
            `${count(n.discPoints)} pares de discos ${n.discs} en bolsillos de ${show.length(n.discPocket ?? 0)}`,
          ]),
      ...(n.blocks === undefined
        ? []
        : [
            `${count(n.blockPoints)} pares de bloques ${n.blocks} en bolsillos de ${show.length(n.blockPocket ?? 0)}`,
          ]),
      ...(n.steel === undefined
        ? []
        : [
            `${n.steelMagnet} en ${count(n.steelPoints)} puntos sobre una pletina de acero ${n.steel} en el marco junto al cristal`,
          ]),
      ...(n.fastener === undefined ? [] : [`${count(n.fastenerPoints)} de «${n.fastener}»`]),
      ...(n.toTry === undefined
        ? []
        : [`«${n.toTry}», si una prueba da ${show.force(n.toTryPull ?? 0)} cada uno`]),
    ];
    return {
      what: `${opening(f, show)}: lo que lo sujetaría (estimación): ${joinWords(ways, 'o')}.`,
      why: 'Cada uno se calculó para este panel, este cristal y este viento.',
      do: 'Elija uno, y pruébelo antes de fiarse. Cuanto más fuertes los imanes, más pellizcan.',
    };
  },
  NEIGHBOURS_NEAR: (f, show) => ({
    what: `${opening(f, show)}: los puntos de sujeción ${points(f.numbers.points)} distan ${show.length(f.numbers.apart)}, menos de tres veces el imán; la tracción cambia hasta ${show.percent(f.numbers.change)} (estimación).`,
    why: 'Polos iguales uno junto a otro se debilitan, los distintos se ayudan.',
    do: 'Los márgenes lo cuentan. Sepárelos más donde importe.',
  }),
  POLES_CANNOT_KEY: (f, show) => ({
    what: `${opening(f, show)}: sus ${show.number(f.numbers.points, 0)} puntos de sujeción no admiten clave; en todos queda fuera un mismo polo.`,
    why: NO_KEY[f.numbers.because] ?? '',
    do: 'Elija un mismo polo fuera en todos, o mueva un punto para que la disposición encaje de una sola manera.',
  }),
  KEYED_WRONG_WAY: (f, show) => ({
    what: `${opening(f, show)}: mal puesto, ${wrongWay({ ...f.numbers, turnedOver: f.numbers.over === 1 }, f.numbers.points, show)}.`,
    why: 'Ninguna otra elección de polos deja menos puntos tirando en el peor caso.',
    do: 'Marque qué lado va arriba en el panel y junto al cristal; mal puesto sujeta menos de lo que parece.',
  }),
  STACK_FIGHTS: (f, show) => ({
    what: `Apilados en el orden del trabajo, los paneles de ${show.opening(f.numbers.below)} y ${show.opening(f.numbers.above)} se repelen, en un punto con ${show.force(f.numbers.push)} (estimación).`,
    why: 'Los paneles con clave tienen ambos polos fuera; con un solo polo fuera se apilan planos.',
    do: 'Ponga una hoja de cartón entre ellos, o enróllelos por separado.',
  }),
} satisfies Partial<FindingWords>;
