import type { ReadingName } from '@panewright/design';

export const readings: { readonly [R in ReadingName]: string } = {
  bottom: 'bottom side',
  right: 'right side',
  top: 'top side',
  left: 'left side',
  rising: 'diagonal from bottom left to top right',
  falling: 'diagonal from top left to bottom right',
  midWidth: 'width at mid height',
  midHeight: 'height at mid width',
  radiusBottomLeft: 'radius at bottom left',
  radiusBottomRight: 'radius at bottom right',
  radiusTopRight: 'radius at top right',
  radiusTopLeft: 'radius at top left',
};

const CORNERS: Readonly<Record<string, string>> = {
  bottomLeft: 'bottom left',
  bottomRight: 'bottom right',
  topRight: 'top right',
  topLeft: 'top left',
};

/** A reading's, corner's or edge's name in words; a name not known stays as it is. */
export function sayPart(name: string | number | undefined): string {
  const text = String(name ?? '');
  if (text.startsWith('corner:')) return sayCorner(text.slice(7));
  if (text.startsWith('tape:')) {
    const [, from, to] = text.split(':');
    return `tape from ${from} to ${to}`;
  }
  const numbered = /^side(\d+)$/.exec(text);
  if (numbered) return `side ${numbered[1]}`;
  if (Object.hasOwn(readings, text)) return readings[text as ReadingName];
  return CORNERS[text] ?? text;
}

/** A corner by its name or number, or by the two edges it lies between. */
function sayCorner(name: string): string {
  if (/^\d+$/.test(name)) return `corner ${name}`;
  const between = /^(\w+)-(\w+)$/.exec(name);
  return between
    ? `corner between ${sayPart(between[1])} and ${sayPart(between[2])}`
    : `corner at ${sayPart(name)}`;
}

/** Names set apart by spaces, in words. */
export const partsOf = (names: string | number | undefined): readonly string[] =>
  String(names ?? '')
    .split(' ')
    .filter(Boolean)
    .map(sayPart);

const CAUSES: Readonly<Record<string, string>> = {
  oneInch: 'read one inch off',
  halfInch: 'read half an inch off',
  quarterInch: 'read a quarter inch off',
  eighthInch: 'read an eighth off',
  oneFoot: 'read one foot off',
  fiveMillimetres: 'read 5 mm off',
  tenMillimetres: 'read 1 cm off',
  hundredMillimetres: 'read 10 cm off',
  fractionNumerator: 'the top of the fraction is off',
  fractionDenominator: 'the bottom of the fraction is off',
  fractionLeftOff: 'the fraction was left off',
  digitsSwapped: 'two digits changed places',
  digitMisread: 'one digit was misread',
  exchanged: 'two readings changed places',
};

/** What a slip of that kind is called; '' where it is not explained. */
export const sayCause = (cause: string | number | undefined): string => CAUSES[String(cause)] ?? '';
