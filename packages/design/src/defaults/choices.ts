import type { Choices, Glazing, Job } from '../document/job.ts';

/** Choices of a new job, from the invented catalogue. Figures are common practice of the trade, no source. */
export const defaultChoices: Choices = {
  fabric: 'mesh-black',
  grain: 'either',
  fit: { all: 6.35, edges: {} },
  finish: { kind: 'binding', binding: 'centrefold-22' },
  hold: {
    spacing: 609.6,
    upTo: 685.8,
    pocket: 76.2,
    outside: 'disc-20x5',
    inside: 'disc-20x5',
    poleOut: 'north',
  },
  wrapFilm: 'film-clear',
  tape: 'foam-25',
  thread: 'polyester-90',
  weather: { wind: 5.5, gustFactor: 1.66, hottest: 70 },
};

/** A single pane, flat, with a thin gasket: where a new opening starts. */
export const defaultGlazing: Glazing = {
  layers: [{ kind: 'glass', thickness: 4 }],
  standOff: 0,
  curved: false,
};

/** A job with nothing measured yet. */
export const emptyJob = (id: string, name: string, units: Job['units']): Job => ({
  format: 'panewright.job',
  version: 3,
  id,
  name,
  customer: { name: '', address: '', contact: '' },
  site: { kind: 'camper', name: '', notes: '' },
  units,
  choices: defaultChoices,
  openings: [],
  notes: '',
});
