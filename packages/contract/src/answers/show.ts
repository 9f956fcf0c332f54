import type { Catalogue, Job, UnitName } from '@panewright/design';
import { formatLength, mm } from '@panewright/quantity';

/** Languages there are sentences in, by ISO 639-1. */
export type Language = 'en' | 'de' | 'es';

/** What stands before the last of several things. */
const AND: Readonly<Record<Language, string>> = { en: 'and', de: 'und', es: 'y' };

/** What a sentence needs besides its numbers: units, money and names. */
export interface ShowOptions {
  /** Decides the decimal sign and what stands between names; English where not given. */
  readonly language?: Language;
  readonly units: UnitName;
  readonly currency?: Catalogue['currency'];
  /** Names of openings by id. */
  readonly openings?: Readonly<Record<string, string>>;
}

/** Stands where a sentence was not given its number; no test lets one pass. */
export const NOT_GIVEN = '(not given)';

/** Numbers as people read them, rounded once and only here. */
export interface Show {
  /** A length: 1/16 in, or 0.1 mm. */
  length(millimetres: number | string | undefined): string;
  /** Small lengths: 1/32 in, or 0.1 mm; how much, whichever way. */
  fine(millimetres: number | string | undefined): string;
  number(value: number | string | undefined, decimals?: number): string;
  force(newtons: number | string | undefined): string;
  speed(metresPerSecond: number | string | undefined): string;
  percent(ratio: number | string | undefined): string;
  money(minorUnits: number | string | undefined): string;
  text(value: number | string | undefined): string;
  opening(id: string | undefined): string;
  /** Several ids set apart by spaces. */
  openings(ids: number | string | undefined): string;
}

/** The decimal sign of German and Spanish. */
const withComma = (text: string): string => text.replace(/(?<=\d)\.(?=\d)/g, ',');

const finite = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

export function makeShow({ units, currency, openings = {}, language = 'en' }: ShowOptions): Show {
  const local = language === 'en' ? (text: string) => text : withComma;
  const length = (value: unknown, denominator: 16 | 32): string => {
    if (!finite(value)) return NOT_GIVEN;
    if (units === 'mm') return local(formatLength(mm(value), { unit: 'mm' }));
    return formatLength(mm(value), { unit: 'in', denominator });
  };
  const number = (value: unknown, decimals = 1): string =>
    finite(value) ? local(String(Number(value.toFixed(decimals)))) : NOT_GIVEN;
  const opening = (id: string | undefined) => (id === undefined ? '' : (openings[id] ?? id));
  return {
    length: (value) => length(value, 16),
    fine: (value) => length(finite(value) ? Math.abs(value) : value, 32),
    number,
    force: (value) => `${number(value)} N`,
    speed: (value) =>
      units === 'in' && finite(value) ? `${number(value / 0.44704, 0)} mph` : `${number(value)} m/s`,
    percent: (value) => (finite(value) ? `${number(value * 100, 0)} %` : NOT_GIVEN),
    money: (value) => (finite(value) ? showMoney(value, currency, language) : NOT_GIVEN),
    text: (value) => (value === undefined ? NOT_GIVEN : String(value)),
    opening,
    openings: (ids) =>
      typeof ids === 'string'
        ? joinWords(ids.split(' ').filter(Boolean).map(opening), AND[language])
        : NOT_GIVEN,
  };
}

/** The symbol after the figure where English is not spoken, as on the sheets. */
export function showMoney(
  minorUnits: number,
  currency: Catalogue['currency'] | undefined,
  language: Language = 'en',
): string {
  if (!currency) return String(minorUnits);
  const { symbol, decimals } = currency;
  const sign = minorUnits < 0 ? '-' : '';
  const figure = (Math.abs(minorUnits) / 10 ** decimals).toFixed(decimals);
  return language === 'en' ? `${sign}${symbol}${figure}` : `${sign}${withComma(figure)} ${symbol}`;
}

/** a, b and c */
export function joinWords(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** How this job shows its numbers. */
export const showOf = (
  job: Pick<Job, 'units' | 'openings'>,
  catalogue?: Pick<Catalogue, 'currency'>,
  language: Language = 'en',
): Show =>
  makeShow({
    ...{ units: job.units, language },
    ...(catalogue ? { currency: catalogue.currency } : {}),
    openings: Object.fromEntries(job.openings.map(({ id, name }) => [id, name])),
  });
