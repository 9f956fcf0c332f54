import type { Vector } from '@panewright/geometry';
import type { EllipseCurve, FileCurve, Weighted } from './drawing.ts';

/** Curves that are fitted by arcs. */
export type FreeCurve = Extract<FileCurve, { kind: 'ellipse' | 'bezier' }>;

/** Directions nearer than this run on smoothly, radians: files round their numbers. */
const SMOOTH = 2e-3;
/** Where a curve stands still its direction is taken this far into it. */
const STEP = 1e-5;

export function pointOf(curve: FreeCurve, t: number): Vector {
  return curve.kind === 'ellipse' ? onEllipse(curve, t) : projected(deCasteljau(curve.points, t));
}

function onEllipse({ centre, u, v, start, end }: EllipseCurve, t: number): Vector {
  const angle = start + t * (end - start);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: centre.x + u.x * cos + v.x * sin, y: centre.y + u.y * cos + v.y * sin };
}

const projected = ({ x, y, w }: Weighted): Vector => ({ x: x / w, y: y / w });

/** @source sources.md#farin-2002 */
function deCasteljau(points: readonly Weighted[], t: number): Weighted {
  let row = points;
  while (row.length > 1) {
    const above = row;
    row = above.slice(1).map((q, i) => {
      const p = above[i]!;
      return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y), w: p.w + t * (q.w - p.w) };
    });
  }
  return row[0]!;
}

function derivative(curve: FreeCurve, t: number): Vector {
  if (curve.kind === 'ellipse') {
    const angle = curve.start + t * (curve.end - curve.start);
    const [cos, sin, rate] = [Math.cos(angle), Math.sin(angle), curve.end - curve.start];
    return {
      x: rate * (curve.v.x * cos - curve.u.x * sin),
      y: rate * (curve.v.y * cos - curve.u.y * sin),
    };
  }
  const { points } = curve;
  const degree = points.length - 1;
  const steps = points.slice(1).map((q, i) => {
    const p = points[i]!;
    return { x: degree * (q.x - p.x), y: degree * (q.y - p.y), w: degree * (q.w - p.w) };
  });
  const at = deCasteljau(points, t);
  const rate = deCasteljau(steps, t);
  return { x: (rate.x * at.w - at.x * rate.w) / at.w ** 2, y: (rate.y * at.w - at.y * rate.w) / at.w ** 2 };
}

/** Unit direction of travel at `t`, or undefined where even a small way on there is none. */
export function directionOf(curve: FreeCurve, t: number): Vector | undefined {
  const rate = derivative(curve, t);
  const speed = Math.hypot(rate.x, rate.y);
  const [before, after] = [pointOf(curve, Math.max(0, t - STEP)), pointOf(curve, Math.min(1, t + STEP))];
  const way = { x: after.x - before.x, y: after.y - before.y };
  const reach = Math.hypot(way.x, way.y);
  // A derivative much smaller than its surroundings is rounding noise: the secant tells the way.
  if (speed * STEP > 0.5 * reach) return { x: rate.x / speed, y: rate.y / speed };
  return reach > 0 ? { x: way.x / reach, y: way.y / reach } : undefined;
}

/** Free curves that follow each other without a corner, run through as one: t from 0 to `spans`. */
export class SmoothCurve {
  readonly curves: readonly FreeCurve[];

  constructor(curves: readonly FreeCurve[]) {
    this.curves = curves;
  }

  get spans(): number {
    return this.curves.length;
  }

  point(t: number): Vector {
    const [curve, own] = this.#place(t);
    return pointOf(curve, own);
  }

  direction(t: number): Vector {
    const [curve, own] = this.#place(t);
    return directionOf(curve, own) ?? { x: 1, y: 0 };
  }

  #place(t: number): readonly [FreeCurve, number] {
    const index = Math.min(Math.max(Math.floor(t), 0), this.spans - 1);
    return [this.curves[index]!, t - index];
  }
}

/** Neighbouring free curves gathered as far as they run on smoothly. */
export function smoothRuns(curves: readonly FreeCurve[]): readonly SmoothCurve[] {
  const runs: FreeCurve[][] = [];
  for (const curve of curves) {
    const last = runs.at(-1)?.at(-1);
    if (last !== undefined && runsOn(last, curve)) runs.at(-1)!.push(curve);
    else runs.push([curve]);
  }
  return runs.map((run) => new SmoothCurve(run));
}

function runsOn(first: FreeCurve, second: FreeCurve): boolean {
  const [a, b] = [directionOf(first, 1), directionOf(second, 0)];
  if (a === undefined || b === undefined) return false;
  return Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) < SMOOTH;
}
