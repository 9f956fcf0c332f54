import type { DocumentKind } from '@panewright/design';
import { pathText } from '../../document/issue.ts';
import { joinWords, type Show } from '../show.ts';
import type { RefusalWords } from '../words.ts';
import { fileRemedy, sayFileRefusal } from './fileRefusals.ts';
import { impossibleOutline } from './impossibleSurvey.ts';
import { sayIssue } from './issues.ts';
import { saySheetsRefusal } from './sheetsRefusals.ts';
import { reshapeRefusals, traceRefusals } from './tracing.ts';

const a: Readonly<Record<DocumentKind, string>> = { job: 'ein Auftrag', catalogue: 'ein Katalog' };
const no: Readonly<Record<DocumentKind, string>> = { job: 'kein Auftrag', catalogue: 'kein Katalog' };
const the: Readonly<Record<DocumentKind, string>> = { job: 'Der Auftrag', catalogue: 'Der Katalog' };

const listIssues = (issues: Parameters<typeof sayIssue>[0][], show: Parameters<typeof sayIssue>[1]) =>
  issues.map((issue) => sayIssue(issue, show)).join(' ');

type Pair = Extract<Parameters<RefusalWords['PULL_REFUSED']>[0], object>['refusal'];

const DIMENSIONS: Readonly<Record<string, string>> = {
  ...{ width: 'die Breite', height: 'die Höhe', thickness: 'die Dicke', diameter: 'der Durchmesser' },
};

/** Why a pair of magnets is refused, as the end of a sentence. */
function sayPair(refusal: Pair, show: Show): string {
  switch (refusal.code) {
    case 'MAGNET_SIZE_NOT_POSITIVE':
      return `${DIMENSIONS[refusal.dimension] ?? refusal.dimension} von Magnet ${refusal.magnet} ist ${show.number(refusal.value, 6)} mm und muss über 0 sein`;
    case 'REMANENCE_OUT_OF_RANGE':
      return `die Remanenz von Magnet ${refusal.magnet} ist ${show.number(refusal.remanence, 4)} T; sie muss über 0 und höchstens ${show.number(refusal.most)} T sein`;
    case 'GAP_NOT_POSITIVE':
      return `der Spalt ist ${show.number(refusal.gap, 6)} mm und muss über 0 sein`;
    case 'GAP_TOO_SMALL':
      return `ein Spalt von ${show.number(refusal.gap, 9)} mm liegt unter den ${show.number(refusal.least, 9)} mm, ab denen die Formel gilt`;
    case 'OFFSET_NOT_FINITE':
      return 'der Versatz ist nicht endlich';
  }
}

type Instance = Extract<Parameters<RefusalWords['PACK_REFUSED']>[0], object>['refusal'];

/** Why an instance is refused, as the end of a sentence. Its lengths have a unit of their own. */
function sayInstance(refusal: Instance, show: Show): string {
  const number = (value: number) => show.number(value, 3);
  switch (refusal.code) {
    case 'NO_PIECES_TO_LAY':
      return 'es wird kein Teil verlangt';
    case 'STRIP_WIDTH_NOT_POSITIVE':
      return `der Streifen ist ${number(refusal.stripWidth)} breit`;
    case 'SPACING_NOT_A_LENGTH':
      return `der Abstand ist ${number(refusal.spacing)}`;
    case 'MARGIN_NOT_A_LENGTH':
      return `die Ränder sind ${number(refusal.side)} und ${number(refusal.end)}`;
    case 'MARGINS_LEAVE_NO_CLOTH':
      return `Ränder von ${number(refusal.side)} lassen nichts von einem ${number(refusal.stripWidth)} breiten Streifen`;
    case 'PIECE_WIDER_THAN_ROLL':
      return `Teil ${refusal.pieceId} braucht ${number(refusal.leastWidth)} quer zu einem Streifen, der ${number(refusal.usableWidth)} lässt`;
    case 'RESERVED_PLACE_HAS_NO_AREA':
      return `ein freizuhaltender Platz (Nummer ${refusal.place + 1}) hat keine Fläche`;
    default:
      return `Teil ${refusal.pieceId} ${sayPiece(refusal, show)}`;
  }
}

