import { type Edge, edgeDistance } from './arcFrame.ts';
import { type Chain, type Joint, looseEdges, wrap } from './chain.ts';
import { LOOP } from './segmentation.ts';
import {
  assignPoints,
  CAUCHY,
  cauchyLoss,
  type FitPoints,
  type SolvedChain,
  solveChain,
} from './solveChain.ts';

export interface MoveLimits {
  /** Bends and breaks in a side smaller than this, mm, are not told from a straight side. */
  readonly leastSagitta: number;
  /** A rounding below this, mm, counts as a sharp corner. */
  readonly leastRadius: number;
  /** Edges may be dropped only if no sound point comes to lie further off by more than this, mm. No limit unless told. */
  readonly mostShift?: number;
}

type EdgeGuess = Chain['edges'][number];

/** An arc that turns less than this bends a side; one that turns more rounds a corner. */
const BENDS = (20 * Math.PI) / 180;
/** Trials whose guess is worse by more than this are not solved. */
const HOPELESS = 400;
const MOST_ROUNDS = 40;
/** An edge that fewer points lie nearest to is not there. */
const LEAST_OWNED = 3;

/**
 * Improves a chain's structure: drops edges, rounds corners, joins smoothly, bends sides, each kept when the evidence
 * (robust misfit and ln(observations) for each parameter) is better, or when a bend is too small to matter.
 *
 * @source sources.md#schwarz-1978
 */
export function improveChain(first: SolvedChain, points: FitPoints, limits: MoveLimits): SolvedChain {
  let current = first;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const better = simpler(current, points, limits) ?? firstBetter(current, points, limits);
    if (!better) return current;
    current = better;
  }
  return current;
}

function solveTrial(chain: Chain, points: FitPoints): SolvedChain | undefined {
  if (chain.edges.length < 2) return undefined;
  const guess = looseEdges(chain);
  if (guess.some(({ length }) => !(length > 0))) return undefined;
  return solveChain(chain, points, assignPoints(guess, points), {
    tolerance: 1e-4,
    mostSteps: 25,
    trial: true,
  });
}

/** How much worse the trial is before it is solved; more than it will be after. */
function guessedLoss(chain: Chain, points: FitPoints, current: SolvedChain): number {
  const guess = looseEdges(chain);
  const owner = assignPoints(guess, points);
  let loss = 0;
  points.x.forEach((x, i) => {
    const y = points.y[i]!;
    const now = edgeDistance(current.edges[current.assigned[i]!]!, x, y) / points.sigma[i]!;
    const then = edgeDistance(guess[owner[i]!]!, x, y) / points.sigma[i]!;
    loss += points.weight[i]! * (cauchyLoss(then, CAUCHY) - cauchyLoss(now, CAUCHY));
  });
  return loss;
}

/** By how much more any sound point of the one lies off the other, mm. */
function largestShift(from: SolvedChain, to: SolvedChain, points: FitPoints): number {
  let largest = 0;
  points.x.forEach((x, i) => {
    const y = points.y[i]!;
    const before = edgeDistance(from.edges[from.assigned[i]!]!, x, y);
    if (before > 4 * points.sigma[i]!) return;
    largest = Math.max(largest, edgeDistance(to.edges[to.assigned[i]!]!, x, y) - before);
  });
  return largest;
}

/** Points that lie on each edge, outliers not counted. */
function owned({ edges, assigned }: SolvedChain, points: FitPoints): readonly number[] {
  const counts = edges.map(() => 0);
  assigned.forEach((owner, i) => {
    if (edgeDistance(edges[owner]!, points.x[i]!, points.y[i]!) < 4 * points.sigma[i]!) counts[owner]!++;
  });
  return counts;
}

