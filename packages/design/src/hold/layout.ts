import type { Outline, Point } from '@panewright/geometry';
import type { Foot } from './holdPoints.ts';
import type { Rim } from './runs.ts';

/** Something a hold point's magnet keeps clear of, in the panel's frame: a handle, a latch, a hinge, a seam, an exit's release. */
export interface KeepOut {
  readonly id: string;
  readonly outline: Outline;
  /** Kept clear round it beyond the magnet's own reach, mm. */
  readonly clearance: number;
  /** True for the mirror image of a zone, kept clear to have the layout symmetric. */
  readonly mirrored?: boolean;
}

/**
 * One decision of the maker's about a hold point. `on` is an edge's name (or a corner's); `at` is mm from the first sharp
 * corner of that edge, anticlockwise; `index` counts the points the rule set on it, from 1 (from its end where negative). A panel without corners has no
 * edge to measure from: nothing is placed on it by hand.
 */
export type HandPlaced =
  /** A point stands here, and the rule divides what is left on either side. */
  | { readonly kind: 'fixed'; readonly on: string; readonly at: number }
  /** One point more, the others as they were. */
  | { readonly kind: 'added'; readonly on: string; readonly at: number }
  /** The rule's point moved along the edge, anticlockwise positive. */
  | { readonly kind: 'moved'; readonly on: string; readonly index: number; readonly by: number }
  | { readonly kind: 'removed'; readonly on: string; readonly index: number };

export interface PlacingInput {
  readonly rim: Rim;
  /** The shop's spacing, and the gap it lets pass, mm. */
  readonly spacing: number;
  readonly upTo: number;
  readonly zones: readonly KeepOut[];
  /** Radius of the circle a magnet's face lies in, mm. */
  readonly reach: number;
  /** Centre of the magnet whose pocket has this foot. */
  readonly centreOf: (foot: Foot) => Point;
  /** Two points nearer than this have pockets that lie over one another, mm. */
  readonly apart: number;
  readonly hand: readonly HandPlaced[];
  /** Sides and corners that mirror one another within this count as alike, mm. */
  readonly alike: number;
  /** Points on each leg, where they are not to be the fewest, with the mirrors the legs were made for: see `fewestPoints`. */
  readonly counts?: { readonly mirrors: Mirrors; readonly each: readonly number[] };
}

export interface PlacedPoint extends Foot {
  readonly centre: Point;
  /** Which run between two corners, and how far along it between the sharp corners, mm. */
  readonly run: number;
  readonly t: number;
  /** `besideCorner`: its corner is blocked. `besideZone`: a zone wider than the spacing begins or ends here. */
  readonly by: 'corner' | 'besideCorner' | 'besideZone' | 'rule' | 'hand';
  /** Along the run from where equal gaps would have put it, mm. */
  readonly shift: number;
  /** Which of the rule's points it is, also where it was moved by hand; none for one set or added. */
  readonly rule?: { readonly on: string; readonly index: number };
}

/** Why two neighbours are as far apart as they are. */
export interface PlacingGap {
  /** Along the edge between the sharp corners, mm. */
  readonly length: number;
  /** What equal gaps on this stretch come to, and how many the spacing alone would ask for. */
  readonly equal: number;
  readonly strict: number;
  /**
   * `oneGap`: no more than the spacing. `withinTolerance`: over it, let pass by the upper tolerance. `divided`: the fewest
   * equal gaps. `shifted`: a point had to keep clear of `zone`. `zoneWide`: `zone` alone is wider than the limit.
   * `cornerBlocked`: `zone` covers the corner. `raised`: more points than the spacing asks for, to meet a margin.
   * `byHand`: one end was set by hand. `overLimit`: set by hand, and wider than the shop lets pass.
   */
  readonly reason:
    | 'oneGap'
    | 'withinTolerance'
    | 'divided'
    | 'shifted'
    | 'zoneWide'
    | 'cornerBlocked'
    | 'raised'
    | 'byHand'
    | 'overLimit';
  /** The zone in the way, and whether it is the mirror image of one. */
  readonly zone?: string;
  readonly mirrored?: boolean;
  /** The greater of the two shifts, mm. */
  readonly shift?: number;
}

export type LayoutProblem =
  | { readonly code: 'HAND_EDGE_UNKNOWN'; readonly on: string; readonly at: number }
  | {
      readonly code: 'HAND_POINT_UNKNOWN';
      readonly on: string;
      readonly index: number;
      readonly points: number;
    }
  | { readonly code: 'HAND_POINT_OFF_EDGE'; readonly on: string; readonly index: number; readonly by: number }
  | { readonly code: 'POINT_ON_ZONE'; readonly point: number; readonly zone: string; readonly clear: number }
  | {
      readonly code: 'POINTS_CROWDED';
      readonly point: number;
      readonly next: number;
      readonly apart: number;
    };

/** The upright and level lines a layout is the same about, mm; null where it is not. */
export interface Mirrors {
  readonly leftRight: number | null;
  readonly topBottom: number | null;
}

export interface Layout {
  /** Anticlockwise, from the corner nearest the bottom left. */
  readonly points: readonly PlacedPoint[];
  /** Gap k runs from point k to the next. */
  readonly gaps: readonly PlacingGap[];
  readonly mirrors: Mirrors;
  /** What the panel's shape is the same about: more than `mirrors` where a zone, or a point saved, stands against it. */
  readonly shapeMirrors: Mirrors;
  /** Points on each leg between its stops, and which legs are raised together to keep the mirrors: one number for each leg. */
  readonly counts: readonly number[];
  readonly orbits: readonly number[];
  /** What was placed by hand and could not be followed, or lies badly. */
  readonly problems: readonly LayoutProblem[];
}
