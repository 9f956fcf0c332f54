import { local } from '../text/decimals.ts';
import { words } from '../text/useWords.ts';
import type { ReadEntry } from './lengthEntry.ts';

/** A plain decimal, point or comma. */
export function readNumber(text: string): ReadEntry {
  const plain = text.trim().replace(',', '.');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain)) return { ok: false, sentence: words().fields.notNumber(text) };
  return { ok: true, value: Number(plain) };
}

/** A ratio as per cent: the decimal point is moved in the text, so that 35 % is 0.35 and not a neighbour of it. */
export const readPercent = {
  show: (ratio: number): string => local(`${Number((ratio * 100).toFixed(6))}`),
  read(text: string): ReadEntry {
    const read = readNumber(text.replace(/%\s*$/, ''));
    return read.ok ? { ok: true, value: Number(`${read.value}e-2`) } : read;
  },
};

/** Minor units as an amount of the currency: digits are placed, nothing is rounded. */
export function moneyEntry(minor: number, decimals: number): string {
  if (decimals === 0) return `${minor}`;
  const digits = `${Math.abs(minor)}`.padStart(decimals + 1, '0');
  return local(`${minor < 0 ? '-' : ''}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`);
}

/** An amount as typed, in minor units; more decimals than the currency has are refused. */
export function readMoney(text: string, decimals: number): ReadEntry {
  const match = /^(\d{1,12})(?:[.,](\d*))?$/.exec(text.trim());
  const cents = match?.[2] ?? '';
  if (!match || cents.length > decimals) return { ok: false, sentence: words().fields.notMoney(text) };
  return { ok: true, value: Number(`${match[1]}${cents.padEnd(decimals, '0')}`) };
}
