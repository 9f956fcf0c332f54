import type { PlanePoint } from './planeGrid.ts';

/** A stretch of the path, rows from..to (to may pass the path's end and go round), and what it looks like. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly kind: 'line' | 'arc';
}

export interface PieceOptions {
  /** What one row's squared misfit is divided by, mm²: noise variance times how many rows share their error. */
  readonly variance: number;
  /** Price of a line and of an arc, in units of half a log-likelihood. */
  readonly linePrice: number;
  readonly arcPrice: number;
}

/** Rows between places where a piece may end. */
const STRIDE = 3;
const SCALE = 1 / 500;

/**
 * Cuts a closed path into the cheapest sequence of line and arc pieces: dynamic programming over break points,
 * each piece priced by its least-squares misfit. The pieces need not meet; the fit that follows joins them.
 *
 * @param weights 0 for a row that must not count
 * @source sources.md#bellman-1961 (segmented fit), #kasa-1976 (circle by moments)
 */
export function cutIntoPieces(
  path: readonly PlanePoint[],
  weights: ArrayLike<number>,
  options: PieceOptions,
): Piece[] {
  const rows = path.length;
  const first = bestCut(path, weights, 0, options);
  const longest = first.reduce((best, piece) => (piece.to - piece.from > best.to - best.from ? piece : best));
  const start = longest.from % rows;
  const pieces = bestCut(path, weights, start, options);
  return pieces.map((piece) => ({
    ...piece,
    from: piece.from % rows,
    to: (piece.from % rows) + (piece.to - piece.from),
  }));
}

function bestCut(
  path: readonly PlanePoint[],
  weights: ArrayLike<number>,
  start: number,
  options: PieceOptions,
) {
  const rows = path.length;
  const nodes = Math.floor(rows / STRIDE);
  const sums = momentSums(path, weights, start, nodes);
  const cost = new Float64Array(nodes + 1).fill(Number.POSITIVE_INFINITY);
  const back = new Int32Array(nodes + 1);
  const isArc = new Uint8Array(nodes + 1);
  cost[0] = 0;
  for (let j = 1; j <= nodes; j++) {
    for (let i = j - 1; i >= 0; i--) {
      if (cost[i]! + options.linePrice >= cost[j]!) continue;
      const [line, arc] = misfits(sums, i, j);
      const asLine = cost[i]! + line / options.variance + options.linePrice;
      const asArc = cost[i]! + arc / options.variance + options.arcPrice;
      const price = Math.min(asLine, asArc);
      if (price < cost[j]!) {
        cost[j] = price;
        back[j] = i;
        isArc[j] = asArc < asLine ? 1 : 0;
      }
    }
  }
  const pieces: Piece[] = [];
  for (let j = nodes; j > 0; j = back[j]!) {
    const to = j === nodes ? start + rows : start + j * STRIDE;
    pieces.unshift({ from: start + back[j]! * STRIDE, to, kind: isArc[j] ? 'arc' : 'line' });
  }
  return pieces;
}

/** Running sums of 1, x, y, xx, xy, yy, xz, yz, z z with z = xx + yy, ten a node. */
function momentSums(path: readonly PlanePoint[], weights: ArrayLike<number>, start: number, nodes: number) {
  const rows = path.length;
  const sums = new Float64Array(10 * (nodes + 1));
  const cx = path.reduce((sum, p) => sum + p.x, 0) / rows;
  const cy = path.reduce((sum, p) => sum + p.y, 0) / rows;
  for (let node = 0; node < nodes; node++) {
    const at = 10 * node;
    for (let k = 0; k < 10; k++) sums[at + 10 + k] = sums[at + k]!;
    const end = node === nodes - 1 ? rows : (node + 1) * STRIDE;
    for (let row = node * STRIDE; row < end; row++) {
      const index = (start + row) % rows;
      const w = weights[index]!;
      const x = (path[index]!.x - cx) * SCALE;
      const y = (path[index]!.y - cy) * SCALE;
      const z = x * x + y * y;
      const terms = [1, x, y, x * x, x * y, y * y, x * z, y * z, z * z, z];
      for (let k = 0; k < 10; k++) sums[at + 10 + k]! += w * terms[k]!;
    }
  }
  return sums;
}

/** Sums of squared distances, mm², of the best line and the best circle through rows of nodes i..j. */
function misfits(sums: Float64Array, i: number, j: number): readonly [number, number] {
  const a = 10 * i;
  const b = 10 * j;
  const n = sums[b]! - sums[a]!;
  if (n < 3) return [0, 0];
  const mx = (sums[b + 1]! - sums[a + 1]!) / n;
  const my = (sums[b + 2]! - sums[a + 2]!) / n;
  const sxx = sums[b + 3]! - sums[a + 3]! - n * mx * mx;
  const sxy = sums[b + 4]! - sums[a + 4]! - n * mx * my;
  const syy = sums[b + 5]! - sums[a + 5]! - n * my * my;
  const half = (sxx + syy) / 2;
  const line = Math.max(0, half - Math.hypot((sxx - syy) / 2, sxy));
  // Circle: z = 2 p x + 2 q y + c about the centroid, least squares on z (Kasa), then divided by (2 R)².
  const mz = (sums[b + 9]! - sums[a + 9]!) / n;
  const sxz = sums[b + 6]! - sums[a + 6]! - n * mx * mz;
  const syz = sums[b + 7]! - sums[a + 7]! - n * my * mz;
  const szz = sums[b + 8]! - sums[a + 8]! - n * mz * mz;
  const det = sxx * syy - sxy * sxy;
  let arc = line;
  if (det > 1e-18 * n * n) {
    const p = (sxz * syy - syz * sxy) / det;
    const q = (syz * sxx - sxz * sxy) / det;
    const rest = Math.max(0, szz - p * sxz - q * syz);
    const radius2 = (p / 2 - mx) ** 2 + (q / 2 - my) ** 2 + Math.max(0, mz - mx * mx - my * my);
    arc = Math.min(line, rest / (4 * radius2));
  }
  return [line / SCALE ** 2, arc / SCALE ** 2];
}
