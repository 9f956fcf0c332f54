import { type Millimetre, mm, mm2, type SquareMillimetre } from '@panewright/quantity';
import { hullOf } from './convexHull.ts';
import { curvesOf } from './curve.ts';
import { flattened } from './flatten.ts';
import type { Outline } from './outline.ts';
import type { Vector } from './point.ts';

/** What of a shape no turn, shift or mirroring changes, all of its convex hull. Plain numbers, so that it can be kept. */
export interface ShapeMeasure {
  /** Area of the hull. */
  readonly area: SquareMillimetre;
  /** Least and greatest distance between two parallel lines that hold the shape between them. */
  readonly least: Millimetre;
  readonly greatest: Millimetre;
  /**
   * Amounts of the hull's reach by direction in its Fourier series, mm: the mean (the length round the hull over 2π), then
   * of two, three, … waves round, each as its root mean square. The single wave is left out: a shift changes it.
   */
  readonly waves: readonly number[];
}

/** Waves that are measured: in trials with windows, more of them told no further pair apart. */
const WAVES = 12;
/** The hull is that of the shape with arcs as chords within this, mm; it lies inside the true one. */
const FLAT = 0.01;

/**
 * Measures a shape once, so that it can be held against thousands of others by `leastDeviation`.
 *
 * @range any outline
 * @accuracy as if every point lay within 0.01 mm of where it is; `leastDeviation` allows for it
 * @source of a polygon the reach h(θ) has the waves Σ side · exp(-i k φ) / (2π (1 - k²)) with φ the side's normal, since
 *   h + h″ is the length of boundary by normal: sources.md#groemer-1996; widths: sources.md#toussaint-1983
 */
export function measureShape(outline: Outline): ShapeMeasure {
  const hull = hullOf(flattened(curvesOf(outline), FLAT));
  const { least, greatest } = widths(hull);
  return { area: mm2(areaOf(hull)), least: mm(least), greatest: mm(greatest), waves: wavesOf(hull) };
}

/**
 * A worst deviation that no motion, mirrored or not, can beat: in a microsecond, to leave out pairs that are plainly unlike.
 *
 * @returns mm, 0 when it can tell nothing
 * @source if each shape lies within d of the other, so do their hulls. Then their reaches differ by at most d in every
 *   direction, hence in root mean square (Parseval; the triangle inequality for each wave frees it of the turn), their
 *   widths by at most 2d, and by Steiner's formula their areas by at most P d + π d²: sources.md#groemer-1996
 */
export function leastDeviation(first: ShapeMeasure, second: ShapeMeasure): Millimetre {
  const byWaves = apart(first.waves, second.waves) - 2 * FLAT;
  const byWidth =
    Math.max(Math.abs(first.least - second.least), Math.abs(first.greatest - second.greatest)) / 2 - 2 * FLAT;
  const [little, big] = first.area < second.area ? [first, second] : [second, first];
  const around = 2 * Math.PI * (little.waves[0]! + FLAT);
  const more = big.area - little.area - FLAT * around - Math.PI * FLAT ** 2;
  const byArea = (Math.sqrt(around ** 2 + 4 * Math.PI * Math.max(0, more)) - around) / (2 * Math.PI);
  return mm(Math.max(0, byWaves, byWidth, byArea - FLAT));
}

function apart(a: readonly number[], b: readonly number[]): number {
  let squares = 0;
  for (let k = 0; k < a.length && k < b.length; k++) squares += (a[k]! - b[k]!) ** 2;
  return Math.sqrt(squares);
}

function wavesOf(hull: readonly Vector[]): number[] {
  const cosines = new Array<number>(WAVES + 1).fill(0);
  const sines = new Array<number>(WAVES + 1).fill(0);
  hull.forEach((a, i) => {
    const b = hull[(i + 1) % hull.length]!;
    const side = Math.hypot(b.x - a.x, b.y - a.y);
    const normal = Math.atan2(a.x - b.x, b.y - a.y);
    for (let k = 0; k <= WAVES; k++) {
      cosines[k]! += side * Math.cos(k * normal);
      sines[k]! += side * Math.sin(k * normal);
    }
  });
  const amount = (k: number) => Math.hypot(cosines[k]!, sines[k]!) / (2 * Math.PI * Math.abs(1 - k * k));
  const waves = [amount(0)];
  for (let k = 2; k <= WAVES; k++) waves.push(Math.SQRT2 * amount(k));
  return waves;
}

function areaOf(hull: readonly Vector[]): number {
  const origin = hull[0]!;
  let twice = 0;
  hull.forEach((a, i) => {
    const b = hull[(i + 1) % hull.length]!;
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  });
  return twice / 2;
}

/** Round the hull with the side, the farthest corner from each moves on: least width; two corners farthest apart. */
function widths(hull: readonly Vector[]): { readonly least: number; readonly greatest: number } {
  const n = hull.length;
  const corner = (i: number) => hull[i % n]!;
  let least = Infinity;
  let greatest = 0;
  let far = 1;
  for (let i = 0; i < n; i++) {
    const [a, b] = [corner(i), corner(i + 1)];
    const side = Math.hypot(b.x - a.x, b.y - a.y);
    const off = (p: Vector) => ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / side;
    const start = far;
    while (off(corner(far + 1)) >= off(corner(far)) && far < start + n) {
      greatest = Math.max(greatest, distance(a, corner(far)));
      far++;
    }
    least = Math.min(least, off(corner(far)));
    greatest = Math.max(greatest, distance(a, corner(far)), distance(b, corner(far)));
  }
  return { least, greatest };
}

const distance = (p: Vector, q: Vector) => Math.hypot(p.x - q.x, p.y - q.y);
