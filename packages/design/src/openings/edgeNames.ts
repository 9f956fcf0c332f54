import { edges, type Outline, type Point } from '@panewright/geometry';
import type { OpeningCorner } from '../plan/plan.ts';

const SIDE_NAMES = ['bottom', 'right', 'top', 'left'] as const;

/**
 * A name for each segment of a four-sided outline: its side, or `corner:NAME` for a corner arc.
 *
 * @param corners sharp corners in the order bottom-left, bottom-right, top-right, top-left
 */
export function edgeNamesOf(outline: Outline, corners: readonly OpeningCorner[]): readonly string[] {
  return edges(outline).map((edge) => {
    const middle = { x: (edge.from.x + edge.to.x) / 2, y: (edge.from.y + edge.to.y) / 2 };
    if (edge.kind === 'arc') return `corner:${nearestCorner(middle, corners).name}`;
    const gaps = SIDE_NAMES.map((_, k) =>
      distanceToLine(middle, corners[k]!.at, corners[(k + 1) % SIDE_NAMES.length]!.at),
    );
    return SIDE_NAMES[gaps.indexOf(Math.min(...gaps))]!;
  });
}

function nearestCorner(p: { x: number; y: number }, corners: readonly OpeningCorner[]): OpeningCorner {
  const gap = ({ at }: OpeningCorner) => Math.hypot(at.x - p.x, at.y - p.y);
  return corners.reduce((best, corner) => (gap(corner) < gap(best) ? corner : best));
}

function distanceToLine(p: { x: number; y: number }, a: Point, b: Point): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
}
