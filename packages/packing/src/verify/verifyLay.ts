import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Instance, Layout, Piece, PieceId, Placement } from '../instance.ts';
import { earTriangles, trianglesPenetrate } from './triangles.ts';

/** Which copy, in the order of the layout. */
export interface LaidCopy {
  readonly pieceId: PieceId;
  readonly copy: number;
}

export type LayRefusal =
  | { readonly code: 'LAY_PIECE_UNKNOWN'; readonly pieceId: PieceId }
  | {
      readonly code: 'LAY_DEMAND_NOT_MET';
      readonly pieceId: PieceId;
      readonly wanted: number;
      readonly laid: number;
    }
  | { readonly code: 'LAY_COPY_TWICE'; readonly of: LaidCopy }
  | { readonly code: 'LAY_COPY_UNKNOWN'; readonly of: LaidCopy }
  | { readonly code: 'LAY_TURN_NOT_ALLOWED'; readonly of: LaidCopy; readonly rotationDeg: number }
  | { readonly code: 'LAY_FLIP_NOT_ALLOWED'; readonly of: LaidCopy }
  | { readonly code: 'LAY_PLACE_NOT_FINITE'; readonly of: LaidCopy }
  | {
      readonly code: 'LAY_OUTSIDE_CLOTH';
      readonly of: LaidCopy;
      readonly edge: 'start' | 'end' | 'right' | 'left';
      readonly by: Millimetre;
    }
  | {
      readonly code: 'LAY_PIECES_OVERLAP';
      readonly first: LaidCopy;
      readonly second: LaidCopy;
      readonly x: Millimetre;
      readonly y: Millimetre;
    }
  | {
      readonly code: 'LAY_PIECES_TOO_CLOSE';
      readonly first: LaidCopy;
      readonly second: LaidCopy;
      readonly distance: Millimetre;
      readonly spacing: Millimetre;
      readonly x: Millimetre;
      readonly y: Millimetre;
    }
  | { readonly code: 'LAY_MEETS_RESERVED'; readonly of: LaidCopy; readonly place: number }
  | { readonly code: 'LAY_DENSITY_WRONG'; readonly stated: number; readonly found: number }
  | { readonly code: 'LAY_PIECE_NOT_SIMPLE'; readonly pieceId: PieceId };

/** Depth, as a share of the strip's width, up to which two pieces or a piece and an edge count as touching. */
export const LAY_TOLERANCE = 1e-7;

/** One laid copy on the whole-number grid. */
interface Laid {
  readonly of: LaidCopy;
  readonly at: Float64Array;
  readonly triangles: Int32Array;
  readonly box: readonly [minX: number, minY: number, maxX: number, maxY: number];
}

interface Grid {
  readonly steps: number;
  readonly tolerance: number;
}

/**
 * Whether a layout is a true lay of an instance: every piece the wanted number of times, allowed turns only,
 * inside the cloth, clear of each other by the spacing. Shares nothing with the search that made the layout:
 * vertices are rounded to a grid of 2^-31 strip widths, rings are cut into triangles, and two pieces overlap when
 * two triangles penetrate each other by more than the tolerance, decided in whole numbers.
 *
 * @param tolerance share of the strip's width that counts as touching; default 1e-7 (0.15 um on a 1.5 m roll)
 * @accuracy a depth within two grid steps (1e-9 of the width) of the tolerance may fall either way
 * @refuses every LayRefusal, first found: counts, turns, cloth, pairs by distance along the cloth, reserved places
 * @source separating axes, sources.md#ericson-2004
 */
export function verifyLay(
  instance: Instance,
  layout: Layout,
  tolerance: number = LAY_TOLERANCE,
): Result<Layout, LayRefusal> {
  const counted = checkCounts(instance, layout) ?? checkTurns(instance, layout);
  if (counted) return refuse(counted);
  const steps = 2 ** 31 / instance.stripWidth;
  const grid: Grid = { steps, tolerance: Math.max(1, Math.round(tolerance * 2 ** 31)) };
  const laid = layOnGrid(instance, layout, grid);
  if (!Array.isArray(laid)) return refuse(laid as LayRefusal);
  const found =
    checkCloth(instance, layout, laid, grid) ??
    checkPairs(instance, laid, grid) ??
    checkReserved(instance, laid, grid) ??
    checkDensity(instance, layout);
  return found ? refuse(found) : ok(layout);
}

const copyOf = ({ pieceId, copy }: Placement): LaidCopy => ({ pieceId, copy });

