import {
  edges,
  invert,
  moveOutline,
  type Outline,
  point,
  type Rigid,
  type Segment,
  startingAt,
} from '@panewright/geometry';
import { sameEntries } from '../derive/remember.ts';

/** The last mean of each first member: the same outlines and places give the same object, so that what follows is kept. */
const known = new WeakMap<
  Outline,
  { readonly from: readonly unknown[]; readonly mean: Outline | undefined }
>();

/**
 * The mean of outlines that one pattern serves, in the frame of the pattern: corner by corner and bend by bend.
 *
 * @param places take the pattern onto each outline
 * @returns mm; undefined where the outlines are not made of the same lines and arcs in the same order
 * @source none: the mean of each coordinate
 */
export function meanOutline(
  [first, ...others]: readonly Outline[],
  places: readonly Rigid[],
): Outline | undefined {
  if (!first) return undefined;
  const from = [...others, ...places.map((place) => JSON.stringify(place))];
  const kept = known.get(first);
  if (kept && sameEntries(kept.from, from)) return kept.mean;
  const mean = meanOf(
    moveOutline(invert(places[0]!), first),
    others.map((outline, k) => moveOutline(invert(places[k + 1]!), outline)),
  );
  known.set(first, { from, mean });
  return mean;
}

function meanOf(first: Outline, others: readonly Outline[]): Outline | undefined {
  const rings = [first];
  for (const other of others) {
    const ring = startedAlike(first, other);
    if (!ring) return undefined;
    rings.push(ring);
  }
  const average = (of: (ring: Outline) => number) =>
    rings.reduce((sum, ring) => sum + of(ring), 0) / rings.length;
  const segments = first.segments.map((segment, k): Segment => {
    const to = point(
      average((ring) => ring.segments[k]!.to.x),
      average((ring) => ring.segments[k]!.to.y),
    );
    return segment.kind === 'line'
      ? { kind: 'line', to }
      : { kind: 'arc', to, bulge: average((ring) => bulgeOf(ring, k)) };
  });
  return { segments: segments as unknown as Outline['segments'] };
}

const bulgeOf = ({ segments }: Outline, k: number): number => {
  const segment = segments[k]!;
  return segment.kind === 'arc' ? segment.bulge : 0;
};

/** The ring begun where it lies nearest to the first, segment for segment of the same kind. */
function startedAlike(first: Outline, other: Outline): Outline | undefined {
  const wanted = edges(first);
  if (other.segments.length !== wanted.length) return undefined;
  let best: { readonly ring: Outline; readonly off: number } | undefined;
  for (let k = 0; k < wanted.length; k++) {
    const ring = startingAt(other, k);
    const alike = edges(ring).every(
      (edge, i) => edge.kind === wanted[i]!.kind && Math.sign(edge.bulge) === Math.sign(wanted[i]!.bulge),
    );
    if (!alike) continue;
    const off = ring.segments.reduce(
      (sum, { to }, i) => sum + (to.x - wanted[i]!.to.x) ** 2 + (to.y - wanted[i]!.to.y) ** 2,
      0,
    );
    if (!best || off < best.off) best = { ring, off };
  }
  return best?.ring;
}
