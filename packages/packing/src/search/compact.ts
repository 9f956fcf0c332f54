import { lengthOf, type Prepared } from '../prepared.ts';
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

const ROUNDS = 10;
/** Elementary operations of the linear program in the time of one evaluation. */
const OPERATIONS_PER_EVALUATION = 150;
const MOST_ROWS = 1600;

/**
 * Slides all pieces at once, none turning, to shorten the lay: for every near pair of convex parts the half-plane
 * that separates them best is kept as a constraint, and a linear program finds the shortest strip within a trust
 * region; the half-planes are chosen anew until nothing moves. From a lay with overlap it first finds the least
 * greatest overlap within `longest`, so a near miss may come out true; it gives up when that hardly lessens.
 *
 * @source sources.md#li-milenkovic-1995 (compaction and separation), #gomes-oliveira-2006
 */
export function compact(
  prep: Prepared,
  from: Snapshot,
  length: number,
  longest: number,
  reach: number,
): Compacted {
  // Every piece touches one at least, most touch three.
  if (prep.items.length > MOST_ROWS / 2)
    return { lay: from, length, worst: Number.POSITIVE_INFINITY, cost: 0 };
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
    const overlapping = worst > prep.touch;
    const next = slide(prep, lay, { length, longest, trust, overlap: overlapping ? worst : 0 }, contacts);
    cost += Math.ceil((next.work + 400 * contacts.length) / OPERATIONS_PER_EVALUATION);
    const after = worstOverlap(contactsOf(prep, next.lay, 0));
    if (overlapping ? after > 0.8 * worst && after > prep.touch : after > prep.touch * 1.2) break;
    const gained = length - next.length;
    lay = next.lay;
    length = next.length;
    worst = after;
    if (!overlapping && gained < 1e-7 * prep.height) break;
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
  const movable = prep.items.length;
  for (let i = 0; i < n; i++) {
    const a = prep.variants[variant[i]!]!;
    for (let j = 0; j < n; j++) {
      // One order per pair: regions are kept for the lower variant first.
      if (i === j || (i >= movable && j >= movable)) continue;
      if (variant[i]! > variant[j]! || (variant[i] === variant[j] && i > j)) continue;
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

interface Room {
  readonly length: number;
  readonly longest: number;
  readonly trust: number;
  /** Greatest overlap to be lessened; 0 to shorten instead. */
  readonly overlap: number;
}

/** Columns: dx of each item, dy of each, shortening of the strip, lessening of the greatest overlap. */
function slide(prep: Prepared, lay: Snapshot, room: Room, contacts: readonly Contact[]) {
  const { length, trust, overlap } = room;
  const n = lay.x.length;
  const columns = 2 * n + 2;
  const ends = endsNear(prep, lay, length, trust);
  const count = contacts.length + ends.length;
  const start = new Int32Array(count + 1);
  const slack = new Float64Array(count);
  const column: number[] = [];
  const value: number[] = [];
  contacts.forEach((contact, r) => {
    const { i, j, nx, ny } = contact;
    column.push(i, n + i, j, n + j);
    value.push(nx, ny, -nx, -ny);
    if (overlap > 0) {
      column.push(columns - 1);
      value.push(1);
    }
    start[r + 1] = column.length;
    // A hair of room, different for each row, keeps the simplex from cycling; well inside the touch tolerance.
    slack[r] = Math.max(0, contact.slack + overlap) + prep.touch * 0.01 * (1 + ((r * 0.618034) % 1));
  });
  ends.forEach((end, k) => {
    column.push(end.i, columns - 2);
    value.push(1, 1);
    start[contacts.length + k + 1] = column.length;
    slack[contacts.length + k] = end.slack;
  });
  const rows = { start, column: Int32Array.from(column), value: Float64Array.from(value) };
  const { gain, lower, upper } = bounds(prep, lay, room);
  const { z, work } = maximise(gain, lower, upper, rows, slack, 6 * columns + 200);
  return { ...moved(prep, lay, z), work };
}

function endsNear(prep: Prepared, lay: Snapshot, length: number, trust: number) {
  return prep.items
    .map((_, i) => ({
      i,
      slack: Math.max(0, length - lay.x[i]! - prep.variants[lay.variant[i]!]!.width),
    }))
    .filter(({ slack }) => slack < 3 * trust);
}

function bounds(prep: Prepared, lay: Snapshot, { length, longest, trust, overlap }: Room) {
  const n = lay.x.length;
  const lower = new Float64Array(2 * n + 2);
  const upper = new Float64Array(2 * n + 2);
  // Reserved places, after the items, keep bounds of 0.
  for (let i = 0; i < prep.items.length; i++) {
    const v = prep.variants[lay.variant[i]!]!;
    lower[i] = -Math.min(trust, Math.max(0, lay.x[i]!));
    upper[i] = trust;
    lower[n + i] = -Math.min(trust, Math.max(0, lay.y[i]!));
    upper[n + i] = Math.min(trust, Math.max(0, prep.height - v.height - lay.y[i]!));
  }
  // Either the overlap is lessened, for which the strip may grow again, or the strip is shortened.
  if (overlap > 0) lower[2 * n] = -Math.min(trust, Math.max(0, longest - length));
  else upper[2 * n] = trust;
  upper[2 * n + 1] = overlap;
  const gain = new Float64Array(2 * n + 2);
  gain[2 * n] = overlap > 0 ? 1e-3 : 1;
  gain[2 * n + 1] = 1;
  return { gain, lower, upper };
}

function moved(prep: Prepared, lay: Snapshot, z: Float64Array) {
  const n = lay.x.length;
  const count = prep.items.length;
  const x = lay.x.map((value, i) => (i < count ? Math.max(0, value + z[i]!) : value));
  const y = lay.y.map((value, i) => {
    if (i >= count) return value;
    const top = prep.height - prep.variants[lay.variant[i]!]!.height;
    return Math.min(top, Math.max(0, value + z[n + i]!));
  });
  return { lay: { variant: lay.variant, x, y }, length: lengthOf(prep, lay.variant, x) };
}
