import { cholesky, invertPositive, substitute } from './leastSquares.ts';
import type { PlanePoint } from './planeGrid.ts';
import {
  contactGap,
  contactPoint,
  crossingPoint,
  headingNear,
  nearestOn,
  offsetFrom,
  type Primitive,
  shift,
} from './primitive.ts';

/** Points to fit, in the order of the path; `row` tells where along the path each was measured. */
export interface RingData {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly row: Float64Array;
  readonly weight: Float64Array;
  /** Rows in the whole ring. */
  readonly rows: number;
}

export interface RingPart {
  readonly primitive: Primitive;
  readonly kind: 'line' | 'arc';
  /** How it meets the part before it. */
  readonly joint: 'tangent' | 'sharp';
  /** Row at which it begins. */
  readonly from: number;
}

/** A closed ring of parts, and where each begins. */
export interface Ring {
  readonly parts: readonly RingPart[];
  /** vertices[i] is where part i begins. */
  readonly vertices: readonly PlanePoint[];
}

export interface RingFit extends Ring {
  /** Signed distance of every point from its part, mm. */
  readonly residuals: Float64Array;
  /** Weight each point ended with, robust and given together. */
  readonly weights: Float64Array;
  /** Part each point belongs to. */
  readonly owner: Int32Array;
  /** Robust standard deviation of the residuals, mm. */
  readonly scale: number;
  readonly rows: number;
  readonly system: RingSystem;
}

/** Linearised normal equations of the last step: three unknowns a part (offset, heading, curvature). */
export interface RingSystem {
  readonly inverse: Float64Array;
  /** Three derivatives a point. */
  readonly derivatives: Float64Array;
}

/** Tangent parts may miss each other by this, mm: a thousandth of what we claim. */
const CONTACT = 5e-4;
const STEP = [1e-3, 1e-6, 1e-8] as const;

/**
 * Fits a ring of lines and arcs to points: robust least squares of the normal distances, tangency held where a
 * joint asks for it.
 *
 * @param passes how often points are dealt out anew between the parts
 * @returns undefined when the parts come to overlap or a corner has no crossing: that ring cannot be
 * @accuracy tangent parts meet within 0.001 mm and 1e-5 rad
 * @source Gauss-Newton with Cauchy weights; sources.md#al-sharadqah-2009 (why tangent chains, not loose circles)
 */
export function fitRing(data: RingData, start: readonly RingPart[], passes = 5): RingFit | undefined {
  let parts: readonly RingPart[] = start;
  let owner = deal(data, parts);
  let scale = 1;
  for (let pass = 0; pass < passes; pass++) {
    const last = pass === passes - 1;
    for (let step = 0; step < (last ? 8 : 4); step++) {
      const next = improve(data, parts, owner, Math.max(scale, pass === 0 ? 1 : 0.05));
      if (!next) return undefined;
      parts = next;
    }
    const ring = place(data, parts);
    if (!ring) return undefined;
    parts = ring.parts;
    owner = deal(data, parts);
    scale = robustScale(data, parts, owner);
    if (last) return finish(data, ring, owner, scale);
  }
  return undefined;
}

/** Part of every point: the last one that begins at or before its row. Rows ascend, so parts are walked along. */
function deal({ row }: RingData, parts: readonly RingPart[]): Int32Array {
  const owner = new Int32Array(row.length);
  const order = parts.map((part, p) => ({ p, from: part.from })).sort((a, b) => a.from - b.from);
  let next = 0;
  let current = order.at(-1)!.p;
  for (let i = 0; i < row.length; i++) {
    while (next < order.length && order[next]!.from <= row[i]!) current = order[next++]!.p;
    owner[i] = current;
  }
  return owner;
}

function robustScale(data: RingData, parts: readonly RingPart[], owner: Int32Array): number {
  const sizes: number[] = [];
  for (let i = 0; i < data.x.length; i++) {
    if (data.weight[i]! > 0)
      sizes.push(Math.abs(offsetFrom(parts[owner[i]!]!.primitive, data.x[i]!, data.y[i]!)));
  }
  sizes.sort((a, b) => a - b);
  return Math.max(0.02, 1.4826 * (sizes[sizes.length >> 1] ?? 0.02));
}

