import type { Layout } from './adjustmentLayout.ts';
import type { PlaneGrid, PlanePoint } from './planeGrid.ts';
import { PAPER, type Paper } from './referenceSheet.ts';

/** Where the sheets lie on the film. */
export interface SheetCover {
  /** Whether a sheet, widened by its shadow, hides a point of the plane. */
  readonly covers: (x: number, y: number) => boolean;
  readonly corners: readonly PlanePoint[];
}

/** A sheet's edge throws a dark line about this wide, mm. */
const SHADOW = 2.5;

/** The places of the sheets as adjusted. */
export function sheetCover(layout: Layout, unknowns: Float64Array, paper: Paper): SheetCover {
  const { width, height } = PAPER[paper];
  const point = new Float64Array(3);
  const at = (sheet: number, x: number, y: number): PlanePoint => {
    layout.onSheet(unknowns, sheet, x, y, point);
    return { x: point[0]!, y: point[1]! };
  };
  const frames = layout.sheets.map((sheet) => {
    const centre = at(sheet, width / 2, height / 2);
    const right = at(sheet, width, height / 2);
    const half = Math.hypot(right.x - centre.x, right.y - centre.y);
    return { ...centre, ux: (right.x - centre.x) / half, uy: (right.y - centre.y) / half };
  });
  const covers = (x: number, y: number) =>
    frames.some((frame) => {
      const u = (x - frame.x) * frame.ux + (y - frame.y) * frame.uy;
      const v = (y - frame.y) * frame.ux - (x - frame.x) * frame.uy;
      return Math.abs(u) < width / 2 + SHADOW && Math.abs(v) < height / 2 + SHADOW;
    });
  const corners = layout.sheets.flatMap((sheet) => [
    at(sheet, 0, 0),
    at(sheet, width, 0),
    at(sheet, width, height),
    at(sheet, 0, height),
  ]);
  return { covers, corners };
}

/** One byte a cell of a grid: 1 where a sheet lies. */
export function coverCells({ covers, corners }: SheetCover, grid: PlaneGrid): Uint8Array {
  const cells = new Uint8Array(grid.columns * grid.rows);
  for (let sheet = 0; sheet < corners.length; sheet += 4) {
    const own = corners.slice(sheet, sheet + 4);
    const cell = (value: number, origin: number, most: number) =>
      Math.max(0, Math.min(most, Math.round((value - origin) / grid.step)));
    const [left, right] = [Math.min(...own.map((p) => p.x)) - 5, Math.max(...own.map((p) => p.x)) + 5];
    const [low, high] = [Math.min(...own.map((p) => p.y)) - 5, Math.max(...own.map((p) => p.y)) + 5];
    for (let j = cell(low, grid.y, grid.rows); j < cell(high, grid.y, grid.rows); j++) {
      for (let i = cell(left, grid.x, grid.columns); i < cell(right, grid.x, grid.columns); i++) {
        if (covers(grid.x + i * grid.step, grid.y + j * grid.step)) cells[j * grid.columns + i] = 1;
      }
    }
  }
  return cells;
}
