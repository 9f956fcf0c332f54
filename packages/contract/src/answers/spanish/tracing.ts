import type { ReshapeRefusal } from '@panewright/geometry';
import type { TraceQuestion, TraceRefusal } from '@panewright/photo';
import type { Show } from '../show.ts';

type Words<U extends { readonly code: string }> = {
  readonly [C in U['code']]: (of: Extract<U, { readonly code: C }>) => string;
};

const comma = (value: number, decimals: number) => value.toFixed(decimals).replace('.', ',');
const mm = (value: number) => `${comma(value, 1)} mm`;
const percent = (share: number) => `${Math.round(share * 100)} %`;
const photo = (index: number) => `la foto ${index + 1}`;
const tape = (index: number) => `distancia ${index + 1}`;

/** Why photos give no outline: what is the matter, and what would do. */
export const traceRefusals: Words<TraceRefusal> = {
  NO_PHOTO: () => 'No se dio ninguna foto.',
  ULTRA_WIDE_LENS: ({ photo: at, focalLength35, least }) =>
    `El objetivo de ${photo(at)} es demasiado ancho (${focalLength35} mm, equivalente a 35 mm; hacen falta ${least} mm o más): use la cámara principal del teléfono.`,
  SCALE_NOT_MEASURED: () =>
    'Nada dice el tamaño real: mida una distancia entre dos marcas, o mida las barras impresas.',
  TAPE_NOT_A_LENGTH: ({ tape: at, length }) => `La ${tape(at)} es de ${length} mm: debe ser mayor que 0.`,
  TAPE_CORNER_UNKNOWN: ({ tape: at, marker, corner }) =>
    `La ${tape(at)} nombra la marca ${marker}, esquina ${corner}: las marcas van de 0 a 15, las esquinas de 0 a 3, y sus dos extremos son distintos.`,
  TAPE_MARKER_NOT_SEEN: ({ tape: at, marker }) =>
    `La ${tape(at)} acaba en la marca ${marker}, y ninguna foto muestra su hoja: haga una que la muestre.`,
  RULER_IMPLAUSIBLE: ({ x, y, most }) =>
    `Las barras impresas se midieron como ${mm(x)} y ${mm(y)}: más de un ${percent(most)} fuera de 200 y 150 mm. Imprima a tamaño real, o mida otra vez.`,
  TOO_FEW_MARKERS: ({ photo: at, found, least }) =>
    `Solo se ven ${found} marcas en ${photo(at)}; hacen falta ${least}: aléjese, y mantenga las hojas planas y a la luz.`,
  ONE_SHEET_ONLY: ({ photo: at }) =>
    `Solo se ve una hoja en ${photo(at)}: sin dos hojas o más en la imagen no hay tamaño real.`,
  PHOTO_TOO_SMALL: ({ photo: at, side, least }) =>
    `Las marcas de ${photo(at)} miden ${Math.round(side)} píxeles, hacen falta ${least}: use la foto a tamaño completo, o acérquese.`,
  PHOTO_BLURRED: ({ photo: at }) =>
    `La imagen de ${photo(at)} está borrosa: no mueva la cámara, o hágala con más luz.`,
  PHOTOS_NOT_LINKED: () =>
    'Las fotos no se pueden juntar: cada una necesita hojas que otra muestre también, y la lámina no debe moverse.',
  MARKERS_DISAGREE: ({ photo: at, residualPx, most }) =>
    `Las marcas de ${photo(at)} no están como en las hojas (${comma(residualPx, 2)} píxeles fuera, ${most} como mucho): se movió o dobló una hoja, se usó el zoom, o las hojas son de otro papel que el indicado (A4, Letter).`,
  TAPE_DISAGREES: ({ tape: at, length, predicted, sigma }) =>
    `La ${tape(at)} de ${mm(length)} contradice lo demás, que da ${mm(predicted)} ± ${mm(1.96 * sigma)}: mídala otra vez.`,
  NO_INK_LINE: () =>
    'No se halla ninguna línea cerrada: trace con un rotulador oscuro y ancho, todo alrededor, y deje toda la línea en la imagen.',
  INK_INCOMPLETE: ({ support, least }) =>
    `Solo se ve el ${percent(support)} de la línea, hace falta el ${percent(least)}: quite lo que la tapa, o haga otra foto.`,
  OUTLINE_NOT_FITTED: () =>
    'La línea no se deja dividir en rectas y arcos: trace de nuevo las esquinas, o muestre el contorno a mano.',
  FIT_POOR: ({ inliers, least }) =>
    `Solo el ${percent(inliers)} de la línea encaja en un contorno, hace falta el ${percent(least)}: ¿hay más de una línea?`,
  STOPPED: () => 'El trabajo se detuvo.',
};

/** What to look at before cutting from a traced outline. */
export const traceQuestions: Words<TraceQuestion> = {
  PARALLEL_LINE: ({ offset }) => `Hay dos líneas paralelas, a ${mm(Math.abs(offset))}: ¿cuál vale?`,
  TAPE_DOUBTFUL: ({ tape: at, length, predicted }) =>
    `La ${tape(at)} de ${mm(length)} apenas concuerda con lo demás, que da ${mm(predicted)}: mídala otra vez.`,
  INK_PARTLY_SEEN: ({ support }) => `Solo se ve el ${percent(support)} de la línea: mire el resto.`,
  INK_SCATTERED: ({ inliers }) =>
    `Solo el ${percent(inliers)} de la línea está en el contorno: mire dónde no.`,
  FILM_NOT_FLAT: ({ scatter }) =>
    `La lámina no está plana (la línea se dispersa ${mm(scatter)}): alísela y haga otra foto.`,
};

/** Why an edge is not moved by hand. */
export const reshapeRefusals: {
  readonly [C in ReshapeRefusal['code']]: (
    of: Extract<ReshapeRefusal, { readonly code: C }>,
    show: Show,
  ) => string;
} = {
  EDGE_NOT_THERE: ({ edge, edges }) => `No hay borde ${edge + 1}; el contorno tiene ${edges}.`,
  EDGE_NOT_ROUND: ({ edge }) => `El borde ${edge + 1} es recto y no tiene radio.`,
  CORNER_NOT_SHARP: ({ edge }) =>
    `El borde ${edge + 1} acaba suave: mueva el borde, o cambie el radio de al lado.`,
  RADIUS_TOO_SMALL: ({ edge, least }, show) =>
    `El radio del borde ${edge + 1} debe ser mayor que ${show.length(least)}.`,
  NEIGHBOURS_DO_NOT_MEET: ({ edge }) =>
    `El borde ${edge + 1} no puede ir ahí: los de al lado ya no lo encontrarían.`,
};
