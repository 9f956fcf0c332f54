import {
  type MetrePerSecond,
  metrePerSecond,
  ok,
  type Pascal,
  pascal,
  type Quantity,
  type Result,
  refuse,
} from '@panewright/quantity';
import { checkSpeed, type SpeedRefusal } from './beaufort.ts';

export type KilogramPerCubicMetre = Quantity<'kg/m3'>;

/** Air at sea level in the standard atmosphere. */
export const AIR_DENSITY = 1.225 as KilogramPerCubicMetre;

/**
 * Dynamic pressure of moving air, rho v^2 / 2.
 *
 * @returns Pa
 * @range 0 to 100 m/s
 * @accuracy exact; cold air (-20 C) is 14 % denser
 * @refuses SPEED_OUT_OF_RANGE
 * @source sources.md#isa-1976
 */
export function dynamicPressure(
  speed: MetrePerSecond,
  density: KilogramPerCubicMetre = AIR_DENSITY,
): Result<Pascal, SpeedRefusal> {
  const bad = checkSpeed(speed);
  return bad ? refuse(bad) : ok(pascal((density * speed * speed) / 2));
}

/**
 * Speed whose dynamic pressure is given: the way back.
 *
 * @returns m/s
 * @range pressure not negative; a negative one faults, being ours
 * @accuracy exact
 * @source sources.md#isa-1976
 */
export function speedOfPressure(
  pressure: Pascal,
  density: KilogramPerCubicMetre = AIR_DENSITY,
): MetrePerSecond {
  if (!(pressure >= 0)) throw new Error(`no speed has a dynamic pressure of ${pressure} Pa`);
  return metrePerSecond(Math.sqrt((2 * pressure) / density));
}