const cauchy = (d: number, scale: number) => 1 / (1 + (d / (2.4 * scale)) ** 2);

interface Assembled {
  readonly normal: Float64Array;
  readonly gradient: Float64Array;
  readonly derivatives: Float64Array;
  readonly residuals: Float64Array;
  readonly weights: Float64Array;
}

function assemble(data: RingData, parts: readonly RingPart[], owner: Int32Array, scale: number): Assembled {
  const n = 3 * parts.length;
  const count = data.x.length;
  const normal = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  const derivatives = new Float64Array(3 * count);
  const residuals = new Float64Array(count);
  const weights = new Float64Array(count);
  const moved = parts.map(({ primitive }) => [0, 1, 2].map((k) => shift(primitive, k, STEP[k]!)));
  for (let i = 0; i < count; i++) {
    const at = 3 * owner[i]!;
    const part = parts[owner[i]!]!;
    const d = offsetFrom(part.primitive, data.x[i]!, data.y[i]!);
    const w = data.weight[i]! * cauchy(d, scale);
    residuals[i] = d;
    weights[i] = w;
    for (let k = 0; k < (part.kind === 'line' ? 2 : 3); k++) {
      derivatives[3 * i + k] = (offsetFrom(moved[owner[i]!]![k]!, data.x[i]!, data.y[i]!) - d) / STEP[k]!;
    }
    for (let a = 0; a < 3; a++) {
      const wa = w * derivatives[3 * i + a]!;
      gradient[at + a]! += wa * d;
      for (let b = 0; b < 3; b++) normal[(at + a) * n + at + b]! += wa * derivatives[3 * i + b]!;
    }
  }
  parts.forEach((part, p) => {
    if (part.kind === 'line') normal[(3 * p + 2) * (n + 1)] = 1e12;
    for (let k = 0; k < 3; k++) normal[(3 * p + k) * (n + 1)]! += [1e-6, 1e-3, 1e3][k]!;
    if (part.joint === 'tangent' && parts.length > 1) addContact(parts, moved, p, normal, gradient);
  });
  return { normal, gradient, derivatives, residuals, weights };
}

/** The tangency of part p with the one before it, as a stiff observation. */
function addContact(
  parts: readonly RingPart[],
  moved: readonly (readonly Primitive[])[],
  p: number,
  normal: Float64Array,
  gradient: Float64Array,
): void {
  const n = 3 * parts.length;
  const before = (p + parts.length - 1) % parts.length;
  const [a, b] = [parts[before]!.primitive, parts[p]!.primitive];
  const gap = contactGap(a, b);
  const weight = 1 / CONTACT ** 2;
  const entries: [number, number][] = [];
  for (let k = 0; k < 3; k++) {
    if (k < 2 || parts[before]!.kind === 'arc') {
      entries.push([3 * before + k, (contactGap(moved[before]![k]!, b) - gap) / STEP[k]!]);
    }
    if (k < 2 || parts[p]!.kind === 'arc') {
      entries.push([3 * p + k, (contactGap(a, moved[p]![k]!) - gap) / STEP[k]!]);
    }
  }
  for (const [i, di] of entries) {
    gradient[i]! += weight * di * gap;
    for (const [j, dj] of entries) normal[i * n + j]! += weight * di * dj;
  }
}

/** All unknowns moved by a step, three a part. */
export function shiftParts(parts: readonly RingPart[], step: ArrayLike<number>, factor: number): RingPart[] {
  return parts.map((part, p) => {
    let primitive = part.primitive;
    for (let k = 0; k < (part.kind === 'line' ? 2 : 3); k++)
      primitive = shift(primitive, k, factor * step[3 * p + k]!);
    return { ...part, primitive };
  });
}

