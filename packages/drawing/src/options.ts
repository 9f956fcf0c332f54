import type { Catalogue, Finding, Job, Plan, UnitName } from '@panewright/design';
import { ok, type Result } from '@panewright/quantity';
import { type Correction, type CorrectionRefusal, checkCorrection } from './correction.ts';
import { checkPaper, type Paper, type PaperRefusal } from './paper.ts';
import type { FontMetrics } from './sheet.ts';
import type { Words } from './words.ts';

/** How the sheets are to be made. Nothing here changes what is made, only how it is shown. */
export interface SheetOptions {
  /** Patterns and templates are drawn for it; written sheets for Letter or A4, the nearer of kin. */
  readonly paper: Paper;
  /** The printer's own error, made up on patterns and templates and nowhere else. */
  readonly correction?: Correction;
  readonly units: UnitName;
  /** A page to measure the printer by, besides. */
  readonly printerTest?: boolean;
  /** ISO date of the day the sheets are made, `2026-11-25`. */
  readonly date: string;
  readonly revision: string;
  readonly metrics: FontMetrics;
  /** Words a finding: the sentence of a contract, in the reader's language. */
  readonly say: (finding: Finding) => string;
  /** The sheets' own sentences; English where not given. */
  readonly words?: Words;
}

/** Everything a sheet is made from. */
export interface SheetInput {
  readonly plan: Plan;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly options: SheetOptions;
}

export type SheetRefusal = PaperRefusal | CorrectionRefusal;

/**
 * Options that sheets can be made with. `sheetsOf` takes no others: they throw there.
 *
 * @refuses ROLL_WIDTH_OUT_OF_RANGE, CORRECTION_OUT_OF_RANGE
 */
export function checkSheetOptions(options: SheetOptions): Result<SheetOptions, SheetRefusal> {
  const paper = checkPaper(options.paper);
  if (!paper.ok) return paper;
  if (options.correction !== undefined) {
    const correction = checkCorrection(options.correction);
    if (!correction.ok) return correction;
  }
  return ok(options);
}
