import {
  bounds,
  compose,
  flatten,
  moveOutline,
  type Outline,
  offsetOne,
  type Point,
  point,
  type Rigid,
  shiftBy,
  turnAbout,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';

/**
 * Places of as many copies of one outline as a page holds, by the best of four ways: upright or turned a quarter, all
 * alike or every other one turned about, so that round ends lie beside straight ones. Row by row from the upper left.
 *
 * @param room mm, its lower left corner at the origin
 * @param gap clear way between copies, mm
 * @returns motions that carry the outline into the room
 * @accuracy outlines are flattened outward by 0.05 mm: copies are never nearer than the gap
 */
export function nested(
  outline: Outline,
  room: { readonly width: number; readonly height: number },
  gap: number,
): readonly Rigid[] {
  const ways = [0, Math.PI / 2].flatMap((turn) =>
    [false, true].map((turned) => rows(outline, turn, turned, room, gap)),
  );
  return ways.reduce((best, one) => (one.length > best.length ? one : best));
}

function rows(
  outline: Outline,
  turn: number,
  turned: boolean,
  room: { readonly width: number; readonly height: number },
  gap: number,
): readonly Rigid[] {
  const upright = levelled(outline, turnAbout(point(0, 0), radian(turn)));
  const over = levelled(outline, turnAbout(point(0, 0), radian(turn + (turned ? Math.PI : 0))));
  const [a, b] = [ringOf(outline, upright, gap), ringOf(outline, over, gap)];
  const steps = [stepBetween(a, b), stepBetween(b, a)] as const;
  const box = bounds(moveOutline(upright, outline));
  const places: Rigid[] = [];
  for (let top = room.height; top - box.height >= -1e-9; top -= box.height + gap) {
    let x = 0;
    for (let index = 0; x + box.width <= room.width + 1e-9; index++) {
      places.push(compose(shiftBy(x, top - box.height), index % 2 === 0 ? upright : over));
      x += steps[index % 2]!;
    }
  }
  return places;
}

/** The motion, and a shift that brings the lower left corner of the outline's box to the origin. */
function levelled(outline: Outline, motion: Rigid): Rigid {
  const box = bounds(moveOutline(motion, outline));
  return compose(shiftBy(-box.minX, -box.minY), motion);
}

/** The outline grown by half the gap, as points. */
function ringOf(outline: Outline, motion: Rigid, gap: number): readonly Point[] {
  const moved = moveOutline(motion, outline);
  const grown = gap > 0 ? offsetOne(moved, mm(gap / 2), { corners: 'round' }) : undefined;
  return flatten(grown?.ok ? grown.value : moved, mm(0.05), 'outside');
}

/** How far the second must stand to the right of the first so that they just touch. */
function stepBetween(first: readonly Point[], second: readonly Point[]): number {
  let step = 0;
  for (const { y } of [...first, ...second])
    for (const level of [y - 1e-6, y + 1e-6]) {
      const [right, left] = [crossings(first, level), crossings(second, level)];
      if (right.length > 0 && left.length > 0) step = Math.max(step, Math.max(...right) - Math.min(...left));
    }
  return step;
}

function crossings(ring: readonly Point[], y: number): number[] {
  return ring.flatMap((a, index) => {
    const b = ring[(index + 1) % ring.length]!;
    return a.y > y === b.y > y ? [] : [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)];
  });
}
