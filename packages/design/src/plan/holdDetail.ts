import type { Outline, Point } from '@panewright/geometry';
import type { PlacingGap } from '../hold/layout.ts';
import type { MeetingRefusal, Travel } from '../hold/meeting.ts';

/** Along the edge from one hold point to the next, between the sharp corners, mm. */
export interface HoldGap {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  /** What equal gaps on this run come to, and how many gaps the spacing alone would ask for. */
  readonly equal: number;
  readonly strict: number;
  readonly reason: PlacingGap['reason'];
  /** Opening and obstruction in the way, as `W3.latch`; `mirrored` where it is kept clear to have the layout symmetric. */
  readonly obstruction?: string;
  readonly mirrored?: boolean;
  /** From where equal gaps would have put the point, mm. */
  readonly shift?: number;
}

/** Margin of one hold point on one glass; null where nothing is asked of it. An estimate. */
export interface HoldByPoint {
  readonly point: number;
  readonly mode: 'pullOff' | 'slip' | 'peel';
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** At the worst, off the glass and along it, N. */
  readonly normal: number;
  readonly side: number;
  readonly pull: { readonly nominal: number; readonly low: number; readonly high: number };
}

/** Whether the pair of one hold point can meet, in the pattern's frame. */
export interface HoldMeeting {
  readonly point: number;
  /** null where the pair can meet. */
  readonly refusal: MeetingRefusal | null;
  /** Where both magnets may stand, a good place for them, and how far they may move from it, mm. */
  readonly region: readonly Outline[];
  readonly at: Point | null;
  readonly travel: Travel | null;
}

/**
 * By the mechanics of the edge between hold points: the weakest point, and the mean wind at which it begins to give, m/s (null
 * past 100 m/s of gust). A corner that gives by slip creeps inward until the cloth is slacker; it has not come off. An estimate
 * that hangs on the slack of the cloth, which was not measured.
 */
export interface HoldLetsGo {
  readonly weakest: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** A gap as drawn, and the least and most it may be, mm. */
export interface HoldGapRange {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}
