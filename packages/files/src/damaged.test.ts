import { readdirSync, readFileSync } from 'node:fs';
import { readOutlines } from '@panewright/files';
import { area, validate } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';
import { dxfText, line, polygon, rectangle, svgText } from './testing/drawingText.ts';
import { tried } from './testing/read.ts';

// Every damage is drawn with a seed, so that a file that fails can be made again.

class Dice {
  #state: number;
  constructor(seed: number) {
    this.#state = seed;
  }
  /** 0 to 1. mulberry32, public domain. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let t = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
  below(count: number): number {
    return Math.floor(this.next() * count);
  }
  pick<T>(from: readonly T[]): T {
    return from[this.below(from.length)]!;
  }
}

const folder = new URL('fixtures/', import.meta.url);
const texts = readdirSync(folder)
  .filter((name) => /\.dxf$|\.svg\.txt$/.test(name))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'latin1') }));
const dxfs = texts.filter(({ name }) => name.endsWith('.dxf'));
const svgs = texts.filter(({ name }) => name.endsWith('.txt'));

const READ = new Set(['LINE', 'ARC', 'CIRCLE', 'ELLIPSE', 'LWPOLYLINE', 'VERTEX', 'SPLINE', 'INSERT']);

/** Lines of a DXF file that hold a number of an entity that is read; `codes` picks which. */
function numberLines(
  text: string,
  codes: (code: number, kind: string) => boolean,
): { lines: string[]; at: number[] } {
  const lines = text.split(/\r\n|\n/);
  const at: number[] = [];
  let [kind, section] = ['', ''];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]);
    if (code === 0) kind = lines[i + 1]!.trim();
    if (code === 2 && kind === 'SECTION') section = lines[i + 1]!.trim();
    if (section === 'ENTITIES' && READ.has(kind) && codes(code, kind)) at.push(i + 1);
  }
  return { lines, at };
}

/** A number of a drawing's geometry written otherwise. */
function withNumber(dice: Dice, write: (old: string) => string): string {
  if (dice.next() < 0.7) {
    const { lines, at } = numberLines(dice.pick(dxfs).text, (code) => code >= 10 && code <= 42);
    const place = dice.pick(at);
    lines[place] = write(lines[place]!);
    return lines.join('\n');
  }
  const { text } = dice.pick(svgs);
  const data = [...text.matchAll(/ d="([^"]*)"/g)];
  const path = dice.pick(data);
  const numbers = [...path[1]!.matchAll(/-?\d+(?:\.\d+)?/g)];
  const number = dice.pick(numbers);
  const from = path.index + 4 + number.index;
  return text.slice(0, from) + write(number[0]) + text.slice(from + number[0].length);
}

const cut = (dice: Dice, text: string) =>
  text.slice(0, Math.floor(text.length * (0.03 + 0.94 * dice.next())));

