import type { Prepared } from '../prepared.ts';
import type { BlockedRegion } from '../shape/blockedRegion.ts';

/** A convex blocked part set at its place in the strip. */
interface Blocker {
  readonly region: BlockedRegion;
  readonly part: number;
  readonly atX: number;
  readonly atY: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What lies on the strip so far, by item. */
export interface Placed {
  readonly items: readonly number[];
  readonly variant: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** By variant, where its last copy found its spot: the cloth only fills, so the next is looked for from a piece before. */
  readonly last: Float64Array;
  /** Blockers visited so far, the measure of work. */
  visits: number;
}

/** Rough cost of one search, in blocker visits; the number of lines tried falls as the blockers grow. */
const VISITS = 60_000;

/**
 * The leftmost free spot of a variant among the placed pieces; lower first among equals.
 *
 * On a line across at height y every convex blocked part forbids one interval of x, so the leftmost free x is
 * found exactly. Lines run where parts begin and end (touching corners) and between them (valleys, refined by
 * halving), so the result is always free, and leftmost to the fineness of the lines.
 *
 * @returns undefined when nothing is free before `limit`
 */
export function leftmostSpot(prep: Prepared, placed: Placed, v: number, limit: number): Spot | undefined {
  const variant = prep.variants[v]!;
  const top = prep.height - variant.height;
  const floor = Math.max(0, placed.last[v]! - variant.width);
  const blockers = blockersFor(prep, placed, v, top, floor, limit);
  const free = (y: number, before: number) => leftmostOnLine(blockers, y, prep.touch, floor, before);
  const lines = linesToTry(blockers, top, prep.touch);
  placed.visits += lines.length * (blockers.length + 4);
  const found = lines.map((y) => ({ y, x: free(y, limit) }));
  let best: Spot | undefined;
  for (const spot of found)
    if (spot.x < limit && (best === undefined || spot.x < best.x - prep.touch)) best = spot;
  const valleys = found
    .map((spot, k) => ({ spot, k }))
    .filter(
      ({ spot, k }) => spot.x <= (found[k - 1]?.x ?? Infinity) && spot.x <= (found[k + 1]?.x ?? Infinity),
    )
    .sort((a, b) => a.spot.x - b.spot.x || a.spot.y - b.spot.y)
    .slice(0, 4);
  for (const { spot, k } of valleys) {
    if (spot.x >= limit) continue;
    const refined = refine(free, spot, lines[k - 1] ?? 0, lines[k + 1] ?? top, prep.touch);
    if (best === undefined || refined.x < best.x - prep.touch) best = refined;
  }
  return best;
}

function blockersFor(
  prep: Prepared,
  placed: Placed,
  v: number,
  top: number,
  floor: number,
  limit: number,
): readonly Blocker[] {
  const out: Blocker[] = [];
  for (const i of placed.items) {
    const [atX, atY] = [placed.x[i]!, placed.y[i]!];
    if (atX + prep.variants[placed.variant[i]!]!.width <= floor) continue;
    const region = prep.coverRegion(placed.variant[i]!, v);
    for (let part = 0; part < region.parts; part++) {
      const b = 4 * part;
      const [minY, maxY] = [atY + region.box[b + 1]!, atY + region.box[b + 3]!];
      const [minX, maxX] = [atX + region.box[b]!, atX + region.box[b + 2]!];
      if (maxY <= prep.touch || minY >= top - prep.touch) continue;
      if (maxX <= floor + prep.touch || minX >= limit) continue;
      out.push({ region, part, atX, atY, minX, minY, maxX, maxY });
    }
  }
  return out.sort((a, b) => a.minX - b.minX);
}

function linesToTry(blockers: readonly Blocker[], top: number, touch: number): readonly number[] {
  const ends = [0, top];
  for (const { minY, maxY } of blockers) {
    if (minY > 0 && minY < top) ends.push(minY);
    if (maxY > 0 && maxY < top) ends.push(maxY);
  }
  const most = Math.max(24, Math.min(400, Math.floor(VISITS / (blockers.length + 1))));
  let lines = distinct(ends, touch);
  const stride = Math.ceil(lines.length / most);
  if (stride > 1) lines = lines.filter((_, k) => k % stride === 0 || k === lines.length - 1);
  const between = Math.min(3, Math.floor(most / lines.length));
  const all = lines.flatMap((y, k) => {
    const gap = (lines[k + 1] ?? y) - y;
    if (gap < 1e4 * touch) return [y];
    return [y, ...Array.from({ length: between }, (_, i) => y + (gap * (i + 1)) / (between + 1))];
  });
  return all;
}

function distinct(values: number[], touch: number): number[] {
  values.sort((a, b) => a - b);
  return values.filter((value, k) => k === 0 || value - values[k - 1]! > touch / 4);
}

/** Leftmost free x at height y, or `before` when there is none smaller. */
function leftmostOnLine(
  blockers: readonly Blocker[],
  y: number,
  touch: number,
  floor: number,
  before: number,
): number {
  let x = floor;
  for (let moved = true; moved; ) {
    moved = false;
    for (const b of blockers) {
      if (b.minX >= x - touch) break;
      if (b.maxX <= x + touch || y <= b.minY + touch || y >= b.maxY - touch) continue;
      const end = endIfInside(b, x, y, touch);
      if (end <= x) continue;
      x = end;
      moved = true;
      if (x >= before) return before;
    }
  }
  return x;
}

/** Right end of the blocker's interval at height y if it holds x deeper than a touch, else -Infinity. */
function endIfInside(b: Blocker, x: number, y: number, touch: number): number {
  const { start, nx, ny, c } = b.region;
  const [dx, dy] = [x - b.atX, y - b.atY];
  let end = b.maxX - b.atX;
  for (let h = start[b.part]!; h < start[b.part + 1]!; h++) {
    const room = c[h]! - ny[h]! * dy;
    if (room - nx[h]! * dx <= touch) return -Infinity;
    if (nx[h]! > 1e-12) end = Math.min(end, room / nx[h]!);
  }
  return end + b.atX;
}

/** Halves towards the lower x between two neighbouring lines. */
function refine(
  free: (y: number, before: number) => number,
  from: Spot,
  low: number,
  high: number,
  touch: number,
): Spot {
  let best = from;
  let step = Math.max(high - from.y, from.y - low) / 2;
  for (let k = 0; k < 40 && step > touch / 4; k++) {
    const [up, down] = [Math.min(high, best.y + step), Math.max(low, best.y - step)];
    const [xUp, xDown] = [free(up, best.x), free(down, best.x)];
    if (xUp < best.x && xUp <= xDown) best = { x: xUp, y: up };
    else if (xDown < best.x) best = { x: xDown, y: down };
    else step /= 2;
  }
  return best;
}
