import type { Draw } from './draw.ts';
import type { Truth } from './score.ts';

export type Xy = readonly [number, number];
export type TrueSegment = Truth['outline']['segments'][number];

/** A corner of the bare shape: its fillet (0 sharp) and how far the side that leaves it bows to the right, mm. */
export interface SceneCorner {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly bow?: number;
}

export type SceneShape = 'plain' | 'bowed' | 're-entrant' | 's-curve' | 'sharp';

/** A directed line or circle through a point: curvature anticlockwise positive. */
interface Side {
  readonly from: Xy;
  readonly to: Xy;
  readonly centre?: Xy;
  /** Signed: positive when anticlockwise. */
  readonly radius: number;
}

function sideOf(a: SceneCorner, b: SceneCorner): Side {
  const [from, to] = [[a.x, a.y] as Xy, [b.x, b.y] as Xy];
  const bow = a.bow ?? 0;
  if (bow === 0) return { from, to, radius: Number.POSITIVE_INFINITY };
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.hypot(dx, dy);
  // Bowing to the right of travel, the circle runs anticlockwise.
  const radius = (chord * chord) / (8 * bow) + bow / 2;
  const depth = radius - bow;
  const centre: Xy = [(a.x + b.x) / 2 - (dy / chord) * depth, (a.y + b.y) / 2 + (dx / chord) * depth];
  return { from, to, centre, radius };
}

/** Signed distance to the left of a side, and the unit normal to the left there. */
function leftOf({ from, to, centre, radius }: Side, [x, y]: Xy): { d: number; n: Xy } {
  if (!centre) {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const n: Xy = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
    return { d: (x - from[0]) * n[0] + (y - from[1]) * n[1], n };
  }
  const away = Math.hypot(x - centre[0], y - centre[1]);
  const sign = Math.sign(radius);
  const n: Xy = [(-sign * (x - centre[0])) / away, (-sign * (y - centre[1])) / away];
  return { d: sign * (Math.abs(radius) - away), n };
}

const headingAt = (side: Side, p: Xy) => {
  const { n } = leftOf(side, p);
  return Math.atan2(-n[0], n[1]);
};

/** Centre of the circle that touches both sides, `offset` to their left (negative: right). */
function touching(a: Side, b: Side, start: Xy, offset: number): Xy {
  let [x, y] = start;
  for (let step = 0; step < 40; step++) {
    const p = leftOf(a, [x, y]);
    const q = leftOf(b, [x, y]);
    const det = p.n[0] * q.n[1] - p.n[1] * q.n[0];
    const [e, f] = [offset - p.d, offset - q.d];
    x += (e * q.n[1] - f * p.n[1]) / det;
    y += (f * p.n[0] - e * q.n[0]) / det;
  }
  return [x, y];
}

/** Lines and arcs, anticlockwise, from corners with fillets and bowed sides; exact. */
export function outlineOf(corners: readonly SceneCorner[]): TrueSegment[] {
  const n = corners.length;
  const sides = corners.map((corner, i) => sideOf(corner, corners[(i + 1) % n]!));
  const fillets = corners.map((corner, i) => {
    const [a, b] = [sides[(i + n - 1) % n]!, sides[i]!];
    const at: Xy = [corner.x, corner.y];
    if (corner.radius === 0) return { start: at, end: at };
    const turn = Math.sin(headingAt(b, at) - headingAt(a, at));
    const offset = Math.sign(turn) * corner.radius;
    const centre = touching(a, b, at, offset);
    const foot = (side: Side): Xy => {
      const { d, n: normal } = leftOf(side, centre);
      return [centre[0] - d * normal[0], centre[1] - d * normal[1]];
    };
    return { start: foot(a), end: foot(b), centre, ccw: offset > 0 };
  });
  return fillets.flatMap((fillet, i): TrueSegment[] => {
    const side = sides[i]!;
    const [start, end] = [fillet.end, fillets[(i + 1) % n]!.start];
    const along: TrueSegment = side.centre
      ? { type: 'arc', start, end, center: side.centre, radius: Math.abs(side.radius), ccw: side.radius > 0 }
      : { type: 'line', start, end };
    if (!fillet.centre) return [along];
    const { start: s, end: e, centre: center, ccw } = fillet;
    return [{ type: 'arc', start: s, end: e, center, radius: corners[i]!.radius, ccw }, along];
  });
}

/** A random opening of about the given half sizes. */
export function randomCorners(random: Draw, shape: SceneShape, half: Xy): SceneCorner[] {
  const [w, h] = half;
  const lean = () => random.between(-35, 35);
  const round = () => (random.chance(0.5) ? random.whole(4, 9) * 10 : random.between(35, 100));
  const [low, high] = [round(), round()];
  const corner = (x: number, y: number, radius: number, bow = 0): SceneCorner => ({ x, y, radius, bow });
  if (shape === 'sharp') {
    const radius = () => (random.chance(0.7) ? 0 : round());
    const list = [
      corner(-w + lean(), -h, radius()),
      corner(w, -h, 0),
      corner(w + lean(), h, radius()),
      corner(-w, h, radius()),
    ];
    return random.chance(0.4) ? [...list.slice(0, 2), corner(w + 70, 0, 0), ...list.slice(2)] : list;
  }
  if (shape === 're-entrant') {
    const [cx, cy] = [w * random.between(0.1, 0.4), h * random.between(-0.1, 0.3)];
    const inner = random.pick([0, 25, 45, 60]);
    return [
      corner(-w, -h, low),
      corner(w, -h, low),
      corner(w + lean() / 2, cy, high),
      corner(cx, cy + lean() / 2, inner),
      corner(cx + lean() / 2, h, high),
      corner(-w, h, high),
    ];
  }
  if (shape === 's-curve') {
    const bow = random.between(12, 28);
    const middle = h + random.between(-20, 20);
    return [
      corner(-w, -h, low),
      corner(w, -h, low),
      corner(w, h, high, bow),
      corner(0, middle, 0, -bow),
      corner(-w, 2 * middle - h, high),
    ];
  }
  const bows = shape === 'bowed' ? [random.between(8, 30), 0, random.between(-12, 25), 0] : [0, 0, 0, 0];
  return [
    corner(-w + lean(), -h, low, bows[0]),
    corner(w + lean(), -h, low, bows[1]),
    corner(w, h, high, bows[2]),
    corner(-w, h, high, bows[3]),
  ];
}

/** Points along a segment every `step` mm, its start among them, its end not. */
export function along(s: TrueSegment, step: number): Xy[] {
  const chord = Math.hypot(s.end[0] - s.start[0], s.end[1] - s.start[1]);
  if (s.type === 'line') {
    const count = Math.max(1, Math.ceil(chord / step));
    return Array.from({ length: count }, (_, i) => [
      s.start[0] + ((s.end[0] - s.start[0]) * i) / count,
      s.start[1] + ((s.end[1] - s.start[1]) * i) / count,
    ]);
  }
  const [cx, cy] = s.center!;
  const from = Math.atan2(s.start[1] - cy, s.start[0] - cx);
  const sign = s.ccw === false ? -1 : 1;
  const turn = (Math.atan2(s.end[1] - cy, s.end[0] - cx) - from) * sign;
  const sweep = ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const count = Math.max(1, Math.ceil((sweep * s.radius!) / step));
  return Array.from({ length: count }, (_, i) => {
    const angle = from + (sign * sweep * i) / count;
    return [cx + s.radius! * Math.cos(angle), cy + s.radius! * Math.sin(angle)];
  });
}
