import type { Prepared, Shape } from '../prepared.ts';
import { DirectPairs } from './directPairs.ts';
import { Neighbours } from './neighbours.ts';
import { PairViews, tablesOfAll, VIEW } from './pairViews.ts';

/** Everything about an instance that a search looks up and never changes. */
export interface Tables {
  readonly prep: Prepared;
  /** Items and, after them, the reserved places, which never move. */
  readonly count: number;
  readonly movable: number;
  readonly variants: number;
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** Variants of item i's shape are firstVariant[i] .. firstVariant[i] + turns[i] - 1. */
  readonly firstVariant: Int32Array;
  readonly turns: Int32Array;
  readonly shapeOf: Int32Array;
  readonly hullArea: Float64Array;
  readonly diameter: Float64Array;
  readonly pairs: PairViews | DirectPairs;
}

/** Tables up to which the overlap of every pair has one. */
const MOST_TABLES = 45_000;

const known = new WeakMap<Prepared, Tables>();

export function tablesOf(prep: Prepared): Tables {
  const found = known.get(prep);
  if (found) return found;
  const made = makeTables(prep);
  known.set(prep, made);
  return made;
}

function makeTables(prep: Prepared): Tables {
  const { shapes, variants, items, still } = prep;
  const all = [...items, ...still];
  const shape = (k: number): Shape => shapes[all[k]!.shape]!;
  const count = all.length;
  const of = <T extends Float64Array | Int32Array>(array: T, value: (k: number) => number): T => {
    for (let k = 0; k < count; k++) array[k] = value(k);
    return array;
  };
  return {
    prep,
    count,
    movable: items.length,
    variants: variants.length,
    width: Float64Array.from(variants, (v) => v.width),
    height: Float64Array.from(variants, (v) => v.height),
    firstVariant: of(new Int32Array(count), (k) => shape(k).variants[0]!.index),
    turns: of(new Int32Array(count), (k) => shape(k).variants.length),
    shapeOf: of(new Int32Array(count), (k) => all[k]!.shape),
    hullArea: of(new Float64Array(count), (k) => shape(k).hullArea),
    diameter: of(new Float64Array(count), (k) => shape(k).diameter),
    pairs: tablesOfAll(prep) <= MOST_TABLES ? new PairViews(prep) : new DirectPairs(prep),
  };
}

/** Where every item lies; small enough to keep many of. */
export interface Snapshot {
  readonly variant: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/**
 * Pieces on a strip of fixed length, overlap allowed. Mutable and single-owner: the search's workbench.
 * A piece never leaves the strip; overlap of a pair is read from its table, times the pair's weight.
 */
export class Board {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly right: Float64Array;
  readonly top: Float64Array;
  readonly variant: Int32Array;
  readonly weight: Float64Array;
  private readonly near: Neighbours;
  /** Plain overlap of pairs i < j at i * count + j, and where it is not 0, as last surveyed. */
  private readonly bad: Float64Array;
  private readonly hitAt: Int32Array;
  private hits = 0;
  /** Neighbours gathered for a walk: per neighbour its table, the rows of (x, y, 1) -> (u, v), and the weight. */
  private readonly list: Float64Array;
  private listed = 0;
  private turned = 0;
  length = 0;
  /** Evaluations so far, those without a table counted as many. */
  used = 0;

  /** @param longest the strip will not be longer than this */
  constructor(
    readonly tables: Tables,
    longest: number,
  ) {
    const n = tables.count;
    this.near = new Neighbours(n, longest, tables.prep.height);
    this.x = new Float64Array(n);
    this.y = new Float64Array(n);
    this.right = new Float64Array(n);
    this.top = new Float64Array(n);
    this.variant = new Int32Array(n);
    this.weight = new Float64Array(n * n).fill(1);
    this.bad = new Float64Array(n * n);
    this.hitAt = new Int32Array(n * n);
    this.list = new Float64Array((VIEW + 1) * n);
  }

  put(i: number, v: number, x: number, y: number): void {
    this.variant[i] = v;
    this.x[i] = x;
    this.y[i] = y;
    this.right[i] = x + this.tables.width[v]!;
    this.top[i] = y + this.tables.height[v]!;
    this.near.move(i, x, this.right[i]!, y, this.top[i]!);
  }

  save(): Snapshot {
    return { variant: this.variant.slice(), x: this.x.slice(), y: this.y.slice() };
  }

