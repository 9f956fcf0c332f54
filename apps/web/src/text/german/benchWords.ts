import type { Words } from '../words.ts';

/** Words of what is handled on the drawing, and of what an edit came to, in German. */
export const benchWords: Words['bench'] = {
  consequences: 'Was sich ergibt',
  consequencesAbout: 'Markiert: was der letzte Schritt geändert hat.',
  margin: 'Sicherheit dieser Blende, mindestens',
  length: 'Stoff von der Rolle',
  price: 'Preis des Auftrags',
  was: (before) => `war ${before}`,
  obstruction: (name, fromLeft, fromBottom) => `${name}, ${fromLeft} von links, ${fromBottom} von unten`,
  obstructionHow:
    'Auf der Zeichnung ziehen, wo es an Mitte und Seiten einrastet, oder dort wählen und die Pfeiltasten drücken.',
  pull: (corner) => `Auf der Zeichnung ziehen: ${corner}`,
  costPlot: 'Wie der Preis zustande kommt',
  left: 'Spanne',
};
