/** Whole-number coordinates x0, y0, x1, y1, ..., each below 2^53 in size, so that products can be made exact. */
export type GridRing = Float64Array;

/** Sign of the turn a -> b -> c, exact: floating point where its error bound allows, BigInt where not. */
export function turnSign(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): -1 | 0 | 1 {
  const left = (bx - ax) * (cy - ay);
  const right = (by - ay) * (cx - ax);
  const det = left - right;
  if (Math.abs(det) > 8.9e-16 * (Math.abs(left) + Math.abs(right))) return det > 0 ? 1 : -1;
  const exact =
    (BigInt(bx) - BigInt(ax)) * (BigInt(cy) - BigInt(ay)) -
    (BigInt(by) - BigInt(ay)) * (BigInt(cx) - BigInt(ax));
  return exact > 0n ? 1 : exact < 0n ? -1 : 0;
}

/**
 * Vertex numbers of triangles that tile a simple anticlockwise ring, three by three.
 *
 * @returns undefined when the ring has no ear, which no simple ring does
 * @source sources.md#meisters-1975, exact turns after sources.md#shewchuk-1997
 */
export function earTriangles(ring: GridRing): Int32Array | undefined {
  const left = Array.from({ length: ring.length / 2 }, (_, k) => k);
  const out: number[] = [];
  const sign = (a: number, b: number, c: number) =>
    turnSign(ring[2 * a]!, ring[2 * a + 1]!, ring[2 * b]!, ring[2 * b + 1]!, ring[2 * c]!, ring[2 * c + 1]!);
  let at = 0;
  let sinceCut = 0;
  while (left.length > 2) {
    if (sinceCut > left.length) return undefined;
    const n = left.length;
    at %= n;
    const [a, b, c] = [left[(at + n - 1) % n]!, left[at]!, left[(at + 1) % n]!];
    const bend = sign(a, b, c);
    const clean = bend === 0 || (bend > 0 && !left.some((p) => blocks(ring, sign, p, a, b, c)));
    if (!clean) {
      at++;
      sinceCut++;
      continue;
    }
    if (bend > 0) out.push(a, b, c);
    left.splice(at, 1);
    at = at + 1;
    sinceCut = 0;
  }
  return Int32Array.from(out);
}

function blocks(
  ring: GridRing,
  sign: (a: number, b: number, c: number) => number,
  p: number,
  a: number,
  b: number,
  c: number,
): boolean {
  const same = (q: number) => ring[2 * p] === ring[2 * q] && ring[2 * p + 1] === ring[2 * q + 1];
  if (same(a) || same(b) || same(c)) return false;
  return sign(a, b, p) >= 0 && sign(b, c, p) >= 0 && sign(c, a, p) >= 0;
}

/**
 * Whether two triangles penetrate each other by more than `tolerance` grid steps: on every edge normal of either,
 * their shadows overlap by more. Exact: BigInt wherever rounding could decide.
 */
export function trianglesPenetrate(a: readonly number[], b: readonly number[], tolerance: number): boolean {
  for (const t of [a, b])
    for (let k = 0; k < 3; k++) {
      const l = (k + 1) % 3;
      const nx = t[2 * l + 1]! - t[2 * k + 1]!;
      const ny = t[2 * k]! - t[2 * l]!;
      if (nx === 0 && ny === 0) continue;
      if (!shadowsOverlap(a, b, nx, ny, tolerance)) return false;
    }
  return true;
}

function shadowsOverlap(
  a: readonly number[],
  b: readonly number[],
  nx: number,
  ny: number,
  tolerance: number,
) {
  // Relative to a's first vertex, so that the products stay small.
  const [ox, oy] = [a[0]!, a[1]!];
  const along = (t: readonly number[], k: number) => nx * (t[2 * k]! - ox) + ny * (t[2 * k + 1]! - oy);
  const [a0, a1, a2, b0, b1, b2] = [
    along(a, 0),
    along(a, 1),
    along(a, 2),
    along(b, 0),
    along(b, 1),
    along(b, 2),
  ];
  const overlap = Math.min(
    Math.max(a0, a1, a2) - Math.min(b0, b1, b2),
    Math.max(b0, b1, b2) - Math.min(a0, a1, a2),
  );
  const need = tolerance * Math.hypot(nx, ny);
  const size = Math.max(Math.abs(a1), Math.abs(a2), Math.abs(b0), Math.abs(b1), Math.abs(b2)) + need;
  const spread = (Math.abs(nx) + Math.abs(ny)) * reach(a, b);
  if (Math.abs(overlap - need) > 1e-14 * (size + spread)) return overlap > need;
  return shadowsOverlapExactly(a, b, BigInt(nx), BigInt(ny), BigInt(tolerance));
}

function reach(a: readonly number[], b: readonly number[]): number {
  let most = 0;
  for (let k = 0; k < 6; k++) most = Math.max(most, Math.abs(b[k]! - a[k & 1]!), Math.abs(a[k]! - a[k & 1]!));
  return most;
}

function shadowsOverlapExactly(
  a: readonly number[],
  b: readonly number[],
  nx: bigint,
  ny: bigint,
  tolerance: bigint,
) {
  const shadow = (t: readonly number[]) =>
    [0, 1, 2]
      .map((k) => nx * BigInt(t[2 * k]!) + ny * BigInt(t[2 * k + 1]!))
      .sort((p, q) => (p < q ? -1 : p > q ? 1 : 0));
  const [sa, sb] = [shadow(a), shadow(b)];
  const least = tolerance * tolerance * (nx * nx + ny * ny);
  return [sa[2]! - sb[0]!, sb[2]! - sa[0]!].every((overlap) => overlap > 0n && overlap * overlap > least);
}
