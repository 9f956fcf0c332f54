import type { ReadingName } from '@panewright/design';
import { partWords } from '../partWords.ts';

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

export const { sayPart, partsOf, sayCause } = partWords({
  readings,
  corners: {
    bottomLeft: 'bottom left',
    bottomRight: 'bottom right',
    topRight: 'top right',
    topLeft: 'top left',
  },
  tape: (from, to) => `tape from ${from} to ${to}`,
  side: (number) => `side ${number}`,
  cornerNumber: (number) => `corner ${number}`,
  cornerBetween: (one, other) => `corner between ${one} and ${other}`,
  cornerAt: (place) => `corner at ${place}`,
  causes: {
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
  },
});
