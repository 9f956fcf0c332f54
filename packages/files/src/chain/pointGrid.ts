import type { Vector } from '@panewright/geometry';

/** Points in square cells, so that those near a place are found without going through all. */
export class PointGrid {
  readonly #points: readonly Vector[];
  readonly #cell: number;
  readonly #cells = new Map<string, number[]>();

  constructor(points: readonly Vector[], cell: number) {
    this.#points = points;
    this.#cell = cell;
    points.forEach((p, index) => {
      const key = this.#key(Math.floor(p.x / cell), Math.floor(p.y / cell));
      const held = this.#cells.get(key);
      if (held) held.push(index);
      else this.#cells.set(key, [index]);
    });
  }

  #key(i: number, j: number): string {
    return `${i} ${j}`;
  }

  /** Indices of the points no farther than `reach` from `p`; `reach` is a cell's side at most. */
  within(p: Vector, reach: number): readonly number[] {
    const [i, j] = [Math.floor(p.x / this.#cell), Math.floor(p.y / this.#cell)];
    const found: number[] = [];
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++)
        for (const index of this.#cells.get(this.#key(i + di, j + dj)) ?? []) {
          const q = this.#points[index]!;
          if (Math.hypot(q.x - p.x, q.y - p.y) <= reach) found.push(index);
        }
    return found;
  }
}
