import {
  type Millimetre,
  mm,
  type Newton,
  newton,
  ok,
  type Result,
  refuse,
  type Tesla,
} from '@panewright/quantity';
import { blockPairForce } from './force/blockPair.ts';
import { discPairForce } from './force/discPair.ts';
import { equalCoaxialDiscForce } from './force/equalDiscs.ts';
import { farPairForce, reach } from './force/farPair.ts';
import { mixedPairForce } from './force/mixedPair.ts';
import { type BlockMagnet, checkMagnet, type DiscMagnet, type Magnet, type MagnetRefusal } from './magnet.ts';

/** Where b's axis lies from a's, along a's width (x) and height (y). */
export interface Offset {
  readonly dx: Millimetre;
  readonly dy: Millimetre;
}

/**
 * Two magnets, unlike poles facing, axes parallel, sides of blocks parallel. `a` is below (behind the glass), `b`
 * above it; `gap` is clear, magnet surface to magnet surface, coatings counted as gap.
 */
export interface MagnetPair {
  readonly a: Magnet;
  readonly b: Magnet;
  readonly remanenceA: Tesla;
  readonly remanenceB: Tesla;
  readonly gap: Millimetre;
  /** Left out: the axes coincide. */
  readonly offset?: Offset;
}

/** Force on b. `z` < 0 draws b to a (pull = -z); `x`, `y` against the offset draw it back. */
export interface PairForce {
  readonly x: Newton;
  readonly y: Newton;
  readonly z: Newton;
}

export type PairRefusal =
  | MagnetRefusal
  | { readonly code: 'GAP_NOT_POSITIVE'; readonly gap: Millimetre }
  | { readonly code: 'GAP_TOO_SMALL'; readonly gap: Millimetre; readonly least: Millimetre }
  | { readonly code: 'OFFSET_NOT_FINITE'; readonly dx: Millimetre; readonly dy: Millimetre };

/** 1/(4 pi mu0) in N/(T^2 mm^2), mu0 = 4 pi 1e-7 (sources.md#codata-mu0: within 6e-10). */
export const FORCE_UNIT = 1 / (1.6 * Math.PI ** 2);
/** Centre distance, in sums of the two enclosing radii, past which the dipole clouds are the better form. */
const FAR = 4.5;
/** Smallest gap vouched for, against the span of the faces. */
const LEAST_GAP_SHARE = 1e-4;

const scratch = new Float64Array(3);

/** The first thing wrong with a pair, or undefined. */
export function checkPair(pair: MagnetPair): PairRefusal | undefined {
  const { a, b, gap, offset } = pair;
  const bad = checkMagnet('a', a, pair.remanenceA) ?? checkMagnet('b', b, pair.remanenceB);
  if (bad) return bad;
  if (!(gap > 0 && Number.isFinite(gap))) return { code: 'GAP_NOT_POSITIVE', gap };
  const least = mm(LEAST_GAP_SHARE * Math.max(reach(a), reach(b)));
  if (gap < least) return { code: 'GAP_TOO_SMALL', gap, least };
  if (offset && !(Number.isFinite(offset.dx) && Number.isFinite(offset.dy))) {
    return { code: 'OFFSET_NOT_FINITE', dx: offset.dx, dy: offset.dy };
  }
  return undefined;
}

function discs(a: DiscMagnet, b: DiscMagnet, gap: number, dx: number, dy: number): void {
  const offset = Math.sqrt(dx * dx + dy * dy);
  if (offset === 0 && a.diameter === b.diameter) {
    scratch[0] = scratch[1] = 0;
    scratch[2] = equalCoaxialDiscForce(a.diameter, a.thickness, b.thickness, gap);
    return;
  }
  const geometry = {
    radiusA: a.diameter / 2,
    radiusB: b.diameter / 2,
    thicknessA: a.thickness,
    thicknessB: b.thickness,
    gap,
    offset,
  };
  if (!discPairForce(geometry, scratch))
    throw new Error('no disc rule is fine enough; the gap check let it pass');
  const along = scratch[0]!;
  scratch[2] = scratch[1]!;
  scratch[0] = offset === 0 ? 0 : (along * dx) / offset;
  scratch[1] = offset === 0 ? 0 : (along * dy) / offset;
}

