import type { Catalogue } from '../document/catalogue.ts';
import type { Job, Opening } from '../document/job.ts';
import { openingPlan } from '../openings/openingPlan.ts';
import type { Find, Finding } from '../plan/finding.ts';
import type { OpeningPlan } from '../plan/plan.ts';
import { remember } from './remember.ts';

const surveyed = remember(
  (opening: Opening, { job, catalogue }: { readonly job: Job; readonly catalogue: Catalogue }, find) =>
    openingPlan(job, opening, catalogue, find),
  (a, b) =>
    a.job.choices === b.job.choices &&
    a.catalogue.habits === b.catalogue.habits &&
    a.catalogue.fasteners === b.catalogue.fasteners,
);

/** Every opening as surveyed, in the job's order; one whose readings did not change is not worked out again. */
export const openingPlans = (job: Job, catalogue: Catalogue, find: Find): readonly OpeningPlan[] =>
  job.openings.map((opening) => surveyed(opening, { job, catalogue }, find));

/** The first stage of the flow alone, with what it has to say: the beginning of `deriveShapes`, and of its findings. */
export function deriveOpenings(
  job: Job,
  catalogue: Catalogue,
): { readonly openings: readonly OpeningPlan[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const openings = openingPlans(job, catalogue, (finding) => findings.push(finding));
  return { openings, findings };
}
