import type { Prepared } from '../prepared.ts';
import type { BlockedRegion } from '../shape/blockedRegion.ts';
import type { Snapshot } from './board.ts';
import { maximise } from './simplex.ts';

/** n . (p_j - p_i) >= c must hold; `slack` is by how much it does. */
interface Contact {
  readonly i: number;
  readonly j: number;
  readonly nx: number;
  readonly ny: number;
  readonly slack: number;
}

export interface Compacted {
  readonly lay: Snapshot;
  readonly length: number;
  /** Greatest overlap left, in length; 0 or less when the lay is free of overlap. */
  readonly worst: number;
  /** Rough cost in evaluations. */
  readonly cost: number;
}

const ROUNDS = 8;
const MOST_ROWS = 1600;

/**
 * Slides all pieces at once, none turning, to shorten the lay: for every near pair of convex parts the half-plane
 * that separates them best is kept as a constraint, and a linear program finds the shortest strip within a trust
 * region; the half-planes are chosen anew until nothing moves. From a lay with overlap it first finds the least
 * greatest overlap, so a near miss may come out true.
 *
 * @source sources.md#li-milenkovic-1995 (compaction and separation), #gomes-oliveira-2006
 */
export function compact(prep: Prepared, from: Snapshot, length: number, reach: number): Compacted {
  let lay = from;
  let worst = worstOverlap(contactsOf(prep, lay, 0));
  let cost = 0;
  let trust = reach;
  for (let round = 0; round < ROUNDS; round++) {
    const contacts = contactsOf(prep, lay, 3 * trust);
    if (contacts.length > MOST_ROWS) {
      if (trust < 0.1 * reach) break;
      trust /= 2;
      continue;
    }
    const moved = slide(prep, lay, length, contacts, trust);
    cost += 4 * contacts.length * lay.x.length;
    const after = worstOverlap(contactsOf(prep, moved.lay, 0));
    const gained = length - moved.length + (worst - Math.max(0, after));
    if (Math.max(0, after) > Math.max(0, worst) + prep.touch / 4) break;
    if (worst <= prep.touch && moved.length > length) break;
    lay = moved.lay;
    length = moved.length;
    worst = after;
    if (gained < 1e-7 * prep.height) break;
  }
  return { lay, length, worst, cost };
}

function worstOverlap(contacts: readonly Contact[]): number {
  return contacts.reduce((most, { slack }) => Math.max(most, -slack), 0);
}

/** The best separating half-plane of every pair of convex parts that has less slack than `within`. */
function contactsOf(prep: Prepared, lay: Snapshot, within: number): readonly Contact[] {
  const { variant, x, y } = lay;
  const out: Contact[] = [];
  const n = x.length;
  for (let i = 0; i < n; i++) {
    const a = prep.variants[variant[i]!]!;
    for (let j = 0; j < n; j++) {
      // One order per pair: regions are kept for the lower variant first.
      if (i === j || variant[i]! > variant[j]! || (variant[i] === variant[j] && i > j)) continue;
      const b = prep.variants[variant[j]!]!;
      const [dx, dy] = [x[j]! - x[i]!, y[j]! - y[i]!];
      if (dx >= a.width + within || -dx >= b.width + within) continue;
      if (dy >= a.height + within || -dy >= b.height + within) continue;
      addContacts(out, prep.region(variant[i]!, variant[j]!), i, j, dx, dy, within);
    }
  }
  return out;
}

function addContacts(
  out: Contact[],
  region: BlockedRegion,
  i: number,
  j: number,
  dx: number,
  dy: number,
  within: number,
): void {
  const { start, nx, ny, c, box } = region;
  for (let p = 0; p < region.parts; p++) {
    const b = 4 * p;
    const apart = Math.max(box[b]! - dx, dx - box[b + 2]!, box[b + 1]! - dy, dy - box[b + 3]!);
    if (apart >= within) continue;
    let best = -1;
    let slack = Number.NEGATIVE_INFINITY;
    for (let h = start[p]!; h < start[p + 1]!; h++) {
      const s = nx[h]! * dx + ny[h]! * dy - c[h]!;
      if (s <= slack) continue;
      slack = s;
      best = h;
      if (s >= within) break;
    }
    if (slack < within) out.push({ i, j, nx: nx[best]!, ny: ny[best]!, slack });
  }
}

