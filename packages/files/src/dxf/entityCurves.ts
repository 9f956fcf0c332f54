import type { Vector } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileCurve } from '../curve/drawing.ts';
import type { FileRefusal } from '../fileRefusal.ts';
import { DxfNumbers, type DxfRecord } from './dxfTags.ts';
import { splineBeziers } from './splineBeziers.ts';

type Curves = Result<readonly FileCurve[], FileRefusal>;
type Read = (numbers: DxfNumbers) => Curves;

/** Entities that draw outlines: the codes they cannot do without, and how they are read. */
const ENTITIES: ReadonlyMap<string, { readonly required: readonly number[]; readonly read: Read }> = new Map([
  ['LINE', { required: [10, 20, 11, 21], read: readLine }],
  ['ARC', { required: [10, 20, 40, 50, 51], read: readArc }],
  ['CIRCLE', { required: [10, 20, 40], read: readCircle }],
  ['ELLIPSE', { required: [10, 20, 11, 21, 40], read: readEllipse }],
  ['LWPOLYLINE', { required: [90, 10, 20], read: readLightPolyline }],
  ['SPLINE', { required: [71], read: readSpline }],
]);

export const drawsOutline = (kind: string) => ENTITIES.has(kind);

/**
 * An entity's curves in the plane of the drawing, in the file's unit, closing edge included.
 *
 * @refuses numbers that cannot be read or make no such entity; ENTITY_NOT_FLAT for what lies out of the xy plane
 * @source sources.md#dxf-reference
 */
export function entityCurves(record: DxfRecord): Curves {
  const { required, read } = ENTITIES.get(record.kind)!;
  const numbers = DxfNumbers.of(record, required);
  return numbers.ok ? read(numbers.value) : numbers;
}

const notFlat = ({ place }: DxfNumbers) => refuse({ code: 'ENTITY_NOT_FLAT', place });
const outOfRange = ({ place }: DxfNumbers, what: string, value: number) =>
  refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what, value });

/** Heights that differ by less are rounding, in the file's unit. */
const SAME_HEIGHT = 1e-4;
const at = (n: DxfNumbers, code: number): Vector => ({ x: n.get(code), y: n.get(code + 10) });

/**
 * 1 where the entity faces the reader, -1 where it is seen from behind: then its own x axis points left.
 *
 * @source arbitrary axis algorithm: sources.md#dxf-reference
 */
export function facing(n: DxfNumbers): 1 | -1 | undefined {
  const [x, y, z] = [n.get(210), n.get(220), n.get(230, 1)];
  const length = Math.hypot(x, y, z);
  if (!(length > 0) || Math.hypot(x, y) > 1e-6 * length) return undefined;
  return z > 0 ? 1 : -1;
}

/** Curves of an entity that is drawn in its own plane. */
function facingReader(n: DxfNumbers, curves: readonly FileCurve[]): Curves {
  const side = facing(n);
  if (side === undefined) return notFlat(n);
  if (side === 1) return ok(curves);
  const flip = ({ x, y }: Vector): Vector => ({ x: -x, y });
  return ok(
    curves.map((curve): FileCurve => {
      if (curve.kind === 'line') return { kind: 'line', from: flip(curve.from), to: flip(curve.to) };
      if (curve.kind === 'arc')
        return { ...curve, from: flip(curve.from), to: flip(curve.to), bulge: -curve.bulge };
      if (curve.kind === 'ellipse')
        return { ...curve, centre: flip(curve.centre), u: flip(curve.u), v: flip(curve.v) };
      return curve;
    }),
  );
}

function readLine(n: DxfNumbers): Curves {
  if (Math.abs(n.get(30) - n.get(31)) > SAME_HEIGHT) return notFlat(n);
  return ok([{ kind: 'line', from: at(n, 10), to: at(n, 11) }]);
}

/** A turn about a centre, from `start` by `sweep`, both in radians. */
const turn = (centre: Vector, radius: number, start: number, sweep: number): FileCurve => ({
  ...{ kind: 'ellipse', centre, start, end: start + sweep },
  ...{ u: { x: radius, y: 0 }, v: { x: 0, y: radius } },
});

/** Sweep from one angle to another the positive way round, above 0 and up to a full turn. */
function forward(start: number, end: number, whole: number): number {
  const sweep = (end - start) % whole;
  return sweep <= 1e-6 * whole ? sweep + whole : sweep;
}

function readArc(n: DxfNumbers): Curves {
  const radius = n.get(40);
  if (!(radius > 0)) return outOfRange(n, 'radius', radius);
  const degree = Math.PI / 180;
  const sweep = forward(n.get(50), n.get(51), 360) * degree;
  return facingReader(n, [turn(at(n, 10), radius, (n.get(50) % 360) * degree, sweep)]);
}

function readCircle(n: DxfNumbers): Curves {
  const radius = n.get(40);
  if (!(radius > 0)) return outOfRange(n, 'radius', radius);
  return facingReader(n, [turn(at(n, 10), radius, 0, 2 * Math.PI)]);
}

