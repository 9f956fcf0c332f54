import { type Issue, type IssuePath, pathText } from '../../document/issue.ts';
import { joinWords, type Show } from '../show.ts';
import type { IssueWords, LengthWords } from '../words.ts';

/** Says where: the path, or the document as a whole. */
const at = (path: IssuePath): string => (path.length === 0 ? 'Das Dokument' : `„${pathText(path)}“`);

const WANTED: Readonly<Record<string, string>> = {
  number: 'eine Zahl',
  string: 'ein Text',
  boolean: 'wahr oder falsch',
  array: 'eine Liste',
  object: 'ein Objekt',
  record: 'ein Objekt',
  tuple: 'eine Liste',
};
const FOUND = {
  null: 'null',
  boolean: 'wahr oder falsch',
  number: 'eine Zahl',
  string: 'ein Text',
  array: 'eine Liste',
  object: 'ein Objekt',
  nothing: 'nichts',
} as const;

/** Patterns that have a name people know. */
const PATTERNS: readonly (readonly [test: string, words: string])[] = [
  [
    'A-Za-z0-9._-',
    'aus 1 bis 40 Buchstaben, Ziffern, Punkten, Strichen bestehen und mit Buchstabe oder Ziffer beginnen',
  ],
  ['0-9a-fA-F', 'eine Farbe sein, als # und sechs hexadezimale Ziffern'],
  ['A-Z]{3}', 'ein Währungscode aus drei Großbuchstaben sein'],
  ['date', 'ein Tag sein, den es gibt, als JJJJ-MM-TT'],
];

const round = (value: number): string => String(Number(value.toPrecision(12))).replace('.', ',');

export const lengths: LengthWords = {
  LENGTH_EMPTY: () => 'eintragen, was das Maßband sagt, etwa 24 3/8 oder 619 mm',
  LENGTH_UNREADABLE: () => 'so eintragen, wie das Maßband es sagt, etwa 24 3/8 oder 619 mm',
  LENGTH_NEGATIVE: () => 'eine Länge kann nicht unter null sein',
  LENGTH_NOT_FINITE: () => 'die Länge ist nicht endlich',
  LENGTH_ZERO_DENOMINATOR: () => 'unter dem Bruchstrich kann nicht null stehen',
  LENGTH_FRACTION_NOT_BELOW_ONE: ({ numerator, denominator }) =>
    `${numerator}/${denominator} ist nicht kleiner als eins: ganze Zoll und den Rest schreiben, mit einem Leerzeichen dazwischen`,
  LENGTH_FRACTION_NEEDS_UNIT: () =>
    'ein Bruch braucht seine Einheit, wo sonst Millimeter gemeint sind: in oder " dahinter schreiben',
  LENGTH_COMMA_AMBIGUOUS: ({ part }) =>
    `„${part}“ kann Dezimalstellen oder Tausender meinen: mit Punkt oder ohne Komma schreiben`,
  LENGTH_UNITS_CLASH: ({ units }) => `in einer Länge stehen ${joinWords(units, 'und')}`,
  LENGTH_INCHES_OVER_FOOT: () => 'die Zoll nach den Fuß sind 12 oder mehr',
  LENGTH_TOO_LONG: ({ most }) => `länger als ${most / 1000} m`,
};

export const issues: IssueWords = {
  missing: ({ path }) => `${at(path)} fehlt.`,
  type: ({ path, wanted, found }) =>
    `${at(path)} muss ${WANTED[wanted] ?? wanted} sein; gefunden: ${FOUND[found]}.`,
  notFinite: ({ path }) => `${at(path)} muss eine endliche Zahl sein.`,
  notWhole: ({ path }) => `${at(path)} muss eine ganze Zahl sein.`,
  unknownKey: ({ path, key }) =>
    `${at(path)} hat einen Schlüssel „${key}“, der nicht bekannt ist; vielleicht ist er verschrieben.`,
  forbiddenKey: ({ path, key }) => `${at(path)} hat einen Schlüssel „${key}“, der nirgends erlaubt ist.`,
  tooLow: ({ path, least, including, found }) =>
    `${at(path)} muss ${including ? `mindestens ${round(least)}` : `über ${round(least)}`} sein; gefunden: ${round(found)}.`,
  tooHigh: ({ path, most, including, found }) =>
    `${at(path)} muss ${including ? `höchstens ${round(most)}` : `unter ${round(most)}`} sein; gefunden: ${round(found)}.`,
  textTooShort: ({ path, least }) => `${at(path)} muss mindestens ${least} Zeichen haben.`,
  listTooShort: ({ path, least }) =>
    `${at(path)} muss mindestens ${least} ${least === 1 ? 'Eintrag' : 'Einträge'} haben.`,
  textTooLong: ({ path, most }) => `${at(path)} darf höchstens ${most} Zeichen haben.`,
  listTooLong: ({ path, most }) => `${at(path)} darf höchstens ${most} Einträge haben.`,
  notOneOf: ({ path, options }) =>
    options.length === 0
      ? `${at(path)} ist von keiner bekannten Art.`
      : `${at(path)} muss ${joinWords(
          options.map((option) => `„${option}“`),
          'oder',
        )} sein.`,
  pattern: ({ path, pattern }) =>
    `${at(path)} muss ${PATTERNS.find(([part]) => pattern.includes(part))?.[1] ?? `sein wie ${pattern}`}.`,
  length: ({ path, refusal }) => {
    const word = lengths[refusal.code] as (r: typeof refusal) => string;
    return `${at(path)} „${refusal.text.slice(0, 40)}“ ist keine Länge: ${word(refusal)}.`;
  },
  rule: ({ path, rule }) => `${at(path)} kann so nicht sein: ${rule}.`,
  brokenText: ({ path }) => `${at(path)} enthält ein halbes Schriftzeichen, das sich nicht drucken lässt.`,
  tooDeep: ({ path, most }) => `${at(path)} ist mehr als ${most} Ebenen tief verschachtelt.`,
  tooMany: ({ most }) => `Das Dokument enthält mehr als ${most} Werte.`,
};

export function sayIssue(issue: Issue, show: Show): string {
  const word = issues[issue.kind] as (issue: Issue, show: Show) => string;
  return word(issue, show);
}
