import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileRefusal } from '../fileRefusal.ts';

export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Letters directly within. */
  readonly text: string;
  readonly line: number;
}

interface OpenElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  text: string;
  readonly line: number;
}

const MOST_DEPTH = 200;
const MOST_ELEMENTS = 100_000;
const NAME = /[^\s=/>"'<&]+/y;
const ATTRIBUTE = /\s+([^\s=/>"'<&]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y;
const TAG_END = /\s*(\/?)>/y;
const PREDEFINED: readonly (readonly [string, string])[] = [
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
];

/**
 * The tree of an XML document: elements, attributes, text; entities of its own if they are plain text. Comments,
 * instructions and declarations are passed over; nothing is fetched.
 *
 * @refuses FILE_UNREADABLE_AT with line and column, FILE_CUT_SHORT, FILE_TOO_LARGE
 * @source sources.md#xml-1-0
 */
export const readXml = (text: string): Result<XmlElement, FileRefusal> => new XmlReader(text).read();

class XmlReader {
  readonly #text: string;
  readonly #entities = new Map<string, string>(PREDEFINED);
  readonly #open: OpenElement[] = [];
  #at = 0;
  #root: XmlElement | undefined;
  #elements = 0;
  /** Line of the last place asked for; places are asked for in order. */
  #line = { at: 0, number: 1 };
  #refusal: FileRefusal | undefined;

  constructor(text: string) {
    this.#text = text;
  }

  read(): Result<XmlElement, FileRefusal> {
    while (!this.#refusal && this.#at < this.#text.length) {
      const next = this.#text.indexOf('<', this.#at);
      this.#letters(next < 0 ? this.#text.length : next);
      if (this.#refusal || next < 0) break;
      this.#at = next;
      this.#markup();
    }
    if (this.#refusal) return refuse(this.#refusal);
    const open = this.#open.at(-1);
    if (open || !this.#root)
      return refuse({
        code: 'FILE_CUT_SHORT',
        line: this.#lineAt(this.#text.length),
        wanted: open ? `</${open.name}>` : '<svg>',
      });
    return ok(this.#root);
  }

  #lineAt(at: number): number {
    if (at < this.#line.at) this.#line = { at: 0, number: 1 };
    let { at: from, number } = this.#line;
    for (
      from = this.#text.indexOf('\n', from);
      from >= 0 && from < at;
      from = this.#text.indexOf('\n', from + 1)
    )
      number++;
    this.#line = { at, number };
    return number;
  }

  #fail(wanted: string, at = this.#at): undefined {
    const column = at - this.#text.lastIndexOf('\n', at - 1);
    const found = this.#text.slice(at, at + 24).replace(/\s+/g, ' ');
    this.#refusal ??= { code: 'FILE_UNREADABLE_AT', line: this.#lineAt(at), column, wanted, found };
  }

  /** Jumps past the next `mark`. */
  #skipPast(mark: string, from: number): undefined {
    const end = this.#text.indexOf(mark, from);
    if (end < 0) this.#refusal ??= { code: 'FILE_CUT_SHORT', line: this.#lineAt(this.#at), wanted: mark };
    else this.#at = end + mark.length;
  }

  #letters(end: number): void {
    const letters = this.#text.slice(this.#at, end);
    const open = this.#open.at(-1);
    if (open) open.text += this.#resolved(letters, this.#at);
    else if (/\S/.test(letters)) this.#fail('<', this.#at + letters.search(/\S/));
  }

  #resolved(letters: string, at: number): string {
    if (!letters.includes('&')) return letters;
    return letters.replace(
      /&(?:#(\d{1,7})|#x([0-9A-Fa-f]{1,6})|([^\s;&]{1,64}))?(;?)/g,
      (found, ten, sixteen, name, end) => {
        const code = ten ? Number(ten) : sixteen ? Number.parseInt(sixteen, 16) : undefined;
        if (end && code !== undefined && code > 0 && code <= 0x10ffff) return String.fromCodePoint(code);
        const value = end && name ? this.#entities.get(name) : undefined;
        if (value === undefined)
          this.#fail('an entity that is known', at + Math.max(0, letters.indexOf(found)));
        return value ?? '';
      },
    );
  }

  #markup(): void {
    const text = this.#text;
    if (text.startsWith('<!--', this.#at)) this.#skipPast('-->', this.#at + 4);
    else if (text.startsWith('<?', this.#at)) this.#skipPast('?>', this.#at + 2);
    else if (text.startsWith('<![CDATA[', this.#at)) {
      const from = this.#at + 9;
      this.#skipPast(']]>', from);
      const open = this.#open.at(-1);
      if (open) open.text += text.slice(from, this.#at - 3);
      else this.#fail('an element', from);
    } else if (text.startsWith('<!DOCTYPE', this.#at)) this.#doctype();
    else if (text.startsWith('</', this.#at)) this.#endTag();
    else this.#startTag();
  }

  /** Its own entities, where they are plain text, are taken; the rest is passed over. */
  #doctype(): undefined {
    const end = this.#text.indexOf('>', this.#at);
    const subset = this.#text.indexOf('[', this.#at);
    if (subset < 0 || end < subset) return this.#skipPast('>', this.#at);
    const close = /\]\s*>/g;
    close.lastIndex = subset;
    const found = close.exec(this.#text);
    if (!found) return this.#skipPast(']>', subset);
    const declarations = this.#text.slice(subset, found.index);
    for (const [, name, double, single] of declarations.matchAll(
      /<!ENTITY\s+([^\s%"'&<>]+)\s+(?:"([^"&<%]*)"|'([^'&<%]*)')\s*>/g,
    ))
      if (!this.#entities.has(name!)) this.#entities.set(name!, double ?? single ?? '');
    this.#at = close.lastIndex;
  }

  #match(pattern: RegExp, at: number): RegExpExecArray | null {
    pattern.lastIndex = at;
    return pattern.exec(this.#text);
  }

  #startTag(): undefined {
    const line = this.#lineAt(this.#at);
    const name = this.#match(NAME, this.#at + 1);
    if (!name) return this.#fail('a tag');
    if (this.#root && this.#open.length === 0) return this.#fail('the end of the document');
    let at = this.#at + 1 + name[0].length;
    const attributes = new Map<string, string>();
    for (let found = this.#match(ATTRIBUTE, at); found; found = this.#match(ATTRIBUTE, at)) {
      const key = found[1]!;
      if (attributes.has(key)) return this.#fail(`one attribute ${key}`, at);
      attributes.set(key, this.#resolved(found[2] ?? found[3] ?? '', at));
      at += found[0].length;
    }
    const end = this.#match(TAG_END, at);
    if (!end) return this.#fail('an attribute or >', at);
    this.#at = at + end[0].length;
    this.#open.push({ name: name[0], attributes, children: [], text: '', line });
    if (++this.#elements > MOST_ELEMENTS) return this.#tooLarge('elements', this.#elements, MOST_ELEMENTS);
    if (this.#open.length > MOST_DEPTH) return this.#tooLarge('nesting', this.#open.length, MOST_DEPTH);
    if (end[1] === '/') this.#close();
  }

  #tooLarge(what: 'elements' | 'nesting', found: number, most: number): undefined {
    this.#refusal ??= { code: 'FILE_TOO_LARGE', what, found, most };
  }

  #endTag(): undefined {
    const name = this.#match(NAME, this.#at + 2)?.[0] ?? '';
    const open = this.#open.at(-1);
    if (!open || open.name !== name) return this.#fail(open ? `</${open.name}>` : 'no closing tag');
    const end = this.#match(TAG_END, this.#at + 2 + name.length);
    if (!end || end[1] === '/') return this.#fail('>');
    this.#at += 2 + name.length + end[0].length;
    this.#close();
  }

  #close(): undefined {
    const done = this.#open.pop()!;
    const parent = this.#open.at(-1);
    if (parent) parent.children.push(done);
    else this.#root = done;
  }
}
