import type { Random } from '../random.ts';
import type { Board } from './board.ts';

const AROUND = 25;
const ANYWHERE = 50;
const KEPT = 3;

/** A piece of more turns than this also turns while it walks downhill; its first step is a sixteenth of them. */
const FEW_TURNS = 15;
/** The direction after along, across and the two diagonals. */
const TURNING = 4;

/** A place under consideration; reused, so that the inner loop allocates nothing. */
interface Candidate {
  v: number;
  x: number;
  y: number;
  value: number;
}

/**
 * Moves single pieces to where they overlap least: samples near the piece and over the whole strip, keeps the
 * three best unlike ones, walks each downhill along the axes and diagonals, coarse then fine.
 *
 * @source sources.md#gardeyn-2025
 */
export class Mover {
  private readonly kept: Candidate[] = Array.from({ length: KEPT }, () => ({ v: 0, x: 0, y: 0, value: 0 }));
  private held = 0;

  constructor(
    private readonly board: Board,
    private readonly dice: Random,
  ) {}

  /** Moves item i if it overlaps and a place not worse is found. */
  relieve(i: number): void {
    const { board } = this;
    const here = board.burden(i);
    if (here === 0) return;
    this.held = 0;
    const v0 = board.variant[i]!;
    const x0 = board.x[i]!;
    const y0 = board.y[i]!;
    this.keep(v0, x0, y0, here);
    if (this.sample(i, v0, x0, y0)) {
      const side = Math.min(board.tables.width[v0]!, board.tables.height[v0]!);
      let best = this.kept[0]!;
      for (let k = 0; k < this.held; k++) {
        const candidate = this.kept[k]!;
        this.descend(i, candidate, 0.25 * side, 0.02 * side);
        if (candidate.value < best.value) best = candidate;
      }
      if (best.value > 0) this.descend(i, best, 0.01 * side, 0.001 * side);
      if (best.value <= here) board.put(i, best.v, best.x, best.y);
      return;
    }
    const free = this.kept[0]!;
    board.put(i, free.v, free.x, free.y);
  }

  /** @returns false when a free place was met, then the first kept */
  private sample(i: number, v0: number, x0: number, y0: number): boolean {
    const { board, dice } = this;
    const { width, height, firstVariant, turns, prep } = board.tables;
    const w0 = width[v0]!;
    const h0 = height[v0]!;
    for (let k = 0; k < AROUND + ANYWHERE; k++) {
      const v = firstVariant[i]! + (turns[i]! > 1 ? dice.below(turns[i]!) : 0);
      const roomX = board.length - width[v]!;
      const roomY = prep.height - height[v]!;
      if (roomX < 0) continue;
      let x: number;
      let y: number;
      if (k < AROUND) {
        x = x0 + (w0 - width[v]!) / 2 + (dice.next() - 0.5) * w0;
        y = y0 + (h0 - height[v]!) / 2 + (dice.next() - 0.5) * h0;
        x = Math.max(0, Math.min(roomX, x));
        y = Math.max(0, Math.min(roomY, y));
      } else {
        x = dice.next() * roomX;
        y = dice.next() * roomY;
      }
      const bound = this.held < KEPT ? Infinity : this.kept[KEPT - 1]!.value;
      const value = board.evaluate(i, v, x, y, bound);
      if (value < bound) this.keep(v, x, y, value);
      if (value === 0) return false;
    }
    return true;
  }

  /** Keeps the best few, by value; of two near each other with one turn only the better. */
  private keep(v: number, x: number, y: number, value: number): void {
    const { kept, board } = this;
    const near = 0.05 * Math.min(board.tables.width[v]!, board.tables.height[v]!);
    let at = this.held;
    for (let k = 0; k < this.held; k++) {
      const other = kept[k]!;
      if (other.v !== v || Math.abs(other.x - x) > near || Math.abs(other.y - y) > near) continue;
      if (other.value <= value) return;
      at = k;
      break;
    }
    if (at === this.held) {
      if (this.held < KEPT) this.held++;
      else at = KEPT - 1;
    }
    const moved = kept[at]!;
    moved.v = v;
    moved.x = x;
    moved.y = y;
    moved.value = value;
    for (; at > 0 && kept[at - 1]!.value > value; at--) {
      kept[at] = kept[at - 1]!;
      kept[at - 1] = moved;
    }
  }

