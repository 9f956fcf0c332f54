import { type Box, boxOf, type Curve, distanceTo } from './curve.ts';
import type { Vector } from './point.ts';

/** An edge and how far a point is from it. */
export interface NearestEdge {
  readonly index: number;
  readonly distance: number;
}

const LEAF = 4;

/**
 * Edges of an outline in a tree of boxes, each node a stretch of the outline. Finds the nearest edge in about the
 * logarithm of their number; with few edges it merely goes through them.
 */
export class EdgeTree {
  readonly curves: readonly Curve[];
  readonly #boxes: Box[] = [];
  #least = Infinity;
  #index = 0;

  constructor(curves: readonly Curve[]) {
    this.curves = curves;
    this.#build(0, 0, curves.length);
  }

  #build(node: number, from: number, to: number): Box {
    let box: Box;
    if (to - from <= LEAF) box = this.curves.slice(from, to).map(boxOf).reduce(around);
    else {
      const middle = (from + to) >> 1;
      box = around(this.#build(2 * node + 1, from, middle), this.#build(2 * node + 2, middle, to));
    }
    this.#boxes[node] = box;
    return box;
  }

  /**
   * The edge nearest to `p`. Once one is found within `enough`, it may be returned instead. `guess` is an edge likely to be
   * near; it is looked at first.
   */
  nearest(p: Vector, enough = 0, guess = 0): NearestEdge {
    this.#index = guess;
    this.#least = distanceTo(this.curves[guess]!, p);
    if (this.#least > enough) this.#search(0, 0, this.curves.length, p, enough);
    return { index: this.#index, distance: this.#least };
  }

  #search(node: number, from: number, to: number, p: Vector, enough: number): void {
    if (to - from <= LEAF) {
      for (let k = from; k < to; k++) {
        const distance = distanceTo(this.curves[k]!, p);
        if (distance < this.#least) [this.#least, this.#index] = [distance, k];
      }
      return;
    }
    const middle = (from + to) >> 1;
    const low = squareOff(this.#boxes[2 * node + 1]!, p);
    const high = squareOff(this.#boxes[2 * node + 2]!, p);
    for (const isLow of low <= high ? [true, false] : [false, true]) {
      if (this.#least <= enough || (isLow ? low : high) >= this.#least * this.#least) continue;
      if (isLow) this.#search(2 * node + 1, from, middle, p, enough);
      else this.#search(2 * node + 2, middle, to, p, enough);
    }
  }
}

function around(a: Box, b: Box): Box {
  return {
    ...{ minX: Math.min(a.minX, b.minX), minY: Math.min(a.minY, b.minY) },
    ...{ maxX: Math.max(a.maxX, b.maxX), maxY: Math.max(a.maxY, b.maxY) },
  };
}

/** Squared distance of a point from a box, 0 inside. */
function squareOff(box: Box, p: Vector): number {
  const x = Math.max(box.minX - p.x, 0, p.x - box.maxX);
  const y = Math.max(box.minY - p.y, 0, p.y - box.maxY);
  return x * x + y * y;
}
