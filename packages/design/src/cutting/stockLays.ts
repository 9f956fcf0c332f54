import { area, boundsAt } from '@panewright/geometry';
import { checkPlaces, fillSheet, type Instance } from '@panewright/packing';
import { mm, radian } from '@panewright/quantity';
import type { Fabric } from '../document/catalogue.ts';
import type { Offcut } from '../document/offcuts.ts';
import type { ReservedPlace } from '../document/reservedPlaces.ts';
import { figure } from '../plan/figure.ts';
import type { CutPiece, LayPlan } from '../plan/plan.ts';
import type { PocketsOf } from './cutPieces.ts';
import { layInstance, placementsOf } from './layPlan.ts';
import type { Together } from './together.ts';

/** What an offcut of the stock takes off the roll. */
export interface StockLay {
  readonly offcut: Offcut;
  readonly lay: Omit<LayPlan, 'lay'>;
  /** The pieces that are still to be cut from something else. */
  readonly rest: readonly CutPiece[];
}

/** Ways of filling tried on each offcut. */
const TRIES = 30;
/** Offcuts looked at for one cloth, and used at most. */
const MOST_LOOKED_AT = 40;
const MOST_USED = 6;

/**
 * Offcuts filled one after another, each time the one that takes most of what is left to be cut.
 *
 * @param together where given, an offcut takes a group only whole, with all its pockets, and no pocket without its panel
 * @returns in the order used; each one's `rest` is what is left after it
 * @source none: constructions of the packing engine, the fullest kept
 */
export function stockLays(
  fabric: Fabric,
  pieces: readonly CutPiece[],
  stock: readonly Offcut[],
  spacing: number,
  seed: number,
  together: Together | null,
): readonly StockLay[] {
  const used: StockLay[] = [];
  let rest = pieces;
  let left = stock.slice(0, MOST_LOOKED_AT);
  while (left.length > 0 && rest.length > 0 && used.length < MOST_USED) {
    const of = { fabric, spacing, seed };
    const filled = left.flatMap((offcut) =>
      together ? (wholeGroups(of, rest, offcut, together) ?? []) : (filledOffcut(of, rest, offcut) ?? []),
    );
    if (filled.length === 0) break;
    const best = filled.reduce((a, b) => (areaOn(b) > areaOn(a) ? b : a));
    used.push(best);
    rest = best.rest;
    left = left.filter(({ id }) => id !== best.offcut.id);
  }
  return used;
}

const areaOn = ({ offcut, lay }: StockLay): number => lay.density * offcut.along * offcut.across;

interface Of {
  readonly fabric: Fabric;
  readonly spacing: number;
  readonly seed: number;
}

/** Groups tried alone on an offcut where those that its fullest filling began do not fit whole. */
const MOST_ALONE = 6;

/** An offcut filled with whole groups: panels first, then with their pockets; the smallest group is left out until all fit. */
function wholeGroups(
  of: Of,
  pieces: readonly CutPiece[],
  offcut: Offcut,
  { groups, pockets }: Together,
): StockLay | undefined {
  const panels = pieces.filter(({ kind }) => kind === 'panel');
  const first = filledOffcut(of, panels, offcut);
  if (!first) return undefined;
  const left = new Set(panels.flatMap(({ openings }) => openings));
  const bySize = groups
    .filter((group) => group.every((opening) => left.has(opening)))
    .map((group) => ({ group, size: groupArea(panels, group) }))
    .filter(({ size }) => size <= offcut.along * offcut.across)
    .sort((a, b) => b.size - a.size)
    .map(({ group }) => group);
  const begun = withinCounts(panels, bySize, first);
  const laid = (chosen: readonly (readonly string[])[]) =>
    chosen.length > 0 ? laidWhole(of, pieces, offcut, chosen.flat(), pockets) : undefined;
  for (let count = begun.length; count > 0; count--) {
    const found = laid(begun.slice(0, count));
    if (found) return found;
  }
  for (const group of bySize.filter((one) => one !== begun[0]).slice(0, MOST_ALONE)) {
    const found = laid([group]);
    if (found) return found;
  }
  return undefined;
}

const pieceOf = (panels: readonly CutPiece[], opening: string): CutPiece =>
  panels.find(({ openings }) => openings.includes(opening))!;

const groupArea = (panels: readonly CutPiece[], group: readonly string[]): number =>
  group.reduce((sum, opening) => sum + area(pieceOf(panels, opening).outline), 0);

/** The largest groups that are within what a filling has of each panel piece. */
function withinCounts(
  panels: readonly CutPiece[],
  groups: readonly (readonly string[])[],
  { lay }: StockLay,
): readonly (readonly string[])[] {
  const spare = new Map<string, number>();
  for (const { piece } of lay.placements) spare.set(piece, (spare.get(piece) ?? 0) + 1);
  return groups.filter((group) => {
    const needs = new Map<string, number>();
    for (const opening of group) {
      const { piece } = pieceOf(panels, opening);
      needs.set(piece, (needs.get(piece) ?? 0) + 1);
    }
    const fits = [...needs].every(([piece, count]) => (spare.get(piece) ?? 0) >= count);
    if (fits) for (const [piece, count] of needs) spare.set(piece, spare.get(piece)! - count);
    return fits;
  });
}

/** These panels and all their pockets on an offcut; undefined where something is left over. */
function laidWhole(
  of: Of,
  pieces: readonly CutPiece[],
  offcut: Offcut,
  openings: readonly string[],
  pockets: PocketsOf,
): StockLay | undefined {
  const wanted = wantedWith(pieces, openings, pockets);
  const filled = filledOffcut(of, wanted, offcut);
  return filled && filled.rest.length === 0 ? countedIn(filled, pieces, wanted) : undefined;
}

