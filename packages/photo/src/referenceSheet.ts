import { isBlackCell, MARKER_CELLS } from './markerDictionary.ts';
import { BAR_X, BAR_Y } from './reading.ts';

/** Sheet frame: landscape, origin at its bottom-left corner, x right, y up, mm. */
export interface SheetPoint {
  readonly x: number;
  readonly y: number;
}
export type Paper = 'A4' | 'Letter';

export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

export const MARKER_SIDE = 60;
export const MARKERS_PER_SHEET = 4;
export const SHEETS = 4;
/** From the paper's edge to the nearest marker edge. */
const MARGIN = 15;

/** Landscape paper sizes in mm. @source sources.md#iso-216 (A4), 11 x 8.5 in (Letter) */
export const PAPER: Readonly<Record<Paper, SheetSize>> = {
  A4: { width: 297, height: 210 },
  Letter: { width: 279.4, height: 215.9 },
};

/** A black square or line end to draw, mm in the sheet frame. */
export interface SheetBar {
  readonly from: SheetPoint;
  readonly to: SheetPoint;
  /** What a rule must read between its ends if the print is true, mm. */
  readonly nominal: number;
}
export interface SheetRectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface SheetMarker {
  readonly id: number;
  /** Top left, top right, bottom right, bottom left of the printed marker. */
  readonly corners: readonly [SheetPoint, SheetPoint, SheetPoint, SheetPoint];
  /** Rectangles to fill black; they do not overlap. */
  readonly black: readonly SheetRectangle[];
}
export interface SheetLabel {
  readonly at: SheetPoint;
  /** Height of the capital letters, mm. */
  readonly height: number;
  readonly key: 'sheet-number' | 'bar-x' | 'bar-y' | 'print-true-size';
}
export interface ReferenceSheet {
  readonly index: number;
  readonly paper: Paper;
  readonly size: SheetSize;
  readonly markers: readonly SheetMarker[];
  readonly bars: readonly [SheetBar, SheetBar];
  /** Short strokes across the ends of the bars. */
  readonly ticks: readonly (readonly [SheetPoint, SheetPoint])[];
  readonly labels: readonly SheetLabel[];
}

/** Corner of marker k (0..3 = top left, top right, bottom right, bottom left of the sheet), nominal mm. */
export function markerCorner(paper: Paper, k: number, corner: number): SheetPoint {
  const { width, height } = PAPER[paper];
  const left = k === 0 || k === 3 ? MARGIN : width - MARGIN - MARKER_SIDE;
  const bottom = k <= 1 ? height - MARGIN - MARKER_SIDE : MARGIN;
  return {
    x: corner === 1 || corner === 2 ? left + MARKER_SIDE : left,
    y: corner <= 1 ? bottom + MARKER_SIDE : bottom,
  };
}

/**
 * What to print on the four reference sheets: markers 4 x sheet + k of DICT_4X4_50 near the corners of a
 * landscape page, 60 mm a side, and two bars, 200 mm along and 150 mm across, to check the printer with a rule.
 *
 * @returns drawing data in mm, sheet frame, nothing rounded
 * @source sources.md#opencv-aruco (marker cells)
 */
export function referenceSheets(paper: Paper): readonly ReferenceSheet[] {
  return Array.from({ length: SHEETS }, (_, index) => referenceSheet(paper, index));
}

function referenceSheet(paper: Paper, index: number): ReferenceSheet {
  const size = PAPER[paper];
  const x = size.width / 2;
  const y = size.height / 2;
  const along: SheetBar = { from: { x: x - BAR_X / 2, y }, to: { x: x + BAR_X / 2, y }, nominal: BAR_X };
  const across: SheetBar = { from: { x, y: y - BAR_Y / 2 }, to: { x, y: y + BAR_Y / 2 }, nominal: BAR_Y };
  const upright = [along.from, along.to].map(
    (p) =>
      [
        { x: p.x, y: p.y - 4 },
        { x: p.x, y: p.y + 4 },
      ] as const,
  );
  const level = [across.from, across.to].map(
    (p) =>
      [
        { x: p.x - 4, y: p.y },
        { x: p.x + 4, y: p.y },
      ] as const,
  );
  return {
    index,
    paper,
    size,
    markers: [0, 1, 2, 3].map((k) => sheetMarker(paper, index, k)),
    bars: [along, across],
    ticks: [...upright, ...level],
    labels: [
      { at: { x: x - 92, y: y + 6 }, height: 5, key: 'sheet-number' },
      { at: { x: x - 60, y: y + 6 }, height: 5, key: 'bar-x' },
      { at: { x: x + 6, y: y + 40 }, height: 5, key: 'bar-y' },
      { at: { x: x + 16, y: y - 47 }, height: 4, key: 'print-true-size' },
    ],
  };
}

function sheetMarker(paper: Paper, sheet: number, k: number): SheetMarker {
  const id = MARKERS_PER_SHEET * sheet + k;
  if (MARKER_CELLS[id] === undefined) throw new RangeError(`no marker ${id}`);
  const corners = [0, 1, 2, 3].map((corner) => markerCorner(paper, k, corner));
  return { id, corners: corners as unknown as SheetMarker['corners'], black: blackRuns(id, corners[0]!) };
}

/** Neighbouring black cells of a row are joined, so no hairline shows between them. */
function blackRuns(id: number, topLeft: SheetPoint): SheetRectangle[] {
  const cell = MARKER_SIDE / 6;
  const runs: SheetRectangle[] = [];
  for (let row = 0; row < 6; row++) {
    let start = -1;
    for (let column = 0; column <= 6; column++) {
      const black = column < 6 && isBlackCell(id, row, column);
      if (black && start < 0) start = column;
      if (!black && start >= 0) {
        const y = topLeft.y - (row + 1) * cell;
        runs.push({ x: topLeft.x + start * cell, y, width: (column - start) * cell, height: cell });
        start = -1;
      }
    }
  }
  return runs;
}
