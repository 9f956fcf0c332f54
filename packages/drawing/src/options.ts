import type { Catalogue, Finding, Job, Plan, UnitName } from '@panewright/design';
import type { FontMetrics, PaperName } from './sheet.ts';
import type { Words } from './words.ts';

/** How the sheets are to be made. Nothing here changes what is made, only how it is shown. */
export interface SheetOptions {
  readonly paper: PaperName;
  readonly units: UnitName;
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
