import {
  bounds,
  edges,
  intersect,
  invert,
  moveOutline,
  nearest,
  type Outline,
  offsetOne,
  type Point,
  point,
  type Rigid,
  type Segment,
  signedDistance,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';

/** How far a patch is drawn past the panel's edge before it is trimmed to it, mm. */
const PAST_EDGE = 60;
/** Patches that differ by less than this are cut as one, mm. */
const SAME_PATCH = 0.5;

/** A patch's own frame: its foot at the origin on the panel's edge, +y into the panel. */
export const frameAt = (foot: Point, inward: number): Rigid => ({
  angle: radian(inward - Math.PI / 2),
  shift: foot,
  mirrored: false,
});

/** Straight at the panel's edge, round inside: `size` wide and deep, mm, in the patch's own frame. */
export function patchBlank(size: number): Outline {
  const half = size / 2;
  const segments: [Segment, ...Segment[]] = [
    { kind: 'line', to: point(half, -PAST_EDGE) },
    { kind: 'line', to: point(half, half) },
    { kind: 'arc', to: point(-half, half), bulge: 1 },
    { kind: 'line', to: point(-half, -PAST_EDGE) },
  ];
  return { segments };
}

/**
 * The patch sewn at a hold point: the blank trimmed to the panel's outline, so that a corner patch follows its corner.
 *
 * @returns null where the panel leaves nothing or the patch falls into several parts
 */
export function patchAt(trim: Outline, foot: Point, inward: number, size: number): Outline | null {
  const parts = intersect(moveOutline(frameAt(foot, inward), patchBlank(size)), trim);
  return parts.length === 1 ? parts[0]! : null;
}

/** The patch as a piece to cut, in its own frame. */
export const patchPiece = (patch: Outline, foot: Point, inward: number): Outline =>
  moveOutline(invert(frameAt(foot, inward)), patch);

/** Two pieces in the same frame whose edges nowhere lie farther apart than half a millimetre. */
export function samePatch(a: Outline, b: Outline): boolean {
  const near = (from: Outline, to: Outline) =>
    edges(from).every((edge) => nearest(to, edge.from).distance <= SAME_PATCH && middleNear(edge, to));
  return near(a, b) && near(b, a);
}

function middleNear(edge: ReturnType<typeof edges>[number], to: Outline): boolean {
  const mx = (edge.from.x + edge.to.x) / 2;
  const my = (edge.from.y + edge.to.y) / 2;
  // The middle of an arc lies its rise (bulge × half chord) to the right of the chord.
  const rise = edge.bulge / 2;
  const middle = point(mx + rise * (edge.to.y - edge.from.y), my - rise * (edge.to.x - edge.from.x));
  return nearest(to, middle).distance <= SAME_PATCH;
}

/** Room for a magnet: the largest circle centred on the patch's axis that the seams and the band leave. */
export interface Cavity {
  readonly centre: Point;
  readonly radius: number;
}

/**
 * Largest circle on the patch's axis inside the patch's seam and the band's inner edge.
 *
 * @param room edge the magnet may not pass at the panel's rim (the band's inner edge, or the finished edge)
 * @param seam from the patch's edge to its seam, mm
 * @returns null where no circle fits
 */
export function cavityOf(
  patch: Outline,
  room: Outline,
  foot: Point,
  inward: number,
  seam: number,
): Cavity | null {
  const seamLine = offsetOne(patch, mm(-seam));
  if (!seamLine.ok) return null;
  const at = (t: number) => point(foot.x + t * Math.cos(inward), foot.y + t * Math.sin(inward));
  const clear = (t: number) => {
    const p = at(t);
    return Math.min(depthIn(seamLine.value, p), depthIn(room, p));
  };
  const best = highest(clear, 0, boundsDiagonal(patch));
  return best.value > 0 ? { centre: at(best.at), radius: best.value } : null;
}

const depthIn = (outline: Outline, p: Point): number => -signedDistance(outline, p);

function boundsDiagonal(outline: Outline): number {
  const box = bounds(outline);
  return Math.hypot(box.width, box.height);
}

/** Highest value of a function with one broad peak: sampled, then narrowed by golden section. */
function highest(value: (t: number) => number, from: number, to: number): { at: number; value: number } {
  const steps = 40;
  const width = (to - from) / steps;
  let peak = from;
  let top = value(from);
  for (let k = 1; k <= steps; k++) {
    const here = value(from + k * width);
    if (here > top) {
      top = here;
      peak = from + k * width;
    }
  }
  return golden(value, peak - width, peak + width);
}

function golden(value: (t: number) => number, from: number, to: number): { at: number; value: number } {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [p, q] = [b - ratio * (b - a), a + ratio * (b - a)];
  let [atP, atQ] = [value(p), value(q)];
  while (b - a > 0.01) {
    if (atP > atQ) {
      [b, q, atQ] = [q, p, atP];
      p = b - ratio * (b - a);
      atP = value(p);
    } else {
      [a, p, atP] = [p, q, atQ];
      q = a + ratio * (b - a);
      atQ = value(q);
    }
  }
  const at = (a + b) / 2;
  return { at, value: value(at) };
}