function checkCounts(instance: Instance, { placements }: Layout): LayRefusal | undefined {
  const laid = new Map<PieceId, Set<number>>(instance.pieces.map((piece) => [piece.id, new Set()]));
  for (const placement of placements) {
    const copies = laid.get(placement.pieceId);
    if (copies === undefined) return { code: 'LAY_PIECE_UNKNOWN', pieceId: placement.pieceId };
    if (copies.has(placement.copy)) return { code: 'LAY_COPY_TWICE', of: copyOf(placement) };
    copies.add(placement.copy);
  }
  for (const { id, demand } of instance.pieces) {
    const copies = laid.get(id)!;
    if (copies.size !== demand) {
      return { code: 'LAY_DEMAND_NOT_MET', pieceId: id, wanted: demand, laid: copies.size };
    }
    const strange = [...copies].find((copy) => !(Number.isInteger(copy) && copy >= 0 && copy < demand));
    if (strange !== undefined) return { code: 'LAY_COPY_UNKNOWN', of: { pieceId: id, copy: strange } };
  }
  return undefined;
}

function pieceWith(instance: Instance, id: PieceId): Piece {
  return instance.pieces.find((piece) => piece.id === id)!;
}

function checkTurns(instance: Instance, { placements }: Layout): LayRefusal | undefined {
  for (const placement of placements) {
    const piece = pieceWith(instance, placement.pieceId);
    const { rotationDeg, flipped, x, y } = placement;
    if (!Number.isFinite(x + y + rotationDeg)) return { code: 'LAY_PLACE_NOT_FINITE', of: copyOf(placement) };
    const allowed = piece.allowedRotationsDeg.some((degrees) => (degrees - rotationDeg) % 360 === 0);
    if (!allowed) return { code: 'LAY_TURN_NOT_ALLOWED', of: copyOf(placement), rotationDeg };
    if (flipped && !piece.flip) return { code: 'LAY_FLIP_NOT_ALLOWED', of: copyOf(placement) };
  }
  return undefined;
}

function layOnGrid(instance: Instance, { placements }: Layout, { steps }: Grid): Laid[] | LayRefusal {
  const cut = new Map<PieceId, Int32Array>();
  const out: Laid[] = [];
  for (const placement of placements) {
    const piece = pieceWith(instance, placement.pieceId);
    let triangles = cut.get(piece.id);
    if (triangles === undefined) {
      triangles = earTriangles(Float64Array.from(piece.polygon.flat(), (v) => Math.round(v * steps)));
      if (triangles === undefined) return { code: 'LAY_PIECE_NOT_SIMPLE', pieceId: piece.id };
      cut.set(piece.id, triangles);
    }
    const at = placedOnGrid(piece, placement, steps);
    const xs = at.filter((_, k) => k % 2 === 0);
    const ys = at.filter((_, k) => k % 2 === 1);
    const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
    out.push({ of: copyOf(placement), at, triangles, box });
  }
  return out;
}

function placedOnGrid(piece: Piece, placement: Placement, steps: number): Float64Array {
  const degrees = ((placement.rotationDeg % 360) + 360) % 360;
  const quarter = degrees % 90 === 0 ? degrees / 90 : undefined;
  const radians = (degrees / 180) * Math.PI;
  const cos = quarter === undefined ? Math.cos(radians) : [1, 0, -1, 0][quarter]!;
  const sin = quarter === undefined ? Math.sin(radians) : [0, 1, 0, -1][quarter]!;
  return Float64Array.from(
    piece.polygon.flatMap(([px, py]) => {
      const x = placement.flipped ? -px : px;
      return [
        Math.round((cos * x - sin * py + placement.x) * steps),
        Math.round((sin * x + cos * py + placement.y) * steps),
      ];
    }),
  );
}

function checkCloth(
  instance: Instance,
  layout: Layout,
  laid: readonly Laid[],
  { steps, tolerance }: Grid,
): LayRefusal | undefined {
  const { side, end } = instance.margin;
  for (const { of, box } of laid) {
    const beyond = [
      ['start', end * steps - box[0]],
      ['end', box[2] - (layout.length - end) * steps],
      ['right', side * steps - box[1]],
      ['left', box[3] - (instance.stripWidth - side) * steps],
    ] as const;
    // Written so that a NaN length is beyond too.
    const found = beyond.find(([, by]) => !(by <= tolerance + 1));
    if (found) return { code: 'LAY_OUTSIDE_CLOTH', of, edge: found[0], by: mm(found[1] / steps) };
  }
  return undefined;
}

function checkPairs(instance: Instance, laid: readonly Laid[], grid: Grid): LayRefusal | undefined {
  const order = [...laid].sort((a, b) => a.box[0] - b.box[0]);
  const gap = Math.round(instance.spacing * grid.steps);
  for (let i = 0; i < order.length; i++)
    for (let j = i + 1; j < order.length; j++) {
      const [a, b] = [order[i]!, order[j]!];
      if (b.box[0] - a.box[2] >= gap) break;
      if (b.box[1] - a.box[3] >= gap || a.box[1] - b.box[3] >= gap) continue;
      const found =
        overlapOf(a, b, grid) ?? (gap > 0 ? closenessOf(a, b, instance.spacing, grid) : undefined);
      if (found) return found;
    }
  return undefined;
}

