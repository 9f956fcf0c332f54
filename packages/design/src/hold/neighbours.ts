import { magnetGrade, pullWithNeighbours } from '@panewright/magnets';
import { mm } from '@panewright/quantity';
import type { Materials } from '../derive/materials.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldPoint } from '../plan/plan.ts';
import { faceRadius } from './faceOf.ts';
import { bodyOf } from './holdOpening.ts';

/** Neighbours nearer than this many spans of the larger magnet change one another's pull. */
const NEAR_SPANS = 3;
/** A change smaller than this needs no word, as a ratio. */
const WORTH_A_WORD = 0.01;

/**
 * Pull of every point over the pull of a pair alone, from neighbours nearer than three spans: like poles out weaken one
 * another, alternate ones strengthen.
 *
 * @returns 1 for each point whose neighbours are far, and for all that are not held by pairs
 * @source as pullWithNeighbours
 */
export function neighbourShares(
  points: readonly HoldPoint[],
  gap: number,
  { holder, outside, inside }: Materials,
  pattern: string,
  find: Find,
): readonly number[] {
  const alone = points.map(() => 1);
  const reach = NEAR_SPANS * 2 * Math.max(faceRadius(outside), faceRadius(inside));
  const near = nearestOf(points);
  if (holder.kind !== 'magnets' || !near || near.apart >= reach) return alone;
  const [a, b] = [magnetGrade(inside.grade), magnetGrade(outside.grade)];
  if (!a.ok || !b.ok) return alone;
  const pair = {
    a: bodyOf(inside),
    b: bodyOf(outside),
    remanenceA: a.value.remanence.design,
    remanenceB: b.value.remanence.design,
    gap: mm(gap),
  };
  const found = pullWithNeighbours(points.map(({ centre, poleOut }) => ({ pair, ...centre, poleOut })));
  if (!found.ok) return alone;
  const shares = found.value.map(({ own, pull }) => pull / own);
  const change = Math.min(...shares) - 1;
  if (Math.abs(change) >= WORTH_A_WORD)
    find({
      severity: change < 0 ? 'doubt' : 'note',
      code: 'NEIGHBOURS_NEAR',
      where: { pattern },
      numbers: { points: near.points, apart: near.apart, change },
    });
  return shares;
}

function nearestOf(points: readonly HoldPoint[]): { readonly points: string; readonly apart: number } | null {
  let nearest: { readonly points: string; readonly apart: number } | null = null;
  for (const [k, a] of points.entries())
    for (const b of points.slice(k + 1)) {
      const apart = Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y);
      if (!nearest || apart < nearest.apart) nearest = { points: `${a.number} ${b.number}`, apart };
    }
  return nearest;
}