/** In the coordinates of the drawing, not of its own plane: the direction it faces only says on which side the minor axis is. */
function readEllipse(n: DxfNumbers): Curves {
  const [side, u, ratio] = [facing(n), at(n, 11), n.get(40)];
  if (side === undefined || Math.abs(n.get(31)) > SAME_HEIGHT) return notFlat(n);
  if (!(Math.hypot(u.x, u.y) > 0)) return outOfRange(n, 'major axis', 0);
  if (!(ratio > 0)) return outOfRange(n, 'ratio of the axes', ratio);
  const v = { x: -side * u.y * ratio, y: side * u.x * ratio };
  const start = n.get(41);
  const sweep = forward(start, n.get(42, 2 * Math.PI), 2 * Math.PI);
  return ok([{ kind: 'ellipse', centre: at(n, 10), u, v, start, end: start + sweep }]);
}

export interface Vertex extends Vector {
  readonly bulge: number;
}

/** Edges from vertex to vertex; a bulge belongs to the edge that leaves its vertex. @source sources.md#dxf-bulge */
export function vertexCurves(vertices: readonly Vertex[], isClosed: boolean): readonly FileCurve[] {
  const last = isClosed ? vertices.length : vertices.length - 1;
  return vertices.slice(0, last).flatMap((from, i): readonly FileCurve[] => {
    const to = vertices[(i + 1) % vertices.length]!;
    if (from.x === to.x && from.y === to.y) return [];
    return [from.bulge === 0 ? { kind: 'line', from, to } : { kind: 'arc', from, to, bulge: from.bulge }];
  });
}

function readLightPolyline(n: DxfNumbers): Curves {
  const vertices: { x: number; y: number; bulge: number; ys: number }[] = [];
  for (const { code, value } of n.inOrder) {
    if (code === 10) vertices.push({ x: value, y: 0, bulge: 0, ys: 0 });
    const vertex = vertices.at(-1);
    if (code === 20 && vertex) {
      vertex.y = value;
      vertex.ys++;
    }
    if (code === 42 && vertex) vertex.bulge = value;
  }
  if (n.get(90) !== vertices.length)
    return refuse({
      code: 'COUNT_WRONG',
      place: n.place,
      what: 'vertices',
      stated: n.get(90),
      found: vertices.length,
    });
  if (vertices.some(({ ys }) => ys !== 1))
    return refuse({ code: 'VALUE_MISSING', place: n.place, what: 'group 20' });
  return facingReader(n, vertexCurves(vertices, (n.get(70) & 1) === 1));
}

const MOST_DEGREE = 7;

function readSpline(n: DxfNumbers): Curves {
  const { place } = n;
  const degree = n.get(71);
  const [xs, ys, zs] = [n.all(10), n.all(20), n.all(30)];
  const [knots, weights] = [n.all(40), n.all(41)];
  if (!(Number.isInteger(degree) && degree >= 1 && degree <= MOST_DEGREE))
    return outOfRange(n, 'degree', degree);
  if (xs.length === 0) {
    if (n.all(11).length > 0) return refuse({ code: 'SPLINE_WITHOUT_CONTROL_POINTS', place });
    return refuse({ code: 'VALUE_MISSING', place, what: 'group 10' });
  }
  if (ys.length !== xs.length) return refuse({ code: 'VALUE_MISSING', place, what: 'group 20' });
  for (const [what, stated, found] of [
    ['knots', n.get(72, knots.length), knots.length],
    ['control points', n.get(73, xs.length), xs.length],
    ['knots', xs.length + degree + 1, knots.length],
    ['weights', weights.length === 0 ? 0 : xs.length, weights.length],
  ] as const)
    if (stated !== found) return refuse({ code: 'COUNT_WRONG', place, what, stated, found });
  if (zs.some((z) => Math.abs(z - zs[0]!) > SAME_HEIGHT)) return notFlat(n);
  const light = weights.find((weight) => !(weight > 0));
  if (light !== undefined) return outOfRange(n, 'weight', light);
  if (!areKnots(knots, degree)) return refuse({ code: 'SPLINE_KNOTS_WRONG', place });
  const controls = xs.map((x, i) => {
    const w = weights[i] ?? 1;
    return { x: x * w, y: ys[i]! * w, w };
  });
  return ok(splineBeziers(degree, knots, controls));
}

/** Never falling, with a stretch to run over, and nowhere so often the same that the curve breaks. */
function areKnots(knots: readonly number[], degree: number): boolean {
  if (knots.some((knot, i) => i > 0 && knot < knots[i - 1]!)) return false;
  const [low, high] = [knots[degree]!, knots[knots.length - 1 - degree]!];
  if (!(high > low)) return false;
  return !knots.some((knot, i) => knot > low && knot < high && knot === knots[i + degree]);
}
