import type { ReshapeRefusal } from '@panewright/geometry';
import type { TraceQuestion, TraceRefusal } from '@panewright/photo';
import type { Show } from '../show.ts';

type Words<U extends { readonly code: string }> = {
  readonly [C in U['code']]: (of: Extract<U, { readonly code: C }>) => string;
};

const comma = (value: number, decimals: number) => value.toFixed(decimals).replace('.', ',');
const mm = (value: number) => `${comma(value, 1)} mm`;
const percent = (share: number) => `${Math.round(share * 100)} %`;
const photo = (index: number) => `Foto ${index + 1}`;
const tape = (index: number) => `Strecke ${index + 1}`;

/** Why photos give no outline: what is the matter, and what would do. */
export const traceRefusals: Words<TraceRefusal> = {
  NO_PHOTO: () => 'Es wurde kein Foto angegeben.',
  ULTRA_WIDE_LENS: ({ photo: at, focalLength35, least }) =>
    `Das Objektiv von ${photo(at)} ist zu weit (${focalLength35} mm, entsprechend 35 mm; ${least} mm oder mehr sind nötig): die Hauptkamera des Telefons nehmen.`,
  SCALE_NOT_MEASURED: () =>
    'Nichts sagt die wahre Größe: eine Strecke zwischen zwei Marken messen, oder die gedruckten Balken messen.',
  TAPE_NOT_A_LENGTH: ({ tape: at, length }) => `Die ${tape(at)} ist ${length} mm: sie muss über 0 sein.`,
  TAPE_CORNER_UNKNOWN: ({ tape: at, marker, corner }) =>
    `Die ${tape(at)} nennt Marke ${marker}, Ecke ${corner}: Marken sind 0 bis 15, Ecken 0 bis 3, und ihre beiden Enden sind verschieden.`,
  TAPE_MARKER_NOT_SEEN: ({ tape: at, marker }) =>
    `Die ${tape(at)} endet an Marke ${marker}, und kein Foto zeigt deren Blatt: ein Foto davon machen.`,
  RULER_IMPLAUSIBLE: ({ x, y, most }) =>
    `Die gedruckten Balken wurden als ${mm(x)} und ${mm(y)} gemessen: mehr als ${percent(most)} neben 200 und 150 mm. In Originalgröße drucken, oder neu messen.`,
  TOO_FEW_MARKERS: ({ photo: at, found, least }) =>
    `Nur ${found} Marken sind in ${photo(at)} zu sehen; ${least} sind nötig: zurücktreten, die Blätter flach und im Licht halten.`,
  ONE_SHEET_ONLY: ({ photo: at }) =>
    `In ${photo(at)} ist nur ein Blatt zu sehen: ohne zwei Blätter oder mehr im Bild keine wahre Größe.`,
  PHOTO_TOO_SMALL: ({ photo: at, side, least }) =>
    `Die Marken von ${photo(at)} sind ${Math.round(side)} Bildpunkte breit, ${least} sind nötig: das Foto in voller Größe nehmen, oder näher herangehen.`,
  PHOTO_BLURRED: ({ photo: at }) =>
    `Das Bild von ${photo(at)} ist unscharf: ruhig halten, oder mit mehr Licht aufnehmen.`,
  PHOTOS_NOT_LINKED: () =>
    'Die Fotos lassen sich nicht zusammenbringen: jedes braucht Blätter, die auch ein anderes zeigt, und die Folie muss unbewegt liegen.',
  MARKERS_DISAGREE: ({ photo: at, residualPx, most }) =>
    `Die Marken von ${photo(at)} liegen nicht, wie die Blätter sie haben (${comma(residualPx, 2)} Bildpunkte daneben, höchstens ${most}): ein Blatt wurde bewegt oder geknickt, das Objektiv gezoomt, oder die Blätter haben ein anderes Papier als angegeben (A4, Letter).`,
  TAPE_DISAGREES: ({ tape: at, length, predicted, sigma }) =>
    `Die ${tape(at)} von ${mm(length)} widerspricht dem Rest, der ${mm(predicted)} ± ${mm(1.96 * sigma)} ergibt: noch einmal messen.`,
  NO_INK_LINE: () =>
    'Keine geschlossene Linie gefunden: mit breitem dunklem Stift ganz herum nachzeichnen und die ganze Linie im Bild behalten.',
  INK_INCOMPLETE: ({ support, least }) =>
    `Nur ${percent(support)} der Linie sind zu sehen, ${percent(least)} sind nötig: wegnehmen, was darauf liegt, oder ein zweites Foto machen.`,
  OUTLINE_NOT_FITTED: () =>
    'Die Linie geht nicht in Strecken und Bögen auf: die Ecken neu nachzeichnen, oder den Umriss von Hand zeigen.',
  FIT_POOR: ({ inliers, least }) =>
    `Nur ${percent(inliers)} der Linie passen zu einem Umriss, ${percent(least)} sind nötig: ist da mehr als eine Linie?`,
  STOPPED: () => 'Die Arbeit wurde angehalten.',
};

/** What to look at before cutting from a traced outline. */
export const traceQuestions: Words<TraceQuestion> = {
  PARALLEL_LINE: ({ offset }) =>
    `Zwei Linien laufen nebeneinander, ${mm(Math.abs(offset))} auseinander: welche ist gemeint?`,
  TAPE_DOUBTFUL: ({ tape: at, length, predicted }) =>
    `Die ${tape(at)} von ${mm(length)} stimmt kaum mit dem Rest überein, der ${mm(predicted)} ergibt: noch einmal messen.`,
  INK_PARTLY_SEEN: ({ support }) =>
    `Nur ${percent(support)} der Linie sind zu sehen: den Rest selbst ansehen.`,
  INK_SCATTERED: ({ inliers }) =>
    `Nur ${percent(inliers)} der Linie liegen auf dem Umriss: ansehen, wo sie es nicht tut.`,
  FILM_NOT_FLAT: ({ scatter }) =>
    `Die Folie liegt nicht flach (die Linie streut um ${mm(scatter)}): glätten und neu fotografieren.`,
};

/** Why an edge is not moved by hand. */
export const reshapeRefusals: {
  readonly [C in ReshapeRefusal['code']]: (
    of: Extract<ReshapeRefusal, { readonly code: C }>,
    show: Show,
  ) => string;
} = {
  EDGE_NOT_THERE: ({ edge, edges }) => `Kante ${edge + 1} gibt es nicht; der Umriss hat ${edges}.`,
  EDGE_NOT_ROUND: ({ edge }) => `Kante ${edge + 1} ist gerade und hat keinen Radius.`,
  CORNER_NOT_SHARP: ({ edge }) =>
    `Kante ${edge + 1} endet glatt: die Kante verschieben, oder den Radius daneben ändern.`,
  RADIUS_TOO_SMALL: ({ edge, least }, show) =>
    `Der Radius von Kante ${edge + 1} muss über ${show.length(least)} sein.`,
  NEIGHBOURS_DO_NOT_MEET: ({ edge }) =>
    `Kante ${edge + 1} kann nicht dorthin: die Kanten daneben träfen sie nicht mehr.`,
};
