import { ok, type Result, refuse } from '@panewright/quantity';
import type { Page } from './sheet.ts';

/**
 * What a printer's error is made up by: nominal over measured, from the printed test page. x is across the paper as it is
 * fed, y along it. 1 is a true printer; 0.97 to 1.03.
 */
export interface Correction {
  readonly x: number;
  readonly y: number;
}

/** A printer further out than this is set to scale its pages, and is to be set right instead. */
export const CORRECTIONS = { least: 0.97, most: 1.03 } as const;

export type CorrectionRefusal = {
  readonly code: 'CORRECTION_OUT_OF_RANGE';
  readonly axis: 'x' | 'y';
  readonly factor: number;
  readonly least: number;
  readonly most: number;
};

/** @refuses CORRECTION_OUT_OF_RANGE */
export function checkCorrection(correction: Correction): Result<Correction, CorrectionRefusal> {
  const { least, most } = CORRECTIONS;
  for (const axis of ['x', 'y'] as const) {
    const factor = correction[axis];
    if (!(factor >= least && factor <= most))
      return refuse({ code: 'CORRECTION_OUT_OF_RANGE', axis, factor, least, most });
  }
  return ok(correction);
}

/** A page to be printed true on this printer. A page across the paper is turned as it is fed, and its axes with it. */
export function corrected(page: Page, correction: Correction | undefined): Page {
  if (correction === undefined || (correction.x === 1 && correction.y === 1)) return page;
  const { x, y } = correction;
  return { ...page, correction: page.width > page.height ? { x: y, y: x } : { x, y } };
}

/** To four decimals: a tenth of a millimetre in a metre. */
export const factorText = (factor: number): string => factor.toFixed(4);
