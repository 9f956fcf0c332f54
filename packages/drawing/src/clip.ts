import { type Point, point } from '@panewright/geometry';
import type { Box } from './path.ts';

/**
 * The part of a segment inside a box.
 *
 * @returns undefined where none is
 * @source sources.md#liang-barsky-1984
 */
export function clipSegment(a: Point, b: Point, box: Box): readonly [Point, Point] | undefined {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  let [enter, leave] = [0, 1];
  for (const [p, q] of [
    [-dx, a.x - box.minX],
    [dx, box.maxX - a.x],
    [-dy, a.y - box.minY],
    [dy, box.maxY - a.y],
  ] as const) {
    if (p === 0) {
      if (q < 0) return undefined;
      continue;
    }
    const t = q / p;
    if (p < 0) enter = Math.max(enter, t);
    else leave = Math.min(leave, t);
  }
  if (enter > leave) return undefined;
  return [point(a.x + enter * dx, a.y + enter * dy), point(a.x + leave * dx, a.y + leave * dy)];
}
