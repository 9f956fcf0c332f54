/**
 * Force between two magnets far apart, where the exact forms lose digits by cancellation: every magnet is a
 * cloud of point dipoles, and the distances between two clouds are summed by a rule that gets their moments
 * right to the ninth degree. Lengths in mm; mm^2 per unit polarisations (multiply by FORCE_UNIT * Ja * Jb).
 * Source: dipole force sources.md#jackson; moment rule sources.md#magnets-far-rule.
 */
import type { Magnet } from '../magnet.ts';

interface Node {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

/** Radau rule with a node at 0 for a variable t >= 0 of unit mass and moments m1..m4 of t. */
function radauRule(m1: number, m2: number, m3: number, m4: number): [t: number, weight: number][] {
  const below = m1 * m3 - m2 * m2;
  const sum = (m1 * m4 - m2 * m3) / below;
  const product = (m2 * m4 - m3 * m3) / below;
  const root = Math.sqrt(sum * sum - 4 * product);
  const high = (sum + root) / 2;
  const low = product / high;
  const weightLow = (m1 * high - m2) / (low * (high - low));
  const weightHigh = (m2 - m1 * low) / (high * (high - low));
  return [
    [0, 1 - weightLow - weightHigh],
    [low, weightLow],
    [high, weightHigh],
  ];
}

/** Five nodes for the sum of two independent variables, uniform on +-a and +-b. */
function lineRule(a: number, b: number): [x: number, weight: number][] {
  const even = (h: number, k: number) => h ** (2 * k) / (2 * k + 1);
  const binomial = [[1], [1, 1], [1, 6, 1], [1, 15, 15, 1], [1, 28, 70, 28, 1]];
  const moment = (n: number) => {
    let total = 0;
    for (let k = 0; k <= n; k++) total += binomial[n]![k]! * even(a, k) * even(b, n - k);
    return total;
  };
  return radauRule(moment(1), moment(2), moment(3), moment(4)).flatMap(([t, weight]) =>
    t === 0
      ? [[0, weight] as [number, number]]
      : [[Math.sqrt(t), weight / 2] as [number, number], [-Math.sqrt(t), weight / 2] as [number, number]],
  );
}

/** Nodes for the sum of two independent points, uniform on discs of radius a and b (b may be 0). */
function discRule(a: number, b: number): Node[] {
  const even = (r: number, k: number) => r ** (2 * k) / (k + 1);
  const binomial = [[1], [1, 1], [1, 2, 1], [1, 3, 3, 1], [1, 4, 6, 4, 1]];
  const moment = (n: number) => {
    let total = 0;
    for (let k = 0; k <= n; k++) total += binomial[n]![k]! ** 2 * even(a, k) * even(b, n - k);
    return total;
  };
  const nodes: Node[] = [];
  for (const [t, weight] of radauRule(moment(1), moment(2), moment(3), moment(4))) {
    if (t === 0) nodes.push({ x: 0, y: 0, weight });
    for (let i = 0; t > 0 && i < 10; i++) {
      const turn = (Math.PI * i) / 5;
      nodes.push({ x: Math.sqrt(t) * Math.cos(turn), y: Math.sqrt(t) * Math.sin(turn), weight: weight / 10 });
    }
  }
  return nodes;
}

function product(xs: [number, number][], ys: [number, number][]): Node[] {
  return xs.flatMap(([x, wx]) => ys.map(([y, wy]) => ({ x, y, weight: wx * wy })));
}

function planeRule(a: Magnet, b: Magnet): Node[] {
  if (a.kind === 'disc') {
    if (b.kind === 'disc') return discRule(a.diameter / 2, b.diameter / 2);
    return planeRule(b, a);
  }
  if (b.kind === 'block') {
    return product(lineRule(a.width / 2, b.width / 2), lineRule(a.height / 2, b.height / 2));
  }
  const block = product(lineRule(a.width / 2, 0), lineRule(a.height / 2, 0));
  const disc = discRule(b.diameter / 2, 0);
  return block.flatMap((p) => disc.map((q) => ({ x: p.x + q.x, y: p.y + q.y, weight: p.weight * q.weight })));
}

function volume(magnet: Magnet): number {
  return magnet.kind === 'disc'
    ? (Math.PI / 4) * magnet.diameter ** 2 * magnet.thickness
    : magnet.width * magnet.height * magnet.thickness;
}

/** Radius of the ball that holds a magnet. */
export function reach(magnet: Magnet): number {
  const span = magnet.kind === 'disc' ? magnet.diameter : Math.hypot(magnet.width, magnet.height);
  return 0.5 * Math.hypot(span, magnet.thickness);
}

/** Writes (x, y, z) of the force on b into `out`. */
export function farPairForce(
  a: Magnet,
  b: Magnet,
  gap: number,
  dx: number,
  dy: number,
  out: Float64Array,
): void {
  const depths = lineRule(a.thickness / 2, b.thickness / 2);
  const rise = gap + (a.thickness + b.thickness) / 2;
  let fx = 0;
  let fy = 0;
  let fz = 0;
  for (const node of planeRule(a, b)) {
    const x = dx + node.x;
    const y = dy + node.y;
    for (const [depth, depthWeight] of depths) {
      const z = rise + depth;
      const r2 = x * x + y * y + z * z;
      const scale = (3 * node.weight * depthWeight) / (r2 * r2 * Math.sqrt(r2));
      const tilt = 1 - (5 * z * z) / r2;
      fx += scale * x * tilt;
      fy += scale * y * tilt;
      fz += scale * z * (tilt + 2);
    }
  }
  const moments = volume(a) * volume(b);
  out[0] = fx * moments;
  out[1] = fy * moments;
  out[2] = fz * moments;
}
