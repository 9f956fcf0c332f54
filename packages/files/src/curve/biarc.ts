import type { Vector } from '@panewright/geometry';

/** A line or arc by its ends; a bulge of 0 is a line. */
export interface Span {
  readonly from: Vector;
  readonly to: Vector;
  readonly bulge: number;
}

/** Arcs that turn further than this are no sane fit of a stretch, radians. */
const MOST_SWEEP = 2.8;

const cross = (a: Vector, b: Vector) => a.x * b.y - a.y * b.x;
const dot = (a: Vector, b: Vector) => a.x * b.x + a.y * b.y;
const between = (a: Vector, b: Vector) => Math.atan2(cross(a, b), dot(a, b));
const minus = (a: Vector, b: Vector): Vector => ({ x: a.x - b.x, y: a.y - b.y });

/**
 * Two arcs, tangent to each other, from `from` along `leaving` to `to` along `arriving` (unit directions), with equal
 * tangent lengths; one arc where one does. Undefined where the arcs would turn too far.
 *
 * @accuracy ends exact; joint tangent to rounding
 * @source sources.md#bolton-1975
 */
export function biarc(
  from: Vector,
  leaving: Vector,
  to: Vector,
  arriving: Vector,
): readonly Span[] | undefined {
  const chord = minus(to, from);
  const [alpha, beta] = [between(leaving, chord), between(chord, arriving)];
  if (Math.abs(alpha - beta) < 1e-7) return sane([{ from, to, bulge: Math.tan(alpha / 2) }]);
  const middle = joint(from, leaving, to, arriving);
  if (middle === undefined) return undefined;
  const first = between(leaving, minus(middle, from));
  const second = between(minus(to, middle), arriving);
  return sane([
    { from, to: middle, bulge: Math.tan(first / 2) },
    { from: middle, to, bulge: Math.tan(second / 2) },
  ]);
}

const sane = (spans: readonly Span[]) =>
  spans.every(({ bulge }) => Math.abs(bulge) < Math.tan(MOST_SWEEP / 4)) ? spans : undefined;

/** The joint of the biarc whose two tangent lengths are equal. */
function joint(from: Vector, leaving: Vector, to: Vector, arriving: Vector): Vector | undefined {
  const chord = minus(to, from);
  const sum = { x: leaving.x + arriving.x, y: leaving.y + arriving.y };
  const square = dot(chord, chord);
  const along = dot(chord, sum);
  const open = 2 * (1 - dot(leaving, arriving));
  // d² open + 2 d along - square = 0; the positive root in the form that loses no digits.
  const reach = square / (along + Math.sqrt(along * along + open * square));
  if (!(reach > 0 && Number.isFinite(reach))) return undefined;
  return {
    x: (from.x + to.x + reach * (leaving.x - arriving.x)) / 2,
    y: (from.y + to.y + reach * (leaving.y - arriving.y)) / 2,
  };
}

/** Distance of a point from a span. */
export function distanceFrom({ from, to, bulge }: Span, p: Vector): number {
  const ends = Math.min(Math.hypot(p.x - from.x, p.y - from.y), Math.hypot(p.x - to.x, p.y - to.y));
  const chord = minus(to, from);
  const length = Math.hypot(chord.x, chord.y);
  if (length === 0) return ends;
  const along = dot(minus(p, from), chord) / length;
  const off = cross(chord, minus(p, from)) / length;
  const rise = (bulge * length) / 2;
  if (Math.abs(rise) < 1e-9) return along < 0 || along > length ? ends : Math.abs(off);
  const radius = (length * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  // In the chord's frame the arc bends to the right for a positive bulge; its centre lies at height `lift`.
  const lift = Math.sign(bulge) * radius - rise;
  const [x, y] = [along - length / 2, off - lift];
  const sweep = 4 * Math.atan(Math.abs(bulge));
  const turned = Math.abs(Math.atan2(x, -Math.sign(bulge) * y));
  return turned <= sweep / 2 ? Math.abs(Math.hypot(x, y) - radius) : ends;
}

/** Length along a span. @source sources.md#dxf-bulge */
export function spanLength({ from, to, bulge }: Span): number {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (Math.abs(bulge) < 1e-9) return chord;
  return (chord * (1 + bulge * bulge) * Math.atan(Math.abs(bulge))) / Math.abs(bulge);
}