function improve(data: RingData, parts: readonly RingPart[], owner: Int32Array, scale: number) {
  const { normal, gradient } = assemble(data, parts, owner, scale);
  const lower = cholesky(normal, gradient.length);
  if (!lower) return undefined;
  const step = substitute(lower, gradient, gradient.length);
  // A curvature may not change by more than half in a step, nor a place by more than 20 mm.
  let factor = 1;
  parts.forEach(({ primitive, kind }, p) => {
    const most = [20, 0.3, Math.max(Math.abs(primitive.curvature) / 2, 2e-4)];
    for (let k = 0; k < (kind === 'line' ? 2 : 3); k++) {
      const size = Math.abs(step[3 * p + k]!);
      if (!(size * factor <= most[k]!)) factor = most[k]! / size;
    }
  });
  return Number.isFinite(factor) && factor > 1e-9 ? shiftParts(parts, step, -factor) : undefined;
}

/** Vertices of the parts as they stand; undefined where neighbours do not meet or the order is broken. */
export function verticesOf(
  parts: readonly RingPart[],
  near: readonly PlanePoint[],
): PlanePoint[] | undefined {
  const vertices: PlanePoint[] = [];
  for (let p = 0; p < parts.length; p++) {
    const before = parts[(p + parts.length - 1) % parts.length]!;
    const part = parts[p]!;
    if (parts.length === 1) return [nearestOn(part.primitive, near[0]!.x, near[0]!.y)];
    const point =
      part.joint === 'tangent'
        ? contactPoint(before.primitive, part.primitive, near[p]!)
        : crossingPoint(before.primitive, part.primitive, near[p]!);
    if (!point || !Number.isFinite(point.x + point.y)) return undefined;
    vertices.push(point);
  }
  return vertices;
}

/** Vertices, new first rows, and reference points moved to the middle of their parts. */
function place(data: RingData, parts: readonly RingPart[]): Ring | undefined {
  const near = parts.map(({ from }) => pointAtRow(data, from));
  const vertices = verticesOf(parts, near);
  if (!vertices) return undefined;
  const rows = vertices.map((vertex, p) => rowNear(data, vertex, parts[p]!.from));
  const placed: RingPart[] = [];
  for (let p = 0; p < parts.length; p++) {
    const next = (p + 1) % parts.length;
    const whole = parts.length === 1;
    const length = whole ? data.rows : (rows[next]! - rows[p]! + 2 * data.rows) % data.rows;
    if (!(length >= 1) || (!whole && length > data.rows * 0.93)) return undefined;
    const middle = pointAtRow(data, rows[p]! + length / 2);
    const { primitive } = parts[p]!;
    const d = offsetFrom(primitive, middle.x, middle.y);
    if (Math.abs(d) > 40) return undefined;
    const heading = headingNear(primitive, middle.x, middle.y);
    const at = { x: middle.x + d * Math.sin(heading), y: middle.y - d * Math.cos(heading) };
    placed.push({
      ...parts[p]!,
      primitive: { ...at, heading, curvature: primitive.curvature },
      from: rows[p]!,
    });
  }
  return { parts: placed, vertices };
}

function indexAtRow({ row, rows }: RingData, at: number): number {
  const wanted = ((at % rows) + rows) % rows;
  let [low, high] = [0, row.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (row[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

function pointAtRow(data: RingData, at: number): PlanePoint {
  const i = indexAtRow(data, at);
  return { x: data.x[i]!, y: data.y[i]! };
}

/** Row of the data point nearest to a vertex, looked for within 60 rows of where it was. */
function rowNear(data: RingData, vertex: PlanePoint, from: number): number {
  const n = data.x.length;
  const middle = indexAtRow(data, from);
  const reach = Math.min(n >> 1, Math.ceil((90 * n) / data.rows));
  let [best, distance] = [from, Number.POSITIVE_INFINITY];
  for (let k = -reach; k <= reach; k++) {
    const i = (middle + k + n) % n;
    const d = Math.hypot(data.x[i]! - vertex.x, data.y[i]! - vertex.y);
    if (d < distance) [best, distance] = [data.row[i]!, d];
  }
  return best;
}

function finish(data: RingData, ring: Ring, owner: Int32Array, scale: number): RingFit {
  const { normal, derivatives, residuals, weights } = assemble(data, ring.parts, owner, scale);
  const inverse = invertPositive(normal, 3 * ring.parts.length);
  return { ...ring, residuals, weights, owner, scale, rows: data.rows, system: { inverse, derivatives } };
}
