import { fitRing, type RingData, type RingFit, type RingPart } from './fitRing.ts';
import type { Piece } from './pieces.ts';
import type { PlanePoint } from './planeGrid.ts';
import { headingNear, type Primitive } from './primitive.ts';

/** Below this turn (rad) two parts are taken to meet tangentially. */
const SHARP_TURN = 0.2;

/** One circle all round, for a porthole. */
export function wholeCircle(path: readonly PlanePoint[], data: RingData): RingFit | undefined {
  const n = path.length;
  const centre = path.reduce((sum, p) => ({ x: sum.x + p.x / n, y: sum.y + p.y / n }), { x: 0, y: 0 });
  const radius = path.reduce((sum, p) => sum + Math.hypot(p.x - centre.x, p.y - centre.y) / n, 0);
  const primitive = { x: centre.x, y: centre.y - radius, heading: 0, curvature: 1 / radius };
  return fitRing(data, [{ primitive, kind: 'arc', joint: 'tangent', from: 0 }], 3);
}

/** Joins the pieces; where they will not join, the shortest is given up for its neighbours, and so on. */
export function startRing(
  data: RingData,
  path: readonly PlanePoint[],
  pieces: readonly Piece[],
): RingFit | undefined {
  let left = [...pieces];
  while (left.length >= 2) {
    const ring = fitRing(data, startParts(path, left));
    if (ring) return ring;
    const sizes = left.map((piece) => piece.to - piece.from);
    const shortest = sizes.indexOf(Math.min(...sizes));
    const half = Math.floor(sizes[shortest]! / 2);
    const before = (shortest + left.length - 1) % left.length;
    const after = (shortest + 1) % left.length;
    left = left
      .map((piece, i) => {
        if (i === before) return { ...piece, to: piece.to + half };
        return i === after ? { ...piece, from: piece.from - sizes[shortest]! + half } : piece;
      })
      .filter((_, i) => i !== shortest);
    left = left.map((piece) =>
      piece.from < 0 ? { ...piece, from: piece.from + path.length, to: piece.to + path.length } : piece,
    );
  }
  return undefined;
}

/** Primitives of loose pieces, and how they meet. */
function startParts(path: readonly PlanePoint[], pieces: readonly Piece[]): RingPart[] {
  const loose = pieces.map(({ from, to, kind }) => loosePrimitive(path, from, to, kind));
  return pieces.map((piece, p) => {
    const before = (p + pieces.length - 1) % pieces.length;
    const corner = path[piece.from % path.length]!;
    return {
      primitive: loose[p]!,
      kind: piece.kind,
      joint: jointOf(loose[before]!, pieces[before]!.kind, loose[p]!, piece.kind, corner),
      from: piece.from % path.length,
    };
  });
}

export function jointOf(
  a: Primitive,
  aKind: string,
  b: Primitive,
  bKind: string,
  at: PlanePoint,
): 'tangent' | 'sharp' {
  if (aKind === 'line' && bKind === 'line') return 'sharp';
  return Math.abs(turnBetween(a, b, at)) < SHARP_TURN ? 'tangent' : 'sharp';
}

export function turnBetween(a: Primitive, b: Primitive, { x, y }: PlanePoint): number {
  const turn = headingNear(b, x, y) - headingNear(a, x, y);
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

/** Least-squares line or circle of a stretch of the path through its ends and middle: a start for the fit. */
function loosePrimitive(
  path: readonly PlanePoint[],
  from: number,
  to: number,
  kind: 'line' | 'arc',
): Primitive {
  const at = (row: number) => path[((row % path.length) + path.length) % path.length]!;
  const [p, q] = [at(from), at(to - 1)];
  const middle = at((from + to) >> 1);
  const chord = Math.hypot(q.x - p.x, q.y - p.y) || 1;
  const heading = Math.atan2(q.y - p.y, q.x - p.x);
  const rise = ((q.x - p.x) * (middle.y - p.y) - (q.y - p.y) * (middle.x - p.x)) / chord;
  const curvature = kind === 'line' ? 0 : (-8 * rise) / (chord * chord + 4 * rise * rise);
  return { x: middle.x, y: middle.y, heading, curvature };
}
