import {
  type Alignment,
  type AlignOptions,
  alignOutlines,
  deviationAtLeast,
  edges,
  movePoint,
  nearest,
  type Outline,
  type Rigid,
  still,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';
import type { Catalogue } from '../document/catalogue.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, OpeningShape, PatternMember, PatternPlan } from '../plan/plan.ts';

interface Shaped {
  readonly plan: OpeningPlan;
  readonly shape: OpeningShape;
}

interface Group {
  readonly pattern: string;
  readonly master: Shaped;
  readonly members: PatternMember[];
}

/**
 * Groups openings that one pattern serves, as it is or turned over: same choices, and shapes that agree within the
 * shop's tolerance after the best rigid alignment. The first opening of a group gives the pattern.
 *
 * @source worst deviation after rigid alignment: sources.md#kabsch-1976
 */
export function patternPlans(
  openings: readonly OpeningPlan[],
  catalogue: Catalogue,
  find: Find,
): readonly PatternPlan[] {
  const tolerance = catalogue.habits.patternTolerance;
  const groups: Group[] = [];
  for (const plan of openings) {
    if (!plan.shape) continue;
    const shaped = { plan, shape: plan.shape };
    if (!join(groups, shaped, tolerance, find)) groups.push(newGroup(groups.length + 1, shaped));
  }
  for (const group of groups) reportShared(group, catalogue, find);
  return groups.map(({ pattern, master, members }) => ({
    pattern,
    outline: master.shape.outline,
    edgeNames: master.shape.edgeNames,
    members,
    tolerance,
  }));
}

function newGroup(number: number, master: Shaped): Group {
  const first: PatternMember = {
    opening: master.plan.opening,
    turnedOver: false,
    place: still,
    deviation: 0,
    worstAt: master.shape.outline.segments[0].to,
  };
  return { pattern: `P${number}`, master, members: [first] };
}

/** Puts the opening into the first group it fits; says so when the best of the others was a near miss. */
function join(groups: readonly Group[], shaped: Shaped, tolerance: number, find: Find): boolean {
  let nearMiss: { readonly pattern: string; readonly deviation: number } | null = null;
  for (const group of groups) {
    if (!alike(group.master, shaped, 2 * tolerance)) continue;
    for (const way of WAYS) {
      const fit = align(group.master.shape.outline, shaped.shape.outline, {
        ...way,
        within: mm(tolerance),
      });
      if (!sameAllowances(group.master, shaped, fit.motion)) continue;
      if (fit.deviation <= tolerance) {
        group.members.push({
          opening: shaped.plan.opening,
          turnedOver: fit.motion.mirrored,
          place: fit.motion,
          deviation: fit.deviation,
          worstAt: fit.at,
        });
        return true;
      }
      if (fit.deviation <= 2 * tolerance && fit.deviation < (nearMiss?.deviation ?? Infinity))
        nearMiss = { pattern: group.pattern, deviation: fit.deviation };
    }
  }
  if (nearMiss)
    find({
      severity: 'note',
      code: 'NEAR_MISS',
      where: { opening: shaped.plan.opening, pattern: nearMiss.pattern },
      numbers: { deviation: nearMiss.deviation, tolerance, over: nearMiss.deviation - tolerance },
    });
  return false;
}

/** Cheap and safe first look: the same choices, and shapes that some motion may bring within `reach` of each other. */
function alike(a: Shaped, b: Shaped, reach: number): boolean {
  return (
    choiceKey(a.plan) === choiceKey(b.plan) && deviationAtLeast(a.shape.outline, b.shape.outline) <= reach
  );
}

/** Best alignments of pairs of outlines, kept while the outlines live: an edit aligns again only what it changed. */
const aligned = new WeakMap<Outline, WeakMap<Outline, Map<string, Alignment>>>();

function align(first: Outline, second: Outline, how: AlignOptions): Alignment {
  const known = aligned.get(first) ?? new WeakMap<Outline, Map<string, Alignment>>();
  aligned.set(first, known);
  const ways = known.get(second) ?? new Map<string, Alignment>();
  known.set(second, ways);
  const way = `${how.mirrored} ${how.near} ${how.within}`;
  const alignment = ways.get(way) ?? alignOutlines(first, second, how);
  ways.set(way, alignment);
  return alignment;
}

/** Ways to lay a pattern on an opening: upright first, since a maker looks for that; then turned any way. */
const WAYS: readonly AlignOptions[] = [
  { mirrored: false, near: radian(0) },
  { mirrored: true, near: radian(0) },
  { mirrored: false },
  { mirrored: true },
];

/** What must be equal for one panel to serve both openings; allowances by edge are compared on the aligned edges. */
function choiceKey({ choices }: OpeningPlan): string {
  const { fit, weather: _weather, ...rest } = choices;
  return JSON.stringify([rest, fit.all]);
}

export function allowanceOf(plan: OpeningPlan, edge: string): number {
  return plan.choices.fit.edges[edge] ?? plan.choices.fit.all;
}

function sameAllowances(a: Shaped, b: Shaped, motion: Rigid): boolean {
  const own = (plan: OpeningPlan) => Object.keys(plan.choices.fit.edges).length > 0;
  if (!own(a.plan) && !own(b.plan)) return true;
  return edges(a.shape.outline).every((edge, index) => {
    const middle = movePoint(motion, {
      x: mm((edge.from.x + edge.to.x) / 2),
      y: mm((edge.from.y + edge.to.y) / 2),
    });
    const other = b.shape.edgeNames[nearest(b.shape.outline, middle).segment]!;
    return allowanceOf(a.plan, a.shape.edgeNames[index]!) === allowanceOf(b.plan, other);
  });
}

function reportShared(group: Group, catalogue: Catalogue, find: Find): void {
  if (group.members.length < 2) return;
  const worst = Math.max(...group.members.map(({ deviation }) => deviation));
  const names = (turned: boolean) =>
    group.members
      .filter(({ turnedOver }) => turnedOver === turned)
      .map(({ opening }) => opening)
      .join(' ');
  find({
    severity: 'note',
    code: 'SHARED_PATTERN',
    where: { pattern: group.pattern },
    numbers: { asIs: names(false), turnedOver: names(true), deviation: worst },
  });
  const fabric = catalogue.fabrics.find(({ id }) => id === group.master.plan.choices.fabric);
  if (fabric?.facesDiffer && names(true) !== '')
    find({
      severity: 'note',
      code: 'TURNED_OVER_FACES_DIFFER',
      where: { pattern: group.pattern },
      numbers: { turnedOver: names(true), fabric: fabric.name },
    });
}
