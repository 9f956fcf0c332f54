import type { Words } from '../words.ts';

/** Words of what is handled on the drawing, and of what an edit came to, in Spanish. */
export const benchWords: Words['bench'] = {
  consequences: 'En qué resulta',
  consequencesAbout: 'Marcado: lo que cambió el último paso.',
  margin: 'Margen de sujeción de este panel, como mínimo',
  length: 'Tela del rollo',
  price: 'Precio del trabajo',
  was: (before) => `era ${before}`,
  obstruction: (name, fromLeft, fromBottom) =>
    `${name}, a ${fromLeft} de la izquierda, a ${fromBottom} de abajo`,
  obstructionHow:
    'Arrástrelo en el dibujo, donde encaja en el centro y en los lados, o elíjalo allí y pulse las teclas de flecha.',
  pull: (corner) => `Tirar en el dibujo: ${corner}`,
  costPlot: 'Cómo se forma el precio',
  left: 'Margen',
};
