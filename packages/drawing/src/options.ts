import type { Catalogue, Finding, Job, Plan, PricedOffer, UnitName } from '@panewright/design';
import { ok, type Result, refuse } from '@panewright/quantity';
import { type Correction, type CorrectionRefusal, checkCorrection } from './correction.ts';
import { checkPaper, type Paper, type PaperRefusal } from './paper.ts';
import type { FontMetrics } from './sheet.ts';
import type { Words } from './words.ts';
import type { Language } from './wordsOf.ts';

/** How the sheets are to be made. Nothing here changes what is made, only how it is shown. */
export interface SheetOptions {
  /** Patterns and templates are drawn for it; written sheets for Letter or A4, the nearer of kin. */
  readonly paper: Paper;
  /** The printer's own error, made up on patterns and templates and nowhere else. */
  readonly correction?: Correction;
  readonly units: UnitName;
  /** Copies of each template, 1 to 10,000; one full page where not given, never more than the job needs. */
  readonly templateCopies?: number;
  /** Large type on work order, install sheet, cut list and buy list: a third larger, to be read from a distance. */
  readonly type?: 'standard' | 'large';
  /** A page to measure the printer by, besides. */
  readonly printerTest?: boolean;
  /** ISO date of the day the sheets are made, `2026-11-25`. */
  readonly date: string;
  readonly revision: string;
  readonly metrics: FontMetrics;
  /** Words a finding: the sentence of a contract, in the reader's language. */
  readonly say: (finding: Finding, language?: Language) => string;
  /** Language of the sentences and of figures (decimal comma, place of the money's sign); English where not given. */
  readonly language?: Language;
  /** Language of what the customer is given, the quote; the sheets' own where not given. */
  readonly customerLanguage?: Language;
  /** The sheets' own sentences, in place of the language's. */
  readonly words?: Words;
}

/** Everything a sheet is made from. */
export interface SheetInput {
  readonly plan: Plan;
  readonly job: Job;
  readonly catalogue: Catalogue;
  /** Alternatives the quote gives a price for. */
  readonly offers?: readonly PricedOffer[];
  readonly options: SheetOptions;
}

export type SheetRefusal =
  | PaperRefusal
  | CorrectionRefusal
  | { readonly code: 'TEMPLATE_COPIES_OUT_OF_RANGE'; readonly copies: number; readonly most: number };

const MOST_COPIES = 10_000;

/**
 * Options that sheets can be made with. `sheetsOf` takes no others: they throw there.
 *
 * @refuses ROLL_WIDTH_OUT_OF_RANGE, CORRECTION_OUT_OF_RANGE, TEMPLATE_COPIES_OUT_OF_RANGE
 */
export function checkSheetOptions(options: SheetOptions): Result<SheetOptions, SheetRefusal> {
  const paper = checkPaper(options.paper);
  if (!paper.ok) return paper;
  if (options.correction !== undefined) {
    const correction = checkCorrection(options.correction);
    if (!correction.ok) return correction;
  }
  const { templateCopies: copies = 1 } = options;
  if (!(Number.isInteger(copies) && copies >= 1 && copies <= MOST_COPIES))
    return refuse({ code: 'TEMPLATE_COPIES_OUT_OF_RANGE', copies, most: MOST_COPIES });
  return ok(options);
}
