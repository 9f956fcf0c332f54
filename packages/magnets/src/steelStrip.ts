import {
  type Millimetre,
  mm,
  type Newton,
  newton,
  ok,
  type Result,
  refuse,
  type Tesla,
  tesla,
} from '@panewright/quantity';
import { rectangleFlux } from './force/blockPair.ts';
import { phi } from './force/equalDiscs.ts';
import type { Magnet } from './magnet.ts';
import { type PairRefusal, pairForce } from './pairForce.ts';

export interface SteelStrip {
  readonly thickness: Millimetre;
  readonly width: Millimetre;
  /** Flux density at which the steel is full; left out: 1.5 T, low for mild steel. */
  readonly saturation?: Tesla;
}

/** A magnet, poles facing a flat steel strip across `gap`. A block lies with its width across the strip. */
export interface MagnetOnSteel {
  readonly magnet: Magnet;
  readonly remanence: Tesla;
  readonly gap: Millimetre;
  readonly strip: SteelStrip;
}

export interface SteelPull {
  /** What a wide, unsaturated plate gives: the most this strip can do. */
  readonly most: Newton;
  /** Flux density the strip must carry beside the magnet (estimate). */
  readonly fluxDensity: Tesla;
}

export type SteelRefusal =
  | PairRefusal
  | { readonly code: 'STEEL_SIZE_NOT_POSITIVE'; readonly thickness: Millimetre; readonly width: Millimetre }
  | { readonly code: 'SATURATION_OUT_OF_RANGE'; readonly saturation: Tesla; readonly most: Tesla }
  | {
      readonly code: 'STEEL_NARROWER_THAN_MAGNET';
      readonly width: Millimetre;
      readonly leastWidth: Millimetre;
    }
  | {
      readonly code: 'STEEL_SATURATES';
      readonly fluxDensity: Tesla;
      readonly saturation: Tesla;
      readonly leastThickness: Millimetre;
    };

const MILD_STEEL_SATURATION = tesla(1.5);
const MOST_SATURATION = tesla(2.5);

/** Flux that enters a wide plate under the footprint of the magnet, in T mm^2; the image doubles the field. */
function footprintFlux(magnet: Magnet, remanence: number, gap: number): number {
  if (magnet.kind === 'disc') {
    const square = magnet.diameter ** 2;
    return remanence * (phi(gap + magnet.thickness, square) - phi(gap, square));
  }
  const { width, height, thickness } = magnet;
  const crossing = rectangleFlux(width, height, gap) - rectangleFlux(width, height, gap + thickness);
  return (remanence * crossing) / (2 * Math.PI);
}

/**
 * Pull of a magnet to a flat steel strip: as to its mirror image, so as to an equal magnet at twice the gap.
 * A thin strip cannot carry the flux: what enters under the magnet must leave through the strip's section
 * beside it. Past saturation there is no answer here, only the thickness that would do.
 *
 * @returns the pull of a wide plate, an upper bound for a strip, and the flux density in the strip
 * @range strip at least as wide as the magnet
 * @accuracy the image force is exact for a wide plate of high permeability; the flux density is an estimate
 * @refuses as pairForce, STEEL_SIZE_NOT_POSITIVE, SATURATION_OUT_OF_RANGE, STEEL_NARROWER_THAN_MAGNET, STEEL_SATURATES
 * @source sources.md#jackson (image), #magnets-steel-flux (saturation)
 */
export function steelPull({ magnet, remanence, gap, strip }: MagnetOnSteel): Result<SteelPull, SteelRefusal> {
  const twice = mm(2 * gap);
  const force = pairForce({ a: magnet, b: magnet, remanenceA: remanence, remanenceB: remanence, gap: twice });
  if (!force.ok) return force;
  const { thickness, width } = strip;
  const saturation = strip.saturation ?? MILD_STEEL_SATURATION;
  if (!(thickness > 0 && width > 0 && Number.isFinite(thickness + width))) {
    return refuse({ code: 'STEEL_SIZE_NOT_POSITIVE', thickness, width });
  }
  if (!(saturation > 0 && saturation <= MOST_SATURATION)) {
    return refuse({ code: 'SATURATION_OUT_OF_RANGE', saturation, most: MOST_SATURATION });
  }
  const leastWidth = magnet.kind === 'disc' ? magnet.diameter : magnet.width;
  if (width < leastWidth) return refuse({ code: 'STEEL_NARROWER_THAN_MAGNET', width, leastWidth });
  const perimeter = magnet.kind === 'disc' ? Math.PI * magnet.diameter : 2 * (magnet.width + magnet.height);
  const needed = footprintFlux(magnet, remanence, gap) / Math.min(perimeter, 2 * width);
  const fluxDensity = tesla(needed / thickness);
  if (fluxDensity > saturation) {
    return refuse({
      code: 'STEEL_SATURATES',
      fluxDensity,
      saturation,
      leastThickness: mm(needed / saturation),
    });
  }
  return ok({ most: newton(0 - force.value.z), fluxDensity });
}
