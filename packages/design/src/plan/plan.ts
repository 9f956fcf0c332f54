import type { Outline, Point, Rigid } from '@panewright/geometry';
import type { Choices, Glazing } from '../document/job.ts';
import type { UnitName } from '../document/primitives.ts';
import type { ReservedPlace } from '../document/reservedPlaces.ts';
import type { MarkingPlan } from '../hold/markingPlan.ts';
import type { WrongWay } from '../hold/poles.ts';
import type { Figure } from './figure.ts';
import type { Finding } from './finding.ts';
import type { HoldByPoint, HoldGap, HoldGapRange, HoldLetsGo, HoldMeeting } from './holdDetail.ts';

/** Everything worked out from one job, one catalogue and one seed. Lengths mm, areas mm², forces N, money minor units. */
export interface Plan {
  readonly format: 'panewright.plan';
  readonly version: 1;
  readonly job: { readonly id: string; readonly name: string; readonly units: UnitName };
  readonly seed: number;
  readonly openings: readonly OpeningPlan[];
  readonly patterns: readonly PatternPlan[];
  readonly panels: readonly PanelPlan[];
  readonly hold: readonly HoldPlan[];
  /** null until the lay is worked out (the web page shows the stages before it first). */
  readonly cutting: CuttingPlan | null;
  readonly takeOff: TakeOffPlan | null;
  readonly price: PricePlan | null;
  readonly findings: readonly Finding[];
}

/**
 * One opening as surveyed. Frame: seen from outside, y up, mm. Taped sides: bottom-left sharp corner at the origin, bottom
 * side along +x. Marks: first run along +x; marks and accepted outlines have the bottom left of their box at the origin.
 */
export interface OpeningPlan {
  readonly opening: string;
  readonly name: string;
  readonly place: string;
  readonly exit: boolean;
  readonly driving: boolean;
  /** null where the survey was refused; a `stop` finding says why. */
  readonly shape: OpeningShape | null;
  /** Marks and points of a survey by marks, where they could be placed, also while the outline cannot; else none. */
  readonly points: readonly SurveyedPoint[];
  readonly choices: Choices;
  readonly glazing: Glazing;
}

export interface SurveyedPoint {
  readonly name: string;
  readonly kind: 'mark' | 'outline';
  readonly at: Point;
  /** Half axes of the standard error ellipse, mm, and the direction of the longer one, radians. */
  readonly major: number;
  readonly minor: number;
  readonly direction: number;
  /** Its tapes meet at less than 30 degrees. */
  readonly weak: boolean;
}

export interface OpeningShape {
  readonly outline: Outline;
  /** One name per segment of `outline`; a corner arc is named `corner:NAME`. */
  readonly edgeNames: readonly string[];
  readonly width: Figure;
  readonly height: Figure;
  /** Anticlockwise. Taped sides: sharp corners in the order bottom-left, bottom-right, top-right, top-left. */
  readonly corners: readonly OpeningCorner[];
  readonly readings: readonly ReadingResult[];
  /** How much the readings miss closing, mm (root of the weighted square sum of residuals per redundancy, times sigma). */
  readonly misclosure: number;
  readonly redundancy: number;
  /** Standard deviation of the worst-known point of the outline, mm. */
  readonly sigma: number;
}

export interface OpeningCorner {
  /** `bottomLeft` to `topLeft` where there are four such, else a number. */
  readonly name: string;
  readonly at: Point;
  readonly radius: Figure;
  /** Interior angle less a right angle, degrees; re-entrant corners of 270 degrees have 180. */
  readonly outOfSquare: number;
}

export interface ReadingResult {
  /** A reading's name, or `tape:FROM:TO`. */
  readonly of: string;
  /** Index in the survey's list. */
  readonly index: number;
  readonly read: number;
  readonly adjusted: number;
  readonly residual: number;
  /** Residual over its standard deviation; null where nothing checks this reading. */
  readonly standardised: number | null;
  readonly suspect: boolean;
}

/** One pattern: the shape several openings share. Its frame is that of its first member's opening. */
export interface PatternPlan {
  readonly pattern: string;
  readonly outline: Outline;
  readonly edgeNames: readonly string[];
  readonly members: readonly PatternMember[];
  /** Openings with patterns of their own that come nearest to this one, off by at most twice the tolerance. */
  readonly nearMisses: readonly PatternMember[];
  readonly tolerance: number;
}

