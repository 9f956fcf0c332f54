import { cuttingPlan } from './cutting/cuttingPlan.ts';
import { QUICK_BUDGET } from './cutting/layPlan.ts';
import { cautions } from './derive/cautions.ts';
import { madeOf, surveyedJob } from './derive/madeOf.ts';
import type { Catalogue } from './document/catalogue.ts';
import type { Job } from './document/job.ts';
import { cornerCreep } from './hold/cornerCreep.ts';
import { fastenerAllowances } from './hold/fastenerAllowances.ts';
import { handGone } from './hold/handFindings.ts';
import type { PatchBook } from './hold/holdPlan.ts';
import { holdProposals } from './hold/holdProposals.ts';
import { storedFindings } from './hold/storedFindings.ts';
import type { Finding } from './plan/finding.ts';
import type { Plan } from './plan/plan.ts';
import { pricePlan } from './price/pricePlan.ts';
import type { Made } from './take-off/needs.ts';
import { takeOffPlan } from './take-off/takeOffPlan.ts';

/** The stages up to the lay, and what the rest of the flow is worked out from. */
interface Shapes {
  readonly plan: Plan;
  readonly made: readonly Made[];
}

/** Told how many of a plan's panels are worked out; the lay is the last of the count. */
export type PlanTold = (done: number, of: number) => void;

/**
 * The whole plan of a job: every stage, from the readings to the price. Same job, catalogue, seed and budget, same plan.
 *
 * @param seed for the lay's search, a whole number
 * @param budget evaluations spent on the lay of each roll width
 */
export function derive(
  job: Job,
  catalogue: Catalogue,
  seed: number,
  budget = QUICK_BUDGET,
  told?: PlanTold,
): Plan {
  const { plan, made } = shapes(job, catalogue, seed, told);
  const findings: Finding[] = [...plan.findings];
  const find = (finding: Finding) => findings.push(finding);
  const cutting = cuttingPlan(made, job, catalogue, seed, budget, find);
  const takeOff = takeOffPlan(made, cutting, catalogue);
  const price = pricePlan(takeOff, plan.patterns, plan.panels, catalogue);
  for (const proposal of holdProposals(plan, job, catalogue)) find(proposal);
  told?.(plan.patterns.length + 1, plan.patterns.length + 1);
  return { ...plan, cutting, takeOff, price, findings };
}

/** The stages before the lay, quick enough to follow every key: cutting, take-off and price are null. */
export function deriveShapes(job: Job, catalogue: Catalogue, seed = 1): Plan {
  return shapes(job, catalogue, seed).plan;
}

function shapes(job: Job, catalogue: Catalogue, seed: number, told?: PlanTold): Shapes {
  const findings: Finding[] = [];
  const find = (finding: Finding) => {
    findings.push(finding);
  };
  const surveyed = surveyedJob(job, catalogue, find);
  const { openings, patterns } = surveyed;
  const book: PatchBook = { patches: [] };
  const made = patterns.flatMap((pattern, index) => {
    told?.(index, patterns.length + 1);
    return madeOf(pattern, surveyed, book, find) ?? [];
  });
  told?.(patterns.length, patterns.length + 1);
  for (const creep of cornerCreep(
    made.map(({ hold }) => hold),
    openings,
    catalogue.habits,
  ))
    find(creep);
  for (const fight of storedFindings(openings, made)) find(fight);
  for (const gone of handGone(job)) find(gone);
  for (const other of fastenerAllowances(job, catalogue)) find(other);
  for (const caution of cautions(job, openings, made, catalogue)) find(caution);
  const plan: Plan = {
    format: 'panewright.plan',
    version: 1,
    job: { id: job.id, name: job.name, units: job.units },
    seed,
    openings,
    patterns,
    panels: made.map(({ panel }) => panel),
    hold: made.map(({ hold }) => hold),
    cutting: null,
    takeOff: null,
    price: null,
    findings,
  };
  return { plan, made };
}
