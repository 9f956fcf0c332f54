import type { Primitive } from '../fit/primitiveCost.ts';
import { meet } from '../fit/segmentation.ts';
import type { XY } from './intersectTapes.ts';

/** Where two neighbours cross at an angle: of two crossings the nearer; where they do not cross, where they nearly touch. */
export function crossing(a: Primitive, b: Primitive, near: XY): XY | undefined {
  const options = a.kind === 'arc' && b.kind === 'arc' ? arcsCross(a, b) : lineCross(a, b);
  const far = (place: XY) => Math.hypot(place.x - near.x, place.y - near.y);
  const [first, ...rest] = options;
  if (!first) return meet(a, b, near);
  return rest.reduce((best, place) => (far(place) < far(best) ? place : best), first);
}

type Arc = Extract<Primitive, { readonly kind: 'arc' }>;

function lineCross(a: Primitive, b: Primitive): readonly XY[] {
  const [line, arc] = a.kind === 'line' ? [a, b] : [b, a];
  if (line.kind !== 'line' || arc.kind !== 'arc') return [];
  const [cos, sin] = [Math.cos(line.heading), Math.sin(line.heading)];
  const along = (arc.x - line.x) * cos + (arc.y - line.y) * sin;
  const off = (arc.y - line.y) * cos - (arc.x - line.x) * sin;
  const half = Math.sqrt(arc.radius ** 2 - off ** 2);
  if (!(half > 0)) return [];
  return [along - half, along + half].map((t) => ({ x: line.x + t * cos, y: line.y + t * sin }));
}

function arcsCross(a: Arc, b: Arc): readonly XY[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const apart = Math.hypot(dx, dy);
  const along = (apart ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * apart);
  const off = Math.sqrt(a.radius ** 2 - along ** 2);
  if (!(apart > 0 && off > 0)) return [];
  return [off, -off].map((h) => ({
    x: a.x + (along * dx - h * dy) / apart,
    y: a.y + (along * dy + h * dx) / apart,
  }));
}
