/**
 * The numbers and names each finding's sentence needs, by code. Lengths in mm, forces in N, speeds in m/s, temperatures
 * in °C, money in minor units; several ids in one string are parted by spaces.
 */
export interface FindingNumbers {
  // openings
  READING_MISSING: { readonly readings: string };
  OUTLINE_MISSING: { readonly from: 'photo' | 'file' | 'points' | 'pattern' };
  READING_SUSPECT: {
    readonly of: string;
    readonly entered: string;
    readonly corrected: number;
    readonly error: number;
    readonly cause: string;
    readonly confidence: number;
    readonly orOf?: string;
    readonly orEntered?: string;
    readonly orCorrected?: number;
  };
  READINGS_DISAGREE: { readonly misclosure: number };
  SURVEY_IMPOSSIBLE: { readonly refusal: string } & Readonly<Record<string, number | string>>;
  NO_CHECK_READING: Nothing;
  NO_CHECK_TAPE: Nothing;
  /** Tapes to a point that meet at less than 30°; `across`: standard deviation where it is least known. */
  WEAK_GEOMETRY: { readonly point: string; readonly degrees: number; readonly across: number };
  /** The one further tape that helps most; standard deviation of the worst-known point now and with it. */
  NEXT_TAPE: { readonly from: string; readonly to: string; readonly now: number; readonly after: number };
  /** A point that does not lie on its run; `run` counts from 1. */
  POINT_OFF_RUN: { readonly point: string; readonly run: number; readonly off: number };
  OUT_OF_SQUARE: { readonly corner: string; readonly offset: number; readonly degrees: number };
  // patterns
  SHARED_PATTERN: { readonly asIs: string; readonly turnedOver: string; readonly deviation: number };
  /** `spread`: what the two shapes' own uncertainty may make of it, 95 times in 100. */
  NEAR_MISS: {
    readonly deviation: number;
    readonly tolerance: number;
    readonly over: number;
    readonly spread: number;
  };
  /** Shapes that agree, but are known less well than the tolerance asks. */
  SHARED_WITHIN_SPREAD: { readonly members: string; readonly spread: number; readonly tolerance: number };
  PATTERN_MEAN_IMPOSSIBLE: { readonly members: string };
  TURNED_OVER_FACES_DIFFER: { readonly turnedOver: string; readonly fabric: string };
  // panels
  ITEM_NOT_IN_CATALOGUE: { readonly kind: string; readonly id: string };
  PANEL_IMPOSSIBLE: { readonly line: string; readonly refusal: string };
  CORNER_TOO_TIGHT_FOR_BINDING: { readonly radius: number; readonly least: number; readonly binding: string };
  EDGE_NAME_UNKNOWN: { readonly edge: string; readonly known: string };
  FABRIC_NOT_FOR_HEAT: { readonly fabric: string };
  HEM_NEEDS_NOTCHED_CORNERS: { readonly corners: number };
  // hold
  HOLD_POINTS_OVERLAP: { readonly apart: number; readonly pocket: number };
  HOLD_POINT_ON_OBSTRUCTION: { readonly obstruction: string; readonly gap: number; readonly reach: number };
  MAGNET_DOES_NOT_FIT_POCKET: { readonly room: number; readonly need: number; readonly pocket: number };
  PULL_TOO_WEAK: {
    readonly margin: number;
    readonly asked: number;
    readonly pull: number;
    readonly count: number;
    readonly letsGoAt: number;
    readonly wind: number;
    readonly mode: 'pull-off' | 'slip';
  };
  /**
   * The first point to give by edge mechanics, in the weakest opening: mean winds between which it may begin with the cloth
   * slack by so many percent, and the wind up to which the panel as a whole stays on.
   */
  CORNER_MAY_CREEP: {
    readonly opening: string;
    readonly point: number;
    readonly low: number;
    readonly high: number;
    readonly wind: number;
    readonly whole: number;
    readonly slackLow: number;
    readonly slackHigh: number;
  };
  PULL_REFUSED: { readonly gap: number; readonly refusal: string };
  GRADE_UNKNOWN: { readonly magnet: string; readonly grade: string };
  MAGNETS_PUSH_OFF_CENTRE: { readonly outside: string; readonly inside: string };
  HEAT_WEAKENS_MAGNETS: {
    readonly magnet: string;
    readonly limit: number;
    readonly label: number;
    readonly hottest: number;
  };
  CURVED_GLASS: Nothing;
  /** Wanted of each of so many, straight off and along the surface, N. */
  FASTENER_STRENGTH_UNKNOWN: {
    readonly fastener: string;
    readonly count: number;
    readonly pull: number;
    readonly along: number;
  };
  /** A fastener's own allowance stands in place of the job's. */
  FASTENER_ALLOWANCE: { readonly fastener: string; readonly beyond: number; readonly fit: number };
  /** `placed` by hand and not followed: no such edge, no such point, past the edge's end. */
  HAND_EDGE_UNKNOWN: { readonly edge: string; readonly known: string };
  HAND_POINT_UNKNOWN: { readonly index: number; readonly points: number };
  HAND_POINT_OFF_EDGE: { readonly index: number; readonly by: number };
  /** The pattern's points follow another opening's entry. */
  HAND_ELSEWHERE: { readonly follows: string };
  HAND_OPENING_UNKNOWN: { readonly opening: string; readonly points: number };
  /** A gap wider than the shop lets pass, left by what was set by hand. */
  HAND_GAP_WIDE: { readonly gap: number; readonly limit: number };
  /** More points do not meet the margin before their pockets crowd. */
  POINTS_CANNOT_MEET_MARGIN: { readonly asked: number; readonly best: number; readonly points: number };
  /** Pairs that cannot stand opposite one another, and what would let them; ids and lengths left out where none was found. */
  MAGNETS_CANNOT_MEET: {
    readonly because: 'pocket' | 'glass' | 'apart';
    readonly lacking: number;
    readonly flange: number;
    readonly pocket?: number;
    readonly outside?: string;
    readonly inside?: string;
    readonly moved?: number;
  };
  /** What would hold where the chosen magnets do not. Every one was worked out for this panel. */
  HOLD_PROPOSAL: {
    readonly outside?: string;
    readonly inside?: string;
    readonly points?: number;
    readonly margin?: number;
    readonly discs?: string;
    readonly discPoints?: number;
    readonly discPocket?: number;
    readonly blocks?: string;
    readonly blockPoints?: number;
    readonly blockPocket?: number;
    readonly steel?: string;
    readonly steelMagnet?: string;
    readonly steelPoints?: number;
    readonly fastener?: string;
    readonly fastenerPoints?: number;
    readonly toTry?: string;
    readonly toTryPull?: number;
  };
  /** `change` of the weakest one's pull, as a ratio of it. */
  NEIGHBOURS_NEAR: { readonly points: string; readonly apart: number; readonly change: number };
  POLES_CANNOT_KEY: { readonly points: number; readonly because: 'tooFew' | 'alike' | 'steel' | 'fastener' };
  /** The wrong way in which a keyed panel holds best: turned over where `over` is 1, by `turn` radians. */
  KEYED_WRONG_WAY: {
    readonly points: number;
    readonly over: number;
    readonly turn: number;
    readonly meet: number;
    readonly drawn: number;
  };
  /** Neighbours in a stack, outer faces up, in the job's order. */
  STACK_FIGHTS: {
    readonly below: string;
    readonly above: string;
    readonly push: number;
    readonly net: number;
  };
  // cutting
  PIECE_WIDER_THAN_ROLL: {
    readonly piece: string;
    readonly leastWidth: number;
    readonly usableWidth: number;
    readonly fabric: string;
  };
  STRIP_LONGER_THAN_ROLL: { readonly length: number; readonly stock: number; readonly binding: string };
  /** Places of a lay by hand that can no longer be kept, and were laid anew. */
  LAY_PLACES_GIVEN_UP: { readonly pieces: string; readonly fabric: string };
  /** A lay by hand for a roll that is not sold any more: the program's own lay is used. */
  OFFCUTS_USED: { readonly offcuts: string; readonly pieces: number; readonly saved: number };
  /** Keeping pieces together has more cloth bought than offcuts would, taken piece by piece. */
  KEPT_TOGETHER_COSTS: { readonly fabric: string; readonly price: number; readonly length: number };
  /** Panels of one place that cannot come from one piece of cloth: they are of several cloths. */
  KEPT_TOGETHER_CLOTHS: { readonly place: string; readonly openings: string; readonly fabrics: string };
  /** An offcut marked as cut for this job, which takes nothing that is kept together whole. */
  KEPT_TOGETHER_CUT: { readonly offcut: string; readonly openings: string };
  SAME_WAY_COSTS: { readonly fabric: string; readonly price: number; readonly length: number };
  /** The length of the roll is chosen to run up some panels and across others. */
  SAME_WAY_GRAINS: { readonly fabric: string; readonly up: string; readonly across: string };
  /** Panels that no roll takes where all are to lie one way, up or across. */
  SAME_WAY_TOO_WIDE: { readonly fabric: string; readonly openings: string };
  LAY_ROLL_NOT_SOLD: { readonly width: number; readonly fabric: string };
  LAY_REFUSED: { readonly refusal: string; readonly fabric: string };
  // cautions
  EXIT_OPENING: Nothing;
  REMOVE_BEFORE_DRIVING: Nothing;
  MAGNETS_PINCH: { readonly touching: number };
  MAGNETS_SWALLOWED: Nothing;
  /** `distance` for all the job's magnets in one box. */
  MAGNETS_IMPLANTS: { readonly distance: number };
  MAGNETS_COMPASS: { readonly steering: number; readonly standard: number };
  HOT_KNIFE_FUMES: Nothing;
  SOLVENT_FIRE: Nothing;
  TAPE_DWELL: Nothing;
  STEEL_EDGES: Nothing;
  CUPS_LET_GO: Nothing;
  FIXINGS_IN_FRAME: { readonly fixings: number };
  HEAT_INSIDE: Nothing;
  HOLD_IS_ESTIMATE: Nothing;
}

type Nothing = Readonly<Record<string, never>>;

export type FindingCode = keyof FindingNumbers;

/**
 * Something the plan has to say about the design. No prose: the contract words it.
 * `stop`: this part cannot be made as it stands; `doubt`: look again before cutting; `caution`: can hurt someone;
 * `note`: good to know.
 */
export type Finding<C extends FindingCode = FindingCode> = C extends FindingCode
  ? {
      readonly severity: 'stop' | 'doubt' | 'caution' | 'note';
      readonly code: C;
      readonly where: {
        readonly opening?: string;
        readonly pattern?: string;
        readonly item?: string;
        readonly edge?: string;
        readonly point?: string;
      };
      readonly numbers: FindingNumbers[C];
    }
  : never;

export type Find = (finding: Finding) => void;
