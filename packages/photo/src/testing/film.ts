/** The plane of the film as grey values on square cells, mm, y up; what cameras of a scene look at. */
export interface Film {
  readonly x: number;
  readonly y: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
  /** 0..255 under even light, row by row from the lowest y. */
  readonly grey: Float32Array;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Film of a given extent, filled cell by cell. */
export function makeFilm(half: Point, step: number, fill: (x: number, y: number) => number): Film {
  const columns = Math.ceil((2 * half.x) / step) + 1;
  const rows = Math.ceil((2 * half.y) / step) + 1;
  const grey = new Float32Array(columns * rows);
  for (let j = 0, k = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++, k++) grey[k] = fill(i * step - half.x, j * step - half.y);
  }
  return { x: -half.x, y: -half.y, step, columns, rows, grey };
}

/** Changes the cells within a box; `paint` is given the cell's place and old value. */
export function paintBox(
  film: Film,
  box: readonly [number, number, number, number],
  paint: (x: number, y: number, old: number) => number,
): void {
  const { step, columns, rows, grey } = film;
  const cell = (value: number, most: number) => Math.max(0, Math.min(most, Math.round(value)));
  const [i0, i1] = [cell((box[0] - film.x) / step, columns), cell((box[2] - film.x) / step + 1, columns)];
  const [j0, j1] = [cell((box[1] - film.y) / step, rows), cell((box[3] - film.y) / step + 1, rows)];
  for (let j = j0; j < j1; j++) {
    for (let i = i0; i < i1; i++) {
      const k = j * columns + i;
      grey[k] = paint(film.x + i * step, film.y + j * step, grey[k]!);
    }
  }
}

/** How much of a cell at a signed distance from an edge lies inside (positive inside), 0..1. */
export const coverage = (distance: number, step: number) => Math.min(1, Math.max(0, 0.5 + distance / step));

/** A turned rectangle: how deep a point lies inside it, mm, negative outside. */
export function depthIn(
  { x, y }: Point,
  centre: Point,
  angle: number,
  halfWidth: number,
  halfHeight: number,
): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const u = c * (x - centre.x) + s * (y - centre.y);
  const v = -s * (x - centre.x) + c * (y - centre.y);
  return Math.min(halfWidth - Math.abs(u), halfHeight - Math.abs(v));
}

export interface StrokePoint extends Point {
  /** Half the width here, mm. */
  readonly half: number;
  /** How much of the light the ink takes here, 0..1. */
  readonly density: number;
}

/** A pen stroke through close points; where strokes of one call overlap the ink does not darken twice. */
export function paintStroke(film: Film, points: readonly StrokePoint[], ink: number): void {
  const cover = new Map<number, number>();
  const { step, columns, rows } = film;
  for (let p = 0; p + 1 < points.length; p++) {
    const [a, b] = [points[p]!, points[p + 1]!];
    if (a.density === 0 || b.density === 0) continue;
    const reach = Math.max(a.half, b.half) + step;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const length2 = dx * dx + dy * dy || 1;
    const i0 = Math.max(0, Math.floor((Math.min(a.x, b.x) - reach - film.x) / step));
    const i1 = Math.min(columns - 1, Math.ceil((Math.max(a.x, b.x) + reach - film.x) / step));
    const j0 = Math.max(0, Math.floor((Math.min(a.y, b.y) - reach - film.y) / step));
    const j1 = Math.min(rows - 1, Math.ceil((Math.max(a.y, b.y) + reach - film.y) / step));
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const [x, y] = [film.x + i * step - a.x, film.y + j * step - a.y];
        const t = Math.min(1, Math.max(0, (x * dx + y * dy) / length2));
        const away = Math.hypot(x - t * dx, y - t * dy);
        const half = a.half + t * (b.half - a.half);
        const take = coverage(half - away, step) * (a.density + t * (b.density - a.density));
        const k = j * columns + i;
        if (take > (cover.get(k) ?? 0)) cover.set(k, take);
      }
    }
  }
  for (const [k, take] of cover) film.grey[k] = film.grey[k]! + take * (ink - film.grey[k]!);
}
