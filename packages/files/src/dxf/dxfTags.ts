import { ok, type Result, refuse } from '@panewright/quantity';
import type { FilePlace, FileRefusal } from '../fileRefusal.ts';

/** A pair of the file: a group code and its value. `line` is the value's, from 1. */
export interface Tag {
  readonly code: number;
  readonly text: string;
  readonly line: number;
}

/** An entity, table record or block mark: a pair of code 0 and what follows it. */
export interface DxfRecord {
  readonly kind: string;
  readonly line: number;
  readonly tags: readonly Tag[];
}

export interface DxfSection {
  readonly name: string;
  readonly records: readonly DxfRecord[];
  /** Pairs before the first record: the variables of the header. */
  readonly head: readonly Tag[];
}

export interface DxfSections {
  readonly sections: readonly DxfSection[];
  /** Comments (code 999) outside of sections. */
  readonly comments: readonly string[];
}

/** Signs that no value holds: the format writes them otherwise. A tabulator passes. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f]/;
const MOST_LINES = 2_000_000;
const READ = new Set(['HEADER', 'TABLES', 'BLOCKS', 'ENTITIES']);

/**
 * The sections that tell of outlines, as records. Every pair of the file is looked at, of other sections only the code.
 *
 * @refuses FILE_UNREADABLE_AT (no group code where one must be, sections out of order), FILE_CUT_SHORT, FILE_TOO_LARGE
 * @source sources.md#dxf-reference
 */
export function dxfSections(text: string): Result<DxfSections, FileRefusal> {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'lines', found: lines.length, most: MOST_LINES });
  const sections: OpenSection[] = [];
  const comments: string[] = [];
  let section: OpenSection | undefined;
  let isNamed = true;
  for (let at = 0; at + 1 < lines.length; at += 2) {
    const code = codeOf(lines[at]!);
    if (code === undefined) return unreadable(at + 1, 'group code', lines[at]!);
    if (CONTROL.test(lines[at + 1]!)) return unreadable(at + 2, 'text', lines[at + 1]!);
    const tag = { code, text: lines[at + 1]!.trim(), line: at + 2 };
    if (section && !isNamed) {
      if (code !== 2) return unreadable(at + 1, 'name of a section', lines[at]!);
      section.name = tag.text.toUpperCase();
      isNamed = true;
    } else if (code === 999) {
      if (!section) comments.push(tag.text);
    } else if (code === 0 && tag.text === 'EOF') {
      if (section)
        return refuse({ code: 'FILE_CUT_SHORT', line: tag.line, wanted: `ENDSEC of ${section.name}` });
      return ok({ sections, comments });
    } else if (code === 0 && tag.text === 'SECTION') {
      if (section) return unreadable(at + 2, `ENDSEC of ${section.name}`, tag.text);
      section = { name: '', records: [], head: [] };
      sections.push(section);
      isNamed = false;
    } else if (code === 0 && tag.text === 'ENDSEC') {
      if (!section) return unreadable(at + 2, 'SECTION', tag.text);
      section = undefined;
    } else if (!section) return unreadable(at + 2, 'SECTION', tag.text);
    else if (READ.has(section.name)) addTag(section, tag);
  }
  return refuse({
    code: 'FILE_CUT_SHORT',
    line: lines.length,
    wanted: section ? `ENDSEC of ${section.name}` : 'EOF',
  });
}

interface OpenSection {
  name: string;
  readonly records: (DxfRecord & { readonly tags: Tag[] })[];
  readonly head: Tag[];
}

function addTag(section: OpenSection, tag: Tag): void {
  const record = section.records.at(-1);
  if (tag.code === 0) section.records.push({ kind: tag.text.toUpperCase(), line: tag.line, tags: [] });
  else if (record) record.tags.push(tag);
  else section.head.push(tag);
}

function codeOf(line: string): number | undefined {
  return /^\s*-?\d{1,4}\s*$/.test(line) ? Number(line) : undefined;
}

const unreadable = (line: number, wanted: string, found: string) =>
  refuse({ code: 'FILE_UNREADABLE_AT', line, wanted, found: found.trim().slice(0, 40) });

const FLOAT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eEdD][+-]?\d+)?$/;
/** No drawing of a window holds a number beyond this. */
const MOST_NUMBER = 1e12;

/** Codes whose values are numbers: coordinates, lengths, angles, flags, counts, directions. */
const isNumeric = (code: number) =>
  (code >= 10 && code <= 59) || (code >= 60 && code <= 99) || (code >= 210 && code <= 239);

/** A record's numbers by code, read once and all sound. */
export class DxfNumbers {
  readonly place: FilePlace;
  readonly #values: ReadonlyMap<number, readonly number[]>;
  /** Numeric pairs in the order of the file, for records in which a code is repeated. */
  readonly inOrder: readonly { readonly code: number; readonly value: number }[];

  private constructor(
    place: FilePlace,
    inOrder: readonly { readonly code: number; readonly value: number }[],
  ) {
    this.place = place;
    this.inOrder = inOrder;
    const values = new Map<number, number[]>();
    for (const { code, value } of inOrder) {
      const held = values.get(code);
      if (held) held.push(value);
      else values.set(code, [value]);
    }
    this.#values = values;
  }

  /** @refuses NUMBER_UNREADABLE, NUMBER_OUT_OF_RANGE, VALUE_MISSING where a code of `required` is not there */
  static of(record: DxfRecord, required: readonly number[]): Result<DxfNumbers, FileRefusal> {
    const handle = record.tags.find(({ code }) => code === 5)?.text;
    const inOrder: { readonly code: number; readonly value: number }[] = [];
    for (const { code, text, line } of record.tags) {
      if (!isNumeric(code)) continue;
      const place = placeOf(record.kind, line, handle);
      if (!FLOAT.test(text))
        return refuse({ code: 'NUMBER_UNREADABLE', place, what: `group ${code}`, text: text.slice(0, 40) });
      const value = Number(text.replace(/[dD]/, 'e'));
      if (!(Math.abs(value) <= MOST_NUMBER))
        return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: `group ${code}`, value });
      inOrder.push({ code, value });
    }
    const numbers = new DxfNumbers(placeOf(record.kind, record.line, handle), inOrder);
    const missing = required.find((code) => !numbers.#values.has(code));
    if (missing !== undefined)
      return refuse({ code: 'VALUE_MISSING', place: numbers.place, what: `group ${missing}` });
    return ok(numbers);
  }

  /** The first value of a code, or `otherwise`. */
  get(code: number, otherwise = 0): number {
    return this.#values.get(code)?.[0] ?? otherwise;
  }

  all(code: number): readonly number[] {
    return this.#values.get(code) ?? [];
  }
}

const placeOf = (entity: string, line: number, id: string | undefined): FilePlace => ({
  line,
  entity,
  ...(id === undefined || id === '' ? {} : { id }),
});

/** Text of the first pair with a code. */
export const textOf = ({ tags }: DxfRecord, code: number): string | undefined =>
  tags.find((tag) => tag.code === code)?.text;
