import { type Magnet, pairForce } from '@panewright/magnets';
import { mm, tesla } from '@panewright/quantity';
import { expect, test } from 'vitest';

// Second methods, sharing neither code nor algebra with the package:
// discs by the Bessel integral of Vokoun et al. (J. Magn. Magn. Mater. 321 (2009) 3758), with J0 and J1 from
// Bessel's own integral; blocks and mixed pairs by summing the textbook field of a charged rectangle over the
// faces of the other magnet on graded panels of five Gauss nodes.

const NODES = [0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664] as const;
const WEIGHTS = [
  0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908,
] as const;
const MU0 = 4e-7 * Math.PI;

function overPanels(edges: readonly number[], f: (x: number) => number): number {
  let total = 0;
  for (let i = 0; i + 1 < edges.length; i++) {
    const centre = (edges[i]! + edges[i + 1]!) / 2;
    const half = (edges[i + 1]! - edges[i]!) / 2;
    for (let k = 0; k < 5; k++) total += half * WEIGHTS[k]! * f(centre + half * NODES[k]!);
  }
  return total;
}

/** Panel edges from low to high that shrink towards every break down to `finest`. */
function graded(low: number, high: number, breaks: readonly number[], finest: number): number[] {
  const stops = [low, ...breaks.filter((b) => b > low && b < high).sort((p, q) => p - q), high];
  const edges = [low];
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i]!, stops[i + 1]!];
    const half = (to - from) / 2;
    const steps: number[] = [];
    for (let s = half; s > finest / 2; s /= 2) steps.push(s);
    edges.push(...[...steps].reverse().map((s) => from + s), ...steps.slice(1).map((s) => to - s), to);
  }
  return edges;
}

/** Jn(x) by the trapezium rule on Bessel's integral, which converges faster than any power. */
function bessel(n: 0 | 1, x: number): number {
  const points = 40 + Math.ceil(Math.abs(x));
  let total = 0;
  for (let i = 0; i < points; i++) {
    const angle = (2 * Math.PI * (i + 0.5)) / points;
    total += Math.cos(n * angle - x * Math.sin(angle));
  }
  return total / points;
}

/** (side, z) force on b in newtons, lengths in mm, both remanences 1 T. */
function discsByBessel(
  r1: number,
  r2: number,
  ta: number,
  tb: number,
  gap: number,
  p: number,
): [number, number] {
  const most = 26 / gap;
  const step = 1.6 / (r1 + r2 + p + ta + tb + gap);
  const edges = Array.from({ length: Math.ceil(most / step) + 1 }, (_, i) => i * step);
  const spectrum = (k: number) =>
    (bessel(1, k * r1) *
      bessel(1, k * r2) *
      (1 - Math.exp(-k * ta)) *
      (1 - Math.exp(-k * tb)) *
      Math.exp(-k * gap)) /
    k;
  const z = overPanels(edges, (k) => spectrum(k) * bessel(0, k * p));
  const side = p === 0 ? 0 : overPanels(edges, (k) => spectrum(k) * bessel(1, k * p));
  const scale = (-Math.PI * r1 * r2 * 1e-6) / MU0;
  return [scale * side, scale * z];
}

/** Field of a charged rectangle, density 1, half sizes a and b, at (x, y) and height z: textbook logarithms. */
function rectangleField(a: number, b: number, x: number, y: number, z: number): [number, number, number] {
  let [fx, fy, fz] = [0, 0, 0];
  for (const i of [1, -1]) {
    for (const j of [1, -1]) {
      const [u, v] = [x + i * a, y + j * b];
      const r = Math.sqrt(u * u + v * v + z * z);
      fx -= i * j * Math.log(r + v);
      fy -= i * j * Math.log(r + u);
      fz += i * j * Math.atan2(u * v, z * r);
    }
  }
  return [fx, fy, fz];
}

interface Box {
  readonly w: number;
  readonly h: number;
  readonly t: number;
}

/** Force on the upper magnet, whose face is covered by `sweep`, from a block at the origin. */
function overBlock(
  block: Box,
  thickness: number,
  gap: number,
  sweep: (f: (x: number, y: number) => number) => number,
): number[] {
  const faces = [
    [gap, -1],
    [gap + block.t + thickness, -1],
    [gap + block.t, 1],
    [gap + thickness, 1],
  ] as const;
  return [0, 1, 2].map((axis) => {
    const total = sweep((x, y) =>
      faces.reduce((sum, [z, s]) => sum + s * rectangleField(block.w / 2, block.h / 2, x, y, z)[axis]!, 0),
    );
    return (total * 1e-6) / (4 * Math.PI * MU0);
  });
}

function blockOnBlock(lower: Box, upper: Box, gap: number, dx: number, dy: number): number[] {
  const xs = graded(dx - upper.w / 2, dx + upper.w / 2, [-lower.w / 2, lower.w / 2], gap / 4);
  const ys = graded(dy - upper.h / 2, dy + upper.h / 2, [-lower.h / 2, lower.h / 2], gap / 4);
  return overBlock(lower, upper.t, gap, (f) => overPanels(xs, (x) => overPanels(ys, (y) => f(x, y))));
}

