import {
  adopt,
  checkPlaces,
  type Instance,
  type InstanceRefusal,
  type Layout,
  type LayRefusal,
  layoutOfPlaces,
  type PackingState,
  packAround,
  pushTogether,
  startPacking,
  step,
} from '@panewright/packing';
import { ok, type Result } from '@panewright/quantity';
import type { Fabric } from '../document/catalogue.ts';
import type { LaidPlace } from '../document/layByHand.ts';
import type { ReservedPlace } from '../document/reservedPlaces.ts';
import type { CutPiece, LaidCopyName, LayPlan } from '../plan/plan.ts';
import { laidOf, placedByHand } from './handLay.ts';
import { layInstance, placementsOf } from './layPlan.ts';

export type { LayRefusal };

/** What a lay is of: the pieces of one cloth, on one roll. */
export interface LayFrame {
  readonly fabric: Fabric;
  readonly rollWidth: number;
  /** Of this cloth only. */
  readonly pieces: readonly CutPiece[];
  /** Least distance between two pieces, mm. */
  readonly spacing: number;
  /** Where on rolls of this cloth nothing may lie. */
  readonly reserved?: readonly ReservedPlace[];
}

const known = new WeakMap<LayFrame, Instance>();

/**
 * Made once for a frame: a dragged piece is checked many times a second.
 *
 * @source none: see layInstance
 */
export function instanceOf(frame: LayFrame): Instance {
  const found = known.get(frame);
  if (found) return found;
  const made = layInstance(frame.fabric, frame.rollWidth, frame.pieces, frame.spacing, frame.reserved);
  known.set(frame, made);
  return made;
}

/**
 * The places of a plan's lay, as a document keeps them.
 *
 * @source none: the same places by other names
 */
export function laidPlaces(lay: LayPlan, pieces: readonly CutPiece[]): readonly LaidPlace[] {
  const held = lay.byHand?.held ?? [];
  return lay.placements.map(({ piece, copy, place }) => ({
    of: laidOf(pieces, { piece, copy }),
    turn: turnOf(pieces.find((one) => one.piece === piece)!, (place.angle * 180) / Math.PI),
    flipped: place.mirrored,
    x: place.shift.x,
    y: place.shift.y,
    held: held.some((one) => one.piece === piece && one.copy === copy),
  }));
}

/** The allowed turn that an angle is, rounding apart. */
function turnOf({ turns }: CutPiece, degrees: number): number {
  const off = (turn: number) => Math.abs(((((turn - degrees) % 360) + 540) % 360) - 180);
  return turns.reduce((best, turn) => (off(turn) < off(best) ? turn : best));
}

/**
 * Whether some places are such as a lay may have, copies left out being left out of account.
 *
 * @returns length of cloth they take, mm
 * @refuses every LayRefusal but LAY_DEMAND_NOT_MET, by the plan's names of pieces
 * @source none: see checkPlaces of the packing engine
 */
export const tryPlaces = (frame: LayFrame, places: readonly LaidPlace[]): Result<number, LayRefusal> =>
  checkPlaces(instanceOf(frame), placedByHand(frame.pieces, places));

/**
 * Outlines on the roll of some places.
 *
 * @source none: the plan's pieces moved
 */
export const drawPlaces = (frame: LayFrame, places: readonly LaidPlace[]): LayPlan['placements'] =>
  placementsOf({ placements: placedByHand(frame.pieces, places) }, frame.pieces);

/**
 * The places with the pieces pushed together: each slides back to the cut end and down across the cloth until it
 * touches; none turns or passes another. What is held moves too, and stays held.
 *
 * @refuses as tryPlaces, where they lie as no lay may
 * @source none: see pushTogether of the packing engine
 */
