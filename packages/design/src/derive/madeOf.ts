import type { Outline } from '@panewright/geometry';
import type { Catalogue } from '../document/catalogue.ts';
import type { Choices, Job, PatternShape } from '../document/job.ts';
import { type HoldInput, holdPlan, type PatchBook } from '../hold/holdPlan.ts';
import { panelMass } from '../panels/panelMass.ts';
import { panelPlan } from '../panels/panelPlan.ts';
import { patternPlans } from '../patterns/patternPlans.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, PanelPlan, PatternPlan } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import { type Materials, materialsOf } from './materials.ts';
import { openingPlans } from './openingPlans.ts';
import { remember } from './remember.ts';

/** A job's openings as surveyed, what each is made of, and the patterns that serve them. */
export interface SurveyedJob {
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly openings: readonly OpeningPlan[];
  readonly materials: ReadonlyMap<string, Materials>;
  readonly patterns: readonly PatternPlan[];
}

/** The stages before the panels. */
export function surveyedJob(job: Job, catalogue: Catalogue, find: Find): SurveyedJob {
  const openings = openingPlans(job, catalogue, find);
  const materials = new Map<string, Materials>();
  for (const plan of openings) {
    const found = materialsOf(plan.choices, catalogue, plan.opening, find);
    if (found) materials.set(plan.opening, found);
  }
  const whole = openings.filter(({ opening }) => materials.has(opening));
  const first = whole.find(({ shape }) => shape)?.shape?.outline;
  const patterns = first
    ? grouped(first, { openings: whole, catalogue, chosen: job.patternShapes ?? NONE_CHOSEN }, find)
    : [];
  return { job, catalogue, openings, materials, patterns };
}

interface GroupContext {
  readonly openings: readonly OpeningPlan[];
  readonly catalogue: Catalogue;
  readonly chosen: readonly PatternShape[];
}

const NONE_CHOSEN: GroupContext['chosen'] = [];

/** Patterns by the first outline: of many openings each would be held against each, and most edits change none. */
const grouped = remember(
  (_first: Outline, { openings, catalogue, chosen }: GroupContext, find) =>
    patternPlans(openings, catalogue, find, chosen),
  (a, b) =>
    a.catalogue.habits === b.catalogue.habits &&
    a.catalogue.fabrics === b.catalogue.fabrics &&
    a.chosen === b.chosen &&
    a.openings.length === b.openings.length &&
    a.openings.every((one, k) => {
      const other = b.openings[k]!;
      return (
        one.opening === other.opening &&
        one.shape === other.shape &&
        unweathered(one.choices) === unweathered(other.choices)
      );
    }),
);

const texts = new WeakMap<Choices, string>();

function unweathered(choices: Choices): string {
  const { weather: _weather, ...rest } = choices;
  const text = texts.get(choices) ?? JSON.stringify(rest);
  texts.set(choices, text);
  return text;
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

/**
 * The panel of one pattern with its hold points; null where it can have none (a finding says why).
 *
 * @param book of the whole job's patches; null where they need no names
 * @param on the one opening whose glass is looked at; all of the pattern's where left out
 */
export function madeOf(
  pattern: PatternPlan,
  { job, catalogue, openings, materials }: SurveyedJob,
  book: PatchBook | null,
  find: Find,
  on?: string,
): Made | null {
  const master = pattern.members[0]!.opening;
  const plan = openings.find(({ opening }) => opening === master)!;
  const own = materials.get(master)!;
  const shape = finished(pattern.outline, { pattern, master: plan, materials: own, catalogue }, find);
  if (!shape) return null;
  const panel: PanelPlan = { ...shape, choices: plan.choices };
  const input: HoldInput = {
    pattern,
    panel,
    materials: own,
    members: membersOf(pattern, job, openings),
    byHand: job.heldByHand ?? NONE,
    openings,
  };
  const hold = holdPlan(input, catalogue, book, find, on);
  return { pattern, panel: { ...panel, mass: panelMass(panel, hold.points, own) }, hold, materials: own };
}

function membersOf(pattern: PatternPlan, job: Job, openings: readonly OpeningPlan[]): HoldInput['members'] {
  return pattern.members.map((member) => ({
    opening: job.openings.find(({ id }) => id === member.opening)!,
    plan: openings.find(({ opening }) => opening === member.opening)!,
  }));
}
