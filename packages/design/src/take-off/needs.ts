import { length } from '@panewright/geometry';
import type { Materials } from '../derive/materials.ts';
import { fastenerTakeOff } from '../hold/fasteners.ts';
import { behindGlass, stripPiece } from '../hold/holding.ts';
import type { HoldPlan, PanelPlan, PatternPlan } from '../plan/plan.ts';
import { tapePieces, wrapSize } from './wrap.ts';

/** One pattern with all that is made from it: what the take-off counts. */
export interface Made {
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly hold: HoldPlan;
  readonly materials: Materials;
}

/** A length or a count of one catalogue item, and the plan items that ask for it. */
export interface Need {
  amount: number;
  readonly inputs: string[];
}

export type Needs = Map<string, Need>;

export function need(needs: Needs, item: string, amount: number, input: string): void {
  const entry = needs.get(item) ?? { amount: 0, inputs: [] };
  entry.amount += amount;
  if (!entry.inputs.includes(input)) entry.inputs.push(input);
  needs.set(item, entry);
}

/**
 * Seam length of one panel, mm: the edge's stitch lines and a seam round each pocket, back-tacked at both ends.
 *
 * @source common practice, no source
 */
export function seamLength(made: Made, backTack: number): number {
  const edge = made.panel.stitch.reduce((sum, line) => sum + length(line) + 2 * backTack, 0);
  const pockets = made.hold.points.reduce(
    (sum, { pocket }) => sum + (pocket ? length(pocket) + 2 * backTack : 0),
    0,
  );
  return edge + pockets;
}

/**
 * Thread for a seam, both threads of a lockstitch with waste, mm.
 *
 * @param ratio thread per seam length, 2.5 for a two-thread lockstitch
 * @param waste as a ratio, 0.10 to 0.15 usual
 * @source sources.md#lockstitch-ratio
 */
export const threadLength = (seam: number, ratio: number, waste: number): number =>
  seam * ratio * (1 + waste);

/**
 * Thread per seam length of a two-thread lockstitch: a stitch takes twice its length and twice the thickness sewn.
 *
 * @param thickness of all layers sewn together, mm
 * @param stitch mm
 * @source sources.md#lockstitch-consumption
 */
export const lockstitchRatio = (thickness: number, stitch: number): number => 2 + (2 * thickness) / stitch;

/** Magnets: one outside magnet for each hold point of each panel, and its partner behind the glass. */
export function magnetNeeds(all: readonly Made[]): Needs {
  const needs: Needs = new Map();
  for (const { pattern, hold } of all)
    for (const opening of hold.openings) {
      if (opening.by === 'fastener') continue;
      need(needs, opening.outside, hold.points.length, `hold.${pattern.pattern}.points`);
      if (opening.by === 'steel') continue;
      need(needs, opening.inside, hold.points.length, `hold.${pattern.pattern}.points`);
    }
  return needs;
}

/** Wrapped magnets by film and by size: count, strip width, cut length. */
export interface WrapCut {
  readonly film: string;
  readonly magnet: string;
  readonly count: number;
  readonly stripWidth: number;
  readonly cutLength: number;
}

export function wrapCuts(all: readonly Made[]): readonly WrapCut[] {
  const cuts = new Map<string, WrapCut>();
  for (const { pattern, hold, materials } of all) {
    if (materials.holder.kind !== 'magnets') continue;
    const count = hold.points.length * pattern.members.length;
    const size = wrapSize(materials.inside, materials.wrapFilm);
    const key = `${materials.wrapFilm.id} ${materials.inside.id}`;
    const before = cuts.get(key)?.count ?? 0;
    cuts.set(key, {
      film: materials.wrapFilm.id,
      magnet: materials.inside.id,
      count: before + count,
      stripWidth: size.stripWidth,
      cutLength: size.cutLength,
    });
  }
  return [...cuts.values()];
}

/** Mounting tape, mm of each. */
export function tapeNeeds(all: readonly Made[]): Needs {
  const needs: Needs = new Map();
  for (const { pattern, hold, materials } of all) {
    if (materials.holder.kind === 'fastener') continue;
    const { count, length: piece } = tapePieces(behindGlass(materials).inside, materials.tape);
    const magnets = hold.points.length * pattern.members.length;
    need(needs, materials.tape.id, magnets * count * piece, `hold.${pattern.pattern}.points`);
  }
  return needs;
}

/** Steel strip, mm of each: a piece for every point. */
export function steelNeeds(all: readonly Made[]): Needs {
  const needs: Needs = new Map();
  for (const { pattern, hold, materials } of all) {
    const { holder, outside } = materials;
    if (holder.kind !== 'steel') continue;
    const points = hold.points.length * pattern.members.length;
    need(needs, holder.strip.id, points * stripPiece(outside), `hold.${pattern.pattern}.points`);
  }
  return needs;
}

/** Fasteners: sets, or mm of hook and as much of loop. */
export function fastenerNeeds(all: readonly Made[]): Needs {
  const needs: Needs = new Map();
  for (const { pattern, panel, hold, materials } of all) {
    const { holder } = materials;
    if (holder.kind !== 'fastener' || hold.points.length === 0) continue;
    const edge = length(panel.finished);
    const panels = pattern.members.length;
    const { used } = fastenerTakeOff(holder.fastener, hold.points.length, edge, panels);
    need(needs, holder.fastener.id, used, `hold.${pattern.pattern}.points`);
  }
  return needs;
}
