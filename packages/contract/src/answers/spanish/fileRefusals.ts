import type { FileNote, FilePlace, FileRefusal, FileUnit } from '@panewright/files';
import { joinWords, type Show } from '../show.ts';

type Words<U extends { readonly code: string }> = {
  readonly [C in U['code']]: (of: Extract<U, { readonly code: C }>, show: Show) => string;
};

const at = ({ line, entity, id }: FilePlace) =>
  `${entity}${id === undefined ? '' : ` ${id}`} en la línea ${line}`;
const where = ({ x, y }: { readonly x: number; readonly y: number }, show: Show) =>
  `${show.number(x, 2)} | ${show.number(y, 2)} mm`;
const onLayer = (layer: string | undefined) => (layer === undefined ? '' : ` en la capa «${layer}»`);

const UNITS: Readonly<Record<FileUnit, string>> = {
  ...{ mm: 'mm', cm: 'cm', dm: 'dm', m: 'm', in: 'pulgadas', ft: 'pies', yd: 'yardas' },
  ...{ px: 'píxeles de 1/96 in', px90: 'píxeles de 1/90 in', px72: 'píxeles de 1/72 in', pt: 'puntos' },
};
export const sayFileUnit = (unit: FileUnit): string => UNITS[unit];

const refusals: Words<FileRefusal> = {
  OPTION_OUT_OF_RANGE: ({ option, value }) => `${option} no puede ser ${value}`,
  FILE_EMPTY: () => 'está vacío',
  FILE_FORMAT_NOT_READ: ({ format }) =>
    format === 'unknown' ? 'no es DXF, SVG ni CSV' : `${format} no se lee`,
  FILE_TOO_LARGE: ({ what, found, most }) => `tiene ${found} ${what}, y se leen ${most} como mucho`,
  FILE_TEXT_DAMAGED: ({ encoding, offset }) => `el byte ${offset} no es ninguna letra de ${encoding}`,
  UNIT_NOT_STATED: ({ width, height, offered }, show) =>
    `no dice qué son sus números; mide ${show.number(width, 3)} por ${show.number(height, 3)}, quizá ${joinWords(offered.map(sayFileUnit), 'o')}`,
  UNIT_NOT_READ: ({ stated }) => `su unidad, «${stated}», no es ninguna en que se dibuje una ventana`,
  FILE_CUT_SHORT: ({ line, wanted }) => `acaba en la línea ${line}, antes de: ${wanted}`,
  FILE_UNREADABLE_AT: ({ line, wanted, found }) =>
    `la línea ${line} dice «${found.slice(0, 40)}», y se espera: ${wanted}`,
  NUMBER_UNREADABLE: ({ place, what, text }) => `${what} de ${at(place)} dice «${text.slice(0, 40)}»`,
  NUMBER_OUT_OF_RANGE: ({ place, what, value }) => `${what} de ${at(place)} es ${value}`,
  VALUE_MISSING: ({ place, what }) => `a ${at(place)} le falta: ${what}`,
  COUNT_WRONG: ({ place, what, stated, found }) => `${at(place)} dice ${stated} ${what} y tiene ${found}`,
  ENTITY_NOT_FLAT: ({ place }) => `${at(place)} no está en el plano del dibujo`,
  SPLINE_WITHOUT_CONTROL_POINTS: ({ place }) => `${at(place)} es una spline sin puntos de control`,
  SPLINE_KNOTS_WRONG: ({ place }) => `los nudos de ${at(place)} no forman una spline`,
  REFERENCE_MISSING: ({ place, name }) => `${at(place)} usa «${name}», que no está en el archivo`,
  REFERENCE_CIRCULAR: ({ place, name }) => `${at(place)}: «${name}» se contiene a sí mismo`,
  CURVE_NOT_FITTED: ({ place, tolerance }) => `ningún arco sigue ${at(place)} dentro de ${tolerance} mm`,
  NO_OUTLINE: ({ layers }) =>
    `no tiene ninguna línea cerrada${
      layers.length > 0
        ? ` en ${joinWords(
            layers.map((layer) => `«${layer}»`),
            'y',
          )}`
        : ''
    }`,
  OUTLINE_OPEN: ({ from, to, gap, layer, place }, show) =>
    `la línea que empieza con ${at(place)}${onLayer(layer)} está abierta ${show.number(gap, 2)} mm, entre ${where(from, show)} y ${where(to, show)}`,
  ENDS_MEET: ({ at: point, ends, layer }, show) =>
    `${ends} extremos${onLayer(layer)} se juntan en ${where(point, show)}, y no se dice cuáles siguen`,
  FILE_OUTLINE_CROSSES_ITSELF: ({ at: point, layer }, show) =>
    `un contorno${onLayer(layer)} se cruza en ${where(point, show)}`,
  OUTLINE_TOO_LARGE: ({ size, most, place }, show) =>
    `el contorno de ${at(place)} mide ${show.number(size, 0)} mm, ${show.number(most, 0)} mm como mucho: ¿es la unidad correcta?`,
  COLUMNS_UNCLEAR: ({ line, columns }) =>
    `la línea ${line} tiene ${columns} columnas, y no se dice cuáles son x e y`,
  COMMAS_UNCLEAR: ({ line }) => `la línea ${line} tiene comas entre sus números y en ellos`,
  POINTS_TOO_FEW: ({ points, least }) => `${points} puntos son muy pocos; hacen falta ${least}`,
  TRACE_TOO_FEW_POINTS: ({ points, least }) => `${points} puntos son muy pocos; hacen falta ${least}`,
  TRACE_POINT_NOT_FINITE: ({ index }) => `el punto ${index + 1} no es finito`,
  TRACE_SIGMA_NOT_POSITIVE: ({ index, sigma }) => `la dispersión del punto ${index + 1} es ${sigma}`,
  TRACE_ENCLOSES_NOTHING: () => 'sus puntos no encierran nada',
  TRACE_NO_LINES_OR_ARCS: ({ points }) => `ninguna recta ni arco sigue sus ${points} puntos`,
  TRACE_TOO_MANY_EDGES: ({ edges, most }) => `sus puntos piden ${edges} rectas y arcos, ${most} como mucho`,
  TRACE_MISFIT: ({ share }, show) => `solo el ${show.percent(share)} de sus puntos está en el mejor contorno`,
};

