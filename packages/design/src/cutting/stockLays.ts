import { area, boundsAt } from '@panewright/geometry';
import { checkPlaces, fillSheet, type Instance } from '@panewright/packing';
import { mm, radian } from '@panewright/quantity';
import type { Fabric } from '../document/catalogue.ts';
import type { Offcut } from '../document/offcuts.ts';
import { figure } from '../plan/figure.ts';
import type { CutPiece, LayPlan } from '../plan/plan.ts';
import type { PocketsOf } from './cutPieces.ts';
import { layInstance, placementsOf } from './layPlan.ts';

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
 * @param pockets where given, an offcut takes a panel only with all its pockets, and no pocket without its panel
 * @returns in the order used; each one's `rest` is what is left after it
 * @source none: constructions of the packing engine, the fullest kept
 */
export function stockLays(
  fabric: Fabric,
  pieces: readonly CutPiece[],
  stock: readonly Offcut[],
  spacing: number,
  seed: number,
  pockets: PocketsOf | null,
): readonly StockLay[] {
  const used: StockLay[] = [];
  let rest = pieces;
  let left = stock.slice(0, MOST_LOOKED_AT);
  while (left.length > 0 && rest.length > 0 && used.length < MOST_USED) {
    const of = { fabric, spacing, seed };
    const filled = left.flatMap((offcut) =>
      pockets ? (wholePanels(of, rest, offcut, pockets) ?? []) : (filledOffcut(of, rest, offcut) ?? []),
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

/** An offcut filled with panels, then with the pockets of just those; the smallest panel is left out until all fit. */
function wholePanels(
  of: Of,
  pieces: readonly CutPiece[],
  offcut: Offcut,
  pockets: PocketsOf,
): StockLay | undefined {
  const panels = pieces.filter(({ kind }) => kind === 'panel');
  const first = filledOffcut(of, panels, offcut);
  const counts = new Map(panels.map(({ piece }) => [piece, copiesOn(first, piece)]));
  const byArea = [...panels].sort((a, b) => area(a.outline) - area(b.outline));
  for (;;) {
    // Copies on an offcut are the last of their piece.
    const openings = panels.flatMap(({ piece, openings }) =>
      openings.slice(openings.length - counts.get(piece)!),
    );
    if (openings.length === 0) return undefined;
    const wanted = wantedWith(pieces, counts, openings, pockets);
    const filled = filledOffcut(of, wanted, offcut);
    if (filled && filled.rest.length === 0) return countedIn(filled, pieces, wanted);
    const least = byArea.find(({ piece }) => counts.get(piece)! > 0)!;
    counts.set(least.piece, counts.get(least.piece)! - 1);
  }
}

const copiesOn = (filled: StockLay | undefined, piece: string): number =>
  filled?.lay.placements.filter((one) => one.piece === piece).length ?? 0;

/** Some copies of the panels, with as many pockets as they take. */
function wantedWith(
  pieces: readonly CutPiece[],
  counts: ReadonlyMap<string, number>,
  openings: readonly string[],
  pockets: PocketsOf,
): readonly CutPiece[] {
  const all = openings.flatMap((opening) => pockets.get(opening) ?? []);
  return pieces.flatMap((piece) => {
    const mine = all.filter((one) => one.piece === piece.piece);
    const count =
      piece.kind === 'panel' ? counts.get(piece.piece)! : mine.reduce((sum, one) => sum + one.count, 0);
    return count > 0
      ? [{ ...piece, count, openings: piece.openings.slice(piece.openings.length - count) }]
      : [];
  });
}

/** The same lay with its copies counted among all there are, and what is left of them. */
function countedIn(filled: StockLay, pieces: readonly CutPiece[], taken: readonly CutPiece[]): StockLay {
  const takenOf = (id: string) => taken.find(({ piece }) => piece === id)?.count ?? 0;
  const first = new Map(pieces.map(({ piece, count }) => [piece, count - takenOf(piece)]));
  const placements = filled.lay.placements.map((one) => ({ ...one, copy: one.copy + first.get(one.piece)! }));
  return {
    ...filled,
    lay: { ...filled.lay, placements },
    rest: pieces.flatMap((piece) => {
      const count = first.get(piece.piece)!;
      return count > 0 ? [{ ...piece, count, openings: piece.openings.slice(0, count) }] : [];
    }),
  };
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
    ...layInstance({ ...fabric, selvage: 0 }, offcut.across, fitting, spacing),
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
  ...{ otherWidths: [], binds: [], chain: null, reserved: [], byHand: null, bought: null, leaves: [] },
  offcut: {
    id: offcut.id,
    name: offcut.name,
    place: offcut.place,
    along: offcut.along,
    across: offcut.across,
  },
});
