/** How a plotter file is to be written. */
export interface PlotOptions {
  /**
   * Clear way before the first piece, mm: round a single piece on every side, along a roll before its cut end. A knife is
   * turned into its first direction there. 0 to 500, 10 where not given.
   */
  readonly margin?: number;
  readonly knife?: KnifeSettings;
  /** Each piece's name is written on it by pen 1, in the plotter's own letters. True where not given. */
  readonly names?: boolean;
}

/** A blade that trails behind the axis it turns about. */
export interface KnifeSettings {
  /** From the axis to the tip of the blade, mm, 0 to 5. 0 for a wheel, a beam or a blade the machine itself turns. */
  readonly offset: number;
  /** How far a cut runs on over its own beginning, mm, 0 to 50. Four offsets and more for a blade that trails. */
  readonly overcut: number;
}

export const MARGIN = 10;

/** Settings no machine has are a fault of the caller and throw. */
export function checkPlotOptions({ margin = MARGIN, knife }: PlotOptions): void {
  inRange('margin', margin, 500);
  if (knife === undefined) return;
  inRange('knife offset', knife.offset, 5);
  inRange('overcut', knife.overcut, 50);
}

function inRange(name: string, value: number, most: number): void {
  if (!(value >= 0 && value <= most))
    throw new RangeError(`The ${name} of a plotter file is from 0 to ${most} mm; it is ${value} mm.`);
}
