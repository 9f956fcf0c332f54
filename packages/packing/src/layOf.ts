import type { Kept } from './construct/construct.ts';
import type { Layout, Placement } from './instance.ts';
import {
  emptyLay,
  IDLE,
  type Item,
  type Lay,
  lengthOf,
  type Prepared,
  sameOutline,
  type Variant,
} from './prepared.ts';
import { boxOf, movedRing, ringOf, withoutIdleVertices } from './shape/ring.ts';

/**
 * A layout in the engine's terms. A turn the engine left out because it looks like another is read as that other.
 * The layout must have passed `verifyLay`.
 */
export function layOf(prep: Prepared, layout: Layout): Lay {
  const { lay } = keptOf(prep, layout.placements);
  return { ...lay, length: lengthOf(prep, lay.variant, lay.x) };
}

/** Some of a layout's copies in the engine's terms; the rest at nought. They must have passed `checkPlaces`. */
export function keptOf(prep: Prepared, placements: readonly Placement[]): Kept {
  const lay = emptyLay(prep);
  const at = new Map(prep.items.map((item, i) => [keyOf(item.piece.id, item.copy), i]));
  const items = placements.map((placement) => {
    const i = at.get(keyOf(placement.pieceId, placement.copy))!;
    const place = placeOf(prep, prep.items[i]!, placement);
    lay.variant[i] = place.variant.index;
    lay.x[i] = place.x;
    lay.y[i] = place.y;
    return i;
  });
  return { items, lay };
}

const keyOf = (id: string | number, copy: number) => `${typeof id} ${id} ${copy}`;

function placeOf(prep: Prepared, item: Item, placement: Placement) {
  const { spacing, margin, stripWidth } = prep.instance;
  const { rotationDeg, flipped } = placement;
  const ring = movedRing(ringOf(item.piece.polygon), rotationDeg, flipped);
  const box = boxOf(ring);
  const corner = movedRing(ring, 0, false, spacing / 2 - box.minX, spacing / 2 - box.minY);
  const framed = withoutIdleVertices(corner, IDLE * stripWidth);
  const variant = prep.shapes[item.shape]!.variants.find((v) =>
    fitsVariant(v, framed, placement, stripWidth),
  );
  if (variant === undefined)
    throw new Error('a layout that passed the check has a turn the engine does not know');
  // A frame's corner lies half the spacing outside the piece's box; the grown strip begins that far outside too.
  const x = Math.max(0, placement.x + box.minX - margin.end);
  const y = placement.y + box.minY - margin.side;
  return { variant, x, y: Math.max(0, Math.min(prep.height - variant.height, y)) };
}

function fitsVariant(v: Variant, framed: Float64Array, placement: Placement, stripWidth: number): boolean {
  const same = v.flipped === placement.flipped && (v.rotationDeg - placement.rotationDeg) % 360 === 0;
  return same || sameOutline(v.ring, framed, 1e-9 * stripWidth);
}
