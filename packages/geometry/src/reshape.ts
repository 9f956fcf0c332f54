import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import {
  beside,
  bulgeAlong,
  type Carrier,
  carrierOf,
  crossing,
  footOn,
  headingAt,
  shifted,
} from './carrier.ts';
import { arcOf, type Edge, edges } from './edges.ts';
import type { Outline, Segment } from './outline.ts';
import { point, type Vector } from './point.ts';
import { validate } from './validate.ts';

/** Why an outline is left as it is. Edges are counted from 0; a corner is named by the edge that ends at it. */
export type ReshapeRefusal =
  | { readonly code: 'EDGE_NOT_THERE'; readonly edge: number; readonly edges: number }
  | { readonly code: 'EDGE_NOT_ROUND'; readonly edge: number }
  | { readonly code: 'CORNER_NOT_SHARP'; readonly edge: number }
  | { readonly code: 'RADIUS_TOO_SMALL'; readonly edge: number; readonly least: Millimetre }
  | { readonly code: 'NEIGHBOURS_DO_NOT_MEET'; readonly edge: number };

type Reshaped = Result<Outline, ReshapeRefusal>;

/** Edges that meet within this are tangent, radians. */
const TANGENT = 0.01;

/**
 * An edge moved across itself, its neighbours following: a straight or curved side moves whole, the roundings at its ends
 * keep their radii and stay tangent; a rounding moves by changing its radius.
 *
 * @param outward mm; positive enlarges the outline
 * @returns an outline with as many edges, in the same order
 * @refuses EDGE_NOT_THERE; NEIGHBOURS_DO_NOT_MEET where an edge would vanish or the outline cross itself
 * @source elementary geometry of lines and circles
 */
export function moveEdge(outline: Outline, edge: number, outward: Millimetre): Reshaped {
  const ring = ringOf(outline);
  if (!ring.all[edge]) return refuse({ code: 'EDGE_NOT_THERE', edge, edges: ring.all.length });
  if (ring.rounding[edge]) return moveRounding(outline, edge, outward);
  const normal = outwardAt(ring.all[edge]);
  ring.carriers[edge] = shifted(carrierOf(ring.all[edge]), { x: normal.x * outward, y: normal.y * outward });
  return settle(ring, edge) ? finish(ring, edge) : unmet(edge);
}

/**
 * An arc with another radius: a rounding stays tangent to its sides, a curved side keeps its ends.
 *
 * @param radius mm, above 0
 * @refuses EDGE_NOT_THERE, EDGE_NOT_ROUND, RADIUS_TOO_SMALL, NEIGHBOURS_DO_NOT_MEET
 * @source elementary geometry of lines and circles
 */
export function setRadius(outline: Outline, edge: number, radius: Millimetre): Reshaped {
  const ring = ringOf(outline);
  const old = ring.all[edge];
  if (!old) return refuse({ code: 'EDGE_NOT_THERE', edge, edges: ring.all.length });
  if (old.bulge === 0) return refuse({ code: 'EDGE_NOT_ROUND', edge });
  if (ring.rounding[edge]) {
    if (!(radius > 0)) return refuse({ code: 'RADIUS_TOO_SMALL', edge, least: mm(0) });
    return round(ring, edge, radius) ? finish(ring, edge) : unmet(edge);
  }
  const half = Math.hypot(old.to.x - old.from.x, old.to.y - old.from.y) / 2;
  if (!(radius >= half)) return refuse({ code: 'RADIUS_TOO_SMALL', edge, least: mm(half) });
  const less = 2 * Math.asin(half / radius);
  const sweep = Math.abs(old.bulge) > 1 ? 2 * Math.PI - less : less;
  ring.carriers[edge] = carrierOf({ ...old, bulge: Math.sign(old.bulge) * Math.tan(sweep / 4) });
  return settle(ring, edge) ? finish(ring, edge) : unmet(edge);
}

/**
 * A sharp corner moved; its two edges follow it, turning about their other ends.
 *
 * @param edge the one that ends at the corner
 * @refuses EDGE_NOT_THERE, CORNER_NOT_SHARP, NEIGHBOURS_DO_NOT_MEET
 * @source elementary geometry of lines and circles
 */
