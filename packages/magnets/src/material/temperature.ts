import { type Celsius, celsius, type Tesla, tesla } from '@panewright/quantity';
import type { Magnet } from '../magnet.ts';
import type { MagnetGrade } from './grade.ts';
import { demagnetisingFactor, RECOIL_PERMEABILITY } from './recoil.ts';

/** Reversible loss of remanence per kelvin, from 20 C. */
const REMANENCE_SLOPE = -0.0012;
/** Loss of coercivity per kelvin, recalled; real grades lie between -0.0045 and -0.0075. */
const COERCIVITY_SLOPE = -0.006;
const MU0 = 4e-7 * Math.PI;
/** Lasting loss is taken to begin at this share of the coercivity (own screening rule). */
const KNEE_SHARE = 0.9;

/**
 * Remanence at a temperature, as it comes back on cooling.
 *
 * @returns tesla
 * @range -40 to 120 C, below the lasting-loss limit
 * @accuracy slopes of -0.10 to -0.13 %/K are published; -0.12 is used
 * @source sources.md#iec-tr-62518
 */
export function remanenceAt(remanence: Tesla, temperature: Celsius): Tesla {
  return tesla(remanence * (1 + REMANENCE_SLOPE * (temperature - 20)));
}

/**
 * Pull at a temperature against pull at 20 C, both magnets at that temperature.
 *
 * @returns a true ratio
 * @range as remanenceAt
 * @accuracy within 1 % of the pull at 70 C
 * @source sources.md#iec-tr-62518
 */
export function pullFactorAt(temperature: Celsius): number {
  return (1 + REMANENCE_SLOPE * (temperature - 20)) ** 2;
}

export interface LastingLossLimit {
  /** The lower of label and screening: do not let the magnet get hotter. */
  readonly limit: Celsius;
  readonly label: Celsius;
  /** From the magnet's own field; may be far below the label for a thin magnet. */
  readonly screening: Celsius;
}

/**
 * Temperature past which a magnet, alone in its own field, may lose pull for good. A screening figure for one
 * free magnet with the least coercivity of its grade; an oven test settles it.
 *
 * @returns degrees Celsius
 * @accuracy an estimate: real lots may stand 10 to 20 K more, a steep coercivity slope 10 to 25 K less
 * @source sources.md#magnets-lasting-loss
 */
export function lastingLossLimit(magnet: Magnet, grade: MagnetGrade): LastingLossLimit {
  const factor = demagnetisingFactor(magnet);
  const demagnetised =
    (factor * grade.remanence.design) / (MU0 * (1 + (RECOIL_PERMEABILITY - 1) * factor)) / 1000;
  const knee = KNEE_SHARE * grade.coercivity;
  const rise = (knee - demagnetised) / (demagnetised * REMANENCE_SLOPE - knee * COERCIVITY_SLOPE);
  const screening = celsius(20 + rise);
  return { limit: celsius(Math.min(grade.labelLimit, screening)), label: grade.labelLimit, screening };
}
