import {
  arcOf,
  combine,
  type Edge,
  edges,
  type Outline,
  offset,
  type Point,
  point,
  type Segment,
  type Vector,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';

/** A magnet's face with what it needs round it: a circle, or a rectangle whose `along` side lies in a stated direction. */
export type Face =
  | { readonly kind: 'disc'; readonly radius: number }
  | { readonly kind: 'block'; readonly along: number; readonly across: number };

/** A face grown by the same room all round. */
export const grown = (face: Face, room: number): Face =>
  face.kind === 'disc'
    ? { kind: 'disc', radius: face.radius + room }
    : { kind: 'block', along: face.along + 2 * room, across: face.across + 2 * room };

/**
 * Where the centre of a face may be so that all of the face lies within an outline.
 *
 * A disc: the outline moved inward by its radius, corners that open rounded. A rectangle: it is the sum of two
 * segments, so the outline is first freed from the sweep of its edge along one, then along the other. Both exact;
 * arcs stay arcs.
 *
 * @param direction of a block's `along` side, radians; a disc has none
 * @returns parts, largest first; empty where the face does not go in
 * @range anticlockwise outlines that do not cross themselves
 * @accuracy corners within 1e-5 mm
 * @source sources.md#minkowski-erosion
 */
export function centresWithin(outline: Outline, face: Face, direction: number): readonly Outline[] {
  if (face.kind === 'disc') {
    const inner = offset(outline, mm(-face.radius), { corners: 'round' });
    if (!inner.ok) throw new Error(`an inward offset was refused: ${inner.refusal.code}`);
    return inner.value;
  }
  const along = {
    x: (Math.cos(direction) * face.along) / 2,
    y: (Math.sin(direction) * face.along) / 2,
  };
  const across = {
    x: (-Math.sin(direction) * face.across) / 2,
    y: (Math.cos(direction) * face.across) / 2,
  };
  return withinSegment(outline, along).flatMap((part) => withinSegment(part, across));
}

/** Centres of a segment from -half to +half that stays within an outline: the outline less the sweep of its edge. */
function withinSegment(outline: Outline, half: Vector): readonly Outline[] {
  let parts: readonly Outline[] = [outline];
  for (const edge of edges(outline))
    for (const sweep of sweepsOf(edge, half)) {
      parts = parts.flatMap((part) => combine(part, sweep, 'subtract').map(({ outer }) => outer));
      if (parts.length === 0) return parts;
    }
  return parts;
}

/** A sweep thinner than this takes nothing away, mm. */
const THIN = 1e-7;

/** The area an edge passes over when moved from -half to +half: an outline for each piece that does not turn back. */
function sweepsOf(edge: Edge, half: Vector): readonly Outline[] {
  return turningPieces(edge, half).flatMap(({ from, to, bulge }) => {
    const across = (to.x - from.x) * half.y - (to.y - from.y) * half.x;
    const reach = Math.hypot(half.x, half.y);
    if (Math.abs(across) < THIN * reach) return [];
    // Taken with the sign that makes the ring anticlockwise.
    const side = Math.sign(across);
    const at = (p: Point, sign: number) => point(p.x + sign * side * half.x, p.y + sign * side * half.y);
    const segments: [Segment, ...Segment[]] = [
      segmentTo(at(to, -1), bulge),
      segmentTo(at(to, 1), 0),
      segmentTo(at(from, 1), -bulge),
      segmentTo(at(from, -1), 0),
    ];
    return [{ segments }];
  });
}

const segmentTo = (to: Point, bulge: number): Segment =>
  bulge === 0 ? { kind: 'line', to } : { kind: 'arc', to, bulge };

/** An arc cut where it runs along the direction; a line as it is. */
function turningPieces(
  edge: Edge,
  half: Vector,
): readonly { readonly from: Point; readonly to: Point; readonly bulge: number }[] {
  const arc = arcOf(edge);
  if (!arc) return [edge];
  // The arc runs along the direction where its radius is square to it.
  const square = Math.atan2(half.x, -half.y);
  const sweep = Math.abs(arc.sweep);
  const cuts = [0, Math.PI]
    .map((turn) => {
      const way = (square + turn - arc.start) * Math.sign(arc.sweep);
      return way - 2 * Math.PI * Math.floor(way / (2 * Math.PI));
    })
    .filter((way) => way > 1e-9 && way < sweep - 1e-9)
    .sort((a, b) => a - b);
  const stops = [0, ...cuts, sweep];
  const at = (way: number) => {
    if (way === 0) return edge.from;
    if (way === sweep) return edge.to;
    const angle = arc.start + Math.sign(arc.sweep) * way;
    return point(arc.centre.x + arc.radius * Math.cos(angle), arc.centre.y + arc.radius * Math.sin(angle));
  };
  return stops.slice(1).map((stop, k) => ({
    from: at(stops[k]!),
    to: at(stop),
    bulge: Math.sign(arc.sweep) * Math.tan((stop - stops[k]!) / 4),
  }));
}