const notes: Words<FileNote> = {
  GAPS_CLOSED: ({ count, widest, at: point }, show) =>
    `Se cerraron ${count} huecos entre líneas, el mayor de ${show.number(widest, 3)} mm en ${where(point, show)}.`,
  DUPLICATES_LEFT_OUT: ({ count }) => `Se omitieron ${count} líneas dibujadas dos veces.`,
  TINY_PIECES_LEFT_OUT: ({ count, longest }, show) =>
    `Se omitieron ${count} trozos de ${show.number(longest, 4)} mm como mucho.`,
  OPEN_LINES_LEFT_OUT: ({ count, layer }) => `Se omitieron ${count} líneas abiertas${onLayer(layer)}.`,
  KIND_LEFT_OUT: ({ kind, count }) => `Se omitieron ${count} de la clase ${kind}.`,
  HIDDEN_LEFT_OUT: ({ count }) => `Se omitieron ${count} líneas ocultas.`,
  PAPER_SPACE_LEFT_OUT: ({ count }) => `Se omitieron ${count} líneas del marco del papel.`,
  CURVES_FITTED: ({ curves, arcs, farthest }, show) =>
    `${curves} curvas se dibujaron como ${arcs} arcos, a ${show.number(farthest, 3)} mm como mucho.`,
  UNIT_OVERRULED: ({ stated, used }) =>
    `El archivo dice ${sayFileUnit(stated)}; se usó ${sayFileUnit(used)}, como se indicó.`,
  STYLE_SHEET_NOT_READ: ({ line }) => `No se leyó la hoja de estilo de la línea ${line}.`,
  ENCODING_NOT_KNOWN: ({ encoding }) =>
    `No se conoce la codificación «${encoding}»; los nombres pueden salir mal escritos.`,
  OUTLINES_OVERLAP: ({ first, second }) => `Los contornos ${first + 1} y ${second + 1} se solapan.`,
};

/** Why a file gives no outline, as the end of a sentence. */
export const sayFileRefusal = (refusal: FileRefusal, show: Show): string =>
  (refusals[refusal.code] as (of: FileRefusal, show: Show) => string)(refusal, show);

export const sayFileNote = (note: FileNote, show: Show): string =>
  (notes[note.code] as (of: FileNote, show: Show) => string)(note, show);

/** What would do. */
export function fileRemedy({ code }: FileRefusal): string {
  switch (code) {
    case 'UNIT_NOT_STATED':
    case 'UNIT_NOT_READ':
      return 'Diga qué es una unidad del archivo.';
    case 'OUTLINE_OPEN':
    case 'ENDS_MEET':
    case 'FILE_OUTLINE_CROSSES_ITSELF':
    case 'NO_OUTLINE':
      return 'Cierre la línea donde se dibujó, y guárdelo otra vez.';
    case 'FILE_FORMAT_NOT_READ':
      return 'Guárdelo como DXF (texto), SVG o CSV.';
    default:
      return 'Mire el archivo donde se hizo, y guárdelo otra vez.';
  }
}
