import { usualFriction } from '@panewright/magnets';
import type { Result } from '@panewright/quantity';
import type { Materials } from '../derive/materials.ts';
import type { Magnet } from '../document/catalogue.ts';
import { faceOf } from '../take-off/wrap.ts';
import type { Face } from './erosion.ts';
import { faceOf as faceOfMagnet } from './faceOf.ts';
import { type FastenerRefusal, fastenerStrength } from './fasteners.ts';
import { pairStrength, type Range, type Strength, type StrengthRefusal } from './margins.ts';
import { type SteelItem, steelStrength } from './steelStrength.ts';

export type HoldingRefusal = StrengthRefusal | FastenerRefusal;

/** What a hold point is worked out across. */
export interface Across {
  /** mm; of no matter to a fastener. */
  readonly gap: number;
  /** Hottest it gets, °C. */
  readonly hottest: number;
  readonly friction: Range;
  /** Edge that one point stands for, mm: hook and loop laid all along is as strong as it is long. */
  readonly run: number;
}

/**
 * Strength of one hold point by what stands there: a pair, a magnet on steel, or a fastener.
 *
 * @refuses as pairStrength, steelStrength, fastenerStrength
 * @source as pairStrength, steelStrength, fastenerStrength
 */
export function holdingStrength(
  { holder, outside, inside }: Pick<Materials, 'holder' | 'outside' | 'inside'>,
  { gap, hottest, friction, run }: Across,
): Result<Strength, HoldingRefusal> {
  switch (holder.kind) {
    case 'magnets':
      return pairStrength({ outside, inside, gap, hottest, friction });
    case 'steel':
      return steelStrength({ outside, steel: steelItem(holder.strip), gap, hottest, friction });
    case 'fastener':
      return fastenerStrength(holder.fastener, run);
  }
}

/** Friction of the panel on the glass, from the shop's low value up to the usual high one. */
export const frictionOf = (low: number): Range => ({
  low,
  high: Math.max(low, usualFriction('filmOrCoatedFabric', false).high),
});

type Strip = Extract<Materials['holder'], { kind: 'steel' }>['strip'];

export const steelItem = ({ id, width, thickness, pack }: Strip): SteelItem => ({
  id,
  width,
  thickness,
  pricePerMetre: (1000 * pack.price) / pack.quantity,
});

/**
 * Length of strip behind one magnet, mm: its span and as much again, half on either side.
 *
 * @source common practice, no source
 */
export const stripPiece = (outside: Magnet): number => 2 * faceOf(outside).long;

/**
 * What lies behind the glass, in the form sections and meetings take it.
 *
 * @source none: sizes as the catalogue has them
 */
export function behindGlass({
  holder,
  outside,
  inside,
  wrapFilm,
}: Pick<Materials, 'holder' | 'outside' | 'inside' | 'wrapFilm'>): {
  readonly inside: Pick<Magnet, 'shape'>;
  readonly face: Face;
  /** Steel is taped on bare; a magnet is wrapped. */
  readonly wrapFilm: { readonly thickness: number };
} {
  if (holder.kind !== 'steel') return { inside, face: faceOfMagnet(inside), wrapFilm };
  const { width: height, thickness } = holder.strip;
  const width = stripPiece(outside);
  return {
    inside: { shape: { kind: 'block', width, height, thickness } },
    face: { kind: 'block', along: width, across: height },
    wrapFilm: { thickness: 0 },
  };
}
