/**
 * Force between two discs with parallel axes, displaced or not: the lens-ring single integral.
 *
 * Point pairs of the two faces with in-plane separation t from the axis offset carry the weight of the lens in
 * which circles R1 and R2, centres t apart, overlap. The double surface integral is then one integral of that
 * weight times the field of a charged ring of radius t seen at offset p, which needs only K and E.
 * Lengths in mm; the result is in mm^2 per unit polarisations (multiply by FORCE_UNIT * Ja * Jb).
 *
 * Error control: the integrand of each piece is analytic but for known points (the ring's own edge at
 * t = +-p +- i zeta, and the lens' own kinks), so the number of Gauss nodes comes from the ellipse that reaches
 * the nearest of them. The aim is 1e-9 of the force.
 * Source: sources.md#disc-lens-ring; ring field sources.md#jackson; node count sources.md#trefethen-atap.
 */
import { ellipseThroughCosine, MOST_NODES, ruleSize } from './bernstein.ts';
import { cosineRule } from './gaussLegendre.ts';

export interface DiscPairGeometry {
  readonly radiusA: number;
  readonly radiusB: number;
  readonly thicknessA: number;
  readonly thicknessB: number;
  readonly gap: number;
  /** In-plane distance between the axes, >= 0. */
  readonly offset: number;
}

/** Digits asked of the strong and of the weak singular points, as natural logarithms. */
const STRONG = 25;
const WEAK = 14;

const zetas = new Float64Array(4);
const signs = new Float64Array(4);
let faces = 0;

function setFaces(gap: number, thicknessA: number, thicknessB: number): void {
  zetas[0] = gap;
  zetas[1] = gap + thicknessA + thicknessB;
  signs[0] = signs[1] = -1;
  zetas[2] = gap + thicknessB;
  const same = thicknessA === thicknessB;
  signs[2] = same ? 2 : 1;
  zetas[3] = gap + thicknessA;
  signs[3] = 1;
  faces = same ? 3 : 4;
}

/** Gauss nodes one piece needs. */
function nodesFor(from: number, to: number, pair: DiscPairGeometry): number {
  const centre = 0.5 * (from + to);
  const half = 0.5 * (to - from);
  const far = pair.radiusA + pair.radiusB;
  const step = Math.abs(pair.radiusA - pair.radiusB);
  // Radii this close leave a kink of the order of step^2, too weak to matter.
  const near = step < 1e-5 * far ? 0 : step;
  const strong = Math.min(
    ellipseThroughCosine(centre, half, pair.offset, pair.gap),
    ellipseThroughCosine(centre, half, -pair.offset, pair.gap),
  );
  // Four faces nearly cancel when the magnets are thin against the gap; their sum needs that many more digits.
  const cancelled = Math.log(1 + (pair.gap * pair.gap) / (pair.thicknessA * pair.thicknessB));
  let needed = (STRONG + cancelled) / (2 * strong);
  if (to < far) needed = Math.max(needed, WEAK / (2 * ellipseThroughCosine(centre, half, far, 0)));
  if (from > near && near > 0)
    needed = Math.max(needed, WEAK / (2 * ellipseThroughCosine(centre, half, near, 0)));
  if (from >= near && near > 0)
    needed = Math.max(needed, WEAK / (2 * ellipseThroughCosine(centre, half, -near, 0)));
  return ruleSize(needed);
}

/** Area in which two circles overlap, centres t apart, |R1 - R2| < t < R1 + R2. */
function lens(t: number, r1: number, r2: number): number {
  if (r1 === r2) {
    return (
      2 * r1 * r1 * Math.acos(Math.min(1, t / (2 * r1))) -
      0.5 * t * Math.sqrt(Math.max(0, 4 * r1 * r1 - t * t))
    );
  }
  const difference = r1 * r1 - r2 * r2;
  const c1 = Math.min(1, Math.max(-1, (t * t + difference) / (2 * t * r1)));
  const c2 = Math.min(1, Math.max(-1, (t * t - difference) / (2 * t * r2)));
  const product = (r1 + r2 - t) * (t + r1 - r2) * (t - r1 + r2) * (t + r1 + r2);
  return r1 * r1 * Math.acos(c1) + r2 * r2 * Math.acos(c2) - 0.5 * Math.sqrt(Math.max(0, product));
}

let sumAlong = 0;
let sumNormal = 0;

