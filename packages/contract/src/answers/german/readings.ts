import type { ReadingName } from '@panewright/design';

export const readings: { readonly [R in ReadingName]: string } = {
  bottom: 'untere Seite',
  right: 'rechte Seite',
  top: 'obere Seite',
  left: 'linke Seite',
  rising: 'Diagonale von unten links nach oben rechts',
  falling: 'Diagonale von oben links nach unten rechts',
  midWidth: 'Breite auf halber Höhe',
  midHeight: 'Höhe in der Mitte der Breite',
  radiusBottomLeft: 'Radius unten links',
  radiusBottomRight: 'Radius unten rechts',
  radiusTopRight: 'Radius oben rechts',
  radiusTopLeft: 'Radius oben links',
};

const CORNERS: Readonly<Record<string, string>> = {
  bottomLeft: 'unten links',
  bottomRight: 'unten rechts',
  topRight: 'oben rechts',
  topLeft: 'oben links',
};

/** A reading's, corner's or edge's name in words; a name not known stays as it is. */
export function sayPart(name: string | number | undefined): string {
  const text = String(name ?? '');
  if (text.startsWith('corner:')) return sayCorner(text.slice(7));
  if (text.startsWith('tape:')) {
    const [, from, to] = text.split(':');
    return `Maßband von ${from} bis ${to}`;
  }
  const numbered = /^side(\d+)$/.exec(text);
  if (numbered) return `Seite ${numbered[1]}`;
  if (Object.hasOwn(readings, text)) return readings[text as ReadingName];
  return CORNERS[text] ?? text;
}

/** A corner by its name or number, or by the two edges it lies between. */
function sayCorner(name: string): string {
  if (/^\d+$/.test(name)) return `Ecke ${name}`;
  const between = /^(\w+)-(\w+)$/.exec(name);
  return between
    ? `Ecke zwischen ${sayPart(between[1])} und ${sayPart(between[2])}`
    : `Ecke ${sayPart(name)}`;
}

/** Names set apart by spaces, in words. */
export const partsOf = (names: string | number | undefined): readonly string[] =>
  String(names ?? '')
    .split(' ')
    .filter(Boolean)
    .map(sayPart);

const CAUSES: Readonly<Record<string, string>> = {
  oneInch: 'um ein Zoll falsch abgelesen',
  halfInch: 'um ein halbes Zoll falsch abgelesen',
  quarterInch: 'um ein Viertelzoll falsch abgelesen',
  eighthInch: 'um ein Achtelzoll falsch abgelesen',
  oneFoot: 'um einen Fuß falsch abgelesen',
  fiveMillimetres: 'um 5 mm falsch abgelesen',
  tenMillimetres: 'um 1 cm falsch abgelesen',
  hundredMillimetres: 'um 10 cm falsch abgelesen',
  fractionNumerator: 'der Zähler des Bruchs stimmt nicht',
  fractionDenominator: 'der Nenner des Bruchs stimmt nicht',
  fractionLeftOff: 'der Bruch wurde weggelassen',
  digitsSwapped: 'zwei Ziffern vertauscht',
  digitMisread: 'eine Ziffer verlesen',
  exchanged: 'zwei Messungen vertauscht',
};

/** What a slip of that kind is called; '' where it is not explained. */
export const sayCause = (cause: string | number | undefined): string => CAUSES[String(cause)] ?? '';