function discOnBlock(
  lower: Box,
  radius: number,
  thickness: number,
  gap: number,
  dx: number,
  dy: number,
): number[] {
  const xAngles = [-1, 1].map((s) => Math.acos(Math.max(-1, Math.min(1, ((s * lower.w) / 2 - dx) / radius))));
  const yAngles = [-1, 1].flatMap((s) => {
    const angle = Math.asin(Math.min(1, Math.abs((s * lower.h) / 2 - dy) / radius));
    return [angle, Math.PI - angle];
  });
  const angles = graded(0, Math.PI, [...xAngles, ...yAngles], gap / (4 * radius));
  return overBlock(lower, thickness, gap, (f) =>
    overPanels(angles, (angle) => {
      const rise = radius * Math.sin(angle);
      const ys = graded(dy - rise, dy + rise, [-lower.h / 2, lower.h / 2], gap / 4);
      return rise * overPanels(ys, (y) => f(dx + radius * Math.cos(angle), y));
    }),
  );
}

const disc = (d: number, t: number): Magnet => ({ kind: 'disc', diameter: mm(d), thickness: mm(t) });
const block = ({ w, h, t }: Box): Magnet => ({
  kind: 'block',
  width: mm(w),
  height: mm(h),
  thickness: mm(t),
});

function force(a: Magnet, b: Magnet, gap: number, dx: number, dy: number): number[] {
  const one = tesla(1);
  const result = pairForce({
    a,
    b,
    remanenceA: one,
    remanenceB: one,
    gap: mm(gap),
    offset: { dx: mm(dx), dy: mm(dy) },
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return [result.value.x, result.value.y, result.value.z];
}

const worst = (found: readonly number[], expected: readonly number[]) =>
  Math.max(...found.map((v, i) => Math.abs(v - expected[i]!))) / Math.hypot(...expected);

test.each([
  [10, 10, 3, 3, 5, 0],
  [10, 10, 3, 3, 5, 4],
  [10, 10, 3, 3, 0.3, 0.3],
  [10, 10, 3, 5, 0.3, 9.9],
  [10, 10, 3, 3, 0.4, 10],
  [20, 8, 5, 2, 0.5, 6],
  [20, 8, 5, 2, 0.5, 14],
  [8, 20, 2, 5, 1, 0],
  [12, 12.01, 3, 3, 1, 0.005],
  [25, 6, 6, 1.5, 0.5, 9.5],
  [15, 15, 1, 1, 12, 3],
  [15, 12, 3, 3, 4, 40],
])(
  'discs of %d and %d mm (%d, %d thick), %d mm apart, %d mm off: as the Bessel integral',
  (d1, d2, ta, tb, gap, p) => {
    const [side, z] = discsByBessel(d1 / 2, d2 / 2, ta, tb, gap, p);
    expect(
      worst(force(disc(d1, ta), disc(d2, tb), gap, 0.6 * p, 0.8 * p), [0.6 * side, 0.8 * side, z]),
    ).toBeLessThan(2e-8);
  },
);

test.each([
  [{ w: 20, h: 10, t: 3 }, { w: 20, h: 10, t: 3 }, 5, 0, 0],
  [{ w: 20, h: 10, t: 3 }, { w: 20, h: 10, t: 3 }, 0.3, 20, 0],
  [{ w: 20, h: 10, t: 3 }, { w: 12, h: 6, t: 2 }, 0.3, 4, 2],
  [{ w: 20, h: 10, t: 3 }, { w: 12, h: 6, t: 2 }, 0.2, -4, 8],
  [{ w: 12, h: 6, t: 2 }, { w: 40, h: 10, t: 4 }, 1, 3.3, -7.1],
  [{ w: 10, h: 10, t: 3 }, { w: 10, h: 10, t: 3 }, 0.2, 5, 5],
])(
  'block %j under block %j, %d mm apart, off by (%d, %d): as fields summed over faces',
  (lower, upper, gap, dx, dy) => {
    expect(
      worst(force(block(lower), block(upper), gap, dx, dy), blockOnBlock(lower, upper, gap, dx, dy)),
    ).toBeLessThan(2e-8);
  },
);

test.each([
  [{ w: 20, h: 10, t: 3 }, 12, 2, 4, 0, 0],
  [{ w: 20, h: 10, t: 3 }, 12, 2, 0.4, 4, 1],
  [{ w: 20, h: 10, t: 3 }, 12, 2, 0.4, 4, 11],
  [{ w: 10, h: 10, t: 3 }, 20, 4, 1, 0, 0],
  [{ w: 12, h: 6, t: 3 }, 10, 5, 0.5, 9, 7],
  [{ w: 10, h: 10, t: 5 }, 8, 3, 0.5, 5, 5],
])(
  'block %j under a disc of %d x %d mm, %d mm apart, off by (%d, %d): as fields summed over faces',
  (lower, d, t, gap, dx, dy) => {
    const expected = discOnBlock(lower, d / 2, t, gap, dx, dy);
    expect(worst(force(block(lower), disc(d, t), gap, dx, dy), expected)).toBeLessThan(2e-8);
  },
);
