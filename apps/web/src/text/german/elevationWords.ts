import type { Words } from '../words.ts';

/** Words of the sides of the vehicle, vessel or building, in German. */
export const elevationWords: Words['elevations'] = {
  title: 'Ansichten',
  link: 'Ansichten',
  empty:
    'Noch ist keine Seite gezeichnet. Eine hinzufügen, Länge und Höhe angeben und die Öffnungen an ihren Platz setzen: Was zu tun ist, zeigt sich dann, wo es ist.',
  add: 'Seite hinzufügen',
  newName: (n) => `Seite ${n}`,
  name: 'Name der Seite',
  width: 'Länge der Seite',
  height: 'Höhe der Seite',
  how: 'Von außen gesehen. Eine Öffnung an ihren Platz ziehen, oder wählen und die Pfeiltasten drücken; Eingabetaste oder Doppelklick öffnet sie. Von hier wird nichts berechnet.',
  drawing: (side, count) =>
    count === 1 ? `${side} mit 1 Öffnung an ihrem Platz` : `${side} mit ${count} Öffnungen an ihrem Platz`,
  placed: (opening, needs) => (needs ? `${opening}, zu prüfen` : opening),
  free: 'Noch auf keiner Seite',
  place: (opening) => `${opening} hierher setzen`,
  takeOff: 'Von dieser Seite nehmen',
  takeOffOf: (opening) => `Von dieser Seite nehmen: ${opening}`,
  parts: 'Türen, Räder und dergleichen',
  part: 'Form',
  kinds: { box: 'Rechteck', round: 'rund' },
  addPart: 'Form hinzufügen',
  removePart: (n) => `Form ${n} entfernen`,
  photo: 'Ein Foto zum Darüberzeichnen',
  photoAbout:
    'Auf die Seite gestreckt und gezeigt, bis die Seite im Browser geschlossen wird. Es wird nicht aufbewahrt und verlässt dieses Gerät nicht.',
  remove: 'Diese Seite entfernen',
};