/** Columns: dx of each item, dy of each, shortening of the strip, lessening of the greatest overlap. */
function slide(prep: Prepared, lay: Snapshot, length: number, contacts: readonly Contact[], trust: number) {
  const n = lay.x.length;
  const columns = 2 * n + 2;
  const overlap = worstOverlap(contacts);
  const ends = endsNear(prep, lay, length, trust);
  const rows = contacts.length + ends.length;
  const a = new Float64Array(rows * columns);
  const room = new Float64Array(rows);
  contacts.forEach(({ i, j, nx, ny, slack }, r) => {
    const row = r * columns;
    a[row + i] = nx;
    a[row + n + i] = ny;
    a[row + j] = -nx;
    a[row + n + j] = -ny;
    a[row + columns - 1] = overlap > 0 ? 1 : 0;
    // A hair of room, different for each row, keeps the simplex from cycling; well inside the touch tolerance.
    room[r] = Math.max(0, slack + overlap) + prep.touch * 0.01 * (1 + ((r * 0.618034) % 1));
  });
  ends.forEach(({ i, slack }, k) => {
    const row = (contacts.length + k) * columns;
    a[row + i] = 1;
    a[row + columns - 2] = 1;
    room[contacts.length + k] = slack;
  });
  const { gain, lower, upper } = bounds(prep, lay, length, trust, overlap);
  const z = maximise(gain, lower, upper, a, room, 6 * columns + 200);
  return moved(prep, lay, z);
}

function endsNear(prep: Prepared, lay: Snapshot, length: number, trust: number) {
  return Array.from(lay.x, (x, i) => ({
    i,
    slack: Math.max(0, length - x - prep.variants[lay.variant[i]!]!.width),
  })).filter(({ slack }) => slack < 3 * trust);
}

function bounds(prep: Prepared, lay: Snapshot, length: number, trust: number, overlap: number) {
  const n = lay.x.length;
  const lower = new Float64Array(2 * n + 2);
  const upper = new Float64Array(2 * n + 2);
  for (let i = 0; i < n; i++) {
    const v = prep.variants[lay.variant[i]!]!;
    lower[i] = -Math.min(trust, Math.max(0, lay.x[i]!));
    upper[i] = trust;
    lower[n + i] = -Math.min(trust, Math.max(0, lay.y[i]!));
    upper[n + i] = Math.min(trust, Math.max(0, prep.height - v.height - lay.y[i]!));
  }
  // Coming free of overlap may cost length; it is worth any.
  lower[2 * n] = overlap > prep.touch ? -Math.min(trust, 0.02 * length) : 0;
  upper[2 * n] = trust;
  upper[2 * n + 1] = overlap;
  const gain = new Float64Array(2 * n + 2);
  gain[2 * n] = 1;
  gain[2 * n + 1] = 1000;
  return { gain, lower, upper };
}

function moved(prep: Prepared, lay: Snapshot, z: Float64Array) {
  const n = lay.x.length;
  const x = lay.x.map((value, i) => Math.max(0, value + z[i]!));
  const y = lay.y.map((value, i) => {
    const top = prep.height - prep.variants[lay.variant[i]!]!.height;
    return Math.min(top, Math.max(0, value + z[n + i]!));
  });
  let end = 0;
  x.forEach((value, i) => {
    end = Math.max(end, value + prep.variants[lay.variant[i]!]!.width);
  });
  return { lay: { variant: lay.variant, x, y }, length: end };
}
