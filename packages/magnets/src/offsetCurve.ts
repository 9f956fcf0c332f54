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
import { peakOf } from './force/peak.ts';
import { faceSpan } from './magnet.ts';
import { checkPair, type MagnetPair, type PairRefusal, pairForce } from './pairForce.ts';

/** A pair with b moved `offset` from centre along one direction. */
export interface OffsetPoint {
  readonly offset: Millimetre;
  /** Negative: the pair repels. */
  readonly pull: Newton;
  /** Along the offset, back towards the centre. Negative: it pushes further off. */
  readonly restoring: Newton;
}

export interface OffsetPeaks {
  /** The hardest the pair draws back. */
  readonly restoring: OffsetPoint;
  /** The hardest the pair pulls; off centre for a small magnet close to a larger one. */
  readonly pull: OffsetPoint;
}

/** The state of a checked pair at one offset; faults, since nothing is left to refuse. */
export function pointAt(pair: MagnetPair, towards: Radian, offset: number): OffsetPoint {
  const cos = Math.cos(towards);
  const sin = Math.sin(towards);
  const force = pairForce({ ...pair, offset: { dx: mm(offset * cos), dy: mm(offset * sin) } });
  if (!force.ok) throw new Error(`a checked pair was refused: ${force.refusal.code}`);
  const { x, y, z } = force.value;
  return { offset: mm(offset), pull: newton(0 - z), restoring: newton(0 - (x * cos + y * sin)) };
}

/** Offset by which every pair has passed its peaks: the faces no longer overlap. */
export const furthestPeak = (pair: MagnetPair): number =>
  0.5 * (faceSpan(pair.a) + faceSpan(pair.b)) + pair.gap;

export type OffsetRefusal = PairRefusal | { readonly code: 'DIRECTION_NOT_FINITE'; readonly towards: Radian };

/**
 * Pull and restoring force against offset, along one direction in the plane of the glass.
 *
 * @param towards direction of the offset, anticlockwise from a's width
 * @returns one point for each offset, in the order given
 * @range as pairForce; the offset of the pair itself is ignored
 * @accuracy as pairForce
 * @refuses as pairForce, DIRECTION_NOT_FINITE
 * @source as pairForce
 */
export function offsetCurve(
  pair: MagnetPair,
  towards: Radian,
  offsets: readonly Millimetre[],
): Result<readonly OffsetPoint[], OffsetRefusal> {
  const refusal = checkPair(pair);
  if (refusal) return refuse(refusal);
  if (!Number.isFinite(towards)) return refuse({ code: 'DIRECTION_NOT_FINITE', towards });
  for (const offset of offsets) {
    if (!Number.isFinite(offset)) return refuse({ code: 'OFFSET_NOT_FINITE', dx: offset, dy: mm(0) });
  }
  return ok(offsets.map((offset) => pointAt(pair, towards, offset)));
}

/**
 * Where along one direction a pair draws back hardest and where it pulls hardest.
 *
 * @param towards direction of the offset, anticlockwise from a's width
 * @returns the two points
 * @range as pairForce; offsets from 0 to where the faces part, plus the gap
 * @accuracy offsets within 1e-4 of their range, forces within 1e-6
 * @refuses as pairForce, DIRECTION_NOT_FINITE
 * @source as pairForce; the search is a grid and a golden section
 */
export function offsetPeaks(pair: MagnetPair, towards: Radian): Result<OffsetPeaks, OffsetRefusal> {
  const refusal = checkPair(pair);
  if (refusal) return refuse(refusal);
  if (!Number.isFinite(towards)) return refuse({ code: 'DIRECTION_NOT_FINITE', towards });
  const to = furthestPeak(pair);
  const side = peakOf((p) => pointAt(pair, towards, p).restoring, 0, to);
  const normal = peakOf((p) => pointAt(pair, towards, p).pull, 0, to);
  return ok({ restoring: pointAt(pair, towards, side.at), pull: pointAt(pair, towards, normal.at) });
}
