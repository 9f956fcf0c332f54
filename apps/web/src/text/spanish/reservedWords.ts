import type { Words } from '../words.ts';

/** Words of the places on a roll where nothing may be cut, in Spanish. */
export const reservedWords: Words['reserved'] = {
  title: 'Lugares que se dejan libres',
  about:
    'Un defecto de la tela, o tela que se guarda para otra cosa: ahí no se coloca ninguna pieza, ni más cerca que la separación.',
  add: 'Dejar libre un lugar',
  place: (index) => `Lugar ${index}`,
  from: 'Desde, a lo largo del rollo',
  to: 'Hasta',
  near: 'Desde, a lo ancho del rollo',
  far: 'Hasta, a lo ancho',
  why: 'Qué es',
  reasons: { flaw: 'un defecto', kept: 'guardado para otra cosa' },
  notes: 'Nota',
  remove: 'Quitar',
  removeOf: (index) => `Quitar el lugar ${index}`,
  backwards: 'Terminaría antes de empezar.',
  elsewhere: (count, widths) =>
    count === 1
      ? `Un lugar está en un rollo de ${widths} de ancho, que aquí no se usa.`
      : `${count} lugares están en rollos de ${widths} de ancho, que aquí no se usan.`,
  drawn: (reason, index) => `Lugar ${index} que se deja libre: ${reason}`,
  meets: 'Quedaría sobre un lugar que se deja libre, o más cerca que la separación.',
};
