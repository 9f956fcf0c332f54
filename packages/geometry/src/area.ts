import { type Millimetre, mm, mm2, type SquareMillimetre } from '@panewright/quantity';
import { curvesOf } from './curve.ts';
import type { Outline, Point } from './outline.ts';
import { point } from './point.ts';

/**
 * Area enclosed by an outline. Exact: arcs are not flattened.
 *
 * @returns mm²; negative if the ring runs clockwise
 * @range rings that do not cross themselves; the caller guarantees it
 * @accuracy rounding only, about 1e-15 of the square of the distance from the origin
 * @source shoelace sum plus circular segments: sources.md#bourke-1988, #dxf-bulge
 */
export function area(outline: Outline): SquareMillimetre {
  return mm2(moments(outline).area);
}

/**
 * Length around an outline, along its arcs.
 *
 * @returns mm
 * @accuracy rounding only
 * @source radius times sweep: sources.md#dxf-bulge
 */
export function length(outline: Outline): Millimetre {
  let sum = 0;
  for (const curve of curvesOf(outline)) sum += curve.length;
  return mm(sum);
}

/**
 * Centre of area of an outline, arcs exact.
 *
 * @returns a point in mm
 * @range rings of area other than 0
 * @source polygon centroid plus centroid of a circular segment, 4 r sin³(φ/2) / (3 (φ - sin φ)):
 *   sources.md#bourke-1988, #segment-centroid
 */
export function centroid(outline: Outline): Point {
  const { area: whole, x, y } = moments(outline);
  return point(x / whole, y / whole);
}

/** Area and first moments. Taken about the first point so that a ring far from the origin loses no digits. */
function moments(outline: Outline): { area: number; x: number; y: number } {
  const { x: ox, y: oy } = outline.segments.at(-1)!.to;
  let sum = 0;
  let mx = 0;
  let my = 0;
  for (const c of curvesOf(outline)) {
    const [ax, ay, bx, by] = [c.ax - ox, c.ay - oy, c.bx - ox, c.by - oy];
    const half = (ax * by - bx * ay) / 2;
    sum += half;
    mx += (half * (ax + bx)) / 3;
    my += (half * (ay + by)) / 3;
    if (c.bulge === 0) continue;
    const cap = (c.r * c.r * (c.sweep - Math.sin(c.sweep))) / 2;
    // First moment of the cap about the centre, along the bisector: (2/3) r³ sin³(sweep / 2); the sign is the cap's.
    const reach = (2 / 3) * (c.r * Math.sin(c.sweep / 2)) ** 3;
    const middle = c.start + c.sweep / 2;
    sum += cap;
    mx += cap * (c.cx - ox) + reach * Math.cos(middle);
    my += cap * (c.cy - oy) + reach * Math.sin(middle);
  }
  return { area: sum, x: mx + sum * ox, y: my + sum * oy };
}
