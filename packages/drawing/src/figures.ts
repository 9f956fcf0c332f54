import type { Catalogue, Figure, Operation, UnitName } from '@panewright/design';
import { formatLength, mm } from '@panewright/quantity';
import type { Language } from './wordsOf.ts';

/** A figure with the language's decimal sign. @source common practice, no source */
export const figureText = (text: string, language: Language = 'en'): string =>
  language === 'en' ? text : text.replace(/(?<=\d)\.(?=\d)/g, ',');

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * A day as the language writes it. The English month is a word, since some read the day first and some the month. What is
 * no ISO date is left as it is.
 *
 * @source common practice, no source
 */
export function dateText(date: string, language: Language = 'en'): string {
  const parts = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date);
  if (parts === null) return date;
  const [, year = '', month = '', day = ''] = parts;
  if (language === 'de') return `${day}.${month}.${year}`;
  if (language === 'es') return `${day}/${month}/${year}`;
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** A length as the shop reads it: to 1/16 in, or to a whole millimetre. */
export const lengthText = (length: number, units: UnitName): string =>
  units === 'in'
    ? formatLength(mm(length), { unit: 'in', denominator: 16 })
    : formatLength(mm(length), { unit: 'mm', decimals: 0 });

/** A small length: hardware to 1/32 in, or to a tenth of a millimetre. */
export const fineLengthText = (length: number, units: UnitName, language?: Language): string =>
  units === 'in'
    ? formatLength(mm(length), { unit: 'in', denominator: 32 })
    : figureText(formatLength(mm(length), { unit: 'mm', decimals: 1 }).replace('.0 ', ' '), language);

/** Without the unit's sign, for the figures of a drawing that states its unit once. */
export const bareLengthText = (length: number, units: UnitName): string =>
  units === 'in'
    ? formatLength(mm(length), { unit: 'in', denominator: 16, bare: true })
    : formatLength(mm(length), { unit: 'mm', decimals: 0, bare: true });

/** A long length of stock: yards and metres are for buying. */
export const stockText = (length: number, units: UnitName, language?: Language): string =>
  figureText(units === 'in' ? `${twoPlaces(length / 914.4)} yd` : `${twoPlaces(length / 1000)} m`, language);

const twoPlaces = (value: number): string => String(Number(value.toFixed(value < 100 ? 2 : 0)));

export const sizeText = (width: number, height: number, units: UnitName): string =>
  `${bareLengthText(width, units)} × ${lengthText(height, units)}`;

/** Money for people: symbol, thousands, decimals as the currency has them; the symbol after the figure where English is not spoken. */
export function moneyText(minor: number, currency: Catalogue['currency'], language: Language = 'en'): string {
  const { symbol, decimals } = currency;
  const digits = Math.abs(Math.round(minor))
    .toString()
    .padStart(decimals + 1, '0');
  const whole = decimals === 0 ? digits : digits.slice(0, -decimals);
  const [point, comma] = language === 'en' ? ['.', ','] : [',', '.'];
  const part = decimals === 0 ? '' : `${point}${digits.slice(-decimals)}`;
  const figure = `${whole.replace(/\B(?=(\d{3})+$)/g, comma)}${part}`;
  const sign = minor < 0 ? '-' : '';
  return language === 'en' ? `${sign}${symbol}${figure}` : `${sign}${figure} ${symbol}`;
}

/** Money for a spreadsheet: 12.5 for 1250 cents. */
export const majorUnits = (minor: number, { decimals }: Catalogue['currency']): number =>
  Math.round(minor) / 10 ** decimals;

/** A length for a spreadsheet, to a tenth of a millimetre. */
export const tenths = (length: number): number => Math.round(length * 10) / 10;

/** A colour mixed with the paper's white: `share` of it is left. */
export const tint = (colour: string, share: number): string =>
  `#${[1, 3, 5]
    .map((at) => Math.round(255 - (255 - Number.parseInt(colour.slice(at, at + 2), 16)) * share))
    .map((one) => one.toString(16).padStart(2, '0'))
    .join('')}`;

export const percentText = (ratio: number, language?: Language): string =>
  figureText(`${Number((ratio * 100).toFixed(2))} %`, language);

/** Minutes to the whole minute, an hour and more as hours and minutes. */
export function minutesText(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 1 && minutes > 0) return '1 min';
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest} min`;
}

/** How often a kind of work is done: a count, or a length in the unit that stock is bought in. */
export function timesText(
  times: number,
  per: Operation['per'] | undefined,
  units: UnitName,
  language?: Language,
): string {
  return per === 'cutMetre' || per === 'panelMetre'
    ? stockText(times * 1000, units, language)
    : figureText(String(Number(times.toFixed(1))), language);
}

export const massText = (grams: Figure | number, units: UnitName, language?: Language): string => {
  const value = typeof grams === 'number' ? grams : grams.value;
  return units === 'in'
    ? figureText(`${(value / 28.349523125).toFixed(1)} oz`, language)
    : `${Math.round(value)} g`;
};

/**
 * The day so many days after another, both ISO dates of the Gregorian calendar.
 *
 * @source count of days by months from March: sources.md#days-from-civil
 */
export function dayAfter(date: string, days: number): string {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  return civil(daysFrom(year, month, day) + days);
}

function daysFrom(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  return era * 146097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
}

function civil(days: number): string {
  const era = Math.floor(days / 146097);
  const dayOfEra = days - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shifted = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * shifted + 2) / 5) + 1;
  const month = shifted < 10 ? shifted + 3 : shifted - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
