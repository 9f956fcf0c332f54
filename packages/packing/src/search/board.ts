import type { Prepared, Shape } from '../prepared.ts';
import { type Half, PairTable } from './pairTable.ts';
import { polesOf } from './poles.ts';

/** Everything about an instance that a search looks up and never changes. */
export interface Tables {
  readonly prep: Prepared;
  readonly count: number;
  readonly variants: number;
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** Variants of item i's shape are firstVariant[i] .. firstVariant[i] + turns[i] - 1. */
  readonly firstVariant: Int32Array;
  readonly turns: Int32Array;
  readonly shapeOf: Int32Array;
  readonly hullArea: Float64Array;
  readonly diameter: Float64Array;
  /** Table of variants a <= b at a * variants + b, made on first use. */
  readonly pairs: (PairTable | undefined)[];
  readonly halves: readonly Half[];
}

const known = new WeakMap<Prepared, Tables>();

export function tablesOf(prep: Prepared): Tables {
  const found = known.get(prep);
  if (found) return found;
  const made = makeTables(prep);
  known.set(prep, made);
  return made;
}

function makeTables(prep: Prepared): Tables {
  const { shapes, variants, items } = prep;
  const shape = (k: number): Shape => shapes[items[k]!.shape]!;
  const count = items.length;
  const of = <T extends Float64Array | Int32Array>(array: T, value: (k: number) => number): T => {
    for (let k = 0; k < count; k++) array[k] = value(k);
    return array;
  };
  const grow = prep.instance.spacing / 2;
  const halves = variants.map((variant): Half => {
    const poles = polesOf(variant.ring).map((value, k) => (k % 3 === 2 ? value + grow : value));
    const { diameter, hullArea } = shapes[variant.shape]!;
    return { width: variant.width, height: variant.height, poles, diameter, hullArea };
  });
  return {
    prep,
    count,
    variants: variants.length,
    width: Float64Array.from(variants, (v) => v.width),
    height: Float64Array.from(variants, (v) => v.height),
    firstVariant: of(new Int32Array(count), (k) => shape(k).variants[0]!.index),
    turns: of(new Int32Array(count), (k) => shape(k).variants.length),
    shapeOf: of(new Int32Array(count), (k) => items[k]!.shape),
    hullArea: of(new Float64Array(count), (k) => shape(k).hullArea),
    diameter: of(new Float64Array(count), (k) => shape(k).diameter),
    pairs: new Array<PairTable | undefined>(variants.length ** 2).fill(undefined),
    halves,
  };
}

function makePair(tables: Tables, a: number, b: number): PairTable {
  const cells = tables.variants > 120 ? 24 : 40;
  const { prep, halves } = tables;
  const pair = new PairTable(prep.region(a, b), halves[a]!, halves[b]!, cells, prep.touch);
  tables.pairs[a * tables.variants + b] = pair;
  return pair;
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
  length = 0;
  /** Evaluations so far. */
  used = 0;

  constructor(readonly tables: Tables) {
    const n = tables.count;
    this.x = new Float64Array(n);
    this.y = new Float64Array(n);
    this.right = new Float64Array(n);
    this.top = new Float64Array(n);
    this.variant = new Int32Array(n);
    this.weight = new Float64Array(n * n).fill(1);
  }

  put(i: number, v: number, x: number, y: number): void {
    this.variant[i] = v;
    this.x[i] = x;
    this.y[i] = y;
    this.right[i] = x + this.tables.width[v]!;
    this.top[i] = y + this.tables.height[v]!;
  }

  save(): Snapshot {
    return { variant: this.variant.slice(), x: this.x.slice(), y: this.y.slice() };
  }

  restore(from: Snapshot): void {
    for (let i = 0; i < this.tables.count; i++) this.put(i, from.variant[i]!, from.x[i]!, from.y[i]!);
  }

  /** Weighted overlap of item i were it turned to v at (x, y); stops at `bound` once the sum has reached it. */
  evaluate(i: number, v: number, x: number, y: number, bound: number): number {
    this.used++;
    const { count, variants, pairs, width, height } = this.tables;
    const { right, top, variant, weight } = this;
    const [xs, ys] = [this.x, this.y];
    const endX = x + width[v]!;
    const endY = y + height[v]!;
    const row = i * count;
    let sum = 0;
    for (let j = 0; j < count; j++) {
      if (xs[j]! >= endX || right[j]! <= x || ys[j]! >= endY || top[j]! <= y || j === i) continue;
      const w = variant[j]!;
      const bad =
        w <= v
          ? (pairs[w * variants + v] ?? makePair(this.tables, w, v)).severity(x - xs[j]!, y - ys[j]!)
          : (pairs[v * variants + w] ?? makePair(this.tables, v, w)).severity(xs[j]! - x, ys[j]! - y);
      if (bad === 0) continue;
      sum += bad * weight[row + j]!;
      if (sum >= bound) return bound;
    }
    return sum;
  }

  /** Plain overlap of the pair as it lies. */
  pairSeverity(i: number, j: number): number {
    if (this.x[i]! >= this.right[j]! || this.right[i]! <= this.x[j]!) return 0;
    if (this.y[i]! >= this.top[j]! || this.top[i]! <= this.y[j]!) return 0;
    const { variants, pairs } = this.tables;
    const [v, w] = [this.variant[i]!, this.variant[j]!];
    if (w <= v) {
      const pair = pairs[w * variants + v] ?? makePair(this.tables, w, v);
      return pair.severity(this.x[i]! - this.x[j]!, this.y[i]! - this.y[j]!);
    }
    const pair = pairs[v * variants + w] ?? makePair(this.tables, v, w);
    return pair.severity(this.x[j]! - this.x[i]!, this.y[j]! - this.y[i]!);
  }

  /** Weighted overlap of an item where it lies. */
  burden(i: number): number {
    return this.evaluate(i, this.variant[i]!, this.x[i]!, this.y[i]!, Infinity);
  }

  /** Sum over pairs of the overlap, weighted or plain. */
  loss(weighted: boolean): number {
    const n = this.tables.count;
    let sum = 0;
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        const bad = this.pairSeverity(i, j);
        if (bad > 0) sum += weighted ? bad * this.weight[i * n + j]! : bad;
      }
    return sum;
  }

  /** Items that overlap another. */
  colliding(): number[] {
    const n = this.tables.count;
    const hit = new Uint8Array(n);
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) if (this.pairSeverity(i, j) > 0) hit[i] = hit[j] = 1;
    return Array.from({ length: n }, (_, i) => i).filter((i) => hit[i]);
  }

  /** Guided local search: overlapping pairs grow dearer by 1.2 to 2 times, the others fade by 0.95, never below 1. */
  reweigh(): void {
    const n = this.tables.count;
    const bad = new Float64Array(n * n);
    let most = 0;
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) most = Math.max(most, (bad[i * n + j] = this.pairSeverity(i, j)));
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        const b = bad[i * n + j]!;
        const w = Math.max(1, this.weight[i * n + j]! * (b > 0 ? 1.2 + (0.8 * b) / most : 0.95));
        this.weight[i * n + j] = this.weight[j * n + i] = w;
      }
  }
}
