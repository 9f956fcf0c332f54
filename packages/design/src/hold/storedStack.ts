import type { Point } from '@panewright/geometry';
import { faceSpan, type Magnet, type PoleOut, pairForce } from '@panewright/magnets';
import { mm, type Tesla } from '@panewright/quantity';

/** A panel as it lies in a stack, outer face up: its magnets in the stack's frame. */
export interface StoredPanel {
  readonly panel: string;
  readonly points: readonly { readonly at: Point; readonly poleOut: PoleOut }[];
  readonly magnet: Magnet;
  readonly remanence: Tesla;
}

/** Two neighbours in the stack that push each other off somewhere. */
export interface StackFight {
  readonly below: string;
  readonly above: string;
  /** Force between the two panels, N; positive draws them together. */
  readonly net: number;
  /** The strongest push of one magnet on another, N, and which. */
  readonly push: number;
  readonly points: readonly [below: number, above: number];
}

/** A push weaker than this lifts no cloth, N (estimate: the weight of 20 g). */
const WORTH_A_WORD = 0.2;

/**
 * Which neighbours of a stored stack fight: all panels lie outer face up, so like pole out draws where magnets lie over one
 * another, and unlike pushes; like magnets side by side push a little too.
 *
 * @param spacing between the faces of magnets of two neighbours, mm: cloth, film and patch
 * @returns the pairs of neighbours with a push worth a word, in order
 * @range blocks lie with their sides along x and y
 * @accuracy as pairForce, pair by pair
 * @source as pairForce; superposition
 */
export function stackFights(stack: readonly StoredPanel[], spacing: number): readonly StackFight[] {
  return stack.slice(1).flatMap((above, k): StackFight[] => {
    const below = stack[k]!;
    let net = 0;
    let push = 0;
    let points: readonly [number, number] = [0, 0];
    for (const [i, p] of below.points.entries())
      for (const [j, q] of above.points.entries()) {
        if (Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) > FAR_SPANS * spanOf(below, above)) continue;
        const drawn = drawBetween(below, p, above, q, spacing);
        net += drawn;
        if (-drawn > push) [push, points] = [-drawn, [i + 1, j + 1]];
      }
    return push > WORTH_A_WORD ? [{ below: below.panel, above: above.panel, net, push, points }] : [];
  });
}

/** Magnets farther apart than this many spans push with less than a hundredth of what is worth a word. */
const FAR_SPANS = 6;

const spanOf = (...panels: readonly StoredPanel[]): number =>
  Math.max(...panels.map(({ magnet }) => faceSpan(magnet)));

type Place = StoredPanel['points'][number];

/** Pull of one magnet below on one above, N. */
function drawBetween(below: StoredPanel, p: Place, above: StoredPanel, q: Place, spacing: number): number {
  const force = pairForce({
    a: below.magnet,
    b: above.magnet,
    remanenceA: below.remanence,
    remanenceB: above.remanence,
    gap: mm(spacing),
    offset: { dx: mm(q.at.x - p.at.x), dy: mm(q.at.y - p.at.y) },
  });
  if (!force.ok) throw new Error(`a stored pair was refused: ${force.refusal.code}`);
  return (p.poleOut === q.poleOut ? -1 : 1) * force.value.z;
}