function sayPiece(refusal: Extract<Instance, { readonly pieceId: unknown }>, show: Show): string {
  switch (refusal.code) {
    case 'PIECE_ID_TWICE':
      return 'ist zweimal genannt';
    case 'PIECE_DEMAND_NOT_WHOLE':
      return `wird ${show.number(refusal.demand, 6)} mal verlangt, das ist keine ganze Zahl`;
    case 'PIECE_VERTEX_NOT_FINITE':
      return `hat eine Ecke (Nummer ${refusal.vertex + 1}), die nicht endlich ist`;
    case 'PIECE_HAS_NO_AREA':
      return 'hat keine Fläche';
    case 'PIECE_RUNS_CLOCKWISE':
      return 'läuft im Uhrzeigersinn; verlangt ist gegen ihn';
    case 'PIECE_CROSSES_ITSELF':
      return `kreuzt sich an den Kanten ${refusal.edges[0] + 1} und ${refusal.edges[1] + 1}`;
    case 'PIECE_HAS_NO_TURN':
      return 'erlaubt gar keine Drehung: 0 ist, wie es gezeichnet ist';
    case 'PIECE_TURN_NOT_FINITE':
      return 'hat eine Drehung, die nicht endlich ist';
    case 'PIECE_WIDER_THAN_ROLL':
      return 'ist breiter als der Streifen';
  }
}

type Hold = Extract<Parameters<RefusalWords['HOLD_REFUSED']>[0], object>['refusal'];

/** Why a panel's hold is refused, as the end of a sentence. */
function sayHold(refusal: Hold, show: Show): string {
  switch (refusal.code) {
    case 'GRADE_UNKNOWN':
      return `die Güte „${refusal.grade}“ von Magnet ${refusal.magnet} ist nicht bekannt`;
    case 'PULL_REFUSED':
      return `die Zugkraft über ${show.fine(refusal.gap)} liegt außerhalb dessen, wofür die Formel gilt`;
    case 'FASTENER_STRENGTH_UNKNOWN':
      return `noch niemand hat erprobt, wie viel ${refusal.fastener} hält`;
    case 'FASTENER_ENDS_REVERSED':
      return `die Festigkeit von ${refusal.fastener} hat das untere Ende über dem oberen`;
    case 'TOO_FEW_HOLD_POINTS':
      return `${refusal.count} Haltepunkte sind zu wenige; ${refusal.least} sind das Mindeste`;
    case 'HOLD_POINTS_COINCIDE':
      return `die Haltepunkte ${refusal.at + 1} und ${refusal.next + 1} sind an einer Stelle`;
    case 'SPEED_OUT_OF_RANGE':
      return `eine Bö von ${show.speed(refusal.speed)} liegt über den ${show.speed(refusal.most)}, die betrachtet werden`;
    case 'OPENNESS_OUT_OF_RANGE':
      return `ein Gewebe, das zu ${show.percent(refusal.openFraction)} offen ist, liegt außerhalb des Bekannten`;
    default:
      return 'ein Wert liegt außerhalb dessen, wofür die Formel gilt';
  }
}

const documentRefusals = {
  TEXT_NOT_JSON: ({ position, near }) => ({
    what:
      near === ''
        ? 'Die Datei ist leer.'
        : `Dies ist kein JSON: gelesen wurde bis ${position === null ? '' : `Zeichen ${position + 1}, `}„${near.replace(/\s+/g, ' ')}“.`,
    why: 'Ein Auftrag oder Katalog wird als ein JSON-Text aufbewahrt.',
    do: 'Die Datei nehmen, wie sie gespeichert wurde; einer abgebrochenen oder von Hand geänderten kann eine Klammer, ein Anführungszeichen oder ein Komma fehlen.',
  }),
  TEXT_TOO_LONG: ({ length, most }) => ({
    what: `Der Text ist ${length} Zeichen lang; gelesen werden höchstens ${most}.`,
    why: 'Ein Auftrag mit 400 Öffnungen liegt weit darunter.',
    do: 'Nachsehen, ob es die richtige Datei ist; einen größeren Auftrag in zwei teilen.',
  }),
  DOCUMENT_NOT_AN_OBJECT: ({ kind }) => ({
    what: `Dies ist JSON, aber ${no[kind]}: erwartet wird ein Objekt in geschweiften Klammern.`,
    why: '',
    do: `Die Datei so angeben, wie ${a[kind]} gespeichert wird.`,
  }),
  DOCUMENT_OTHER_FORMAT: ({ kind, found, wanted }) => ({
    what: `Dies ist ${no[kind]}: ${found === null ? 'es nennt kein Format' : `als Format steht da „${found}“, nicht „${wanted}“`}.`,
    why: '',
    do: `Ein Dokument angeben, dessen "format" "${wanted}" ist.`,
  }),
  DOCUMENT_VERSION_UNREADABLE: ({ kind, found }) => ({
    what: `${the[kind]} hat keine lesbare Version${found === null ? '' : `: „${found}“`}.`,
    why: 'Die Version sagt, wie der Rest zu verstehen ist; sie wird nicht geraten.',
    do: '"version" auf die ganze Zahl setzen, mit der gespeichert wurde; 1 ist die erste.',
  }),
  DOCUMENT_NEWER: ({ kind, found, newest }) => ({
    what: `${the[kind]} hat die Version ${found}; dieses Programm kennt Versionen bis ${newest}.`,
    why: 'Gespeichert hat ihn ein neueres Programm, und ein Teil ginge hier verloren.',
    do: 'Mit dem neueren Programm öffnen, oder dieses erneuern.',
  }),
  DOCUMENT_INVALID: ({ kind, issues }, show) => ({
    what: `${the[kind]} lässt sich so nicht verwenden. ${listIssues([...issues], show)}`,
    why: 'Beim Einlesen wird nichts geraten und nichts weggelassen.',
    do: issues[0] ? `Mit ${pathText(issues[0].path) || 'dem zuerst Genannten'} beginnen.` : '',
  }),
} satisfies Partial<RefusalWords>;

