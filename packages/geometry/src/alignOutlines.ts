import { type Millimetre, mm, type Radian, radian } from '@panewright/quantity';
import type { Turn } from './alignPoints.ts';
import { starts } from './alignStarts.ts';
import { centroid, length } from './area.ts';
import { bounds } from './bounds.ts';
import { bulgeCurve, type Curve, curvesOf } from './curve.ts';
import { type Peak, peaks, sampled, turnedBy } from './deviation.ts';
import { EdgeTree } from './edgeTree.ts';
import { deviationAt, type Fit, polish, type Settled, settle } from './minimax.ts';
import type { Outline, Point } from './outline.ts';
import { point } from './point.ts';
import { mirrorAbout, moveOutline, type Rigid } from './transform.ts';

export interface Alignment {
  /** Takes the first outline onto the second. */
  readonly motion: Rigid;
  /** The farthest any point of either outline lies from the other, after the motion. */
  readonly deviation: Millimetre;
  /** Where that is, in the frame of the second outline, and which outline the point is on. */
  readonly at: Point;
  readonly on: 'first' | 'second';
}

export interface AlignOptions {
  /** The first outline is turned over, left for right, before it is turned. Default no. */
  readonly mirrored?: boolean;
  /** Look only for the best motion near this turn, in radians: several times quicker. Default: all turns. */
  readonly near?: Radian;
  /** Only a deviation up to this matters: what is plainly within or beyond it is found less finely. */
  readonly within?: Millimetre;
}

/**
 * The motion that brings one outline onto another with the least worst deviation (two-sided Hausdorff distance of the
 * lines, not of the areas), turned any way; mirrored if asked for, never otherwise.
 *
 * @returns deviation in mm, never negative
 * @accuracy the deviation is that of the returned motion, to 1e-3 of itself, and within 1 % of the least a search round
 *   that motion could find in every case tried. It is the best of up to six basins: for shapes far from alike (deviation
 *   above a tenth of their size) a better one might be missed
 * @range anticlockwise outlines
 * @source starts by Procrustes: sources.md#kabsch-1976; then sequential linear programming for the minimax,
 *   sources.md#madsen-1975; Hausdorff distance: sources.md#alt-guibas-1999
 */
export function alignOutlines(
  first: Outline,
  second: Outline,
  { mirrored = false, near, within = mm(Infinity) }: AlignOptions = {},
): Alignment {
  const from = mirrored ? moveOutline(mirrorAbout(0), first) : first;
  const fit = fitOf(from, second);
  const middles = [centroid(from), centroid(second)] as const;
  let turn =
    near === undefined
      ? bestOf(fit, starts(fit.first.curves, fit.second.curves, [...middles]), within)
      : startAt(fit, near, middles);
  if (turn.deviation > PURSUED * within) return judgedAs(turn, worstPoints(fit, turn)[0]!, mirrored);
  let best: Judged | undefined;
  // A peak between the points compared would go unseen: compare there too, until there is none.
  for (let round = 0; round < ROUNDS; round++) {
    turn = settle(fit, turn);
    // Plainly within, or plainly beyond: the last per cent would not change the verdict.
    const plain = Math.abs(turn.deviation / within - 1) > PLAIN && within !== Infinity;
    if (!plain) turn = settle(fit, polish(fit, turn));
    const worst = worstPoints(fit, turn);
    if (!best || worst[0]!.distance < best.worst.distance) best = { turn, worst: worst[0]! };
    if (worst[0]!.distance <= turn.deviation * 1.001 + 1e-9) break;
    if (plain && turn.deviation > within) break;
    for (const { on, own } of worst) (on === 'first' ? fit.onFirst : fit.onSecond).push(own);
  }
  return judgedAs(best!.turn, best!.worst, mirrored);
}

function judgedAs(at: Settled, worst: Worst, mirrored: boolean): Alignment {
  return {
    motion: { angle: radian(at.angle), shift: point(at.x, at.y), mirrored },
    ...{ deviation: mm(worst.distance), at: point(worst.at.x, worst.at.y), on: worst.on },
  };
}

