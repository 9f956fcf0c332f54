import type { Millimetre, SquareMillimetre, Tesla } from '@panewright/quantity';
import { mm, mm2 } from '@panewright/quantity';

/** A round magnet, magnetised through its thickness. */
export interface DiscMagnet {
  readonly kind: 'disc';
  readonly diameter: Millimetre;
  readonly thickness: Millimetre;
}

/** A rectangular magnet: `width` along x, `height` along y, `thickness` along the magnetisation. */
export interface BlockMagnet {
  readonly kind: 'block';
  readonly width: Millimetre;
  readonly height: Millimetre;
  readonly thickness: Millimetre;
}

export type Magnet = DiscMagnet | BlockMagnet;

/** Which magnet of a pair: `a` is fixed behind the glass, `b` sits in the pocket. */
export type PairMember = 'a' | 'b';

export type MagnetRefusal =
  | {
      readonly code: 'MAGNET_SIZE_NOT_POSITIVE';
      readonly magnet: PairMember;
      readonly dimension: 'diameter' | 'width' | 'height' | 'thickness';
      readonly value: Millimetre;
    }
  | {
      readonly code: 'REMANENCE_OUT_OF_RANGE';
      readonly magnet: PairMember;
      readonly remanence: Tesla;
      readonly most: Tesla;
    };

/** No permanent magnet reaches this; a larger figure is a kilogauss or millitesla value read as tesla. */
const MOST_REMANENCE = 2 as Tesla;

const isPositive = (value: number) => value > 0 && Number.isFinite(value);

/** The first thing wrong with a magnet's figures, or undefined. */
export function checkMagnet(which: PairMember, magnet: Magnet, remanence: Tesla): MagnetRefusal | undefined {
  const bad = (dimension: 'diameter' | 'width' | 'height' | 'thickness', value: Millimetre) =>
    ({ code: 'MAGNET_SIZE_NOT_POSITIVE', magnet: which, dimension, value }) as const;
  if (magnet.kind === 'disc') {
    if (!isPositive(magnet.diameter)) return bad('diameter', magnet.diameter);
  } else {
    if (!isPositive(magnet.width)) return bad('width', magnet.width);
    if (!isPositive(magnet.height)) return bad('height', magnet.height);
  }
  if (!isPositive(magnet.thickness)) return bad('thickness', magnet.thickness);
  if (!isPositive(remanence) || remanence > MOST_REMANENCE) {
    return { code: 'REMANENCE_OUT_OF_RANGE', magnet: which, remanence, most: MOST_REMANENCE };
  }
  return undefined;
}

/**
 * Area of one pole face.
 *
 * @returns mm²
 * @accuracy exact for the stated shape; chamfers are ignored
 * @source plane geometry
 */
export function faceArea(magnet: Magnet): SquareMillimetre {
  return mm2(magnet.kind === 'disc' ? (Math.PI * magnet.diameter ** 2) / 4 : magnet.width * magnet.height);
}

/**
 * The longest straight line across a pole face.
 *
 * @returns mm
 * @accuracy exact for the stated shape
 * @source plane geometry
 */
export function faceSpan(magnet: Magnet): Millimetre {
  return mm(magnet.kind === 'disc' ? magnet.diameter : Math.hypot(magnet.width, magnet.height));
}
