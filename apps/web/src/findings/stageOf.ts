import type { Finding, FindingCode } from '../contract.ts';

export const STAGES = [
  'job',
  'openings',
  'patterns',
  'panels',
  'hold',
  'cutting',
  'takeOff',
  'price',
  'sheets',
  'findings',
] as const;
export type Stage = (typeof STAGES)[number];

/** The stage where a finding arises and where it is mended. It does not compile while a code is missing. */
const STAGE_OF: { readonly [C in FindingCode]: Stage } = {
  READING_MISSING: 'openings',
  OUTLINE_MISSING: 'openings',
  READING_SUSPECT: 'openings',
  READINGS_DISAGREE: 'openings',
  SURVEY_IMPOSSIBLE: 'openings',
  NO_CHECK_READING: 'openings',
  NO_CHECK_TAPE: 'openings',
  WEAK_GEOMETRY: 'openings',
  NEXT_TAPE: 'openings',
  POINT_OFF_RUN: 'openings',
  OUT_OF_SQUARE: 'openings',
  SHARED_PATTERN: 'patterns',
  NEAR_MISS: 'patterns',
  SHARED_WITHIN_SPREAD: 'patterns',
  PATTERN_MEAN_IMPOSSIBLE: 'patterns',
  TURNED_OVER_FACES_DIFFER: 'patterns',
  ITEM_NOT_IN_CATALOGUE: 'panels',
  PANEL_IMPOSSIBLE: 'panels',
  CORNER_TOO_TIGHT_FOR_BINDING: 'panels',
  EDGE_NAME_UNKNOWN: 'panels',
  FABRIC_NOT_FOR_HEAT: 'panels',
  HEM_NEEDS_NOTCHED_CORNERS: 'panels',
  HOT_KNIFE_FUMES: 'panels',
  HOLD_POINTS_OVERLAP: 'hold',
  HOLD_POINT_ON_OBSTRUCTION: 'hold',
  MAGNET_DOES_NOT_FIT_POCKET: 'hold',
  PULL_TOO_WEAK: 'hold',
  PULL_REFUSED: 'hold',
  CORNER_MAY_CREEP: 'hold',
  MAGNETS_PUSH_OFF_CENTRE: 'hold',
  HEAT_WEAKENS_MAGNETS: 'hold',
  GRADE_UNKNOWN: 'hold',
  CURVED_GLASS: 'hold',
  FASTENER_STRENGTH_UNKNOWN: 'hold',
  FASTENER_ALLOWANCE: 'hold',
  HAND_EDGE_UNKNOWN: 'hold',
  HAND_POINT_UNKNOWN: 'hold',
  HAND_POINT_OFF_EDGE: 'hold',
  HAND_ELSEWHERE: 'hold',
  HAND_OPENING_UNKNOWN: 'hold',
  HAND_GAP_WIDE: 'hold',
  POINTS_CANNOT_MEET_MARGIN: 'hold',
  MAGNETS_CANNOT_MEET: 'hold',
  HOLD_PROPOSAL: 'hold',
  NEIGHBOURS_NEAR: 'hold',
  POLES_CANNOT_KEY: 'hold',
  KEYED_WRONG_WAY: 'hold',
  STACK_FIGHTS: 'hold',
  STEEL_EDGES: 'hold',
  CUPS_LET_GO: 'hold',
  FIXINGS_IN_FRAME: 'hold',
  EXIT_OPENING: 'openings',
  REMOVE_BEFORE_DRIVING: 'openings',
  MAGNETS_PINCH: 'hold',
  MAGNETS_SWALLOWED: 'hold',
  MAGNETS_IMPLANTS: 'hold',
  MAGNETS_COMPASS: 'hold',
  HOLD_IS_ESTIMATE: 'hold',
  HEAT_INSIDE: 'hold',
  TAPE_DWELL: 'hold',
  SOLVENT_FIRE: 'hold',
  PIECE_WIDER_THAN_ROLL: 'cutting',
  STRIP_LONGER_THAN_ROLL: 'cutting',
  LAY_PLACES_GIVEN_UP: 'cutting',
  LAY_ROLL_NOT_SOLD: 'cutting',
  OFFCUTS_USED: 'cutting',
  LAY_REFUSED: 'cutting',
};

export const stageOf = (finding: Finding): Stage => STAGE_OF[finding.code];

const WEIGHT = { stop: 0, doubt: 1, caution: 2, note: 3 } as const;

/** Stops first, notes last; within one kind in the order of the flow. */
export const bySeverity = (findings: readonly Finding[]): readonly Finding[] =>
  findings.toSorted(
    (a, b) =>
      WEIGHT[a.severity] - WEIGHT[b.severity] || STAGES.indexOf(stageOf(a)) - STAGES.indexOf(stageOf(b)),
  );
