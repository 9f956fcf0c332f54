import type { Vector } from '@panewright/geometry';
import type { FileCurve, Stroke } from './drawing.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the order in which SVG writes a matrix. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const scaling = (x: number, y: number): Affine => ({ ...IDENTITY, a: x, d: y });
export const shifting = (x: number, y: number): Affine => ({ ...IDENTITY, e: x, f: y });
/** Anticlockwise where y is up. */
export const turning = (angle: number): Affine => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
};

/** First the last, then the one before it, as they are written. */
export const chained = (...maps: readonly Affine[]): Affine => maps.reduce(times, IDENTITY);

function times(m: Affine, n: Affine): Affine {
  return {
    a: m.a * n.a + m.c * n.b,
    b: m.b * n.a + m.d * n.b,
    c: m.a * n.c + m.c * n.d,
    d: m.b * n.c + m.d * n.d,
    e: m.a * n.e + m.c * n.f + m.e,
    f: m.b * n.e + m.d * n.f + m.f,
  };
}

export const moved = (m: Affine, { x, y }: Vector): Vector => ({
  x: m.a * x + m.c * y + m.e,
  y: m.b * x + m.d * y + m.f,
});
const turned = (m: Affine, { x, y }: Vector): Vector => ({ x: m.a * x + m.c * y, y: m.b * x + m.d * y });

const determinant = ({ a, b, c, d }: Affine) => a * d - b * c;

/** The map keeps circles circles, to the last digits. */
function keepsCircles(m: Affine): boolean {
  const size = Math.hypot(m.a, m.b);
  const off = Math.abs(m.a * m.c + m.b * m.d) + Math.abs(size * size - (m.c * m.c + m.d * m.d));
  return off <= 1e-12 * size * size;
}

/** The map flattens everything onto a line or a point. */
export const isFlattening = (m: Affine): boolean =>
  Math.abs(determinant(m)) <= 1e-12 * (m.a * m.a + m.b * m.b + m.c * m.c + m.d * m.d);

/** The image of a curve under an affine map, exact: an arc under an uneven scale becomes part of an ellipse. */
export function mapCurve(m: Affine, curve: FileCurve): FileCurve {
  if (curve.kind === 'line') return { kind: 'line', from: moved(m, curve.from), to: moved(m, curve.to) };
  if (curve.kind === 'bezier') {
    const points = curve.points.map(({ x, y, w }) => ({
      x: m.a * x + m.c * y + m.e * w,
      y: m.b * x + m.d * y + m.f * w,
      w,
    }));
    return { kind: 'bezier', points };
  }
  if (curve.kind === 'ellipse')
    return { ...curve, centre: moved(m, curve.centre), u: turned(m, curve.u), v: turned(m, curve.v) };
  if (!keepsCircles(m)) return mapCurve(m, asEllipse(curve));
  const bulge = determinant(m) < 0 ? -curve.bulge : curve.bulge;
  return { kind: 'arc', from: moved(m, curve.from), to: moved(m, curve.to), bulge };
}

/** An arc by its centre. @source sources.md#dxf-bulge */
function asEllipse({ from, to, bulge }: Extract<FileCurve, { kind: 'arc' }>): FileCurve {
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const centre = {
    x: (from.x + to.x) / 2 - (to.y - from.y) * lift,
    y: (from.y + to.y) / 2 + (to.x - from.x) * lift,
  };
  const u = { x: from.x - centre.x, y: from.y - centre.y };
  const turn = Math.sign(bulge);
  const v = { x: -turn * u.y, y: turn * u.x };
  return { kind: 'ellipse', centre, u, v, start: 0, end: 4 * Math.atan(Math.abs(bulge)) };
}

export const mapStroke = (m: Affine, stroke: Stroke): Stroke => ({
  ...stroke,
  curves: stroke.curves.map((curve) => mapCurve(m, curve)),
});
