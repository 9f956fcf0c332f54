import { area, bounds, type Outline, point, reversed, type Segment, validate } from '@panewright/geometry';
import { LONGEST_LENGTH, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Chain, Piece } from '../curve/drawing.ts';
import type { FilePlace, FileRefusal } from '../fileRefusal.ts';

/** Pieces shorter than this, mm, are below what a file's rounding says: they are passed over. */
const SHORTEST = 1e-3;
/** Edges of one outline: beyond this it is a cloud of points, to be read as such. */
const MOST_EDGES = 5000;

/** An outline, and where in the file each edge is. */
export interface PlacedOutline {
  readonly outline: Outline;
  readonly layer?: string;
  readonly name?: string;
  readonly place: FilePlace;
}

/**
 * A ring of pieces as an outline: anticlockwise, nothing shorter than 0.001 mm, nowhere crossing itself.
 *
 * @returns undefined for a ring that encloses nothing because it is all shorter than 0.001 mm
 * @refuses FILE_OUTLINE_CROSSES_ITSELF, FILE_TOO_LARGE, OUTLINE_TOO_LARGE
 */
export function ringOutline({ pieces, ...named }: Chain): Result<PlacedOutline | undefined, FileRefusal> {
  const kept = withoutTiny(pieces);
  if (kept.length < 2) return ok(undefined);
  if (kept.length > MOST_EDGES)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'edges', found: kept.length, most: MOST_EDGES });
  const ring: Outline = { segments: kept.map(segmentOf) as unknown as Outline['segments'] };
  const isTurned = area(ring) < 0;
  const outline = isTurned ? reversed(ring) : ring;
  const place = kept[0]!.place;
  const { width, height } = bounds(outline);
  const size = mm(Math.max(width, height));
  if (size > LONGEST_LENGTH) return refuse({ code: 'OUTLINE_TOO_LARGE', size, most: LONGEST_LENGTH, place });
  const valid = validate(outline);
  if (valid.ok) return ok({ outline, ...named, place });
  const { refusal } = valid;
  if (refusal.code === 'OUTLINE_CLOCKWISE') return ok(undefined);
  if (refusal.code !== 'OUTLINE_CROSSES_ITSELF')
    throw new Error(`A ring made of sound pieces was refused: ${refusal.code}.`);
  // Run backwards, edge i is piece n - 1 - i.
  const placeOf = (edge: number) => kept[isTurned ? kept.length - 1 - edge : edge]!.place;
  return refuse({
    code: 'FILE_OUTLINE_CROSSES_ITSELF',
    at: refusal.at,
    ...(named.layer === undefined ? {} : { layer: named.layer }),
    places: [placeOf(refusal.where[0]), placeOf(refusal.where[1])],
  });
}

const segmentOf = ({ to, bulge }: Piece): Segment =>
  bulge === 0 ? { kind: 'line', to: point(to.x, to.y) } : { kind: 'arc', to: point(to.x, to.y), bulge };

/** The next piece begins where the last kept one ended, so that nothing adds up along a run of tiny pieces. */
function withoutTiny(pieces: readonly Piece[]): readonly Piece[] {
  const kept: Piece[] = [];
  let from = pieces[0]!.from;
  for (const piece of pieces) {
    if (Math.hypot(piece.to.x - from.x, piece.to.y - from.y) < SHORTEST) continue;
    kept.push({ ...piece, from });
    from = piece.to;
  }
  // The ring's end may fall within a tiny piece: the last kept one is led to the start, if it is still long enough.
  const start = pieces[0]!.from;
  while (
    kept.length > 0 &&
    Math.hypot(kept.at(-1)!.from.x - start.x, kept.at(-1)!.from.y - start.y) < SHORTEST
  )
    kept.pop();
  if (kept.length > 0) kept[kept.length - 1] = { ...kept.at(-1)!, to: start };
  return kept;
}
