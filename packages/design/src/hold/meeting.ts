import {
  crossingsOf,
  distanceBetween,
  edges,
  inscribedCircle,
  intersect,
  type Outline,
  offset,
  type Point,
  point,
  signedDistance,
} from '@panewright/geometry';
import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { centresWithin, type Face, grown } from './erosion.ts';

/** A pocket as sewn, with the foot it is turned to. */
export interface PocketPlace {
  readonly pocket: Outline;
  /** On the panel's finished edge. */
  readonly foot: Point;
  /** Direction into the panel, radians. A block lies with its width square to it. */
  readonly inward: number;
}

/** One hold point and the glass behind it, all in one frame, mm. */
export interface MeetingInput {
  readonly place: PocketPlace;
  /** Edge the magnet may not pass at the panel's rim: the band's inner edge, or the finished edge. */
  readonly room: Outline;
  /** From the pocket's edge to its seam. */
  readonly seam: number;
  readonly outside: Face;
  /** Left round the outside magnet so that it goes into its pocket. */
  readonly ease: number;
  /** Edge of the glass as seen from inside. */
  readonly glass: Outline;
  readonly inside: Face;
  /** Bare glass wanted round the inside magnet, for its tape. */
  readonly tapeMargin: number;
  /** Glass hidden by an inner frame or flange. */
  readonly flange: number;
}

/** How far the pair may move from where it sits, in the four directions of its foot, mm. */
export interface Travel {
  /** Towards the panel's edge: what is left to draw the cloth tight. */
  readonly outward: number;
  readonly inward: number;
  /** Along the edge, anticlockwise and clockwise round the panel. */
  readonly forward: number;
  readonly back: number;
}

/** Where both magnets of a pair may be. */
export interface Meeting {
  /** For the inside magnet's centre, near this hold point or anywhere on the glass. */
  readonly inside: readonly Outline[];
  /** For the outside magnet's centre, in its pocket. */
  readonly outside: readonly Outline[];
  /** For both at once, largest first. */
  readonly both: readonly Outline[];
  /** Deepest place for both on the pocket's axis, or off it where the axis misses. */
  readonly at: Point;
  readonly travel: Travel;
}

export type MeetingRefusal =
  /** The pocket's seams and the band leave the outside magnet no place. */
  | { readonly code: 'POCKET_TOO_SMALL_FOR_MAGNET'; readonly room: number; readonly need: number }
  /** The glass leaves the inside magnet no place at all. */
  | { readonly code: 'GLASS_TOO_SMALL_FOR_MAGNET'; readonly inset: number }
  /** Each has a place, `apart` mm from the other's at the nearest. */
  | { readonly code: 'MAGNETS_CANNOT_MEET'; readonly apart: number };

/**
 * Whether the two magnets of a hold point can stand opposite one another, and how far they may move.
 *
 * The inside magnet needs its face, the tape's margin and the flange clear of the glass edge. The outside magnet needs
 * its face and the ease within its pocket's seams and the panel's band. Blocks lie with their width along the edge.
 *
 * @returns the regions as outlines with their arcs, a place for the pair, and the travel left there (mm)
 * @range outlines in one frame; both faces turned alike
 * @accuracy regions exact to 1e-5 mm; how a magnet tilts or the cloth gives is left out
 * @refuses POCKET_TOO_SMALL_FOR_MAGNET, GLASS_TOO_SMALL_FOR_MAGNET, MAGNETS_CANNOT_MEET
 * @source sources.md#minkowski-erosion
 */
export function meeting(input: MeetingInput): Result<Meeting, MeetingRefusal> {
  return meetingBehind(input, insideCentres(input, input.place.inward - Math.PI / 2));
}

/** What a plan keeps of a meeting. */
export type MeetingPlace = Pick<Meeting, 'both' | 'at' | 'travel'>;

/**
 * As `meeting` for several pockets of one panel on one glass. For two discs what the rim and the glass leave is worked out
 * once for all.
 *
 * @returns one answer for each place, in the order given
 * @source as `meeting`; erosion of what two shapes have in common is what their erosions have in common
 */
export function meetings(
  input: Omit<MeetingInput, 'place'>,
  places: readonly PocketPlace[],
): readonly Result<MeetingPlace, MeetingRefusal>[] {
  const { outside, inside, ease, seam } = input;
  if (outside.kind !== 'disc' || inside.kind !== 'disc')
    return places.map((place) => meeting({ ...input, place }));
  const behind = insideCentres(input, 0);
  const before = inset(input.room, outside.radius + ease);
  const shared = behind.flatMap((a) => before.flatMap((b) => intersect(a, b)));
  return places.map((place) => {
    const both = inset(place.pocket, seam + outside.radius + ease).flatMap((pocket) =>
      shared.flatMap((part) => intersect(part, pocket)),
    );
    if (both.length === 0) return meeting({ ...input, place });
    const at = placeIn(both, place);
    return ok({ both, at, travel: travelFrom(at, both, place.inward) });
  });
}

