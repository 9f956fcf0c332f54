import { type Millimetre, mm, type Radian, radian } from '@panewright/quantity';
import { bulgeCurve, type Curve } from './curve.ts';
import type { Outline, Point, Segment } from './outline.ts';
import { point } from './point.ts';

/** A segment together with where it starts. `bulge` is 0 for a line. */
export interface Edge {
  readonly kind: 'line' | 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  readonly length: Millimetre;
}

/** A circular arc by its centre. `start` is the direction from the centre to its first point. */
export interface Arc {
  readonly centre: Point;
  readonly radius: Millimetre;
  readonly start: Radian;
  /** Anticlockwise positive. */
  readonly sweep: Radian;
}

/**
 * The segments of an outline with their start points and lengths, in order: edge i is segment i.
 *
 * @returns lengths in mm
 * @source chord and bulge to radius and sweep: sources.md#dxf-bulge
 */
export function edges(outline: Outline): Edge[] {
  let from = outline.segments.at(-1)!.to;
  return outline.segments.map((segment) => {
    const edge = edgeOf(from, segment);
    from = segment.to;
    return edge;
  });
}

function edgeOf(from: Point, segment: Segment): Edge {
  const bulge = segment.kind === 'arc' ? segment.bulge : 0;
  const { length } = bulgeCurve(from, segment.to, bulge);
  return { kind: segment.kind, from, to: segment.to, bulge, length: mm(length) };
}

/**
 * Centre, radius and sweep of an arc edge.
 *
 * @returns undefined for a line, which has none
 * @accuracy rounding only; a bulge under 1e-9 puts the centre so far off that its last digits are lost
 * @source sources.md#dxf-bulge
 */
export function arcOf(edge: Pick<Edge, 'from' | 'to' | 'bulge'>): Arc | undefined {
  if (edge.bulge === 0) return undefined;
  const c = bulgeCurve(edge.from, edge.to, edge.bulge);
  return { centre: point(c.cx, c.cy), radius: mm(c.r), start: radian(c.start), sweep: radian(c.sweep) };
}

/** The segment that a kernel's curve stands for. */
export function segmentOf(c: Curve): Segment {
  const to = point(c.bx, c.by);
  return c.bulge === 0 ? { kind: 'line', to } : { kind: 'arc', to, bulge: c.bulge };
}

/** An outline from curves that follow one another. The caller guarantees at least one. */
export function outlineOf(curves: readonly Curve[]): Outline {
  const [first, ...rest] = curves.map(segmentOf);
  if (first === undefined) throw new Error('an outline needs at least one edge');
  return { segments: [first, ...rest] };
}

/**
 * The same ring run the other way, from the same start point. An anticlockwise outline becomes clockwise.
 *
 * @returns a ring whose segment 0 is the old last segment turned about
 */
export function reversed(outline: Outline): Outline {
  const turned = edges(outline)
    .toReversed()
    .map(
      ({ from, bulge }): Segment =>
        bulge === 0 ? { kind: 'line', to: from } : { kind: 'arc', to: from, bulge: -bulge },
    );
  return { segments: turned as [Segment, ...Segment[]] };
}

/**
 * The same ring begun at segment `index`.
 *
 * @range any integer; it is taken round the ring
 */
export function startingAt(outline: Outline, index: number): Outline {
  const n = outline.segments.length;
  const first = ((index % n) + n) % n;
  const turned = [...outline.segments.slice(first), ...outline.segments.slice(0, first)];
  return { segments: turned as [Segment, ...Segment[]] };
}

/**
 * The same ring begun at its lowest corner, the leftmost of those equally low (within 1e-6 mm): two outlines that
 * differ only in where they begin become equal.
 */
export function normalisedStart(outline: Outline): Outline {
  const all = edges(outline);
  let best = 0;
  all.forEach(({ from }, i) => {
    const lowest = all[best]!.from;
    const rise = from.y - lowest.y;
    if (rise < -1e-6 || (rise <= 1e-6 && from.x < lowest.x - 1e-6)) best = i;
  });
  return startingAt(outline, best);
}