const DAMAGES: Readonly<Record<string, (dice: Dice) => string | Uint8Array>> = {
  'cut short': (dice) =>
    cut(
      dice,
      dice
        .pick(texts)
        .text.trimEnd()
        .replace(/<\/svg>$/, ''),
    ),
  'a number that is none': (dice) =>
    withNumber(dice, () => dice.pick(['NaN', 'nan', '1..5', 'x', '1.#QNAN', '--3', '0x10'])),
  'a number beyond all bounds': (dice) =>
    withNumber(dice, () => dice.pick(['1e300', '-1e308', '1e13', `1${'0'.repeat(40)}`])),
  'letters in a number': (dice) =>
    withNumber(dice, (old) => `${old.trim()}${dice.pick(['abc', '?', '\u0000', 'µ', '°'])}`),
  'a count that is wrong': (dice) => {
    const counted = dxfs.filter(({ text }) => numberLines(text, isCount).at.length > 0);
    const { lines, at } = numberLines(dice.pick(counted).text, isCount);
    const place = dice.pick(at);
    lines[place] = String(Math.max(0, Number(lines[place]) + dice.pick([-2, -1, 1, 3, 1_000_000])));
    return lines.join('\n');
  },
  'a line that is missing': (dice) => {
    const lines = dice
      .pick(dxfs)
      .text.trimEnd()
      .split(/\r\n|\n/);
    lines.splice(dice.below(lines.length), 1);
    return lines.join('\n');
  },
  'bytes overwritten': (dice) => {
    const { text } = dice.pick(dxfs);
    const start = text.indexOf('ENTITIES') + 10;
    const from = start + dice.below(Math.max(1, text.length - start - 100));
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    for (let i = 0; i < 60; i++) bytes[from + i] = dice.below(256);
    return bytes;
  },
  'no drawing at all': (dice) => {
    const heads = [
      '%PDF-1.7\n',
      'PK\u0003\u0004',
      '\u0089PNG\r\n',
      'AC1032',
      'AutoCAD Binary DXF\r\n\u001a\u0000',
      'GIF89a',
      '\u001f\u008b',
      '',
      '',
      '<html><body>',
      '{"a":1}',
    ];
    const body = Uint8Array.from({ length: 200 + dice.below(3000) }, () => dice.below(256));
    return Uint8Array.from([...dice.pick(heads)].map((letter) => letter.charCodeAt(0)).concat([...body]));
  },
  'a tag that is broken': (dice) => {
    const { text } = dice.pick(svgs);
    const marks = [...text.matchAll(/[<>"]|\/>/g)].filter(({ index }) => index > text.indexOf('<svg'));
    const { index } = dice.pick(marks);
    return text.slice(0, index) + text.slice(index + 1);
  },
  'a side that is missing': (dice) => {
    const corners = Array.from({ length: 5 + dice.below(8) }, (_, i, { length } = { length: 0 }) => ({
      i,
      length,
    }));
    const count = corners.length;
    const at = (i: number) =>
      [
        500 + 300 * Math.cos((2 * Math.PI * i) / count),
        500 + 200 * Math.sin((2 * Math.PI * i) / count),
      ] as const;
    const sides = Array.from({ length: count }, (_, i) => line(...at(i), ...at(i + 1)));
    sides.splice(dice.below(count), 1);
    return dxfText(sides.join(''));
  },
};

function isCount(code: number, kind: string): boolean {
  return (kind === 'LWPOLYLINE' && code === 90) || (kind === 'SPLINE' && (code === 72 || code === 73));
}

/** All numbers in a value, at any depth. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return value && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

const EACH = 50;

for (const [kind, damage] of Object.entries(DAMAGES))
  test(`${EACH} files with ${kind} are refused, each with a code and finite numbers`, () => {
    for (let seed = 0; seed < EACH; seed++) {
      const read = tried(damage(new Dice(1000 + seed)), { unit: 'mm' });
      if (read.ok) throw new Error(`Seed ${1000 + seed} was read.`);
      expect(read.refusal.code).toMatch(/^[A-Z_]+$/);
      // What is out of range is told as it stands, even if it is infinite.
      if (read.refusal.code !== 'NUMBER_OUT_OF_RANGE')
        expect(numbersIn(read.refusal).every(Number.isFinite)).toBe(true);
    }
  });

test('300 files with letters changed at random are refused or read soundly, never anything else', () => {
  const letters = '0123456789.-+eE \n<>/"=MLCAZmlcaz,;()';
  let refused = 0;
  for (let seed = 0; seed < 300; seed++) {
    const dice = new Dice(seed);
    let { text } = dice.pick(texts.filter(({ text: all }) => all.length < 7000));
    for (let k = 1 + dice.below(4); k > 0; k--) {
      const at = dice.below(text.length);
      const change = dice.below(3);
      text =
        text.slice(0, at) +
        (change === 0 ? '' : dice.pick([...letters])) +
        text.slice(change === 2 ? at : at + 1);
    }
    const read = tried(text, { unit: 'mm', arcTolerance: mm(0.2) });
    if (!read.ok) {
      refused++;
      continue;
    }
    for (const { outline } of read.value.outlines) {
      expect(validate(outline).ok).toBe(true);
      expect(Number.isFinite(area(outline))).toBe(true);
    }
  }
  expect(refused).toBeGreaterThan(100);
});

test('work is bounded: a file that asks for too much is refused', () => {
  const told = { closeWithin: mm(0.5), arcTolerance: mm(0.05) };
  expect(readOutlines(new Uint8Array(20_000_000), told)).toMatchObject({
    refusal: { code: 'FILE_TOO_LARGE', what: 'bytes' },
  });
  // A star whose every side crosses every other.
  const star = polygon(
    Array.from({ length: 3001 }, (_, i) => {
      const angle = (2 * Math.PI * i * 1500) / 3001;
      return [500 * Math.cos(angle), 500 * Math.sin(angle)] as const;
    }),
  );
  expect(tried(dxfText(star))).toMatchObject({ refusal: { code: 'FILE_OUTLINE_CROSSES_ITSELF' } });
  const corners = Array.from(
    { length: 6000 },
    (_, i) => [500 * Math.cos(i / 1000), 500 * Math.sin(i / 1000)] as const,
  );
  expect(tried(dxfText(polygon(corners)))).toMatchObject({
    refusal: { code: 'FILE_TOO_LARGE', what: 'edges' },
  });
  // 210 squares within each other: 21 945 pairs to tell inside from outside.
  const nested = Array.from({ length: 210 }, (_, i) => rectangle(i, i, 900 - 2 * i, 900 - 2 * i)).join('');
  expect(tried(dxfText(nested))).toMatchObject({ refusal: { code: 'FILE_TOO_LARGE', what: 'nesting' } });
  // 2000 cubics, each to be fitted by dozens of arcs.
  const dice = new Dice(5);
  const spot = () => `${dice.below(1000)} ${dice.below(1000)}`;
  const cubics = Array.from({ length: 2000 }, () => `C${spot()} ${spot()} ${spot()}`).join('');
  expect(tried(svgText(`<path d="M0 0${cubics}Z"/>`))).toMatchObject({
    refusal: { code: 'FILE_TOO_LARGE', what: 'edges' },
  });
});