/** Bends and breaks too small to matter go, whatever the evidence; the first that can go. */
function simpler(current: SolvedChain, points: FitPoints, limits: MoveLimits): SolvedChain | undefined {
  const { chain, edges } = current;
  const count = edges.length;
  const counts = owned(current, points);
  for (const [k, { length, curvature }] of edges.entries()) {
    const sweep = Math.abs(curvature * length);
    const next = (k + 1) % count;
    const trials: Chain[] = [];
    if (count > 2 && (counts[k]! < LEAST_OWNED || sweep > LOOP))
      trials.push(without(current, k), merged(chain, k));
    if (chain.edges[k]!.kind === 'arc') {
      if (sweep < BENDS && (length * sweep) / 8 < limits.leastSagitta) trials.push(straightened(chain, k));
      if (sweep >= BENDS && 1 / Math.abs(curvature) < limits.leastRadius) trials.push(without(current, k));
      if (sweep < BENDS && length < 4 * limits.leastSagitta) trials.push(without(current, k));
    }
    if (count > 2 && slightBreak(chain, edges[k]!, edges[next]!, k, limits.leastSagitta))
      trials.push(merged(chain, k));
    for (const trial of trials) {
      const solved = solveTrial(trial, points);
      if (solved && solved.score < current.score + HOPELESS) return solved;
    }
  }
  return undefined;
}

function firstBetter(current: SolvedChain, points: FitPoints, limits: MoveLimits): SolvedChain | undefined {
  for (const trial of proposals(current, points, limits)) {
    if (trial.edges.length < current.edges.length && guessedLoss(trial, points, current) > HOPELESS) continue;
    const solved = solveTrial(trial, points);
    if (!solved || solved.score >= current.score - 1e-6 || !lawful(solved, points, limits)) continue;
    if (limits.mostShift === undefined || largestShift(current, solved, points) < limits.mostShift)
      return solved;
  }
  return undefined;
}

/** A better score is no use when the gain is a bend, a break or a rounding that would be dropped again. */
function lawful(solved: SolvedChain, points: FitPoints, limits: MoveLimits): boolean {
  const { chain, edges } = solved;
  if (owned(solved, points).some((count) => count < LEAST_OWNED)) return false;
  return edges.every(({ length, curvature }, k) => {
    if (chain.edges[k]!.kind === 'line') return true;
    const sweep = Math.abs(curvature * length);
    if (sweep > LOOP && edges.length > 2) return false;
    if (sweep >= BENDS) return 1 / Math.abs(curvature) >= limits.leastRadius;
    return (length * sweep) / 8 >= limits.leastSagitta;
  });
}

function* proposals(current: SolvedChain, points: FitPoints, limits: MoveLimits): Generator<Chain> {
  const { chain, edges } = current;
  const count = edges.length;
  for (let k = 0; k < count; k++) {
    if (count > 2 && chain.edges[k]!.kind === chain.edges[(k + 1) % count]!.kind) yield merged(chain, k);
    if (count > 2) yield without(current, k);
    const sharp = chain.joints[k] === 'corner' || chain.joints[(k + 1) % count] === 'corner';
    if (count > 2 && sharp) yield asRounding(current, k);
  }
  for (let k = 0; k < count; k++) {
    const before = (k + count - 1) % count;
    const bothLines = chain.edges[k]!.kind === 'line' && chain.edges[before]!.kind === 'line';
    if (chain.joints[k] === 'corner' && !bothLines) yield joined(chain, k, 'tangent');
    if (chain.joints[k] === 'corner') {
      const trial = rounded(current, k, points, limits);
      if (trial) yield trial;
    }
  }
  for (let k = 0; k < count; k++) {
    const { length, curvature } = edges[k]!;
    if (chain.edges[k]!.kind === 'line') {
      if (Math.abs(bow(current, k, points)) > 0.6 * limits.leastSagitta) yield bent(chain, k);
    } else if (Math.abs(curvature * length) < BENDS) yield straightened(chain, k);
    if (chain.joints[k] === 'tangent' && kinked(current, k, points)) yield joined(chain, k, 'corner');
  }
}

const replaced = <T>(list: readonly T[], k: number, value: T): T[] =>
  list.map((each, i) => (i === k ? value : each));
