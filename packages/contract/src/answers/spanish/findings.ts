import type { Finding } from '@panewright/design';
import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { cautions } from './cautions.ts';
import { holdByFindings } from './holdByFindings.ts';
import { partsOf, sayPart } from './readings.ts';
import { surveyFindings } from './surveyFindings.ts';
import { opening, pattern } from './where.ts';

const edge = (f: Finding): string => sayPart(f.where.edge);

const PANEL_LINES: Readonly<Record<string, string>> = {
  finished: 'el borde terminado',
  cut: 'la línea de corte',
  band: 'el borde interior del ribete o dobladillo',
  stitch: 'la línea de costura',
};
const PANEL_REASONS: Readonly<Record<string, string>> = {
  OFFSET_VANISHES: 'no queda nada',
  OFFSET_SPLITS: 'se parte en varios trozos',
};

const KINDS: Readonly<Record<string, string>> = {
  fabric: 'la tela',
  binding: 'el ribete',
  magnet: 'el imán',
  wrapFilm: 'la lámina',
  tape: 'la cinta',
  thread: 'el hilo',
  steelStrip: 'la pletina de acero',
  fastener: 'el cierre',
};

const patternFindings = {
  SHARED_PATTERN: (f, show) => {
    const turned =
      String(f.numbers.turnedOver ?? '') === ''
        ? ''
        : ` y, vuelto, para ${show.openings(f.numbers.turnedOver)}`;
    return {
      what: `El patrón ${f.where.pattern ?? ''} sirve para ${show.openings(f.numbers.asIs)}${turned}.`,
      why: `Las formas coinciden dentro de ${show.fine(f.numbers.deviation)}.`,
      do: 'Dibuje el patrón una vez; ponga a cada panel la etiqueta de su hueco.',
    };
  },
  NEAR_MISS: (f, show) => ({
    what: `${opening(f, show)} casi entra en el patrón ${f.where.pattern ?? ''}: difiere ${show.fine(f.numbers.deviation)}, ${show.fine(f.numbers.over)} más de lo que pueden diferir formas con un mismo patrón.`,
    why: '',
    do: 'Déjele su propio patrón, o mida de nuevo si deberían ser iguales.',
  }),
  SHARED_WITHIN_SPREAD: (f, show) => ({
    what: `${pattern(f, show)}: ${show.openings(f.numbers.members)} y el patrón solo se conocen juntos con ${show.fine(f.numbers.spread)}.`,
    why: `Las formas con un mismo patrón pueden diferir ${show.fine(f.numbers.tolerance)}; estas medidas no bastan para saberlo.`,
    do: 'Mida otra vez cada una, o ponga el patrón impreso sobre la ventana antes de cortar.',
  }),
  PATTERN_MEAN_IMPOSSIBLE: (f, show) => ({
    what: `${pattern(f, show)}: ${show.openings(f.numbers.members)} no tienen media; el patrón es el primero.`,
    why: 'La media se toma esquina a esquina, y no están hechos de las mismas rectas y arcos.',
    do: 'Elija uno de ellos como patrón.',
  }),
  TURNED_OVER_FACES_DIFFER: (f, show) => ({
    what: `${pattern(f, show)} sirve vuelto para ${show.openings(f.numbers.turnedOver)}, y las caras de ${f.numbers.fabric} son distintas.`,
    why: 'Una pieza de esa tela no se puede volver.',
    do: 'Corte los paneles vueltos como piezas aparte, como hace el tendido.',
  }),
} satisfies Partial<FindingWords>;

