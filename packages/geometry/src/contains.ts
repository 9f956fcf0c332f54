import { type Millimetre, mm } from '@panewright/quantity';
import { curvesOf, distanceTo } from './curve.ts';
import type { Outline, Point } from './outline.ts';
import { SAME_POINT } from './tolerance.ts';
import { windingAbout } from './winding.ts';

export type Place = 'inside' | 'outside' | 'boundary';

/**
 * Where a point lies. Arcs exact.
 *
 * @param tolerance mm; a point this near the edge is on the boundary
 * @source winding number: crossings of the chords plus the caps between chord and arc, sources.md#sunday-winding
 */
export function contains(outline: Outline, p: Point, tolerance: Millimetre = mm(SAME_POINT)): Place {
  const curves = curvesOf(outline);
  for (const c of curves) if (distanceTo(c, p) <= tolerance) return 'boundary';
  return windingAbout(curves, p) !== 0 ? 'inside' : 'outside';
}
