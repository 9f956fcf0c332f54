import { areaOf, boxOf, type Ring } from '../shape/ring.ts';

/** Inscribed circles, flat: x, y, radius, x, y, radius, ... */
export type Poles = Float64Array;

/**
 * Circles inside a ring: the largest, then each the largest that is also outside the earlier ones. Found by
 * dividing squares, most promising first, to 1 % of the ring's lesser side.
 *
 * @param most circles at most; they also end when they cover `cover` of the area
 *
 * @source inscribed circles as a shape's stand-in: sources.md#gardeyn-2025; the search: #garcia-castellanos-2007
 */
export function polesOf(ring: Ring, most: number, cover: number): Poles {
  const area = areaOf(ring);
  const circles: number[] = [];
  let covered = 0;
  while (circles.length < 3 * most && covered < cover * area) {
    const [x, y, r] = largestCircle(ring, circles);
    if (!(r > 0)) break;
    if (circles.length > 0 && r < 0.02 * circles[2]!) break;
    circles.push(x, y, r);
    covered += Math.PI * r * r;
  }
  return Float64Array.from(circles);
}

type Cell = readonly [x: number, y: number, half: number, clearance: number, most: number];

function largestCircle(ring: Ring, circles: readonly number[]): readonly [number, number, number] {
  const box = boxOf(ring);
  const side = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  const half = side / 2;
  const cellAt = (x: number, y: number, h: number): Cell => {
    const d = clearance(ring, circles, x, y);
    return [x, y, h, d, d + h * Math.SQRT2];
  };
  let cells: Cell[] = [];
  for (let x = box.minX; x < box.maxX; x += side)
    for (let y = box.minY; y < box.maxY; y += side) cells.push(cellAt(x + half, y + half, half));
  let best = cells[0]!;
  while (cells.length > 0) {
    for (const cell of cells) if (cell[3] > best[3]) best = cell;
    const keep = cells.filter((cell) => cell[4] > best[3] + 0.01 * side);
    cells = keep.flatMap(([x, y, h]) => {
      const q = h / 2;
      return [
        cellAt(x - q, y - q, q),
        cellAt(x + q, y - q, q),
        cellAt(x - q, y + q, q),
        cellAt(x + q, y + q, q),
      ];
    });
  }
  return [best[0], best[1], best[3]];
}

/** Distance to the outline (negative outside) or to the nearest earlier circle, whichever is less. */
function clearance(ring: Ring, circles: readonly number[], x: number, y: number): number {
  let square = Infinity;
  let inside = false;
  const n = ring.length;
  for (let k = 0, l = n - 2; k < n; l = k, k += 2) {
    const [ax, ay, bx, by] = [ring[l]!, ring[l + 1]!, ring[k]!, ring[k + 1]!];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    const [ux, uy] = [bx - ax, by - ay];
    const length = ux * ux + uy * uy;
    const t = length > 0 ? Math.max(0, Math.min(1, ((x - ax) * ux + (y - ay) * uy) / length)) : 0;
    square = Math.min(square, (x - ax - t * ux) ** 2 + (y - ay - t * uy) ** 2);
  }
  let least = inside ? Math.sqrt(square) : -Math.sqrt(square);
  for (let k = 0; k < circles.length; k += 3) {
    least = Math.min(least, Math.hypot(x - circles[k]!, y - circles[k + 1]!) - circles[k + 2]!);
  }
  return least;
}
