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

export const english: Messages = {
  language: 'en',
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
  obstruction: (name, opening) => (name === '' ? 'something to keep clear of' : `${name} of ${opening}`),
  document: { whole: 'The document', here: 'This' },
  severities: {
    stop: 'cannot be made as it stands',
    doubt: 'look again before cutting',
    caution: 'can hurt someone',
    note: 'good to know',
  },
  statuses: {
    measured: 'measured',
    chosen: 'chosen in the job',
    catalogue: 'from the catalogue',
    computed: 'worked out',
    estimate: 'estimate',
    custom: 'common practice, no source',
  },
  origins: {
    leastSquares: 'adjusted by least squares from the readings',
    acceptedOutline: 'of the outline as it was accepted',
    offset: 'the outline moved out or in by the allowance',
    outlineLength: 'length along the outline, arcs exact',
    outlineArea: 'area inside the outline, arcs exact',
    bindingLength: 'finished edge, overlap and trims',
    hemWidth: 'the hem’s width',
    equalGaps: 'equal gaps between the corners, within the shop’s spacing',
    stackSum: 'sum of all layers between the magnets',
    pairForce: 'force of the two magnets over the gap, less for real material and warmth',
    holdMargin: 'hold over demand, from wind and weight',
    massPerArea: 'mass per area of the cloth and its edging',
    lay: 'length of the lay',
    stripCut: 'strips cut from whole lengths',
    count: 'counted',
    threadLength: 'thread per seam length and waste',
    wrapSize: 'size of the magnet, its margin and the film',
    tapeLength: 'length for each inside magnet',
    stripLength: 'length for each hold point',
    wholePacks: 'rounded up to whole packs',
    standardMinutes: 'the shop’s minutes for the operation',
    jobCost: 'sum of what is bought and the time',
    markup: 'cost with the shop’s markup',
    tax: 'the shop’s tax rate on the price',
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
