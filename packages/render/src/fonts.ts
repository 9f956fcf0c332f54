import { create } from '@cantoo/fontkit';
import type { Face, FontMetrics } from '@panewright/drawing';

/** The two faces the sheets are set in, as the bytes of TrueType or OpenType files, and their widths. */
export interface Fonts {
  readonly bytes: Readonly<Record<Face, Uint8Array>>;
  readonly metrics: FontMetrics;
}

/** Ligatures off: a text is then as wide as its letters, on paper and on screen alike. */
export const FEATURES = { liga: false, clig: false, dlig: false } as const;

type Font = {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly glyphForCodePoint: (code: number) => {
    readonly advanceWidth: number;
    readonly bbox: { readonly maxY: number; readonly minY: number };
  };
  readonly layout: (
    text: string,
    features: Readonly<Record<string, boolean>>,
  ) => { readonly glyphs: readonly { readonly advanceWidth: number }[] };
};

/**
 * Reads two font files. A file that is no font is a fault and throws.
 *
 * @returns metrics per unit of font size, and the bytes to embed
 * @source advance widths and glyph boxes of the files themselves, sources.md#opentype
 */
export function loadFonts(bytes: Readonly<Record<Face, Uint8Array>>): Fonts {
  const fonts = {
    regular: create(bytes.regular) as unknown as Font,
    bold: create(bytes.bold) as unknown as Font,
  };
  const widths: Record<Face, Map<string, number>> = { regular: new Map(), bold: new Map() };
  const letterWidth = (letter: string, face: Face): number => {
    const seen = widths[face].get(letter);
    if (seen !== undefined) return seen;
    const font = fonts[face];
    const width = font.glyphForCodePoint(letter.codePointAt(0)!).advanceWidth / font.unitsPerEm;
    widths[face].set(letter, width);
    return width;
  };
  const box = (letter: string) => fonts.regular.glyphForCodePoint(letter.codePointAt(0)!).bbox;
  const em = fonts.regular.unitsPerEm;
  return {
    bytes,
    metrics: {
      capital: box('H').maxY / em,
      ascent: Math.max(box('l').maxY, box('Á').maxY * 0.82) / em,
      descent: -box('g').minY / em,
      width: (text, face) => {
        if (SIMPLE.test(text)) {
          let sum = 0;
          for (const letter of text) sum += letterWidth(letter, face);
          return sum;
        }
        const font = fonts[face];
        return (
          font.layout(text, FEATURES).glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) /
          font.unitsPerEm
        );
      },
    },
  };
}

/** Latin, Greek, Cyrillic, punctuation, arrows, signs: one glyph a letter. Other scripts are shaped to be measured. */
const SIMPLE =
  /^[\u0020-\u02ff\u0370-\u0482\u048a-\u052f\u1e00-\u1fff\u2010-\u2027\u2030-\u205e\u2070-\u25ff]*$/;
