import {
  checkPlaces,
  type Instance,
  type LaidCopy,
  type Layout,
  type LayRefusal,
  layoutOfPlaces,
  type Placement,
  packAround,
} from '@panewright/packing';
import { mm } from '@panewright/quantity';
import type { LaidPlace } from '../document/layByHand.ts';
import type { CutPiece, LaidCopyName } from '../plan/plan.ts';

export interface HandLay {
  /** null where nothing of what was set by hand is left to lay about. */
  readonly layout: Layout | null;
  readonly held: readonly LaidCopyName[];
  /** Openings whose panel, and pocket patches of which one, could not stay; once for each. */
  readonly givenUp: readonly string[];
}

/**
 * A lay as it was left by hand. Where every copy still lies as a lay may, it is that lay; else the copies that are held
 * stay and the rest is laid anew about them. A held copy that cannot stay is laid with the rest, and named.
 *
 * @param budget evaluations for laying the rest
 * @source none: what the maker set comes first
 */
export function handLay(
  instance: Instance,
  pieces: readonly CutPiece[],
  places: readonly LaidPlace[],
  budget: number,
  seed: number,
): HandLay {
  const wanted = instance.pieces.reduce((sum, { demand }) => sum + demand, 0);
  const named = places.map((place) => ({ place, copy: laidCopy(pieces, place.of) }));
  const known = named.flatMap(({ place, copy }) =>
    copy ? [{ held: place.held, of: place.of, at: placementOf(copy, place) }] : [],
  );
  if (known.length === wanted && known.length === places.length) {
    const whole = layoutOfPlaces(
      instance,
      known.map(({ at }) => at),
    );
    const held = known.filter((one) => one.held).map(({ at }) => nameOf(at));
    if (whole.ok) return { layout: whole.value, held, givenUp: [] };
  }
  const gone = named.filter(({ place, copy }) => place.held && !copy).map(({ place }) => shortName(place.of));
  const held = known.filter((one) => one.held).map(({ at }) => at);
  const { kept, out } = stillLying(instance, held);
  const outNames = known.filter(({ at }) => out.includes(at)).map(({ of }) => shortName(of));
  const givenUp = [...gone, ...outNames];
  if (kept.length === 0) return { layout: null, held: [], givenUp };
  const around = packAround(instance, kept, budget, seed);
  if (!around.ok) throw new Error(`pieces that lie well could not be laid about: ${around.refusal.code}`);
  return { layout: around.value, held: kept.map(nameOf), givenUp };
}

/**
 * Places of a document in the engine's terms; those of pieces no longer cut are left out.
 *
 * @source none: the same places by other names
 */
export const placedByHand = (
  pieces: readonly CutPiece[],
  places: readonly LaidPlace[],
): readonly Placement[] =>
  places.flatMap((place) => {
    const copy = laidCopy(pieces, place.of);
    return copy ? [placementOf(copy, place)] : [];
  });

/** Which copy of which piece a place is of; null where it is not cut any more. */
function laidCopy(pieces: readonly CutPiece[], of: LaidPlace['of']): LaidCopyName | null {
  if (of.kind === 'pocket') {
    const piece = pieces.find((one) => one.kind === 'pocket' && one.piece === of.piece);
    return piece && of.copy < piece.count ? { piece: piece.piece, copy: of.copy } : null;
  }
  const piece = pieces.find((one) => one.kind === 'panel' && one.openings.includes(of.opening));
  return piece ? { piece: piece.piece, copy: piece.openings.indexOf(of.opening) } : null;
}

/**
 * What a copy of the plan is called in a document: a panel by its opening, for patterns are numbered anew.
 *
 * @source none: one name for one thing
 */
export function laidOf(pieces: readonly CutPiece[], { piece, copy }: LaidCopyName): LaidPlace['of'] {
  const found = pieces.find((one) => one.piece === piece);
  return found?.kind === 'panel'
    ? { kind: 'panel', opening: found.openings[copy]! }
    : { kind: 'pocket', piece, copy };
}

const shortName = (of: LaidPlace['of']) => (of.kind === 'panel' ? of.opening : of.piece);

const placementOf = ({ piece, copy }: LaidCopyName, { turn, flipped, x, y }: LaidPlace): Placement => ({
  pieceId: piece,
  copy,
  rotationDeg: turn,
  flipped,
  x: mm(x),
  y: mm(y),
});

const nameOf = ({ pieceId, copy }: Placement): LaidCopyName => ({ piece: String(pieceId), copy });

/** Leaves out one copy after another until the rest lies as a lay may; of two that meet, the one listed later. */
function stillLying(instance: Instance, places: readonly Placement[]) {
  let kept = [...places];
  const out: Placement[] = [];
  for (;;) {
    const checked = checkPlaces(instance, kept);
    if (checked.ok) return { kept, out };
    const worst = kept[outOf(checked.refusal, kept)];
    if (!worst) throw new Error(`a place was refused without its name: ${checked.refusal.code}`);
    out.push(worst);
    kept = kept.filter((one) => one !== worst);
  }
}

function outOf(refusal: LayRefusal, kept: readonly Placement[]): number {
  const at = (of: LaidCopy) =>
    kept.findLastIndex(({ pieceId, copy }) => pieceId === of.pieceId && copy === of.copy);
  if ('of' in refusal) return at(refusal.of);
  if ('first' in refusal) return Math.max(at(refusal.first), at(refusal.second));
  if ('pieceId' in refusal) return kept.findIndex(({ pieceId }) => pieceId === refusal.pieceId);
  return -1;
}
