import type { Outline } from '@panewright/geometry';
import { cutPieces } from './cutting/cutPieces.ts';
import { cuttingPlan } from './cutting/cuttingPlan.ts';
import { QUICK_BUDGET } from './cutting/layPlan.ts';
import { cautions } from './derive/cautions.ts';
import { type Materials, materialsOf } from './derive/materials.ts';
import { openingPlans } from './derive/openingPlans.ts';
import { remember } from './derive/remember.ts';
import type { Catalogue } from './document/catalogue.ts';
import type { Choices, Job } from './document/job.ts';
import { cornerCreep } from './hold/cornerCreep.ts';
import { fastenerAllowances } from './hold/fastenerAllowances.ts';
import { handGone } from './hold/handFindings.ts';
import { type HoldInput, holdPlan, type PatchBook } from './hold/holdPlan.ts';
import { holdProposals } from './hold/holdProposals.ts';
import { storedFindings } from './hold/storedFindings.ts';
import { panelMass } from './panels/panelMass.ts';
import { panelPlan } from './panels/panelPlan.ts';
import { patternPlans } from './patterns/patternPlans.ts';
import type { Finding } from './plan/finding.ts';
import type { OpeningPlan, PanelPlan, PatternPlan, Plan } from './plan/plan.ts';
import { pricePlan } from './price/pricePlan.ts';
import type { Made } from './take-off/needs.ts';
import { takeOffPlan } from './take-off/takeOffPlan.ts';

/** The stages up to the lay, and what the rest of the flow is worked out from. */
interface Shapes {
  readonly plan: Plan;
  readonly made: readonly Made[];
}

/**
 * The whole plan of a job: every stage, from the readings to the price. Same job, catalogue, seed and budget, same plan.
 *
 * @param seed for the lay's search, a whole number
 * @param budget evaluations spent on the lay of each roll width
 */
export function derive(job: Job, catalogue: Catalogue, seed: number, budget = QUICK_BUDGET): Plan {
  const { plan, made } = shapes(job, catalogue, seed);
  const findings: Finding[] = [...plan.findings];
  const find = (finding: Finding) => findings.push(finding);
  const cutting = cuttingPlan(cutPieces(made), made, job, catalogue, seed, budget, find);
  const takeOff = takeOffPlan(made, cutting, catalogue);
  const price = pricePlan(takeOff, plan.patterns, plan.panels, catalogue);
  for (const proposal of holdProposals(plan, job, catalogue)) find(proposal);
  return { ...plan, cutting, takeOff, price, findings };
}

const NONE: HoldInput['byHand'] = [];

interface PanelContext {
  readonly pattern: PatternPlan;
  readonly master: OpeningPlan;
  readonly materials: Materials;
  readonly catalogue: Catalogue;
}

/** Panels by their pattern's outline: what is chosen of hold points and weather does not change one. */
const finished = remember(
  (_outline: Outline, { pattern, master, materials, catalogue }: PanelContext, find) =>
    panelPlan(pattern, master, materials, catalogue, find),
  (a, b) =>
    a.pattern.pattern === b.pattern.pattern &&
    a.catalogue === b.catalogue &&
    a.master.opening === b.master.opening &&
    shapedBy(a.master.choices) === shapedBy(b.master.choices),
);

const shapedBy = ({ weather: _weather, hold: _hold, ...rest }: Choices): string => JSON.stringify(rest);

/** The stages before the lay, quick enough to follow every key: cutting, take-off and price are null. */
export function deriveShapes(job: Job, catalogue: Catalogue, seed = 1): Plan {
  return shapes(job, catalogue, seed).plan;
}

function shapes(job: Job, catalogue: Catalogue, seed: number): Shapes {
  const findings: Finding[] = [];
  const find = (finding: Finding) => {
    findings.push(finding);
  };
  const openings = openingPlans(job, catalogue, find);
  const materials = new Map<string, Materials>();
  for (const plan of openings) {
    const found = materialsOf(plan.choices, catalogue, plan.opening, find);
    if (found) materials.set(plan.opening, found);
  }
  const patterns = patternPlans(
    openings.filter(({ opening }) => materials.has(opening)),
    catalogue,
    find,
    job.patternShapes,
  );
  const book: PatchBook = { patches: [] };
  const made = patterns.flatMap((pattern) => {
    const master = pattern.members[0]!.opening;
    const plan = openings.find(({ opening }) => opening === master)!;
    const context = { pattern, master: plan, materials: materials.get(master)!, catalogue };
    const shape = finished(pattern.outline, context, find);
    if (!shape) return [];
    const panel: PanelPlan = { ...shape, choices: plan.choices };
    const input: HoldInput = {
      pattern,
      panel,
      materials: materials.get(master)!,
      members: membersOf(pattern, job, openings),
      byHand: job.heldByHand ?? NONE,
      openings,
    };
    const hold = holdPlan(input, catalogue, book, find);
    const hung = { ...panel, mass: panelMass(panel, hold.points, input.materials) };
    return [{ pattern, panel: hung, hold, materials: input.materials }];
  });
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

function membersOf(pattern: PatternPlan, job: Job, openings: readonly OpeningPlan[]): HoldInput['members'] {
  return pattern.members.map((member) => ({
    opening: job.openings.find(({ id }) => id === member.opening)!,
    plan: openings.find(({ opening }) => opening === member.opening)!,
  }));
}
