/** Pivots smaller than this are not trusted. */
const TINY = 1e-9;

/**
 * Maximises gain . z over lower <= z <= upper, A z <= room, from the start z = 0, which must be allowed:
 * lower <= 0 <= upper and room >= 0. Bounded primal simplex on a dense tableau; a variable strictly between its
 * bounds may wait at 0 and move either way.
 *
 * `a` is row-major, rows x columns, and is overwritten. Equal ratios are told apart by the larger pivot; after a
 * long stall the first improving column is taken instead of the steepest (Bland), so it ends.
 *
 * @returns z, allowed up to rounding (1e-9 of the data); the best found if `mostPivots` is reached
 * @source bounded simplex method: sources.md#chvatal-1983
 */
export function maximise(
  gain: Float64Array,
  lower: Float64Array,
  upper: Float64Array,
  a: Float64Array,
  room: Float64Array,
  mostPivots: number,
): Float64Array {
  const lp = new Tableau(gain, lower, upper, a, room);
  let stalled = 0;
  for (let k = 0; k < mostPivots; k++) {
    const moved = lp.pivot(stalled > 60);
    if (moved < 0) break;
    stalled = moved > 1e-12 ? 0 : stalled + 1;
    if (stalled > 400) break;
  }
  return lp.solution();
}

/** Rows are basic variables; a column's variable sits at `value` and may move between its bounds. */
class Tableau {
  private readonly rows: number;
  private readonly columns: number;
  /** Which variable each column and row stands for; variables from `columns` on are slacks (0 .. infinity). */
  private readonly ofColumn: Int32Array;
  private readonly ofRow: Int32Array;
  private readonly value: Float64Array;
  private readonly cost: Float64Array;

  constructor(
    gain: Float64Array,
    private readonly lower: Float64Array,
    private readonly upper: Float64Array,
    private readonly a: Float64Array,
    private readonly level: Float64Array,
  ) {
    this.rows = level.length;
    this.columns = gain.length;
    this.cost = gain.slice();
    this.value = new Float64Array(this.columns);
    this.ofColumn = Int32Array.from({ length: this.columns }, (_, k) => k);
    this.ofRow = Int32Array.from({ length: this.rows }, (_, k) => this.columns + k);
  }

  private low(variable: number): number {
    return variable < this.columns ? this.lower[variable]! : 0;
  }

  private high(variable: number): number {
    return variable < this.columns ? this.upper[variable]! : Number.POSITIVE_INFINITY;
  }

  /** One move of one column. @returns the gain, or -1 when no column improves */
  pivot(first: boolean): number {
    const c = this.entering(first);
    if (c < 0) return -1;
    const direction = this.cost[c]! > 0 ? 1 : -1;
    const variable = this.ofColumn[c]!;
    const own = direction > 0 ? this.high(variable) - this.value[c]! : this.value[c]! - this.low(variable);
    const { row, by } = this.leaving(c, direction, own);
    const gained = Math.abs(this.cost[c]!) * by;
    for (let r = 0; r < this.rows; r++) {
      const t = this.a[r * this.columns + c]!;
      if (t !== 0) this.level[r]! -= t * direction * by;
    }
    this.value[c]! += direction * by;
    if (row >= 0) this.exchange(row, c, direction);
    return gained;
  }

  private entering(first: boolean): number {
    let best = -1;
    let most = TINY;
    for (let c = 0; c < this.columns; c++) {
      const d = this.cost[c]!;
      if (Math.abs(d) <= most) continue;
      const variable = this.ofColumn[c]!;
      const stuck = d > 0 ? this.value[c]! >= this.high(variable) : this.value[c]! <= this.low(variable);
      if (stuck) continue;
      if (first) return c;
      best = c;
      most = Math.abs(d);
    }
    return best;
  }

  private leaving(c: number, direction: number, own: number): { row: number; by: number } {
    let row = -1;
    let by = own;
    let size = 0;
    for (let r = 0; r < this.rows; r++) {
      const t = this.a[r * this.columns + c]! * direction;
      if (Math.abs(t) < TINY) continue;
      const variable = this.ofRow[r]!;
      const limit = t > 0 ? this.level[r]! - this.low(variable) : this.high(variable) - this.level[r]!;
      const ratio = Math.max(0, limit) / Math.abs(t);
      if (ratio > by + 1e-13 || (ratio > by - 1e-13 && Math.abs(t) <= size)) continue;
      by = Math.min(by, ratio);
      row = r;
      size = Math.abs(t);
    }
    return { row, by };
  }

  /** The row's variable leaves at the bound it met; the column's variable becomes basic. */
  private exchange(row: number, c: number, direction: number): void {
    const { a, columns, cost } = this;
    const head = row * columns;
    const pivot = a[head + c]!;
    const entered = this.ofColumn[c]!;
    const left = this.ofRow[row]!;
    const enteredValue = this.value[c]!;
    const atLow = pivot * direction > 0;
    const met = atLow ? this.low(left) : this.high(left);
    const touched: number[] = [];
    for (let k = 0; k < columns; k++) {
      if (k === c || a[head + k] === 0) continue;
      a[head + k]! /= pivot;
      touched.push(k);
    }
    a[head + c] = 1 / pivot;
    const clear = (array: Float64Array, at: number) => {
      const t = array[at + c]!;
      if (t === 0) return;
      for (const k of touched) array[at + k]! -= t * a[head + k]!;
      array[at + c] = -t / pivot;
    };
    for (let r = 0; r < this.rows; r++) if (r !== row) clear(a, r * columns);
    clear(cost, 0);
    this.ofColumn[c] = left;
    this.ofRow[row] = entered;
    this.value[c] = met;
    this.level[row] = enteredValue;
  }

  solution(): Float64Array {
    const z = new Float64Array(this.columns);
    for (let c = 0; c < this.columns; c++)
      if (this.ofColumn[c]! < this.columns) z[this.ofColumn[c]!] = this.value[c]!;
    for (let r = 0; r < this.rows; r++) if (this.ofRow[r]! < this.columns) z[this.ofRow[r]!] = this.level[r]!;
    return z;
  }
}
