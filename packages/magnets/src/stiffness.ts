import type { Quantity } from '@panewright/quantity';
import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { blockPairStiffness } from './force/blockPair.ts';
import { coaxialDiscStiffness } from './force/discPair.ts';
import { checkPair, FORCE_UNIT, type MagnetPair, type PairRefusal, pairForce } from './pairForce.ts';

export type NewtonPerMillimetre = Quantity<'N/mm'>;

/** How hard a pair draws back to the centre, per mm of offset along x and along y. Negative pushes off. */
export interface CentringStiffness {
  readonly x: NewtonPerMillimetre;
  readonly y: NewtonPerMillimetre;
  /** True when a small offset grows by itself: the pair settles off centre. */
  readonly pushesOff: boolean;
}

const scratch = new Float64Array(3);

/** Central difference of the side force, for the mixed pair, which has no closed stiffness here. */
function differences(pair: MagnetPair): [number, number] | PairRefusal {
  const step = 1e-3 * pair.gap;
  const found: number[] = [];
  for (const axis of ['x', 'y'] as const) {
    const sides = [-2, -1, 1, 2].map((k) => {
      const shift = mm(k * step);
      return pairForce({
        ...pair,
        offset: axis === 'x' ? { dx: shift, dy: mm(0) } : { dx: mm(0), dy: shift },
      });
    });
    const values: number[] = [];
    for (const side of sides) {
      if (!side.ok) return side.refusal;
      values.push(side.value[axis]);
    }
    found.push(-(values[0]! - 8 * values[1]! + 8 * values[2]! - values[3]!) / (12 * step));
  }
  return [found[0]!, found[1]!];
}

/**
 * Stiffness with which an aligned pair keeps its alignment. A small magnet close to a larger one may have a
 * negative stiffness: it is pushed off centre and pulls hardest near the rim.
 *
 * @returns N/mm along x and y; positive draws back to the centre
 * @range any gap pairForce accepts within 20 spans of the magnets; the offset of the pair is ignored
 * @accuracy 1e-7 relative for like shapes, 1e-5 for a disc on a block
 * @refuses as pairForce
 * @source sources.md#akoun-yonnet-1984, #robertson-2013 (blocks), #disc-lens-ring (discs)
 */
export function centringStiffness(pair: MagnetPair): Result<CentringStiffness, PairRefusal> {
  const refusal = checkPair(pair);
  if (refusal) return refuse(refusal);
  const { a, b, gap } = pair;
  const scale = FORCE_UNIT * pair.remanenceA * pair.remanenceB;
  let x: number;
  let y: number;
  if (a.kind === 'disc' && b.kind === 'disc') {
    const fine = coaxialDiscStiffness(
      {
        radiusA: a.diameter / 2,
        radiusB: b.diameter / 2,
        thicknessA: a.thickness,
        thicknessB: b.thickness,
        gap,
        offset: 0,
      },
      scratch,
    );
    if (!fine) throw new Error('no disc rule is fine enough; the gap check let it pass');
    x = y = scale * scratch[0]!;
  } else if (a.kind === 'block' && b.kind === 'block') {
    blockPairStiffness(
      {
        widthA: a.width,
        heightA: a.height,
        thicknessA: a.thickness,
        widthB: b.width,
        heightB: b.height,
        thicknessB: b.thickness,
        gap,
        dx: 0,
        dy: 0,
      },
      scratch,
    );
    x = scale * scratch[0]!;
    y = scale * scratch[1]!;
  } else {
    const found = differences(pair);
    if (!Array.isArray(found)) return refuse(found as PairRefusal);
    [x, y] = found;
  }
  return ok({ x: x as NewtonPerMillimetre, y: y as NewtonPerMillimetre, pushesOff: x < 0 || y < 0 });
}