export interface PatternMember {
  readonly opening: string;
  /** True where the pattern is turned over for this opening. */
  readonly turnedOver: boolean;
  /** Carries pattern coordinates into the opening's frame. */
  readonly place: Rigid;
  /** Worst distance between the pattern so placed and the opening's own outline, mm, and where (opening's frame). */
  readonly deviation: number;
  readonly worstAt: Point;
  /** Standard deviation of that distance from how well both shapes are known, mm; 0 for the opening that gives the pattern. */
  readonly sigma: number;
}

/** The finished panel of one pattern, in the pattern's frame, outside face up. */
export interface PanelPlan {
  readonly pattern: string;
  readonly choices: Choices;
  /** Edge of the finished panel. */
  readonly finished: Outline;
  /** One name per segment of `finished`. */
  readonly edgeNames: readonly string[];
  /** Where the cloth is cut. */
  readonly cut: Outline;
  /** Stitch lines, none for a hot-cut edge. */
  readonly stitch: readonly Outline[];
  /** Inner edge of the visible band (binding or hem); null for a hot-cut edge. */
  readonly band: Outline | null;
  readonly bandWidth: number;
  readonly finishedWidth: Figure;
  readonly finishedHeight: Figure;
  readonly cutWidth: Figure;
  readonly cutHeight: Figure;
  readonly area: Figure;
  readonly mass: Figure;
  readonly edging: EdgingPlan;
}

export type EdgingPlan =
  | {
      readonly kind: 'binding';
      readonly binding: string;
      /** Along the finished edge. */
      readonly run: Figure;
      /** Cut length of the strip: run + overlap + trims. */
      readonly cutLength: Figure;
      readonly overlap: number;
      /** Where the binding begins: mid-edge, never at a corner. Arc length along `finished`, mm. */
      readonly startsAt: { readonly edge: string; readonly s: number; readonly at: Point };
    }
  | { readonly kind: 'hem'; readonly width: number; readonly run: Figure }
  | { readonly kind: 'hotCut'; readonly run: Figure };

/** Hold points of one pattern, in the pattern's frame. */
export interface HoldPlan {
  readonly pattern: string;
  readonly points: readonly HoldPoint[];
  readonly edges: readonly HoldEdge[];
  readonly pocketPieces: readonly PocketPiece[];
  /** One per member opening, for its own glass. */
  readonly openings: readonly HoldOpening[];
  /** Why each point is as far from the next as it is; none for a panel laid out without reasons (no obstruction, corners that point into it). */
  readonly gaps?: readonly HoldGap[];
  /** The opening whose entry the points set by hand come from; null where none are. */
  readonly byHandOf: string | null;
  readonly poles: 'uniform' | 'keyed';
  /** Of keyed poles: the ways to put the panel on wrongly, and how many points would draw; see `polesFor`. */
  readonly wrongWays?: readonly WrongWay[];
}

export interface HoldPoint {
  /** Number within the pattern, anticlockwise from the bottom-left corner, 1 first. */
  readonly number: number;
  readonly kind: 'corner' | 'edge';
  /** Edge name, or `corner:NAME`. */
  readonly on: string;
  /** On the finished edge: arc length from the outline's start, mm, and the point. */
  readonly s: number;
  readonly edgePoint: Point;
  /** Centre of the magnet. */
  readonly centre: Point;
  /** Direction into the panel, radians. */
  readonly inward: number;
  /** The pocket patch as sewn, in the pattern's frame; null and no name where a fastener stands. */
  readonly pocket: Outline | null;
  readonly pocketPiece: string;
  /** Which of the rule's points it is: on its edge (or at its corner), from 1; null for one set by hand. */
  readonly rule: { readonly on: string; readonly index: number } | null;
  /** Set, moved or added by hand. */
  readonly byHand: boolean;
  /** Pole away from the glass; of no meaning where a fastener stands. */
  readonly poleOut: 'north' | 'south';
  /** Largest circle the finished pocket leaves for the magnet, or the circle a fastener covers. */
  readonly cavity: { readonly centre: Point; readonly radius: number };
}

/** Why an edge has the hold points it has. */
export interface HoldEdge {
  readonly edge: string;
  /** Between the sharp corners of the finished panel, mm. */
  readonly length: number;
  readonly gaps: number;
  readonly gap: Figure;
  readonly spacing: number;
  readonly upTo: number;
  /** `oneGap`: no more than the spacing; `withinTolerance`: over the spacing, let pass by the upper tolerance; `divided`. */
  readonly reason: 'oneGap' | 'withinTolerance' | 'divided';
  /** Positions from the edge's first sharp corner, mm, corners included. */
  readonly positions: readonly number[];
}