const joined = (chain: Chain, k: number, joint: Joint): Chain => ({
  ...chain,
  joints: replaced(chain.joints, k, joint),
});
const bent = (chain: Chain, k: number): Chain => ({
  ...chain,
  edges: replaced(chain.edges, k, { ...chain.edges[k]!, kind: 'arc', sweep: 0 }),
});

/** Edge k made the arc that rounds the corner between its neighbours. */
function asRounding({ chain, edges }: SolvedChain, k: number): Chain {
  const count = edges.length;
  const [before, next] = [edges[(k + count - 1) % count]!, edges[(k + 1) % count]!];
  const sweep = wrap(next.heading - before.heading - before.curvature * before.length);
  const joints = replaced(replaced(chain.joints, k, 'tangent'), (k + 1) % count, 'tangent');
  return { edges: replaced(chain.edges, k, { ...chain.edges[k]!, kind: 'arc', sweep }), joints };
}

/** Arc k made a line; a joint between two lines is a corner. */
function straightened(chain: Chain, k: number): Chain {
  const edges: EdgeGuess[] = replaced(chain.edges, k, { ...chain.edges[k]!, kind: 'line', sweep: 0 });
  return { edges, joints: cornersBetweenLines(edges, chain.joints) };
}

function cornersBetweenLines(edges: readonly EdgeGuess[], joints: readonly Joint[]): readonly Joint[] {
  return joints.map((joint, k) => {
    const before = edges[(k + edges.length - 1) % edges.length]!;
    return edges[k]!.kind === 'line' && before.kind === 'line' ? 'corner' : joint;
  });
}

/** A guess with the breaks between lines that are too slight to matter taken out. */
export function withoutSlightBreaks(chain: Chain, leastSagitta: number): Chain {
  const edges = looseEdges(chain);
  const k = edges.findIndex((edge, i) =>
    slightBreak(chain, edge, edges[(i + 1) % edges.length]!, i, leastSagitta),
  );
  return k >= 0 && edges.length > 3 ? withoutSlightBreaks(merged(chain, k), leastSagitta) : chain;
}

function slightBreak(chain: Chain, edge: Edge, next: Edge, k: number, leastSagitta: number): boolean {
  if (chain.edges[k]!.kind !== 'line' || chain.edges[(k + 1) % chain.edges.length]!.kind !== 'line')
    return false;
  const turn = Math.abs(wrap(next.heading - edge.heading));
  const step = (edge.length * next.length) / (edge.length + next.length);
  return turn * step < leastSagitta && turn < BENDS;
}

/** Edge k and the next made one. */
function merged(chain: Chain, k: number): Chain {
  const next = (k + 1) % chain.edges.length;
  const one = { ...chain.edges[k]!, sweep: chain.edges[k]!.sweep + chain.edges[next]!.sweep };
  const edges = replaced(chain.edges, k, one).filter((_, i) => i !== next);
  const joints = chain.joints.filter((_, i) => i !== next);
  return { edges, joints: cornersBetweenLines(edges, joints) };
}

/** Edge k dropped: its neighbours meet where their lines cross, or half way. */
function without({ chain, edges }: SolvedChain, k: number): Chain {
  const count = edges.length;
  const [before, next] = [(k + count - 1) % count, (k + 1) % count];
  const [a, b] = [edges[before]!, edges[next]!];
  const end = { x: b.x, y: b.y };
  let at = { x: (edges[k]!.x + end.x) / 2, y: (edges[k]!.y + end.y) / 2 };
  const leaving = a.heading + a.curvature * a.length;
  const cross = Math.sin(b.heading - leaving);
  if (Math.abs(cross) > 0.1) {
    const [dx, dy] = [b.x - edges[k]!.x, b.y - edges[k]!.y];
    const t = (dx * Math.sin(b.heading) - dy * Math.cos(b.heading)) / cross;
    if (Math.abs(t) < 2 * edges[k]!.length) {
      at = { x: edges[k]!.x + t * Math.cos(leaving), y: edges[k]!.y + t * Math.sin(leaving) };
    }
  }
  const bothLines = chain.edges[before]!.kind === 'line' && chain.edges[next]!.kind === 'line';
  const joint: Joint = bothLines || Math.abs(wrap(b.heading - leaving)) > BENDS ? 'corner' : 'tangent';
  const moved = replaced(chain.edges, next, { ...chain.edges[next]!, ...at });
  return {
    edges: moved.filter((_, i) => i !== k),
    joints: replaced(chain.joints, next, joint).filter((_, i) => i !== k),
  };
}