  restore(from: Snapshot): void {
    for (let i = 0; i < this.tables.count; i++) this.put(i, from.variant[i]!, from.x[i]!, from.y[i]!);
  }

  /** Weighted overlap of item i were it turned to v at (x, y); stops at `bound` once the sum has reached it. */
  evaluate(i: number, v: number, x: number, y: number, bound: number): number {
    const { count, width, height, pairs } = this.tables;
    this.used += pairs.price;
    const { right, top, near } = this;
    const xs = this.x;
    const ys = this.y;
    const endX = x + width[v]!;
    const endY = y + height[v]!;
    const x0 = near.sliceX(x);
    const x1 = near.sliceX(endX);
    const y0 = near.sliceY(y);
    const y1 = near.sliceY(endY);
    const row = i * count;
    let sum = 0;
    for (let w = 0; w < near.words; w++) {
      let mask = near.mask(w, x0, x1, y0, y1);
      for (; mask !== 0; mask &= mask - 1) {
        const j = 32 * w + 31 - Math.clz32(mask & -mask);
        if (xs[j]! >= endX || right[j]! <= x || ys[j]! >= endY || top[j]! <= y || j === i) continue;
        const bad = pairs.severity(this.variant[j]!, v, x - xs[j]!, y - ys[j]!);
        if (bad === 0) continue;
        sum += bad * this.weight[row + j]!;
        if (sum >= bound) return bound;
      }
    }
    return sum;
  }

  /** Gathers what item i, turned to v, can meet while its corner stays within `reach` of (x, y), for `evaluateNear`. */
  gather(i: number, v: number, x: number, y: number, reach: number): void {
    const { count, width, height, pairs } = this.tables;
    const { right, top, near, list, variant, weight } = this;
    const views = pairs instanceof PairViews ? pairs : undefined;
    this.turned = v;
    const [lowX, lowY] = [x - reach, y - reach];
    const [highX, highY] = [x + width[v]! + reach, y + height[v]! + reach];
    const [x0, x1] = [near.sliceX(lowX), near.sliceX(highX)];
    const [y0, y1] = [near.sliceY(lowY), near.sliceY(highY)];
    let end = 0;
    for (let w = 0; w < near.words; w++) {
      let mask = near.mask(w, x0, x1, y0, y1);
      for (; mask !== 0; mask &= mask - 1) {
        const j = 32 * w + 31 - Math.clz32(mask & -mask);
        const [xj, yj] = [this.x[j]!, this.y[j]!];
        if (xj >= highX || right[j]! <= lowX || yj >= highY || top[j]! <= lowY || j === i) continue;
        if (views === undefined) {
          list[end] = j;
          list[end + VIEW] = weight[i * count + j]!;
          end += VIEW + 1;
          continue;
        }
        const { view } = views;
        const at = views.viewOf(variant[j]!, v);
        list[end] = view[at]!;
        list[end + 1] = view[at + 1]!;
        list[end + 2] = view[at + 2]!;
        list[end + 3] = view[at + 3]! - view[at + 1]! * xj - view[at + 2]! * yj;
        list[end + 4] = view[at + 4]!;
        list[end + 5] = view[at + 5]!;
        list[end + 6] = view[at + 6]! - view[at + 4]! * xj - view[at + 5]! * yj;
        list[end + VIEW] = weight[i * count + j]!;
        end += VIEW + 1;
      }
    }
    this.listed = end;
  }

  /** As `evaluate`, of the item, turn and neighbourhood last gathered. */
  evaluateNear(x: number, y: number, bound: number): number {
    const { list, listed } = this;
    const { pairs } = this.tables;
    this.used += pairs.price;
    if (!(pairs instanceof PairViews)) return this.evaluateGathered(pairs, x, y, bound);
    const { tables } = pairs;
    const { cells } = tables;
    let sum = 0;
    for (let k = 0; k < listed; k += VIEW + 1) {
      const u = list[k + 1]! * x + list[k + 2]! * y + list[k + 3]!;
      if (u <= 0 || u >= cells) continue;
      const v = list[k + 4]! * x + list[k + 5]! * y + list[k + 6]!;
      if (v <= 0 || v >= cells) continue;
      const bad = tables.severity(list[k]!, u, v);
      if (bad === 0) continue;
      sum += bad * list[k + VIEW]!;
      if (sum >= bound) return bound;
    }
    return sum;
  }

