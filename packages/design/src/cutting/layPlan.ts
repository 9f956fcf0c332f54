import { flatten, moveOutline, type Outline, point, type Rigid } from '@panewright/geometry';
import {
  type Instance,
  type InstanceRefusal,
  type Layout,
  type PackingState,
  type Placement,
  startPacking,
  step,
  verifyLay,
} from '@panewright/packing';
import { mm, radian } from '@panewright/quantity';
import type { Fabric } from '../document/catalogue.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { CutPiece, LayPlan } from '../plan/plan.ts';

/** Arcs are laid as polygons that lie this much outside them at most, mm. */
const FLATTEN = mm(0.3);

/** Fewest and most evaluations spent on the lay of one roll width. */
export const QUICK_BUDGET = 150_000;

/** The lay of one cloth on its cheapest roll; null where no roll takes the pieces (a finding says which). */
export function layPlan(
  name: string,
  fabric: Fabric,
  pieces: readonly CutPiece[],
  spacing: number,
  seed: number,
  budget: number,
  find: Find,
): LayPlan | null {
  const tries = fabric.rolls.map((roll) => ({
    roll,
    outcome: layOn(instanceFor(fabric, roll.width, pieces, spacing), seed, budget),
  }));
  const laid = tries.flatMap(({ roll, outcome }) => (outcome.ok ? [{ roll, state: outcome.state }] : []));
  if (laid.length === 0) {
    const widest = tries.reduce((a, b) => (b.roll.width > a.roll.width ? b : a));
    if (!widest.outcome.ok) report(widest.outcome.refusal, fabric, find);
    return null;
  }
  const priced = laid.map(({ roll, state }) => ({
    roll,
    state,
    price: Math.ceil((state.best.length / roll.step) * (1 - 1e-9)) * roll.price,
  }));
  const best = priced.reduce((a, b) =>
    b.price < a.price || (b.price === a.price && b.state.best.length < a.state.best.length) ? b : a,
  );
  const { state, roll } = best;
  return {
    lay: name,
    fabric: fabric.id,
    rollWidth: roll.width,
    usableWidth: roll.width - 2 * fabric.selvage,
    selvage: fabric.selvage,
    spacing,
    length: figure(
      state.best.length,
      'mm',
      'computed',
      'lay',
      pieces.map(({ piece }) => `cutting.pieces.${piece}`),
    ),
    density: state.best.density,
    leastLength: state.bound,
    placements: placementsOf(state.best, pieces),
    otherWidths: priced
      .filter((one) => one !== best)
      .map((one) => ({ rollWidth: one.roll.width, length: one.state.best.length, price: one.price })),
  };
}

function instanceFor(
  fabric: Fabric,
  rollWidth: number,
  pieces: readonly CutPiece[],
  spacing: number,
): Instance {
  return {
    stripWidth: mm(rollWidth),
    spacing: mm(spacing),
    margin: { side: mm(fabric.selvage), end: mm(0) },
    pieces: pieces.map((piece) => ({
      id: piece.piece,
      demand: piece.count,
      polygon: flatten(piece.outline, FLATTEN, 'outside').map(({ x, y }) => [x, y] as const),
      allowedRotationsDeg: piece.turns,
      flip: piece.mayFlip,
    })),
  };
}

type Outcome =
  | { readonly ok: true; readonly state: PackingState }
  | { readonly ok: false; readonly refusal: InstanceRefusal };

function layOn(instance: Instance, seed: number, budget: number): Outcome {
  const started = startPacking(instance, seed);
  if (!started.ok) return { ok: false, refusal: started.refusal };
  const state = step(started.value, budget);
  const checked = verifyLay(instance, state.best);
  if (!checked.ok) throw new Error(`a lay failed its check: ${checked.refusal.code}`);
  return { ok: true, state };
}

function placementsOf(layout: Layout, pieces: readonly CutPiece[]): LayPlan['placements'] {
  const outlines = new Map<string, Outline>(pieces.map((piece) => [piece.piece, piece.outline]));
  return layout.placements.map((placement) => {
    const piece = String(placement.pieceId);
    const place = motionOf(placement);
    return { piece, copy: placement.copy, place, outline: moveOutline(place, outlines.get(piece)!) };
  });
}

/** Both turn after the mirroring left for right, so the packer's placement is a rigid motion as it stands. */
function motionOf(placement: Placement): Rigid {
  return {
    angle: radian((placement.rotationDeg * Math.PI) / 180),
    shift: point(placement.x, placement.y),
    mirrored: placement.flipped,
  };
}

function report(refusal: InstanceRefusal, fabric: Fabric, find: Find): void {
  if (refusal.code === 'PIECE_WIDER_THAN_ROLL')
    find({
      severity: 'stop',
      code: 'PIECE_WIDER_THAN_ROLL',
      where: { item: fabric.id },
      numbers: {
        piece: String(refusal.pieceId),
        leastWidth: refusal.leastWidth,
        usableWidth: refusal.usableWidth,
        fabric: fabric.name,
      },
    });
  else
    find({
      severity: 'stop',
      code: 'LAY_REFUSED',
      where: { item: fabric.id },
      numbers: { refusal: refusal.code, fabric: fabric.name },
    });
}
