import { areaOf, boxOf, type Ring } from './ring.ts';

/** Rings with no more corners than this stay as they are. */
const FEW = 36;

/**
 * A ring around a simple anticlockwise ring with far fewer corners: notches are filled and short edges between two
 * convex corners are cut off by prolonging their neighbours, least added area first, until `share` of the ring's
 * area has been added. Never smaller anywhere and never beyond the box, so a lay of it is a lay of the true piece.
 *
 * @source outward simplification, as in sources.md#gardeyn-2025; the order and the rules are our own
 */
export function outward(ring: Ring, share: number): Ring {
  if (ring.length <= 2 * FEW) return ring;
  const box = boxOf(ring);
  let points = Array.from({ length: ring.length / 2 }, (_, k) => [ring[2 * k]!, ring[2 * k + 1]!] as const);
  let left = share * areaOf(ring);
  const inBox = ([x, y]: Point) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
  const blocked = new Set<string>();
  while (points.length > 4) {
    let best: Change | undefined;
    for (let k = 0; k < points.length; k++)
      for (const change of [filled(points, k), prolonged(points, k)]) {
        if (!change || change.added > left || (best && change.added >= best.added)) continue;
        if (!blocked.has(keyOf(change)) && inBox(change.triangle[1])) best = change;
      }
    if (!best) break;
    if (!isClear(points, best)) {
      blocked.add(keyOf(best));
      continue;
    }
    points = best.points();
    left -= best.added;
  }
  return Float64Array.from(points.flat());
}

type Point = readonly [number, number];

interface Change {
  readonly triangle: readonly [Point, Point, Point];
  readonly added: number;
  readonly points: () => Point[];
}

const cross = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point) =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

const keyOf = ({ triangle }: Change) => triangle.flat().join(' ');

/** The notch at corner k filled by the straight line between its neighbours. */
function filled(points: readonly Point[], k: number): Change | undefined {
  const n = points.length;
  const [a, b, c] = [points[(k + n - 1) % n]!, points[k]!, points[(k + 1) % n]!];
  const twice = cross(a, b, c);
  if (twice > 0) return undefined;
  return { triangle: [a, b, c], added: -twice / 2, points: () => points.filter((_, l) => l !== k) };
}

/** The edge from corner k gone, its neighbours prolonged until they meet. */
function prolonged(points: readonly Point[], k: number): Change | undefined {
  const n = points.length;
  const [a, b, c, d] = [-1, 0, 1, 2].map((l) => points[(k + l + n) % n]!) as [Point, Point, Point, Point];
  if (cross(a, b, c) <= 0 || cross(b, c, d) <= 0) return undefined;
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const turn = ux * vy - uy * vx;
  if (turn <= 1e-9 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return undefined;
  const t = ((c[0] - b[0]) * vy - (c[1] - b[1]) * vx) / turn;
  const q: Point = [b[0] + t * ux, b[1] + t * uy];
  const added = cross(b, q, c) / 2;
  if (!(t > 0 && added >= 0)) return undefined;
  const next = (k + 1) % n;
  return {
    triangle: [b, q, c],
    added,
    points: () => points.map((p, l) => (l === k ? q : p)).filter((_, l) => l !== next),
  };
}

/** Whether no other corner lies in the triangle that is added, edge included. */
function isClear(points: readonly Point[], { triangle: [a, b, c] }: Change): boolean {
  const turn = Math.sign(cross(a, b, c)) || 1;
  return points.every((p) => {
    if (p === a || p === b || p === c) return true;
    return turn * cross(a, b, p) < 0 || turn * cross(b, c, p) < 0 || turn * cross(c, a, p) < 0;
  });
}
