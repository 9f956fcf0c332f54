import { type Point, point, type Vector } from '@panewright/geometry';
import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import { spanLength } from '../curve/biarc.ts';
import type { Chain, Piece } from '../curve/drawing.ts';
import type { FileNote, FileRefusal } from '../fileRefusal.ts';
import { PointGrid } from './pointGrid.ts';

/** Ends nearer than this are one point: files round to a thousandth. mm */
export const SAME_END = 2e-3;

export interface Joined {
  readonly rings: readonly Chain[];
  readonly open: readonly Chain[];
  readonly notes: readonly FileNote[];
}

const startOf = ({ pieces }: Chain) => pieces[0]!.from;
const endOf = ({ pieces }: Chain) => pieces.at(-1)!.to;
export const gapOf = (chain: Chain) =>
  Math.hypot(endOf(chain).x - startOf(chain).x, endOf(chain).y - startOf(chain).y);
export const chainLength = ({ pieces }: Chain) => pieces.reduce((sum, piece) => sum + spanLength(piece), 0);

/**
 * Chains joined end to end into rings. Ends that coincide are joined first, layer by layer, then ends within
 * `closeWithin`, then across layers what is still open. Ends brought together meet half way.
 *
 * @refuses ENDS_MEET where three ends or more are within reach of each other
 */
export function joinChains(chains: readonly Chain[], closeWithin: Millimetre): Result<Joined, FileRefusal> {
  const widest = { count: 0, gap: 0, at: point(0, 0) };
  const tiny: { count: number; longest: number; first: Piece | undefined } = {
    count: 0,
    longest: 0,
    first: undefined,
  };
  let rings: Chain[] = [];
  let open: readonly Chain[] = chains;
  for (const [within, byLayer] of stages(closeWithin)) {
    open = open.filter((chain) => !leaveTiny(chain, within, tiny));
    const next: Chain[] = [];
    for (const group of byLayer ? groups(open) : [open]) {
      const joined = joinWithin(group, within, widest);
      if (!joined.ok) return joined;
      rings = [...rings, ...joined.value.rings];
      next.push(...joined.value.open);
    }
    open = next;
  }
  const notes: FileNote[] = [];
  if (widest.count > 0)
    notes.push({ code: 'GAPS_CLOSED', count: widest.count, widest: mm(widest.gap), at: widest.at });
  if (tiny.first)
    notes.push({
      code: 'TINY_PIECES_LEFT_OUT',
      count: tiny.count,
      longest: mm(tiny.longest),
      place: tiny.first.place,
    });
  return ok({ rings, open, notes });
}

const stages = (closeWithin: number): readonly (readonly [number, boolean])[] => {
  const wide = Math.max(SAME_END, closeWithin);
  return [
    [SAME_END, true],
    [wide, true],
    [SAME_END, false],
    [wide, false],
  ];
};

/** A loose scrap that both of its ends would swallow. */
function leaveTiny(
  chain: Chain,
  within: number,
  tally: { count: number; longest: number; first: Piece | undefined },
): boolean {
  const length = chainLength(chain);
  if (length > within || (length > SAME_END && gapOf(chain) < length / 2)) return false;
  if (length > SAME_END) {
    tally.count++;
    tally.longest = Math.max(tally.longest, length);
    tally.first ??= chain.pieces[0]!;
  }
  return true;
}

function groups(chains: readonly Chain[]): readonly (readonly Chain[])[] {
  const byLayer = new Map<string | undefined, Chain[]>();
  for (const chain of chains) {
    const group = byLayer.get(chain.layer);
    if (group) group.push(chain);
    else byLayer.set(chain.layer, [chain]);
  }
  return [...byLayer.values()];
}

interface End {
  readonly chain: number;
  readonly atStart: boolean;
  readonly at: Vector;
}

function joinWithin(
  chains: readonly Chain[],
  within: number,
  widest: { count: number; gap: number; at: Point },
): Result<{ readonly rings: readonly Chain[]; readonly open: readonly Chain[] }, FileRefusal> {
  const rings: Chain[] = [];
  const rest: Chain[] = [];
  for (const chain of chains) {
    if (gapOf(chain) <= within && chainLength(chain) > 4 * within) rings.push(chain);
    else rest.push(chain);
  }
  const ends = rest.flatMap((chain, index): readonly End[] => [
    { chain: index, atStart: true, at: startOf(chain) },
    { chain: index, atStart: false, at: endOf(chain) },
  ]);
  const partners = partnersOf(ends, within, rest);
  if (!partners.ok) return partners;
  const joined = followed(rest, partners.value);
  rings.push(...joined.rings);
  return ok({
    rings: rings.map((ring) => closed(ring, widest)),
    open: joined.open.map((one) => meeting(one, widest)),
  });
}

