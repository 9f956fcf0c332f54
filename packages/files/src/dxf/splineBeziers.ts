import type { FileCurve, Weighted } from '../curve/drawing.ts';

/**
 * A B-spline's spans as Bézier curves, exact. Control points come times their weights.
 *
 * @param knots not falling, `controls.length + degree + 1` of them
 * @source blossoming: sources.md#farin-2002
 */
export function splineBeziers(
  degree: number,
  knots: readonly number[],
  controls: readonly Weighted[],
): readonly FileCurve[] {
  const curves: FileCurve[] = [];
  for (let k = degree; k < controls.length; k++) {
    const [low, high] = [knots[k]!, knots[k + 1]!];
    if (!(high > low)) continue;
    const points = Array.from({ length: degree + 1 }, (_, j) => {
      const values = Array.from({ length: degree }, (_, i) => (i < degree - j ? low : high));
      return blossom(degree, knots, controls, k, values);
    });
    curves.push({ kind: 'bezier', points });
  }
  return curves;
}

/** De Boor's scheme on span `k`, each level with a parameter of its own. */
function blossom(
  degree: number,
  knots: readonly number[],
  controls: readonly Weighted[],
  k: number,
  values: readonly number[],
): Weighted {
  const row = controls.slice(k - degree, k + 1);
  for (let level = 1; level <= degree; level++) {
    const value = values[level - 1]!;
    for (let j = degree; j >= level; j--) {
      const left = knots[k - degree + j]!;
      const right = knots[k + 1 + j - level]!;
      const t = (value - left) / (right - left);
      const [p, q] = [row[j - 1]!, row[j]!];
      row[j] = { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y), w: p.w + t * (q.w - p.w) };
    }
  }
  return row[degree]!;
}