const storeRefusals = {
  JOB_NOT_FOUND: ({ id }) => ({
    what: `Einen Auftrag „${id}“ gibt es hier nicht.`,
    why: '',
    do: 'In der Liste der Aufträge nachsehen; er kann auf einem anderen Gerät gespeichert sein.',
  }),
  REVISION_NOT_FOUND: ({ id, revision, newest }) => ({
    what: `„${id}“ hat keine Fassung ${revision}; die neueste ist ${newest}.`,
    why: '',
    do: `Eine von 1 bis ${newest} wählen.`,
  }),
  JOB_EXISTS: ({ id, newest }) => ({
    what: `Einen Auftrag „${id}“ gibt es hier schon, in Fassung ${newest}.`,
    why: 'Als neuer gespeichert, würde er verdecken, was da ist.',
    do: 'Ihn öffnen und über seine neueste Fassung speichern, oder dem neuen eine andere Kennung geben.',
  }),
  REVISION_STALE: ({ id, basedOn, newest, savedAt }) => ({
    what: `„${id}“ wurde inzwischen anderswo gespeichert: dies ist aus Fassung ${basedOn} entstanden, die neueste ist ${newest} vom ${savedAt}.`,
    why: 'Darüber gespeichert, ginge die andere Arbeit verloren.',
    do: `Fassung ${newest} öffnen, ansehen, was anders ist, und von dort neu speichern.`,
  }),
  PHOTO_NOT_FOUND: ({ id }) => ({
    what: `Ein Foto „${id}“ gibt es hier nicht.`,
    why: 'Ein Foto bleibt, solange ein Reststück im Bestand es hat, und einen Tag danach.',
    do: 'Das Foto neu aufnehmen.',
  }),
  PHOTO_EXISTS: ({ id }) => ({
    what: `Unter „${id}“ ist schon ein anderes Foto aufbewahrt.`,
    why: '',
    do: 'Das neue unter einer anderen Kennung aufbewahren.',
  }),
  PHOTO_NO_PICTURE: () => ({
    what: 'Die Datei ist kein JPEG-, PNG- oder WebP-Bild, das sich bis zum Ende lesen lässt.',
    why: '',
    do: 'Das Foto als JPEG speichern und noch einmal versuchen.',
  }),
  PHOTO_TOO_LARGE: ({ size, most }, show) => ({
    what: `Das Foto hat ${show.number(size / 1e6)} MB; aufbewahrt werden höchstens ${show.number(most / 1e6)} MB.`,
    why: '',
    do: 'Es verkleinern: 1600 Bildpunkte an der längeren Seite genügen.',
  }),
  PHOTO_TOO_WIDE: ({ width, height, most }) => ({
    what: `Das Foto hat ${width} × ${height} Bildpunkte; keine Seite darf mehr als ${most} haben.`,
    why: '',
    do: 'Es verkleinern: 1600 Bildpunkte an der längeren Seite genügen.',
  }),
  PATTERN_NOT_FOUND: ({ id }) => ({
    what: `Ein aufbewahrtes Schnittmuster „${id}“ gibt es hier nicht.`,
    why: '',
    do: 'In der Liste nachsehen; es kann auf einem anderen Gerät aufbewahrt sein.',
  }),
  PATTERN_EXISTS: ({ id, name }) => ({
    what: `Ein Schnittmuster „${id}“ ist schon aufbewahrt: „${name}“.`,
    why: 'Ein aufbewahrtes Schnittmuster wird nie überschrieben; spätere Aufträge können darauf beruhen.',
    do: 'Das neue unter einer anderen Kennung aufbewahren.',
  }),
  STORE_BUSY: () => ({
    what: 'Ein anderes Programm schreibt gerade in den Datenordner.',
    why: 'Nichts wurde gespeichert.',
    do: 'Gleich noch einmal versuchen.',
  }),
  STORE_FULL: () => ({
    what: 'Der Datenträger mit dem Datenordner ist voll.',
    why: 'Nichts wurde gespeichert; was vorher gespeichert war, ist sicher.',
    do: 'Platz schaffen und noch einmal speichern.',
  }),
} satisfies Partial<RefusalWords>;

