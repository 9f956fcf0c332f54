import type { HoldOpening, HoldPlan, PanelOfOne, Plan } from '../contract.ts';

/**
 * A plan with one opening's panel as it is now; the rest stays as last worked out. The names of patches are given over
 * the whole job, so they stay too.
 */
export function withPanel(plan: Plan, { openings, pattern, panel, hold }: PanelOfOne): Plan {
  const mine = <T extends { readonly pattern: string }>(list: readonly T[], own: T): readonly T[] =>
    list.some((one) => one.pattern === own.pattern)
      ? list.map((one) => (one.pattern === own.pattern ? own : one))
      : [...list, own];
  const before = plan.hold.find((one) => one.pattern === pattern.pattern);
  return {
    ...plan,
    openings,
    patterns: mine(plan.patterns, pattern),
    panels: mine(plan.panels, panel),
    hold: mine(plan.hold, before ? onTop(hold, before) : hold),
  };
}

/** What the new hold says of its one opening; of the pattern's others and of its patches what was said before. */
const onTop = (hold: HoldPlan, before: HoldPlan): HoldPlan => ({
  ...hold,
  pocketPieces: before.pocketPieces,
  points: hold.points.map((point, k) => ({
    ...point,
    pocketPiece: before.points[k]?.pocketPiece ?? point.pocketPiece,
  })),
  openings: merged(hold.openings, before.openings),
});

const merged = (now: readonly HoldOpening[], before: readonly HoldOpening[]): readonly HoldOpening[] => [
  ...before.filter(({ opening }) => now.every((one) => one.opening !== opening)),
  ...now,
];
