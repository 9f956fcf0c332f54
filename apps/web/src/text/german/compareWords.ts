import type { Words } from '../words.ts';

/** Words of lays set side by side, in German. */
export const compareWords: Words['compare'] = {
  title: (lay) => `Schnittlage ${lay} vergleichen`,
  about:
    'Die Schnittlage weglegen, wie sie jetzt ist, sie ändern oder länger suchen, und beide sehen: Stoff, Geld, und was übrig bleibt.',
  keep: 'Diese Schnittlage weglegen',
  name: (number, length) => `Weggelegt ${number}: ${length}`,
  lay: 'Weggelegte Schnittlage',
  now: 'Die Schnittlage, wie sie jetzt ist',
  leaves: 'Bleibt übrig',
  left: (count, worth) => (count === 0 ? 'nichts' : `${count}, wert ${worth}`),
  actions: 'Was damit geschieht',
  show: 'Nebeneinander',
  use: 'Nehmen',
  remove: 'Entfernen',
  longer: (length) => `${length} länger`,
  shorter: (length) => `${length} kürzer`,
  notSold: 'Rolle nicht im Verkauf',
  fitsNoLonger: 'Teile oder freigehaltene Stellen sind seither anders: Sie passt nicht mehr.',
};
