import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Outline, Point, Segment } from './outline.ts';
import { point } from './point.ts';
import { SAME_POINT } from './tolerance.ts';

export type PolygonRefusal =
  | { readonly code: 'TOO_FEW_CORNERS'; readonly corners: number; readonly least: 3 }
  | { readonly code: 'CORNER_NOT_FINITE'; readonly corner: number }
  | { readonly code: 'CORNERS_COINCIDE'; readonly corner: number; readonly next: number };

export type RoundedPolygonRefusal =
  | PolygonRefusal
  | { readonly code: 'RADII_COUNT'; readonly radii: number; readonly corners: number }
  | { readonly code: 'RADIUS_NEGATIVE'; readonly corner: number; readonly radius: Millimetre }
  | { readonly code: 'CORNER_STRAIGHT'; readonly corner: number; readonly radius: Millimetre }
  | {
      readonly code: 'RADII_DO_NOT_FIT';
      readonly corner: number;
      readonly next: number;
      /** Length the two fillets take of the side between the corners, and the length it has. */
      readonly need: Millimetre;
      readonly side: Millimetre;
    };

/**
 * A polygon as an outline. Clockwise corners are run the other way, so that the outline is anticlockwise; the first
 * corner stays the start.
 *
 * @param corners mm, at least 3, each apart from the next
 * @refuses TOO_FEW_CORNERS, CORNER_NOT_FINITE, CORNERS_COINCIDE. Crossing sides are left to `validate`
 * @source orientation by the shoelace sum: sources.md#bourke-1988
 */
export function outlineFrom(corners: readonly Point[]): Result<Outline, PolygonRefusal> {
  const bad = checkCorners(corners);
  if (bad) return refuse(bad);
  const ring = isClockwise(corners) ? [corners[0]!, ...corners.slice(1).toReversed()] : corners;
  const segments = ring.map((_, i): Segment => ({ kind: 'line', to: ring[(i + 1) % ring.length]! }));
  return ok({ segments: segments as [Segment, ...Segment[]] });
}

/**
 * A polygon with each corner rounded by an arc tangent to both its sides. A radius of 0 leaves the corner sharp.
 * Sides that two fillets use up entirely disappear, and the arcs meet.
 *
 * @param corners mm; clockwise corners are run the other way, their radii with them
 * @param radii mm, one per corner, or one for all
 * @refuses what `outlineFrom` refuses; RADII_COUNT, RADIUS_NEGATIVE, CORNER_STRAIGHT (no fillet fits a straight or
 *   folded-back corner), RADII_DO_NOT_FIT
 * @source tangent length of a fillet r tan(turn / 2); bulge tan(turn / 4): sources.md#dxf-bulge
 */
export function roundedPolygon(
  corners: readonly Point[],
  radii: Millimetre | readonly Millimetre[],
): Result<Outline, RoundedPolygonRefusal> {
  const bad = checkCorners(corners);
  if (bad) return refuse(bad);
  const n = corners.length;
  const each = typeof radii === 'number' ? corners.map(() => radii) : radii;
  if (each.length !== n) return refuse({ code: 'RADII_COUNT', radii: each.length, corners: n });
  const order = corners.map((_, i) => (isClockwise(corners) ? (n - i) % n : i));
  const fillets: Fillet[] = [];
  for (const i of order) {
    const radius = each[i]!;
    if (!(radius >= 0)) return refuse({ code: 'RADIUS_NEGATIVE', corner: i, radius });
    const at = order.indexOf(i);
    const fillet = filletAt(
      corners[order[(at + n - 1) % n]!]!,
      corners[i]!,
      corners[order[(at + 1) % n]!]!,
      radius,
    );
    if (!fillet) return refuse({ code: 'CORNER_STRAIGHT', corner: i, radius });
    fillets.push(fillet);
  }
  return joinFillets(corners, order, fillets);
}