function blocks(a: BlockMagnet, b: BlockMagnet, gap: number, dx: number, dy: number): void {
  blockPairForce(
    {
      widthA: a.width,
      heightA: a.height,
      thicknessA: a.thickness,
      widthB: b.width,
      heightB: b.height,
      thicknessB: b.thickness,
      gap,
      dx,
      dy,
    },
    scratch,
  );
}

function discOnBlock(block: BlockMagnet, disc: DiscMagnet, gap: number, dx: number, dy: number): void {
  const geometry = {
    width: block.width,
    height: block.height,
    blockThickness: block.thickness,
    radius: disc.diameter / 2,
    discThickness: disc.thickness,
    gap,
    dx,
    dy,
  };
  if (!mixedPairForce(geometry, scratch))
    throw new Error('no chord rule is fine enough; the gap check let it pass');
}

/** Force on b in mm^2 per unit polarisations, into the module's scratch. The pair has been checked. */
function solve(a: Magnet, b: Magnet, gap: number, dx: number, dy: number): void {
  const rise = gap + 0.5 * (a.thickness + b.thickness);
  const far = FAR * (reach(a) + reach(b));
  if (dx * dx + dy * dy + rise * rise > far * far) {
    farPairForce(a, b, gap, dx, dy, scratch);
  } else if (a.kind === 'disc' && b.kind === 'disc') {
    discs(a, b, gap, dx, dy);
  } else if (a.kind === 'block' && b.kind === 'block') {
    blocks(a, b, gap, dx, dy);
  } else if (a.kind === 'block') {
    discOnBlock(a, b as DiscMagnet, gap, dx, dy);
  } else {
    // The picture turned over: the disc is above the block, and what pushes it pushes the block the other way.
    discOnBlock(b as BlockMagnet, a, gap, -dx, -dy);
    scratch[0] = 0 - scratch[0]!;
    scratch[1] = 0 - scratch[1]!;
  }
}

/**
 * Force between two magnets across a gap, as on b.
 *
 * Model: uniform rigid polarisation equal to the remanence, recoil permeability 1, no iron near. Correct the
 * remanence with `effectiveRemanence` and `remanenceAt` before calling it an estimate of real magnets.
 *
 * @returns newtons (x, y, z); z < 0 attracts, and a side force against the offset draws back
 * @range gap from 1e-4 of the larger enclosing radius to any distance, any offset: past 4.5 sums of the
 *   enclosing radii the two are summed as clouds of dipoles
 * @accuracy 1e-6 of the force, or 1e-9 N where that is more (far pairs), against quadrature; exact for uniform magnets, says nothing of real ones
 * @refuses MAGNET_SIZE_NOT_POSITIVE, REMANENCE_OUT_OF_RANGE, GAP_NOT_POSITIVE, GAP_TOO_SMALL, OFFSET_NOT_FINITE
 * @source sources.md#akoun-yonnet-1984, #robertson-2011, #disc-lens-ring, #magnets-rectangle-field, #magnets-far-rule
 */
export function pairForce(pair: MagnetPair): Result<PairForce, PairRefusal> {
  const refusal = checkPair(pair);
  if (refusal) return refuse(refusal);
  const { a, b, offset } = pair;
  solve(a, b, pair.gap, offset ? offset.dx : 0, offset ? offset.dy : 0);
  const scale = FORCE_UNIT * pair.remanenceA * pair.remanenceB;
  return ok({
    x: newton(scale * scratch[0]!),
    y: newton(scale * scratch[1]!),
    z: newton(scale * scratch[2]!),
  });
}

/**
 * Pull of a pair: what must be overcome to lift b straight off. Negative where the pair repels.
 *
 * @returns newtons
 * @range as pairForce
 * @accuracy as pairForce
 * @refuses as pairForce
 * @source as pairForce
 */
export function pull(pair: MagnetPair): Result<Newton, PairRefusal> {
  const force = pairForce(pair);
  return force.ok ? ok(newton(0 - force.value.z)) : force;
}
