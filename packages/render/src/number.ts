/** Millimetres are written to this many decimals, and rounded nowhere before. */
const DECIMALS = 3;

/**
 * A number in the files: rounded to 0.001, no exponent, no trailing noughts, never a negative nought.
 *
 * @param value finite; anything else is a fault and throws
 */
export function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing holds a number that is none: ${value}.`);
  const text = value.toFixed(DECIMALS).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