function joinFillets(
  corners: readonly Point[],
  order: readonly number[],
  fillets: readonly Fillet[],
): Result<Outline, RoundedPolygonRefusal> {
  const segments: Segment[] = [];
  for (let k = 0; k < fillets.length; k++) {
    const here = fillets[k]!;
    const after = fillets[(k + 1) % fillets.length]!;
    const [corner, next] = [order[k]!, order[(k + 1) % order.length]!];
    const side = distance(corners[corner]!, corners[next]!);
    const need = here.reach + after.reach;
    if (need > side + SAME_POINT)
      return refuse({ code: 'RADII_DO_NOT_FIT', corner, next, need: mm(need), side: mm(side) });
    const meets = side - need < SAME_POINT;
    if (here.bulge !== 0) segments.push({ kind: 'arc', to: meets ? after.from : here.to, bulge: here.bulge });
    if (!meets) segments.push({ kind: 'line', to: after.from });
  }
  return ok({ segments: segments as [Segment, ...Segment[]] });
}

interface Fillet {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  /** How far along each side the fillet reaches. */
  readonly reach: number;
}

function filletAt(before: Point, corner: Point, after: Point, radius: number): Fillet | undefined {
  if (radius === 0) return { from: corner, to: corner, bulge: 0, reach: 0 };
  const [a, b] = [distance(before, corner), distance(corner, after)];
  const u = { x: (corner.x - before.x) / a, y: (corner.y - before.y) / a };
  const v = { x: (after.x - corner.x) / b, y: (after.y - corner.y) / b };
  const turn = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  if (Math.abs(turn) < 1e-9 || Math.abs(turn) > Math.PI - 1e-9) return undefined;
  const reach = radius * Math.tan(Math.abs(turn) / 2);
  return {
    from: point(corner.x - reach * u.x, corner.y - reach * u.y),
    to: point(corner.x + reach * v.x, corner.y + reach * v.y),
    bulge: Math.tan(turn / 4),
    reach,
  };
}

export type CircleRefusal = { readonly code: 'RADIUS_NOT_POSITIVE'; readonly radius: Millimetre };

/**
 * A full circle as two half arcs, starting at its rightmost point.
 *
 * @param radius mm
 * @refuses RADIUS_NOT_POSITIVE
 * @source the bulge of a half circle is tan(π / 4) = 1: sources.md#dxf-bulge
 */
export function circle(centre: Point, radius: Millimetre): Result<Outline, CircleRefusal> {
  if (!(radius > 0 && Number.isFinite(radius))) return refuse({ code: 'RADIUS_NOT_POSITIVE', radius });
  const left = point(centre.x - radius, centre.y);
  const right = point(centre.x + radius, centre.y);
  return ok({
    segments: [
      { kind: 'arc', to: left, bulge: 1 },
      { kind: 'arc', to: right, bulge: 1 },
    ],
  });
}

function checkCorners(corners: readonly Point[]): PolygonRefusal | undefined {
  const n = corners.length;
  if (n < 3) return { code: 'TOO_FEW_CORNERS', corners: n, least: 3 };
  const corner = corners.findIndex(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y));
  if (corner >= 0) return { code: 'CORNER_NOT_FINITE', corner };
  const same = corners.findIndex((p, i) => distance(p, corners[(i + 1) % n]!) < SAME_POINT);
  return same >= 0 ? { code: 'CORNERS_COINCIDE', corner: same, next: (same + 1) % n } : undefined;
}

function isClockwise(corners: readonly Point[]): boolean {
  const o = corners[0]!;
  const twice = corners.reduce((sum, p, i) => {
    const q = corners[(i + 1) % corners.length]!;
    return sum + (p.x - o.x) * (q.y - o.y) - (q.x - o.x) * (p.y - o.y);
  }, 0);
  return twice < 0;
}

const distance = (p: Point, q: Point) => Math.hypot(q.x - p.x, q.y - p.y);
