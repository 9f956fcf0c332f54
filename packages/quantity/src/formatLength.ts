import { type Millimetre, MM_PER_INCH, mm } from './quantity.ts';

export type FractionDenominator = 8 | 16 | 32 | 64;

/** Inches as a reduced fraction (`denominator` is the finest), or millimetres. `bare` leaves the unit's sign off. */
export type LengthFormat =
  | { readonly unit: 'in'; readonly denominator: FractionDenominator; readonly bare?: boolean }
  | { readonly unit: 'mm'; readonly decimals?: 0 | 1 | 2 | 3; readonly bare?: boolean };

/** A length in inches, as on a rule. `numerator` is 0 or odd over the reduced `denominator`. */
export interface InchFraction {
  readonly negative: boolean;
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
  /** Shown less true, mm: what rounding to the rule cost. */
  readonly rounding: Millimetre;
}

/** A value this near a half (in units of the last place) is a half: conversions leave 1e-13. */
const HALF_SLACK = 1e-9;

/** Halves away from zero, so that a length and its negative read alike. */
function roundHalfUp(value: number): number {
  return Math.sign(value) * Math.floor(Math.abs(value) + 0.5 + HALF_SLACK);
}

/**
 * A length as whole inches and a reduced fraction.
 *
 * @param length mm, finite; anything else is a fault and throws
 * @param denominator the finest division of the rule
 * @accuracy rounded once, halves up (away from zero); `rounding` is within 25.4 / (2 denominator) mm
 * @source sources.md#nist-sp811
 */
export function splitFraction(length: Millimetre, denominator: FractionDenominator): InchFraction {
  assertFinite(length);
  const parts = roundHalfUp((length * denominator) / MM_PER_INCH);
  const count = Math.abs(parts);
  let numerator = count % denominator;
  let reduced: number = denominator;
  while (numerator % 2 === 0 && reduced > 1) {
    numerator /= 2;
    reduced /= 2;
  }
  return {
    negative: parts < 0,
    whole: Math.floor(count / denominator),
    numerator,
    denominator: reduced,
    rounding: mm((parts * MM_PER_INCH) / denominator - length),
  };
}

/**
 * A length for people to read, rounded once and only here: `24 3/8 in`, `619.1 mm`. Feet are not used.
 *
 * @param length mm, finite; anything else is a fault and throws
 * @param format millimetres take 1 decimal unless told
 * @returns text that `parseLength` reads back, within the rounding, when `length` is not negative
 * @source sources.md#nist-sp811
 */
export function formatLength(length: Millimetre, format: LengthFormat): string {
  assertFinite(length);
  const unit = format.bare ? '' : ` ${format.unit}`;
  if (format.unit === 'mm') {
    const decimals = format.decimals ?? 1;
    const scaled = roundHalfUp(length * 10 ** decimals);
    return `${scaled < 0 ? '-' : ''}${(Math.abs(scaled) / 10 ** decimals).toFixed(decimals)}${unit}`;
  }
  const { negative, whole, numerator, denominator } = splitFraction(length, format.denominator);
  const fraction = numerator === 0 ? '' : `${numerator}/${denominator}`;
  const number = fraction === '' ? `${whole}` : whole === 0 ? fraction : `${whole} ${fraction}`;
  return `${negative ? '-' : ''}${number}${unit}`;
}

function assertFinite(length: number): void {
  if (!Number.isFinite(length)) throw new RangeError(`A length to be shown must be finite; it is ${length}.`);
}
