import { type Newton, newton, ok, type Radian, type Result, refuse } from '@panewright/quantity';
import { peakOf } from './force/peak.ts';
import { furthestPeak, type OffsetPoint, type OffsetRefusal, pointAt } from './offsetCurve.ts';
import { checkPair, type MagnetPair } from './pairForce.ts';

/** What one pair holds along the glass. */
export interface SlipHold {
  /** Load up to which nothing moves that one can see: friction alone, at no offset. */
  readonly noVisibleSlip: Newton;
  /** Load past which the pair lets go for good. */
  readonly breakAway: Newton;
  /** Where it lets go. */
  readonly at: OffsetPoint;
}

export type SlipRefusal =
  | OffsetRefusal
  | { readonly code: 'FRICTION_OUT_OF_RANGE'; readonly friction: number; readonly most: number };

/** Dry rubber on glass stays under this (estimate). */
const MOST_FRICTION = 1.5;

/**
 * Side load a pair holds while its outer magnet slides on the glass: at offset p the restoring force plus
 * friction times the pull that is left, H(p) = F(p) + mu max(0, pull(p)).
 *
 * @param towards direction of the load, anticlockwise from a's width
 * @param friction coefficient, 0 to 1.5: a true ratio
 * @returns newtons: the creep limit mu pull(0) and the break-away load max H
 * @range as pairForce; wind that lifts the panel is to be taken off the pull first
 * @accuracy 1e-6 of the model; friction of cloth on glass is known to a factor of two at best (an estimate)
 * @refuses as offsetPeaks, FRICTION_OUT_OF_RANGE
 * @source sources.md#magnets-slip-model
 */
export function slipHold(pair: MagnetPair, towards: Radian, friction: number): Result<SlipHold, SlipRefusal> {
  const refusal = checkPair(pair);
  if (refusal) return refuse(refusal);
  if (!Number.isFinite(towards)) return refuse({ code: 'DIRECTION_NOT_FINITE', towards });
  if (!(friction >= 0 && friction <= MOST_FRICTION)) {
    return refuse({ code: 'FRICTION_OUT_OF_RANGE', friction, most: MOST_FRICTION });
  }
  const held = (point: OffsetPoint) => point.restoring + friction * Math.max(0, point.pull);
  const peak = peakOf((p) => held(pointAt(pair, towards, p)), 0, furthestPeak(pair));
  const centre = pointAt(pair, towards, 0);
  return ok({
    noVisibleSlip: newton(friction * centre.pull),
    breakAway: newton(peak.value),
    at: pointAt(pair, towards, peak.at),
  });
}
