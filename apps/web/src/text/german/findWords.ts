import type { Words } from '../words.ts';

/** Words of finding things and of the keys, in German. */
export const findWords: Words['find'] = {
  find: 'Suchen',
  inJob: 'In diesem Auftrag suchen',
  label: 'Öffnungen, Schnittmuster, Material, Notizen',
  inJobs: 'Auftrag, Öffnung oder Material suchen',
  none: 'Hier heißt nichts so.',
  some: (count) => `${count} gefunden`,
  kind: {
    job: 'Auftrag',
    opening: 'Öffnung',
    pattern: 'Schnittmuster',
    material: 'Material',
    note: 'Notiz',
  },
  inOf: (job) => `in ${job}`,
  keys: 'Tasten',
  keysTitle: 'Was die Tasten tun',
  key: {
    undo: ['Strg+Z', 'Die letzte Eingabe zurücknehmen'],
    redo: ['Strg+Umschalt+Z', 'Sie wiederholen'],
    find: ['/', 'In diesem Auftrag suchen'],
    keys: ['?', 'Diese Liste'],
    tab: ['Tab', 'Zur nächsten Messung, in der Reihenfolge des Herumgehens'],
    next: ['Alt+↓', 'Die nächste Öffnung'],
    previous: ['Alt+↑', 'Die Öffnung davor'],
    stages: ['Alt+1 … Alt+9', 'Die Stufen, von Auftrag an'],
    escape: ['Esc', 'Schließen, was offen ist'],
  },
  keysAbout: 'Auf einem Mac steht Cmd für Strg. In einem Feld werden die Buchstaben wie sonst getippt.',
};
