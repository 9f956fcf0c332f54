/** Slices the strip is cut into, along and across. */
const SLICES = 64;

/**
 * Which items' boxes may meet a box, as bit masks: for every slice of each axis, the items that begin at or before
 * it and those that end at or after it. Four masks, ANDed, answer a query whatever its size. Never misses an item;
 * a few too many are left to the exact box test.
 */
export class Neighbours {
  readonly words: number;
  private readonly perX: number;
  private readonly perY: number;
  private readonly begins: readonly [Int32Array, Int32Array];
  private readonly ends: readonly [Int32Array, Int32Array];
  private readonly firstSlice: readonly [Int32Array, Int32Array];
  private readonly lastSlice: readonly [Int32Array, Int32Array];

  constructor(count: number, length: number, height: number) {
    this.words = (count + 31) >> 5;
    this.perX = SLICES / length;
    this.perY = SLICES / height;
    const masks = () => new Int32Array(SLICES * this.words);
    this.begins = [masks(), masks()];
    this.ends = [masks(), masks()];
    // Nothing is on the strip yet: begins after the last slice, ends before the first.
    this.firstSlice = [new Int32Array(count).fill(SLICES), new Int32Array(count).fill(SLICES)];
    this.lastSlice = [new Int32Array(count).fill(-1), new Int32Array(count).fill(-1)];
  }

  /** Slice of a coordinate along the strip; beyond the ends the nearest. */
  sliceX(x: number): number {
    const s = (x * this.perX) | 0;
    return s < 0 ? 0 : s >= SLICES ? SLICES - 1 : s;
  }

  sliceY(y: number): number {
    const s = (y * this.perY) | 0;
    return s < 0 ? 0 : s >= SLICES ? SLICES - 1 : s;
  }

  move(i: number, x: number, right: number, y: number, top: number): void {
    this.moveAxis(0, i, this.sliceX(x), this.sliceX(right));
    this.moveAxis(1, i, this.sliceY(y), this.sliceY(top));
  }

  private moveAxis(axis: 0 | 1, i: number, first: number, last: number): void {
    const word = i >> 5;
    const bit = 1 << (i & 31);
    const { words } = this;
    const begins = this.begins[axis];
    const ends = this.ends[axis];
    const oldFirst = this.firstSlice[axis][i]!;
    const oldLast = this.lastSlice[axis][i]!;
    for (let s = first; s < oldFirst; s++) begins[s * words + word]! |= bit;
    for (let s = oldFirst; s < first; s++) begins[s * words + word]! &= ~bit;
    for (let s = oldLast + 1; s <= last; s++) ends[s * words + word]! |= bit;
    for (let s = last + 1; s <= oldLast; s++) ends[s * words + word]! &= ~bit;
    this.firstSlice[axis][i] = first;
    this.lastSlice[axis][i] = last;
  }

  /** Items of word `w` (32 w .. 32 w + 31) whose boxes may meet slices x0 .. x1 by y0 .. y1. */
  mask(w: number, x0: number, x1: number, y0: number, y1: number): number {
    const n = this.words;
    return (
      this.begins[0][x1 * n + w]! &
      this.ends[0][x0 * n + w]! &
      this.begins[1][y1 * n + w]! &
      this.ends[1][y0 * n + w]!
    );
  }
}
