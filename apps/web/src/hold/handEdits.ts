import { alongRun, type EdgePlace, type HandPlaced, type PanelPlan } from '../contract.ts';

/** A hold point as it can be set by hand: which of the rule's it is, if any, and where it stands. */
export interface PointRef {
  readonly rule: { readonly on: string; readonly index: number } | null;
  readonly place: EdgePlace;
}

/** An entry's place and the point's agree within this, mm: both come from the same figures. */
const SAME = 0.05;

type Placed = readonly HandPlaced[];
type Rule = NonNullable<PointRef['rule']>;

const isOf = (one: HandPlaced, kind: 'moved' | 'removed', { on, index }: Rule): boolean =>
  one.kind === kind && one.on === on && one.index === index;

const stands = (one: HandPlaced, { on, at }: EdgePlace): boolean =>
  (one.kind === 'fixed' || one.kind === 'added') && one.on === on && Math.abs(one.at - at) < SAME;

/** How far from where the rule set it the point has been moved, mm. */
export const movedBy = (placed: Placed, rule: Rule): number => {
  const found = placed.find((one) => isOf(one, 'moved', rule));
  return found?.kind === 'moved' ? found.by : 0;
};

/**
 * The point moved to another place on its edge (a corner's, onto either edge).
 *
 * @returns null where the place is on an edge it cannot be moved to
 */
export function withMoved(
  placed: Placed,
  { rule, place }: PointRef,
  to: EdgePlace,
  panel: PanelPlan,
): Placed | null {
  if (!rule) {
    const set = { on: to.on, at: to.at };
    return placed.map((one) => (stands(one, place) ? ({ ...one, ...set } as HandPlaced) : one));
  }
  const along = alongRun(panel, place, to);
  if (along === null) return null;
  const by = Number((movedBy(placed, rule) + along).toFixed(4));
  const rest = placed.filter((one) => !isOf(one, 'moved', rule));
  return by === 0 ? rest : [...rest, { kind: 'moved', on: rule.on, index: rule.index, by }];
}

/** The point left out; one that was set by hand is simply taken away. */
export function withRemoved(placed: Placed, { rule, place }: PointRef): Placed {
  if (!rule) return placed.filter((one) => !stands(one, place));
  const rest = placed.filter((one) => !isOf(one, 'moved', rule));
  return [...rest, { kind: 'removed', on: rule.on, index: rule.index }];
}

/** One point more at a place. */
export const withAdded = (placed: Placed, { on, at }: EdgePlace): Placed => [
  ...placed,
  { kind: 'added', on, at: Number(at.toFixed(4)) },
];

/** The rule's point where the rule has it. */
export const withRuled = (placed: Placed, { rule }: PointRef): Placed =>
  rule ? placed.filter((one) => !isOf(one, 'moved', rule)) : placed;

/** Points of the rule that were taken away, to be put back. */
export const removedOf = (placed: Placed): readonly Rule[] =>
  placed.flatMap((one) => (one.kind === 'removed' ? [{ on: one.on, index: one.index }] : []));

export const withPutBack = (placed: Placed, rule: Rule): Placed =>
  placed.filter((one) => !isOf(one, 'removed', rule));
