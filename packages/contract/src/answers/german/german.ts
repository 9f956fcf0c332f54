import type { Messages } from '../words.ts';
import { sayFileNote } from './fileRefusals.ts';
import { findings } from './findings.ts';
import { gapWords } from './gaps.ts';
import { issues, lengths } from './issues.ts';
import { choiceWords } from './magnetChoices.ts';
import { readings, sayPart } from './readings.ts';
import { refusals } from './refusals.ts';
import { traceQuestions } from './tracing.ts';
import { wrongWay } from './wrongWay.ts';

export const german: Messages = {
  language: 'de',
  refusals,
  findings,
  issues,
  lengths,
  readings,
  traceQuestions,
  choices: choiceWords,
  gaps: gapWords,
  wrongWay,
  fileNote: sayFileNote,
  part: sayPart,
  obstruction: (name, opening) => (name === '' ? 'etwas, das frei bleiben muss' : `${name} von ${opening}`),
  document: { whole: 'Das Dokument', here: 'Dies' },
  severities: {
    stop: 'so nicht herstellbar',
    doubt: 'vor dem Zuschnitt prüfen',
    caution: 'kann jemanden verletzen',
    note: 'gut zu wissen',
  },
  statuses: {
    measured: 'gemessen',
    chosen: 'im Auftrag gewählt',
    catalogue: 'aus dem Katalog',
    computed: 'berechnet',
    estimate: 'Schätzung',
    custom: 'übliche Praxis, ohne Quelle',
  },
  origins: {
    leastSquares: 'aus den Messungen nach kleinsten Quadraten ausgeglichen',
    acceptedOutline: 'vom Umriss, wie er übernommen wurde',
    offset: 'der Umriss, um die Zugabe nach außen oder innen versetzt',
    outlineLength: 'Länge des Umrisses, Bögen genau',
    outlineArea: 'Fläche im Umriss, Bögen genau',
    bindingLength: 'fertige Kante, Überlappung und Abschnitte',
    hemWidth: 'die Breite des Saums',
    equalGaps: 'gleiche Abstände zwischen den Ecken, im Abstand der Werkstatt',
    stackSum: 'Summe aller Schichten zwischen den Magneten',
    pairForce: 'Kraft der beiden Magnete über den Spalt, abzüglich wirklichem Material und Wärme',
    holdMargin: 'Halt geteilt durch Bedarf, aus Wind und Gewicht',
    massPerArea: 'Masse je Fläche von Stoff und Kantenabschluss',
    lay: 'Länge der Schnittlage',
    stripCut: 'Streifen, aus ganzen Längen geschnitten',
    count: 'gezählt',
    threadLength: 'Garn je Nahtlänge und Verlust',
    wrapSize: 'Größe des Magneten, sein Rand und die Folie',
    tapeLength: 'Länge für jeden inneren Magneten',
    stripLength: 'Länge für jeden Haltepunkt',
    wholePacks: 'auf ganze Gebinde aufgerundet',
    standardMinutes: 'die Minuten der Werkstatt für diese Arbeit',
    jobCost: 'Summe aus Einkauf und Zeit',
    markup: 'Kosten mit dem Aufschlag der Werkstatt',
    tax: 'Steuersatz der Werkstatt auf den Preis',
  },
  units: {
    mm: 'mm',
    mm2: 'mm²',
    count: '',
    min: 'min',
    money: '',
    N: 'N',
    g: 'g',
    ratio: '',
    'm/s': 'm/s',
  },
};
