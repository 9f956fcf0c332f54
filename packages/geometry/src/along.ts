import { type Millimetre, mm } from '@panewright/quantity';
import { type Curve, curvesOf, directionOn, distanceTo, nearestFraction, pointOn } from './curve.ts';
import type { Outline, Point } from './outline.ts';
import { point, type Vector } from './point.ts';
import { windingAbout } from './winding.ts';

/** The segment that holds a distance along an outline, and the fraction of it. */
function placeAt(outline: Outline, s: number): { readonly curve: Curve; readonly t: number } {
  const curves = curvesOf(outline);
  const whole = curves.reduce((sum, c) => sum + c.length, 0);
  let left = s - whole * Math.floor(s / whole);
  for (const curve of curves) {
    if (left < curve.length) return { curve, t: left / curve.length };
    left -= curve.length;
  }
  return { curve: curves[0]!, t: 0 };
}

/**
 * The point a distance along the outline from its start.
 *
 * @param s mm; taken round the ring, so any finite number will do
 * @returns mm
 * @source arcs by their angle: sources.md#dxf-bulge
 */
export function pointAt(outline: Outline, s: Millimetre): Point {
  const { curve, t } = placeAt(outline, s);
  const { x, y } = pointOn(curve, t);
  return point(x, y);
}

/**
 * Unit direction of travel a distance along the outline. At a corner, that of the segment that begins there.
 *
 * @param s mm from the start, taken round the ring
 * @source the tangent is square to the radius
 */
export function tangentAt(outline: Outline, s: Millimetre): Vector {
  const { curve, t } = placeAt(outline, s);
  return directionOn(curve, t);
}

/**
 * Unit normal pointing out of the shape. At a corner, that of the segment that begins there.
 *
 * @param s mm from the start, taken round the ring
 * @source right of the direction of travel, the outline being anticlockwise
 */
export function normalAt(outline: Outline, s: Millimetre): Vector {
  const { x, y } = tangentAt(outline, s);
  return { x: y, y: -x };
}

/** The point of an outline nearest to another point. */
export interface Nearest {
  /** Never negative. */
  readonly distance: Millimetre;
  /** How far along the outline it lies. */
  readonly s: Millimetre;
  readonly segment: number;
  readonly at: Point;
}

/**
 * The nearest point of the outline. Arcs exact; of several equally near, the first along the outline.
 *
 * @returns mm
 * @source foot on a line; on an arc the point on the ray from its centre
 */
export function nearest(outline: Outline, p: Point): Nearest {
  const curves = curvesOf(outline);
  let distance = Infinity;
  let segment = 0;
  let before = 0;
  let s = 0;
  curves.forEach((c, i) => {
    const d = distanceTo(c, p);
    if (d < distance) {
      distance = d;
      segment = i;
      s = before + nearestFraction(c, p) * c.length;
    }
    before += c.length;
  });
  const { x, y } = pointOn(curves[segment]!, nearestFraction(curves[segment]!, p));
  return { distance: mm(distance), s: mm(s), segment, at: point(x, y) };
}

/**
 * Distance of a point from the outline: negative inside, positive outside.
 *
 * @returns mm
 * @source nearest point, signed by the winding number: sources.md#sunday-winding
 */
export function signedDistance(outline: Outline, p: Point): Millimetre {
  const curves = curvesOf(outline);
  const distance = curves.reduce((least, c) => Math.min(least, distanceTo(c, p)), Infinity);
  return mm(windingAbout(curves, p) !== 0 ? -distance : distance);
}
