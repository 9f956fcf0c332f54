import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Instance, Layout, PieceId, Placement } from '../instance.ts';
import { areaOf, ringOf } from '../shape/ring.ts';
import { type LaidCopy, type LayRefusal, verifyLay } from './verifyLay.ts';

/**
 * Whether some copies of an instance's pieces lie as a lay may: allowed turns, inside the cloth, clear of each other by
 * the spacing. The copies that are not named are left out of account. By the same whole-number check as `verifyLay`.
 *
 * @returns length of cloth they take from x = 0, margin included, mm; 0 where there are none
 * @accuracy as verifyLay
 * @refuses every LayRefusal but LAY_DEMAND_NOT_MET; `of`, `first` and `second` name the copies as they were given
 * @source none: a part of a lay is checked as a lay of that part
 */
export function checkPlaces(
  instance: Instance,
  placements: readonly Placement[],
): Result<Millimetre, LayRefusal> {
  if (placements.length === 0) return ok(mm(0));
  const layout = layoutOfPlaces(instance, placements);
  return layout.ok ? ok(layout.value.length) : layout;
}

/**
 * The same copies as a layout: their length, and the share of that cloth that they cover. Where they are all there are,
 * it is a true lay of the instance.
 *
 * @range one copy at least
 * @accuracy as verifyLay
 * @refuses as checkPlaces
 * @source as checkPlaces
 */
export function layoutOfPlaces(
  instance: Instance,
  placements: readonly Placement[],
): Result<Layout, LayRefusal> {
  const strange = placements.find(({ pieceId, copy }) => !isCopy(instance, pieceId, copy));
  if (strange) return refuse(strangeness(instance, strange));
  const twice = placements.find((one, at) => placements.findIndex((other) => sameCopy(one, other)) < at);
  if (twice) return refuse({ code: 'LAY_COPY_TWICE', of: { pieceId: twice.pieceId, copy: twice.copy } });
  const { part, layout, given } = asWhole(instance, placements);
  const checked = verifyLay(part, layout);
  return checked.ok ? ok({ ...layout, placements }) : refuse(named(checked.refusal, given));
}

const sameCopy = (a: LaidCopy, b: LaidCopy) => a.pieceId === b.pieceId && a.copy === b.copy;

const isCopy = (instance: Instance, id: PieceId, copy: number) =>
  instance.pieces.some(
    (piece) => piece.id === id && Number.isInteger(copy) && copy >= 0 && copy < piece.demand,
  );

function strangeness(instance: Instance, { pieceId, copy }: Placement): LayRefusal {
  const known = instance.pieces.some(({ id }) => id === pieceId);
  return known ? { code: 'LAY_COPY_UNKNOWN', of: { pieceId, copy } } : { code: 'LAY_PIECE_UNKNOWN', pieceId };
}

/** The copies as a whole lay of an instance of their own, numbered afresh, and what each was called. */
function asWhole(instance: Instance, placements: readonly Placement[]) {
  const given = new Map<PieceId, Placement[]>();
  for (const placement of placements)
    given.set(placement.pieceId, [...(given.get(placement.pieceId) ?? []), placement]);
  const pieces = instance.pieces.flatMap((piece) => {
    const demand = given.get(piece.id)?.length;
    return demand ? [{ ...piece, demand }] : [];
  });
  const renumbered = [...given.values()].flatMap((copies) => copies.map((one, copy) => ({ ...one, copy })));
  const length = mm(Math.max(...placements.map((one) => rightOf(instance, one))) + instance.margin.end);
  const area = pieces.reduce((sum, { polygon, demand }) => sum + demand * areaOf(ringOf(polygon)), 0);
  const layout: Layout = {
    length,
    density: area / (instance.stripWidth * length),
    placements: renumbered,
  };
  return { part: { ...instance, pieces }, layout, given };
}

function rightOf(instance: Instance, { pieceId, rotationDeg, flipped, x }: Placement): number {
  const turn = (rotationDeg * Math.PI) / 180;
  const { polygon } = instance.pieces.find(({ id }) => id === pieceId)!;
  return Math.max(
    ...polygon.map(([px, py]) => x + (flipped ? -px : px) * Math.cos(turn) - py * Math.sin(turn)),
  );
}

/** The refusal with the copies called as they were given. */
function named(refusal: LayRefusal, given: ReadonlyMap<PieceId, readonly Placement[]>): LayRefusal {
  const back = ({ pieceId, copy }: LaidCopy): LaidCopy => ({
    pieceId,
    copy: given.get(pieceId)![copy]!.copy,
  });
  if ('of' in refusal) return { ...refusal, of: back(refusal.of) };
  if ('first' in refusal) return { ...refusal, first: back(refusal.first), second: back(refusal.second) };
  return refusal;
}
