import { mm } from '@panewright/quantity';
import type { Catalogue } from '../document/catalogue.ts';
import type { PatternShape } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, PatternMember, PatternPlan } from '../plan/plan.ts';
import { align, type Group, grouped, memberAt, type NearMiss, type Shaped } from './grouping.ts';
import { meanOutline } from './meanOutline.ts';

/**
 * Groups openings that one pattern serves, as it is or turned over: same choices, and shapes that agree within the
 * shop's tolerance after the best rigid alignment. The first opening of a group gives the pattern, or the one chosen, or
 * the mean of all.
 *
 * @param chosen what the maker decided of single patterns
 * @source worst deviation after rigid alignment: sources.md#kabsch-1976
 */
export function patternPlans(
  openings: readonly OpeningPlan[],
  catalogue: Catalogue,
  find: Find,
  chosen: readonly PatternShape[] = [],
): readonly PatternPlan[] {
  const tolerance = catalogue.habits.patternTolerance;
  const first = new Set(chosen.flatMap(({ opening, shape }) => (shape === 'this' ? [opening] : [])));
  // A chosen opening comes first, so that the others are held against it.
  const inTurn = openings.toSorted((a, b) => Number(first.has(b.opening)) - Number(first.has(a.opening)));
  const shaped = inTurn.flatMap((plan): Shaped[] => (plan.shape ? [{ plan, shape: plan.shape }] : []));
  const { groups, misses } = grouped(shaped, tolerance);
  const place = new Map(openings.map(({ opening }, index) => [opening, index]));
  const placeOf = ({ members }: Group) => Math.min(...members.map(({ opening }) => place.get(opening)!));
  const sorted = groups.toSorted((a, b) => placeOf(a) - placeOf(b));
  sorted.forEach((group, k) => {
    group.pattern = `P${k + 1}`;
  });
  for (const miss of misses) reportMiss(miss, tolerance, find);
  const shapes = new Map(shaped.map((one) => [one.plan.opening, one]));
  const mean = new Set(chosen.flatMap(({ opening, shape }) => (shape === 'mean' ? [opening] : [])));
  return sorted.map((group) => {
    const averaged = group.members.length > 1 && group.members.some(({ opening }) => mean.has(opening));
    const isChosen = group.members.some(({ opening }) => first.has(opening));
    const plan = {
      ...((averaged && !isChosen ? meanPlan(group, shapes, tolerance, find) : undefined) ??
        firstPlan(group, tolerance)),
      nearMisses: misses.flatMap((miss) => (miss.group === group ? [miss.member] : [])),
    };
    reportShared(plan, group.master, catalogue, find);
    return plan;
  });
}

type Served = Omit<PatternPlan, 'nearMisses'>;

const firstPlan = ({ pattern, master, members }: Group, tolerance: number): Served => ({
  pattern,
  outline: master.shape.outline,
  edgeNames: master.shape.edgeNames,
  members,
  tolerance,
});

/** The pattern as the mean of its members, each with what it then lies off; undefined where they have no mean. */
function meanPlan(
  { pattern, master, members }: Group,
  shapes: ReadonlyMap<string, Shaped>,
  tolerance: number,
  find: Find,
): Served | undefined {
  const outlines = members.map(({ opening }) => shapes.get(opening)!.shape.outline);
  const outline = meanOutline(
    outlines,
    members.map(({ place }) => place),
  );
  if (!outline) {
    find({
      severity: 'doubt',
      code: 'PATTERN_MEAN_IMPOSSIBLE',
      where: { pattern },
      numbers: { members: members.map(({ opening }) => opening).join(' ') },
    });
    return undefined;
  }
  const placed = members.map(({ opening, turnedOver, place }, k): PatternMember => {
    const how = { mirrored: turnedOver, near: place.angle, within: mm(2 * tolerance) };
    return memberAt(master, shapes.get(opening)!, align(outline, outlines[k]!, how));
  });
  return { pattern, outline, edgeNames: master.shape.edgeNames, members: placed, tolerance };
}

function reportMiss({ group, member }: NearMiss, tolerance: number, find: Find): void {
  const { opening, deviation, sigma } = member;
  find({
    severity: 'note',
    code: 'NEAR_MISS',
    where: { opening, pattern: group.pattern },
    numbers: { deviation, tolerance, over: deviation - tolerance, spread: 2 * sigma },
  });
}

function reportShared(group: PatternPlan, master: Shaped, catalogue: Catalogue, find: Find): void {
  const { pattern, members, tolerance } = group;
  if (members.length < 2) return;
  const worst = Math.max(...members.map(({ deviation }) => deviation));
  const names = (of: (member: PatternMember) => boolean) =>
    members
      .filter(of)
      .map(({ opening }) => opening)
      .join(' ');
  const turned = names(({ turnedOver }) => turnedOver);
  find({
    severity: 'note',
    code: 'SHARED_PATTERN',
    where: { pattern },
    numbers: { asIs: names(({ turnedOver }) => !turnedOver), turnedOver: turned, deviation: worst },
  });
  const unsure = members.filter(({ sigma }) => 2 * sigma > tolerance);
  if (unsure.length > 0)
    find({
      severity: 'doubt',
      code: 'SHARED_WITHIN_SPREAD',
      where: { pattern },
      numbers: {
        members: unsure.map(({ opening }) => opening).join(' '),
        spread: 2 * Math.max(...unsure.map(({ sigma }) => sigma)),
        tolerance,
      },
    });
  const fabric = catalogue.fabrics.find(({ id }) => id === master.plan.choices.fabric);
  if (fabric?.facesDiffer && turned !== '')
    find({
      severity: 'note',
      code: 'TURNED_OVER_FACES_DIFFER',
      where: { pattern },
      numbers: { turnedOver: turned, fabric: fabric.name },
    });
}
