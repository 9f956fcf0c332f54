import { spoken } from './useWords.ts';

/** A figure with the decimal mark of the language. */
export function local(figure: string): string {
  const { mark } = spoken();
  return mark === '.' ? figure : figure.replace(/(?<=\d)\.(?=\d)/g, mark);
}

/** A figure with its unit reads from the left, also amid words that read from the right (isolates: Unicode UAX 9). */
export const figure = (text: string): string => (spoken().dir === 'rtl' ? `\u2066${text}\u2069` : text);

/** Text as typed, with a point for decimals: where the language has a comma, one comma alone is no thousands. */
export const plain = (text: string): string =>
  spoken().mark === ',' && /^[^.,]*\d,\d[^.,]*$/.test(text) ? text.replace(',', '.') : text;

/**
 * A reading as it is kept: as it was typed, which is read with no language at hand. Only “619,125”, which by itself may
 * mean thousands, is kept with a point where the page’s language has a comma for decimals.
 */
export const asKept = (text: string): string => (/^\D*\d{1,3},\d{3}\D*$/.test(text) ? plain(text) : text);
