import { type MetrePerSecond, metrePerSecond, ok, type Result, refuse } from '@panewright/quantity';

export type SpeedUnit = 'm/s' | 'km/h' | 'mph' | 'kn';

/** Metres per second in one of each, exact by definition. */
const METRES_PER_SECOND: { readonly [unit in SpeedUnit]: number } = {
  'm/s': 1,
  'km/h': 1 / 3.6,
  mph: 0.44704,
  kn: 1852 / 3600,
};

/**
 * A wind speed from the unit it was read in.
 *
 * @returns m/s
 * @accuracy exact
 * @source sources.md#nist-sp811
 */
export function windSpeed(value: number, unit: SpeedUnit): MetrePerSecond {
  return metrePerSecond(value * METRES_PER_SECOND[unit]);
}

/**
 * A wind speed in the unit it is to be shown in.
 *
 * @returns a number of that unit, not rounded
 * @accuracy exact
 * @source sources.md#nist-sp811
 */
export function windSpeedIn(speed: MetrePerSecond, unit: SpeedUnit): number {
  return speed / METRES_PER_SECOND[unit];
}

/** Upper limits of forces 0 to 11, tenths of m/s, 10-minute means at 10 m. Source: sources.md#wmo-306. */
const UPPER = [0.2, 1.5, 3.3, 5.4, 7.9, 10.7, 13.8, 17.1, 20.7, 24.4, 28.4, 32.6] as const;

export type BeaufortRefusal = {
  readonly code: 'BEAUFORT_OUT_OF_RANGE';
  readonly force: number;
  readonly most: number;
};

export interface BeaufortSpeeds {
  readonly low: MetrePerSecond;
  readonly high: MetrePerSecond;
}

/**
 * Mean speeds of one Beaufort force. Force 12 has no upper end: ask for a speed instead.
 *
 * @param force whole number, 0 to 11
 * @returns m/s, 10-minute means at 10 m
 * @accuracy the table's tenths
 * @refuses BEAUFORT_OUT_OF_RANGE
 * @source sources.md#wmo-306
 */
export function beaufortSpeeds(force: number): Result<BeaufortSpeeds, BeaufortRefusal> {
  const high = UPPER[force];
  if (high === undefined) return refuse({ code: 'BEAUFORT_OUT_OF_RANGE', force, most: 11 });
  const below = force === 0 ? undefined : UPPER[force - 1];
  const low = below === undefined ? 0 : (Math.round(below * 10) + 1) / 10;
  return ok({ low: metrePerSecond(low), high: metrePerSecond(high) });
}

export type SpeedRefusal = {
  readonly code: 'SPEED_OUT_OF_RANGE';
  readonly speed: MetrePerSecond;
  readonly most: MetrePerSecond;
};

/** No wind or vehicle this product serves is faster. */
const MOST_SPEED = metrePerSecond(100);

/** Refuses a speed that is no wind: negative, not a number, or past 100 m/s. */
export function checkSpeed(speed: MetrePerSecond): SpeedRefusal | undefined {
  return speed >= 0 && speed <= MOST_SPEED
    ? undefined
    : { code: 'SPEED_OUT_OF_RANGE', speed, most: MOST_SPEED };
}

/**
 * Beaufort force of a mean speed. A speed between two rows, at the table's tenths, counts to the lower.
 *
 * @returns 0 to 12
 * @range 0 to 100 m/s
 * @accuracy the table's tenths
 * @refuses SPEED_OUT_OF_RANGE
 * @source sources.md#wmo-306
 */
export function beaufortForce(speed: MetrePerSecond): Result<number, SpeedRefusal> {
  const bad = checkSpeed(speed);
  if (bad) return refuse(bad);
  const tenths = Math.round(speed * 10) / 10;
  const force = UPPER.findIndex((limit) => tenths <= limit);
  return ok(force === -1 ? 12 : force);
}
