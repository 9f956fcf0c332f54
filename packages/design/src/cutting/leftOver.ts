import { bounds, flatten, type Outline, type Point } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import type { LeftPiece } from '../plan/plan.ts';

/** Where a rectangle lies, and how large it is. */
export type FreePiece = Omit<LeftPiece, 'worth'>;

/** A box of cloth with pieces cut out of it. x runs along the roll, y across. */
export interface Spread {
  readonly length: number;
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly Outline[];
  /** Left round each piece, mm. */
  readonly spacing: number;
}

/** Kept of one lay at most: more and smaller ones are not worth their place. */
const MOST = 8;
/** Lines of the grid lie no farther apart, mm; and there are no more than so many along the lay. */
const STEP = 10;
const MOST_STEPS = 400;
/** Arcs stand as polygons this much outside them at most, mm. */
const FLATTEN = mm(0.3);

/**
 * What pieces leave of the cloth, as rectangles along the threads: the largest first, then the largest of what is left.
 *
 * @param least a rectangle narrower than this either way is not worth keeping, mm
 * @returns mm; none overlaps a piece, or comes nearer to one than the spacing
 * @accuracy each side of a rectangle may be up to 10 mm short (more for lays over 4 m); never too long
 * @source largest rectangle below a skyline, row by row: sources.md#vandevoorde-rectangle
 */
export function leftOver(spread: Spread, least: number): readonly FreePiece[] {
  const grid = gridOf(spread);
  const found: FreePiece[] = [];
  while (found.length < MOST) {
    const best = largestFree(grid, least);
    if (!best) break;
    found.push({
      x: grid.xs[best.left]!,
      y: grid.ys[best.bottom]!,
      along: grid.xs[best.right]! - grid.xs[best.left]!,
      across: grid.ys[best.top]! - grid.ys[best.bottom]!,
    });
    for (let row = best.bottom; row < best.top; row++)
      for (let column = best.left; column < best.right; column++) grid.taken[row * grid.columns + column] = 1;
  }
  return found;
}

interface Grid {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly columns: number;
  /** 1 where a piece, or its spacing, reaches into the cell. */
  readonly taken: Uint8Array;
}

/** Lines at the sides of every piece, so that what lies between two is found in full, and evenly between them. */
function gridOf({ length, from, to, pieces, spacing }: Spread): Grid {
  const boxes = pieces.map((outline) => bounds(outline));
  const step = Math.max(STEP, length / MOST_STEPS);
  const xs = lines(
    0,
    length,
    step,
    boxes.flatMap(({ minX, maxX }) => [minX - spacing, maxX + spacing]),
  );
  const ys = lines(
    from,
    to,
    STEP,
    boxes.flatMap(({ minY, maxY }) => [minY - spacing, maxY + spacing]),
  );
  const columns = Math.max(0, xs.length - 1);
  const taken = new Uint8Array(columns * Math.max(0, ys.length - 1));
  for (const outline of pieces)
    block({ xs, ys, columns, taken }, flatten(outline, FLATTEN, 'outside'), spacing);
  return { xs, ys, columns, taken };
}

function lines(from: number, to: number, step: number, more: readonly number[]): number[] {
  const all = [from, to, ...more.filter((at) => at > from && at < to)];
  for (let at = from + step; at < to; at += step) all.push(at);
  all.sort((a, b) => a - b);
  return all.filter((at, k) => k === 0 || at - all[k - 1]! > 1e-6);
}

/** Takes every cell that the polygon, grown by the spacing, may reach: row by row from its least to its greatest x there. */
function block({ xs, ys, columns, taken }: Grid, polygon: readonly Point[], spacing: number): void {
  for (let row = 0; row + 1 < ys.length; row++) {
    const span = spanWithin(polygon, ys[row]! - spacing, ys[row + 1]! + spacing);
    if (!span) continue;
    const [left, right] = [span[0] - spacing, span[1] + spacing];
    for (let column = 0; column < columns; column++)
      if (xs[column + 1]! > left + 1e-6 && xs[column]! < right - 1e-6) taken[row * columns + column] = 1;
  }
}

/** Least and greatest x of the polygon's sides within a band of y. */
function spanWithin(
  polygon: readonly Point[],
  low: number,
  high: number,
): readonly [number, number] | undefined {
  let [least, greatest] = [Infinity, -Infinity];
  const reach = (x: number) => {
    least = Math.min(least, x);
    greatest = Math.max(greatest, x);
  };
  polygon.forEach((a, k) => {
    const b = polygon[(k + 1) % polygon.length]!;
    const [lower, upper] = a.y <= b.y ? [a, b] : [b, a];
    if (upper.y <= low + 1e-6 || lower.y >= high - 1e-6) return;
    const at = (y: number) => lower.x + ((upper.x - lower.x) * (y - lower.y)) / (upper.y - lower.y);
    reach(lower.y < low ? at(low) : lower.x);
    reach(upper.y > high ? at(high) : upper.x);
  });
  return least < greatest ? [least, greatest] : undefined;
}

interface Cells {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** The free rectangle of greatest area that is wide enough both ways. */
function largestFree({ xs, ys, columns, taken }: Grid, least: number): Cells | undefined {
  const depth = new Int32Array(columns + 1);
  let best: Cells | undefined;
  let most = 0;
  for (let row = 0; row + 1 < ys.length; row++) {
    for (let column = 0; column < columns; column++)
      depth[column] = taken[row * columns + column] ? 0 : depth[column]! + 1;
    // Columns whose free depth rises; each ends the rectangles of those deeper than itself.
    const open: { readonly from: number; readonly depth: number }[] = [];
    for (let column = 0; column <= columns; column++) {
      const deep = column < columns ? depth[column]! : 0;
      let from = column;
      while (open.length > 0 && open.at(-1)!.depth > deep) {
        const ended = open.pop()!;
        from = ended.from;
        const bottom = row + 1 - ended.depth;
        const along = xs[column]! - xs[from]!;
        const across = ys[row + 1]! - ys[bottom]!;
        if (along < least || across < least || along * across <= most) continue;
        most = along * across;
        best = { left: from, right: column, bottom, top: row + 1 };
      }
      if (deep > 0 && (open.at(-1)?.depth ?? 0) < deep) open.push({ from, depth: deep });
    }
  }
  return best;
}