/** A pocket patch to be cut: shape in its own frame, straight edge along the bottom, centred on x = 0. */
export interface PocketPiece {
  readonly piece: string;
  readonly outline: Outline;
  readonly count: number;
  readonly kind: 'corner' | 'edge';
}

/** Pull of one aligned pair, newtons. */
export interface HoldPull {
  /** Uniform magnets at 20 °C, no corrections. */
  readonly ideal: number;
  /** Hot, plated, in their own fields: what the plan counts on. 95 times in 100 between `low` and `high`. */
  readonly working: Figure;
  readonly low: number;
  readonly high: number;
  /** Snapped together without the glass: for the caution. */
  readonly touching: number;
}

/** Pull of all pairs ÷ what asks for it over the whole panel in the stated weather. An estimate. */
export interface HoldMargin {
  readonly mode: 'pull-off' | 'slip';
  readonly value: Figure;
  readonly low: number;
  readonly high: number;
  /** Mean wind at which the low pull is used up, m/s. */
  readonly letsGoAt: number;
  /** Lift of the gust on the panel, Pa, and the panel's weight, N. */
  readonly windPressure: number;
  readonly weight: number;
}

export interface HoldOpening {
  readonly opening: string;
  readonly by: 'magnets' | 'steel' | 'fastener';
  /** Catalogue ids: of the magnet and its partner, of the magnet and the strip, or of the fastener twice. */
  readonly outside: string;
  readonly inside: string;
  readonly layers: readonly { readonly name: string; readonly thickness: number }[];
  readonly gap: Figure;
  /** null: refused, or a grade is not known (a finding says which). */
  readonly pull: HoldPull | null;
  /** null where there is no pull. */
  readonly margin: HoldMargin | null;
  /** Hottest the weaker magnet bears without lasting loss, °C (estimate); null where its grade is not known. */
  readonly heatLimit: number | null;
  /** At the first point; see `marking` for each. */
  readonly poles: { readonly panelOut: 'north' | 'south'; readonly insideOut: 'north' | 'south' };
  /** How the magnets are marked, in the opening's frame and mirrored for inside; null where none meet magnets. */
  readonly marking: MarkingPlan | null;
  /** Between the magnets where the panel rides on a gasket, mm: at a corner and at mid-edge. */
  readonly gaps: { readonly corner: HoldGapRange; readonly edge: HoldGapRange } | null;
  /** Margins by edge mechanics, one per hold point; none where there is no pull. Estimates. */
  readonly byPoint?: readonly HoldByPoint[];
  /** null where there is no pull. */
  readonly letsGo?: HoldLetsGo | null;
  /** Where the pair of each hold point can meet on this glass. */
  readonly meetings?: readonly HoldMeeting[];
}

/** One kind of piece to be cut from cloth. */
export interface CutPiece {
  readonly piece: string;
  readonly kind: 'panel' | 'pocket';
  readonly pattern: string;
  readonly outline: Outline;
  readonly count: number;
  /** Openings it is for, panel pieces only. */
  readonly openings: readonly string[];
  /** True where the piece is the pattern turned over (cloth with different faces). */
  readonly turnedOver: boolean;
  readonly fabric: string;
  readonly turns: readonly number[];
  readonly mayFlip: boolean;
}

export interface CuttingPlan {
  readonly pieces: readonly CutPiece[];
  /** Of each cloth the lay on the roll, then those on offcuts. */
  readonly lays: readonly LayPlan[];
  readonly strips: readonly StripPlan[];
  /** One for each cloth of which offcuts are used. */
  readonly savings: readonly OffcutSaving[];
}

