import type { Point } from '@panewright/geometry';
import type { Millimetre, Radian } from '@panewright/quantity';
import type { GlobalTest } from '../adjustment/statistics.ts';
import type { BlunderCause } from '../tape/blunderCauses.ts';

/**
 * A point of the survey. Marks are what the tape is held to, outline points lie on the opening's edge and are listed
 * in order round it, anticlockwise as seen from outside.
 */
export interface SurveyPoint {
  readonly name: string;
  readonly kind: 'mark' | 'outline';
  /** A known place; give none, or at least two. */
  readonly fixed?: Point;
  /**
   * For a point with two tapes only: which side of the line from the first to the second point they were held to, in
   * the order of this list. Not needed when all such points lie on one side: the order round the outline tells.
   */
  readonly side?: 'left' | 'right';
}

export interface TapedDistance {
  readonly from: string;
  readonly to: string;
  readonly value: Millimetre;
  readonly sigma: Millimetre;
  readonly entered?: string;
}

export interface MarkSurvey {
  readonly points: readonly SurveyPoint[];
  readonly distances: readonly TapedDistance[];
}

export type NetworkRefusal =
  | { readonly code: 'NETWORK_TOO_FEW_POINTS'; readonly points: number }
  | { readonly code: 'NETWORK_NAME_TWICE'; readonly name: string }
  | { readonly code: 'NETWORK_NAME_UNKNOWN'; readonly name: string; readonly index: number }
  | { readonly code: 'NETWORK_DISTANCE_TO_ITSELF'; readonly name: string; readonly index: number }
  | { readonly code: 'NETWORK_DISTANCE_NOT_POSITIVE'; readonly index: number; readonly value: Millimetre }
  | { readonly code: 'NETWORK_SIGMA_NOT_POSITIVE'; readonly index: number; readonly sigma: Millimetre }
  /** One fixed point holds the shift and leaves the turn open. */
  | { readonly code: 'NETWORK_ONE_POINT_FIXED'; readonly name: string }
  /** Points that no two tapes reach, and so cannot be placed. */
  | { readonly code: 'NETWORK_POINTS_LOOSE'; readonly names: readonly string[] }
  /** The two tapes do not meet: their sum is short of the line between, or their difference is more. */
  | {
      readonly code: 'NETWORK_TAPES_DO_NOT_MEET';
      readonly name: string;
      readonly to: readonly [string, string];
      readonly lengths: readonly [Millimetre, Millimetre];
      readonly between: Millimetre;
    }
  /** Two tapes fit on either side of the line between their marks, and neither side nor order decides. */
  | { readonly code: 'NETWORK_MIRROR_AMBIGUOUS'; readonly names: readonly string[] }
  /** As the sides are given, the points run clockwise. */
  | { readonly code: 'NETWORK_ORDER_CLOCKWISE' }
  | { readonly code: 'NETWORK_NOT_CONVERGED'; readonly steps: number };

/** Standard (one sigma) error ellipse; `direction` of the longer half axis from +x. */
export interface ErrorEllipse {
  readonly major: Millimetre;
  readonly minor: Millimetre;
  readonly direction: Radian;
}

export interface AdjustedPoint {
  readonly name: string;
  readonly kind: 'mark' | 'outline';
  readonly at: Point;
  readonly sigmaX: Millimetre;
  readonly sigmaY: Millimetre;
  readonly ellipse: ErrorEllipse;
}

export interface AdjustedDistance {
  readonly index: number;
  readonly from: string;
  readonly to: string;
  readonly value: Millimetre;
  readonly adjusted: Millimetre;
  /** adjusted − value. */
  readonly residual: Millimetre;
  readonly redundancyNumber: number;
  readonly standardised?: number;
}

export interface SuspectDistance {
  readonly index: number;
  readonly from: string;
  readonly to: string;
  readonly impliedError: Millimetre;
  readonly correctedReading: Millimetre;
  readonly cause: Exclude<BlunderCause, 'exchanged'>;
  readonly confidence: number;
}

/** The tapes to a point meet at less than 30°: along them it is well placed, across them it is not. */
export interface WeakPoint {
  readonly name: string;
  readonly angle: Radian;
  readonly ellipse: ErrorEllipse;
}

export interface NextReading {
  readonly from: string;
  readonly to: string;
  /** The longest half axis of any point's ellipse, now and after one more reading of typical sigma. */
  readonly worstNow: Millimetre;
  readonly worstThen: Millimetre;
}

export interface NetworkAdjustment {
  /** In the order given. Without fixed points: the first at the origin, the second along +x. */
  readonly points: readonly AdjustedPoint[];
  /**
   * x then y of each point, mm², from the stated sigmas. Without fixed points the errors are those seen after the best
   * fit of the whole (inner constraints). A fixed point has zeros.
   */
  readonly covariance: readonly (readonly number[])[];
  readonly distances: readonly AdjustedDistance[];
  readonly redundancy: number;
  readonly test: GlobalTest | undefined;
  /** Observed over stated sigma, √(vᵀPv / redundancy); undefined without redundancy. */
  readonly unitSigma: number | undefined;
  readonly suspects: readonly SuspectDistance[];
  readonly weak: readonly WeakPoint[];
  readonly next: NextReading | undefined;
}
