import { ok, type Radian, type Result, refuse } from '@panewright/quantity';

export type GlassContact = 'filmOrCoatedFabric' | 'wovenPolyester' | 'gripPatch' | 'bareMagnet';

export interface FrictionEnds {
  /** What to count on. */
  readonly low: number;
  /** What to expect on dry, clean glass. */
  readonly high: number;
}

/** Dry figures; no measurement of mesh on glass was found, so every one is an estimate. */
const DRY: { readonly [contact in GlassContact]: FrictionEnds } = {
  filmOrCoatedFabric: { low: 0.15, high: 0.35 },
  wovenPolyester: { low: 0.15, high: 0.4 },
  gripPatch: { low: 0.5, high: 1 },
  bareMagnet: { low: 0.1, high: 0.3 },
};

/**
 * Friction of a contact on glass, for want of a tilt test. Dew, rain and soap halve it.
 *
 * @returns true ratios
 * @accuracy an estimate, to a factor of two; measure with tiltFriction
 * @source sources.md#magnets-friction
 */
export function usualFriction(contact: GlassContact, wet: boolean): FrictionEnds {
  const { low, high } = DRY[contact];
  return wet ? { low: low / 2, high: high / 2 } : { low, high };
}

/**
 * Friction from a tilt test: the loaded pocket on the very glass, tilted until it first slips.
 *
 * @param tilt of the glass from level at first slip
 * @returns a true ratio, tan(tilt)
 * @range 0 to 56 degrees
 * @accuracy exact for dry friction; repeat it, and again wet
 * @refuses TILT_OUT_OF_RANGE
 * @source sources.md#magnets-friction
 */
export function tiltFriction(
  tilt: Radian,
): Result<number, { readonly code: 'TILT_OUT_OF_RANGE'; readonly tilt: Radian; readonly most: Radian }> {
  const most = Math.atan(1.5) as Radian;
  return tilt >= 0 && tilt <= most ? ok(Math.tan(tilt)) : refuse({ code: 'TILT_OUT_OF_RANGE', tilt, most });
}
