import type { Catalogue, Fabric } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { CutPiece, CuttingPlan, LayPlan, OffcutSaving } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import { bindingStrips } from './bindingStrips.ts';
import { type ClothPlan, clothPlan, stockFor } from './clothPlan.ts';
import { cutPieces, pocketsOf } from './cutPieces.ts';
import { laidOneWay } from './sameWay.ts';
import { placesOfSeveralCloths, togetherOf } from './together.ts';

export type CuttingJob = Pick<
  Job,
  'id' | 'openings' | 'laysByHand' | 'offcutsLeftBe' | 'reservedPlaces' | 'oneBatch' | 'sameWay'
>;

/** The lays of each cloth, on offcuts of the stock and on its roll, and a strip cutting list for each binding. */
export function cuttingPlan(
  made: readonly Made[],
  job: CuttingJob,
  catalogue: Catalogue,
  seed: number,
  budget: number,
  find: Find,
): CuttingPlan {
  const asTheyMay = cutPieces(made);
  const laid = new Map<string, ClothPlan>();
  const lays: LayPlan[] = [];
  const savings: OffcutSaving[] = [];
  for (const fabric of catalogue.fabrics) {
    const own = asTheyMay.filter((piece) => piece.fabric === fabric.id);
    if (own.length === 0) continue;
    const lay = (pieces: readonly CutPiece[]) =>
      clothPlan(clothInput(fabric, pieces), pieces, (index) => `L${lays.length + index + 1}`);
    const cloth = job.sameWay ? laidOneWay(made, fabric, own, lay) : lay(own);
    laid.set(fabric.id, cloth);
    lays.push(...cloth.lays);
    if (cloth.saving) savings.push(cloth.saving);
    for (const finding of cloth.findings) find(finding);
  }
  const pieces = inPlanOrder(asTheyMay, laid);
  const nameOf = (id: string) => catalogue.fabrics.find((one) => one.id === id)?.name ?? id;
  placesOfSeveralCloths(job, pieces, nameOf, find);
  return { pieces, lays, strips: bindingStrips(made, catalogue, find), savings };

  function clothInput(fabric: Fabric, pieces: readonly CutPiece[]) {
    const { cutSpacing: spacing, leastOffcut } = catalogue.habits;
    return {
      ...{ fabric, spacing, seed, budget, leastOffcut, job: job.id },
      byHand: job.laysByHand?.find((one) => one.fabric === fabric.id),
      stock: stockFor(job, catalogue, fabric.id),
      reserved: (job.reservedPlaces ?? []).filter((place) => place.fabric === fabric.id),
      together: togetherOf(job, pieces, pocketsOf(made)),
    };
  }
}

/** Panels, then pockets, each in the order they were made in; a cloth's own pieces as they were laid. */
function inPlanOrder(pieces: readonly CutPiece[], laid: ReadonlyMap<string, ClothPlan>): readonly CutPiece[] {
  const all = [...new Set(pieces.map(({ fabric }) => fabric))].flatMap((id) => laid.get(id)?.pieces ?? []);
  const at = (piece: CutPiece) =>
    pieces.findIndex(({ pattern, kind }) => pattern === piece.pattern && kind === piece.kind);
  return all.toSorted((a, b) => at(a) - at(b));
}