/** Pieces on one roll. x runs along the roll from its cut end, y across it from one selvage edge. */
export interface LayPlan {
  readonly lay: string;
  readonly fabric: string;
  readonly rollWidth: number;
  readonly usableWidth: number;
  readonly selvage: number;
  readonly spacing: number;
  readonly length: Figure;
  /** Piece area over cloth area, of the length used and the full roll width. */
  readonly density: number;
  /** No lay of this width can be shorter, mm. */
  readonly leastLength: number;
  readonly placements: readonly LayPlacement[];
  readonly otherWidths: readonly {
    readonly rollWidth: number;
    readonly length: number;
    readonly price: number;
  }[];
  /** Copies that end where the lay ends: it cannot be shorter while they lie where they do. */
  readonly binds: readonly LaidCopyName[];
  /** Why it is as long as it is; null for a lay on an offcut. */
  readonly chain: LaidChain | null;
  /** Where on this roll nothing may lie. */
  readonly reserved: readonly ReservedPlace[];
  /** null: the program's own lay. */
  readonly byHand: {
    readonly held: readonly LaidCopyName[];
    /** What the program would lay by itself: roll, length and price of the cloth. */
    readonly automatic: { readonly rollWidth: number; readonly length: number; readonly price: number };
  } | null;
  /** Cloth bought for it, in whole steps, mm and money; null for a lay on an offcut. */
  readonly bought: { readonly length: number; readonly price: number } | null;
  /** The offcut of the stock it is laid on, in place of a roll: `rollWidth` is then its width. */
  readonly offcut: LaidOffcut | null;
  /** What it leaves of the cloth bought, or of the offcut, worth keeping; the largest first. */
  readonly leaves: readonly LeftPiece[];
}

/**
 * Copies that lie one against the other along the cloth, up to the end of the lay: while they lie at these heights,
 * turned as they are, in this order, sliding along the cloth shortens the lay by no more than `play`, mm.
 */
export interface LaidChain {
  readonly copies: readonly LaidCopyName[];
  /** The reserved place the first one lies against; null for the cut end. */
  readonly from: string | null;
  readonly play: number;
}

export interface LaidOffcut {
  readonly id: string;
  readonly name: string;
  readonly place: string;
  readonly along: number;
  readonly across: number;
}

/** A rectangle left over, in the frame of its lay, mm. */
export interface LeftPiece {
  readonly x: number;
  readonly y: number;
  /** Along the roll, and across it. */
  readonly along: number;
  readonly across: number;
  /** Its area at the price of its roll, money. */
  readonly worth: number;
}

/** What offcuts of one cloth take off the purchase: money, and mm of whatever roll is cheapest with and without. */
export interface OffcutSaving {
  readonly fabric: string;
  /** In the order of their lays. */
  readonly offcuts: readonly string[];
  readonly price: number;
  readonly length: number;
}

export interface LaidCopyName {
  readonly piece: string;
  readonly copy: number;
}

export interface LayPlacement {
  readonly piece: string;
  readonly copy: number;
  /** Carries piece coordinates onto the roll. */
  readonly place: Rigid;
  readonly outline: Outline;
}

/** Strips of one material cut from its rolls. */
export interface StripPlan {
  readonly material: string;
  readonly kind: 'binding' | 'wrapFilm' | 'tape';
  readonly stockLength: number;
  readonly stocks: readonly {
    readonly cuts: readonly { readonly length: number; readonly for: string }[];
    readonly left: number;
  }[];
  readonly leastStocks: number;
}

export interface TakeOffLine {
  readonly item: string;
  readonly name: string;
  readonly supplier: string;
  readonly kind: 'fabric' | 'binding' | 'magnet' | 'steel' | 'fastener' | 'wrapFilm' | 'tape' | 'thread';
  /** What the job uses. */
  readonly used: Figure;
  /** What is bought: whole packs. */
  readonly packs: Figure;
  readonly pack: { readonly quantity: number; readonly price: number };
  readonly left: number;
  readonly costUsed: Figure;
  readonly costBought: Figure;
  /** What the job is charged: cloth as bought (its offcut is the job's), the rest as used. */
  readonly costCharged: Figure;
}

export interface LabourLine {
  readonly operation: string;
  readonly name: string;
  readonly times: number;
  readonly minutes: Figure;
}

export interface TakeOffPlan {
  readonly materials: readonly TakeOffLine[];
  readonly labour: readonly LabourLine[];
  readonly minutes: Figure;
}

export interface PricePlan {
  readonly currency: { readonly code: string; readonly symbol: string; readonly decimals: number };
  readonly material: Figure;
  readonly labour: Figure;
  readonly overhead: Figure;
  readonly cost: Figure;
  readonly price: Figure;
  readonly tax: Figure;
  readonly total: Figure;
  /** Of price, before tax. */
  readonly margin: number;
  /** Share of the price by opening; sums to `price`. */
  readonly byOpening: readonly { readonly opening: string; readonly price: number }[];
}
