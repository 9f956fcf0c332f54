import { type Issue, type IssuePath, pathText } from '../../document/issue.ts';
import { joinWords, type Show } from '../show.ts';
import type { IssueWords, LengthWords } from '../words.ts';

/** Says where: the path, or the document as a whole. */
const at = (path: IssuePath): string => (path.length === 0 ? 'The document' : `“${pathText(path)}”`);

const WANTED: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  tuple: 'a list',
};
const FOUND = {
  null: 'null',
  boolean: 'true or false',
  number: 'a number',
  string: 'a text',
  array: 'a list',
  object: 'an object',
  nothing: 'nothing',
} as const;

/** Patterns that have a name people know. */
const PATTERNS: readonly (readonly [test: string, words: string])[] = [
  ['A-Za-z0-9._-', '1 to 40 letters, digits, dots, dashes or underscores, beginning with a letter or digit'],
  ['0-9a-fA-F', 'a colour as # and six hexadecimal digits'],
  ['A-Z]{3}', 'a currency code of three capitals'],
  ['date', 'a day that exists, as YYYY-MM-DD'],
];

const round = (value: number): string => String(Number(value.toPrecision(12)));

export const lengths: LengthWords = {
  LENGTH_EMPTY: () => 'write what the tape says, like 24 3/8 or 619 mm',
  LENGTH_UNREADABLE: () => 'write it as the tape says, like 24 3/8 or 619 mm',
  LENGTH_NEGATIVE: () => 'a length cannot be below nought',
  LENGTH_NOT_FINITE: () => 'it is not a finite length',
  LENGTH_ZERO_DENOMINATOR: () => 'a fraction cannot have nought below its line',
  LENGTH_FRACTION_NOT_BELOW_ONE: ({ numerator, denominator }) =>
    `${numerator}/${denominator} is not below one: write whole inches and the rest, with a space between`,
  LENGTH_FRACTION_NEEDS_UNIT: () =>
    'a fraction needs its unit where millimetres are meant otherwise: write in or " after it',
  LENGTH_COMMA_AMBIGUOUS: ({ part }) =>
    `“${part}” may mean a decimal or thousands: write it with a point or without the comma`,
  LENGTH_UNITS_CLASH: ({ units }) => `it names ${joinWords(units)} in one length`,
  LENGTH_INCHES_OVER_FOOT: () => 'the inches after feet are 12 or more',
  LENGTH_TOO_LONG: ({ most }) => `it is longer than ${most / 1000} m`,
};

export const issues: IssueWords = {
  missing: ({ path }) => `${at(path)} is missing.`,
  type: ({ path, wanted, found }) =>
    `${at(path)} must be ${WANTED[wanted] ?? wanted}; it is ${FOUND[found]}.`,
  notFinite: ({ path }) => `${at(path)} must be a finite number.`,
  notWhole: ({ path }) => `${at(path)} must be a whole number.`,
  unknownKey: ({ path, key }) => `${at(path)} has a key “${key}” that is not known; it may be misspelt.`,
  forbiddenKey: ({ path, key }) => `${at(path)} has a key “${key}”, which is not allowed anywhere.`,
  tooLow: ({ path, least, including, found }) =>
    `${at(path)} must be ${including ? `${round(least)} or more` : `above ${round(least)}`}; it is ${round(found)}.`,
  tooHigh: ({ path, most, including, found }) =>
    `${at(path)} must be ${including ? `${round(most)} or less` : `below ${round(most)}`}; it is ${round(found)}.`,
  textTooShort: ({ path, least }) => `${at(path)} must have ${least} characters or more.`,
  listTooShort: ({ path, least }) =>
    `${at(path)} must have ${least} ${least === 1 ? 'entry' : 'entries'} or more.`,
  textTooLong: ({ path, most }) => `${at(path)} may have up to ${most} characters.`,
  listTooLong: ({ path, most }) => `${at(path)} may have up to ${most} entries.`,
  notOneOf: ({ path, options }) =>
    options.length === 0
      ? `${at(path)} is of no known kind.`
      : `${at(path)} must be ${joinWords(
          options.map((option) => `“${option}”`),
          'or',
        )}.`,
  pattern: ({ path, pattern }) =>
    `${at(path)} must be ${PATTERNS.find(([part]) => pattern.includes(part))?.[1] ?? `like ${pattern}`}.`,
  length: ({ path, refusal }) => {
    const word = lengths[refusal.code] as (r: typeof refusal) => string;
    return `${at(path)} “${refusal.text.slice(0, 40)}” is not a length: ${word(refusal)}.`;
  },
  rule: ({ path, rule }) => `${at(path)} cannot be: ${rule}.`,
  brokenText: ({ path }) => `${at(path)} holds half of a character, which cannot be printed.`,
  tooDeep: ({ path, most }) => `${at(path)} is nested more than ${most} levels deep.`,
  tooMany: ({ most }) => `The document holds more than ${most} values.`,
};

export function sayIssue(issue: Issue, show: Show): string {
  const word = issues[issue.kind] as (issue: Issue, show: Show) => string;
  return word(issue, show);
}