export function moveCorner(outline: Outline, edge: number, to: Vector): Reshaped {
  const ring = ringOf(outline);
  const before = ring.all[edge];
  if (!before) return refuse({ code: 'EDGE_NOT_THERE', edge, edges: ring.all.length });
  const next = (edge + 1) % ring.all.length;
  if (isTangent(ring.all, edge)) return refuse({ code: 'CORNER_NOT_SHARP', edge });
  const after = ring.all[next]!;
  ring.carriers[edge] = carrierOf({ from: before.from, to: point(to.x, to.y), bulge: before.bulge });
  ring.carriers[next] = carrierOf({ from: point(to.x, to.y), to: after.to, bulge: after.bulge });
  ring.ends[edge] = to;
  const [first, last] = [around(ring, edge - 1), around(ring, next + 1)];
  if (ring.rounding[first] && !round(ring, first)) return unmet(edge);
  if (ring.rounding[last] && !round(ring, last)) return unmet(edge);
  return finish(ring, edge);
}

/** Whether two edges meet at an angle where `edge` ends. */
export const isSharp = (outline: Outline, edge: number): boolean => !isTangent(edges(outline), edge);

/** An outline being changed. An edge without a carrier keeps its bulge between whatever its ends become. */
interface Ring {
  readonly all: readonly Edge[];
  /** True for an arc that rounds the corner of its two neighbours. */
  readonly rounding: readonly boolean[];
  readonly carriers: (Carrier | undefined)[];
  readonly ends: Vector[];
}

const around = ({ all }: Pick<Ring, 'all'>, k: number) => (k + all.length) % all.length;
const unmet = (edge: number) => refuse({ code: 'NEIGHBOURS_DO_NOT_MEET', edge });

function ringOf(outline: Outline): Ring {
  const all = edges(outline);
  const carriers = all.map(carrierOf);
  const ring = { all, carriers, ends: all.map(({ to }) => to), rounding: [] as boolean[] };
  const radius = (k: number) => {
    const carrier = carriers[around(ring, k)]!;
    return carrier.kind === 'line' ? Infinity : carrier.radius;
  };
  all.forEach((_, k) => {
    const less = radius(k) < 0.999 * Math.min(radius(k - 1), radius(k + 1));
    ring.rounding.push(less && all.length > 2 && isTangent(all, k) && isTangent(all, around(ring, k - 1)));
  });
  return ring;
}

const isTangent = (all: readonly Edge[], edge: number): boolean =>
  tangentAt(all[edge]!, all[(edge + 1) % all.length]!);

/** Whether an edge goes on in the direction of the one before it. */
function tangentAt(edge: Edge, next: Edge): boolean {
  const [u, v] = [headingAt(carrierOf(edge), edge.to), headingAt(carrierOf(next), edge.to)];
  return Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y)) < TANGENT;
}

/** Unit normal away from the inside (the outline runs anticlockwise), at an edge's middle. */
function outwardAt(edge: Edge): Vector {
  const [dx, dy] = [edge.to.x - edge.from.x, edge.to.y - edge.from.y];
  const length = Math.hypot(dx, dy);
  return { x: dy / length, y: -dx / length };
}

/** Brings the neighbours of a side that has a new carrier back to it. */
function settle(ring: Ring, side: number): boolean {
  const [before, after] = [around(ring, side - 1), around(ring, side + 1)];
  const first = ring.rounding[before] ? round(ring, before) : meet(ring, before, side, before);
  const last = ring.rounding[after] ? round(ring, after) : meet(ring, side, after, after);
  return first && last;
}

/** The joint of two sides: where they cross; where they are tangent, the `other` one's end follows the one that moved. */
function meet(ring: Ring, a: number, b: number, other: number): boolean {
  const old = ring.all[a]!.to;
  if (!tangentAt(ring.all[a]!, ring.all[b]!)) {
    const at = crossing(ring.carriers[a]!, ring.carriers[b]!, old);
    if (at) ring.ends[a] = at;
    return at !== undefined;
  }
  ring.ends[a] = footOn(ring.carriers[a === other ? b : a]!, old);
  const { bulge } = ring.all[other]!;
  ring.carriers[other] = carrierOf({ ...endsOf(ring, other), bulge });
  const far = around(ring, other === a ? a - 1 : b + 1);
  return !ring.rounding[far] || round(ring, far);
}

