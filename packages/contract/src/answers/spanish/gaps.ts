import type { GapWords } from '../words.ts';

/** Why two neighbours are as far apart as they are. */
export const gapWords: GapWords = {
  oneGap: ({ length }, _, show) =>
    `${show.length(length)}: las dos esquinas están dentro de la separación, así que no hay nada en medio.`,
  withinTolerance: ({ length }, _, show) =>
    `${show.length(length)}: más que la separación, pero dentro de lo que admite el taller.`,
  divided: ({ length }, _, show) =>
    `${show.length(length)}: el borde se divide en las menos separaciones iguales posibles.`,
  shifted: ({ length, shift, mirrored }, obstruction, show) =>
    mirrored
      ? `${show.length(length)}: movido ${show.fine(shift)} para que los dos lados queden iguales junto a ${obstruction}.`
      : `${show.length(length)}: movido ${show.fine(shift)} para dejar libre ${obstruction}.`,
  zoneWide: ({ length }, obstruction, show) =>
    `${show.length(length)}: ${obstruction} es más ancho que la separación; nada puede ir encima.`,
  cornerBlocked: ({ length }, obstruction, show) =>
    `${show.length(length)}: ${obstruction} tapa la esquina, así que los puntos van al lado.`,
  raised: ({ length }, _, show) =>
    `${show.length(length)}: más puntos de los que pide la separación, para alcanzar el margen.`,
  byHand: ({ length }, _, show) => `${show.length(length)}: puesto a mano.`,
  overLimit: ({ length }, _, show) =>
    `${show.length(length)}: puesto a mano, y más separado de lo que admite el taller.`,
};
