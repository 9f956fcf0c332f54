import type { Camera } from './camera.ts';
import type { GreyImage } from './image.ts';
import { darkestPath, followInk, type InkPath, lineContrast, pointsOn, unwrap } from './inkPath.ts';
import { inkRegions } from './inkRegion.ts';
import { gridAround, type PlanePoint, rectify } from './planeGrid.ts';
import { coverCells, type SheetCover } from './sheetCover.ts';

/** The outline may lie this far outside the sheets, mm. */
const MARGIN = 700;
const CELL = 1;

/**
 * Finds the closed ink line of one photo: candidate regions, the ink followed round each, and of these the one
 * with the strongest line and the fewest wiggles.
 *
 * @returns undefined when nothing dark closes round anything
 */
export function findOutline(image: GreyImage, camera: Camera, cover: SheetCover): InkPath | undefined {
  const grid = gridAround(reachOf(image, camera, cover), 0, CELL);
  const regions = inkRegions(rectify(image, camera, grid), coverCells(cover, grid), grid);
  let best: { path: InkPath; value: number } | undefined;
  for (const region of regions.slice(0, 3)) {
    for (const curve of differing(region.curves)) {
      const path = followInk(image, camera, curve, 25, cover.covers);
      const size = Math.min(1, region.darkness / 0.5) * region.area ** 0.08;
      const value = path.score * path.support ** 2 * path.open ** 3 * size - 0.01 * excessTurn(path.curve);
      if (!best || value > best.value) best = { path, value };
    }
    if (best && best.path.score > 0.4 && best.path.support > 0.97 && best.path.open > 0.97) break;
  }
  return best?.path;
}

/** Corners of the part of the plane worth looking at: near the sheets and inside the photo. */
function reachOf(image: GreyImage, camera: Camera, { corners }: SheetCover): PlanePoint[] {
  const wide = gridAround(corners, MARGIN, 20);
  const seen = rectify(image, camera, wide);
  const points: PlanePoint[] = [];
  for (let k = 0; k < seen.length; k++) {
    const i = k % wide.columns;
    if (seen[k]) points.push({ x: wide.x + i * wide.step, y: wide.y + ((k - i) / wide.columns) * wide.step });
  }
  return points.length > 0 ? points : [...corners];
}

/** Leaves out curves that run where an earlier one does. */
function differing(curves: readonly (readonly PlanePoint[])[]): (readonly PlanePoint[])[] {
  const kept: (readonly PlanePoint[])[] = [];
  for (const curve of curves) {
    const same = kept.some((other) =>
      curve.every((p, i) => i % 4 !== 0 || other.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 8)),
    );
    if (!same) kept.push(curve);
  }
  return kept;
}

/** Turning beyond one full turn, radians, counted over 20 mm chords: writing wiggles, an outline does not. */
export function excessTurn(curve: readonly PlanePoint[]): number {
  const n = curve.length;
  let total = 0;
  for (let i = 0; i + 20 <= n; i += 10) {
    const [p, q, r] = [curve[i]!, curve[i + 10]!, curve[(i + 20) % n]!];
    const turn = Math.atan2(r.y - q.y, r.x - q.x) - Math.atan2(q.y - p.y, q.x - p.x);
    total += Math.max(0, Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) - 0.03);
  }
  return Math.max(0, total - 2 * Math.PI);
}

/**
 * The ink near a known path as another look at it shows it, point by point: path point i, moved sideways.
 *
 * @param reach half width within which the ink may lie, mm
 */
export function nearPath(
  image: GreyImage,
  camera: Camera,
  path: readonly PlanePoint[],
  reach: number,
  covered: (x: number, y: number) => boolean,
): PlanePoint[] {
  // Sides are read up to 7 mm from the line, so the band is never narrower than what a contrast needs.
  const band = unwrap(image, camera, path, Math.max(reach, 7.5), 0.25);
  const contrast = lineContrast(band, covered);
  const middle = (band.width - 1) / 2;
  for (let k = 0; k < contrast.length; k++) {
    if (Math.abs((k % band.width) - middle) * band.step > reach) contrast[k] = -1;
  }
  return pointsOn(band, darkestPath(contrast, band.rows, band.width, 6, 0.004));
}
