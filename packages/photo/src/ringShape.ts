import type { Outline, Segment } from '@panewright/geometry';
import { type Millimetre, mm } from '@panewright/quantity';
import type { Ring } from './fitRing.ts';
import type { PlanePoint } from './planeGrid.ts';
import { headingNear } from './primitive.ts';

/** Signed sweep of a part from its first to its last point, radians; 0 for a line. */
export function sweepOf(ring: Ring, p: number): number {
  const { primitive } = ring.parts[p]!;
  if (primitive.curvature === 0) return 0;
  if (ring.parts.length === 1) return Math.sign(primitive.curvature) * 2 * Math.PI;
  const from = ring.vertices[p]!;
  const to = ring.vertices[(p + 1) % ring.vertices.length]!;
  const turn = headingNear(primitive, to.x, to.y) - headingNear(primitive, from.x, from.y);
  const short = Math.atan2(Math.sin(turn), Math.cos(turn));
  const sign = Math.sign(primitive.curvature);
  return short * sign >= 0 ? short : short + sign * 2 * Math.PI;
}

/** Length of a part, mm. */
export function lengthOf(ring: Ring, p: number): number {
  const from = ring.vertices[p]!;
  const to = ring.vertices[(p + 1) % ring.vertices.length]!;
  const { curvature } = ring.parts[p]!.primitive;
  return curvature === 0 ? Math.hypot(to.x - from.x, to.y - from.y) : Math.abs(sweepOf(ring, p) / curvature);
}

/** Index of the longest straight part, or undefined where all are arcs. */
export function longestSide(ring: Ring): number | undefined {
  let best: number | undefined;
  ring.parts.forEach((part, p) => {
    if (part.kind === 'line' && (best === undefined || lengthOf(ring, p) > lengthOf(ring, best))) best = p;
  });
  return best;
}

/**
 * Extent of a ring along and across a direction (radians): [least u, least v, most u, most v], mm.
 *
 * @accuracy exact for lines and arcs
 * @source elementary geometry: an arc is widest where its normal points along an axis
 */
export function extent(ring: Ring, direction: number): readonly [number, number, number, number] {
  const c = Math.cos(direction);
  const s = Math.sin(direction);
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  const add = (x: number, y: number) => {
    const u = c * x + s * y;
    const v = -s * x + c * y;
    if (u < box[0]) box[0] = u;
    if (v < box[1]) box[1] = v;
    if (u > box[2]) box[2] = u;
    if (v > box[3]) box[3] = v;
  };
  ring.parts.forEach(({ primitive: { x, y, heading, curvature } }, p) => {
    const from = ring.vertices[p]!;
    add(from.x, from.y);
    if (curvature === 0) return;
    const centre = { x: x - Math.sin(heading) / curvature, y: y + Math.cos(heading) / curvature };
    const sweep = sweepOf(ring, p);
    const start = Math.atan2(from.y - centre.y, from.x - centre.x);
    for (let k = 0; k < 4; k++) {
      const angle = direction + (k * Math.PI) / 2;
      const ahead = ((((angle - start) * Math.sign(sweep)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
      const radius = 1 / Math.abs(curvature);
      if (ahead < Math.abs(sweep))
        add(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
    }
  });
  return box;
}

/** Where the outline's own frame lies in the plane: origin and direction of x. */
export interface Frame extends PlanePoint {
  readonly direction: number;
}

/** The ring as an outline in a frame, anticlockwise as the ring runs. A single circle becomes two halves. */
export function toOutline(ring: Ring, frame: Frame): Outline {
  const c = Math.cos(frame.direction);
  const s = Math.sin(frame.direction);
  if (ring.parts.length === 1) return twoHalves(ring, frame);
  const segments = ring.parts.map((_, p): Segment => {
    const { x, y } = ring.vertices[(p + 1) % ring.vertices.length]!;
    const [dx, dy] = [x - frame.x, y - frame.y];
    const to: { x: Millimetre; y: Millimetre } = { x: mm(c * dx + s * dy), y: mm(-s * dx + c * dy) };
    const sweep = sweepOf(ring, p);
    return sweep === 0 ? { kind: 'line', to } : { kind: 'arc', to, bulge: Math.tan(sweep / 4) };
  });
  return { segments: segments as unknown as Outline['segments'] };
}

function twoHalves(ring: Ring, { x, y }: Frame): Outline {
  const { primitive } = ring.parts[0]!;
  const radius = 1 / Math.abs(primitive.curvature);
  const bulge = Math.sign(primitive.curvature);
  const [cx, cy] = [
    primitive.x - Math.sin(primitive.heading) / primitive.curvature - x,
    primitive.y + Math.cos(primitive.heading) / primitive.curvature - y,
  ];
  return {
    segments: [
      { kind: 'arc', to: { x: mm(cx + radius), y: mm(cy) }, bulge },
      { kind: 'arc', to: { x: mm(cx - radius), y: mm(cy) }, bulge },
    ],
  };
}