/** For each end the one other end within reach, or -1. */
function partnersOf(
  ends: readonly End[],
  within: number,
  chains: readonly Chain[],
): Result<readonly number[], FileRefusal> {
  const grid = new PointGrid(
    ends.map(({ at }) => at),
    Math.max(within, SAME_END),
  );
  const partners: number[] = [];
  for (const [index, { at, chain }] of ends.entries()) {
    const near = grid.within(at, within).filter((other) => other !== index);
    if (near.length > 1) {
      const { layer, pieces } = chains[chain]!;
      const refusal = { code: 'ENDS_MEET', at: point(at.x, at.y), ends: near.length + 1 } as const;
      return refuse({ ...refusal, ...(layer === undefined ? {} : { layer }), place: pieces[0]!.place });
    }
    partners.push(near[0] ?? -1);
  }
  // Reach is mutual, so a partner that has another partner would have been two.
  return ok(partners);
}

function followed(chains: readonly Chain[], partners: readonly number[]) {
  const used = new Set<number>();
  const rings: Chain[] = [];
  const open: Chain[] = [];
  const walk = (first: number, fromStart: boolean): { readonly chain: Chain; readonly isRing: boolean } => {
    const pieces: Piece[] = [];
    let [index, forward] = [first, fromStart];
    for (;;) {
      used.add(index);
      const own = chains[index]!.pieces;
      pieces.push(...(forward ? own : backwards(own)));
      const partner = partners[2 * index + (forward ? 1 : 0)]!;
      const isRing = partner >= 0 && partner >> 1 === first && (partner & 1) === (fromStart ? 0 : 1);
      if (partner < 0 || isRing) return { chain: { ...chains[first]!, pieces }, isRing };
      [index, forward] = [partner >> 1, (partner & 1) === 0];
    }
  };
  const add = (first: number, fromStart: boolean) => {
    const { chain, isRing } = walk(first, fromStart);
    (isRing ? rings : open).push(chain);
  };
  // Open chains are walked from a free end; what is left afterwards goes round.
  chains.forEach((_, i) => {
    if (used.has(i)) return;
    if (partners[2 * i]! < 0) add(i, true);
    else if (partners[2 * i + 1]! < 0) add(i, false);
  });
  chains.forEach((_, i) => {
    if (!used.has(i)) add(i, true);
  });
  return { rings, open };
}

const backwards = (pieces: readonly Piece[]): readonly Piece[] =>
  pieces.toReversed().map(({ from, to, bulge, place }) => ({ from: to, to: from, bulge: -bulge, place }));

/** Pieces whose ends meet exactly: half the gap each. */
function meeting(chain: Chain, widest: { count: number; gap: number; at: Point }): Chain {
  const pieces = [...chain.pieces];
  for (let i = 1; i < pieces.length; i++) bringTogether(pieces, i - 1, i, widest);
  return { ...chain, pieces };
}

function closed(chain: Chain, widest: { count: number; gap: number; at: Point }): Chain {
  const { pieces, ...named } = meeting(chain, widest);
  const ring = [...pieces];
  bringTogether(ring, ring.length - 1, 0, widest);
  return { ...named, pieces: ring };
}

function bringTogether(
  pieces: Piece[],
  before: number,
  after: number,
  widest: { count: number; gap: number; at: Point },
): void {
  const [p, q] = [pieces[before]!.to, pieces[after]!.from];
  const gap = Math.hypot(q.x - p.x, q.y - p.y);
  if (gap === 0) return;
  const at = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  pieces[before] = { ...pieces[before]!, to: at };
  pieces[after] = { ...pieces[after]!, from: at };
  if (gap <= SAME_END) return;
  widest.count++;
  if (gap <= widest.gap) return;
  widest.gap = gap;
  widest.at = point(at.x, at.y);
}