  /**
   * Adaptive coordinate descent: the step grows by 1.1 on success, halves on failure with a new direction. Turning is a
   * direction too where a piece has many turns; its steps are places in the list of turns.
   */
  private descend(i: number, c: Candidate, from: number, to: number): void {
    const { board, dice } = this;
    const { turns } = board.tables;
    const directions = turns[i]! > FEW_TURNS ? 5 : 4;
    let stepX = from;
    let stepY = from;
    let stepTurn = directions > 4 ? turns[i]! / 16 : 0;
    const reach = 2 * from;
    let [midX, midY] = [c.x, c.y];
    board.gather(i, c.v, midX, midY, reach);
    let axis = dice.below(directions);
    while (c.value > 0 && (stepX >= to || stepY >= to || stepTurn >= 1)) {
      if (axis === TURNING) {
        const found = stepTurn >= 1 && this.tryTurns(i, c, Math.round(stepTurn));
        stepTurn *= found ? 1.1 : 0.5;
        if (found) {
          [midX, midY] = [c.x, c.y];
          board.gather(i, c.v, midX, midY, reach);
        } else axis = dice.below(directions);
        continue;
      }
      const ux = axis === 1 ? 0 : stepX;
      const uy = axis === 0 ? 0 : axis === 3 ? -stepY : stepY;
      if (Math.abs(c.x - midX) + ux > reach || Math.abs(c.y - midY) + Math.abs(uy) > reach) {
        [midX, midY] = [c.x, c.y];
        board.gather(i, c.v, midX, midY, Math.max(reach, ux, Math.abs(uy)));
      }
      const found = this.tryBoth(c, ux, uy);
      const factor = axis > 1 ? (found ? 1.0488 : Math.SQRT1_2) : found ? 1.1 : 0.5;
      if (axis !== 1) stepX *= factor;
      if (axis !== 0) stepY *= factor;
      if (!found) axis = dice.below(directions);
    }
  }

  /** The turns `step` before and after in the list, about the same middle. */
  private tryTurns(i: number, c: Candidate, step: number): boolean {
    const { board } = this;
    const { width, height, firstVariant, turns, prep } = board.tables;
    const [midX, midY] = [c.x + width[c.v]! / 2, c.y + height[c.v]! / 2];
    const [first, count] = [firstVariant[i]!, turns[i]!];
    const at = c.v - first;
    let found = false;
    for (const to of [at + step, at - step]) {
      const v = first + (((to % count) + count) % count);
      const [roomX, roomY] = [board.length - width[v]!, prep.height - height[v]!];
      if (roomX < 0) continue;
      const x = Math.max(0, Math.min(roomX, midX - width[v]! / 2));
      const y = Math.max(0, Math.min(roomY, midY - height[v]! / 2));
      const value = board.evaluate(i, v, x, y, c.value);
      if (value >= c.value) continue;
      c.value = value;
      c.v = v;
      c.x = x;
      c.y = y;
      found = true;
    }
    return found;
  }

  private tryBoth(c: Candidate, ux: number, uy: number): boolean {
    const { board } = this;
    const roomX = board.length - board.tables.width[c.v]!;
    const roomY = board.tables.prep.height - board.tables.height[c.v]!;
    let bestX = c.x;
    let bestY = c.y;
    let found = false;
    for (let sign = 1; sign >= -1; sign -= 2) {
      let x = c.x + sign * ux;
      let y = c.y + sign * uy;
      x = Math.max(0, Math.min(roomX, x));
      y = Math.max(0, Math.min(roomY, y));
      if (x === c.x && y === c.y) continue;
      const value = board.evaluateNear(x, y, c.value);
      if (value >= c.value) continue;
      c.value = value;
      bestX = x;
      bestY = y;
      found = true;
    }
    c.x = bestX;
    c.y = bestY;
    return found;
  }
}
