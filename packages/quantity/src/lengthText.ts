import { type Millimetre, mm } from './quantity.ts';
import { ok, type Result, refuse } from './result.ts';

/** The longest length that is read, in mm: 100 m. More is a slip of the pen or of the unit. */
export const LONGEST_LENGTH = mm(100_000);

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

/** Every refusal carries the text as it was entered. */
export type LengthRefusal =
  | { readonly code: 'LENGTH_EMPTY'; readonly text: string }
  | { readonly code: 'LENGTH_UNREADABLE'; readonly text: string; readonly part: string }
  | { readonly code: 'LENGTH_NEGATIVE'; readonly text: string }
  | { readonly code: 'LENGTH_NOT_FINITE'; readonly text: string }
  | { readonly code: 'LENGTH_ZERO_DENOMINATOR'; readonly text: string }
  | {
      readonly code: 'LENGTH_FRACTION_NOT_BELOW_ONE';
      readonly text: string;
      readonly numerator: number;
      readonly denominator: number;
    }
  | { readonly code: 'LENGTH_FRACTION_NEEDS_UNIT'; readonly text: string }
  | { readonly code: 'LENGTH_COMMA_AMBIGUOUS'; readonly text: string; readonly part: string }
  | { readonly code: 'LENGTH_UNITS_CLASH'; readonly text: string; readonly units: readonly LengthUnit[] }
  | { readonly code: 'LENGTH_INCHES_OVER_FOOT'; readonly text: string }
  | { readonly code: 'LENGTH_TOO_LONG'; readonly text: string; readonly most: Millimetre };

/** Each unit in tenths of a millimetre: whole numbers, so that nothing is lost before the one division. */
const TENTHS: Readonly<Record<LengthUnit, number>> = { mm: 10, cm: 100, m: 10_000, in: 254, ft: 3048 };

