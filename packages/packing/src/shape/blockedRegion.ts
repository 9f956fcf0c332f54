import type { Ring } from './ring.ts';

/** Between neighbouring half-planes of a spaced region no turn is wider than this, so corners are cut, not mitred. */
const WIDEST_TURN = Math.PI / 12;

/** The four directions of a box, flat nx, ny, angle. */
const AXES = [0, -1, -Math.PI / 2, 1, 0, 0, 0, 1, Math.PI / 2, -1, 0, Math.PI];

/**
 * Where a second shape may not lie relative to a first: the union of convex parts, each an intersection of
 * half-planes nx dx + ny dy < c, (nx, ny) a unit normal. (dx, dy) is the second shape's origin less the first's.
 * c less the dot product is then a true depth in length units.
 */
export interface BlockedRegion {
  readonly parts: number;
  /** Half-planes of part p are start[p] .. start[p + 1] - 1. */
  readonly start: Int32Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly c: Float64Array;
  /** minX, minY, maxX, maxY of each part. */
  readonly box: Float64Array;
}

/**
 * No-fit region of two shapes given as convex parts, `spacing` kept between them: Minkowski difference of every
 * pair of parts. With spacing the rounded corners are replaced by tangents outside them (at most 0.9 % of the
 * spacing too careful).
 *
 * @source sources.md#bennell-oliveira-2008 (no-fit polygon as a Minkowski difference)
 */
export function blockedRegion(
  fixed: readonly Ring[],
  moving: readonly Ring[],
  spacing: number,
): BlockedRegion {
  const count = fixed.length * moving.length;
  const start = new Int32Array(count + 1);
  const box = new Float64Array(4 * count);
  const [nx, ny, c]: [number[], number[], number[]] = [[], [], []];
  let p = 0;
  for (const a of fixed)
    for (const b of moving) {
      const normals = normalsOf(a, b, spacing > 0);
      for (let k = 0; k < normals.length; k += 3) {
        const [x, y] = [normals[k]!, normals[k + 1]!];
        nx.push(x);
        ny.push(y);
        c.push(most(a, x, y) + most(b, -x, -y) + spacing);
      }
      box[4 * p] = -(most(a, -1, 0) + most(b, 1, 0) + spacing);
      box[4 * p + 1] = -(most(a, 0, -1) + most(b, 0, 1) + spacing);
      box[4 * p + 2] = most(a, 1, 0) + most(b, -1, 0) + spacing;
      box[4 * p + 3] = most(a, 0, 1) + most(b, 0, -1) + spacing;
      start[++p] = nx.length;
    }
  return {
    parts: count,
    start,
    nx: new Float64Array(nx),
    ny: new Float64Array(ny),
    c: new Float64Array(c),
    box,
  };
}

/** How far a ring reaches in a direction. */
export function most(ring: Ring, nx: number, ny: number): number {
  let m = -Infinity;
  for (let k = 0; k < ring.length; k += 2) m = Math.max(m, nx * ring[k]! + ny * ring[k + 1]!);
  return m;
}

/** Unit outward normals of the Minkowski difference's edges, flat nx, ny, angle, by angle, equal directions once. */
function normalsOf(a: Ring, b: Ring, rounded: boolean): readonly number[] {
  let out = merged(edgeNormals(a, 0), edgeNormals(b, 1));
  if (rounded) out = withTurnsCut(merged(out, AXES));
  return out;
}

/** Of one convex ring: flat nx, ny, angle, by angle; rounded also those between, so that no turn is wide. */
export function outwardNormals(ring: Ring, rounded: boolean): readonly number[] {
  const own = edgeNormals(ring, 0);
  return rounded ? withTurnsCut(merged(own, AXES)) : own;
}

function merged(a: readonly number[], b: readonly number[]): number[] {
  const out: number[] = [];
  let [k, l] = [0, 0];
  let before = -Infinity;
  while (k < a.length || l < b.length) {
    const first = l >= b.length || (k < a.length && a[k + 2]! <= b[l + 2]!);
    const list = first ? a : b;
    const at = first ? k : l;
    if (first) k += 3;
    else l += 3;
    if (list[at + 2]! - before <= 1e-9) continue;
    before = list[at + 2]!;
    out.push(list[at]!, list[at + 1]!, before);
  }
  return out;
}

function withTurnsCut(normals: readonly number[]): number[] {
  const out: number[] = [];
  for (let k = 0; k < normals.length; k += 3) {
    const angle = normals[k + 2]!;
    const next = k + 3 < normals.length ? normals[k + 5]! : normals[2]! + 2 * Math.PI;
    out.push(normals[k]!, normals[k + 1]!, angle);
    const steps = Math.ceil((next - angle) / WIDEST_TURN - 1e-9);
    for (let i = 1; i < steps; i++) {
      const between = angle + ((next - angle) * i) / steps;
      out.push(Math.cos(between), Math.sin(between), between);
    }
  }
  return out;
}

const known = [new WeakMap<Ring, readonly number[]>(), new WeakMap<Ring, readonly number[]>()] as const;

/** Outward normals of a convex ring's edges, or (`reversed` 1) of the ring turned half round, flat, by angle. */
function edgeNormals(ring: Ring, reversed: 0 | 1): readonly number[] {
  const found = known[reversed].get(ring);
  if (found) return found;
  const sign = reversed ? -1 : 1;
  const list: [number, number, number][] = [];
  for (let k = 0; k < ring.length; k += 2) {
    const l = (k + 2) % ring.length;
    const [ex, ey] = [ring[l]! - ring[k]!, ring[l + 1]! - ring[k + 1]!];
    const length = Math.hypot(ex, ey);
    if (length === 0) continue;
    const [nx, ny] = [(sign * ey) / length + 0, (-sign * ex) / length + 0];
    list.push([nx, ny, Math.atan2(ny, nx)]);
  }
  const made = list.sort((p, q) => p[2] - q[2]).flat();
  known[reversed].set(ring, made);
  return made;
}

/**
 * How deep a relative position lies inside the region: the largest over parts of the least distance to a
 * half-plane's edge; 0 or less outside. For one part it is the exact penetration depth when the foot lies on it.
 */
export function depthIn(region: BlockedRegion, dx: number, dy: number): number {
  const { box, start, nx, ny, c } = region;
  let deepest = 0;
  for (let p = 0; p < region.parts; p++) {
    const b = 4 * p;
    let least = Math.min(dx - box[b]!, dy - box[b + 1]!, box[b + 2]! - dx, box[b + 3]! - dy);
    for (let h = start[p]!; h < start[p + 1]! && least > deepest; h++) {
      least = Math.min(least, c[h]! - nx[h]! * dx - ny[h]! * dy);
    }
    if (least > deepest) deepest = least;
  }
  return deepest;
}