/** The panels of some openings, with as many pockets as they take. */
function wantedWith(
  pieces: readonly CutPiece[],
  chosen: readonly string[],
  pockets: PocketsOf,
): readonly CutPiece[] {
  const all = chosen.flatMap((opening) => pockets.get(opening) ?? []);
  return pieces.flatMap((piece) => {
    const openings = piece.openings.filter((one) => chosen.includes(one));
    const mine = all.filter((one) => one.piece === piece.piece);
    const count = piece.kind === 'panel' ? openings.length : mine.reduce((sum, one) => sum + one.count, 0);
    return count > 0 ? [{ ...piece, count, openings }] : [];
  });
}

/** The same lay with its copies counted as the last of what there is, and what is left. */
function countedIn(filled: StockLay, pieces: readonly CutPiece[], taken: readonly CutPiece[]): StockLay {
  const takenOf = (id: string) => taken.find(({ piece }) => piece === id);
  const first = new Map(pieces.map(({ piece, count }) => [piece, count - (takenOf(piece)?.count ?? 0)]));
  const placements = filled.lay.placements.map((one) => ({ ...one, copy: one.copy + first.get(one.piece)! }));
  return {
    ...filled,
    lay: { ...filled.lay, placements },
    rest: pieces.flatMap((piece) => {
      const count = first.get(piece.piece)!;
      const gone = takenOf(piece.piece)?.openings ?? [];
      return count > 0
        ? [{ ...piece, count, openings: piece.openings.filter((one) => !gone.includes(one)) }]
        : [];
    }),
  };
}

/** The pieces with their openings in the order of their copies: those on the roll, then those on each offcut, the first one last. */
export function inOrderOfCopies(pieces: readonly CutPiece[], used: readonly StockLay[]): readonly CutPiece[] {
  const openingsIn = (list: readonly CutPiece[], id: string) =>
    list.find(({ piece }) => piece === id)?.openings ?? [];
  return pieces.map((piece) => {
    let left = piece.openings;
    let onOffcuts: readonly string[] = [];
    for (const { rest } of used) {
      const still = openingsIn(rest, piece.piece);
      onOffcuts = [...left.filter((one) => !still.includes(one)), ...onOffcuts];
      left = still;
    }
    return { ...piece, openings: [...left, ...onOffcuts] };
  });
}

function filledOffcut(
  { fabric, spacing, seed }: Of,
  pieces: readonly CutPiece[],
  offcut: Offcut,
): StockLay | undefined {
  const fitting = pieces.flatMap((piece) => {
    const turns = piece.turns.filter((turn) => fitsIn(piece, turn, offcut));
    return turns.length > 0 ? [{ ...piece, turns }] : [];
  });
  if (fitting.length === 0) return undefined;
  const instance: Instance = {
    ...layInstance({ ...fabric, selvage: 0 }, offcut.across, fitting, spacing, holesOf(offcut)),
    margin: { side: mm(0), end: mm(0) },
  };
  const filled = fillSheet(instance, mm(offcut.along), seed, TRIES);
  // What is too wide for it was left out before; any other refusal is a piece that no lay takes, which the roll tells.
  if (!filled.ok || filled.value.placements.length === 0) return undefined;
  const checked = checkPlaces(instance, filled.value.placements);
  if (!checked.ok || checked.value > offcut.along + 1e-6)
    throw new Error(`a lay on an offcut failed its check: ${checked.ok ? 'too long' : checked.refusal.code}`);
  const taken = new Map<string, number>();
  for (const { pieceId } of filled.value.placements)
    taken.set(String(pieceId), (taken.get(String(pieceId)) ?? 0) + 1);
  // Copies on the offcut are the last of their piece, so that those on the roll are still counted from the first.
  const first = new Map(pieces.map(({ piece, count }) => [piece, count - (taken.get(piece) ?? 0)]));
  const placements = placementsOf(filled.value, fitting).map((one) => ({
    ...one,
    copy: one.copy + first.get(one.piece)!,
  }));
  return {
    offcut,
    lay: layOn(fabric, offcut, { placements, density: filled.value.density, spacing, length: checked.value }),
    rest: pieces.flatMap((piece) => {
      const count = first.get(piece.piece)!;
      return count > 0 ? [{ ...piece, count, openings: piece.openings.slice(0, count) }] : [];
    }),
  };
}

/** Holes and faults, as places of a roll as wide as the offcut. */
const holesOf = ({ fabric, across, holes = [] }: Offcut): readonly ReservedPlace[] =>
  holes.map((hole) => ({ ...hole, fabric, rollWidth: across, why: 'flaw', notes: '' }));

function fitsIn(piece: CutPiece, turn: number, { along, across }: Offcut): boolean {
  const box = boundsAt(piece.outline, radian((turn * Math.PI) / 180));
  return box.width <= along && box.height <= across;
}

interface On {
  readonly placements: LayPlan['placements'];
  readonly density: number;
  readonly spacing: number;
  readonly length: number;
}

const layOn = (fabric: Fabric, offcut: Offcut, on: On): Omit<LayPlan, 'lay'> => ({
  fabric: fabric.id,
  rollWidth: offcut.across,
  usableWidth: offcut.across,
  selvage: 0,
  spacing: on.spacing,
  length: figure(on.length, 'mm', 'computed', 'lay', [`catalogue.offcuts.${offcut.id}`]),
  density: on.density,
  leastLength: 0,
  placements: on.placements,
  ...{
    otherWidths: [],
    binds: [],
    chain: null,
    reserved: holesOf(offcut),
    byHand: null,
    bought: null,
    leaves: [],
  },
  offcut: {
    id: offcut.id,
    name: offcut.name,
    place: offcut.place,
    along: offcut.along,
    across: offcut.across,
  },
});