const panelFindings = {
  ITEM_NOT_IN_CATALOGUE: (f, show) => ({
    what: `${opening(f, show)}: el catálogo no tiene ${KINDS[String(f.numbers.kind)] ?? 'la entrada'} «${show.text(f.numbers.id)}».`,
    why: 'Sin eso no se puede calcular nada para este hueco.',
    do: 'Elija otra cosa, o añádala al catálogo.',
  }),
  PANEL_IMPOSSIBLE: (f, show) => ({
    what: `${pattern(f, show)}: el panel no se puede hacer: ${PANEL_LINES[String(f.numbers.line)] ?? 'una de sus líneas'} no resulta, ${PANEL_REASONS[String(f.numbers.refusal)] ?? 'se cruza consigo mismo'}.`,
    why: 'El margen de ajuste, el dobladillo o el ribete es demasiado ancho para la forma.',
    do: 'Elija un acabado más estrecho u otro margen de ajuste.',
  }),
  CORNER_TOO_TIGHT_FOR_BINDING: (f, show) => ({
    what: `${pattern(f, show)}: aquí (${edge(f)}) el borde terminado gira con un radio de ${show.fine(f.numbers.radius)}; ${show.text(f.numbers.binding)} rodea ${show.fine(f.numbers.least)} o más.`,
    why: 'En una esquina más cerrada, un ribete cortado al hilo se frunce.',
    do: 'Redondee más la esquina del panel, haga ahí un inglete o elija un ribete más flexible.',
  }),
  EDGE_NAME_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: hay un margen para «${f.numbers.edge}», y ningún borde se llama así.`,
    why: 'Se usó el margen de todos los bordes.',
    do: `Nombre uno de estos: ${joinWords(partsOf(f.numbers.known), 'o')}.`,
  }),
  FABRIC_NOT_FOR_HEAT: (f, show) => ({
    what: `${pattern(f, show)}: ${show.text(f.numbers.fabric)} no se puede cortar en caliente.`,
    why: 'Su borde no se sella, y el recubrimiento caliente puede soltar humos dañinos.',
    do: 'Ribetéelo o haga dobladillo, o elija una tela señalada para el calor.',
  }),
  HEM_NEEDS_NOTCHED_CORNERS: (f, show) => ({
    what: `${pattern(f, show)}: hay que hacer muescas en el dobladillo en ${show.number(f.numbers.corners, 0)} esquinas.`,
    why: 'Al doblar una esquina saliente sobra tela.',
    do: 'Haga muescas hasta el borde terminado antes de doblar.',
  }),
} satisfies Partial<FindingWords>;

const PULL_REASONS: Readonly<Record<string, string>> = {
  GAP_NOT_POSITIVE: 'No hay nada entre los imanes.',
  GAP_TOO_SMALL: 'Los imanes casi se tocan.',
};

const holdFindings = {
  HOLD_POINTS_OVERLAP: (f, show) => ({
    what: `${pattern(f, show)}: los puntos de sujeción ${joinWords((f.where.point ?? '').split(' '), 'y')} distan ${show.length(f.numbers.apart)}, y cada bolsillo mide ${show.length(f.numbers.pocket)} de ancho.`,
    why: 'Dos bolsillos no se pueden coser en un mismo sitio.',
    do: 'Use un bolsillo menor, o más separación.',
  }),
  HOLD_POINT_ON_OBSTRUCTION: (f, show) => ({
    what: `${opening(f, show)}: el punto de sujeción ${f.where.point ?? ''} está a ${show.length(f.numbers.gap)} de ${f.numbers.obstruction}; su imán alcanza ${show.length(f.numbers.reach)}.`,
    why: 'Ahí un imán no quedaría plano en el cristal, o estorbaría.',
    do: 'Elija otra separación o un imán menor, o mueva lo que estorba.',
  }),
  MAGNET_DOES_NOT_FIT_POCKET: (f, show) =>
    f.numbers.need > 0
      ? {
          what: `${pattern(f, show)}: en el punto de sujeción ${f.where.point ?? ''} el imán envuelto necesita ${show.length(f.numbers.need)}; un bolsillo de ${show.length(f.numbers.pocket)} deja ahí ${show.length(f.numbers.room)}.`,
          why: 'Las costuras, el ribete y la esquina ocupan parte del bolsillo.',
          do: 'Use un bolsillo mayor o un imán menor.',
        }
      : {
          what: `${pattern(f, show)}: en el punto de sujeción ${f.where.point ?? ''} un bolsillo de ${show.length(f.numbers.pocket)} no deja ningún sitio.`,
          why: 'El panel es ahí demasiado pequeño para el bolsillo y sus costuras.',
          do: 'Use un panel mayor, un acabado más estrecho u otra sujeción.',
        },
  PULL_TOO_WEAK: (f, show) => ({
    what: `${opening(f, show)}: ${show.number(f.numbers.count, 0)} puntos de sujeción de al menos ${show.force(f.numbers.pull)} cada uno sujetan ${show.number(f.numbers.margin, 2)} veces lo que pide un viento de ${show.speed(f.numbers.wind)}; se quieren ${show.number(f.numbers.asked, 2)} veces (estimación).`,
    why:
      f.numbers.letsGoAt === 0
        ? 'Resbalaría por su propio peso, sin nada de viento.'
        : `${f.numbers.mode === 'slip' ? 'Primero resbalaría' : 'Primero se desprendería'}, con un viento de unos ${show.speed(f.numbers.letsGoAt)}.`,
    do: 'Use imanes más fuertes o más puntos de sujeción, y pruébelo antes de fiarse.',
  }),
  CORNER_MAY_CREEP: (f, show) => ({
    what: `Hueco ${show.opening(f.numbers.opening)}, aquí el más débil: el punto de sujeción ${f.numbers.point} puede empezar a ceder con un viento medio de ${show.speed(f.numbers.low)} a ${show.speed(f.numbers.high)}, por debajo de los ${show.speed(f.numbers.wind)} pedidos (estimación).`,
    why: `El panel entero aguanta hasta unos ${show.speed(f.numbers.whole)}; el borde cede antes. Tira de sus extremos hacia dentro, más cuanto más tensa la tela: esto vale para ${show.number(f.numbers.slackLow, 1)} a ${show.number(f.numbers.slackHigh, 1)} % de holgura, y los demás paneles son parecidos.`,
    do: 'Mida la holgura y anótela con los hábitos; cosa la malla sin tensión, acerque los puntos de sujeción y pruebe un panel al viento antes de fiarse del conjunto.',
  }),
  PULL_REFUSED: (f, show) => ({
    what: `${opening(f, show)}: no se puede calcular la fuerza a través de ${show.fine(f.numbers.gap)}.`,
    why:
      PULL_REASONS[f.numbers.refusal] ??
      'La separación o los imanes quedan fuera de lo que abarca la fórmula.',
    do: 'Revise las capas del cristal y los imanes; con tanta separación use imanes mayores u otra sujeción.',
  }),
  GRADE_UNKNOWN: (f, show) => ({
    what: `${opening(f, show)}: no se conoce el grado «${f.numbers.grade}» de ${f.numbers.magnet}.`,
    why: 'La fuerza y el límite de calor de un imán dependen de su grado.',
    do: 'Escriba el grado como lo da el vendedor, por ejemplo N42 o N42SH.',
  }),
  MAGNETS_PUSH_OFF_CENTRE: (f, show) => ({
    what: `${opening(f, show)}: ${f.numbers.outside} y ${f.numbers.inside} se empujan fuera del centro.`,
    why: 'Si un imán es mucho menor que el otro, se va hacia el borde de este.',
    do: 'Empareje imanes del mismo tamaño.',
  }),
  HEAT_WEAKENS_MAGNETS: (f, show) => ({
    what: `A ${show.number(f.numbers.hottest, 0)} °C ${f.numbers.magnet} puede perder fuerza para siempre: aguanta unos ${show.number(f.numbers.limit, 0)} °C (estimación); los ${show.number(f.numbers.label, 0)} °C de su etiqueta son para un imán más largo.`,
    why: 'Un imán delgado pierde fuerza por debajo del límite de su grado.',
    do: 'Elija un grado para más calor, o un imán más grueso.',
  }),
  CURVED_GLASS: (f, show) => ({
    what: `${opening(f, show)}: el cristal es curvo, y la fuerza se calcula para cristal plano.`,
    why: 'En una curva los imanes no quedan planos y la separación es mayor.',
    do: 'Pruebe antes un par de imanes en el cristal.',
  }),
} satisfies Partial<FindingWords>;

const cuttingFindings = {
  PIECE_WIDER_THAN_ROLL: (f, show) => ({
    what: `La pieza ${show.text(f.numbers.piece)} necesita ${show.length(f.numbers.leastWidth)} a lo ancho del rollo; ${show.text(f.numbers.fabric)} deja ${show.length(f.numbers.usableWidth)}.`,
    why: 'El rollo más ancho es más estrecho que la pieza en todas las posiciones permitidas.',
    do: 'Elija una tela más ancha, deje libre el sentido del hilo o divida el panel.',
  }),
  STRIP_LONGER_THAN_ROLL: (f, show) => ({
    what: `${show.text(f.numbers.binding)}: una tira de ${show.length(f.numbers.length)} es más larga de lo que se vende en una pieza (${show.length(f.numbers.stock)}).`,
    why: '',
    do: 'Compre un rollo más largo, o una dos tramos a mitad de un borde.',
  }),
  LAY_PLACES_GIVEN_UP: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: no todas las piezas pudieron quedarse donde se pusieron a mano: ${joinWords(f.numbers.pieces.split(' '), 'y')}.`,
    why: 'El trabajo ha cambiado desde entonces: una pieza es mayor, ya no se puede girar así, o ya no se corta.',
    do: 'Se tendieron de nuevo en torno a las demás. Mire el tendido y muévalas otra vez donde convenga.',
  }),
  OFFCUTS_USED: (f, show) => ({
    what: `Retales del almacén llevan ${f.numbers.pieces} de las piezas: ${show.text(f.numbers.offcuts)}.`,
    why: `Sin ellos habría que comprar ${show.money(f.numbers.saved)} más de tela.`,
    do: 'Mida cada retal y revíselo antes de cortar.',
  }),
  KEPT_TOGETHER_COSTS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: mantener piezas juntas cuesta ${show.money(f.numbers.price)}: hay que comprar ${f.numbers.length <= 0 ? 'tela de un rollo más caro' : `${show.length(f.numbers.length)} más de tela`}.`,
    why: 'Pieza a pieza, los retales del almacén llevarían más.',
    do: 'Elija grupos menores, o deje que las piezas salgan de donde ahorren, en las reglas de corte.',
  }),
  KEPT_TOGETHER_CLOTHS: (f, show) => ({
    what: `Los paneles de «${show.text(f.numbers.place)}» (${show.openings(f.numbers.openings)}) no salen todos de un mismo trozo de tela.`,
    why: `Son de varias telas: ${show.text(f.numbers.fabrics)}. Los de cada tela se mantienen juntos.`,
    do: 'Deles una sola tela si han de verse iguales.',
  }),
  KEPT_TOGETHER_CUT: (f, show) => ({
    what: `El retal «${show.text(f.numbers.offcut)}» está marcado como cortado para este trabajo, pero ya no tiene tendido.`,
    why: `${f.numbers.openings ? `${show.openings(f.numbers.openings)}: nada` : 'Nada'} de lo que se mantiene junto cabe entero en él junto a los otros tendidos.`,
    do: 'Si ya está cortado, mantenga juntos grupos menores o ninguno; si no, márquelo como aún sin cortar.',
  }),
  SAME_WAY_COSTS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: tender todo en un sentido cuesta ${show.money(f.numbers.price)}: hay que comprar ${f.numbers.length <= 0 ? 'tela de un rollo más caro' : `${show.length(f.numbers.length)} más de tela`}.`,
    why: 'Girada cada una como puede ir, las piezas necesitan un tendido más corto o un rollo más barato.',
    do: 'Deje cada pieza como permita su hilo donde la diferencia no se vea.',
  }),
  SAME_WAY_GRAINS: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: no todas las piezas van en un sentido.`,
    why: `Se eligió que el largo del rollo suba en ${show.openings(f.numbers.up)} y cruce en ${show.openings(f.numbers.across)}. Cada uno conserva lo elegido.`,
    do: 'Elija lo mismo para todos, o «indiferente».',
  }),
  SAME_WAY_TOO_WIDE: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: no todas las piezas van en un sentido; ningún rollo admite ${show.openings(f.numbers.openings)} así.`,
    why: 'A lo largo o a lo ancho, alguna pieza es más ancha que el rollo más ancho. Cada una va como permite su hilo.',
    do: 'Añada al catálogo un rollo más ancho de esta tela, o quite la regla.',
  }),
  LAY_ROLL_NOT_SOLD: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: el tendido hecho a mano es para un rollo de ${show.length(f.numbers.width)} de ancho, y no se vende ninguno.`,
    why: 'Los anchos del catálogo han cambiado.',
    do: 'Se usa el tendido del programa. Tienda a mano de nuevo, o vuelva a poner el ancho en el catálogo.',
  }),
  LAY_REFUSED: (f, show) => ({
    what: `${show.text(f.numbers.fabric)}: las piezas no se pueden tender (${show.text(f.numbers.refusal)}).`,
    why: 'Una pieza tiene una forma que no se puede cortar.',
    do: 'Revise los paneles nombrados arriba: uno tiene un borde que se cruza, o ninguna superficie.',
  }),
} satisfies Partial<FindingWords>;

/** It does not compile while a code of the plan has no words. */
export const findings: FindingWords = {
  ...surveyFindings,
  ...patternFindings,
  ...panelFindings,
  ...holdFindings,
  ...holdByFindings,
  ...cuttingFindings,
  ...cautions,
};
