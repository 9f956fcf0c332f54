import type { CutPiece, CuttingPlan, LayPlan } from '../contract.ts';

/** The same lay has the same list, so that what follows from it is kept. */
const known = new WeakMap<LayPlan, readonly CutPiece[]>();

/** The pieces a lay on a roll is made of: all of its cloth, less the copies that offcuts take, which are the last ones. */
export function piecesOf({ pieces, lays }: CuttingPlan, lay: LayPlan): readonly CutPiece[] {
  if (!lays.some(({ fabric, offcut }) => offcut && fabric === lay.fabric)) return pieces;
  const own = known.get(lay) ?? onRoll(pieces, lay);
  known.set(lay, own);
  return own;
}

const onRoll = (pieces: readonly CutPiece[], lay: LayPlan): readonly CutPiece[] =>
  pieces.flatMap((piece) => {
    if (piece.fabric !== lay.fabric) return [piece];
    const count = lay.placements.filter((one) => one.piece === piece.piece).length;
    return count > 0 ? [{ ...piece, count, openings: piece.openings.slice(0, count) }] : [];
  });
