import type { Ring } from './ring.ts';

/**
 * Splits a simple anticlockwise ring into convex rings with the same union: ears of the best shape first, then
 * neighbours are joined again while they stay convex. At most four times as many parts as the fewest possible.
 *
 * @source sources.md#meisters-1975 (ears), #hertel-mehlhorn-1983 (joining)
 */
export function convexParts(ring: Ring): readonly Ring[] {
  const slack = flatness(ring);
  const all = Array.from({ length: ring.length / 2 }, (_, k) => k);
  if (isConvex(ring, all, slack)) return [ring];
  const parts = joined(ring, triangles(ring), slack);
  return parts.map((part) => Float64Array.from(part.flatMap((k) => [ring[2 * k]!, ring[2 * k + 1]!])));
}

/** A turn whose sine times the edge lengths is below this counts as straight. */
function flatness(ring: Ring): number {
  let size = 0;
  for (let k = 0; k < ring.length; k++) size = Math.max(size, Math.abs(ring[k]! - ring[k & 1]!));
  return 1e-10 * size * size;
}

function cross(ring: Ring, a: number, b: number, c: number): number {
  const [ax, ay] = [ring[2 * a]!, ring[2 * a + 1]!];
  return (ring[2 * b]! - ax) * (ring[2 * c + 1]! - ay) - (ring[2 * b + 1]! - ay) * (ring[2 * c]! - ax);
}

function isConvex(ring: Ring, part: readonly number[], slack: number): boolean {
  const n = part.length;
  let turns = 0;
  for (let k = 0; k < n; k++) {
    const [a, b, c] = [part[k]!, part[(k + 1) % n]!, part[(k + 2) % n]!];
    if (cross(ring, a, b, c) < -slack) return false;
    turns += angleBetween(ring, a, b, c);
  }
  return Math.abs(turns - 2 * Math.PI) < 0.01;
}

function angleBetween(ring: Ring, a: number, b: number, c: number): number {
  const [ux, uy] = [ring[2 * b]! - ring[2 * a]!, ring[2 * b + 1]! - ring[2 * a + 1]!];
  const [vx, vy] = [ring[2 * c]! - ring[2 * b]!, ring[2 * c + 1]! - ring[2 * b + 1]!];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** Ear clipping; always takes the ear whose smallest angle is largest. */
function triangles(ring: Ring): number[][] {
  const left = Array.from({ length: ring.length / 2 }, (_, k) => k);
  const out: number[][] = [];
  let quality = left.map((_, at) => earQuality(ring, left, at));
  while (left.length > 3) {
    let at = indexOfMost(quality);
    if (quality[at]! <= 0) {
      quality = left.map((_, k) => earQuality(ring, left, k));
      at = indexOfMost(quality);
    }
    // Nothing is a clean ear only when rounding has closed a notch: cut the flattest vertex and go on.
    if (quality[at]! <= 0) at = flattest(ring, left);
    const n = left.length;
    out.push([left[(at + n - 1) % n]!, left[at]!, left[(at + 1) % n]!]);
    left.splice(at, 1);
    quality.splice(at, 1);
    for (const near of [at - 2, at - 1, at, at + 1]) {
      const k = (near + left.length) % left.length;
      quality[k] = earQuality(ring, left, k);
    }
  }
  out.push(left);
  return out.filter(([a, b, c]) => cross(ring, a!, b!, c!) > 0);
}

function indexOfMost(values: readonly number[]): number {
  let at = 0;
  for (let k = 1; k < values.length; k++) if (values[k]! > values[at]!) at = k;
  return at;
}

function flattest(ring: Ring, left: readonly number[]): number {
  const n = left.length;
  const turns = left.map((b, k) => -Math.abs(cross(ring, left[(k + n - 1) % n]!, b, left[(k + 1) % n]!)));
  return indexOfMost(turns);
}

/** Sine-like measure of the smallest angle of the ear at `at`; 0 or less when it is no ear. */
function earQuality(ring: Ring, left: readonly number[], at: number): number {
  const n = left.length;
  const [a, b, c] = [left[(at + n - 1) % n]!, left[at]!, left[(at + 1) % n]!];
  const area = cross(ring, a, b, c);
  if (area <= 0) return 0;
  for (let k = 0; k < n; k++) {
    const p = left[k]!;
    if (p === a || p === b || p === c || samePlace(ring, p, a, b, c)) continue;
    if (cross(ring, a, b, p) >= 0 && cross(ring, b, c, p) >= 0 && cross(ring, c, a, p) >= 0) return 0;
  }
  const side = (p: number, q: number) =>
    Math.hypot(ring[2 * p]! - ring[2 * q]!, ring[2 * p + 1]! - ring[2 * q + 1]!);
  const sides = [side(a, b), side(b, c), side(c, a)].sort((p, q) => p - q);
  return area / (sides[1]! * sides[2]!);
}

function samePlace(ring: Ring, p: number, ...others: readonly number[]): boolean {
  return others.some((q) => ring[2 * p] === ring[2 * q] && ring[2 * p + 1] === ring[2 * q + 1]);
}

/** Removes diagonals, longest first, while the joined part stays convex. */
function joined(ring: Ring, parts: number[][], slack: number): number[][] {
  let merged = true;
  while (merged) {
    merged = false;
    const shared = sharedEdges(ring, parts);
    for (const { first, second, from, to } of shared) {
      const union = spliced(parts[first]!, parts[second]!, from, to);
      if (!isConvex(ring, union, slack)) continue;
      parts = [...parts.filter((_, k) => k !== first && k !== second), union];
      merged = true;
      break;
    }
  }
  return parts;
}

function sharedEdges(ring: Ring, parts: readonly number[][]) {
  const owner = new Map<string, number>();
  const shared: { first: number; second: number; from: number; to: number; length: number }[] = [];
  parts.forEach((part, k) => {
    part.forEach((a, i) => {
      owner.set(`${a},${part[(i + 1) % part.length]!}`, k);
    });
  });
  parts.forEach((part, first) => {
    part.forEach((from, i) => {
      const to = part[(i + 1) % part.length]!;
      const second = owner.get(`${to},${from}`);
      if (second === undefined || second <= first) return;
      const length = Math.hypot(ring[2 * from]! - ring[2 * to]!, ring[2 * from + 1]! - ring[2 * to + 1]!);
      shared.push({ first, second, from, to, length });
    });
  });
  return shared.sort((a, b) => b.length - a.length);
}

/** `first` runs from -> to, `second` runs to -> from; the union runs around both. */
function spliced(first: readonly number[], second: readonly number[], from: number, to: number): number[] {
  const i = first.indexOf(to);
  const j = second.indexOf(from);
  const around = [...second.slice(j + 1), ...second.slice(0, j)].slice(0, -1);
  return [...first.slice(i), ...first.slice(0, i), ...around];
}
