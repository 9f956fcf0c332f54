import type { PlanePoint } from './planeGrid.ts';

/** Points at equal spacing (about `spacing` mm) along a closed polyline. */
export function resampleClosed(points: readonly PlanePoint[], spacing: number): PlanePoint[] {
  const n = points.length;
  const lengths = points.map((p, i) =>
    Math.hypot(points[(i + 1) % n]!.x - p.x, points[(i + 1) % n]!.y - p.y),
  );
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const count = Math.max(8, Math.round(total / spacing));
  const out: PlanePoint[] = [];
  let [edge, before] = [0, 0];
  for (let k = 0; k < count; k++) {
    const at = (k * total) / count;
    while (edge < n - 1 && before + lengths[edge]! < at) before += lengths[edge++]!;
    const t = lengths[edge]! > 0 ? (at - before) / lengths[edge]! : 0;
    const p = points[edge]!;
    const q = points[(edge + 1) % n]!;
    out.push({ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
  }
  return out;
}

/** Gaussian smoothing round a closed polyline; `sigma` in points. */
export function smoothClosed(points: readonly PlanePoint[], sigma: number): PlanePoint[] {
  const n = points.length;
  const reach = Math.ceil(3 * sigma);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-0.5 * ((k - reach) / sigma) ** 2));
  const total = kernel.reduce((sum, value) => sum + value, 0);
  return points.map((_, i) => {
    let [x, y] = [0, 0];
    for (let k = -reach; k <= reach; k++) {
      const p = points[(i + k + n * 4) % n]!;
      x += kernel[k + reach]! * p.x;
      y += kernel[k + reach]! * p.y;
    }
    return { x: x / total, y: y / total };
  });
}

/** Anticlockwise, without points in line. @source sources.md#andrew-1979 */
export function convexHull(points: readonly PlanePoint[]): PlanePoint[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (list: readonly PlanePoint[]) => {
    const chain: PlanePoint[] = [];
    for (const p of list) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)];
        if (!a || !b || (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
