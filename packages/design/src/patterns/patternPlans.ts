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
import type { PatternShape } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, OpeningShape, PatternMember, PatternPlan } from '../plan/plan.ts';
import { meanOutline } from './meanOutline.ts';

interface Shaped {
  readonly plan: OpeningPlan;
  readonly shape: OpeningShape;
}

interface Group {
  /** Its name, once all groups are known. */
  pattern: string;
  readonly master: Shaped;
  readonly members: PatternMember[];
}

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
  const groups: Group[] = [];
  const misses: NearMiss[] = [];
  const first = new Set(chosen.flatMap(({ opening, shape }) => (shape === 'this' ? [opening] : [])));
  // A chosen opening comes first, so that the others are held against it.
  const inTurn = openings.toSorted((a, b) => Number(first.has(b.opening)) - Number(first.has(a.opening)));
  for (const plan of inTurn) {
    if (!plan.shape) continue;
    const shaped = { plan, shape: plan.shape };
    if (!join(groups, shaped, tolerance, misses)) groups.push(newGroup(shaped));
  }
  const placeOf = ({ members }: Group) =>
    Math.min(...members.map((member) => openings.findIndex(({ opening }) => opening === member.opening)));
  groups.sort((a, b) => placeOf(a) - placeOf(b));
  groups.forEach((group, k) => {
    group.pattern = `P${k + 1}`;
  });
  for (const miss of misses) reportMiss(miss, tolerance, find);
  const mean = new Set(chosen.flatMap(({ opening, shape }) => (shape === 'mean' ? [opening] : [])));
  return groups.map((group) => {
    const { master, members } = group;
    const averaged = members.length > 1 && members.some(({ opening }) => mean.has(opening));
    const isChosen = members.some(({ opening }) => first.has(opening));
    const plan =
      (averaged && !isChosen ? meanPlan(group, openings, tolerance, find) : undefined) ??
      ({
        pattern: group.pattern,
        outline: master.shape.outline,
        edgeNames: master.shape.edgeNames,
        members,
        tolerance,
      } satisfies PatternPlan);
    reportShared(plan, master, catalogue, find);
    return plan;
  });
}

/** The pattern as the mean of its members, each with what it then lies off; undefined where they have no mean. */
function meanPlan(
  { pattern, master, members }: Group,
  openings: readonly OpeningPlan[],
  tolerance: number,
  find: Find,
): PatternPlan | undefined {
  const outlines = members.map(
    ({ opening }) => openings.find((one) => one.opening === opening)!.shape!.outline,
  );
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
    const { motion, deviation, at } = align(outline, outlines[k]!, how);
    return { opening, turnedOver, place: motion, deviation, worstAt: at };
  });
  return { pattern, outline, edgeNames: master.shape.edgeNames, members: placed, tolerance };
}

interface NearMiss {
  readonly opening: string;
  readonly group: Group;
  readonly deviation: number;
}

function reportMiss({ opening, group, deviation }: NearMiss, tolerance: number, find: Find): void {
  find({
    severity: 'note',
    code: 'NEAR_MISS',
    where: { opening, pattern: group.pattern },
    numbers: { deviation, tolerance, over: deviation - tolerance },
  });
}

function newGroup(master: Shaped): Group {
  const first: PatternMember = {
    opening: master.plan.opening,
    turnedOver: false,
    place: still,
    deviation: 0,
    worstAt: master.shape.outline.segments[0].to,
  };
  return { pattern: '', master, members: [first] };
}

/** Puts the opening into the first group it fits; says so when the best of the others was a near miss. */
function join(groups: readonly Group[], shaped: Shaped, tolerance: number, misses: NearMiss[]): boolean {
  let nearMiss: NearMiss | null = null;
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
        nearMiss = { opening: shaped.plan.opening, group, deviation: fit.deviation };
    }
  }
  if (nearMiss) misses.push(nearMiss);
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

function reportShared(group: PatternPlan, master: Shaped, catalogue: Catalogue, find: Find): void {
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
  const fabric = catalogue.fabrics.find(({ id }) => id === master.plan.choices.fabric);
  if (fabric?.facesDiffer && names(true) !== '')
    find({
      severity: 'note',
      code: 'TURNED_OVER_FACES_DIFFER',
      where: { pattern: group.pattern },
      numbers: { turnedOver: names(true), fabric: fabric.name },
    });
}
