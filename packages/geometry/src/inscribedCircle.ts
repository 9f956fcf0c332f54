import { type Millimetre, mm } from '@panewright/quantity';
import { bounds } from './bounds.ts';
import { type Curve, curvesOf, distanceTo, nearestFraction, pointOn } from './curve.ts';
import { leastCost } from './linearProgram.ts';
import type { Outline, Point } from './outline.ts';
import { point, type Vector } from './point.ts';
import { windingAbout } from './winding.ts';

export interface Disc {
  readonly centre: Point;
  readonly radius: Millimetre;
}

/**
 * The largest circle inside an outline; its centre is the point farthest from the edge, where a label sits best.
 *
 * @returns mm; where several are equally large, one of them
 * @range anticlockwise outlines
 * @accuracy a circle that cannot grow by small moves, to 1e-6 mm; its radius is no less than the largest there is by more
 *   than 1/500 of the outline's longer side
 * @source squares split while they may hold something better, distance being 1-Lipschitz; then sequential linear
 *   programming on the edges touched: sources.md#garcia-castellanos-2007
 */
export function inscribedCircle(outline: Outline): Disc {
  const curves = curvesOf(outline);
  const box = bounds(outline);
  const size = Math.max(box.width, box.height);
  let best = { x: 0, y: 0, depth: -Infinity };
  const inside = (x: number, y: number) => {
    const depth = depthAt(curves, { x, y });
    if (depth > best.depth) best = { x, y, depth };
    return depth;
  };
  let half = Math.min(box.width, box.height) / 2;
  let cells: Vector[] = [];
  for (let x = box.minX + half; x - half < box.maxX; x += 2 * half)
    for (let y = box.minY + half; y - half < box.maxY; y += 2 * half) cells.push({ x, y });
  while (cells.length > 0) {
    const depths = cells.map(({ x, y }) => inside(x, y));
    const enough = best.depth + size / 500;
    const h = half / 2;
    cells = cells
      .filter((_, i) => depths[i]! + half * Math.SQRT2 > enough)
      .flatMap(({ x, y }) => [
        { x: x - h, y: y - h },
        { x: x + h, y: y - h },
        { x: x - h, y: y + h },
        { x: x + h, y: y + h },
      ]);
    half = h;
  }
  return grown(curves, best, size / 200);
}

/** Distance from the edge, negative outside. */
function depthAt(curves: readonly Curve[], p: Vector): number {
  let least = Infinity;
  for (const c of curves) least = Math.min(least, distanceTo(c, p));
  return windingAbout(curves, p) > 0 ? least : -least;
}

/** Moves the centre while the distance to the nearest edges grows. */
function grown(
  curves: readonly Curve[],
  start: { x: number; y: number; depth: number },
  reach: number,
): Disc {
  let best = start;
  let trust = reach;
  for (let k = 0; k < 80 && trust > 1e-9; k++) {
    const rows = curves.flatMap((c) => {
      const foot = pointOn(c, nearestFraction(c, best));
      const d = Math.hypot(best.x - foot.x, best.y - foot.y);
      if (d > best.depth + 3 * trust || d === 0) return [];
      // depth ≤ d + n · move, for the unit normal n from the foot.
      return [{ a: [-(best.x - foot.x) / d, -(best.y - foot.y) / d, 1], b: d }];
    });
    const found = leastCost(rows, [0, 0, -1], [-trust, -trust, 0], [trust, trust, best.depth + 3 * trust]);
    if (!found || found[2]! - best.depth < 1e-9) break;
    const [x, y] = [best.x + found[0]!, best.y + found[1]!];
    const depth = depthAt(curves, { x, y });
    if (depth > best.depth) best = { x, y, depth };
    else trust *= 0.3;
  }
  return { centre: point(best.x, best.y), radius: mm(best.depth) };
}