/** Adds one piece with elliptic rings. K and E are unrolled here: a call per ring costs a third of the speed. */
function addRings(from: number, to: number, n: number, pair: DiscPairGeometry): void {
  const { radiusA, radiusB, offset: p } = pair;
  const { cosine, weight } = cosineRule(n);
  const centre = 0.5 * (from + to);
  const half = 0.5 * (to - from);
  const flat = to <= Math.abs(radiusA - radiusB) ? Math.PI * Math.min(radiusA, radiusB) ** 2 : 0;
  for (let i = 0; i < n; i++) {
    const t = centre - half * cosine[i]!;
    const lensWeight = half * weight[i]! * t * (flat > 0 ? flat : lens(t, radiusA, radiusB));
    const sum2 = (p + t) * (p + t);
    const difference2 = (p - t) * (p - t);
    const fall = (p - t) * (p + t);
    let normal = 0;
    let along = 0;
    for (let f = 0; f < faces; f++) {
      const zeta = zetas[f]!;
      const z2 = zeta * zeta;
      const far2 = sum2 + z2;
      const near2 = difference2 + z2;
      const far = Math.sqrt(far2);
      let a = 1;
      let b = Math.sqrt(near2) / far;
      let c = 0;
      let s = 1 - near2 / far2;
      let power = 1;
      do {
        c = 0.5 * (a - b);
        const mean = 0.5 * (a + b);
        b = Math.sqrt(a * b);
        a = mean;
        power *= 2;
        s += power * c * c;
      } while (c > 1e-4 * a);
      const i1 = (4 * Math.PI) / ((a + b) * far);
      const i3 = (i1 * (1 - 0.5 * s)) / near2;
      normal += signs[f]! * zeta * i3;
      along += signs[f]! * (i1 + (fall - z2) * i3);
    }
    sumNormal += lensWeight * normal;
    sumAlong += lensWeight * along;
  }
}

/** Adds one piece with the rings' field expanded on their axis; `along` is then per mm of offset. */
function addAxialRings(from: number, to: number, n: number, pair: DiscPairGeometry): void {
  const { radiusA, radiusB } = pair;
  const { cosine, weight } = cosineRule(n);
  const centre = 0.5 * (from + to);
  const half = 0.5 * (to - from);
  const flat = to <= Math.abs(radiusA - radiusB) ? Math.PI * Math.min(radiusA, radiusB) ** 2 : 0;
  for (let i = 0; i < n; i++) {
    const t = centre - half * cosine[i]!;
    const lensWeight = half * weight[i]! * t * (flat > 0 ? flat : lens(t, radiusA, radiusB));
    let normal = 0;
    let along = 0;
    for (let f = 0; f < faces; f++) {
      const zeta = zetas[f]!;
      const square = t * t + zeta * zeta;
      const cube = signs[f]! / (square * Math.sqrt(square));
      normal += zeta * cube;
      along += ((t * t - 2 * zeta * zeta) * cube) / square;
    }
    sumNormal += lensWeight * 2 * Math.PI * normal;
    sumAlong -= lensWeight * Math.PI * along;
  }
}

type AddPiece = (from: number, to: number, n: number, pair: DiscPairGeometry) => void;

/** Adds [from, to], split at the offset where that needs fewer nodes. False when no rule is fine enough. */
function addSpan(from: number, to: number, pair: DiscPairGeometry, add: AddPiece): boolean {
  if (!(to > from)) return true;
  const p = pair.offset;
  const whole = nodesFor(from, to, pair);
  if (p > from && p < to && whole > 16) {
    const left = nodesFor(from, p, pair);
    const right = nodesFor(p, to, pair);
    if (left + right < whole) {
      add(from, p, left, pair);
      add(p, to, right, pair);
      return true;
    }
  }
  if (whole > MOST_NODES) return false;
  add(from, to, whole, pair);
  return true;
}

function integrate(pair: DiscPairGeometry, add: AddPiece): boolean {
  setFaces(pair.gap, pair.thicknessA, pair.thicknessB);
  sumAlong = 0;
  sumNormal = 0;
  const near = Math.abs(pair.radiusA - pair.radiusB);
  return addSpan(0, near, pair, add) && addSpan(near, pair.radiusA + pair.radiusB, pair, add);
}

/**
 * Writes the force on b along its offset and along z into out[0] and out[1]; out[0] < 0 draws back.
 * False when the gap is too small, against the discs, for the finest rule.
 */
export function discPairForce(pair: DiscPairGeometry, out: Float64Array): boolean {
  const p = pair.offset;
  const onAxis = p < 1e-4 * Math.min(pair.gap, pair.radiusA + pair.radiusB);
  if (!integrate(onAxis ? { ...pair, offset: 0 } : pair, onAxis ? addAxialRings : addRings)) return false;
  out[0] = onAxis ? sumAlong * p : sumAlong / (2 * p);
  out[1] = sumNormal;
  return true;
}

/** Writes the centring stiffness (-dF/dp at no offset) and the z-force into out[0] and out[1]. */
export function coaxialDiscStiffness(pair: DiscPairGeometry, out: Float64Array): boolean {
  if (!integrate({ ...pair, offset: 0 }, addAxialRings)) return false;
  out[0] = -sumAlong;
  out[1] = sumNormal;
  return true;
}