  private evaluateGathered(pairs: DirectPairs, x: number, y: number, bound: number): number {
    const { list, listed, variant } = this;
    let sum = 0;
    for (let k = 0; k < listed; k += VIEW + 1) {
      const j = list[k]!;
      const bad = pairs.severity(variant[j]!, this.turned, x - this.x[j]!, y - this.y[j]!);
      if (bad === 0) continue;
      sum += bad * list[k + VIEW]!;
      if (sum >= bound) return bound;
    }
    return sum;
  }

  /** Weighted overlap of an item where it lies. */
  burden(i: number): number {
    return this.evaluate(i, this.variant[i]!, this.x[i]!, this.y[i]!, Infinity);
  }

  /** Reads the overlap of every pair as the pieces lie, for `loss`, `colliding` and `reweigh`. */
  survey(): void {
    const { count: n, movable } = this.tables;
    const { x, y, right, top, variant, bad, near } = this;
    for (let k = 0; k < this.hits; k++) bad[this.hitAt[k]!] = 0;
    this.hits = 0;
    for (let i = 0; i < movable; i++) {
      const x0 = near.sliceX(x[i]!);
      const x1 = near.sliceX(right[i]!);
      const y0 = near.sliceY(y[i]!);
      const y1 = near.sliceY(top[i]!);
      for (let w = i >> 5; w < near.words; w++) {
        let mask = near.mask(w, x0, x1, y0, y1);
        for (; mask !== 0; mask &= mask - 1) {
          const j = 32 * w + 31 - Math.clz32(mask & -mask);
          if (j <= i || x[j]! >= right[i]! || right[j]! <= x[i]! || y[j]! >= top[i]! || top[j]! <= y[i]!)
            continue;
          const b = this.tables.pairs.severity(variant[j]!, variant[i]!, x[i]! - x[j]!, y[i]! - y[j]!);
          if (b === 0) continue;
          bad[i * n + j] = b;
          this.hitAt[this.hits++] = i * n + j;
        }
      }
    }
  }

  /** Sum over pairs of the overlap last surveyed, weighted or plain. */
  loss(weighted: boolean): number {
    let sum = 0;
    for (let k = 0; k < this.hits; k++) {
      const at = this.hitAt[k]!;
      sum += weighted ? this.bad[at]! * this.weight[at]! : this.bad[at]!;
    }
    return sum;
  }

  /** Items that overlapped another when last surveyed. */
  colliding(): number[] {
    const n = this.tables.count;
    const hit = new Uint8Array(n);
    for (let k = 0; k < this.hits; k++) {
      hit[Math.floor(this.hitAt[k]! / n)] = 1;
      hit[this.hitAt[k]! % n] = 1;
    }
    return Array.from({ length: this.tables.movable }, (_, i) => i).filter((i) => hit[i]);
  }

  /** Guided local search: overlapping pairs grow dearer by 1.2 to 2 times, the others fade by 0.95, never below 1. */
  reweigh(): void {
    const n = this.tables.count;
    const { weight, bad } = this;
    let most = 0;
    for (let k = 0; k < this.hits; k++) most = Math.max(most, bad[this.hitAt[k]!]!);
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        const at = i * n + j;
        const b = bad[at]!;
        const w = weight[at]!;
        if (b === 0 && w === 1) continue;
        weight[at] = weight[j * n + i] = Math.max(1, w * (b > 0 ? 1.2 + (0.8 * b) / most : 0.95));
      }
  }

  /** Pairs i < j of weight above 1, as i * count + j, few beside all pairs. */
  raised(): { readonly at: Int32Array; readonly weight: Float64Array } {
    const n = this.tables.count;
    const at: number[] = [];
    for (let i = 0; i < n; i++)
      for (let k = i * n + i + 1; k < (i + 1) * n; k++) if (this.weight[k]! > 1) at.push(k);
    return { at: Int32Array.from(at), weight: Float64Array.from(at, (k) => this.weight[k]!) };
  }

  /** Sets the weights of `raised`, on a board whose weights are 1. */
  raise({ at, weight }: { readonly at: Int32Array; readonly weight: Float64Array }): void {
    const n = this.tables.count;
    at.forEach((k, l) => {
      this.weight[k] = this.weight[(k % n) * n + Math.floor(k / n)] = weight[l]!;
    });
  }
}
