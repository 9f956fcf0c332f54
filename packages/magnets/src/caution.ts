import {
  type Millimetre,
  mm,
  type Newton,
  ok,
  type Quantity,
  type Result,
  refuse,
  type Tesla,
  tesla,
} from '@panewright/quantity';
import { checkMagnet, faceArea, type Magnet, type MagnetRefusal } from './magnet.ts';
import { type MagnetPair, type PairRefusal, pull } from './pairForce.ts';

export interface LooseMagnet {
  readonly magnet: Magnet;
  readonly remanence: Tesla;
}

export type CautionRefusal =
  | { readonly code: 'NO_MAGNETS' }
  | { readonly code: 'LOOSE_MAGNET_REFUSED'; readonly at: number; readonly because: MagnetRefusal };

export type CompassUse = 'standard' | 'steering';

/** Least distance consumer magnets are told to keep from an implant. */
const IMPLANT_LEAST = 150;
/** Field below which implants are not generally disturbed. */
const IMPLANT_FIELD = 0.5e-3;
/** One field for the whole world: 5.4 and 18 degrees at 1 uT horizontal. */
const COMPASS_FIELD: { readonly [use in CompassUse]: number } = {
  standard: ((5.4 * Math.PI) / 180) * 1e-6,
  steering: ((18 * Math.PI) / 180) * 1e-6,
};

/** Sum of remanence times volume, T mm^3: mu0 times the moments, all pointing one way. */
function totalMoment(magnets: readonly LooseMagnet[]): Result<number, CautionRefusal> {
  if (magnets.length === 0) return refuse({ code: 'NO_MAGNETS' });
  let total = 0;
  for (const [at, { magnet, remanence }] of magnets.entries()) {
    const because = checkMagnet('a', magnet, remanence);
    if (because) return refuse({ code: 'LOOSE_MAGNET_REFUSED', at, because });
    total += remanence * faceArea(magnet) * magnet.thickness;
  }
  return ok(total);
}

/** Distance on the axis at which a moment gives a field: (Br V / (2 pi B))^(1/3). */
const axialDistance = (moment: number, field: number) => mm(Math.cbrt(moment / (2 * Math.PI * field)));

/**
 * Distance to keep a set of magnets from a pacemaker or other implant: 150 mm, or where their field falls to
 * 0.5 mT if that is further. Moments are added as if all pointed one way: the worst case.
 *
 * @returns mm
 * @accuracy a bound for caution, not a clearance; the maker of the implant has the last word
 * @refuses NO_MAGNETS, LOOSE_MAGNET_REFUSED
 * @source sources.md#fda-magnets-2021, #icnirp-2009, #jackson (dipole on its axis)
 */
export function implantDistance(magnets: readonly LooseMagnet[]): Result<Millimetre, CautionRefusal> {
  const moment = totalMoment(magnets);
  if (!moment.ok) return moment;
  return ok(mm(Math.max(IMPLANT_LEAST, axialDistance(moment.value, IMPLANT_FIELD))));
}

/**
 * Distance to keep a set of magnets from a magnetic compass, fluxgate or phone compass. All moments added, axis
 * aimed at the compass, east to west: the worst case. Swing the compass with the screens fitted and stowed.
 *
 * @returns mm
 * @accuracy a bound, not a certificate; alternate poles along an edge do better
 * @refuses NO_MAGNETS, LOOSE_MAGNET_REFUSED
 * @source sources.md#iso-25862, #jackson (dipole on its axis)
 */
export function compassDistance(
  magnets: readonly LooseMagnet[],
  use: CompassUse,
): Result<Millimetre, CautionRefusal> {
  const moment = totalMoment(magnets);
  return moment.ok ? ok(axialDistance(moment.value, COMPASS_FIELD[use])) : moment;
}

/**
 * Field on the axis of a magnet, `distance` outside its pole face.
 *
 * @returns tesla
 * @range distance > 0
 * @accuracy exact for a uniform magnet
 * @refuses as checkMagnet
 * @source sources.md#jackson (disc), #magnets-rectangle-field (block)
 */
export function fieldOnAxis(
  { magnet, remanence }: LooseMagnet,
  distance: Millimetre,
): Result<Tesla, MagnetRefusal | { readonly code: 'GAP_NOT_POSITIVE'; readonly gap: Millimetre }> {
  const bad = checkMagnet('a', magnet, remanence);
  if (bad) return refuse(bad);
  if (!(distance > 0)) return refuse({ code: 'GAP_NOT_POSITIVE', gap: distance });
  const far = distance + magnet.thickness;
  if (magnet.kind === 'disc') {
    const share = (z: number) => z / Math.hypot(z, magnet.diameter / 2);
    return ok(tesla((remanence / 2) * (share(far) - share(distance))));
  }
  const angle = (z: number) => {
    const r = Math.hypot(magnet.width / 2, magnet.height / 2, z);
    return Math.atan((magnet.width * magnet.height) / (4 * z * r));
  };
  return ok(tesla((remanence / Math.PI) * (angle(distance) - angle(far))));
}

export type FluxIndex = Quantity<'kG2mm2'>;

/** Flux index from which a small loose magnet counts as a swallowing hazard in the rule for play magnets. */
export const HAZARDOUS_FLUX_INDEX = 50 as FluxIndex;

/**
 * Flux index: field at 0.38 mm on the axis, in kilogauss, squared, times the area of the pole face in mm2.
 *
 * @returns kG2 mm2
 * @accuracy an estimate by computation; the rule measures the highest field by a probe
 * @refuses as checkMagnet
 * @source sources.md#cfr-16-1262
 */
export function fluxIndex(loose: LooseMagnet): Result<FluxIndex, MagnetRefusal> {
  const field = fieldOnAxis(loose, mm(0.38));
  if (!field.ok) {
    if (field.refusal.code === 'GAP_NOT_POSITIVE') throw new Error('0.38 mm was refused as a distance');
    return refuse(field.refusal);
  }
  return ok(((field.value * 10) ** 2 * faceArea(loose.magnet)) as FluxIndex);
}

/**
 * Pull of a pair that has snapped together, for the caution against pinched fingers and cracked glass.
 *
 * @param contactGap what keeps the two apart then: two coatings and any cloth; 0.5 mm is usual (an estimate)
 * @returns newtons
 * @accuracy as pairForce
 * @refuses as pairForce
 * @source as pairForce
 */
export function contactPull(pair: MagnetPair, contactGap: Millimetre): Result<Newton, PairRefusal> {
  const { a, b, remanenceA, remanenceB } = pair;
  return pull({ a, b, remanenceA, remanenceB, gap: contactGap });
}
