import type { UnitName } from '@panewright/design';
import { ok, type Result, refuse } from '@panewright/quantity';

/** Cut sheets by their standard's name. */
export type PaperName = 'letter' | 'a4' | 'a3' | 'tabloid';

/** Paper off a roll: as wide as the roll, as long as what is drawn. Width in mm. */
export interface RollPaper {
  readonly kind: 'roll';
  readonly width: number;
}

/** What patterns are printed on. A name is a cut sheet; a roll says how wide it is. */
export type Paper = PaperName | RollPaper;

export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/** Sizes of paper, mm, upright. */
export const PAPERS: Readonly<Record<PaperName, PaperSize>> = {
  /** 8 1/2 x 11 in. @source sources.md#ansi-y14-1 */
  letter: { width: 215.9, height: 279.4 },
  /** @source sources.md#iso-216 */
  a4: { width: 210, height: 297 },
  /** @source sources.md#iso-216 */
  a3: { width: 297, height: 420 },
  /** 11 x 17 in. @source sources.md#ansi-y14-1 */
  tabloid: { width: 279.4, height: 431.8 },
};

/** Common widths of roll, in whole inches: 24, 36 and 42. Any other width is a roll too. */
export const ROLLS: readonly RollPaper[] = [24, 36, 42].map((inches) => rollOf(inches));

export function rollOf(inches: number): RollPaper {
  return { kind: 'roll', width: inches * 25.4 };
}

/** Narrowest roll: the measuring square and its words need the room. Widest: the limit of a page. mm. */
export const ROLL_WIDTHS = { least: 200, most: 5080 } as const;

export type PaperRefusal = {
  readonly code: 'ROLL_WIDTH_OUT_OF_RANGE';
  readonly width: number;
  readonly least: number;
  readonly most: number;
};

/**
 * A paper that can be drawn on.
 *
 * @refuses ROLL_WIDTH_OUT_OF_RANGE
 * @source the most is the longest side of a PDF page, 14,400 units of 1/72 in: sources.md#iso-32000-limit
 */
export function checkPaper(paper: Paper): Result<Paper, PaperRefusal> {
  const { least, most } = ROLL_WIDTHS;
  if (typeof paper === 'string' || (paper.width >= least && paper.width <= most)) return ok(paper);
  return refuse({ code: 'ROLL_WIDTH_OUT_OF_RANGE', width: paper.width, least, most });
}

/** A paper's part of a file's name: `a4`, `roll-36in` for whole inches, `roll-900mm`. */
export function paperLabel(paper: Paper): string {
  if (typeof paper === 'string') return paper;
  const inches = paper.width / 25.4;
  return Math.abs(inches - Math.round(inches)) < 1e-6
    ? `roll-${Math.round(inches)}in`
    : `roll-${Number(paper.width.toFixed(1))}mm`;
}

/** What written sheets are printed on: office paper of the same family as the patterns'. */
export function writtenPaper(paper: Paper, units: UnitName): 'letter' | 'a4' {
  if (paper === 'letter' || paper === 'tabloid') return 'letter';
  if (paper === 'a4' || paper === 'a3') return 'a4';
  return units === 'in' ? 'letter' : 'a4';
}

/** What templates are printed on: the patterns' paper where it is cut in sheets. */
export const sheetPaper = (paper: Paper, units: UnitName): PaperName =>
  typeof paper === 'string' ? paper : writtenPaper(paper, units);
