import type { Millimetre } from '@panewright/quantity';

/** [x, y], y up. */
export type Vertex = readonly [x: Millimetre, y: Millimetre];

/** A simple ring, anticlockwise, first vertex not repeated. Arcs are polygonised outside the arc by the caller. */
export type Polygon = readonly Vertex[];

export type PieceId = string | number;

/**
 * A kind of piece to be cut `demand` times.
 *
 * `allowedRotationsDeg` are anticlockwise turns in degrees; grain is stated by leaving turns out.
 * `flip` allows the mirror image too, for cloth whose faces are alike.
 */
export interface Piece {
  readonly id: PieceId;
  readonly demand: number;
  readonly polygon: Polygon;
  readonly allowedRotationsDeg: readonly number[];
  readonly flip: boolean;
}

/** Cloth no piece may use: `side` along each long edge (the selvage), `end` at each end of the lay. */
export interface Margin {
  readonly side: Millimetre;
  readonly end: Millimetre;
}

/** A rectangle of the strip, in its own coordinates, where no piece may lie: a flaw, a hole, or what is kept for another job. */
export interface ReservedPlace {
  readonly minX: Millimetre;
  readonly minY: Millimetre;
  readonly maxX: Millimetre;
  readonly maxY: Millimetre;
}

/**
 * Pieces to lay on one strip: x runs along the cloth and is free, y runs across it from 0 to `stripWidth`.
 * `spacing` is the least distance between two pieces (the blade, or the safety of the cut); 0 lets them touch.
 * Pieces keep as far from `reserved` places as from one another; places may overlap and reach beyond the cloth.
 */
export interface Instance {
  readonly stripWidth: Millimetre;
  readonly pieces: readonly Piece[];
  readonly spacing: Millimetre;
  readonly margin: Margin;
  readonly reserved?: readonly ReservedPlace[];
}

/**
 * Where one copy lies: vertex p goes to R(rotationDeg) F p + (x, y), where F is x -> -x when `flipped`
 * and the turn is anticlockwise. `copy` counts from 0 within its piece.
 */
export interface Placement {
  readonly pieceId: PieceId;
  readonly copy: number;
  readonly rotationDeg: number;
  readonly flipped: boolean;
  readonly x: Millimetre;
  readonly y: Millimetre;
}

/** `length` of cloth from x = 0, margins included; `density` = piece area / (stripWidth x length), 0 to 1. */
export interface Layout {
  readonly length: Millimetre;
  readonly density: number;
  readonly placements: readonly Placement[];
}

export type InstanceRefusal =
  | { readonly code: 'NO_PIECES_TO_LAY' }
  | { readonly code: 'STRIP_WIDTH_NOT_POSITIVE'; readonly stripWidth: number }
  | { readonly code: 'SPACING_NOT_A_LENGTH'; readonly spacing: number }
  | { readonly code: 'MARGIN_NOT_A_LENGTH'; readonly side: number; readonly end: number }
  | { readonly code: 'MARGINS_LEAVE_NO_CLOTH'; readonly stripWidth: Millimetre; readonly side: Millimetre }
  | { readonly code: 'RESERVED_PLACE_HAS_NO_AREA'; readonly place: number }
  | { readonly code: 'PIECE_ID_TWICE'; readonly pieceId: PieceId }
  | { readonly code: 'PIECE_DEMAND_NOT_WHOLE'; readonly pieceId: PieceId; readonly demand: number }
  | { readonly code: 'PIECE_VERTEX_NOT_FINITE'; readonly pieceId: PieceId; readonly vertex: number }
  | { readonly code: 'PIECE_HAS_NO_AREA'; readonly pieceId: PieceId }
  | { readonly code: 'PIECE_RUNS_CLOCKWISE'; readonly pieceId: PieceId }
  | {
      readonly code: 'PIECE_CROSSES_ITSELF';
      readonly pieceId: PieceId;
      readonly edges: readonly [number, number];
    }
  | { readonly code: 'PIECE_HAS_NO_TURN'; readonly pieceId: PieceId }
  | { readonly code: 'PIECE_TURN_NOT_FINITE'; readonly pieceId: PieceId; readonly rotationDeg: number }
  | {
      readonly code: 'PIECE_WIDER_THAN_ROLL';
      readonly pieceId: PieceId;
      /** Least extent across the cloth over all allowed turns. */
      readonly leastWidth: Millimetre;
      readonly usableWidth: Millimetre;
    };
