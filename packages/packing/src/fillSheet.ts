import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import { checkInstance } from './checkInstance.ts';
import { construct, mannerFor } from './construct/construct.ts';
import type { Instance, InstanceRefusal, Layout, PieceId, Placement } from './instance.ts';
import { layoutOf, prepared } from './prepared.ts';
import { random, randomState } from './random.ts';

/** What an offcut takes: the copies laid on it, and how many of each piece are left over. */
export interface SheetFilling {
  readonly placements: readonly Placement[];
  /** Piece area on the sheet / its area, 0 to 1. */
  readonly density: number;
  readonly left: readonly { readonly pieceId: PieceId; readonly count: number }[];
}

export type SheetRefusal =
  | InstanceRefusal
  | { readonly code: 'SHEET_LENGTH_NOT_POSITIVE'; readonly length: number };

/**
 * As much piece area as fits on a piece of cloth of fixed length (an offcut, the rest of a roll): constructions in
 * several orders, the fullest kept. Pieces too wide for it in every turn are refused, as on a roll; leave them out.
 * Copies are numbered afresh from 0 within each piece.
 *
 * @param tries constructions made; the same seed and tries give the same filling
 * @refuses every InstanceRefusal, SHEET_LENGTH_NOT_POSITIVE
 */
export function fillSheet(
  instance: Instance,
  length: Millimetre,
  seed: number,
  tries = 30,
): Result<SheetFilling, SheetRefusal> {
  const checked = checkInstance(instance);
  if (!checked.ok) return checked;
  const inner = length - 2 * instance.margin.end;
  if (!(inner > 0 && Number.isFinite(inner))) return refuse({ code: 'SHEET_LENGTH_NOT_POSITIVE', length });
  const prep = prepared(instance);
  const dice = random(randomState(seed));
  let best: { layout: Layout; placed: readonly number[]; area: number } | undefined;
  for (let k = 0; k < Math.max(1, tries); k++) {
    const { lay, placed } = construct(prep, mannerFor(k, dice), dice, inner + instance.spacing);
    const area = placed.reduce((sum, i) => sum + prep.shapes[prep.items[i]!.shape]!.area, 0);
    if (best === undefined || area > best.area * (1 + 1e-12))
      best = { layout: layoutOf(prep, lay), placed, area };
    if (placed.length === prep.items.length) break;
  }
  return ok(fillingOf(instance, best!.layout, best!.placed, best!.area / (length * instance.stripWidth)));
}

function fillingOf(
  instance: Instance,
  layout: Layout,
  placed: readonly number[],
  density: number,
): SheetFilling {
  const count = new Map<PieceId, number>();
  const placements = [...placed]
    .sort((a, b) => a - b)
    .map((i): Placement => {
      const placement = layout.placements[i]!;
      const copy = count.get(placement.pieceId) ?? 0;
      count.set(placement.pieceId, copy + 1);
      return { ...placement, copy, x: mm(placement.x), y: mm(placement.y) };
    });
  const left = instance.pieces
    .map(({ id, demand }) => ({ pieceId: id, count: demand - (count.get(id) ?? 0) }))
    .filter((each) => each.count > 0);
  return { placements, density, left };
}
