import { type Point, point } from '@panewright/geometry';
import { CAPITAL, INK } from './ink.ts';
import type { Anchor, Face, FontMetrics, TextItem } from './sheet.ts';

export interface TextLook {
  /** Height of a capital, mm. */
  readonly capital?: number;
  readonly face?: Face;
  readonly anchor?: Anchor;
  readonly turn?: number;
  readonly colour?: string;
  /** From baseline to baseline, in capitals; LEAD where not given. */
  readonly lead?: number;
}

/** Running text on a sheet, and the closer lines of a form. */
const LEAD = 1.9;
export const CLOSE = 1.65;

/** Font size whose capitals are `capital` mm high. */
export const sizeFor = (metrics: FontMetrics, capital: number): number => capital / metrics.capital;

/** From baseline to baseline of running text. */
export const leading = (capital: number, lead = LEAD): number => capital * lead;

/** Text without what a font cannot draw: controls become spaces, lone halves of a character a question mark. */
export const cleanText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is replaced
  text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ').replace(LONE_SURROGATE, '?');
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

export function text(words: string, at: Point, metrics: FontMetrics, look: TextLook = {}): TextItem {
  return {
    kind: 'text',
    text: cleanText(words),
    at,
    size: sizeFor(metrics, look.capital ?? CAPITAL.body),
    face: look.face ?? 'regular',
    anchor: look.anchor ?? 'start',
    turn: look.turn ?? 0,
    colour: look.colour ?? INK.ink,
  };
}

export const widthOf = (words: string, metrics: FontMetrics, look: TextLook = {}): number =>
  metrics.width(cleanText(words), look.face ?? 'regular') * sizeFor(metrics, look.capital ?? CAPITAL.body);

/**
 * Lines that each fit `width` mm. Breaks at spaces, but not in a figure where it fits whole: 23 1/2 in stays together. A
 * word that is too long by itself is broken between letters. Line feeds in the text begin a new line.
 */
export function wrap(words: string, width: number, metrics: FontMetrics, look: TextLook = {}): string[] {
  const fits = (candidate: string) => widthOf(candidate, metrics, look) <= width;
  const lines: string[] = [];
  for (const paragraph of words.split('\n')) {
    let current = '';
    for (const word of wordsOf(cleanText(paragraph), fits)) {
      const joined = current === '' ? word : `${current} ${word}`;
      if (fits(joined)) {
        current = joined;
        continue;
      }
      if (current !== '') lines.push(current);
      current = word;
      while (!fits(current) && [...current].length > 1) {
        const head = longestHead(current, fits);
        lines.push(head);
        current = current.slice(head.length);
      }
    }
    lines.push(current);
  }
  return lines;
}

/** A space inside a figure: before a fraction, a unit or a per cent sign. */
const IN_FIGURE = /(?<=\d) (?=\d+\/\d|(?:mm|cm|m|in|ft|yd|N|lbf|oz|g|h|min|mph|tex|m\/s)(?![\p{L}\d])|%|°)/gu;

/** Words to set: a figure with its fraction and unit is one, where it fits on a line. */
function wordsOf(line: string, fits: (candidate: string) => boolean): readonly string[] {
  return line
    .replace(IN_FIGURE, '\u00a0')
    .split(/ +/)
    .flatMap((one) => {
      const whole = one.replaceAll('\u00a0', ' ');
      return fits(whole) ? [whole] : one.split('\u00a0');
    });
}

function longestHead(word: string, fits: (candidate: string) => boolean): string {
  const letters = [...word];
  let least = 1;
  let most = letters.length;
  while (least < most) {
    const middle = Math.ceil((least + most) / 2);
    if (fits(letters.slice(0, middle).join(''))) least = middle;
    else most = middle - 1;
  }
  return letters.slice(0, least).join('');
}

export interface FittedText {
  readonly lines: readonly string[];
  readonly capital: number;
}

/**
 * Text made to fit a box: as large as it will go between the two sizes of capital, on as many lines as the box holds.
 * A word is broken only where it fits whole at no size.
 *
 * @returns undefined where it does not fit at the least size either
 */
export function fitText(
  words: string,
  box: { readonly width: number; readonly height: number },
  metrics: FontMetrics,
  sizes: { readonly most: number; readonly least: number },
  look: TextLook = {},
): FittedText | undefined {
  return (
    fitAt(words, box, metrics, sizes, look, (lines) => lines.join(' ') === cleanText(words).trim()) ??
    fitAt(words, box, metrics, sizes, look, () => true)
  );
}

function fitAt(
  words: string,
  box: { readonly width: number; readonly height: number },
  metrics: FontMetrics,
  sizes: { readonly most: number; readonly least: number },
  look: TextLook,
  pleases: (lines: readonly string[]) => boolean,
): FittedText | undefined {
  for (let capital = sizes.most; capital >= sizes.least - 1e-9; capital -= 0.1) {
    const lines = wrap(words, box.width, metrics, { ...look, capital });
    const size = sizeFor(metrics, capital);
    const height = (lines.length - 1) * leading(capital) + size * (metrics.ascent + metrics.descent);
    const wide = lines.some((one) => widthOf(one, metrics, { ...look, capital }) > box.width + 1e-9);
    if (!wide && height <= box.height && pleases(lines)) return { lines, capital };
  }
  return undefined;
}

/** Corners of the room a text takes: its width by the reach of its letters above and below the baseline. */
export function textCorners(item: TextItem, metrics: FontMetrics): Point[] {
  const width = metrics.width(item.text, item.face) * item.size;
  const left = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? -width / 2 : -width;
  const [low, high] = [-metrics.descent * item.size, metrics.ascent * item.size];
  const cos = Math.cos(item.turn);
  const sin = Math.sin(item.turn);
  const corner = (x: number, y: number) =>
    point(item.at.x + cos * x - sin * y, item.at.y + sin * x + cos * y);
  return [corner(left, low), corner(left + width, low), corner(left + width, high), corner(left, high)];
}
