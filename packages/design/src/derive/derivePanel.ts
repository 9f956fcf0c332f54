import type { Catalogue } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { HoldPlan, OpeningPlan, PanelPlan, PatternPlan } from '../plan/plan.ts';
import { madeOf, surveyedJob } from './madeOf.ts';

/** One opening's part of a plan. Its patches have no names, and its hold is looked at on this opening's glass alone. */
export interface PanelOfOne {
  readonly openings: readonly OpeningPlan[];
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly hold: HoldPlan;
}

/**
 * The panel and the hold points of one opening as `deriveShapes` gives them, without those of the others: quick enough
 * to be drawn with the key that changed them. null where it has none.
 */
export function derivePanel(job: Job, catalogue: Catalogue, opening: string): PanelOfOne | null {
  const surveyed = surveyedJob(job, catalogue, ignore);
  const pattern = surveyed.patterns.find(({ members }) => members.some((one) => one.opening === opening));
  const made = pattern && madeOf(pattern, surveyed, null, ignore, opening);
  if (!made) return null;
  return { openings: surveyed.openings, pattern, panel: made.panel, hold: made.hold };
}

/** What is found is said with the whole plan. */
const ignore = () => {};
