import { type Point, point } from '@panewright/geometry';
import { clipSegment } from './clip.ts';
import { type Box, boxOfPoints } from './path.ts';

/**
 * What is already on a page: lines and boxes that a text may not touch. Kept in cells of a grid so that a question costs
 * the neighbourhood, not the page.
 */
export interface Occupied {
  readonly addLine: (points: readonly Point[]) => void;
  readonly addBox: (box: Box) => void;
  readonly free: (box: Box) => boolean;
  readonly within: Box;
}

const CELL = 12;

export function occupied(within: Box): Occupied {
  const segments = new Map<number, (readonly [Point, Point])[]>();
  const boxes: Box[] = [];
  const addSegment = (a: Point, b: Point) => {
    eachCell(boxOfPoints([a, b]), (key) => {
      const list = segments.get(key);
      if (list) list.push([a, b]);
      else segments.set(key, [[a, b]]);
    });
  };
  return {
    within,
    addLine: (points) => {
      for (let i = 1; i < points.length; i++) {
        const kept = clipSegment(points[i - 1]!, points[i]!, within);
        if (kept) for (const [a, b] of pieces(kept)) addSegment(a, b);
      }
    },
    addBox: (box) => boxes.push(box),
    free: (box) => {
      if (
        box.minX < within.minX ||
        box.maxX > within.maxX ||
        box.minY < within.minY ||
        box.maxY > within.maxY
      )
        return false;
      if (boxes.some((one) => overlap(one, box))) return false;
      let clear = true;
      eachCell(box, (key) => {
        if (clear && segments.get(key)?.some(([a, b]) => clipSegment(a, b, box) !== undefined)) clear = false;
      });
      return clear;
    },
  };
}

const overlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

/** A long segment in parts no longer than a few cells, so that its box holds few cells it does not touch. */
function pieces([a, b]: readonly [Point, Point]): (readonly [Point, Point])[] {
  const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / (2 * CELL)));
  const at = (i: number) => point(a.x + ((b.x - a.x) * i) / count, a.y + ((b.y - a.y) * i) / count);
  return Array.from({ length: count }, (_, i) => [at(i), at(i + 1)] as const);
}

function eachCell(box: Box, visit: (key: number) => void): void {
  for (let i = Math.floor(box.minX / CELL); i <= Math.floor(box.maxX / CELL); i++)
    for (let j = Math.floor(box.minY / CELL); j <= Math.floor(box.maxY / CELL); j++) visit(i * 65536 + j);
}

/** Middle of the first free place for a box of this size, tried around `near` in growing rings, the direction `towards` first. */
export function placeNear(
  taken: Occupied,
  near: Point,
  size: { readonly width: number; readonly height: number },
  reach: { readonly from: number; readonly to: number; readonly towards?: number },
): Point | undefined {
  const first = reach.towards ?? Math.PI / 4;
  for (let distance = reach.from; distance <= reach.to; distance += 3)
    for (let step = 0; step < 16; step++) {
      const angle = first + (Math.ceil(step / 2) * (step % 2 === 0 ? 1 : -1) * Math.PI) / 8;
      const middle = point(near.x + distance * Math.cos(angle), near.y + distance * Math.sin(angle));
      const box = boxAround(middle, size);
      if (taken.free(box)) {
        taken.addBox(box);
        return middle;
      }
    }
  return undefined;
}

export const boxAround = (middle: Point, size: { readonly width: number; readonly height: number }): Box => ({
  minX: middle.x - size.width / 2,
  maxX: middle.x + size.width / 2,
  minY: middle.y - size.height / 2,
  maxY: middle.y + size.height / 2,
});

/**
 * Largest free upright box on a page, found on a grid of `cell` mm, no smaller than `least`.
 *
 * @param allowed a further condition on a cell's middle, such as lying inside the panel
 * @source largest rectangle under a histogram, row by row: sources.md#largest-rectangle
 */
export function largestFree(
  taken: Occupied,
  least: { readonly width: number; readonly height: number },
  allowed: (middle: Point) => boolean,
  cell = 4,
): Box | undefined {
  const { within } = taken;
  const columns = Math.floor((within.maxX - within.minX) / cell);
  const rows = Math.floor((within.maxY - within.minY) / cell);
  const heights = new Array<number>(columns).fill(0);
  let best: Box | undefined;
  let bestArea = 0;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const middle = point(within.minX + (column + 0.5) * cell, within.minY + (row + 0.5) * cell);
      const free = taken.free(boxAround(middle, { width: cell, height: cell })) && allowed(middle);
      heights[column] = free ? heights[column]! + 1 : 0;
    }
    for (const { from, to, height } of bars(heights)) {
      const [width, tall] = [(to - from) * cell, height * cell];
      if (width < least.width || tall < least.height || width * tall <= bestArea) continue;
      bestArea = width * tall;
      const top = within.minY + (row + 1) * cell;
      best = { minX: within.minX + from * cell, maxX: within.minX + to * cell, minY: top - tall, maxY: top };
    }
  }
  return best;
}

/** Every rectangle under a histogram that cannot be made wider at its height. */
function bars(
  heights: readonly number[],
): { readonly from: number; readonly to: number; readonly height: number }[] {
  const open: { from: number; height: number }[] = [];
  const found: { from: number; to: number; height: number }[] = [];
  for (let i = 0; i <= heights.length; i++) {
    const height = heights[i] ?? 0;
    let from = i;
    while (open.length > 0 && open.at(-1)!.height > height) {
      const bar = open.pop()!;
      found.push({ from: bar.from, to: i, height: bar.height });
      from = bar.from;
    }
    if (height > 0 && open.at(-1)?.height !== height) open.push({ from, height });
  }
  return found;
}
