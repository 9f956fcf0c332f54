import { invert, movePoint, type Point, point, pointAt } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import type { HeldByHand } from '../document/holdChoices.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, PanelPlan, PatternPlan } from '../plan/plan.ts';
import type { HandPlaced } from './layout.ts';
import { cornerName, type Rim, type Run, runsOf } from './runs.ts';

/** What the maker set by hand on one panel, by the panel's own edge names, and whose entry it is. */
export interface CarriedByHand {
  readonly placed: readonly HandPlaced[];
  readonly of: string | null;
}

const NOTHING: CarriedByHand = { placed: [], of: null };

/**
 * The points set by hand that a pattern follows: the entry of the first of its openings that has one. An entry of another
 * opening than the pattern's own is carried over by where its edges come to lie, the other way round where the pattern is
 * turned over for it.
 */
export function carriedByHand(
  entries: readonly HeldByHand[],
  pattern: PatternPlan,
  panel: PanelPlan,
  openings: readonly OpeningPlan[],
  find: Find,
): CarriedByHand {
  const own = pattern.members.flatMap((member, index) => {
    const entry = entries.find(({ opening }) => opening === member.opening);
    return entry ? [{ member, index, entry }] : [];
  });
  const [first, ...others] = own;
  if (!first) return NOTHING;
  for (const { member } of others)
    find({
      severity: 'doubt',
      code: 'HAND_ELSEWHERE',
      where: { opening: member.opening, pattern: pattern.pattern },
      numbers: { follows: first.member.opening },
    });
  const of = first.member.opening;
  const { placed } = first.entry;
  const shape = openings.find(({ opening }) => opening === of)?.shape;
  if (first.index === 0 || !shape) return { placed, of };
  const from: Rim = { finished: shape.outline, edgeNames: shape.edgeNames };
  const carry = carrier(from, panel, first.member.place);
  return { placed: placed.map(carry), of };
}

/** A named place of an outline: a side by its middle, a corner by itself. */
interface Named {
  readonly name: string;
  readonly at: Point;
  /** Between the sharp corners; null for a corner. */
  readonly length: number | null;
}

function namedOf(rim: Rim): readonly Named[] {
  const middle = ({ side }: Run['sides'][number]) => pointAt(rim.finished, mm(side.start + side.run / 2));
  return runsOf(rim).flatMap((run) => [
    { name: cornerName(run.from, rim), at: point(run.from.at.x, run.from.at.y), length: null },
    ...run.sides.map((part) => ({ name: part.name, at: middle(part), length: part.side.length })),
  ]);
}

function carrier(from: Rim, to: Rim, place: PatternPlan['members'][number]['place']) {
  const back = invert(place);
  const theirs = namedOf(from);
  const ours = namedOf(to);
  return (one: HandPlaced): HandPlaced => {
    const named = theirs.find(({ name }) => name === one.on);
    if (!named) return one;
    const at = movePoint(back, named.at);
    const twin = ours
      .filter(({ length }) => (length === null) === (named.length === null))
      .reduce<Named | null>(
        (best, other) => (!best || away(other.at, at) < away(best.at, at) ? other : best),
        null,
      );
    return twin ? renamed(one, twin, place.mirrored) : one;
  };
}

const away = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Turned over, an edge is measured from its other end, and its points are counted from there. */
function renamed(one: HandPlaced, { name: on, length }: Named, turned: boolean): HandPlaced {
  if (!turned) return { ...one, on };
  switch (one.kind) {
    case 'fixed':
    case 'added':
      return { ...one, on, at: length === null ? one.at : Math.max(0, length - one.at) };
    case 'moved':
      return { ...one, on, index: length === null ? one.index : -one.index, by: -one.by };
    case 'removed':
      return { ...one, on, index: length === null ? one.index : -one.index };
  }
}
