import type { Outline, Point } from '@panewright/geometry';
import type { Millimetre, Radian } from '@panewright/quantity';
import type { GlobalTest } from '../adjustment/statistics.ts';
import type { Suspect } from './suspect.ts';

/** Corners anticlockwise as seen from outside, the order of every corner list here. */
export const CORNERS = ['bottomLeft', 'bottomRight', 'topRight', 'topLeft'] as const;
/** Sides anticlockwise; side k runs from corner k to the next. */
export const SIDES = ['bottom', 'right', 'top', 'left'] as const;
export const RADII = ['radiusBottomLeft', 'radiusBottomRight', 'radiusTopRight', 'radiusTopLeft'] as const;
/** `rising` runs bottom left to top right, `falling` top left to bottom right; `midWidth` joins the middles of left and right. */
export const SPANS = ['rising', 'falling', 'midWidth', 'midHeight'] as const;

export type CornerName = (typeof CORNERS)[number];
export type SideName = (typeof SIDES)[number];
export type RadiusName = (typeof RADII)[number];
export type LengthName = SideName | (typeof SPANS)[number];
export type Measured = LengthName | RadiusName;

/** `sigma` is the standard deviation of one such reading; `entered` the text as it was keyed in, if it was. */
export interface TapeReading {
  readonly of: Measured;
  readonly value: Millimetre;
  readonly sigma: Millimetre;
  readonly entered?: string;
}

/**
 * Tape readings of a four-sided opening with straight sides and corners that may be rounded. Repeats are welcome.
 * Sides run between sharp corners: where the straight sides would meet. So do diagonals, or with 'round' they are the
 * greatest distance over the rounded corners. A corner without a radius reading, or with 0, is sharp.
 */
export interface TapeSurvey {
  readonly readings: readonly TapeReading[];
  readonly diagonalsTo: 'sharp' | 'round';
}

export type TapeRefusal =
  | {
      readonly code: 'TAPE_VALUE_NOT_POSITIVE';
      readonly of: Measured;
      readonly index: number;
      readonly value: Millimetre;
    }
  | {
      readonly code: 'TAPE_SIGMA_NOT_POSITIVE';
      readonly of: Measured;
      readonly index: number;
      readonly sigma: Millimetre;
    }
  /** `missing` is how many more are needed, `wouldHelp` any one of which brings it nearer. */
  | {
      readonly code: 'TAPE_READINGS_INSUFFICIENT';
      readonly missing: number;
      readonly wouldHelp: readonly LengthName[];
    }
  /** `longest` is not shorter than the others end to end. */
  | {
      readonly code: 'TAPE_SIDES_CANNOT_CLOSE';
      readonly longest: LengthName;
      readonly length: Millimetre;
      readonly others: readonly LengthName[];
      readonly reach: Millimetre;
    }
  | {
      readonly code: 'TAPE_RADII_TOO_LARGE';
      readonly side: SideName;
      readonly length: Millimetre;
      /** What the two roundings take of the side. */
      readonly taken: Millimetre;
    }
  | { readonly code: 'TAPE_RADIUS_NOT_POSITIVE'; readonly corner: CornerName; readonly radius: Millimetre }
  | { readonly code: 'TAPE_NOT_CONVEX'; readonly corner: CornerName; readonly angle: Radian }
  | { readonly code: 'TAPE_NOT_CONVERGED'; readonly steps: number };

export interface AdjustedSide {
  readonly of: SideName;
  readonly length: Millimetre;
  readonly sigma: Millimetre;
  /** How far the side may lie off its drawn place, across itself, at its worse end; after the best fit of the whole. */
  readonly offsetSigma: Millimetre;
}

export interface AdjustedCorner {
  readonly of: CornerName;
  /** Where the straight sides meet. */
  readonly point: Point;
  /** The longest half axis of its standard error ellipse, after the best fit of the whole. */
  readonly sigma: Millimetre;
  readonly angle: Radian;
  readonly angleSigma: Radian;
  /** angle − 90°; positive is open. */
  readonly outOfSquare: Radian;
  /** The same at the end of the shorter adjoining side, in mm. */
  readonly outOfSquareOffset: Millimetre;
  readonly outOfSquareOffsetSigma: Millimetre;
  readonly radius: Millimetre;
  /** 0 for a corner taken as sharp. */
  readonly radiusSigma: Millimetre;
}

export interface AdjustedReading {
  readonly of: Measured;
  /** Position in the survey's list. */
  readonly index: number;
  readonly value: Millimetre;
  readonly adjusted: Millimetre;
  /** adjusted − value. */
  readonly residual: Millimetre;
  /** Share of the reading that the others check, 0 to 1. */
  readonly redundancyNumber: number;
  readonly standardised?: number;
  /** What all the other readings together say it should be, and the sigma of value − predicted. */
  readonly predicted?: Millimetre;
  readonly closing?: Millimetre;
  readonly closingSigma?: Millimetre;
}

export interface TapeAdjustment {
  /** In the frame seen from outside: bottom left corner at the origin, bottom side along +x. */
  readonly outline: Outline;
  readonly corners: readonly AdjustedCorner[];
  readonly sides: readonly AdjustedSide[];
  /** Between sharp corners, whatever was read. `difference` = rising − falling, 0 when square. */
  readonly diagonals: {
    readonly rising: Millimetre;
    readonly falling: Millimetre;
    readonly difference: Millimetre;
    readonly differenceSigma: Millimetre;
  };
  readonly readings: readonly AdjustedReading[];
  readonly unknowns: readonly string[];
  /** Of the unknowns, mm², from the stated sigmas; rows and columns in the order of `unknowns`. */
  readonly covariance: readonly (readonly number[])[];
  readonly redundancy: number;
  /** undefined when every reading was needed and nothing checks them. */
  readonly test: GlobalTest | undefined;
  /** The diagonal that closes the figure: read − predicted from all other readings; undefined without a check. */
  readonly closingError:
    | {
        readonly of: LengthName;
        readonly index: number;
        readonly error: Millimetre;
        readonly sigma: Millimetre;
      }
    | undefined;
  /** Filled when the test fails: which reading is likely wrong, and why. Nothing has been corrected. */
  readonly suspects: readonly Suspect[];
}
