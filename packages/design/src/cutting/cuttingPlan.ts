import type { Catalogue } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { CutPiece, CuttingPlan, LayPlan } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import { bindingStrips } from './bindingStrips.ts';
import { layPlan } from './layPlan.ts';

/** A lay for each cloth and a strip cutting list for each binding. */
export function cuttingPlan(
  pieces: readonly CutPiece[],
  made: readonly Made[],
  { laysByHand = [] }: Pick<Job, 'laysByHand'>,
  catalogue: Catalogue,
  seed: number,
  budget: number,
  find: Find,
): CuttingPlan {
  const spacing = catalogue.habits.cutSpacing;
  const lays: LayPlan[] = [];
  for (const fabric of catalogue.fabrics) {
    const own = pieces.filter((piece) => piece.fabric === fabric.id);
    if (own.length === 0) continue;
    const name = `L${lays.length + 1}`;
    const byHand = laysByHand.find((one) => one.fabric === fabric.id);
    const lay = layPlan({ name, fabric, pieces: own, spacing, byHand, seed, budget }, find);
    if (lay) lays.push(lay);
  }
  return { pieces, lays, strips: bindingStrips(made, catalogue, find) };
}
