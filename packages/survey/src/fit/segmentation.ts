import { type Chain, type Joint, wrap } from './chain.ts';
import { type Primitive, primitiveCost, primitiveFit } from './primitiveCost.ts';
import type { FitPoints } from './solveChain.ts';

/** Nodes at which an edge may begin; the search costs their square. */
const MOST_NODES = 240;
const LEAST_NODES_IN_EDGE = 3;
/** A joint this near to tangent is first taken to be so. */
/** No arc of an outline with other edges turns this far. */
export const LOOP = (300 * Math.PI) / 180;
const NEAR_TANGENT = (25 * Math.PI) / 180;

interface Run {
  readonly from: number;
  readonly to: number;
  readonly fit: Primitive;
}

/**
 * First guess of a chain: dynamic programming over all ways to cut the ring into lines and arcs, the least sum of
 * truncated misfit and of ln(points) for each parameter.
 *
 * @returns undefined when there are too few points
 * @source sources.md#schwarz-1978 (evidence), sources.md#bellman-1961 (optimal piecewise fit)
 */
export function firstChain(points: FitPoints): Chain | undefined {
  const nodes = chooseNodes(points);
  const count = nodes.x.length;
  if (count < 3 * LEAST_NODES_IN_EDGE) return undefined;
  return chainOfRuns(cut(nodes, trustOf(nodes), Math.log(points.x.length)), nodes);
}

/** Nodes spaced evenly by length and by turning, so that small roundings get their share; from the middle of a straight. */
function chooseNodes(points: FitPoints): FitPoints {
  const count = points.x.length;
  const [step, turning] = ringSteps(points);
  const [length, turned] = [sum(step), sum(turning)];
  const metric = step.map(
    (part, i) => 0.5 * (part / length) + 0.5 * (turned > 0 ? turning[i]! / turned : part / length),
  );
  const wanted = Math.min(count, MOST_NODES);
  const start = calmest(turning);
  const chosen: number[] = [];
  let along = 0;
  for (let i = 0; i < count; i++) {
    const at = (start + i) % count;
    if (Math.floor(along * wanted + 1e-9) >= chosen.length) chosen.push(at);
    along += metric[at]!;
  }
  const pick = (from: Float64Array) => Float64Array.from(chosen, (i) => from[i]!);
  return { x: pick(points.x), y: pick(points.y), sigma: pick(points.sigma), weight: pick(points.weight) };
}

const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

/** Length to the next point, and turning there over a reach of several points, less what noise alone would turn. */
function ringSteps({ x, y, sigma }: FitPoints): readonly [Float64Array, Float64Array] {
  const count = x.length;
  const step = x.map((at, i) => Math.hypot(x[(i + 1) % count]! - at, y[(i + 1) % count]! - y[i]!));
  const reach = Math.max(
    1,
    Math.min(Math.ceil((12 * sigma[0]!) / (sum(step) / count)), Math.floor(count / 40)),
  );
  const turning = x.map((at, i) => {
    const [before, after] = [(i - reach + count) % count, (i + reach) % count];
    const [ax, ay] = [at - x[before]!, y[i]! - y[before]!];
    const [bx, by] = [x[after]! - at, y[after]! - y[i]!];
    const noise = (3 * sigma[i]!) / Math.max(Math.hypot(ax, ay), Math.hypot(bx, by), 1e-9);
    const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    return Math.min(Math.max(turn - noise, 0), 0.5);
  });
  return [step, turning];
}

/** The middle of the longest stretch that hardly turns. */
function calmest(turning: Float64Array): number {
  const count = turning.length;
  const limit = 0.02;
  let [best, longest, run] = [0, 0, 0];
  for (let i = 0; i < 2 * count; i++) {
    run = turning[i % count]! <= limit ? Math.min(run + 1, count) : 0;
    if (run > longest) [longest, best] = [run, i];
  }
  return (best - Math.floor(longest / 2) + count) % count;
}

/** Low for a node that lies off the median of its neighbours across their chord, by their own spread. */
function trustOf({ x, y, sigma }: FitPoints): Float64Array {
  const count = x.length;
  const median = (values: number[]) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
  return x.map((at, i) => {
    const around = [-4, -3, -2, -1, 1, 2, 3, 4].map((k) => (i + k + count) % count);
    const [a, b] = [around[0]!, around[7]!];
    const chord = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) || 1;
    const across = (px: number, py: number) =>
      ((x[b]! - x[a]!) * (py - y[a]!) - (y[b]! - y[a]!) * (px - x[a]!)) / chord;
    const offsets = around.map((k) => across(x[k]!, y[k]!));
    const middle = median([...offsets]);
    const spread = 1.4826 * median(offsets.map((offset) => Math.abs(offset - middle))) + sigma[i]!;
    return 1 / (1 + ((across(at, y[i]!) - middle) / (3 * spread)) ** 2);
  });
}

/** The cheapest cut of nodes 0 to count − 1 into runs. */
function cut(nodes: FitPoints, trust: Float64Array, evidence: number): readonly Run[] {
  const count = nodes.x.length;
  const total = new Float64Array(count + 1).fill(Number.POSITIVE_INFINITY);
  const back = new Int32Array(count + 1);
  const asArc = new Uint8Array(count + 1);
  const cost = new Float64Array(2);
  total[0] = 0;
  for (let to = LEAST_NODES_IN_EDGE; to <= count; to++) {
    for (let from = to - LEAST_NODES_IN_EDGE; from >= 0; from--) {
      if (!(total[from]! + 2 * evidence < total[to]!)) continue;
      primitiveCost(nodes, trust, from, to, cost);
      const [line, arc] = [cost[0]! + 2 * evidence, cost[1]! + 3 * evidence];
      const sum = total[from]! + Math.min(line, arc);
      if (sum >= total[to]!) continue;
      total[to] = sum;
      back[to] = from;
      asArc[to] = arc < line ? 1 : 0;
    }
  }
  const runs: Run[] = [];
  for (let to = count; to > 0; to = back[to]!) {
    const from = back[to]!;
    runs.unshift({ from, to, fit: primitiveFit(nodes, trust, from, to, asArc[to] === 1 ? 'arc' : 'line') });
  }
  return mergeSeam(runs, nodes, trust);
}

