import type { Outline } from '@panewright/geometry';
import type { Millimetre } from '@panewright/quantity';
import type { FittedCorner, FittedEdge } from '../fit/chainFit.ts';

/** A stretch of the opening's edge, straight or one curve, and the points on it in order, anticlockwise. */
export interface OutlineRun {
  readonly kind: 'line' | 'arc';
  readonly points: readonly string[];
}

/**
 * How a run follows the one before it: at a sharp corner, by a rounding of a radius that was read, or smoothly. A point
 * taken at a sharp corner belongs to both its runs.
 */
export type RunJoint =
  | { readonly kind: 'sharp' }
  | { readonly kind: 'round'; readonly radius: Millimetre; readonly sigma: Millimetre }
  | { readonly kind: 'smooth' };

/** Joint k lies before run k; joint 0 closes the ring. */
export interface OutlinePlan {
  readonly runs: readonly OutlineRun[];
  readonly joints: readonly RunJoint[];
}

export type OutlinePlanRefusal =
  | { readonly code: 'OUTLINE_TOO_FEW_RUNS'; readonly runs: number }
  | { readonly code: 'OUTLINE_JOINTS_UNEQUAL'; readonly runs: number; readonly joints: number }
  | { readonly code: 'OUTLINE_POINT_UNKNOWN'; readonly name: string; readonly run: number }
  | {
      readonly code: 'OUTLINE_RUN_UNDETERMINED';
      readonly run: number;
      readonly points: number;
      readonly need: number;
    }
  | { readonly code: 'OUTLINE_RADIUS_NOT_POSITIVE'; readonly joint: number; readonly radius: Millimetre }
  | { readonly code: 'OUTLINE_SIGMA_NOT_POSITIVE'; readonly joint: number; readonly sigma: Millimetre }
  /** Two straight runs cannot join smoothly. */
  | { readonly code: 'OUTLINE_LINES_JOIN_SMOOTHLY'; readonly joint: number }
  /** The roundings at a run's ends take more of it than there is. */
  | {
      readonly code: 'OUTLINE_RADII_TOO_LARGE';
      readonly run: number;
      readonly length: Millimetre;
      readonly taken: Millimetre;
    }
  /** The runs as told do not make a ring: not in order anticlockwise, or neighbours that do not meet. */
  | { readonly code: 'OUTLINE_DOES_NOT_CLOSE' };

/** A point against the run it was taken on. */
export interface RunResidual {
  readonly run: number;
  readonly name: string;
  /** Left of the outline (inside) positive. */
  readonly residual: Millimetre;
  /** Over its own sigma; undefined where the run goes through the point whatever is read. Beyond 3.3 it is suspect. */
  readonly standardised?: number;
}

export interface PlannedOutline {
  readonly outline: Outline;
  readonly edges: readonly FittedEdge[];
  readonly corners: readonly FittedCorner[];
  readonly residuals: readonly RunResidual[];
}
