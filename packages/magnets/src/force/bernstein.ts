/**
 * How far the nearest singular point lies from an interval, measured as Gauss rules feel it: an n-point rule
 * errs by about exp(-2 n ln(rho)), rho the Bernstein ellipse through the point. Source: sources.md#trefethen-atap.
 */

const SIZES = [8, 12, 16, 20, 24, 28, 32, 40, 48, 56, 64, 80, 96, 128, 192, 256, 384, 512];

/** The finest rule used; a case that needs more is refused. */
export const MOST_NODES = 512;

/** ln(rho) of the ellipse through (re, im), for [-1, 1]. */
function ellipse(re: number, im: number): number {
  const a = 0.5 * (Math.hypot(re + 1, im) + Math.hypot(re - 1, im));
  return Math.log(a + Math.sqrt(Math.max(0, a * a - 1)));
}

const angle = new Float64Array(2);

/** Writes the real and (positive) imaginary part of acos(x + iy). Source: sources.md#dlmf-4-23. */
export function complexArccosine(x: number, y: number, out: Float64Array): void {
  const plus = Math.sqrt((x + 1) * (x + 1) + y * y);
  const minus = Math.sqrt((x - 1) * (x - 1) + y * y);
  const a = Math.max(1, 0.5 * (plus + minus));
  out[0] = Math.acos(Math.min(1, Math.max(-1, 0.5 * (plus - minus))));
  out[1] = Math.log(a + Math.sqrt(a * a - 1));
}

/** ln(rho) for the point (re, im) of the t plane, where t = centre - half * cos(theta), theta on [0, pi]. */
export function ellipseThroughCosine(centre: number, half: number, re: number, im: number): number {
  complexArccosine((centre - re) / half, im / half, angle);
  return ellipse((2 * angle[0]!) / Math.PI - 1, (2 * angle[1]!) / Math.PI);
}

/** The smallest kept rule of at least `needed` nodes; Infinity past the finest. */
export function ruleSize(needed: number): number {
  for (const size of SIZES) if (size >= needed) return size;
  return Number.POSITIVE_INFINITY;
}
