import { mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Instance, InstanceRefusal, Piece, ReservedPlace } from './instance.ts';
import { areaOf, boxOf, movedRing, type Ring, ringOf } from './shape/ring.ts';

type Found = InstanceRefusal | undefined;

/**
 * Whether an instance can be laid at all. Every entry of this package that takes an instance asks this first.
 *
 * @refuses every InstanceRefusal, the first found in the order of the pieces
 */
export function checkInstance(instance: Instance): Result<Instance, InstanceRefusal> {
  const found = checkStrip(instance) ?? checkPieces(instance);
  return found ? refuse(found) : ok(instance);
}

function checkStrip({ stripWidth, spacing, margin, pieces, reserved = [] }: Instance): Found {
  if (!(stripWidth > 0 && Number.isFinite(stripWidth)))
    return { code: 'STRIP_WIDTH_NOT_POSITIVE', stripWidth };
  if (!(spacing >= 0 && Number.isFinite(spacing))) return { code: 'SPACING_NOT_A_LENGTH', spacing };
  const { side, end } = margin;
  if (!(side >= 0 && end >= 0 && Number.isFinite(side + end)))
    return { code: 'MARGIN_NOT_A_LENGTH', side, end };
  if (!(stripWidth - 2 * side > 0)) return { code: 'MARGINS_LEAVE_NO_CLOTH', stripWidth, side };
  const place = reserved.findIndex((box) => !isBox(box));
  if (place >= 0) return { code: 'RESERVED_PLACE_HAS_NO_AREA', place };
  if (!pieces.some((piece) => piece.demand > 0)) return { code: 'NO_PIECES_TO_LAY' };
  return undefined;
}

const isBox = ({ minX, minY, maxX, maxY }: ReservedPlace) =>
  Number.isFinite(minX + minY + maxX + maxY) && maxX > minX && maxY > minY;

function checkPieces({ pieces, stripWidth, margin }: Instance): Found {
  const seen = new Set<string | number>();
  for (const piece of pieces) {
    if (seen.has(piece.id)) return { code: 'PIECE_ID_TWICE', pieceId: piece.id };
    seen.add(piece.id);
    const found = checkPiece(piece) ?? checkWidth(piece, stripWidth - 2 * margin.side);
    if (found) return found;
  }
  return undefined;
}

function checkPiece(piece: Piece): Found {
  const pieceId = piece.id;
  if (!(Number.isInteger(piece.demand) && piece.demand >= 0))
    return { code: 'PIECE_DEMAND_NOT_WHOLE', pieceId, demand: piece.demand };
  const vertex = piece.polygon.findIndex(([x, y]) => !(Number.isFinite(x) && Number.isFinite(y)));
  if (vertex >= 0) return { code: 'PIECE_VERTEX_NOT_FINITE', pieceId, vertex };
  const ring = ringOf(piece.polygon);
  if (ring.length < 6) return { code: 'PIECE_HAS_NO_AREA', pieceId };
  const box = boxOf(ring);
  const crossed = firstCrossing(ring);
  if (crossed) return { code: 'PIECE_CROSSES_ITSELF', pieceId, edges: crossed };
  const area = areaOf(ring);
  const boxArea = (box.maxX - box.minX) * (box.maxY - box.minY);
  if (Math.abs(area) <= 1e-9 * boxArea) return { code: 'PIECE_HAS_NO_AREA', pieceId };
  if (area < 0) return { code: 'PIECE_RUNS_CLOCKWISE', pieceId };
  if (piece.allowedRotationsDeg.length === 0) return { code: 'PIECE_HAS_NO_TURN', pieceId };
  const bad = piece.allowedRotationsDeg.find((degrees) => !Number.isFinite(degrees));
  if (bad !== undefined) return { code: 'PIECE_TURN_NOT_FINITE', pieceId, rotationDeg: bad };
  return undefined;
}

function checkWidth(piece: Piece, usable: number): Found {
  if (piece.demand === 0) return undefined;
  const ring = ringOf(piece.polygon);
  const widths = piece.allowedRotationsDeg.map((degrees) => {
    const box = boxOf(movedRing(ring, degrees, false));
    return box.maxY - box.minY;
  });
  const least = Math.min(...widths);
  if (least <= usable * (1 + 1e-9)) return undefined;
  return { code: 'PIECE_WIDER_THAN_ROLL', pieceId: piece.id, leastWidth: mm(least), usableWidth: mm(usable) };
}

/** First two edges that cross properly, by edge number; touching is left to the area and the checker. */
function firstCrossing(ring: Ring): readonly [number, number] | undefined {
  const n = ring.length / 2;
  const side = (a: number, b: number, c: number) =>
    Math.sign(
      (ring[2 * b]! - ring[2 * a]!) * (ring[2 * c + 1]! - ring[2 * a + 1]!) -
        (ring[2 * b + 1]! - ring[2 * a + 1]!) * (ring[2 * c]! - ring[2 * a]!),
    );
  for (let i = 0; i < n; i++) {
    const i2 = (i + 1) % n;
    for (let j = i + 2; j < n; j++) {
      const j2 = (j + 1) % n;
      if (j2 === i) continue;
      if (side(i, i2, j) * side(i, i2, j2) < 0 && side(j, j2, i) * side(j, j2, i2) < 0) return [i, j];
    }
  }
  return undefined;
}
