import type { Point } from '@panewright/geometry';
import type { PoleOut } from '@panewright/magnets';
import { ok, type Result, refuse } from '@panewright/quantity';
import { type Fit, meetingsOf, wrongWaysToFit } from './layoutSymmetry.ts';

/** How poles are given to a panel's points. */
export type PoleWay =
  /** The same pole out at every point: any panel stores flat on any other, any inside magnet fits. */
  | 'uniform'
  /** Alternate as far as it goes, so that the panel goes on one way only. */
  | 'keyed';

/** A wrong way to lay the panel on, and what would meet. */
export interface WrongWay {
  readonly turnedOver: boolean;
  /** Turn from the right way, radians, from -π to π. */
  readonly turn: number;
  /** Points that would meet one of the window's; the rest lie on bare glass, or beside it. */
  readonly meet: number;
  /** Of those, points that would still draw together; the others push one another off. */
  readonly drawn: number;
}

export interface PolePlan {
  /** Pole away from the glass, by point, in the panel's order. */
  readonly panelOut: readonly PoleOut[];
  /** Pole towards the room on each inside magnet: the other one, so that the pair draws together. */
  readonly insideOut: readonly PoleOut[];
  /** Ways to lay the panel on wrongly in which more than half of its points meet one: keyed poles leave none in which all draw. */
  readonly wrongWays: readonly WrongWay[];
  /** Sum of the poles, all-alike being the number of points: what a compass at a distance sees. */
  readonly net: number;
}

export type PoleRefusal =
  | { readonly code: 'TOO_FEW_POINTS_TO_KEY'; readonly points: number }
  /** Every choice of poles lets the panel be laid on in a wrong way with all points drawn. */
  | { readonly code: 'POLES_CANNOT_KEY'; readonly points: number; readonly ways: number };

const other = (pole: PoleOut): PoleOut => (pole === 'north' ? 'south' : 'north');

/** Up to so many points every choice is tried; past it alternation with one or two of its points turned. */
const TRY_ALL = 12;

/**
 * Poles of a panel's points. Keyed poles are chosen so that in the worst wrong way the fewest points still draw together;
 * then so that few do over all wrong ways, that neighbours differ, and that the poles cancel at a distance.
 *
 * @param first pole out at the first point
 * @param within how near a magnet must come to be drawn, mm: about its radius
 * @refuses TOO_FEW_POINTS_TO_KEY, POLES_CANNOT_KEY
 * @source every wrong way in which more than half the points meet is tried: sources.md#pole-keys
 */
export function polesFor(
  points: readonly Point[],
  way: PoleWay,
  first: PoleOut,
  within: number,
): Result<PolePlan, PoleRefusal> {
  const fits = wrongWaysToFit(points, within);
  if (way === 'uniform')
    return ok(
      planOf(
        points.map(() => first),
        fits,
      ),
    );
  if (points.length < 2) return refuse({ code: 'TOO_FEW_POINTS_TO_KEY', points: points.length });
  let best: { readonly signs: readonly number[]; readonly rank: readonly number[] } | null = null;
  for (const signs of choicesFor(points.length)) {
    const rank = rankOf(signs, fits);
    if (!best || before(rank, best.rank)) best = { signs, rank };
  }
  if (!best || best.rank[0]! >= points.length)
    return refuse({ code: 'POLES_CANNOT_KEY', points: points.length, ways: fits.length });
  return ok(
    planOf(
      best.signs.map((sign) => (sign > 0 ? first : other(first))),
      fits,
    ),
  );
}

function planOf(panelOut: readonly PoleOut[], fits: readonly Fit[]): PolePlan {
  const signs = panelOut.map((pole) => (pole === 'north' ? 1 : -1));
  return {
    panelOut,
    insideOut: panelOut.map(other),
    wrongWays: fits.map((fit) => ({
      turnedOver: fit.turnedOver,
      turn: Math.atan2(Math.sin(fit.motion.angle), Math.cos(fit.motion.angle)),
      meet: meetingsOf(fit),
      drawn: drawnIn(signs, fit),
    })),
    net: Math.abs(signs.reduce((sum, sign) => sum + sign, 0)),
  };
}

/** Points that draw together when the panel lies so: turned over, each shows the glass its other pole. */
function drawnIn(signs: readonly number[], { onto, turnedOver }: Fit): number {
  const side = turnedOver ? -1 : 1;
  return onto.filter((target, k) => target >= 0 && side * signs[k]! === signs[target]).length;
}

/** Most drawn in any wrong way, then drawn in all of them, then like neighbours, then the net, then points off plain alternation: all to be small. */
function rankOf(signs: readonly number[], fits: readonly Fit[]): readonly number[] {
  const drawn = fits.map((fit) => drawnIn(signs, fit));
  const alike = signs.filter((sign, k) => sign === signs[(k + 1) % signs.length]).length;
  const off = signs.filter((sign, k) => sign !== (k % 2 === 0 ? 1 : -1)).length;
  const all = drawn.reduce((sum, one) => sum + one, 0);
  return [Math.max(0, ...drawn), all, alike, Math.abs(signs.reduce((sum, sign) => sum + sign, 0)), off];
}

function before(a: readonly number[], b: readonly number[]): boolean {
  for (const [k, value] of a.entries()) if (value !== b[k]) return value < b[k]!;
  return false;
}

/** Choices of sign with the first point's given. */
function* choicesFor(count: number): Generator<readonly number[]> {
  const alternating = Array.from({ length: count }, (_, k) => (k % 2 === 0 ? 1 : -1));
  if (count > TRY_ALL) {
    yield alternating;
    for (let i = 1; i < count; i++)
      for (let j = i; j < count; j++) yield alternating.map((sign, k) => (k === i || k === j ? -sign : sign));
    return;
  }
  for (let mask = 0; mask < 2 ** (count - 1); mask++)
    yield [1, ...Array.from({ length: count - 1 }, (_, k) => ((mask >> k) & 1 ? 1 : -1))];
}
