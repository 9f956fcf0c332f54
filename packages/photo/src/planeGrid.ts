import type { Camera } from './camera.ts';
import type { GreyImage } from './image.ts';

/** A window of the film's plane cut into square cells; cell (i, j) has its centre at (x + i step, y + j step), mm. */
export interface PlaneGrid {
  readonly x: number;
  readonly y: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** The window around some points, `margin` mm wider on every side. */
export function gridAround(points: readonly PlanePoint[], margin: number, step: number): PlaneGrid {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const x = Math.min(...xs) - margin;
  const y = Math.min(...ys) - margin;
  return {
    x,
    y,
    step,
    columns: Math.ceil((Math.max(...xs) + margin - x) / step) + 1,
    rows: Math.ceil((Math.max(...ys) + margin - y) / step) + 1,
  };
}

/**
 * The photo as seen square on, one byte a cell; 0 where the photo does not reach (seen cells are 1..255).
 * Good for finding the ink, not for measuring it.
 *
 * @source sources.md#brown-1971 (camera model)
 */
export function rectify(image: GreyImage, camera: Camera, grid: PlaneGrid): Uint8Array {
  const out = new Uint8Array(grid.columns * grid.rows);
  for (let j = 0; j < grid.rows; j++) rectifyRow(image, camera, grid, j, out);
  return out;
}

/** One row of cells. Longer than a call per cell would be, and four times as quick: along a row the ray is linear. */
function rectifyRow(image: GreyImage, camera: Camera, grid: PlaneGrid, j: number, out: Uint8Array): void {
  const { rotation: R, translation: t, focal, k1, k2, p1, p2, cx, cy } = camera;
  const { width, height, data } = image;
  const y = grid.y + j * grid.step;
  const [u0, v0, w0] = [R[1]! * y + t[0], R[4]! * y + t[1], R[7]! * y + t[2]];
  const [du, dv, dw] = [R[0]!, R[3]!, R[6]!];
  for (let i = 0, at = j * grid.columns, x = grid.x; i < grid.columns; i++, at++, x += grid.step) {
    const depth = w0 + dw * x;
    if (depth <= 1) continue;
    const u = (u0 + du * x) / depth;
    const v = (v0 + dv * x) / depth;
    const r2 = u * u + v * v;
    const radial = 1 + r2 * (k1 + r2 * k2);
    const px = cx + focal * (u * radial + 2 * p1 * u * v + p2 * (r2 + 2 * u * u));
    const py = cy + focal * (v * radial + p1 * (r2 + 2 * v * v) + 2 * p2 * u * v);
    if (!(px >= 0 && py >= 0 && px < width - 1 && py < height - 1)) continue;
    const left = px | 0;
    const top = py | 0;
    const a = px - left;
    const k = top * width + left;
    const upper = data[k]! + a * (data[k + 1]! - data[k]!);
    const lower = data[k + width]! + a * (data[k + width + 1]! - data[k + width]!);
    const value = Math.round(upper + (py - top) * (lower - upper));
    out[at] = Math.max(1, value);
  }
}
