import type { CutPiece, LayPlan } from '../plan/plan.ts';

/** Openings whose panels a lay has, in the order they lie in. The pieces must have them in the order of their copies. */
export const openingsOn = (
  { placements }: Pick<LayPlan, 'placements'>,
  pieces: readonly CutPiece[],
): readonly string[] =>
  placements.flatMap(({ piece, copy }) => pieces.find((one) => one.piece === piece)?.openings[copy] ?? []);