/** Corner k given an arc, its first radius from how near the points come to the corner. */
function rounded(current: SolvedChain, k: number, points: FitPoints, limits: MoveLimits): Chain | undefined {
  const { chain, edges } = current;
  const count = edges.length;
  const before = (k + count - 1) % count;
  const { x, y, heading, length } = edges[k]!;
  const leaving = edges[before]!.heading + edges[before]!.curvature * edges[before]!.length;
  const turn = wrap(heading - leaving);
  if (Math.abs(turn) < BENDS || Math.abs(turn) > 2.8) return undefined;
  let gap = Number.POSITIVE_INFINITY;
  points.x.forEach((px, i) => {
    gap = Math.min(gap, Math.hypot(px - x, points.y[i]! - y));
  });
  const half = Math.abs(turn) / 2;
  const radius = Math.max(gap / (1 / Math.cos(half) - 1), 2 * limits.leastRadius);
  const setback = Math.min(radius * Math.tan(half), 0.4 * length, 0.4 * edges[before]!.length);
  const start = { x: x - setback * Math.cos(leaving), y: y - setback * Math.sin(leaving) };
  const end = { x: x + setback * Math.cos(heading), y: y + setback * Math.sin(heading) };
  return {
    edges: [
      ...chain.edges.slice(0, k),
      { kind: 'arc', ...start, sweep: turn },
      { ...chain.edges[k]!, ...end },
      ...chain.edges.slice(k + 1),
    ],
    joints: [...chain.joints.slice(0, k), 'tangent', 'tangent', ...chain.joints.slice(k + 1)],
  };
}

/** Sagitta that the points of a straight edge suggest: their offsets against a parabola that vanishes at its ends. */
function bow({ edges, assigned }: SolvedChain, k: number, points: FitPoints): number {
  const { x, y, heading, length } = edges[k]!;
  let [top, bottom] = [0, 0];
  assigned.forEach((owner, i) => {
    if (owner !== k) return;
    const [dx, dy] = [points.x[i]! - x, points.y[i]! - y];
    const along = (Math.cos(heading) * dx + Math.sin(heading) * dy) / length;
    const across = Math.cos(heading) * dy - Math.sin(heading) * dx;
    if (Math.abs(across) > 20 * points.sigma[i]!) return;
    // Centred so that the edge's own fit, which halves the bow, is allowed for.
    const shape = 4 * along * (1 - along) - 2 / 3;
    top += across * shape;
    bottom += shape * shape;
  });
  return bottom > 0 ? top / bottom : 0;
}

/** The points beside a smooth joint lie to one side of it: perhaps it is none. */
function kinked({ edges, assigned }: SolvedChain, k: number, points: FitPoints): boolean {
  const { x, y } = edges[k]!;
  const reach = 0.25 * Math.min(edges[k]!.length, edges[(k + edges.length - 1) % edges.length]!.length);
  let [sum, weight] = [0, 0];
  assigned.forEach((owner, i) => {
    if (Math.hypot(points.x[i]! - x, points.y[i]! - y) > reach) return;
    const distance = edgeDistance(edges[owner]!, points.x[i]!, points.y[i]!) / points.sigma[i]!;
    sum += Math.min(distance * distance, 9);
    weight += 1;
  });
  return weight > 3 && sum / weight > 1.5;
}
