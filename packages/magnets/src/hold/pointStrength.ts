import {
  type Millimetre,
  mm,
  type Newton,
  newton,
  ok,
  type Radian,
  type Result,
  refuse,
} from '@panewright/quantity';
import type { MagnetPair } from '../pairForce.ts';
import { pull } from '../pairForce.ts';
import { type SlipRefusal, slipHold } from '../slip.ts';
import { type WorkingPair, type WorkingPull, type WorkingPullRefusal, workingPull } from '../workingPull.ts';
import type { Ends } from './holdPanel.ts';

/** What one hold point can do, in the form panelHold takes. */
export interface PointStrength {
  readonly pull: WorkingPull;
  readonly breakAway: Ends<Newton>;
  /** Side load up to which nothing visibly moves. */
  readonly noVisibleSlip: Ends<Newton>;
  /** Shortest way across the panel's magnet, over which it peels first. */
  readonly face: Millimetre;
}

/** Break-away load over pull, least and most of the directions looked at. */
function breakAwayShares(
  pair: MagnetPair,
  friction: number,
  directions: readonly Radian[],
): Result<Ends<number>, SlipRefusal> {
  const full = pull(pair);
  if (!full.ok) return full;
  const shares: number[] = [];
  for (const towards of directions) {
    const slip = slipHold(pair, towards, friction);
    if (!slip.ok) return slip;
    shares.push(slip.value.breakAway / full.value);
  }
  return ok({ low: Math.min(...shares), high: Math.max(...shares) });
}

/**
 * Strength of one hold point: working pull with its interval, and the side loads that go with it. Break-away keeps
 * its share of the pull, worked out for the nominal pair; a bar is looked at along and across.
 *
 * @param friction of the pocket on the glass, true ratios, 0 to 1.5
 * @returns newtons, low and high; low goes with the low pull and the low friction
 * @range as workingPull and slipHold
 * @accuracy as workingPull for the pull; side loads are an estimate, as friction is
 * @refuses as workingPull and slipHold, FRICTION_REVERSED
 * @source sources.md#magnets-slip-model, #magnets-error-budget
 */
export function pointStrength(
  pair: WorkingPair,
  friction: Ends<number>,
): Result<
  PointStrength,
  | WorkingPullRefusal
  | SlipRefusal
  | { readonly code: 'FRICTION_REVERSED'; readonly low: number; readonly high: number }
> {
  if (friction.low > friction.high)
    return refuse({ code: 'FRICTION_REVERSED', low: friction.low, high: friction.high });
  const working = workingPull(pair);
  if (!working.ok) return working;
  const { a, b, remanenceA, remanenceB, coating } = pair;
  const ideal: MagnetPair = { a, b, remanenceA, remanenceB, gap: mm(pair.gap + 2 * coating) };
  const round = a.kind === 'disc' && b.kind === 'disc';
  const directions = (round ? [0] : [0, Math.PI / 2]) as Radian[];
  const least = breakAwayShares(ideal, friction.low, directions);
  if (!least.ok) return least;
  const most = breakAwayShares(ideal, friction.high, directions);
  if (!most.ok) return most;
  const { low, high } = working.value;
  return ok({
    pull: working.value,
    breakAway: { low: newton(least.value.low * low), high: newton(most.value.high * high) },
    noVisibleSlip: { low: newton(friction.low * low), high: newton(friction.high * high) },
    face: b.kind === 'disc' ? b.diameter : mm(Math.min(b.width, b.height)),
  });
}
