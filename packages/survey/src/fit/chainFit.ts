import type { Outline, Point } from '@panewright/geometry';
import type { Millimetre, Radian } from '@panewright/quantity';

/** A traced point, mm; `sigma` across the line, 1 standard deviation. Without it the scatter is measured. */
export interface TracedPoint {
  readonly x: number;
  readonly y: number;
  readonly sigma?: number;
}

export interface FitChainOptions {
  /** Bends of a side smaller than this are not told from a straight side. 1 mm unless told. */
  readonly leastSagitta?: Millimetre;
  /** Roundings smaller than this count as sharp. 2 mm unless told. */
  readonly leastRadius?: Millimetre;
  /**
   * Length along the line over which the hand's wobble keeps its sign; points nearer than this are not independent
   * evidence for structure. 0 unless told. The covariance measures the correlation for itself.
   */
  readonly correlation?: Millimetre;
  /** More edges than this are refused. 40 unless told. */
  readonly mostEdges?: number;
  /** Also tell how each unknown answers to each point; see `response`. */
  readonly withResponse?: boolean;
}

export type FitChainRefusal =
  | { readonly code: 'TRACE_TOO_FEW_POINTS'; readonly points: number; readonly least: number }
  | { readonly code: 'TRACE_POINT_NOT_FINITE'; readonly index: number }
  | { readonly code: 'TRACE_SIGMA_NOT_POSITIVE'; readonly index: number; readonly sigma: number }
  | { readonly code: 'TRACE_ENCLOSES_NOTHING'; readonly area: number }
  | { readonly code: 'TRACE_NO_LINES_OR_ARCS'; readonly points: number }
  /** Too many edges: the trace is not made of lines and arcs, or its sigma is set too small. */
  | { readonly code: 'TRACE_TOO_MANY_EDGES'; readonly edges: number; readonly most: number }
  /** Less than half the points lie within three sigma of the best chain found. */
  | { readonly code: 'TRACE_MISFIT'; readonly share: number; readonly scatter: Millimetre };

export interface FittedEdge {
  readonly kind: 'line' | 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly length: Millimetre;
  readonly lengthSigma: Millimetre;
  /** Direction at the start, from +x. */
  readonly heading: Radian;
  /** Left turn along the edge, 0 for a line. */
  readonly sweep: Radian;
  /** Of an arc: positive, whichever way it bends. */
  readonly radius?: Millimetre;
  readonly radiusSigma?: Millimetre;
  /** How far the edge may lie off its drawn place, across itself, where it is least known (ends and middle looked at). */
  readonly offsetSigma: Millimetre;
  /** The same half way along. */
  readonly middleSigma: Millimetre;
  readonly points: number;
}

/** A sharp corner (radius 0) where two edges meet at an angle, or an arc of 20° or more that rounds one. */
export interface FittedCorner {
  readonly kind: 'sharp' | 'round';
  /** The edge that begins at the sharp corner, or the rounding arc itself. */
  readonly edge: number;
  /** The corner, or the middle of the rounding. */
  readonly at: Point;
  /** Left turn; negative where the outline is re-entrant. */
  readonly turn: Radian;
  readonly radius: Millimetre;
  /** Of the radius; for a sharp corner, the longest half axis of its place. */
  readonly sigma: Millimetre;
}

export interface ChainFit {
  /** Anticlockwise, in the points' frame. */
  readonly outline: Outline;
  readonly edges: readonly FittedEdge[];
  readonly corners: readonly FittedCorner[];
  /** Start x, y, heading, then each edge's turn at its corner (if sharp), length, curvature (if an arc). */
  readonly unknowns: readonly string[];
  readonly values: readonly number[];
  /** Of the unknowns, with the scatter and the correlation found. */
  readonly covariance: readonly (readonly number[])[];
  /** Robust scatter of the points about the outline, mm. */
  readonly scatter: Millimetre;
  /** Share of the scatter's variance that neighbours have in common (0: none), and over what length it fades, mm. */
  readonly correlatedShare: number;
  readonly correlationLength: Millimetre;
  /** How much larger the variances are for it, on the whole. */
  readonly correlationFactor: number;
  /** Share of points within three sigma. */
  readonly inliers: number;
  /** Residual of each point as given, left of the outline positive, mm. */
  readonly residuals: readonly number[];
  /** Edge of each point as given. */
  readonly edgeOfPoint: readonly number[];
  /**
   * On demand: by how much each unknown (row) moves when a point as given (column) moves 1 mm to the left of the
   * outline. Errors that points share, a camera's for one, give each unknown Σ response · shift; add their squares and
   * products to the covariance with `withSharedErrors`.
   */
  readonly response?: readonly (readonly number[])[];
}