const ROUNDS = 12;
/** A least-squares start within this many times the deviation asked for may still settle to it; in trials 3 was enough. */
const PURSUED = 5;
/** A deviation that differs from the one asked for by more than this share of it is plainly within or beyond. */
const PLAIN = 0.15;

interface Judged {
  readonly turn: Settled;
  readonly worst: Worst;
}

interface Growing extends Fit {
  readonly onFirst: Fit['onFirst'][number][];
  readonly onSecond: Fit['onSecond'][number][];
}

function fitOf(first: Outline, second: Outline): Growing {
  const [a, b] = [curvesOf(first), curvesOf(second)];
  const { width, height } = bounds(second);
  const spacing = (outline: Outline) => length(outline) / 60;
  return {
    ...{
      first: new EdgeTree(a),
      second: new EdgeTree(b),
      middle: centroid(second),
      reach: Math.hypot(width, height) / 2,
    },
    ...{ onFirst: sampled(a, spacing(first)), onSecond: sampled(b, spacing(second)) },
  };
}

/** Middle on middle, turned as told. */
function startAt(fit: Fit, angle: Radian, [from, to]: readonly [Point, Point]): Settled {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turn = { angle, x: to.x - cos * from.x + sin * from.y, y: to.y - sin * from.x - cos * from.y };
  return { ...turn, deviation: deviationAt(fit, turn) };
}

const BASINS = 6;

/** Settles from the most promising starts that differ, and keeps the best. */
function bestOf(fit: Fit, from: readonly Turn[], within: number): Settled {
  const ranked = from.map((turn) => ({ ...turn, deviation: deviationAt(fit, turn) }));
  ranked.sort((p, q) => p.deviation - q.deviation);
  const tried: Settled[] = [];
  let best = ranked[0]!;
  for (const start of ranked) {
    if (start.deviation > PURSUED * within || (within !== Infinity && best.deviation < (1 - PLAIN) * within))
      break;
    if (tried.some((other) => isNear(fit, start, other))) continue;
    // Ten times worse to begin with: the shapes match as they are, and no other way.
    if (best.deviation < 0.1 * start.deviation && tried.length > 1) break;
    if (tried.push(start) > BASINS) break;
    const settled = settle(fit, start);
    if (settled.deviation < best.deviation) best = settled;
  }
  return best;
}

/** Starts that differ by less than they are off lead to the same place. */
function isNear({ reach }: Fit, p: Settled, q: Settled): boolean {
  const turn = Math.abs(Math.atan2(Math.sin(p.angle - q.angle), Math.cos(p.angle - q.angle)));
  return turn * reach < Math.min(0.5 * Math.min(p.deviation, q.deviation), 0.05 * reach);
}

type Worst = Peak & { readonly on: 'first' | 'second'; readonly own: Peak['at'] };

/** Peaks of the distance both ways, highest first; `at` in the second outline's frame, `own` in that of its outline. */
function worstPoints(fit: Fit, turn: Turn): Worst[] {
  const move = turnedBy(turn);
  const moved = fit.first.curves.map((c): Curve => {
    return bulgeCurve(move({ x: c.ax, y: c.ay }), move({ x: c.bx, y: c.by }), c.bulge);
  });
  const around = fit.second.curves.reduce((sum, c) => sum + c.length, 0);
  const [cos, sin] = [Math.cos(turn.angle), Math.sin(turn.angle)];
  const there = peaks(moved, fit.second, around / 300, 0.9).map((peak): Worst => {
    const [x, y] = [peak.at.x - turn.x, peak.at.y - turn.y];
    return { ...peak, on: 'first', own: { x: cos * x + sin * y, y: cos * y - sin * x } };
  });
  const here = peaks(fit.second.curves, new EdgeTree(moved), around / 300, 0.9).map(
    (peak): Worst => ({ ...peak, on: 'second', own: peak.at }),
  );
  return [...there, ...here].sort((p, q) => q.distance - p.distance);
}
