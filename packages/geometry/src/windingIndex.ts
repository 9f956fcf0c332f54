import type { Piece } from './arrangement.ts';
import { boxOf, pointOn } from './curve.ts';
import { capWinding, chordCrossing } from './winding.ts';

type Pair = readonly [number, number];

/** Pieces in horizontal bands, to count windings about a point without visiting every piece. */
export class WindingIndex {
  readonly #bands: Piece[][];
  readonly #low: number;
  readonly #height: number;

  constructor(pieces: readonly Piece[]) {
    const boxes = pieces.map(({ curve }) => boxOf(curve));
    this.#low = boxes.reduce((low, box) => Math.min(low, box.minY), Infinity);
    const high = boxes.reduce((most, box) => Math.max(most, box.maxY), -Infinity);
    const count = Math.min(512, Math.max(1, pieces.length));
    this.#height = Math.max((high - this.#low) / count, Number.MIN_VALUE);
    this.#bands = Array.from({ length: count }, () => []);
    pieces.forEach((piece, i) => {
      const last = this.#band(boxes[i]!.maxY);
      for (let b = this.#band(boxes[i]!.minY); b <= last; b++) this.#bands[b]!.push(piece);
    });
  }

  #band(y: number): number {
    const band = Math.floor((y - this.#low) / this.#height);
    return Math.min(Math.max(band, 0), this.#bands.length - 1);
  }

  /**
   * Windings of both families just right and just left of the middle of a piece. The piece's own cap is left out of
   * the count: that is the view from the outer side of an arc. A line's own chord counts as seen from a hair east.
   */
  besides(piece: Piece): readonly [right: Pair, left: Pair] {
    const p = pointOn(piece.curve, 0.5);
    let first = 0;
    let second = 0;
    for (const other of this.#bands[this.#band(p.y)]!) {
      const isOwn = other === piece;
      if (isOwn && piece.curve.bulge === 0) continue;
      const winds = chordCrossing(other.curve, p) + (isOwn ? 0 : capWinding(other.curve, p));
      first += winds * other.count[0];
      second += winds * other.count[1];
    }
    const seen: Pair = [first, second];
    const [m, n] = piece.count;
    return seenFromRight(piece, p.y) ? [seen, [first + m, second + n]] : [[first - m, second - n], seen];
  }
}

/**
 * Which side of its piece the count belongs to. The middle of a nearly level line may be rounded to the height of one
 * of its ends; then the count takes the whole line as below the ray, or above it.
 */
function seenFromRight({ curve: c }: Piece, y: number): boolean {
  if (c.bulge !== 0) return c.bulge > 0;
  const startsBelow = c.ay <= y;
  if (startsBelow !== c.by <= y) return startsBelow;
  return startsBelow === c.bx < c.ax;
}
