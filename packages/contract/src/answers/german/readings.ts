import type { ReadingName } from '@panewright/design';
import { partWords } from '../partWords.ts';

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

export const { sayPart, partsOf, sayCause } = partWords({
  readings,
  corners: {
    bottomLeft: 'unten links',
    bottomRight: 'unten rechts',
    topRight: 'oben rechts',
    topLeft: 'oben links',
  },
  tape: (from, to) => `Maßband von ${from} bis ${to}`,
  side: (number) => `Seite ${number}`,
  cornerNumber: (number) => `Ecke ${number}`,
  cornerBetween: (one, other) => `Ecke zwischen ${one} und ${other}`,
  cornerAt: (place) => `Ecke ${place}`,
  causes: {
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
  },
});
