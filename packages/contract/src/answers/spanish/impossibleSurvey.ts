import { type Finding, refusalNumbers } from '@panewright/design';
import type { OutlineRefusal } from '@panewright/geometry';
import { joinWords, type Show } from '../show.ts';
import { partsOf, sayPart } from './readings.ts';

type Numbers = Finding<'SURVEY_IMPOSSIBLE'>['numbers'];
type Say = (n: Numbers, show: Show) => string;

const names = (text: string | number | undefined) =>
  joinWords(
    String(text ?? '')
      .split(' ')
      .filter(Boolean),
    'y',
  );
/** Runs, joints, tapes and segments are counted from 1. */
const nth = (index: string | number | undefined) => String(Number(index) + 1);

const ofTape: Readonly<Record<string, Say>> = {
  TAPE_READINGS_INSUFFICIENT: (n) =>
    `las medidas no fijan la forma; falta ${joinWords(partsOf(n.wouldHelp), 'o')}`,
  TAPE_SIDES_CANNOT_CLOSE: (n, show) =>
    `${sayPart(n.longest)}, de ${show.length(n.length)}, es más largo de lo que alcanzan juntos ${joinWords(partsOf(n.others), 'y')} (${show.length(n.reach)})`,
  TAPE_RADII_TOO_LARGE: (n, show) =>
    `los dos redondeos ocupan ${show.length(n.taken)} de «${sayPart(n.side)}», que mide ${show.length(n.length)}`,
  TAPE_NOT_CONVEX: (n) => `la esquina de ${sayPart(n.corner)} apuntaría hacia dentro`,
  TAPE_VALUE_NOT_POSITIVE: (n, show) => `${sayPart(n.of)} figura con ${show.length(n.value)}`,
  TAPE_RADIUS_NOT_POSITIVE: (n, show) => `el radio ${sayPart(n.corner)} resulta ${show.length(n.radius)}`,
};

const ofMarks: Readonly<Record<string, Say>> = {
  NETWORK_TOO_FEW_POINTS: (n) => `${n.points} marcas y puntos son pocos: al menos dos marcas y tres puntos`,
  NETWORK_NAME_TWICE: (n) => `dos lugares se llaman ${n.name}`,
  NETWORK_NAME_UNKNOWN: (n) =>
    `la cinta ${nth(n.index)} acaba en ${n.name}, y ninguna marca ni punto se llama así`,
  NETWORK_DISTANCE_TO_ITSELF: (n) => `la cinta ${nth(n.index)} empieza y acaba en ${n.name}`,
  NETWORK_DISTANCE_NOT_POSITIVE: (n, show) => `la cinta ${nth(n.index)} marca ${show.length(n.value)}`,
  NETWORK_SIGMA_NOT_POSITIVE: (n, show) =>
    `la dispersión de la cinta ${nth(n.index)} es ${show.number(n.sigma, 3)} mm`,
  NETWORK_ONE_POINT_FIXED: (n) => `solo se conoce el lugar de ${n.name}`,
  NETWORK_POINTS_LOOSE: (n) =>
    `no se puede situar ${names(n.names)}: cada punto necesita medidas a dos marcas o puntos ya situados`,
  NETWORK_TAPES_DO_NOT_MEET: (n, show) =>
    `las medidas a ${n.name} no se encuentran: ${show.length(n['lengths.0'])} y ${show.length(n['lengths.1'])} desde ${names(n.to)}, que distan ${show.length(n.between)}`,
  NETWORK_MIRROR_AMBIGUOUS: (n) =>
    `${names(n.names)} puede estar a un lado u otro de la línea entre sus marcas: indíquelo, o mida hasta un vecino`,
  NETWORK_ORDER_CLOCKWISE: () =>
    'los puntos van en el sentido del reloj: enumérelos al revés, vistos desde fuera',
  OUTLINE_TOO_FEW_RUNS: (n) => `${n.runs} tramo es poco: al menos dos cierran un contorno`,
  OUTLINE_POINT_UNKNOWN: (n) =>
    `el tramo ${nth(n.run)} nombra ${n.name}, y ninguna marca ni punto se llama así`,
  OUTLINE_RUN_UNDETERMINED: (n) => `el tramo ${nth(n.run)} tiene ${n.points} puntos y necesita ${n.need}`,
  OUTLINE_LINES_JOIN_SMOOTHLY: (n) =>
    `el tramo ${nth(n.joint)} y el anterior son rectos y no pueden unirse con suavidad`,
  OUTLINE_RADIUS_NOT_POSITIVE: (n, show) =>
    `el radio antes del tramo ${nth(n.joint)} figura con ${show.length(n.radius)}`,
  OUTLINE_RADII_TOO_LARGE: (n, show) =>
    `los redondeos en los extremos del tramo ${nth(n.run)} ocupan ${show.length(n.taken)} de ${show.length(n.length)}`,
  OUTLINE_DOES_NOT_CLOSE: () =>
    'los tramos no cierran un contorno: enumérelos en sentido contrario al reloj, cada uno desde el final del anterior',
};

const ofOutline: Readonly<Record<string, Say>> = {
  OUTLINE_EMPTY: () => 'el contorno no tiene bordes',
  SEGMENT_NOT_FINITE: (n) => `el borde ${nth(n.where)} tiene un número que no lo es`,
  BULGE_ZERO: (n) => `el borde ${nth(n.where)} es un arco sin curva`,
  SEGMENT_TOO_SHORT: (n) => `el borde ${nth(n.where)} no tiene longitud`,
  OUTLINE_CROSSES_ITSELF: (n, show) =>
    `los bordes ${nth(n['where.0'])} y ${nth(n['where.1'])} se cruzan en ${show.length(n['at.x'])}, ${show.length(n['at.y'])}`,
  OUTLINE_CLOCKWISE: () => 'el contorno va en el sentido del reloj',
};

/** What each refusal of a survey says of it. */
export function impossibleSurvey(f: Finding<'SURVEY_IMPOSSIBLE'>, show: Show): string {
  const say = { ...ofTape, ...ofMarks, ...ofOutline }[f.numbers.refusal];
  return say ? say(f.numbers, show) : 'las medidas no dan una forma única';
}

/** What is wrong with segments that are no outline. */
export function impossibleOutline(refusal: OutlineRefusal, show: Show): string {
  return ofOutline[refusal.code]!(refusalNumbers(refusal), show);
}