function meetingBehind(input: MeetingInput, inside: readonly Outline[]): Result<Meeting, MeetingRefusal> {
  const outside = outsideCentres(input, input.place.inward - Math.PI / 2);
  if (outside.length === 0) return refuse(tooSmallPocket(input));
  if (inside.length === 0)
    return refuse({ code: 'GLASS_TOO_SMALL_FOR_MAGNET', inset: input.tapeMargin + input.flange });
  const both = inside
    .flatMap((a) => outside.flatMap((b) => intersect(a, b)))
    .sort((a, b) => depthOf(b) - depthOf(a));
  if (both.length === 0) return refuse({ code: 'MAGNETS_CANNOT_MEET', apart: apartOf(inside, outside) });
  const at = placeIn(both, input.place);
  return ok({ inside, outside, both, at, travel: travelFrom(at, both, input.place.inward) });
}

/** Pocket less its seams and the band. */
function cavities({ place, room, seam }: MeetingInput): readonly Outline[] {
  return inset(place.pocket, seam).flatMap((part) => intersect(part, room));
}

function outsideCentres(input: MeetingInput, along: number): readonly Outline[] {
  const face = grown(input.outside, input.ease);
  return cavities(input).flatMap((part) => centresWithin(part, face, along));
}

function insideCentres({ glass, inside, tapeMargin, flange }: Omit<MeetingInput, 'place'>, along: number) {
  return inset(glass, tapeMargin + flange).flatMap((part) => centresWithin(part, inside, along));
}

/** Every point of an outline at least this far from its edge. */
function inset(outline: Outline, by: number): readonly Outline[] {
  if (by === 0) return [outline];
  const inner = offset(outline, mm(-by), { corners: 'round' });
  if (!inner.ok) throw new Error(`an inward offset was refused: ${inner.refusal.code}`);
  return inner.value;
}

function tooSmallPocket(input: MeetingInput): MeetingRefusal {
  const room = Math.max(0, ...cavities(input).map((part) => inscribedCircle(part).radius));
  const { outside, ease } = input;
  const need =
    outside.kind === 'disc' ? outside.radius + ease : Math.min(outside.along, outside.across) / 2 + ease;
  return { code: 'POCKET_TOO_SMALL_FOR_MAGNET', room: 2 * room, need: 2 * need };
}

const depthOf = (outline: Outline): number => inscribedCircle(outline).radius;

const apartOf = (first: readonly Outline[], second: readonly Outline[]): number =>
  Math.min(...first.flatMap((a) => second.map((b) => distanceBetween(a, b))));

/** Deepest point of the region on the pocket's axis; where the axis misses it, the deepest of all. */
function placeIn(both: readonly Outline[], { foot, inward }: PocketPlace): Point {
  const crossed = crossingsAlong(both, foot, inward).sort((a, b) => a - b);
  let best: { readonly at: Point; readonly depth: number } | null = null;
  for (let k = 0; k + 1 < crossed.length; k++) {
    const [from, to] = [crossed[k]!, crossed[k + 1]!];
    const steps = Math.max(2, Math.ceil((to - from) / 0.5));
    for (let i = 0; i <= steps; i++) {
      const t = from + ((to - from) * i) / steps;
      const at = point(foot.x + t * Math.cos(inward), foot.y + t * Math.sin(inward));
      const depth = Math.max(...both.map((part) => -signedDistance(part, at)));
      if (depth > (best?.depth ?? 0)) best = { at, depth };
    }
  }
  return best?.at ?? inscribedCircle(both[0]!).centre;
}

/** Far enough for any panel, mm. */
const FAR = 1e5;

/** Distances from a point, along a direction either way, at which the outlines are crossed. */
function crossingsAlong(outlines: readonly Outline[], from: Point, direction: number): number[] {
  const [x, y] = [Math.cos(direction), Math.sin(direction)];
  const line = {
    from: point(from.x - FAR * x, from.y - FAR * y),
    to: point(from.x + FAR * x, from.y + FAR * y),
    bulge: 0,
  };
  return outlines.flatMap((outline) =>
    edges(outline).flatMap((edge) =>
      crossingsOf(line, edge).map((p) => (p.x - from.x) * x + (p.y - from.y) * y),
    ),
  );
}

function travelFrom(at: Point, both: readonly Outline[], inward: number): Travel {
  const home = both.filter((part) => signedDistance(part, at) <= 1e-6);
  const reach = (direction: number) => {
    const ahead = crossingsAlong(home, at, direction).filter((t) => t > 1e-9);
    return ahead.length === 0 ? 0 : Math.min(...ahead);
  };
  return {
    outward: reach(inward + Math.PI),
    inward: reach(inward),
    forward: reach(inward - Math.PI / 2),
    back: reach(inward + Math.PI / 2),
  };
}
