import type { FileNote, FilePlace, FileRefusal, FileUnit } from '@panewright/files';
import { joinWords, type Show } from '../show.ts';

type Words<U extends { readonly code: string }> = {
  readonly [C in U['code']]: (of: Extract<U, { readonly code: C }>, show: Show) => string;
};

const at = ({ line, entity, id }: FilePlace) =>
  `${entity}${id === undefined ? '' : ` ${id}`} in Zeile ${line}`;
const where = ({ x, y }: { readonly x: number; readonly y: number }, show: Show) =>
  `${show.number(x, 2)} | ${show.number(y, 2)} mm`;
const onLayer = (layer: string | undefined) => (layer === undefined ? '' : ` auf Ebene „${layer}“`);

const UNITS: Readonly<Record<FileUnit, string>> = {
  ...{ mm: 'mm', cm: 'cm', dm: 'dm', m: 'm', in: 'Zoll', ft: 'Fuß', yd: 'Yard' },
  ...{ px: 'Pixel zu 1/96 in', px90: 'Pixel zu 1/90 in', px72: 'Pixel zu 1/72 in', pt: 'Punkt' },
};
export const sayFileUnit = (unit: FileUnit): string => UNITS[unit];

const refusals: Words<FileRefusal> = {
  OPTION_OUT_OF_RANGE: ({ option, value }) => `${option} darf nicht ${value} sein`,
  FILE_EMPTY: () => 'sie ist leer',
  FILE_FORMAT_NOT_READ: ({ format }) =>
    format === 'unknown' ? 'sie ist weder DXF noch SVG noch CSV' : `${format} wird nicht gelesen`,
  FILE_TOO_LARGE: ({ what, found, most }) => `sie hat ${found} ${what}, gelesen werden höchstens ${most}`,
  FILE_TEXT_DAMAGED: ({ encoding, offset }) => `Byte ${offset} ist kein Zeichen von ${encoding}`,
  UNIT_NOT_STATED: ({ width, height, offered }, show) =>
    `sie sagt nicht, was ihre Zahlen sind; es sind ${show.number(width, 3)} mal ${show.number(height, 3)} davon, vielleicht ${joinWords(offered.map(sayFileUnit), 'oder')}`,
  UNIT_NOT_READ: ({ stated }) => `in ihrer Einheit „${stated}“ zeichnet man kein Fenster`,
  FILE_CUT_SHORT: ({ line, wanted }) => `sie endet in Zeile ${line}, vor: ${wanted}`,
  FILE_UNREADABLE_AT: ({ line, wanted, found }) =>
    `in Zeile ${line} steht „${found.slice(0, 40)}“, erwartet: ${wanted}`,
  NUMBER_UNREADABLE: ({ place, what, text }) => `${what} von ${at(place)} lautet „${text.slice(0, 40)}“`,
  NUMBER_OUT_OF_RANGE: ({ place, what, value }) => `${what} von ${at(place)} ist ${value}`,
  VALUE_MISSING: ({ place, what }) => `${at(place)} fehlt: ${what}`,
  COUNT_WRONG: ({ place, what, stated, found }) => `${at(place)} nennt ${stated} ${what} und hat ${found}`,
  ENTITY_NOT_FLAT: ({ place }) => `${at(place)} liegt nicht in der Ebene der Zeichnung`,
  SPLINE_WITHOUT_CONTROL_POINTS: ({ place }) => `${at(place)} ist ein Spline ohne Stützpunkte`,
  SPLINE_KNOTS_WRONG: ({ place }) => `die Knoten von ${at(place)} ergeben keinen Spline`,
  REFERENCE_MISSING: ({ place, name }) => `${at(place)} verwendet „${name}“, und das ist nicht in der Datei`,
  REFERENCE_CIRCULAR: ({ place, name }) => `${at(place)}: „${name}“ enthält sich selbst`,
  CURVE_NOT_FITTED: ({ place, tolerance }) => `keine Bögen folgen ${at(place)} auf ${tolerance} mm genau`,
  NO_OUTLINE: ({ layers }) =>
    `sie hat keine geschlossene Linie${
      layers.length > 0
        ? ` auf ${joinWords(
            layers.map((layer) => `„${layer}“`),
            'und',
          )}`
        : ''
    }`,
  OUTLINE_OPEN: ({ from, to, gap, layer, place }, show) =>
    `die Linie, die mit ${at(place)}${onLayer(layer)} beginnt, ist um ${show.number(gap, 2)} mm offen, zwischen ${where(from, show)} und ${where(to, show)}`,
  ENDS_MEET: ({ at: point, ends, layer }, show) =>
    `${ends} Enden${onLayer(layer)} treffen sich bei ${where(point, show)}, und welche weitergehen, ist nicht gesagt`,
  FILE_OUTLINE_CROSSES_ITSELF: ({ at: point, layer }, show) =>
    `ein Umriss${onLayer(layer)} kreuzt sich bei ${where(point, show)}`,
  OUTLINE_TOO_LARGE: ({ size, most, place }, show) =>
    `der Umriss von ${at(place)} ist ${show.number(size, 0)} mm groß, höchstens ${show.number(most, 0)} mm: stimmt die Einheit`,
  COLUMNS_UNCLEAR: ({ line, columns }) =>
    `Zeile ${line} hat ${columns} Spalten, und welche x und y sind, ist nicht gesagt`,
  COMMAS_UNCLEAR: ({ line }) => `Zeile ${line} hat Kommas zwischen ihren Zahlen und in ihnen`,
  POINTS_TOO_FEW: ({ points, least }) => `${points} Punkte sind zu wenige; ${least} sind nötig`,
  TRACE_TOO_FEW_POINTS: ({ points, least }) => `${points} Punkte sind zu wenige; ${least} sind nötig`,
  TRACE_POINT_NOT_FINITE: ({ index }) => `Punkt ${index + 1} ist nicht endlich`,
  TRACE_SIGMA_NOT_POSITIVE: ({ index, sigma }) => `die Streuung von Punkt ${index + 1} ist ${sigma}`,
  TRACE_ENCLOSES_NOTHING: () => 'ihre Punkte umschließen nichts',
  TRACE_NO_LINES_OR_ARCS: ({ points }) => `keine Strecken und Bögen folgen ihren ${points} Punkten`,
  TRACE_TOO_MANY_EDGES: ({ edges, most }) =>
    `ihre Punkte brauchen ${edges} Strecken und Bögen, höchstens ${most}`,
  TRACE_MISFIT: ({ share }, show) => `nur ${show.percent(share)} ihrer Punkte liegen auf dem besten Umriss`,
};