export function pushPlaces(
  frame: LayFrame,
  places: readonly LaidPlace[],
): Result<readonly LaidPlace[], InstanceRefusal | LayRefusal> {
  const known = places.filter((place) => placedByHand(frame.pieces, [place]).length > 0);
  const pushed = pushTogether(instanceOf(frame), placedByHand(frame.pieces, known));
  if (!pushed.ok) return pushed;
  const { placements } = pushed.value;
  return ok(known.map((place, k) => ({ ...place, x: placements[k]!.x, y: placements[k]!.y })));
}

/** A search for a shorter lay, at rest. */
export interface LaySearch {
  readonly frame: LayFrame;
  readonly length: number;
  /** No lay on this roll can be shorter, mm. */
  readonly bound: number;
  /** True when no shorter lay is to be found. */
  readonly done: boolean;
  readonly places: readonly LaidPlace[];
  readonly inner: {
    readonly held: readonly LaidPlace[];
    readonly state: PackingState;
    readonly turn: number;
  };
}

/**
 * A search that begins with the places there are, where they are all a lay needs; what is held stays.
 *
 * @param plan evaluations the caller means to spend (some two million a second)
 * @refuses every InstanceRefusal
 * @source none: see the packing engine
 */
export function startLaySearch(
  frame: LayFrame,
  places: readonly LaidPlace[],
  seed: number,
  plan: number,
): Result<LaySearch, InstanceRefusal | LayRefusal> {
  const instance = instanceOf(frame);
  const started = startPacking(instance, seed, plan);
  if (!started.ok) return started;
  const given = givenLayout(frame, instance, places);
  const held = places.filter((place) => place.held);
  if (held.length > 0) {
    const first = given ? ok(given) : packAround(instance, placedByHand(frame.pieces, held), 0, seed);
    return first.ok ? ok(searchAt(frame, held, started.value, first.value, 0)) : first;
  }
  const known = given ? adopt(started.value, given) : started;
  if (!known.ok) return known;
  return ok(searchAt(frame, [], known.value, known.value.best, 0));
}

/**
 * The search carried on by about `evaluations`. Nothing it holds is changed.
 *
 * @source none: see the packing engine
 */
export function stepLaySearch(search: LaySearch, evaluations: number): LaySearch {
  if (search.done) return search;
  const { held, state, turn } = search.inner;
  if (held.length === 0) {
    const next = step(state, evaluations);
    return searchAt(search.frame, held, next, next.best, turn + 1);
  }
  const kept = placedByHand(search.frame.pieces, held);
  const tried = packAround(state.instance, kept, evaluations, state.seed + turn + 1);
  if (!tried.ok) throw new Error(`what was held cannot be held: ${tried.refusal.code}`);
  const better = tried.value.length < search.length - 1e-6;
  if (!better) return { ...search, inner: { held, state, turn: turn + 1 } };
  return searchAt(search.frame, held, state, tried.value, turn + 1);
}

/** The places as a whole layout, or null where they are not one. */
function givenLayout(frame: LayFrame, instance: Instance, places: readonly LaidPlace[]): Layout | null {
  const placements = placedByHand(frame.pieces, places);
  const wanted = instance.pieces.reduce((sum, { demand }) => sum + demand, 0);
  if (placements.length !== wanted) return null;
  const whole = layoutOfPlaces(instance, placements);
  return whole.ok ? whole.value : null;
}

function searchAt(
  frame: LayFrame,
  held: readonly LaidPlace[],
  state: PackingState,
  layout: Layout,
  turn: number,
): LaySearch {
  const isHeld = ({ piece, copy }: LaidCopyName) => {
    const of = JSON.stringify(laidOf(frame.pieces, { piece, copy }));
    return held.some((place) => JSON.stringify(place.of) === of);
  };
  const places = layout.placements.map(({ pieceId, copy, rotationDeg, flipped, x, y }): LaidPlace => {
    const name = { piece: String(pieceId), copy };
    return { of: laidOf(frame.pieces, name), turn: rotationDeg, flipped, x, y, held: isHeld(name) };
  });
  const done = layout.length <= state.bound * (1 + 1e-9);
  return { frame, length: layout.length, bound: state.bound, done, places, inner: { held, state, turn } };
}
