import { boundaryPieces, type Piece, type Rule, ringsOf, type Strand, turnInto } from './arrangement.ts';
import { arcCurve, type Curve, lineCurve } from './curve.ts';
import { SAME_POINT } from './tolerance.ts';

/** One edge of a ring found by the kernel, with the tag of the strand it came from. */
export interface Traced {
  readonly curve: Curve;
  readonly tag: number;
}

/** Rings of a region: `outer` anticlockwise, `holes` clockwise. */
export interface TracedRegion {
  readonly outer: readonly Traced[][];
  readonly holes: readonly Traced[][];
}

/** Tried in turn: rounding that strands a piece at one reach seldom does so at the next. All far below 0.01 mm. */
const REACHES = [SAME_POINT, 10 * SAME_POINT, SAME_POINT / 10, 100 * SAME_POINT, 1000 * SAME_POINT];

/**
 * The region that `rule` picks from closed curves, as rings of lines and arcs. Rings thinner than rounding are left
 * out. Throws when no reach gives closed rings, which would be a fault of the kernel.
 */
export function regionOf(strands: readonly Strand[], rule: Rule): TracedRegion {
  for (const same of REACHES) {
    const pieces = boundaryPieces(
      strands.filter(({ curve }) => curve.length > same),
      rule,
      same,
    );
    if (pieces) return sorted(ringsOf(pieces), same);
  }
  throw new Error('the pieces of a region do not close');
}

function sorted(rings: readonly Piece[][], same: number): TracedRegion {
  const outer: Traced[][] = [];
  const holes: Traced[][] = [];
  for (const ring of rings) {
    const [area, around] = measure(ring);
    if (Math.abs(area) <= 4 * same * around) continue;
    (area > 0 ? outer : holes).push(joined(ring));
  }
  return { outer, holes };
}

function measure(ring: readonly Traced[]): [area: number, around: number] {
  const { ax: ox, ay: oy } = ring[0]!.curve;
  let area = 0;
  let around = 0;
  for (const { curve: c } of ring) {
    area += ((c.ax - ox) * (c.by - oy) - (c.bx - ox) * (c.ay - oy)) / 2;
    if (c.bulge !== 0) area += (c.r * c.r * (c.sweep - Math.sin(c.sweep))) / 2;
    around += c.length;
  }
  return [area, around];
}

/** Neighbouring pieces of one strand become one edge again. The ring then starts at a true change of edge. */
function joined(ring: readonly Traced[]): Traced[] {
  const begin = ring.findIndex((piece, i) => !continues(ring.at(i - 1)!, piece));
  const order = begin > 0 ? [...ring.slice(begin), ...ring.slice(0, begin)] : ring;
  const edges: Traced[] = [];
  for (const { curve, tag } of order) {
    const last = edges.at(-1);
    const whole = last && continues(last, { curve, tag }) ? union(last.curve, curve) : undefined;
    if (whole) edges[edges.length - 1] = { curve: whole, tag };
    else edges.push({ curve, tag });
  }
  return edges;
}

function continues(a: Traced, b: Traced): boolean {
  if (a.tag !== b.tag || (a.curve.bulge === 0) !== (b.curve.bulge === 0)) return false;
  return Math.abs(turnInto(a.curve, b.curve)) < 1e-3;
}

function union(c: Curve, d: Curve): Curve | undefined {
  const [a, b] = [
    { x: c.ax, y: c.ay },
    { x: d.bx, y: d.by },
  ];
  if (c.bulge === 0) return lineCurve(a, b);
  const sweep = c.sweep + d.sweep;
  // Two halves of a full circle stay two edges: one edge could not say which way it goes.
  if (Math.abs(sweep) > 1.99 * Math.PI) return undefined;
  return arcCurve({ x: c.cx, y: c.cy }, c.r, a, b, sweep);
}
