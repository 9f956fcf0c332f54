import type { GapWords } from '../words.ts';

const mirror = (mirrored: boolean | undefined, obstruction: string): string =>
  mirrored ? `, so that both sides are alike beside ${obstruction}` : '';

/** Why two neighbours are as far apart as they are. */
export const gapWords: GapWords = {
  oneGap: ({ length }, _, show) =>
    `${show.length(length)}: the two corners are within the spacing, so nothing stands between.`,
  withinTolerance: ({ length }, _, show) =>
    `${show.length(length)}: over the spacing, but within what the shop lets pass.`,
  divided: ({ length }, _, show) =>
    `${show.length(length)}: the edge is divided into the fewest equal gaps that keep the spacing.`,
  shifted: ({ length, shift, mirrored }, obstruction, show) =>
    mirrored
      ? `${show.length(length)}: moved ${show.fine(shift)} from equal${mirror(true, obstruction)}.`
      : `${show.length(length)}: moved ${show.fine(shift)} from equal to keep clear of ${obstruction}.`,
  zoneWide: ({ length }, obstruction, show) =>
    `${show.length(length)}: ${obstruction} is wider than the spacing; nothing can stand on it.`,
  cornerBlocked: ({ length }, obstruction, show) =>
    `${show.length(length)}: ${obstruction} covers the corner, so the points stand beside it.`,
  raised: ({ length }, _, show) =>
    `${show.length(length)}: more points than the spacing asks for, so that the margin is met.`,
  byHand: ({ length }, _, show) => `${show.length(length)}: set by hand.`,
  overLimit: ({ length }, _, show) =>
    `${show.length(length)}: set by hand, and wider than the shop lets pass.`,
};
