import { Usage } from './exits.ts';

/** A whole number from an option, or the stand-in where it was left out. */
export function wholeNumber(
  name: string,
  text: string | undefined,
  standIn: number,
  most = 0xffffffff,
): number {
  if (text === undefined) return standIn;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value > most)
    throw new Usage(`--${name} must be a whole number from 0 to ${most}; it is “${text}”.`);
  return value;
}

/** A number from an option, with a point for its decimals. */
export function decimal(name: string, text: string): number {
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw new Usage(`--${name} must be a number; it is “${text}”.`);
  return Number(text);
}

export function positiveNumber(
  name: string,
  text: string | undefined,
  standIn: number,
  most: number,
): number {
  if (text === undefined) return standIn;
  const value = Number(text);
  if (!(value > 0 && value <= most))
    throw new Usage(`--${name} must be a number above 0 and up to ${most}; it is “${text}”.`);
  return value;
}

export function onlyOne(what: string, names: readonly string[]): string {
  if (names.length === 1) return names[0]!;
  throw new Usage(names.length === 0 ? `Name ${what}.` : `Name ${what} only; “${names[1]}” is one too many.`);
}
