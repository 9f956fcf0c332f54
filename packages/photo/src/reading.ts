/** A marker corner: 0 top left, 1 top right, 2 bottom right, 3 bottom left, as printed. */
export interface CornerName {
  readonly marker: number;
  readonly corner: number;
}

/** A distance taped between two marker corners, mm. */
export interface Tape {
  readonly from: CornerName;
  readonly to: CornerName;
  readonly length: number;
  /** Standard deviation, mm; 0.5 for a steel tape read to half a millimetre. */
  readonly sigma?: number;
}

/** What a rule reads on the printed bars of nominal 200 mm and 150 mm, mm. */
export interface Ruler {
  readonly x: number;
  readonly y: number;
  /** Standard deviation of one reading, mm; 0.15 if left out. */
  readonly sigma?: number;
}

export const TAPE_SIGMA = 0.5;
export const RULER_SIGMA = 0.15;
/** Nominal lengths of the printed bars, mm. */
export const BAR_X = 200;
export const BAR_Y = 150;
