import {
  bounds,
  type CutPiece,
  drawPlaces,
  type LaidPlace,
  type LayFrame,
  type LayPlacement,
  type LayRefusal,
  point,
  tryPlaces,
} from '../contract.ts';
import { boxAround } from '../drawing/view.ts';

/** What putting a piece down comes to. */
export type PutDown =
  | { readonly kind: 'free'; readonly places: readonly LaidPlace[] }
  /** What is not held is laid anew about it. */
  | { readonly kind: 'makesWay'; readonly places: readonly LaidPlace[] }
  | { readonly kind: 'refused'; readonly refusal: LayRefusal };

export const pieceOf = (frame: LayFrame, { of }: LaidPlace): CutPiece | undefined =>
  frame.pieces.find((piece) =>
    of.kind === 'panel'
      ? piece.openings.includes(of.opening) && piece.kind === 'panel'
      : piece.piece === of.piece,
  );

export const sameOf = (a: LaidPlace['of'], b: LaidPlace['of']): boolean =>
  a.kind === 'panel'
    ? b.kind === 'panel' && a.opening === b.opening
    : b.kind === 'pocket' && a.piece === b.piece && a.copy === b.copy;

/**
 * The places with one of them put elsewhere, and held there.
 *
 * @param drawn the outlines of `places` as they are
 */
export function putDown(
  frame: LayFrame,
  places: readonly LaidPlace[],
  drawn: readonly LayPlacement[],
  index: number,
  to: LaidPlace,
): PutDown {
  const moved = { ...to, held: true };
  const next = places.map((place, k) => (k === index ? moved : place));
  const near = nearOnes(frame, next, drawn, index);
  const free = tryPlaces(frame, near);
  if (free.ok) return { kind: 'free', places: next };
  const held = tryPlaces(
    frame,
    near.filter((place) => place.held),
  );
  if (held.ok) return { kind: 'makesWay', places: next.filter((place) => place.held) };
  return { kind: 'refused', refusal: held.refusal };
}

/** The one put down, and those whose boxes come within the spacing of its own. */
function nearOnes(
  frame: LayFrame,
  places: readonly LaidPlace[],
  drawn: readonly LayPlacement[],
  index: number,
): readonly LaidPlace[] {
  const own = boxOf(frame, places[index]!);
  const slack = frame.spacing + 1;
  return places.filter((_, k) => {
    if (k === index) return true;
    const box = bounds(drawn[k]!.outline);
    return (
      box.minX < own.maxX + slack &&
      box.maxX > own.minX - slack &&
      box.minY < own.maxY + slack &&
      box.maxY > own.minY - slack
    );
  });
}

const boxOf = (frame: LayFrame, place: LaidPlace) =>
  boxAround(drawPlaces(frame, [place]).map(({ outline }) => outline));

/** The same piece turned or turned over about the middle of its box. */
export function turned(
  frame: LayFrame,
  place: LaidPlace,
  to: { readonly turn?: number; readonly flipped?: boolean },
): LaidPlace {
  const next = { ...place, ...to };
  const [before, after] = [middleOf(frame, place), middleOf(frame, next)];
  return { ...next, x: next.x + before.x - after.x, y: next.y + before.y - after.y };
}

function middleOf(frame: LayFrame, place: LaidPlace) {
  const box = boxOf(frame, place);
  return point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
}

/** The next turn the piece may have. */
export function nextTurn(frame: LayFrame, place: LaidPlace): number {
  const turns = pieceOf(frame, place)?.turns ?? [];
  return turns[(turns.indexOf(place.turn) + 1) % turns.length] ?? place.turn;
}

/**
 * A place drawn to the selvages, the cut end, and the sides of its neighbours' boxes with the spacing between, where it
 * comes within `reach` of them.
 */
export function snapped(
  frame: LayFrame,
  drawn: readonly LayPlacement[],
  index: number,
  to: LaidPlace,
  reach: number,
): LaidPlace {
  const own = boxOf(frame, to);
  const others = drawn.filter((_, k) => k !== index).map(({ outline }) => bounds(outline));
  const { spacing, fabric, rollWidth } = frame;
  // Outlines lie within the polygons they are laid by: that much more is left.
  const gap = spacing + 0.7;
  const alongX = [
    0.35 - own.minX,
    ...others.flatMap((box) => [box.maxX + gap - own.minX, box.minX - gap - own.maxX]),
  ];
  const alongY = [
    fabric.selvage + 0.35 - own.minY,
    rollWidth - fabric.selvage - 0.35 - own.maxY,
    ...others.flatMap((box) => [box.maxY + gap - own.minY, box.minY - gap - own.maxY]),
  ];
  const least = (moves: readonly number[]) => {
    const best = moves.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    return Math.abs(best) <= reach ? best : 0;
  };
  return { ...to, x: to.x + least(alongX), y: to.y + least(alongY) };
}
