/**
 * Force on a disc above a block. The field of each charged rectangle, integrated along a chord of the disc, has
 * a closed form; the chords are then summed by Gauss rules in the angle theta, x = centre + R cos(theta).
 * Lengths in mm; the result is in mm^2 per unit polarisations (multiply by FORCE_UNIT * Ja * Jb).
 *
 * Error control as in the disc pair: singular points of the chord integrand are known (a chord over an edge of
 * the rectangle, its end over an edge or a corner); pieces end at the near ones and the node count follows them.
 * Source: rectangle field sources.md#magnets-rectangle-field; chord integrals are derived there.
 */
import { complexArccosine, ellipseThroughCosine, MOST_NODES, ruleSize } from './bernstein.ts';
import { cosineRule } from './gaussLegendre.ts';

export interface MixedPairGeometry {
  readonly width: number;
  readonly height: number;
  readonly blockThickness: number;
  readonly radius: number;
  readonly discThickness: number;
  readonly gap: number;
  /** Centre of the disc from the axis of the block. */
  readonly dx: number;
  readonly dy: number;
}

interface SingularPoint {
  readonly re: number;
  readonly im: number;
}

const DIGITS = 21;
/** Pieces end at singular points nearer than this (radians). */
const SPLIT_WITHIN = 0.4;

function singularPoints(pair: MixedPairGeometry): SingularPoint[] {
  const { radius, gap, dx, dy } = pair;
  const points: SingularPoint[] = [];
  const out = new Float64Array(2);
  for (const side of [-1, 1]) {
    complexArccosine(((side * pair.width) / 2 - dx) / radius, gap / radius, out);
    points.push({ re: out[0]!, im: out[1]! });
    for (const end of [-1, 1]) {
      complexArccosine((end * ((side * pair.height) / 2 - dy)) / radius, gap / radius, out);
      points.push({ re: Math.PI / 2 - out[0]!, im: out[1]! }, { re: Math.PI / 2 + out[0]!, im: out[1]! });
      const x = (side * pair.width) / 2 - dx;
      const y = (end * pair.height) / 2 - dy;
      const reach = Math.hypot(x, y);
      if (reach === 0) continue;
      const cosh = (radius * radius + reach * reach + gap * gap) / (2 * radius * reach);
      points.push({ re: Math.abs(Math.atan2(y, x)), im: Math.acosh(cosh) });
    }
  }
  return points;
}

const zetas = new Float64Array(4);
const signs = new Float64Array([-1, -1, 1, 1]);

/** Adds the chord at x, from `low` to `high`, times `weight`, to the three sums in `out`. */
function addChord(
  x: number,
  low: number,
  high: number,
  weight: number,
  pair: MixedPairGeometry,
  out: Float64Array,
) {
  const a = pair.width / 2;
  const b = pair.height / 2;
  for (let corner = 0; corner < 8; corner++) {
    const left = corner & 1;
    const end = corner & 2;
    const below = corner & 4;
    const sx = left ? x - a : x + a;
    const sy = (end ? low : high) + (below ? -b : b);
    const sign = (left ? -weight : weight) * (end ? -1 : 1) * (below ? -1 : 1);
    for (let f = 0; f < 4; f++) {
      const zeta = zetas[f]!;
      const z2 = zeta * zeta;
      const r = Math.sqrt(sx * sx + sy * sy + z2);
      const lx = sx >= 0 ? Math.log(r + sx) : Math.log((sy * sy + z2) / (r - sx));
      const ly = sy >= 0 ? Math.log(r + sy) : Math.log((sx * sx + z2) / (r - sy));
      const turn = Math.atan((sx * sy) / (zeta * r));
      const s = sign * signs[f]!;
      out[0]! -= s * (sy * ly - r);
      out[1]! -= s * (sy * lx + sx * ly - zeta * turn);
      out[2]! += s * (sy * turn + zeta * lx);
    }
  }
}

/** Writes (x, y, z) of the force on the disc into `out`. False when the gap is too small for the finest rule. */
export function mixedPairForce(pair: MixedPairGeometry, out: Float64Array): boolean {
  const { gap, blockThickness, discThickness, radius, dx, dy } = pair;
  zetas[0] = gap;
  zetas[1] = gap + blockThickness + discThickness;
  zetas[2] = gap + blockThickness;
  zetas[3] = gap + discThickness;
  out[0] = out[1] = out[2] = 0;
  const digits = DIGITS + Math.log(1 + (gap * gap) / (blockThickness * discThickness));
  const points = singularPoints(pair);
  const inner = points
    .filter(({ re, im }) => im < SPLIT_WITHIN && re > 0 && re < Math.PI)
    .map(({ re }) => re);
  const breaks = [0, ...inner.sort((p, q) => p - q), Math.PI];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const centre = 0.5 * (breaks[i + 1]! + breaks[i]!);
    const half = 0.5 * (breaks[i + 1]! - breaks[i]!);
    if (half < 1e-12) continue;
    let nearest = Number.POSITIVE_INFINITY;
    for (const { re, im } of points) nearest = Math.min(nearest, ellipseThroughCosine(centre, half, re, im));
    const n = ruleSize(digits / (2 * nearest));
    if (n > MOST_NODES) return false;
    const { cosine, weight } = cosineRule(n);
    for (let k = 0; k < n; k++) {
      const theta = centre - half * cosine[k]!;
      const rise = radius * Math.sin(theta);
      addChord(dx + radius * Math.cos(theta), dy - rise, dy + rise, half * weight[k]! * rise, pair, out);
    }
  }
  return true;
}