/** The ring was cut open in the middle of a straight: the first and last runs are one line. */
function mergeSeam(runs: readonly Run[], nodes: FitPoints, trust: Float64Array): readonly Run[] {
  const [first, last] = [runs[0]!, runs.at(-1)!];
  if (runs.length < 3 || first.fit.kind !== 'line' || last.fit.kind !== 'line') return runs;
  if (Math.abs(wrap(first.fit.heading - last.fit.heading)) > 0.05) return runs;
  const order = [...range(last.from, last.to), ...range(first.from, first.to)];
  const pick = (from: Float64Array) => Float64Array.from(order, (i) => from[i]!);
  const joined = { x: pick(nodes.x), y: pick(nodes.y), sigma: pick(nodes.sigma), weight: pick(nodes.weight) };
  const fit = primitiveFit(joined, pick(trust), 0, order.length, 'line');
  return [...runs.slice(1, -1), { from: last.from, to: first.to, fit }];
}

const range = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => from + i);

interface Place {
  readonly x: number;
  readonly y: number;
}

function chainOfRuns(runs: readonly Run[], nodes: FitPoints): Chain {
  const count = nodes.x.length;
  const starts = runs.map(({ from, fit }, k): Place => {
    const before = runs[(k + runs.length - 1) % runs.length]!;
    const last = (from - 1 + count) % count;
    const between = { x: (nodes.x[last]! + nodes.x[from]!) / 2, y: (nodes.y[last]! + nodes.y[from]!) / 2 };
    const met = runs.length > 1 ? meet(before.fit, fit, between) : undefined;
    const reach = Math.max(20, 0.3 * Math.min(span(before, nodes), span(runs[k]!, nodes)));
    return met && Math.hypot(met.x - between.x, met.y - between.y) < reach ? met : between;
  });
  const edges = runs.map(({ fit }, k) => {
    const [start, end] = [starts[k]!, starts[(k + 1) % runs.length]!];
    const sweep = fit.kind === 'arc' ? sweepAbout(fit, start, end) : 0;
    // A few stray nodes may ask for a loop; their run is told as straight, to be dropped or bent later.
    const loops = Math.abs(sweep) > LOOP && runs.length > 2;
    return loops ? { kind: 'line' as const, ...start, sweep: 0 } : { kind: fit.kind, ...start, sweep };
  });
  const joints = runs.map(({ fit }, k): Joint => {
    const before = runs[(k + runs.length - 1) % runs.length]!.fit;
    const straight = [k, (k + runs.length - 1) % runs.length].every((i) => edges[i]!.kind === 'line');
    if (straight) return 'corner';
    const turn = wrap(headingAt(fit, starts[k]!) - headingAt(before, starts[k]!));
    return Math.abs(turn) < NEAR_TANGENT ? 'tangent' : 'corner';
  });
  return { edges, joints };
}

function span({ from, to }: Run, { x, y }: FitPoints): number {
  const last = (to - 1 + x.length) % x.length;
  return Math.hypot(x[last]! - x[from]!, y[last]! - y[from]!);
}

/** From one place to the next round the fit's centre, the way it turns, 0 to 2π in size. */
export function sweepAbout(fit: Primitive & { readonly kind: 'arc' }, start: Place, end: Place): number {
  const angle = (place: Place) => Math.atan2(place.y - fit.y, place.x - fit.x);
  const swept = fit.turn * (angle(end) - angle(start));
  return fit.turn * (swept - 2 * Math.PI * Math.floor(swept / (2 * Math.PI)));
}

export function headingAt(fit: Primitive, place: Place): number {
  return fit.kind === 'line'
    ? fit.heading
    : Math.atan2(place.y - fit.y, place.x - fit.x) + (fit.turn * Math.PI) / 2;
}

/** Where two neighbours cross, or touch if they nearly do. */
export function meet(a: Primitive, b: Primitive, near: Place): Place | undefined {
  if (a.kind === 'line' && b.kind === 'line') {
    const cross = Math.sin(b.heading - a.heading);
    if (Math.abs(cross) < 0.05) return undefined;
    const t = ((b.x - a.x) * Math.sin(b.heading) - (b.y - a.y) * Math.cos(b.heading)) / cross;
    return { x: a.x + t * Math.cos(a.heading), y: a.y + t * Math.sin(a.heading) };
  }
  if (a.kind === 'arc' && b.kind === 'arc') {
    const apart = Math.hypot(b.x - a.x, b.y - a.y);
    if (apart === 0) return undefined;
    const options = [1, -1].map((sign) => ({
      x: a.x + (sign * a.radius * (b.x - a.x)) / apart,
      y: a.y + (sign * a.radius * (b.y - a.y)) / apart,
    }));
    const far = (place: Place) => Math.hypot(place.x - near.x, place.y - near.y);
    return options.reduce((best, place) => (far(place) < far(best) ? place : best));
  }
  const [line, arc] = a.kind === 'line' ? [a, b] : [b as Primitive & { kind: 'line' }, a];
  const along = (arc.x - line.x) * Math.cos(line.heading) + (arc.y - line.y) * Math.sin(line.heading);
  return { x: line.x + along * Math.cos(line.heading), y: line.y + along * Math.sin(line.heading) };
}
