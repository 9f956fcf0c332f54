import { bulgeCurve } from './curve.ts';
import type { Edge } from './edges.ts';
import type { Vector } from './point.ts';

/** The whole line or circle an edge lies on, with the way it is run. */
export type Carrier =
  | { readonly kind: 'line'; readonly at: Vector; readonly along: Vector }
  | { readonly kind: 'circle'; readonly centre: Vector; readonly radius: number; readonly turn: 1 | -1 };

export function carrierOf({ from, to, bulge }: Pick<Edge, 'from' | 'to' | 'bulge'>): Carrier {
  if (bulge === 0) return lineThrough(from, to);
  const { cx, cy, r } = bulgeCurve(from, to, bulge);
  return { kind: 'circle', centre: { x: cx, y: cy }, radius: r, turn: bulge > 0 ? 1 : -1 };
}

export function lineThrough(from: Vector, to: Vector): Carrier {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { kind: 'line', at: from, along: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
}

/** Parallel, by `left` to the left of the way it is run; undefined where a circle would vanish. */
export function beside(carrier: Carrier, left: number): Carrier | undefined {
  if (carrier.kind === 'line') {
    const { at, along } = carrier;
    return { ...carrier, at: { x: at.x - left * along.y, y: at.y + left * along.x } };
  }
  const radius = carrier.radius - carrier.turn * left;
  return radius > 0 ? { ...carrier, radius } : undefined;
}

export function shifted(carrier: Carrier, by: Vector): Carrier {
  const move = (p: Vector): Vector => ({ x: p.x + by.x, y: p.y + by.y });
  return carrier.kind === 'line'
    ? { ...carrier, at: move(carrier.at) }
    : { ...carrier, centre: move(carrier.centre) };
}

/** Direction of travel at a point of it. */
export function headingAt(carrier: Carrier, { x, y }: Vector): Vector {
  if (carrier.kind === 'line') return carrier.along;
  const { centre, radius, turn } = carrier;
  return { x: (-turn * (y - centre.y)) / radius, y: (turn * (x - centre.x)) / radius };
}

/** The point of it nearest to `p`. */
export function footOn(carrier: Carrier, p: Vector): Vector {
  if (carrier.kind === 'line') {
    const { at, along } = carrier;
    const t = (p.x - at.x) * along.x + (p.y - at.y) * along.y;
    return { x: at.x + t * along.x, y: at.y + t * along.y };
  }
  const { centre, radius } = carrier;
  const away = Math.hypot(p.x - centre.x, p.y - centre.y);
  return {
    x: centre.x + ((p.x - centre.x) * radius) / away,
    y: centre.y + ((p.y - centre.y) * radius) / away,
  };
}

/**
 * Where two carriers cross, the crossing nearest to `near`.
 *
 * @returns undefined where they do not cross
 * @source elementary geometry
 */
export function crossing(a: Carrier, b: Carrier, near: Vector): Vector | undefined {
  const found =
    a.kind === 'line'
      ? b.kind === 'line'
        ? lineLine(a, b)
        : lineCircle(a, b)
      : b.kind === 'line'
        ? lineCircle(b, a)
        : circleCircle(a, b);
  const off = (p: Vector) => Math.hypot(p.x - near.x, p.y - near.y);
  return found.sort((p, q) => off(p) - off(q))[0];
}

type Line = Extract<Carrier, { readonly kind: 'line' }>;
type Circle = Extract<Carrier, { readonly kind: 'circle' }>;

function lineLine(a: Line, b: Line): Vector[] {
  const across = a.along.x * b.along.y - a.along.y * b.along.x;
  if (Math.abs(across) < 1e-9) return [];
  const t = ((b.at.x - a.at.x) * b.along.y - (b.at.y - a.at.y) * b.along.x) / across;
  return [{ x: a.at.x + t * a.along.x, y: a.at.y + t * a.along.y }];
}

function lineCircle(line: Line, { centre, radius }: Circle): Vector[] {
  const foot = footOn(line, centre);
  const square = radius ** 2 - (foot.x - centre.x) ** 2 - (foot.y - centre.y) ** 2;
  if (square < 0) return [];
  return [1, -1].map((sign) => {
    const t = sign * Math.sqrt(square);
    return { x: foot.x + t * line.along.x, y: foot.y + t * line.along.y };
  });
}

function circleCircle(a: Circle, b: Circle): Vector[] {
  const [dx, dy] = [b.centre.x - a.centre.x, b.centre.y - a.centre.y];
  const apart = Math.hypot(dx, dy);
  if (apart < 1e-9) return [];
  const along = (a.radius ** 2 - b.radius ** 2 + apart ** 2) / (2 * apart);
  const square = a.radius ** 2 - along ** 2;
  if (square < 0) return [];
  const foot = { x: a.centre.x + (along * dx) / apart, y: a.centre.y + (along * dy) / apart };
  return [1, -1].map((sign) => {
    const t = (sign * Math.sqrt(square)) / apart;
    return { x: foot.x - t * dy, y: foot.y + t * dx };
  });
}

/** Bulge of the arc along a circle from one point of it to another. */
export function bulgeAlong({ centre, turn }: Circle, from: Vector, to: Vector): number {
  const angle = (p: Vector) => Math.atan2(p.y - centre.y, p.x - centre.x);
  const full = 2 * Math.PI;
  const ahead = ((((angle(to) - angle(from)) * turn) % full) + full) % full;
  return Math.tan((turn * ahead) / 4);
}
