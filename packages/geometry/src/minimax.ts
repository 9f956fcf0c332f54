import type { Turn } from './alignPoints.ts';
import { farthest, residual, turnedBack, turnedBy } from './deviation.ts';
import type { EdgeTree } from './edgeTree.ts';
import { type Constraint, leastCost } from './linearProgram.ts';
import type { Vector } from './point.ts';

/** Two shapes to bring together, with the points at which they are compared. */
export interface Fit {
  readonly first: EdgeTree;
  readonly second: EdgeTree;
  readonly onFirst: readonly Vector[];
  readonly onSecond: readonly Vector[];
  /** Middle and reach of the second shape, which make a turn as large as a shift. */
  readonly middle: Vector;
  readonly reach: number;
}

export interface Settled extends Turn {
  /** Largest distance, at the points compared, of either shape from the other. */
  readonly deviation: number;
}

export function deviationAt(fit: Fit, turn: Turn): number {
  const there = farthest(fit.second, fit.onFirst.map(turnedBy(turn)));
  return farthest(fit.first, fit.onSecond.map(turnedBack(turn)), there);
}

/**
 * From a start, the turn and shift near it that make the largest distance least. Each step takes distances as linear in
 * a small motion, finds the best motion within a reach by linear programming, and keeps the reach to what proves true.
 */
export function settle(fit: Fit, start: Turn, steps = 60): Settled {
  let best: Settled = { ...start, deviation: deviationAt(fit, start) };
  let trust = Math.max(best.deviation, 1e-6 * fit.reach);
  for (let k = 0; k < steps && best.deviation > 1e-9 && trust > 1e-6 * best.deviation; k++) {
    const step = bestStep(fit, best, trust);
    if (!step) break;
    const hoped = best.deviation - step.deviation;
    if (hoped < 1e-5 * best.deviation) break;
    const moved = movedBy(fit, best, step);
    const next = { ...moved, deviation: deviationAt(fit, moved) };
    const gained = best.deviation - next.deviation;
    if (gained > 0) best = next;
    trust *= gained > 0.75 * hoped ? 2 : gained > 0.25 * hoped ? 1 : 0.3;
  }
  return best;
}

interface Step {
  readonly dx: number;
  readonly dy: number;
  /** Turn times reach, mm. */
  readonly arc: number;
  readonly deviation: number;
}

/** One point's distance under a small motion d: |off + n · d|. */
interface Row {
  readonly off: number;
  readonly n: readonly [number, number, number];
}

function rowsAt(fit: Fit, at: Settled): Row[] {
  const row = (off: number, nx: number, ny: number, q: Vector): Row => {
    const spin = ((q.x - fit.middle.x) * ny - (q.y - fit.middle.y) * nx) / fit.reach;
    return { off, n: [nx, ny, spin] };
  };
  const there = fit.onFirst.map(turnedBy(at)).map((q) => {
    const { off, nx, ny } = residual(fit.second, q);
    return row(off, nx, ny, q);
  });
  const back = turnedBack(at);
  const [cos, sin] = [Math.cos(at.angle), Math.sin(at.angle)];
  const here = fit.onSecond.map((q) => {
    const { off, nx, ny } = residual(fit.first, back(q));
    // Moving the first shape by d moves this point by -d as the shape sees it.
    return row(off, -(cos * nx - sin * ny), -(sin * nx + cos * ny), q);
  });
  return [...there, ...here];
}

/**
 * The motion within `trust` for which the largest |off + n · d| is least. Few rows matter: the program is solved for the
 * largest, and those it overlooked are added until none is.
 */
function bestStep(fit: Fit, at: Settled, trust: number): Step | undefined {
  const rows = rowsAt(fit, at);
  const heightAt = ({ off, n }: Row, d: readonly number[]) =>
    off + n[0] * d[0]! + n[1] * d[1]! + n[2] * d[2]!;
  const low = [-trust, -trust, -trust, 0];
  const high = [trust, trust, trust, at.deviation + 6 * trust];
  const taken = new Set<Row>();
  let d: readonly number[] = [0, 0, 0, -1];
  for (let round = 0; round < 40; round++) {
    const over = rows.filter(
      (row) => Math.abs(heightAt(row, d)) > d[3]! + 1e-7 * at.deviation && !taken.has(row),
    );
    if (over.length === 0) return { dx: d[0]!, dy: d[1]!, arc: d[2]!, deviation: d[3]! };
    over.sort((p, q) => Math.abs(heightAt(q, d)) - Math.abs(heightAt(p, d)));
    for (const row of over.slice(0, 8)) taken.add(row);
    const found = leastCost([...taken].flatMap(bothSides), [0, 0, 0, 1], low, high);
    if (!found) return undefined;
    d = found;
  }
  return undefined;
}

const bothSides = ({ off, n: [x, y, z] }: Row): Constraint[] => [
  { a: [x, y, z, -1], b: -off },
  { a: [-x, -y, -z, -1], b: off },
];

const COMPASS = [-1, 0, 1].flatMap((dx) =>
  [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((arc) => ({ dx, dy, arc, deviation: 0 }))),
);

/**
 * Tries motions all round, ever smaller. Where a point is about equally far from two edges inside a corner, distances are
 * not linear however small the step, and `settle` stops a little short.
 */
export function polish(fit: Fit, start: Settled): Settled {
  let best = start;
  for (let size = 0.1 * start.deviation; size > 3e-4 * start.deviation; ) {
    const before = best.deviation;
    for (const { dx, dy, arc } of COMPASS) {
      const moved = movedBy(fit, best, { dx: dx * size, dy: dy * size, arc: arc * size, deviation: 0 });
      const deviation = deviationAt(fit, moved);
      if (deviation < best.deviation) best = { ...moved, deviation };
    }
    if (best.deviation > before * (1 - 1e-3)) size /= 3;
  }
  return best;
}

function movedBy({ middle, reach }: Fit, at: Turn, { dx, dy, arc }: Step): Turn {
  const spin = arc / reach;
  const [cos, sin] = [Math.cos(spin), Math.sin(spin)];
  const [x, y] = [at.x - middle.x, at.y - middle.y];
  return {
    angle: at.angle + spin,
    x: middle.x + cos * x - sin * y + dx,
    y: middle.y + sin * x + cos * y + dy,
  };
}
