import { contactsOf } from './contacts.ts';
import { bendOf, type Curve, directionOn, lineCurve, partOf, pointOn, reversedCurve } from './curve.ts';
import { eachNearPair } from './pairs.ts';
import type { Vector } from './point.ts';
import { FLAT_RISE } from './tolerance.ts';
import { WindingIndex } from './windingIndex.ts';

/** A directed curve of one of two closed families, with a tag that its pieces keep. */
export interface Strand {
  readonly curve: Curve;
  readonly family: 0 | 1;
  readonly tag: number;
}

/** A stretch between two junctions. `count` says how often each family runs along it, less how often against. */
export interface Piece {
  readonly curve: Curve;
  readonly tag: number;
  readonly from: number;
  readonly to: number;
  readonly count: [number, number];
}

/** Tells the inside from the outside by how often each family winds round. */
export type Rule = (first: number, second: number) => boolean;

/**
 * The pieces of closed curves that bound the region `rule` picks, directed so that the region lies on their left.
 *
 * Curves are cut wherever they meet, pieces that lie on one another are joined, and each piece is kept when the rule
 * differs across it. Pieces lost or won by rounding would leave a junction with unequal numbers coming and going:
 * then undefined is returned, and the caller tries again with another `same`.
 */
export function boundaryPieces(strands: readonly Strand[], rule: Rule, same: number): Piece[] | undefined {
  const pieces = mergedPieces(cutPieces(strands.flatMap(halved), same), same);
  const index = new WindingIndex(pieces);
  const kept: Piece[] = [];
  for (const piece of pieces) {
    const [right, left] = index.besides(piece);
    const isLeft = rule(left[0], left[1]);
    if (isLeft === rule(right[0], right[1])) continue;
    kept.push(isLeft ? piece : turned(piece));
  }
  return isBalanced(kept) ? kept : undefined;
}

/** Arcs longer than a half turn are halved, so that two ends and a middle tell arcs apart; flat ones become lines. */
function halved(strand: Strand): Strand[] {
  const { curve } = strand;
  if (curve.bulge === 0) return [strand];
  const [a, b] = [pointOn(curve, 0), pointOn(curve, 1)];
  const rise = (Math.abs(curve.bulge) * Math.hypot(b.x - a.x, b.y - a.y)) / 2;
  if (rise < FLAT_RISE && Math.abs(curve.bulge) < 1) return [{ ...strand, curve: lineCurve(a, b) }];
  if (Math.abs(curve.bulge) < 1.001) return [strand];
  const m = pointOn(curve, 0.5);
  return [
    { ...strand, curve: partOf(curve, 0, 0.5, a, m) },
    { ...strand, curve: partOf(curve, 0.5, 1, m, b) },
  ];
}

/** Junctions by place: points within `same` of one another get one number. */
class Junctions {
  readonly points: Vector[] = [];
  readonly #cells = new Map<string, number[]>();
  readonly #same: number;
  constructor(same: number) {
    this.#same = same;
  }
  at(p: Vector): number {
    const size = 4 * this.#same;
    const [i, j] = [Math.floor(p.x / size), Math.floor(p.y / size)];
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++)
        for (const k of this.#cells.get(`${i + di},${j + dj}`) ?? []) {
          const q = this.points[k]!;
          if (Math.hypot(p.x - q.x, p.y - q.y) < this.#same) return k;
        }
    const k = this.points.push(p) - 1;
    const cell = this.#cells.get(`${i},${j}`);
    if (cell) cell.push(k);
    else this.#cells.set(`${i},${j}`, [k]);
    return k;
  }
}

function cutPieces(strands: readonly Strand[], same: number): Piece[] {
  const junctions = new Junctions(same);
  const cuts = strands.map(({ curve }) => [
    { t: 0, at: junctions.at({ x: curve.ax, y: curve.ay }) },
    { t: 1, at: junctions.at({ x: curve.bx, y: curve.by }) },
  ]);
  const curves = strands.map(({ curve }) => curve);
  eachNearPair(curves, same, (i, j) => {
    for (const contact of contactsOf(curves[i]!, curves[j]!, same)) {
      const at = junctions.at(contact);
      cuts[i]!.push({ t: contact.t, at });
      cuts[j]!.push({ t: contact.u, at });
    }
  });
  return strands.flatMap(({ curve, family, tag }, i) => {
    const along = cuts[i]!.sort((a, b) => a.t - b.t);
    const pieces: Piece[] = [];
    let last = along[0]!;
    for (const cut of along) {
      if (cut.at === last.at) continue;
      const part = partOf(curve, last.t, cut.t, junctions.points[last.at]!, junctions.points[cut.at]!);
      const count: [number, number] = family === 0 ? [1, 0] : [0, 1];
      pieces.push({ curve: part, tag, from: last.at, to: cut.at, count });
      last = cut;
    }
    return pieces;
  });
}

