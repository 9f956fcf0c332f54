import {
  defaultChoices,
  defaultGlazing,
  emptyJob,
  type Job,
  type KeptPattern,
  type Opening,
  type Reading,
} from '@panewright/design';

const reading = (of: Reading['of'], entered: string): Reading => ({ of, entered, unit: 'in' });

/** An invented opening: square, four equal radii, one diagonal to check it. */
const opening: Opening = {
  id: 'W1',
  name: 'Side window',
  place: 'left side',
  survey: {
    method: 'tape',
    diagonalsTo: 'sharp',
    readings: [
      reading('bottom', '30'),
      reading('right', '20'),
      reading('top', '30'),
      reading('left', '20'),
      reading('rising', '36 1/16'),
      reading('falling', '36 1/16'),
      reading('radiusBottomLeft', '3'),
      reading('radiusBottomRight', '3'),
      reading('radiusTopRight', '3'),
      reading('radiusTopLeft', '3'),
    ],
  },
  glazing: defaultGlazing,
  exit: false,
  driving: false,
  obstructions: [],
  choices: {},
  notes: '',
};

/** The smallest job that has everything: the operations' examples are played with it. */
export const exampleJob: Job = {
  ...emptyJob('example', 'One side window', 'in'),
  choices: defaultChoices,
  openings: [opening],
};

/** An invented kept pattern: a rectangle of 762 × 508 mm, known to 0.8 mm. */
export const examplePattern: KeptPattern = {
  format: 'panewright.pattern',
  version: 1,
  id: 'side-window',
  name: 'Side window',
  notes: '',
  segments: [
    { kind: 'line', to: { x: 762, y: 0 }, sigma: 0.8 },
    { kind: 'line', to: { x: 762, y: 508 }, sigma: 0.8 },
    { kind: 'line', to: { x: 0, y: 508 }, sigma: 0.8 },
    { kind: 'line', to: { x: 0, y: 0 }, sigma: 0.8 },
  ],
  edgeNames: ['bottom', 'right', 'top', 'left'],
  sizeSigma: { width: 0.6, height: 0.6 },
  from: {
    ...{ job: 'example', jobName: 'One side window', revision: 1, pattern: 'P1' },
    customer: '',
    site: { kind: 'camper', name: 'Invented camper' },
    openings: [{ id: 'W1', name: 'Side window', place: 'left side', turnedOver: false }],
    method: 'tape',
    date: '2026-11-25',
  },
};
