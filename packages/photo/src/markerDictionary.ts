/**
 * The 4 x 4 cells of the first sixteen markers of DICT_4X4_50, row by row from the top left,
 * most significant bit first; a set bit is a white cell. A black border one cell wide surrounds them.
 * A test draws the same markers with OpenCV and compares cell by cell.
 *
 * @source sources.md#opencv-aruco
 */
export const MARKER_CELLS: readonly number[] = [
  0xb532, 0x0f9a, 0x332d, 0x9946, 0x549e, 0x79cd, 0x9e2e, 0xc4f2, 0xfeda, 0xcf56, 0xf991, 0x11a7, 0x0eb7,
  0x2a0f, 0x24b1, 0x263e,
];

/**
 * Whether a cell of a marker is black, border included.
 *
 * @param row 0..5 from the top, @param column 0..5 from the left
 * @source sources.md#opencv-aruco
 */
export function isBlackCell(id: number, row: number, column: number): boolean {
  if (row < 1 || row > 4 || column < 1 || column > 4) return true;
  const bit = 15 - (4 * (row - 1) + (column - 1));
  return ((MARKER_CELLS[id]! >> bit) & 1) === 0;
}
