import type { UnitName } from '../contract.ts';

/** What the keys do to the text of a reading. */
export const FRACTIONS = [2, 4, 8, 16] as const;
export type Denominator = (typeof FRACTIONS)[number];

const UNIT_AT_END = /\s*(mm|in)\s*$/;

/** The text without the unit it names at its end, and that unit. */
function parted(text: string): readonly [rest: string, unit: string] {
  const unit = UNIT_AT_END.exec(text)?.[1] ?? '';
  return [text.replace(UNIT_AT_END, ''), unit];
}

const joined = (rest: string, unit: string): string => (unit ? `${rest} ${unit}` : rest);

/** A digit, a stroke or a space, before the unit if one stands at the end. */
export function press(text: string, key: string): string {
  const [rest, unit] = parted(text);
  return joined(rest + key, unit);
}

/** Takes away the last thing typed: a whole fraction, or one character. */
export function back(text: string): string {
  const [rest, unit] = parted(text);
  if (unit) return rest;
  return rest.replace(/(\s*\d+\/\d+|.)$/, '');
}

/**
 * Adds a fraction to the reading: 24, then 1/8 three times, is 24 3/8. Past a whole inch the fraction begins again.
 * A fraction of another kind (1/3, 5/32) is left as it is.
 */
export function addFraction(text: string, denominator: Denominator): string {
  const [rest, unit] = parted(text);
  const match = /^(.*?)\s*(?:(\d+)\/(\d+))?\s*$/.exec(rest);
  const [, whole = '', over, under] = match ?? [];
  if (under !== undefined && 16 % Number(under) !== 0) return text;
  const had = under === undefined ? 0 : (Number(over) * 16) / Number(under);
  const sixteenths = (had + 16 / denominator) % 16;
  return joined([whole, reduced(sixteenths)].filter(Boolean).join(' '), unit);
}

function reduced(sixteenths: number): string {
  if (sixteenths === 0) return '';
  let [over, under] = [sixteenths, 16];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${over}/${under}`;
}

/** Names the other unit for this reading alone, or takes the name away again. */
export function otherUnit(text: string, units: UnitName): string {
  const [rest, unit] = parted(text);
  const other = units === 'in' ? 'mm' : 'in';
  return unit === other ? rest : joined(rest, other);
}
