import type { LineStyle } from './sheet.ts';

/** Colours of the sheets. Each is told apart from its neighbours in one colour too, by weight or by dashes. */
export const INK = {
  ink: '#16201f',
  soft: '#56615f',
  faint: '#a9b3b1',
  hair: '#cfd6d4',
  accent: '#17605f',
  warning: '#9a3412',
  wash: '#eef2f1',
  warningWash: '#fbf0ea',
  band: '#dfe6e4',
  paper: '#ffffff',
  /** For codes that machines read. */
  black: '#000000',
} as const;

/** The four weights of line, mm, each about 1.4 to 2 times the one before. */
export const WEIGHT = { hair: 0.13, thin: 0.2, medium: 0.35, heavy: 0.6 } as const;

/** Sizes of text by their capitals, mm: the font size follows from the metrics. */
export const CAPITAL = { least: 2.2, small: 2.5, body: 3.2, lead: 4, heading: 4.6, title: 7 } as const;

/** The line of each kind on a full-size pattern. Dashes tell them apart in one colour. */
export const STYLE = {
  cut: { weight: WEIGHT.heavy, colour: INK.ink },
  finished: { weight: WEIGHT.medium, dash: [9, 2.5], colour: INK.ink },
  stitch: { weight: WEIGHT.thin, dash: [2.2, 1.6], colour: INK.ink },
  band: { weight: WEIGHT.hair, colour: INK.soft },
  pocket: { weight: WEIGHT.thin, dash: [6, 1.5, 0.8, 1.5], colour: INK.ink },
  hold: { weight: WEIGHT.thin, colour: INK.ink },
  mark: { weight: WEIGHT.medium, colour: INK.ink },
  grain: { weight: WEIGHT.thin, colour: INK.ink },
  register: { weight: WEIGHT.hair, colour: INK.ink },
  frame: { weight: WEIGHT.hair, colour: INK.faint },
  measure: { weight: WEIGHT.thin, colour: INK.ink },
  rule: { weight: WEIGHT.hair, colour: INK.hair },
  opening: { weight: WEIGHT.thin, dash: [3, 2], colour: INK.soft },
  dimension: { weight: WEIGHT.hair, colour: INK.soft },
} as const satisfies Readonly<Record<string, LineStyle>>;
