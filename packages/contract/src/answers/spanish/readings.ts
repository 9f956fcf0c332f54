import type { ReadingName } from '@panewright/design';

export const readings: { readonly [R in ReadingName]: string } = {
  bottom: 'lado inferior',
  right: 'lado derecho',
  top: 'lado superior',
  left: 'lado izquierdo',
  rising: 'diagonal de abajo a la izquierda a arriba a la derecha',
  falling: 'diagonal de arriba a la izquierda a abajo a la derecha',
  midWidth: 'ancho a media altura',
  midHeight: 'altura a medio ancho',
  radiusBottomLeft: 'radio abajo a la izquierda',
  radiusBottomRight: 'radio abajo a la derecha',
  radiusTopRight: 'radio arriba a la derecha',
  radiusTopLeft: 'radio arriba a la izquierda',
};

const CORNERS: Readonly<Record<string, string>> = {
  bottomLeft: 'abajo a la izquierda',
  bottomRight: 'abajo a la derecha',
  topRight: 'arriba a la derecha',
  topLeft: 'arriba a la izquierda',
};

/** A reading's, corner's or edge's name in words; a name not known stays as it is. */
export function sayPart(name: string | number | undefined): string {
  const text = String(name ?? '');
  if (text.startsWith('corner:')) return sayCorner(text.slice(7));
  if (text.startsWith('tape:')) {
    const [, from, to] = text.split(':');
    return `cinta de ${from} a ${to}`;
  }
  const numbered = /^side(\d+)$/.exec(text);
  if (numbered) return `lado ${numbered[1]}`;
  if (Object.hasOwn(readings, text)) return readings[text as ReadingName];
  return CORNERS[text] ?? text;
}

/** A corner by its name or number, or by the two edges it lies between. */
function sayCorner(name: string): string {
  if (/^\d+$/.test(name)) return `esquina ${name}`;
  const between = /^(\w+)-(\w+)$/.exec(name);
  return between
    ? `esquina entre ${sayPart(between[1])} y ${sayPart(between[2])}`
    : `esquina de ${sayPart(name)}`;
}

/** Names set apart by spaces, in words. */
export const partsOf = (names: string | number | undefined): readonly string[] =>
  String(names ?? '')
    .split(' ')
    .filter(Boolean)
    .map(sayPart);

const CAUSES: Readonly<Record<string, string>> = {
  oneInch: 'una pulgada de error al leer',
  halfInch: 'media pulgada de error al leer',
  quarterInch: 'un cuarto de pulgada de error al leer',
  eighthInch: 'un octavo de pulgada de error al leer',
  oneFoot: 'un pie de error al leer',
  fiveMillimetres: '5 mm de error al leer',
  tenMillimetres: '1 cm de error al leer',
  hundredMillimetres: '10 cm de error al leer',
  fractionNumerator: 'el numerador de la fracción está mal',
  fractionDenominator: 'el denominador de la fracción está mal',
  fractionLeftOff: 'se omitió la fracción',
  digitsSwapped: 'dos cifras cambiadas de sitio',
  digitMisread: 'una cifra mal leída',
  exchanged: 'dos medidas cambiadas entre sí',
};

/** What a slip of that kind is called; '' where it is not explained. */
export const sayCause = (cause: string | number | undefined): string => CAUSES[String(cause)] ?? '';
