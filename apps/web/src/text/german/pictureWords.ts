import type { Words } from '../words.ts';

/** The words of the picture for the customer, in German. */
export const pictureWords: Words['picture'] = {
  title: 'In einem Foto des Fensters',
  about:
    'Zum Zeigen, bevor etwas zugeschnitten ist: die Blende, wie sie aussehen wird, nach Farbe und Offenheit ihres Stoffs. Das Foto bleibt in diesem Browser und wird nicht mit dem Auftrag aufbewahrt.',
  choose: 'Foto des Fensters, von außen',
  unreadable: (name) =>
    `„${name}“ ist kein Bild, das dieser Browser zeigen kann. Ein Foto in JPEG oder PNG nehmen.`,
  inside: 'Das Foto wurde von innen gemacht',
  drag: 'Die vier Ecken ziehen, bis die gestrichelte Linie auf dem Rand des Fensters liegt. Auch die Pfeiltasten verschieben eine Ecke.',
  photoOf: (name) => `Foto von ${name}`,
  panelIn: (name) => `Die fertige Blende an ${name}`,
  corners: ['Ecke unten links', 'Ecke unten rechts', 'Ecke oben rechts', 'Ecke oben links'],
  handle: 'Griff zum Ziehen',
  dent: 'Die Ecken gehen nicht um das Fenster herum: Zwei sind vertauscht, oder drei liegen auf einer Linie. Sie auseinanderziehen.',
  save: 'Bild speichern',
  fileName: (name) => `${name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').trim() || 'Fenster'}.jpg`,
};