function endsOf(ring: Ring, edge: number) {
  const [from, to] = [ring.ends[around(ring, edge - 1)]!, ring.ends[edge]!];
  return { from: point(from.x, from.y), to: point(to.x, to.y) };
}

/** Lays a rounding anew between its two sides. Between parallels it becomes as wide as they are apart. */
function round(ring: Ring, edge: number, radius?: number): boolean {
  const [a, b] = [around(ring, edge - 1), around(ring, edge + 1)];
  const [one, two] = [ring.carriers[a], ring.carriers[b]];
  const old = carrierOf(ring.all[edge]!);
  if (!one || !two || old.kind === 'line') return false;
  const wanted = radius ?? old.radius;
  const [p, q] = [beside(one, old.turn * wanted), beside(two, old.turn * wanted)];
  const centre = p && q && crossing(p, q, old.centre);
  if (centre) {
    ring.ends[a] = footOn(one, centre);
    ring.ends[edge] = footOn(two, centre);
    ring.carriers[edge] = { kind: 'circle', centre, radius: wanted, turn: old.turn };
    return true;
  }
  if (radius !== undefined) return false;
  ring.ends[a] = footOn(one, ring.ends[a]!);
  ring.ends[edge] = footOn(two, ring.ends[edge]!);
  ring.carriers[edge] = undefined;
  return true;
}

/** The radius that brings a rounding's middle to where it is wanted, by the secant rule. */
function moveRounding(outline: Outline, edge: number, outward: Millimetre): Reshaped {
  const arc = arcOf(edges(outline)[edge]!)!;
  const normal = outwardAt(edges(outline)[edge]!);
  const start = middleOf(outline, edge);
  const moved = (candidate: Outline) => {
    const now = middleOf(candidate, edge);
    return (now.x - start.x) * normal.x + (now.y - start.y) * normal.y - outward;
  };
  let [r0, f0] = [arc.radius as number, -outward as number];
  let r1 = 0.98 * r0;
  for (let step = 0; step < 20; step++) {
    const tried = setRadius(outline, edge, mm(r1));
    if (!tried.ok) return unmet(edge);
    const f1 = moved(tried.value);
    if (Math.abs(f1) < 1e-7) return tried;
    [r0, r1, f0] = [r1, r1 - (f1 * (r1 - r0)) / (f1 - f0), f1];
    if (!(r1 > 0)) return unmet(edge);
  }
  return unmet(edge);
}

function middleOf(outline: Outline, edge: number): Vector {
  const { from, to, bulge } = edges(outline)[edge]!;
  return {
    x: (from.x + to.x) / 2 + ((to.y - from.y) * bulge) / 2,
    y: (from.y + to.y) / 2 - ((to.x - from.x) * bulge) / 2,
  };
}

/** The ring as an outline; refused where an edge has turned round or is no longer there. */
function finish({ all, carriers, ends }: Ring, edge: number): Reshaped {
  const segments = all.map((old, k): Segment | undefined => {
    const [from, to] = [ends[(k + all.length - 1) % all.length]!, ends[k]!];
    const carrier = carriers[k];
    const forward = (to.x - from.x) * (old.to.x - old.from.x) + (to.y - from.y) * (old.to.y - old.from.y);
    const bulge = carrier?.kind === 'circle' ? bulgeAlong(carrier, from, to) : old.bulge;
    const swept = 4 * Math.abs(Math.atan(bulge) - Math.atan(old.bulge));
    if (!(forward > 0) || !(swept < Math.PI)) return undefined;
    return old.kind === 'line'
      ? { kind: 'line', to: point(to.x, to.y) }
      : { kind: 'arc', to: point(to.x, to.y), bulge };
  });
  const whole = segments.filter((one) => one !== undefined);
  if (whole.length < all.length) return unmet(edge);
  const checked = validate({ segments: whole });
  return checked.ok ? ok(checked.value) : unmet(edge);
}
