import { formatLength, mm, parseLength, type UnitName } from '../contract.ts';
import type { Problem } from '../job/documentStore.ts';
import { local, plain } from '../text/decimals.ts';
import { sayLength } from '../text/sayLength.ts';
import { words } from '../text/useWords.ts';

/** `cloth` and `hardware` follow the job's unit; `thin` (glass, film, tape) is in millimetres everywhere. */
export type LengthKind = 'cloth' | 'thin';

export type ReadEntry =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly sentence: string };

/** Text that stands in a field for a length: a fraction where the rule shows it truly, else millimetres. */
export function lengthEntry(value: number, unit: UnitName): string {
  const sign = value < 0 ? '-' : '';
  const size = mm(Math.abs(value));
  if (unit === 'in') {
    const fraction = formatLength(size, { unit: 'in', denominator: 32, bare: true });
    const back = parseLength(fraction, 'in');
    if (back.ok && Math.abs(back.value - size) < 0.005) return `${sign}${fraction}`;
    return `${sign}${local(trimmed(formatLength(size, { unit: 'mm', decimals: 2, bare: true })))} mm`;
  }
  return `${sign}${local(trimmed(formatLength(size, { unit: 'mm', decimals: 3, bare: true })))}`;
}

/** Reads a length as typed; a leading minus turns its sign, for allowances that hold back. */
export function readLengthEntry(text: string, unit: UnitName): ReadEntry {
  const said = plain(text);
  const minus = /^\s*[-−]\s*(?=[\d.,½¼¾⅛⅜⅝⅞])/.exec(said);
  const read = parseLength(minus ? said.slice(minus[0].length) : said, unit);
  if (!read.ok) return { ok: false, sentence: sayLength(read.refusal) };
  return { ok: true, value: minus && read.value !== 0 ? -read.value : read.value };
}

/** A bound that the schema has in millimetres, said in the unit of the field. */
export function sayInUnit(problem: Problem | null, unit: UnitName): string | null {
  const issue = problem?.issue;
  if (issue?.kind === 'tooLow') return words().fields.atLeast(lengthEntry(issue.least, unit), unit);
  if (issue?.kind === 'tooHigh') return words().fields.atMost(lengthEntry(issue.most, unit), unit);
  return problem?.sentence ?? null;
}

const trimmed = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);
