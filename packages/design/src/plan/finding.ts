/**
 * Something the plan has to say about the design. No prose: the contract words it.
 * `stop`: this part cannot be made as it stands; `doubt`: look again before cutting; `caution`: can hurt someone;
 * `note`: good to know.
 */
export interface Finding {
  readonly severity: 'stop' | 'doubt' | 'caution' | 'note';
  readonly code: FindingCode;
  readonly where: {
    readonly opening?: string;
    readonly pattern?: string;
    readonly item?: string;
    readonly edge?: string;
    readonly point?: string;
  };
  /** The numbers and names the sentence needs. Lengths in mm, forces in N, speeds in m/s, money in minor units. */
  readonly numbers: Readonly<Record<string, number | string>>;
}

export type FindingCode =
  // survey
  | 'READING_MISSING'
  | 'READING_SUSPECT'
  | 'READINGS_DISAGREE'
  | 'SURVEY_IMPOSSIBLE'
  | 'NO_CHECK_READING'
  | 'OUT_OF_SQUARE'
  // patterns
  | 'SHARED_PATTERN'
  | 'NEAR_MISS'
  | 'TURNED_OVER_FACES_DIFFER'
  // panels
  | 'ITEM_NOT_IN_CATALOGUE'
  | 'PANEL_IMPOSSIBLE'
  | 'CORNER_TOO_TIGHT_FOR_BINDING'
  | 'EDGE_NAME_UNKNOWN'
  | 'FABRIC_NOT_FOR_HEAT'
  | 'HEM_NEEDS_NOTCHED_CORNERS'
  // hold
  | 'HOLD_POINTS_OVERLAP'
  | 'HOLD_POINT_ON_OBSTRUCTION'
  | 'MAGNET_DOES_NOT_FIT_POCKET'
  | 'PULL_TOO_WEAK'
  | 'GAP_TOO_WIDE_FOR_MODEL'
  | 'MAGNETS_PUSH_OFF_CENTRE'
  | 'HEAT_WEAKENS_MAGNETS'
  | 'CURVED_GLASS'
  // cutting
  | 'PIECE_WIDER_THAN_ROLL'
  | 'STRIP_LONGER_THAN_ROLL'
  | 'LAY_REFUSED'
  // cautions
  | 'EXIT_OPENING'
  | 'REMOVE_BEFORE_DRIVING'
  | 'MAGNETS_PINCH'
  | 'MAGNETS_SWALLOWED'
  | 'MAGNETS_IMPLANTS'
  | 'MAGNETS_COMPASS'
  | 'HOT_KNIFE_FUMES'
  | 'SOLVENT_FIRE'
  | 'TAPE_DWELL'
  | 'HEAT_INSIDE'
  | 'HOLD_IS_ESTIMATE';

export type Find = (finding: Finding) => void;
