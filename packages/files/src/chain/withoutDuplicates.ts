import { area, edges, length, nearest, type Outline, type Point, type Vector } from '@panewright/geometry';
import type { Chain, Piece } from '../curve/drawing.ts';
import type { FileNote } from '../fileRefusal.ts';
import { SAME_END } from './joinChains.ts';
import type { PlacedOutline } from './ringOutline.ts';

/**
 * Chains without those drawn twice: the same ends, either way round, and the same middle, within 0.002 mm, on the same
 * layer. Only chains of one piece are compared here; whole outlines are compared once they are closed.
 */
export function withoutDuplicateChains(chains: readonly Chain[]): {
  readonly chains: readonly Chain[];
  readonly notes: readonly FileNote[];
} {
  const seen = new Map<string, Chain[]>();
  const left: Chain[] = [];
  const kept = chains.filter((chain) => {
    const [piece, ...more] = chain.pieces;
    if (!piece || more.length > 0) return true;
    const middle = middleOf(piece);
    const alike = around(middle, chain.layer).flatMap((key) => seen.get(key) ?? []);
    if (alike.some((other) => isSamePiece(other.pieces[0]!, piece))) {
      left.push(chain);
      return false;
    }
    const key = around(middle, chain.layer)[0]!;
    const held = seen.get(key);
    if (held) held.push(chain);
    else seen.set(key, [chain]);
    return true;
  });
  return { chains: kept, notes: noteOf(left.map(({ pieces }) => pieces[0]!)) };
}

const noteOf = (left: readonly { readonly place: Piece['place'] }[]): readonly FileNote[] =>
  left.length === 0 ? [] : [{ code: 'DUPLICATES_LEFT_OUT', count: left.length, place: left[0]!.place }];

/** Keys of the cell of a point, first, and of the cells around it. */
function around({ x, y }: Vector, layer: string | undefined): readonly string[] {
  const [i, j] = [Math.floor(x / SAME_END), Math.floor(y / SAME_END)];
  const steps = [0, -1, 1];
  return steps.flatMap((di) => steps.map((dj) => `${i + di} ${j + dj} ${layer ?? ''}`));
}

/** @source rise of the arc over its chord, bulge times half the chord: sources.md#dxf-bulge */
const middleOf = ({ from, to, bulge }: Omit<Piece, 'place'>): Vector => ({
  x: (from.x + to.x + bulge * (to.y - from.y)) / 2,
  y: (from.y + to.y - bulge * (to.x - from.x)) / 2,
});

const near = (p: Vector, q: Vector) => Math.hypot(p.x - q.x, p.y - q.y) <= SAME_END;

const isSamePiece = (a: Piece, b: Piece) =>
  near(middleOf(a), middleOf(b)) &&
  ((near(a.from, b.from) && near(a.to, b.to)) || (near(a.from, b.to) && near(a.to, b.from)));

/** Outlines without those that lie on another within 0.01 mm all round; the first of them stays. */
export function withoutDuplicateOutlines(outlines: readonly PlacedOutline[]): {
  readonly outlines: readonly PlacedOutline[];
  readonly notes: readonly FileNote[];
} {
  const seen = new Map<string, PlacedOutline[]>();
  const left: PlacedOutline[] = [];
  const kept = outlines.filter((one) => {
    const key = `${Math.round(lowest(one) / 50)}`;
    const neighbours = [-1, 0, 1].flatMap((step) => seen.get(`${Number(key) + step}`) ?? []);
    if (neighbours.some((other) => coincide(one, other))) {
      left.push(one);
      return false;
    }
    seen.set(key, [...(seen.get(key) ?? []), one]);
    return true;
  });
  return { outlines: kept, notes: noteOf(left) };
}

const lowest = ({ outline }: PlacedOutline) =>
  outline.segments.reduce((least, { to }) => Math.min(least, to.y), Number.POSITIVE_INFINITY);

const ON_ANOTHER = 0.01;
/** Edges looked at, spread evenly: the areas and lengths are compared besides. */
const LOOKED_AT = 48;

function coincide({ outline: a }: PlacedOutline, { outline: b }: PlacedOutline): boolean {
  const around = length(a);
  if (Math.abs(around - length(b)) > ON_ANOTHER * (a.segments.length + b.segments.length)) return false;
  return Math.abs(area(a) - area(b)) <= ON_ANOTHER * around && isOn(a, b) && isOn(b, a);
}

function isOn(outline: Outline, other: Outline): boolean {
  const all = edges(outline);
  const stride = Math.ceil(all.length / LOOKED_AT);
  return all.every(({ from, to, bulge }, index) => {
    if (index % stride !== 0) return true;
    return [to, middleOf({ from, to, bulge }) as Point].every(
      (p) => nearest(other, p).distance <= ON_ANOTHER,
    );
  });
}
