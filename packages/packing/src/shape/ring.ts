import type { Polygon } from '../instance.ts';
import { turn } from './turn.ts';

/** A ring as flat coordinates x0, y0, x1, y1, ... */
export type Ring = Float64Array;

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function ringOf(polygon: Polygon): Ring {
  const ring = new Float64Array(2 * polygon.length);
  for (let k = 0; k < polygon.length; k++) {
    ring[2 * k] = polygon[k]![0];
    ring[2 * k + 1] = polygon[k]![1];
  }
  return ring;
}

export function boxOf(ring: Ring): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let k = 0; k < ring.length; k += 2) {
    minX = Math.min(minX, ring[k]!);
    maxX = Math.max(maxX, ring[k]!);
    minY = Math.min(minY, ring[k + 1]!);
    maxY = Math.max(maxY, ring[k + 1]!);
  }
  return { minX, minY, maxX, maxY };
}

/** Signed area; positive when the ring runs anticlockwise. */
export function areaOf(ring: Ring): number {
  let twice = 0;
  const n = ring.length;
  for (let k = 0; k < n; k += 2) {
    const l = (k + 2) % n;
    twice +=
      (ring[k]! - ring[0]!) * (ring[l + 1]! - ring[1]!) - (ring[l]! - ring[0]!) * (ring[k + 1]! - ring[1]!);
  }
  return twice / 2;
}

/** F first (x -> -x when flipped), then the turn, then the shift. A flipped ring is reversed to stay anticlockwise. */
export function movedRing(ring: Ring, degrees: number, flipped: boolean, dx = 0, dy = 0): Ring {
  const [c, s] = turn(degrees);
  const n = ring.length / 2;
  const out = new Float64Array(ring.length);
  for (let k = 0; k < n; k++) {
    const from = flipped ? n - 1 - k : k;
    const x = flipped ? -ring[2 * from]! : ring[2 * from]!;
    const y = ring[2 * from + 1]!;
    out[2 * k] = c * x - s * y + dx;
    out[2 * k + 1] = s * x + c * y + dy;
  }
  return out;
}

/** Drops vertices within `tolerance` of the line through their neighbours that do not turn the ring. */
export function withoutIdleVertices(ring: Ring, tolerance: number): Ring {
  const kept: number[] = [];
  const n = ring.length / 2;
  for (let k = 0; k < n; k++) {
    const before = kept.length > 0 ? kept.at(-1)! : n - 1;
    const after = (k + 1) % n;
    const [ax, ay] = [ring[2 * before]!, ring[2 * before + 1]!];
    const [bx, by] = [ring[2 * k]!, ring[2 * k + 1]!];
    const [cx, cy] = [ring[2 * after]!, ring[2 * after + 1]!];
    if (Math.hypot(bx - ax, by - ay) <= tolerance) continue;
    const chord = Math.hypot(cx - ax, cy - ay);
    const off = chord > 0 ? Math.abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / chord : Infinity;
    const ahead = (bx - ax) * (cx - bx) + (by - ay) * (cy - by) > 0;
    if (off <= tolerance && ahead) continue;
    kept.push(k);
  }
  if (kept.length < 3) return ring;
  return Float64Array.from(kept.flatMap((k) => [ring[2 * k]!, ring[2 * k + 1]!]));
}

/** Convex hull, anticlockwise (Andrew's monotone chain). */
export function hullOf(ring: Ring): Ring {
  const points = Array.from({ length: ring.length / 2 }, (_, k) => [ring[2 * k]!, ring[2 * k + 1]!] as const);
  points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: typeof points) => {
    const chain: (readonly [number, number])[] = [];
    for (const p of list) {
      while (chain.length > 1) {
        const [a, b] = [chain.at(-2)!, chain.at(-1)!];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return Float64Array.from([...half(points), ...half([...points].reverse())].flat());
}

/** Largest distance between two vertices. */
export function diameterOf(ring: Ring): number {
  const hull = hullOf(ring);
  let most = 0;
  for (let k = 0; k < hull.length; k += 2)
    for (let l = k + 2; l < hull.length; l += 2)
      most = Math.max(most, Math.hypot(hull[k]! - hull[l]!, hull[k + 1]! - hull[l + 1]!));
  return most;
}
