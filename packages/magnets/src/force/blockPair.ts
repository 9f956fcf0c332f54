/**
 * Force and stiffness between two blocks with parallel sides, displaced both ways: Akoun and Yonnet's
 * closed form. Lengths in mm, polarisation left out; multiply by FORCE_UNIT * Ja * Jb for newtons.
 * Source: sources.md#akoun-yonnet-1984, as printed in sources.md#robertson-2013.
 *
 * Corner differences that coincide (equal blocks) are merged with a weight, which takes the 64 terms to 27.
 */
export interface BlockPairGeometry {
  readonly widthA: number;
  readonly heightA: number;
  readonly thicknessA: number;
  readonly widthB: number;
  readonly heightB: number;
  readonly thicknessB: number;
  readonly gap: number;
  readonly dx: number;
  readonly dy: number;
}

const us = new Float64Array(4);
const vs = new Float64Array(4);
const ws = new Float64Array(4);
const uWeights = new Float64Array(4);
const vWeights = new Float64Array(4);
const wWeights = new Float64Array(4);

/** Fills distinct differences and their signed weights for one in-plane axis; returns how many. */
function planeDifferences(
  shift: number,
  sizeA: number,
  sizeB: number,
  at: Float64Array,
  weight: Float64Array,
) {
  const sum = (sizeA + sizeB) / 2;
  const difference = (sizeB - sizeA) / 2;
  at[0] = shift - sum;
  at[1] = shift + sum;
  weight[0] = weight[1] = -1;
  at[2] = shift + difference;
  weight[2] = difference === 0 ? 2 : 1;
  if (difference === 0) return 3;
  at[3] = shift - difference;
  weight[3] = 1;
  return 4;
}

/** The same for the axis of magnetisation, where every difference is positive. */
function depthDifferences(gap: number, thicknessA: number, thicknessB: number) {
  ws[0] = gap;
  ws[1] = gap + thicknessA + thicknessB;
  wWeights[0] = wWeights[1] = -1;
  ws[2] = gap + thicknessB;
  wWeights[2] = thicknessA === thicknessB ? 2 : 1;
  if (thicknessA === thicknessB) return 3;
  ws[3] = gap + thicknessA;
  wWeights[3] = 1;
  return 4;
}

/** ln(r - u) without cancellation when u is positive and close to r; `rest` is r^2 - u^2. */
const logLess = (r: number, u: number, rest: number) => (u <= 0 ? Math.log(r - u) : Math.log(rest / (r + u)));

/** Writes (x, y, z) of the force on b, in mm^2 per unit polarisations, into `out`. */
export function blockPairForce(pair: BlockPairGeometry, out: Float64Array): void {
  const nu = planeDifferences(pair.dx, pair.widthA, pair.widthB, us, uWeights);
  const nv = planeDifferences(pair.dy, pair.heightA, pair.heightB, vs, vWeights);
  const nw = depthDifferences(pair.gap, pair.thicknessA, pair.thicknessB);
  let fx = 0;
  let fy = 0;
  let fz = 0;
  for (let k = 0; k < nw; k++) {
    const w = ws[k]!;
    const w2 = w * w;
    for (let j = 0; j < nv; j++) {
      const v = vs[j]!;
      const v2 = v * v;
      const rest = v2 + w2;
      const sign = wWeights[k]! * vWeights[j]!;
      for (let i = 0; i < nu; i++) {
        const u = us[i]!;
        const u2 = u * u;
        const r = Math.sqrt(u2 + rest);
        const s = sign * uWeights[i]!;
        const lu = logLess(r, u, rest);
        const lv = logLess(r, v, u2 + w2);
        const angle = Math.atan((u * v) / (r * w));
        const uv = u * v;
        fx += s * (0.5 * (v2 - w2) * lu + uv * lv + v * w * angle + 0.5 * r * u);
        fy += s * (0.5 * (u2 - w2) * lv + uv * lu + u * w * angle + 0.5 * r * v);
        fz += s * (uv * angle - w * (u * lu + v * lv + r));
      }
    }
  }
  out[0] = fx;
  out[1] = fy;
  out[2] = fz;
}

/** Writes (kx, ky, kz) = -dF/ds, in mm per unit polarisations, into `out`; positive draws back. */
export function blockPairStiffness(pair: BlockPairGeometry, out: Float64Array): void {
  const nu = planeDifferences(pair.dx, pair.widthA, pair.widthB, us, uWeights);
  const nv = planeDifferences(pair.dy, pair.heightA, pair.heightB, vs, vWeights);
  const nw = depthDifferences(pair.gap, pair.thicknessA, pair.thicknessB);
  let kx = 0;
  let ky = 0;
  for (let k = 0; k < nw; k++) {
    const w2 = ws[k]! ** 2;
    for (let j = 0; j < nv; j++) {
      const v = vs[j]!;
      for (let i = 0; i < nu; i++) {
        const u = us[i]!;
        const s = wWeights[k]! * vWeights[j]! * uWeights[i]!;
        const r = Math.sqrt(u * u + v * v + w2);
        kx -= s * ((v * u * u) / (u * u + w2) + r + v * logLess(r, v, u * u + w2));
        ky -= s * ((u * v * v) / (v * v + w2) + r + u * logLess(r, u, v * v + w2));
      }
    }
  }
  out[0] = kx;
  out[1] = ky;
  out[2] = -kx - ky;
}

/**
 * Flux of one charged rectangle, of unit charge density, through an equal rectangle `zeta` above it, times
 * 4 pi: the z-part of the same closed form for a single pair of faces. mm^2.
 */
export function rectangleFlux(width: number, height: number, zeta: number): number {
  let total = 0;
  for (let i = -1; i <= 1; i++) {
    for (let j = -1; j <= 1; j++) {
      const u = i * width;
      const v = j * height;
      const r = Math.sqrt(u * u + v * v + zeta * zeta);
      const weight = (i === 0 ? 2 : -1) * (j === 0 ? 2 : -1);
      const logs = u * logLess(r, u, v * v + zeta * zeta) + v * logLess(r, v, u * u + zeta * zeta);
      total += weight * (u * v * Math.atan((u * v) / (r * zeta)) - zeta * (logs + r));
    }
  }
  return total;
}
