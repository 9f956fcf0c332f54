/** Largest (or, `flip` = 255, least) value within `reach` cells along rows, then columns: a square window. */
function spread(grey: Uint8Array, columns: number, rows: number, reach: number, flip: 0 | 255): Uint8Array {
  const middle = new Uint8Array(grey.length);
  const out = new Uint8Array(grey.length);
  for (let j = 0; j < rows; j++) runningExtreme(grey, middle, j * columns, 1, columns, reach, flip);
  for (let i = 0; i < columns; i++) runningExtreme(middle, out, i, columns, rows, reach, flip);
  return out;
}

/** Running maximum; the least is the largest of the flipped bytes. @source sources.md#van-herk-1992 */
function runningExtreme(
  from: Uint8Array,
  to: Uint8Array,
  start: number,
  stride: number,
  count: number,
  reach: number,
  flip: 0 | 255,
): void {
  const window = 2 * reach + 1;
  const padded = Math.ceil((count + 2 * reach) / window) * window;
  const line = new Uint8Array(padded);
  for (let k = 0, at = start; k < count; k++, at += stride) line[k + reach] = from[at]! ^ flip;
  const forward = Uint8Array.from(line);
  for (let k = 1, phase = 1; k < padded; k++, phase = phase === window - 1 ? 0 : phase + 1) {
    if (phase !== 0 && forward[k - 1]! > forward[k]!) forward[k] = forward[k - 1]!;
  }
  for (let k = padded - 2, phase = window - 2; k >= 0; k--, phase = phase === 0 ? window - 1 : phase - 1) {
    if (phase !== window - 1 && line[k + 1]! > line[k]!) line[k] = line[k + 1]!;
  }
  for (let k = 0, at = start; k < count; k++, at += stride) {
    const [a, b] = [line[k]!, forward[k + 2 * reach]!];
    to[at] = Math.max(a, b) ^ flip;
  }
}

/**
 * How much darker each cell is than its bright surroundings: 255 x (closing - grey) / closing, with a square
 * closing of 2 reach + 1 cells. Dark lines narrower than the window stand out, wide shadows do not.
 *
 * @returns bytes, 0 where nothing is darker or the photo does not reach
 * @source sources.md#serra-1982 (closing; its difference from the picture is the black top-hat)
 */
export function localContrast(grey: Uint8Array, columns: number, rows: number, reach: number): Uint8Array {
  const closed = spread(spread(grey, columns, rows, reach, 0), columns, rows, reach, 255);
  for (let k = 0; k < grey.length; k++) {
    const c = closed[k]!;
    closed[k] = grey[k] === 0 || c === 0 ? 0 : Math.round((255 * (c - grey[k]!)) / c);
  }
  return closed;
}

/** Farther than any distance in a window; sums with a step still fit 16 bits. */
const FAR = 60_000;

/**
 * Distance from every cell to the nearest set cell, in thirds of a cell, by two chamfer sweeps.
 *
 * @accuracy within 6 % of the Euclidean distance
 * @source sources.md#borgefors-1986 (3-4 chamfer)
 */
export function distanceTo(set: Uint8Array, columns: number, rows: number): Uint16Array {
  const d = new Uint16Array(set.length);
  for (let k = 0; k < set.length; k++) d[k] = set[k] ? 0 : FAR;
  for (let j = 1; j < rows; j++) {
    for (let i = 1, k = j * columns + 1; i < columns - 1; i++, k++) {
      const side = Math.min(d[k - 1]!, d[k - columns]!) + 3;
      const corner = Math.min(d[k - columns - 1]!, d[k - columns + 1]!) + 4;
      const through = Math.min(side, corner);
      if (through < d[k]!) d[k] = through;
    }
  }
  for (let j = rows - 2; j >= 0; j--) {
    for (let i = columns - 2, k = j * columns + i; i > 0; i--, k--) {
      const side = Math.min(d[k + 1]!, d[k + columns]!) + 3;
      const corner = Math.min(d[k + columns + 1]!, d[k + columns - 1]!) + 4;
      const through = Math.min(side, corner);
      if (through < d[k]!) d[k] = through;
    }
  }
  return d;
}

export interface Component {
  readonly label: number;
  readonly cells: number;
  /** Least and largest column and row. */
  readonly box: readonly [number, number, number, number];
  readonly touchesRim: boolean;
}

/** Connected sets of marked cells; `labels` holds 0 for unmarked and 1, 2, ... for the components in order. */
export function components(
  marked: Uint8Array,
  columns: number,
  rows: number,
  eight: boolean,
): { labels: Int32Array; list: Component[] } {
  const labels = new Int32Array(marked.length);
  const queue = new Int32Array(marked.length);
  const list: Component[] = [];
  const steps = Int32Array.of(1, -1, columns, -columns, columns + 1, columns - 1, -columns + 1, -columns - 1);
  const neighbours = eight ? 8 : 4;
  for (let seed = 0; seed < marked.length; seed++) {
    if (!marked[seed] || labels[seed]) continue;
    const label = list.length + 1;
    let [left, right, low, high, head, tail] = [columns, 0, rows, 0, 0, 0];
    let touchesRim = false;
    labels[seed] = label;
    queue[tail++] = seed;
    while (head < tail) {
      const k = queue[head++]!;
      const i = k % columns;
      const j = (k - i) / columns;
      if (i < left) left = i;
      if (i > right) right = i;
      if (j < low) low = j;
      if (j > high) high = j;
      if (i === 0 || j === 0 || i === columns - 1 || j === rows - 1) {
        touchesRim = true;
        continue;
      }
      for (let s = 0; s < neighbours; s++) {
        const next = k + steps[s]!;
        if (marked[next] && !labels[next]) {
          labels[next] = label;
          queue[tail++] = next;
        }
      }
    }
    list.push({ label, cells: tail, box: [left, right, low, high], touchesRim });
  }
  return { labels, list };
}

/**
 * Outer boundary of a set of cells, walked along the cracks between cells, anticlockwise (rows count upwards).
 *
 * @param inside 1 in the set; the set must not touch the window's rim
 * @returns corner points in cells, (i - 0.5, j - 0.5) being the lower left corner of cell (i, j); one a crack
 * @source common practice, no source
 */
export function outerBoundary(inside: Uint8Array, columns: number): { x: number; y: number }[] {
  const first = inside.indexOf(1);
  if (first < 0) return [];
  const [i0, j0] = [first % columns, Math.floor(first / columns)];
  const points: { x: number; y: number }[] = [];
  // Start along the bottom crack of the lowest, leftmost cell, heading right with the set on the left.
  let [x, y, dx, dy] = [i0, j0, 1, 0];
  const has = (i: number, j: number) => inside[j * columns + i] === 1;
  do {
    points.push({ x: x - 0.5, y: y - 0.5 });
    x += dx;
    y += dy;
    // Cells ahead of the corner (x, y): left and right of the heading.
    const aheadLeft = has(x + (dx - dy - 1) / 2, y + (dy + dx - 1) / 2);
    const aheadRight = has(x + (dx + dy - 1) / 2, y + (dy - dx - 1) / 2);
    if (aheadRight) [dx, dy] = [dy, -dx];
    else if (!aheadLeft) [dx, dy] = [-dy, dx];
  } while (!(x === i0 && y === j0 && dx === 1 && dy === 0));
  return points;
}
