import { bounds, movePoint, type Point, point } from '@panewright/geometry';
import { magnetGrade, type PoleOut } from '@panewright/magnets';
import type { Finding } from '../plan/finding.ts';
import type { OpeningPlan } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import { bodyOf } from './holdOpening.ts';
import { type StoredPanel, stackFights } from './storedStack.ts';

/**
 * Neighbours that push one another off where the set is stacked in the job's order, outer faces up, middle on middle. Panels
 * with one pole out everywhere draw, and are not looked at.
 *
 * @source as stackFights
 */
export function storedFindings(openings: readonly OpeningPlan[], made: readonly Made[]): readonly Finding[] {
  const stack = openings.flatMap((opening) => storedPanel(opening, made) ?? []);
  const poles = new Set(stack.flatMap(({ points }) => points.map(({ poleOut }) => poleOut)));
  if (poles.size < 2) return [];
  // Between two magnets lie the cloth of the upper panel and the patch of the lower one.
  const spacing = 2 * Math.min(...made.map(({ materials }) => materials.fabric.thickness));
  return stackFights(stack, spacing).map(({ below, above, push, net }) => ({
    severity: 'note',
    code: 'STACK_FIGHTS',
    where: {},
    numbers: { below, above, push, net },
  }));
}

function storedPanel(opening: OpeningPlan, made: readonly Made[]): StoredPanel[] | null {
  const one = made.find(({ pattern }) =>
    pattern.members.some((member) => member.opening === opening.opening),
  );
  if (!one || !opening.shape || one.materials.holder.kind === 'fastener') return null;
  const grade = magnetGrade(one.materials.outside.grade);
  if (!grade.ok) return null;
  const { place } = one.pattern.members.find((member) => member.opening === opening.opening)!;
  const { minX, minY, maxX, maxY } = bounds(opening.shape.outline);
  const points = one.hold.points.map(({ centre, poleOut }): { at: Point; poleOut: PoleOut } => {
    const { x, y } = movePoint(place, centre);
    return { at: point(x - (minX + maxX) / 2, y - (minY + maxY) / 2), poleOut };
  });
  const magnet = bodyOf(one.materials.outside);
  return [{ panel: opening.opening, points, magnet, remanence: grade.value.remanence.high }];
}
