/** Multipliers and slopes smaller than this count as 0. */
const TINY = 1e-9;

/** Rows of a sparse matrix: those of row r are start[r] .. start[r + 1] - 1. */
export interface SparseRows {
  readonly start: Int32Array;
  readonly column: Int32Array;
  readonly value: Float64Array;
}

/**
 * Maximises gain . z over lower <= z <= upper, A z <= room, from z = 0, which must be allowed (lower <= 0 <= upper,
 * room >= 0). The simplex method in the form for few variables and many constraints: as many active constraints as
 * variables and the inverse of their matrix are kept; the start holds every variable at 0, which any may leave.
 * After a long stall the first improving constraint is dropped instead of the best (Bland), so it ends.
 *
 * @returns z, allowed up to rounding (1e-9 of the data), the best found if `mostSteps` is reached; and the
 *   elementary operations spent
 * @source simplex method with bounds, sources.md#chvatal-1983; active sets: #fletcher-1987
 */
export function maximise(
  gain: Float64Array,
  lower: Float64Array,
  upper: Float64Array,
  rows: SparseRows,
  room: Float64Array,
  mostSteps: number,
): { readonly z: Float64Array; readonly work: number } {
  const walk = new ActiveSet(gain, lower, upper, rows, room);
  let stalled = 0;
  for (let k = 0; k < mostSteps && stalled < 400; k++) {
    const gained = walk.step(stalled > 60);
    if (gained < 0) break;
    stalled = gained > 1e-12 ? 0 : stalled + 1;
  }
  return { z: walk.z, work: walk.work };
}

/**
 * Constraints are numbered: rows first, then the upper and the lower bound of each variable; HELD marks a variable
 * still held at its start.
 */
const HELD = -1;

class ActiveSet {
  readonly z: Float64Array;
  work = 0;
  private readonly n: number;
  private readonly m: number;
  /** Column k of the inverse of the active constraints' matrix, at k * n. */
  private readonly inverse: Float64Array;
  private readonly active: Int32Array;
  private readonly isActive: Uint8Array;
  private readonly multiplier: Float64Array;
  private readonly slack: Float64Array;
  private readonly slope: Float64Array;
  private readonly direction: Float64Array;
  private readonly share: Float64Array;

  constructor(
    gain: Float64Array,
    private readonly lower: Float64Array,
    private readonly upper: Float64Array,
    private readonly rows: SparseRows,
    room: Float64Array,
  ) {
    const n = gain.length;
    const m = room.length;
    this.n = n;
    this.m = m;
    this.z = new Float64Array(n);
    this.inverse = new Float64Array(n * n);
    for (let k = 0; k < n; k++) this.inverse[k * n + k] = 1;
    this.active = new Int32Array(n).fill(HELD);
    this.isActive = new Uint8Array(m + 2 * n);
    this.multiplier = gain.slice();
    this.slack = room.slice();
    this.slope = new Float64Array(m);
    this.direction = new Float64Array(n);
    this.share = new Float64Array(n);
  }

  /** Drops one active constraint and walks to the next. @returns the gain, or -1 when none improves */
  step(first: boolean): number {
    const k = this.leaving(first);
    if (k < 0) return -1;
    const { n, direction, inverse, multiplier } = this;
    const sign = multiplier[k]! > 0 ? 1 : -1;
    for (let j = 0; j < n; j++) direction[j] = sign * inverse[k * n + j]!;
    const { constraint, by } = this.blocking();
    if (constraint < 0) return -1;
    for (let j = 0; j < n; j++) this.z[j]! += by * direction[j]!;
    for (let r = 0; r < this.m; r++) if (this.slope[r] !== 0) this.slack[r]! -= by * this.slope[r]!;
    const gained = Math.abs(multiplier[k]!) * by;
    this.exchange(k, constraint);
    return gained;
  }

  /** An inequality is worth dropping when its multiplier is negative, a hold when it is not 0. */
  private leaving(first: boolean): number {
    let best = -1;
    let most = TINY;
    for (let k = 0; k < this.n; k++) {
      const l = this.multiplier[k]!;
      const worth = this.active[k] === HELD ? Math.abs(l) : -l;
      if (worth <= most) continue;
      if (first) return k;
      best = k;
      most = worth;
    }
    return best;
  }

  private blocking(): { constraint: number; by: number } {
    const { n, m, direction, rows, slope, slack, isActive } = this;
    let constraint = -1;
    let by = Number.POSITIVE_INFINITY;
    let steepest = 0;
    const meet = (id: number, distance: number, rate: number) => {
      const t = Math.max(0, distance) / rate;
      if (t > by + 1e-13 || (t > by - 1e-13 && rate <= steepest)) return;
      by = Math.min(t, by);
      constraint = id;
      steepest = rate;
    };
    for (let r = 0; r < m; r++) {
      let s = 0;
      for (let q = rows.start[r]!; q < rows.start[r + 1]!; q++)
        s += rows.value[q]! * direction[rows.column[q]!]!;
      slope[r] = s;
      if (s > TINY && isActive[r] === 0 && slack[r]! < by * s + 1e-12) meet(r, slack[r]!, s);
    }
    for (let j = 0; j < n; j++) {
      const d = direction[j]!;
      if (d > TINY && isActive[m + 2 * j] === 0) meet(m + 2 * j, this.upper[j]! - this.z[j]!, d);
      if (d < -TINY && isActive[m + 2 * j + 1] === 0) meet(m + 2 * j + 1, this.z[j]! - this.lower[j]!, -d);
    }
    this.work += 5 * m + 4 * n;
    return { constraint, by };
  }

  /** The constraint takes the place of the k-th active one. */
  private exchange(k: number, constraint: number): void {
    const { n, m, inverse, share, multiplier, rows } = this;
    share.fill(0);
    if (constraint >= m) {
      const variable = (constraint - m) >> 1;
      const sign = (constraint - m) & 1 ? -1 : 1;
      for (let j = 0; j < n; j++) share[j] = sign * inverse[j * n + variable]!;
    } else {
      for (let q = rows.start[constraint]!; q < rows.start[constraint + 1]!; q++) {
        const [column, value] = [rows.column[q]!, rows.value[q]!];
        for (let j = 0; j < n; j++) share[j]! += value * inverse[j * n + column]!;
      }
    }
    const pivot = share[k]!;
    const own = k * n;
    for (let i = 0; i < n; i++) inverse[own + i]! /= pivot;
    multiplier[k]! /= pivot;
    for (let j = 0; j < n; j++) {
      const t = share[j]!;
      if (j === k || Math.abs(t) < 1e-14) continue;
      const head = j * n;
      for (let i = 0; i < n; i++) inverse[head + i]! -= t * inverse[own + i]!;
      multiplier[j]! -= t * multiplier[k]!;
      this.work += n;
    }
    if (this.active[k]! >= 0) this.isActive[this.active[k]!] = 0;
    this.active[k] = constraint;
    this.isActive[constraint] = 1;
  }
}
