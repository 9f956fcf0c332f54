import { type Issue, type IssuePath, pathText } from '../../document/issue.ts';
import { joinWords, type Show } from '../show.ts';
import type { IssueWords, LengthWords } from '../words.ts';

/** Says where: the path, or the document as a whole. */
const at = (path: IssuePath): string => (path.length === 0 ? 'El documento' : `«${pathText(path)}»`);

const WANTED: Readonly<Record<string, string>> = {
  number: 'un número',
  string: 'un texto',
  boolean: 'verdadero o falso',
  array: 'una lista',
  object: 'un objeto',
  record: 'un objeto',
  tuple: 'una lista',
};
const FOUND = {
  null: 'null',
  boolean: 'verdadero o falso',
  number: 'un número',
  string: 'un texto',
  array: 'una lista',
  object: 'un objeto',
  nothing: 'nada',
} as const;

/** Patterns that have a name people know. */
const PATTERNS: readonly (readonly [test: string, words: string])[] = [
  ['A-Za-z0-9._-', 'de 1 a 40 letras, cifras, puntos, guiones o guiones bajos, y empezar por letra o cifra'],
  ['0-9a-fA-F', 'un color como # y seis cifras hexadecimales'],
  ['A-Z]{3}', 'un código de moneda de tres mayúsculas'],
  ['date', 'un día que exista, como AAAA-MM-DD'],
];

const round = (value: number): string => String(Number(value.toPrecision(12))).replace('.', ',');

export const lengths: LengthWords = {
  LENGTH_EMPTY: () => 'escriba lo que dice la cinta, como 24 3/8 o 619 mm',
  LENGTH_UNREADABLE: () => 'escríbalo como lo dice la cinta, como 24 3/8 o 619 mm',
  LENGTH_NEGATIVE: () => 'una longitud no puede ser menor que cero',
  LENGTH_NOT_FINITE: () => 'no es una longitud finita',
  LENGTH_ZERO_DENOMINATOR: () => 'una fracción no puede tener cero bajo la raya',
  LENGTH_FRACTION_NOT_BELOW_ONE: ({ numerator, denominator }) =>
    `${numerator}/${denominator} no es menor que uno: escriba las pulgadas enteras y el resto, con un espacio en medio`,
  LENGTH_FRACTION_NEEDS_UNIT: () =>
    'una fracción necesita su unidad donde se entienden milímetros: escriba in o " detrás',
  LENGTH_COMMA_AMBIGUOUS: ({ part }) =>
    `«${part}» puede ser un decimal o millares: escríbalo con punto o sin la coma`,
  LENGTH_UNITS_CLASH: ({ units }) => `nombra ${joinWords(units, 'y')} en una sola longitud`,
  LENGTH_INCHES_OVER_FOOT: () => 'las pulgadas tras los pies son 12 o más',
  LENGTH_TOO_LONG: ({ most }) => `pasa de ${most / 1000} m`,
};

export const issues: IssueWords = {
  missing: ({ path }) => `${at(path)} falta.`,
  type: ({ path, wanted, found }) => `${at(path)} debe ser ${WANTED[wanted] ?? wanted}; es ${FOUND[found]}.`,
  notFinite: ({ path }) => `${at(path)} debe ser un número finito.`,
  notWhole: ({ path }) => `${at(path)} debe ser un número entero.`,
  unknownKey: ({ path, key }) =>
    `${at(path)} tiene una clave «${key}» que no se conoce; puede estar mal escrita.`,
  forbiddenKey: ({ path, key }) => `${at(path)} tiene una clave «${key}», que no se permite en ningún sitio.`,
  tooLow: ({ path, least, including, found }) =>
    `${at(path)} debe ser ${including ? `${round(least)} o más` : `mayor que ${round(least)}`}; es ${round(found)}.`,
  tooHigh: ({ path, most, including, found }) =>
    `${at(path)} debe ser ${including ? `${round(most)} o menos` : `menor que ${round(most)}`}; es ${round(found)}.`,
  textTooShort: ({ path, least }) => `${at(path)} debe tener ${least} caracteres o más.`,
  listTooShort: ({ path, least }) =>
    `${at(path)} debe tener ${least} ${least === 1 ? 'entrada' : 'entradas'} o más.`,
  textTooLong: ({ path, most }) => `${at(path)} puede tener hasta ${most} caracteres.`,
  listTooLong: ({ path, most }) => `${at(path)} puede tener hasta ${most} entradas.`,
  notOneOf: ({ path, options }) =>
    options.length === 0
      ? `${at(path)} no es de ninguna clase conocida.`
      : `${at(path)} debe ser ${joinWords(
          options.map((option) => `«${option}»`),
          'o',
        )}.`,
  pattern: ({ path, pattern }) =>
    `${at(path)} debe ser ${PATTERNS.find(([part]) => pattern.includes(part))?.[1] ?? `como ${pattern}`}.`,
  length: ({ path, refusal }) => {
    const word = lengths[refusal.code] as (r: typeof refusal) => string;
    return `${at(path)} «${refusal.text.slice(0, 40)}» no es una longitud: ${word(refusal)}.`;
  },
  rule: ({ path, rule }) => `${at(path)} no puede ser así: ${rule}.`,
  brokenText: ({ path }) => `${at(path)} contiene medio carácter, que no se puede imprimir.`,
  tooDeep: ({ path, most }) => `${at(path)} está anidado en más de ${most} niveles.`,
  tooMany: ({ most }) => `El documento contiene más de ${most} valores.`,
};

export function sayIssue(issue: Issue, show: Show): string {
  const word = issues[issue.kind] as (issue: Issue, show: Show) => string;
  return word(issue, show);
}
