import type { ReadingName } from '@panewright/design';
import { partWords } from '../partWords.ts';

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

export const { sayPart, partsOf, sayCause } = partWords({
  readings,
  corners: {
    bottomLeft: 'abajo a la izquierda',
    bottomRight: 'abajo a la derecha',
    topRight: 'arriba a la derecha',
    topLeft: 'arriba a la izquierda',
  },
  tape: (from, to) => `cinta de ${from} a ${to}`,
  side: (number) => `lado ${number}`,
  cornerNumber: (number) => `esquina ${number}`,
  cornerBetween: (one, other) => `esquina entre ${one} y ${other}`,
  cornerAt: (place) => `esquina de ${place}`,
  causes: {
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
  },
});
