import type { Lay, Prepared } from '../prepared.ts';
import type { BlockedRegion } from '../shape/blockedRegion.ts';

/** Which way a piece slides: back to the cut end, or down across the cloth. */
export type Way = 'back' | 'down';

/** What stops a sliding piece, and how far off it is: another copy, a reserved place (after the items), or the edge. */
export interface Stop {
  readonly gap: number;
  /** Index in the lay; -1 is the edge of the cloth. */
  readonly by: number;
}

/**
 * What a piece meets when it slides, the other pieces lying where they are.
 *
 * @param within stops farther off than this are left out
 * @returns every stop met; the edge last
 */
export function stopsOf(prep: Prepared, lay: Lay, i: number, way: Way, within = Infinity): readonly Stop[] {
  const { variant, x, y } = lay;
  const [along, across] = way === 'back' ? [x, y] : [y, x];
  const edge = along[i]!;
  const most = Math.min(within, edge);
  const own = prep.variants[variant[i]!]!;
  const ownTall = way === 'back' ? own.height : own.width;
  const stops: Stop[] = [];
  for (let j = 0; j < x.length; j++) {
    if (j === i) continue;
    const other = prep.variants[variant[j]!]!;
    const [length, tall] = way === 'back' ? [other.width, other.height] : [other.height, other.width];
    const off = across[i]! - across[j]!;
    if (off >= tall - prep.touch || off <= prep.touch - ownTall) continue;
    if (along[j]! >= along[i]! + length || along[i]! - along[j]! - length > most) continue;
    const gap = gapTo(prep, variant[j]!, variant[i]!, x[i]! - x[j]!, y[i]! - y[j]!, way);
    if (gap <= most) stops.push({ gap, by: j });
  }
  if (edge <= within) stops.push({ gap: edge, by: -1 });
  return stops;
}

/** How far variant b, at (dx, dy) from variant a, slides until it touches it; Infinity where it passes. */
function gapTo(prep: Prepared, a: number, b: number, dx: number, dy: number, way: Way): number {
  const region = prep.region(a, b);
  let least = Infinity;
  for (let p = 0; p < region.parts; p++)
    least = Math.min(
      least,
      way === 'back'
        ? gapIn(region, p, region.nx, region.ny, dx, dy, prep.touch)
        : gapIn(region, p, region.ny, region.nx, dy, dx, prep.touch),
    );
  return least;
}

/**
 * The same for one convex part: on the line it slides along, the part forbids an interval. The interval is looked for a
 * touch within the part, so that what touches sideways passes; it ends at the part's own edge.
 */
function gapIn(
  { start, c }: BlockedRegion,
  part: number,
  along: Float64Array,
  across: Float64Array,
  at: number,
  off: number,
  touch: number,
): number {
  let [low, high, end] = [-Infinity, Infinity, Infinity];
  for (let h = start[part]!; h < start[part + 1]!; h++) {
    const n = along[h]!;
    const room = c[h]! - across[h]! * off;
    if (n > 1e-12) {
      high = Math.min(high, (room - touch) / n);
      end = Math.min(end, room / n);
    } else if (n < -1e-12) low = Math.max(low, (room - touch) / n);
    else if (room <= touch) return Infinity;
  }
  if (low >= high || low >= at) return Infinity;
  return Math.max(0, at - end);
}
