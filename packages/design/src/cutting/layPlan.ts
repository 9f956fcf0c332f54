import { bounds, flatten, moveOutline, type Outline, point, type Rigid } from '@panewright/geometry';
import {
  bindingChain,
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
import type { LayByHand } from '../document/layByHand.ts';
import type { ReservedPlace } from '../document/reservedPlaces.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { CutPiece, LaidChain, LaidCopyName, LayPlan } from '../plan/plan.ts';
import { handLay } from './handLay.ts';

/** Arcs are laid as polygons that lie this much outside them at most, mm. */
const FLATTEN = mm(0.3);

/** Fewest and most evaluations spent on the lay of one roll width. */
export const QUICK_BUDGET = 150_000;

/** What one cloth's lay is made of. */
export interface LayInput {
  readonly name: string;
  readonly fabric: Fabric;
  readonly pieces: readonly CutPiece[];
  readonly spacing: number;
  readonly byHand: LayByHand | undefined;
  /** On any roll of this cloth. */
  readonly reserved: readonly ReservedPlace[];
  readonly seed: number;
  readonly budget: number;
}

interface Laid {
  readonly roll: Fabric['rolls'][number];
  readonly layout: Layout;
  readonly bound: number;
  readonly price: number;
}

/**
 * The lay of one cloth on its cheapest roll, or as it was set by hand; null where no roll takes the pieces (a finding
 * says which).
 */
export function layPlan(input: LayInput, find: Find): LayPlan | null {
  const { fabric, pieces, spacing, byHand, reserved, seed, budget } = input;
  const tries = fabric.rolls.map((roll) => ({
    roll,
    outcome: layOn(layInstance(fabric, roll.width, pieces, spacing, reserved), seed, budget),
  }));
  const laid = tries.flatMap(({ roll, outcome }): Laid[] =>
    outcome.ok ? [laidOn(roll, outcome.state.best, outcome.state.bound)] : [],
  );
  if (laid.length === 0) {
    const widest = tries.reduce((a, b) => (b.roll.width > a.roll.width ? b : a));
    if (!widest.outcome.ok) report(widest.outcome.refusal, fabric, find);
    return null;
  }
  const automatic = laid.reduce((a, b) => (cheaper(b, a) ? b : a));
  const hand = byHand ? laidByHand(input, byHand, laid, find) : null;
  // A lay that nothing holds was only found by a longer search: it stands while it is not the dearer one.
  const taken = hand && (hand.held.length > 0 || !cheaper(automatic, hand.laid)) ? hand : null;
  return asPlan(input, taken?.laid ?? automatic, laid, taken ? { held: taken.held, automatic } : null);
}

const cheaper = (a: Laid, b: Laid): boolean =>
  a.price < b.price || (a.price === b.price && a.layout.length < b.layout.length);

const laidOn = (roll: Fabric['rolls'][number], layout: Layout, bound: number): Laid => ({
  roll,
  layout,
  bound,
  price: wholeSteps(roll, layout.length) * roll.price,
});

/**
 * Whole steps of cloth that a length takes.
 *
 * @source none: rounded up, a hair apart
 */
export const wholeSteps = (roll: Fabric['rolls'][number], length: number): number =>
  Math.ceil((length / roll.step) * (1 - 1e-9));

function laidByHand(
  { fabric, pieces, spacing, reserved, seed, budget }: LayInput,
  byHand: LayByHand,
  laid: readonly Laid[],
  find: Find,
): { readonly laid: Laid; readonly held: readonly LaidCopyName[] } | null {
  const sold = laid.find(({ roll }) => roll.width === byHand.rollWidth);
  if (!sold) {
    const numbers = { width: byHand.rollWidth, fabric: fabric.name };
    find({ severity: 'doubt', code: 'LAY_ROLL_NOT_SOLD', where: { item: fabric.id }, numbers });
    return null;
  }
  const instance = layInstance(fabric, byHand.rollWidth, pieces, spacing, reserved);
  const hand = handLay(instance, pieces, byHand.places, budget, seed);
  if (hand.givenUp.length > 0) {
    const numbers = { pieces: [...new Set(hand.givenUp)].join(' '), fabric: fabric.name };
    find({ severity: 'doubt', code: 'LAY_PLACES_GIVEN_UP', where: { item: fabric.id }, numbers });
  }
  if (!hand.layout) return null;
  return { laid: laidOn(sold.roll, checked(instance, hand.layout), sold.bound), held: hand.held };
}

function asPlan(
  { name, fabric, pieces, spacing, reserved: all }: LayInput,
  best: Laid,
  laid: readonly Laid[],
  hand: { readonly held: readonly LaidCopyName[]; readonly automatic: Laid } | null,
): LayPlan {
  const priceOf = ({ roll, layout, price }: Laid) => ({
    rollWidth: roll.width,
    length: layout.length as number,
    price,
  });
  const placements = placementsOf(best.layout, pieces);
  const reserved = all.filter(({ rollWidth }) => rollWidth === best.roll.width);
  return {
    lay: name,
    fabric: fabric.id,
    rollWidth: best.roll.width,
    usableWidth: best.roll.width - 2 * fabric.selvage,
    selvage: fabric.selvage,
    spacing,
    length: figure(
      best.layout.length,
      'mm',
      'computed',
      'lay',
      pieces.map(({ piece }) => `cutting.pieces.${piece}`),
    ),
    density: best.layout.density,
    leastLength: best.bound,
    placements,
    otherWidths: laid.filter(({ roll }) => roll !== best.roll).map(priceOf),
    binds: bindingCopies(placements, best.layout.length),
    chain: chainOf(layInstance(fabric, best.roll.width, pieces, spacing, reserved), best.layout, reserved),
    reserved,
    byHand: hand && { held: hand.held, automatic: priceOf(hand.automatic) },
    bought: { length: wholeSteps(best.roll, best.layout.length) * best.roll.step, price: best.price },
    ...{ offcut: null, leaves: [] },
  };
}

/** Copies within this of the end of the lay end it: the outline lies this far inside its polygon, and a hair more, mm. */
const AT_THE_END = FLATTEN + 0.01;

const bindingCopies = (placements: LayPlan['placements'], length: number): readonly LaidCopyName[] =>
  placements
    .filter(({ outline }) => bounds(outline).maxX >= length - AT_THE_END)
    .map(({ piece, copy }) => ({ piece, copy }));

function chainOf(instance: Instance, { placements }: Layout, reserved: readonly ReservedPlace[]): LaidChain {
  const chain = bindingChain(instance, placements);
  if (!chain.ok) throw new Error(`a lay has no chain: ${chain.refusal.code}`);
  const { copies, from, play } = chain.value;
  return {
    copies: copies.map(({ pieceId, copy }) => ({ piece: String(pieceId), copy })),
    from: from === 'cut end' ? null : reserved[from]!.id,
    play,
  };
}

/**
 * The pieces of one cloth on one roll, as the packing engine takes them.
 *
 * @param spacing between two pieces, mm
 * @param reserved on any roll; those on rolls of another width are left out
 * @source none: the plan's pieces in the engine's terms
 */
export function layInstance(
  fabric: Fabric,
  rollWidth: number,
  pieces: readonly CutPiece[],
  spacing: number,
  reserved: readonly ReservedPlace[] = [],
): Instance {
  const places = reserved.filter((place) => place.rollWidth === rollWidth);
  return {
    stripWidth: mm(rollWidth),
    spacing: mm(spacing),
    margin: { side: mm(fabric.selvage), end: mm(0) },
    reserved: places.map(({ from, to, near, far }) => ({
      minX: mm(from),
      minY: mm(near),
      maxX: mm(to),
      maxY: mm(far),
    })),
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
  checked(instance, state.best);
  return { ok: true, state };
}

function checked(instance: Instance, layout: Layout): Layout {
  const verified = verifyLay(instance, layout);
  if (!verified.ok) throw new Error(`a lay failed its check: ${verified.refusal.code}`);
  return layout;
}

/**
 * A layout of the engine as outlines on the roll.
 *
 * @source none: the plan's pieces in the engine's terms
 */
export function placementsOf(
  layout: Pick<Layout, 'placements'>,
  pieces: readonly CutPiece[],
): LayPlan['placements'] {
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
