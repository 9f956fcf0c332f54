import { type Celsius, celsius, mm2, type Newton, newton, type SquareMillimetre } from '@panewright/quantity';

/** Standard gravity, m/s2, exact by definition. */
const GRAVITY = 9.80665;
/** Area of bond for one kilogram held for good, and for a moment at full bond. */
const SUSTAINED_AREA = 6000;
const SHORT_AREA = 625;

/** Hours a bond is to be left before it is loaded. */
export const BOND_HOURS = 72;
/** Surfaces are to be warmer than this when the tape goes on. */
export const LEAST_BONDING_TEMPERATURE: Celsius = celsius(15);

export interface TapeLimit {
  /** For good: weight and constant cloth tension. */
  readonly sustained: Newton;
  /** For a moment, at full bond: gusts and taking the panel down. */
  readonly shortTerm: Newton;
}

/**
 * What an acrylic foam bond of an area holds, in shear or straight pull. Peel starts at far less: keep the load
 * central. Heat lowers it; glass inside may pass 60 C in the sun.
 *
 * @returns newtons
 * @range clean, dry surfaces, 72 h after bonding at 15 C or more
 * @accuracy a maker's rule of thumb, not a test of this bond
 * @source sources.md#foam-tape-note
 */
export function tapeLimit(area: SquareMillimetre): TapeLimit {
  return {
    sustained: newton((area / SUSTAINED_AREA) * GRAVITY),
    shortTerm: newton((area / SHORT_AREA) * GRAVITY),
  };
}

/**
 * Area of acrylic foam bond for a weight held for good.
 *
 * @returns mm2
 * @range as tapeLimit
 * @accuracy as tapeLimit
 * @source sources.md#foam-tape-note
 */
export function tapeArea(sustained: Newton): SquareMillimetre {
  return mm2((sustained / GRAVITY) * SUSTAINED_AREA);
}
