import type { Camera } from './camera.ts';
import { toPlane } from './camera.ts';
import type { GreyImage } from './image.ts';
import { localContrast } from './morphology.ts';
import { gridAround, type PlaneGrid, type PlanePoint, rectify } from './planeGrid.ts';
import type { PixelPoint } from './refineCorners.ts';
import { coverCells, type SheetCover } from './sheetCover.ts';

const CELL = 1.5;
/** The ink may leave the straight way between two taps by this much, mm. */
const ASIDE = 120;
/** Width of line the contrast answers to, mm. */
const LINE_WINDOW = 9;
/** A step over bare film costs this many times one along full ink. */
const BARE = 30;

/**
 * A closed curve along the ink between points tapped in a photo, in the order tapped and back to the first:
 * from tap to tap the way that costs least, ink being cheap and bare film dear.
 *
 * @param taps pixels of the photo, three or more, each within a few millimetres of the ink
 * @returns anticlockwise; undefined where a tap is off the plane or fewer than three are given
 * @source sources.md#dijkstra-1959, as used for following edges from tap to tap
 */
export function snapToInk(
  image: GreyImage,
  camera: Camera,
  cover: SheetCover,
  taps: readonly PixelPoint[],
): PlanePoint[] | undefined {
  const out = new Float64Array(2);
  const points: PlanePoint[] = [];
  for (const tap of taps) {
    if (!toPlane(camera, tap.x, tap.y, 0, out)) return undefined;
    points.push({ x: out[0]!, y: out[1]! });
  }
  if (points.length < 3) return undefined;
  const curve = points.flatMap((from, i) =>
    wayBetween(image, camera, cover, from, points[(i + 1) % points.length]!),
  );
  const twice = curve.reduce((sum, p, i) => {
    const q = curve[(i + 1) % curve.length]!;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  return twice < 0 ? curve.reverse() : curve;
}

function wayBetween(
  image: GreyImage,
  camera: Camera,
  cover: SheetCover,
  from: PlanePoint,
  to: PlanePoint,
): PlanePoint[] {
  const grid = gridAround([from, to], ASIDE, CELL);
  const seen = rectify(image, camera, grid);
  const contrast = localContrast(seen, grid.columns, grid.rows, Math.round(LINE_WINDOW / 2 / CELL));
  const covered = coverCells(cover, grid);
  const cost = Float32Array.from(
    contrast,
    (c, k) => 1 / (1 / BARE + (covered[k] ? 0 : Math.min(1, c / 150))),
  );
  const cellOf = ({ x, y }: PlanePoint) =>
    Math.round((y - grid.y) / grid.step) * grid.columns + Math.round((x - grid.x) / grid.step);
  const cells = cheapestWay(cost, grid, cellOf(from), cellOf(to));
  return cells.map((k) => ({
    x: grid.x + (k % grid.columns) * grid.step,
    y: grid.y + Math.floor(k / grid.columns) * grid.step,
  }));
}

/** Cells from start to just before the end. Costs are queued in buckets of one unit, which is exact enough here. */
function cheapestWay(cost: Float32Array, { columns, rows }: PlaneGrid, start: number, end: number): number[] {
  const best = new Float32Array(cost.length).fill(Number.POSITIVE_INFINITY);
  const back = new Int32Array(cost.length).fill(-1);
  const buckets: number[][] = [[start]];
  best[start] = 0;
  const diagonal = Math.SQRT2;
  for (let b = 0; b < buckets.length && best[end]! > b; b++) {
    const bucket = buckets[b] ?? [];
    for (let n = 0; n < bucket.length; n++) {
      const k = bucket[n]!;
      if (Math.floor(best[k]!) !== b) continue;
      const i = k % columns;
      if (i === 0 || i === columns - 1 || k < columns || k >= columns * (rows - 1)) continue;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          if (dx === 0 && dy === 0) continue;
          const next = k + dy * columns + dx;
          const through = best[k]! + (dx && dy ? diagonal : 1) * cost[next]!;
          if (through >= best[next]!) continue;
          best[next] = through;
          back[next] = k;
          (buckets[Math.floor(through)] ??= []).push(next);
        }
      }
    }
  }
  const way: number[] = [];
  for (let k = back[end]!; k >= 0; k = back[k]!) way.unshift(k);
  return way;
}
