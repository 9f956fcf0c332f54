import type { GapWords } from '../words.ts';

/** Why two neighbours are as far apart as they are. */
export const gapWords: GapWords = {
  oneGap: ({ length }, _, show) =>
    `${show.length(length)}: Die beiden Ecken liegen im Abstand, dazwischen sitzt nichts.`,
  withinTolerance: ({ length }, _, show) =>
    `${show.length(length)}: über dem Abstand, aber noch im Rahmen dessen, was die Werkstatt zulässt.`,
  divided: ({ length }, _, show) =>
    `${show.length(length)}: Die Kante ist in möglichst wenige gleiche Abstände geteilt.`,
  shifted: ({ length, shift, mirrored }, obstruction, show) =>
    mirrored
      ? `${show.length(length)}: um ${show.fine(shift)} versetzt, damit beide Seiten neben ${obstruction} gleich sind.`
      : `${show.length(length)}: um ${show.fine(shift)} versetzt, um frei zu bleiben von: ${obstruction}.`,
  zoneWide: ({ length }, obstruction, show) =>
    `${show.length(length)}: ${obstruction} ist breiter als der Abstand; darauf kann nichts sitzen.`,
  cornerBlocked: ({ length }, obstruction, show) =>
    `${show.length(length)}: ${obstruction} verdeckt die Ecke, die Punkte sitzen daneben.`,
  raised: ({ length }, _, show) =>
    `${show.length(length)}: mehr Punkte, als der Abstand verlangt, damit die Sicherheit reicht.`,
  byHand: ({ length }, _, show) => `${show.length(length)}: von Hand gesetzt.`,
  overLimit: ({ length }, _, show) =>
    `${show.length(length)}: von Hand gesetzt, und weiter, als die Werkstatt zulässt.`,
};