const UNIT_WORDS: readonly (readonly [RegExp, LengthUnit])[] = [
  [/^(?:millimet(?:re|er)s?|mm)\.?/, 'mm'],
  [/^(?:centimet(?:re|er)s?|cm)\.?/, 'cm'],
  [/^(?:met(?:re|er)s?|m)\.?/, 'm'],
  [/^(?:inch(?:es)?|in\.?|"|'')/, 'in'],
  [/^(?:feet|foot|ft\.?|')/, 'ft'],
];

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
};

/** An exact ratio of whole numbers, and how it was written. */
interface Amount {
  readonly numerator: number;
  readonly denominator: number;
  readonly form: 'whole' | 'decimal' | 'fraction';
}
interface Part {
  readonly amount: Amount;
  readonly unit: LengthUnit | undefined;
}
type Read<T> = Result<{ readonly value: T; readonly rest: string }, LengthRefusal>;

/**
 * Reads a length as a person writes it: `24 3/8`, `24-3/8"`, `2' 0 3/8"`, `⅜`, `24.375`, `619`, `619.1 mm`, `61,9 cm`.
 * A unit that is written wins over `defaultUnit`. After feet, a last number without a unit is inches.
 *
 * @returns millimetres, 0 to 100 000
 * @accuracy the double nearest the exact value, for up to 11 digits
 * @refuses any `LengthRefusal`. A fraction without a unit where millimetres are the default is refused: 24 3/8 is
 *   hardly ever 24.375 mm. So are a fraction of one or more (123/8: 12 3/8?) and 1,234 (1.234 or 1234?).
 * @source sources.md#nist-sp811 for the inch and the foot
 */
export function parseLength(text: string, defaultUnit: 'in' | 'mm'): Result<Millimetre, LengthRefusal> {
  const plain = plainMarks(text);
  if (plain === '') return refuse({ code: 'LENGTH_EMPTY', text });
  if (/^[+-]?\s*(?:inf(?:inity)?|nan|∞)(?![a-z])/.test(plain))
    return refuse({ code: 'LENGTH_NOT_FINITE', text });
  if (/^-/.test(plain)) return refuse({ code: 'LENGTH_NEGATIVE', text });
  const parts: Part[] = [];
  let rest = plain;
  while (rest !== '') {
    const read = readPart(text, rest);
    if (!read.ok) return read;
    parts.push(read.value.value);
    rest = read.value.rest.replace(/^\s+/, '');
    if (rest !== '' && read.value.value.unit === 'ft') rest = rest.replace(/^-\s*(?=\d)/, '');
    const unitAgain = takeUnit(rest);
    if (unitAgain) return refuse({ code: 'LENGTH_UNITS_CLASH', text, units: unitsOf(parts, unitAgain.unit) });
  }
  return combine(text, parts, defaultUnit);
}

/** One spelling for every mark: primes, curly quotes, dashes, fraction slashes, spaces, vulgar fractions. */
function plainMarks(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${VULGAR[sign]} `)
    .replace(/[⁰¹²³⁴-⁹₀-₉]+[⁄∕/][⁰¹²³⁴-⁹₀-₉]+/g, (raised) => ` ${raised.normalize('NFKC')} `)
    .replace(/[⁄∕÷]/g, '/')
    .replace(/[′’‘´`]/g, "'")
    .replace(/[″”“„]/g, '"')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/\s*\/\s*/g, '/')
    .replace(/(\d)-\s+(?=\d+\/)/g, '$1-')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

function takeUnit(rest: string): { readonly unit: LengthUnit; readonly rest: string } | undefined {
  const bare = rest.replace(/^\s+/, '');
  // '' is an inch mark and ' a foot mark, so inches are tried first.
  for (const [word, unit] of [UNIT_WORDS[3]!, ...UNIT_WORDS]) {
    const match = word.exec(bare);
    if (!match) continue;
    const after = bare.slice(match[0].length);
    if (/^[a-z]/.test(after)) continue;
    return { unit, rest: after };
  }
  return undefined;
}

function readPart(text: string, from: string): Read<Part> {
  const amount = readAmount(text, from);
  if (!amount.ok) return amount;
  const { value, rest } = amount.value;
  const unit = takeUnit(rest);
  if (!unit && /^\s*[^\s\d-]/.test(rest))
    return refuse({ code: 'LENGTH_UNREADABLE', text, part: rest.trim() });
  return ok({ value: { amount: value, unit: unit?.unit }, rest: unit ? unit.rest : rest });
}

function readAmount(text: string, from: string): Read<Amount> {
  const mixed = /^(?:(\d+)(?:[ -]))?(\d+)\/(\d+)(?![\d/.,])/.exec(from);
  if (mixed) {
    const amount = fraction(text, mixed[1] ?? '0', mixed[2]!, mixed[3]!);
    return amount.ok ? ok({ value: amount.value, rest: from.slice(mixed[0].length) }) : amount;
  }
  const number = /^\+?((?:\d[\d.,]*)|(?:[.,]\d+))(?![\d/])/.exec(from);
  if (!number) return refuse({ code: 'LENGTH_UNREADABLE', text, part: from });
  const amount = decimal(text, number[1]!);
  return amount.ok ? ok({ value: amount.value, rest: from.slice(number[0].length) }) : amount;
}

function fraction(text: string, whole: string, over: string, under: string): Result<Amount, LengthRefusal> {
  const [numerator, denominator] = [Number(over), Number(under)];
  if (denominator === 0) return refuse({ code: 'LENGTH_ZERO_DENOMINATOR', text });
  if (numerator >= denominator) {
    return refuse({ code: 'LENGTH_FRACTION_NOT_BELOW_ONE', text, numerator, denominator });
  }
  return ok({ numerator: Number(whole) * denominator + numerator, denominator, form: 'fraction' });
}

function decimal(text: string, written: string): Result<Amount, LengthRefusal> {
  const marks = written.replace(/\d/g, '');
  let plain = written;
  if (/^\d{1,3}(,\d{3})+(\.\d*)?$/.test(written) && (marks.length > 1 || written.includes('.'))) {
    plain = written.replaceAll(',', '');
  } else if (/^\d{1,3}(\.\d{3})+,\d*$/.test(written)) {
    plain = written.replaceAll('.', '').replace(',', '.');
  } else if (marks === ',') {
    if (/^[1-9]\d{0,2},\d{3}$/.test(written)) {
      return refuse({ code: 'LENGTH_COMMA_AMBIGUOUS', text, part: written });
    }
    plain = written.replace(',', '.');
  }
  if (!/^(?:\d+\.?\d*|\.\d+)$/.test(plain)) return refuse({ code: 'LENGTH_UNREADABLE', text, part: written });
  const [whole = '', places = ''] = plain.split('.');
  if (`${whole}${places}`.length > 11)
    return ok({ numerator: Number(plain), denominator: 1, form: 'decimal' });
  const form = plain.includes('.') ? 'decimal' : 'whole';
  return ok({ numerator: Number(`${whole}${places}`), denominator: 10 ** places.length, form });
}

const unitsOf = (parts: readonly Part[], also: LengthUnit) => [
  ...parts.flatMap((part) => (part.unit ? [part.unit] : [])),
  also,
];

function combine(text: string, parts: readonly Part[], fallback: 'in' | 'mm') {
  const [first, second] = parts;
  if (parts.length === 2 && first!.unit === 'ft' && (second!.unit ?? 'in') === 'in') {
    if (first!.amount.form !== 'whole') return refuse({ code: 'LENGTH_UNREADABLE', text, part: text });
    const { numerator, denominator } = second!.amount;
    if (numerator >= 12 * denominator) return refuse({ code: 'LENGTH_INCHES_OVER_FOOT', text });
    return bounded(text, first!.amount.numerator * 12 * denominator + numerator, denominator, 'in');
  }
  if (parts.length > 1) {
    const units = parts.flatMap((part) => (part.unit ? [part.unit] : []));
    if (units.length > 1) return refuse({ code: 'LENGTH_UNITS_CLASH', text, units });
    return refuse({ code: 'LENGTH_UNREADABLE', text, part: text });
  }
  const { amount, unit } = first!;
  if (amount.form === 'fraction' && !unit && fallback === 'mm') {
    return refuse({ code: 'LENGTH_FRACTION_NEEDS_UNIT', text });
  }
  return bounded(text, amount.numerator, amount.denominator, unit ?? fallback);
}

function bounded(
  text: string,
  numerator: number,
  denominator: number,
  unit: LengthUnit,
): Result<Millimetre, LengthRefusal> {
  const value = (numerator * TENTHS[unit]) / (denominator * 10);
  if (!(value <= LONGEST_LENGTH)) return refuse({ code: 'LENGTH_TOO_LONG', text, most: LONGEST_LENGTH });
  return ok(mm(value));
}
