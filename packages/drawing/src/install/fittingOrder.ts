import type { HoldPoint, PatternMember } from '@panewright/design';
import { movePoint } from '@panewright/geometry';

/**
 * Numbers of the hold points in the order they are put on: upper corners, upper side from the middle outward, lower
 * corners, then the rest from the top down, so that the panel hangs straight from the start.
 *
 * Common practice, no source.
 */
export function fittingOrder(
  { member }: { readonly member: PatternMember },
  points: readonly HoldPoint[],
): readonly number[] {
  const placed = points.map((one) => ({ one, at: movePoint(member.place, one.centre) }));
  const ys = placed.map(({ at }) => at.y);
  const xs = placed.map(({ at }) => at.x);
  const middleX = (Math.min(...xs) + Math.max(...xs)) / 2;
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const upper = (y: number) => y > high - 0.2 * (high - low) - 1e-9;
  const grade = ({ one, at }: (typeof placed)[number]) =>
    one.kind === 'corner' ? (upper(at.y) ? 0 : 2) : upper(at.y) ? 1 : 3;
  return placed
    .toSorted((a, b) => {
      const by = grade(a) - grade(b);
      if (by !== 0) return by;
      if (grade(a) === 1)
        return Math.abs(a.at.x - middleX) - Math.abs(b.at.x - middleX) || a.one.number - b.one.number;
      return b.at.y - a.at.y || a.at.x - b.at.x;
    })
    .map(({ one }) => one.number);
}