/** Each reserved place stands as one more laid piece, of two triangles. */
function checkReserved(instance: Instance, laid: readonly Laid[], grid: Grid): LayRefusal | undefined {
  const gap = Math.round(instance.spacing * grid.steps);
  for (const [place, { minX, minY, maxX, maxY }] of (instance.reserved ?? []).entries()) {
    const box = [minX, minY, maxX, maxY].map((v) => Math.round(v * grid.steps)) as [
      number,
      number,
      number,
      number,
    ];
    const at = Float64Array.of(box[0], box[1], box[2], box[1], box[2], box[3], box[0], box[3]);
    const other: Laid = { of: { pieceId: '', copy: 0 }, at, triangles: Int32Array.of(0, 1, 2, 0, 2, 3), box };
    for (const one of laid) {
      if (one.box[0] - box[2] >= gap || box[0] - one.box[2] >= gap) continue;
      if (one.box[1] - box[3] >= gap || box[1] - one.box[3] >= gap) continue;
      const meets =
        overlapOf(one, other, grid) ??
        (gap > 0 ? closenessOf(one, other, instance.spacing, grid) : undefined);
      if (meets) return { code: 'LAY_MEETS_RESERVED', of: one.of, place };
    }
  }
  return undefined;
}

function overlapOf(a: Laid, b: Laid, { steps, tolerance }: Grid): LayRefusal | undefined {
  const near = trianglesOf(b).filter((t) => boxesMeet(boxOfTriangle(t), a.box));
  for (const s of trianglesOf(a)) {
    const box = boxOfTriangle(s);
    if (!boxesMeet(box, b.box)) continue;
    for (const t of near) {
      const other = boxOfTriangle(t);
      if (!boxesMeet(box, other) || !trianglesPenetrate(s, t, tolerance)) continue;
      const x = (Math.max(box[0], other[0]) + Math.min(box[2], other[2])) / 2 / steps;
      const y = (Math.max(box[1], other[1]) + Math.min(box[3], other[3])) / 2 / steps;
      return { code: 'LAY_PIECES_OVERLAP', first: a.of, second: b.of, x: mm(x), y: mm(y) };
    }
  }
  return undefined;
}

function trianglesOf({ at, triangles }: Laid): readonly (readonly number[])[] {
  return Array.from({ length: triangles.length / 3 }, (_, k) =>
    [0, 1, 2].flatMap((i) => {
      const v = triangles[3 * k + i]!;
      return [at[2 * v]!, at[2 * v + 1]!];
    }),
  );
}

type GridBox = readonly [number, number, number, number];

function boxOfTriangle(t: readonly number[]): GridBox {
  return [
    Math.min(t[0]!, t[2]!, t[4]!),
    Math.min(t[1]!, t[3]!, t[5]!),
    Math.max(t[0]!, t[2]!, t[4]!),
    Math.max(t[1]!, t[3]!, t[5]!),
  ];
}

function boxesMeet(a: GridBox, b: GridBox): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

/** Least distance between the outlines, vertex to edge both ways; enough once the pieces do not overlap. */
function closenessOf(
  a: Laid,
  b: Laid,
  spacing: Millimetre,
  { steps, tolerance }: Grid,
): LayRefusal | undefined {
  const least = [nearest(a.at, b.at), nearest(b.at, a.at)].sort((p, q) => p.distance - q.distance)[0]!;
  if (least.distance >= spacing * steps - tolerance - 2) return undefined;
  return {
    code: 'LAY_PIECES_TOO_CLOSE',
    first: a.of,
    second: b.of,
    distance: mm(least.distance / steps),
    spacing,
    x: mm(least.x / steps),
    y: mm(least.y / steps),
  };
}

function nearest(vertices: Float64Array, edges: Float64Array) {
  let best = { distance: Infinity, x: 0, y: 0 };
  for (let v = 0; v < vertices.length; v += 2)
    for (let e = 0; e < edges.length; e += 2) {
      const f = (e + 2) % edges.length;
      const [ux, uy] = [edges[f]! - edges[e]!, edges[f + 1]! - edges[e + 1]!];
      const [wx, wy] = [vertices[v]! - edges[e]!, vertices[v + 1]! - edges[e + 1]!];
      const square = ux * ux + uy * uy;
      const t = square > 0 ? Math.max(0, Math.min(1, (ux * wx + uy * wy) / square)) : 0;
      const distance = Math.hypot(wx - t * ux, wy - t * uy);
      if (distance < best.distance) best = { distance, x: vertices[v]!, y: vertices[v + 1]! };
    }
  return best;
}

function checkDensity(instance: Instance, { length, density }: Layout): LayRefusal | undefined {
  const area = instance.pieces.reduce((sum, piece) => sum + piece.demand * shoelace(piece), 0);
  const found = area / (instance.stripWidth * length);
  if (Math.abs(density - found) <= 1e-6) return undefined;
  return { code: 'LAY_DENSITY_WRONG', stated: density, found };
}

function shoelace({ polygon }: Piece): number {
  return (
    polygon.reduce((sum, [x, y], k) => {
      const [nextX, nextY] = polygon[(k + 1) % polygon.length]!;
      return sum + (x * nextY - nextX * y);
    }, 0) / 2
  );
}