const textRefusals = {
  TAPE_TEXT_UNREADABLE: ({ text }) => ({
    what: `Die gemessene Strecke „${text.slice(0, 60)}“ ist nicht lesbar.`,
    why: '',
    do: 'Als MARKE.ECKE-MARKE.ECKE=MM schreiben, zum Beispiel 9.1-12.0=1323.9.',
  }),
  RULER_TEXT_UNREADABLE: ({ text }) => ({
    what: `Die gemessene Länge der Balken, „${text.slice(0, 60)}“, ist nicht lesbar.`,
    why: '',
    do: 'Als XxY in mm schreiben, zum Beispiel 200.18x150.29.',
  }),
  TAPS_TEXT_UNREADABLE: ({ text }) => ({
    what: `Die Punkte auf der Linie, „${text.slice(0, 60)}“, sind nicht lesbar.`,
    why: '',
    do: 'Als FOTO:X,Y X,Y X,Y in Bildpunkten schreiben, der Linie nach, zum Beispiel 1:620,720 2330,600 700,1552.',
  }),
  LINE_TEXT_UNREADABLE: ({ text }) => ({
    what: `„${text.slice(0, 60)}“ ist keine der Linien, die gemeint sein können.`,
    why: '',
    do: 'darkest (die dunklere), inner (die innere) oder outer (die äußere) angeben.',
  }),
  TAPS_UNUSABLE: ({ photo, photos, points, least }) => ({
    what:
      photo < 0 || photo >= photos
        ? `Die Punkte auf der Linie gehören zu Foto ${photo + 1}; es ${photos === 1 ? 'gibt 1 Foto' : `gibt ${photos} Fotos`}.`
        : `Die Punkte auf der Linie sind nur ${points} und umschließen nichts.`,
    why: '',
    do: `Mindestens ${least} Punkte auf der Linie eines Fotos antippen, der Reihe nach herum.`,
  }),
  PHOTO_UNREADABLE: ({ name }) => ({
    what: `„${name}“ ist kein lesbares JPEG-Bild.`,
    why: '',
    do: 'Das Foto als JPEG speichern und noch einmal versuchen.',
  }),
  TRACE_REFUSED: ({ refusal }) => ({
    what: (traceRefusals[refusal.code] as (of: typeof refusal) => string)(refusal),
    why: 'Ein falscher Umriss kostet mehr als ein zweites Foto.',
    do: '',
  }),
  RESHAPE_REFUSED: ({ refusal }, show) => ({
    what: (reshapeRefusals[refusal.code] as (of: typeof refusal, show: Show) => string)(refusal, show),
    why: '',
    do: '',
  }),
  BYTES_NOT_BASE64: ({ name }) => ({
    what: `Die Bytes von „${name}“ sind nicht base64.`,
    why: '',
    do: 'Die Bytes der Datei in base64 senden, ohne Zeilenumbrüche.',
  }),
  DRAWING_REFUSED: ({ name, refusal }, show) => ({
    what: `„${name}“ ergibt keinen Umriss: ${sayFileRefusal(refusal, show)}.`,
    why: '',
    do: fileRemedy(refusal),
  }),
} satisfies Partial<RefusalWords>;