/** Pieces that lie on one another become one, with their counts added; those that cancel go. */
function mergedPieces(pieces: readonly Piece[], same: number): Piece[] {
  const byEnds = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = `${Math.min(piece.from, piece.to)},${Math.max(piece.from, piece.to)}`;
    const group = byEnds.get(key);
    const twin = group?.find((other) => liesOn(other.curve, piece.curve, 4 * same));
    if (twin) {
      const sign = twin.from === piece.from ? 1 : -1;
      twin.count[0] += sign * piece.count[0];
      twin.count[1] += sign * piece.count[1];
    } else if (group) group.push(piece);
    else byEnds.set(key, [piece]);
  }
  return [...byEnds.values()].flat().filter(({ count }) => count[0] !== 0 || count[1] !== 0);
}

function liesOn(c: Curve, d: Curve, same: number): boolean {
  const [m, n] = [pointOn(c, 0.5), pointOn(d, 0.5)];
  return Math.hypot(m.x - n.x, m.y - n.y) < same;
}

function turned(piece: Piece): Piece {
  const [first, second] = piece.count;
  return {
    ...{ curve: reversedCurve(piece.curve), tag: piece.tag, from: piece.to, to: piece.from },
    count: [-first, -second],
  };
}

function isBalanced(pieces: readonly Piece[]): boolean {
  const net = new Map<number, number>();
  for (const { from, to } of pieces) {
    net.set(from, (net.get(from) ?? 0) + 1);
    net.set(to, (net.get(to) ?? 0) - 1);
  }
  return [...net.values()].every((n) => n === 0);
}

/** The rings that pieces form. Where rings touch in a point they stay apart: none passes a junction twice. */
export function ringsOf(pieces: readonly Piece[]): Piece[][] {
  const leaving = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const list = leaving.get(piece.from);
    if (list) list.push(piece);
    else leaving.set(piece.from, [piece]);
  }
  const rings: Piece[][] = [];
  const used = new Set<Piece>();
  for (const first of pieces) {
    if (used.has(first)) continue;
    const ring: Piece[] = [];
    for (let piece: Piece | undefined = first; piece && !used.has(piece); ) {
      used.add(piece);
      ring.push(piece);
      const arriving: Piece = piece;
      const free: Piece[] = (leaving.get(piece.to) ?? []).filter((p) => !used.has(p) || p === first);
      piece = free.length < 2 ? free[0] : leftmost(arriving, free);
    }
    rings.push(...simpleRings(ring));
  }
  return rings;
}

/** A ring that comes back to a junction is two that touch there: say an outer one and a hole. */
function simpleRings(ring: readonly Piece[]): Piece[][] {
  const rings: Piece[][] = [];
  let open: Piece[] = [];
  for (const piece of ring) {
    open.push(piece);
    const begin = open.findIndex(({ from }) => from === piece.to);
    if (begin < 0) continue;
    rings.push(open.slice(begin));
    open = open.slice(0, begin);
  }
  return rings;
}

function leftmost(arriving: Piece, leaving: readonly Piece[]): Piece {
  const turns = leaving.map((piece) => ({ piece, turn: turnInto(arriving.curve, piece.curve) }));
  turns.sort((a, b) =>
    Math.abs(a.turn - b.turn) > 1e-7 ? b.turn - a.turn : bendOf(b.piece.curve) - bendOf(a.piece.curve),
  );
  return turns[0]!.piece;
}

/** Left turn from one curve into the next, -π to π. A turn straight back is told left from right by the bends. */
export function turnInto(c: Curve, d: Curve): number {
  const [u, v] = [directionOn(c, 1), directionOn(d, 0)];
  const turn = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  if (Math.abs(turn) < Math.PI - 1e-7) return turn;
  return bendOf(d) < -bendOf(c) ? Math.PI : -Math.PI;
}