const notes: Words<FileNote> = {
  GAPS_CLOSED: ({ count, widest, at: point }, show) =>
    `${count} Lücken wurden geschlossen, die weiteste von ${show.number(widest, 3)} mm bei ${where(point, show)}.`,
  DUPLICATES_LEFT_OUT: ({ count }) => `${count} doppelt gezeichnete Linien wurden weggelassen.`,
  TINY_PIECES_LEFT_OUT: ({ count, longest }, show) =>
    `${count} Stücke von höchstens ${show.number(longest, 4)} mm wurden weggelassen.`,
  OPEN_LINES_LEFT_OUT: ({ count, layer }) => `${count} offene Linien${onLayer(layer)} wurden weggelassen.`,
  KIND_LEFT_OUT: ({ kind, count }) => `${count} von der Art ${kind} wurden weggelassen.`,
  HIDDEN_LEFT_OUT: ({ count }) => `${count} verborgene Linien wurden weggelassen.`,
  PAPER_SPACE_LEFT_OUT: ({ count }) => `${count} Linien des Papierrahmens wurden weggelassen.`,
  CURVES_FITTED: ({ curves, arcs, farthest }, show) =>
    `${curves} Kurven wurden als ${arcs} Bögen gezeichnet, höchstens ${show.number(farthest, 3)} mm daneben.`,
  UNIT_OVERRULED: ({ stated, used }) =>
    `Die Datei sagt ${sayFileUnit(stated)}; wie angegeben wurden ${sayFileUnit(used)} verwendet.`,
  STYLE_SHEET_NOT_READ: ({ line }) => `Die Formatvorlage in Zeile ${line} wurde nicht gelesen.`,
  ENCODING_NOT_KNOWN: ({ encoding }) =>
    `Die Zeichenkodierung „${encoding}“ ist nicht bekannt; Namen können falsch geschrieben sein.`,
  OUTLINES_OVERLAP: ({ first, second }) => `Die Umrisse ${first + 1} und ${second + 1} überschneiden sich.`,
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
      return 'Angeben, was eine Einheit der Datei ist.';
    case 'OUTLINE_OPEN':
    case 'ENDS_MEET':
    case 'FILE_OUTLINE_CROSSES_ITSELF':
    case 'NO_OUTLINE':
      return 'Die Linie dort schließen, wo sie gezeichnet wurde, und neu speichern.';
    case 'FILE_FORMAT_NOT_READ':
      return 'Als DXF (Text), SVG oder CSV speichern.';
    default:
      return 'Die Datei dort ansehen, wo sie gemacht wurde, und neu speichern.';
  }
}