const designRefusals = {
  SHAPE_IMPOSSIBLE: ({ refusal }, show) => ({
    what: `Diese Kanten ergeben keine Form: ${impossibleOutline(refusal, show)}.`,
    why: '',
    do: 'Einen geschlossenen Ring angeben, von außen gesehen gegen den Uhrzeigersinn, der sich nicht kreuzt.',
  }),
  PULL_PLACE_MISSING: ({ id }) => ({
    what: `Fall „${id}“ sagt nicht, wo der zweite Magnet ist.`,
    why: '',
    do: 'gap_mm (und offset_mm) oder centre_offset_mm angeben.',
  }),
  PULL_REFUSED: ({ id, refusal }, show) => ({
    what: `Fall „${id}“ lässt sich nicht berechnen: ${sayPair(refusal, show)}.`,
    why: '',
    do: 'Den Fall berichtigen; die anderen wurden nicht ausgegeben.',
  }),
  PACK_REFUSED: ({ refusal }, show) => ({
    what: `Die Teile lassen sich nicht auslegen: ${sayInstance(refusal, show)}.`,
    why: '',
    do: 'Die Aufgabe berichtigen.',
  }),
  SHEETS_REFUSED: ({ refusal }, show) => saySheetsRefusal(refusal, show),
  OPENING_UNKNOWN: ({ opening, known }) => ({
    what: `Dieser Auftrag hat keine Öffnung „${opening.slice(0, 60)}“.`,
    why: '',
    do:
      known.length === 0
        ? 'Er hat noch keine Öffnung.'
        : `Eine dieser Öffnungen nennen: ${joinWords(known, 'oder')}.`,
  }),
  OPENING_NOT_HELD: ({ opening }, show) => ({
    what: `Öffnung ${show.opening(opening)} hat noch keine Haltepunkte.`,
    why: 'Ihr Umriss oder ihre Blende ließ sich nicht berechnen.',
    do: 'Mit check nachsehen, was ihr fehlt.',
  }),
  HOLD_REFUSED: ({ opening, refusal }, show) => ({
    what: `Was Öffnung ${show.opening(opening)} hält, lässt sich nicht berechnen: ${sayHold(refusal, show)}.`,
    why: '',
    do: 'Ihr Glas, ihre Magnete und das Wetter des Auftrags ansehen.',
  }),
} satisfies Partial<RefusalWords>;

const doorRefusals = {
  OPERATION_UNKNOWN: ({ name, known }) => ({
    what: `Einen Befehl „${name.slice(0, 60)}“ gibt es nicht.`,
    why: '',
    do: `Einen dieser Befehle verwenden: ${joinWords(known, 'oder')}.`,
  }),
  INPUT_INVALID: ({ operation, issues }, show) => ({
    what: `Die Eingabe von ${operation} lässt sich nicht verwenden. ${listIssues([...issues], show)}`,
    why: '',
    do: 'Das Genannte berichtigen und neu senden.',
  }),
  TAKES_TOO_LONG: ({ seconds }) => ({
    what: `Dies dauerte länger als ${seconds} s und wurde angehalten.`,
    why: '',
    do: 'Mit weniger Öffnungen auf einmal versuchen, oder auf der Befehlszeile.',
  }),
  HOST_NOT_ALLOWED: ({ host }) => ({
    what: `Dieser Server antwortet nicht für „${host.slice(0, 60)}“.`,
    why: 'Er dient nur diesem Gerät, damit keine fremde Seite an die Aufträge kommt.',
    do: 'Unter 127.0.0.1 oder localhost öffnen, oder den Namen in PANEWRIGHT_HOSTS aufnehmen.',
  }),
  ORIGIN_NOT_ALLOWED: ({ origin }) => ({
    what: `Eine Seite von „${origin.slice(0, 60)}“ hat gefragt; nur die Seiten dieses Servers dürfen das.`,
    why: 'Eine fremde Seite darf die Aufträge nicht lesen oder ändern.',
    do: 'Die Seite von diesem Server öffnen.',
  }),
  BODY_NOT_JSON: ({ found }) => ({
    what: `Die Anfrage muss als application/json gesendet werden; sie kam als „${found.slice(0, 60)}“.`,
    why: '',
    do: 'Den Inhaltstyp setzen.',
  }),
  PATH_UNKNOWN: ({ path }) => ({
    what: `Unter „${path.slice(0, 80)}“ gibt es nichts.`,
    why: '',
    do: 'Die Befehle stehen unter /api/openapi.json.',
  }),
} satisfies Partial<RefusalWords>;

export const refusals: RefusalWords = {
  ...documentRefusals,
  ...storeRefusals,
  ...textRefusals,
  ...designRefusals,
  ...doorRefusals,
};
