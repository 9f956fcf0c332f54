import type { Catalogue } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { CutPiece, CuttingPlan, LayPlan, OffcutSaving } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import { bindingStrips } from './bindingStrips.ts';
import { clothPlan, stockFor } from './clothPlan.ts';
import { pocketsOf } from './cutPieces.ts';

/** The lays of each cloth, on offcuts of the stock and on its roll, and a strip cutting list for each binding. */
export function cuttingPlan(
  pieces: readonly CutPiece[],
  made: readonly Made[],
  job: Pick<Job, 'id' | 'laysByHand' | 'offcutsLeftBe' | 'reservedPlaces' | 'oneBatch'>,
  catalogue: Catalogue,
  seed: number,
  budget: number,
  find: Find,
): CuttingPlan {
  const { cutSpacing: spacing, leastOffcut } = catalogue.habits;
  const batch = job.oneBatch ? { rule: job.oneBatch, pockets: pocketsOf(made) } : null;
  const lays: LayPlan[] = [];
  const savings: OffcutSaving[] = [];
  for (const fabric of catalogue.fabrics) {
    const own = pieces.filter((piece) => piece.fabric === fabric.id);
    if (own.length === 0) continue;
    const byHand = job.laysByHand?.find((one) => one.fabric === fabric.id);
    const stock = stockFor(job, catalogue, fabric.id);
    const reserved = (job.reservedPlaces ?? []).filter((place) => place.fabric === fabric.id);
    const cloth = clothPlan(
      { fabric, spacing, byHand, reserved, seed, budget, stock, leastOffcut, batch },
      own,
      (index) => `L${lays.length + index + 1}`,
    );
    lays.push(...cloth.lays);
    if (cloth.saving) savings.push(cloth.saving);
    for (const finding of cloth.findings) find(finding);
  }
  return { pieces, lays, strips: bindingStrips(made, catalogue, find), savings };
}
