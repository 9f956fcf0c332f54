import { type Edge, endOf, turnRatios } from './arcFrame.ts';

/** How an edge follows the one before it. */
export type Joint = 'tangent' | 'corner';

/**
 * A closed chain of edges, anticlockwise. Edge k begins at `from`, after joint k. A line has sweep 0. The geometry may
 * be a guess in which tangent joints are not yet tangent.
 */
export interface Chain {
  readonly edges: readonly {
    readonly kind: 'line' | 'arc';
    readonly x: number;
    readonly y: number;
    /** Angle the heading turns along the edge, rad, left positive. */
    readonly sweep: number;
  }[];
  readonly joints: readonly Joint[];
}

/** Which unknown is where: start x, y, heading, then for each edge its corner's turn, length and curvature. */
export interface Layout {
  readonly size: number;
  /** Columns; −1 where the edge has no such unknown. */
  readonly turn: readonly number[];
  readonly length: readonly number[];
  readonly curvature: readonly number[];
  /** The last joint is tangent, so that the heading has to close as well. */
  readonly closesTangent: boolean;
}

export function layoutOf({ edges, joints }: Chain): Layout {
  let size = 3;
  const turn = joints.map((joint, k) => (k > 0 && joint === 'corner' ? size++ : -1));
  const length = edges.map(() => size++);
  const curvature = edges.map(({ kind }) => (kind === 'arc' ? size++ : -1));
  return { size, turn, length, curvature, closesTangent: joints[0] === 'tangent' };
}

/** The unknowns of a chain's geometry. */
export function parametersOf(chain: Chain, layout: Layout): Float64Array {
  const parameters = new Float64Array(layout.size);
  const { edges } = chain;
  let heading = 0;
  for (const [k, edge] of edges.entries()) {
    const next = edges[(k + 1) % edges.length]!;
    const chord = Math.hypot(next.x - edge.x, next.y - edge.y);
    const start = Math.atan2(next.y - edge.y, next.x - edge.x) - edge.sweep / 2;
    const half = Math.sin(edge.sweep / 2);
    const curvature = chord > 0 ? (2 * half) / chord : 0;
    if (k === 0) {
      parameters.set([edge.x, edge.y, start]);
      heading = start;
    } else {
      const turn = wrap(start - heading);
      if (layout.turn[k]! >= 0) parameters[layout.turn[k]!] = turn;
      heading += turn;
    }
    parameters[layout.length[k]!] = Math.abs(half) > 1e-9 ? edge.sweep / curvature : chord;
    if (layout.curvature[k]! >= 0) parameters[layout.curvature[k]!] = curvature;
    heading += edge.sweep;
  }
  return parameters;
}

/**
 * A guess made fit to be told by its unknowns: an arc that should touch the lines on both sides turns from the heading of
 * the one to that of the other, so that no heading is lost at its joints and levered up along the rest.
 */
export function smoothed(chain: Chain): Chain {
  const count = chain.edges.length;
  const heading = (k: number) => {
    const [from, to] = [chain.edges[k % count]!, chain.edges[(k + 1) % count]!];
    return Math.atan2(to.y - from.y, to.x - from.x);
  };
  const edges = chain.edges.map((edge, k) => {
    const touches = chain.joints[k] === 'tangent' && chain.joints[(k + 1) % count] === 'tangent';
    const [before, next] = [(k + count - 1) % count, (k + 1) % count];
    const lines =
      chain.edges[before]!.kind === 'line' && chain.edges[next]!.kind === 'line' && before !== next;
    if (edge.kind === 'line' || !touches || !lines) return edge;
    const turn = wrap(heading(next) - heading(before) - edge.sweep);
    return Math.abs(turn) < 1 ? { ...edge, sweep: edge.sweep + turn } : edge;
  });
  return { edges, joints: chain.joints };
}

/** The edges of a guess as they lie, whether or not smooth joints are smooth yet. */
export function looseEdges(chain: Chain): readonly Edge[] {
  const loose: Chain = { edges: chain.edges, joints: chain.joints.map(() => 'corner') };
  const layout = layoutOf(loose);
  return edgesOf(parametersOf(loose, layout), layout);
}

/** To (−π, π]. */
export const wrap = (angle: number): number =>
  angle - 2 * Math.PI * Math.ceil((angle - Math.PI) / (2 * Math.PI));

/** The edges that the unknowns describe; where they end is not forced to be where they began. */
export function edgesOf(parameters: ArrayLike<number>, layout: Layout): readonly Edge[] {
  const edges: Edge[] = [];
  let state = { x: parameters[0]!, y: parameters[1]!, heading: parameters[2]! };
  for (const [k, column] of layout.length.entries()) {
    const turn = layout.turn[k]! >= 0 ? parameters[layout.turn[k]!]! : 0;
    const curvature = layout.curvature[k]! >= 0 ? parameters[layout.curvature[k]!]! : 0;
    const edge = { ...state, heading: state.heading + turn, length: parameters[column]!, curvature };
    edges.push(edge);
    state = endOf(edge);
  }
  return edges;
}

/** The chain that solved unknowns describe, with the joints of `chain`. */
export function chainOf(parameters: ArrayLike<number>, layout: Layout, chain: Chain): Chain {
  const edges = edgesOf(parameters, layout).map(({ x, y, length, curvature }, k) => ({
    kind: chain.edges[k]!.kind,
    x,
    y,
    sweep: curvature * length,
  }));
  return { edges, joints: chain.joints };
}

/**
 * Derivatives of each edge's start (x, y, heading: three rows of `size`) by all unknowns, and of the chain's end, by
 * the chain rule along the edges.
 */
export function stateSlopes(edges: readonly Edge[], layout: Layout): readonly Float64Array[] {
  const { size } = layout;
  let slopes = new Float64Array(3 * size);
  for (let row = 0; row < 3; row++) slopes[row * size + row] = 1;
  const all: Float64Array[] = [];
  for (const [k, { heading, length, curvature }] of edges.entries()) {
    if (layout.turn[k]! >= 0) slopes[2 * size + layout.turn[k]!] = 1;
    all.push(slopes);
    const { along, across, alongSlope, acrossSlope } = turnRatios(curvature * length);
    const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
    const [dx, dy] = [length * (cos * along - sin * across), length * (sin * along + cos * across)];
    const next = slopes.slice();
    for (let i = 0; i < size; i++) {
      next[i]! -= dy * slopes[2 * size + i]!;
      next[size + i]! += dx * slopes[2 * size + i]!;
    }
    const end = heading + curvature * length;
    const lengthColumn = layout.length[k]!;
    next[lengthColumn]! += Math.cos(end);
    next[size + lengthColumn]! += Math.sin(end);
    next[2 * size + lengthColumn]! += curvature;
    if (layout.curvature[k]! >= 0) {
      const column = layout.curvature[k]!;
      next[column]! += length * length * (cos * alongSlope - sin * acrossSlope);
      next[size + column]! += length * length * (sin * alongSlope + cos * acrossSlope);
      next[2 * size + column]! += length;
    }
    slopes = next;
  }
  all.push(slopes);
  return all;
}
