import { nearest, normalAt, type Outline, pointAt } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import type { Face } from './erosion.ts';
import { type Meeting, type MeetingInput, meeting, type PocketPlace } from './meeting.ts';
import { patchAt } from './pocket.ts';

/** A change that lets the two magnets meet, with what it gives: every one was worked out again, none is a guess. */
export type MeetingProposal =
  | { readonly code: 'LARGER_POCKET'; readonly pocket: number; readonly meeting: Meeting }
  | {
      readonly code: 'OTHER_MAGNETS';
      readonly outside: string;
      readonly inside: string;
      readonly meeting: Meeting;
    }
  | {
      readonly code: 'MOVED_ALONG';
      readonly by: number;
      readonly place: PocketPlace;
      readonly meeting: Meeting;
    };

/** What may be changed about a hold point whose magnets do not meet. */
export interface MeetingOptions {
  /** The panel's outline its patches are trimmed to, and the finished edge feet stand on. */
  readonly trim: Outline;
  readonly finished: Outline;
  /** Width and depth of the patch now, and the widest the shop would sew. */
  readonly pocket: number;
  readonly mostPocket: number;
  /** Other pairs in the order they are to be tried: strongest first. */
  readonly pairs: readonly {
    readonly outside: string;
    readonly inside: string;
    readonly outsideFace: Face;
    readonly insideFace: Face;
  }[];
  /** How far the point may be moved along the edge, either way. */
  readonly mostMove: number;
}

/** Patches are drawn in steps of an eighth of an inch. Common practice, no source. */
const POCKET_STEP = 3.175;
/** Hold points are moved in steps of a quarter of an inch. Common practice, no source. */
const MOVE_STEP = 6.35;

/**
 * What would let the magnets of a refused hold point meet: the smallest larger patch, the first other pair, the
 * shortest move along the edge. Each proposal carries the meeting it was found by.
 *
 * @returns one proposal of each kind at most; none where nothing tried will do
 * @source every proposal is `meeting` worked out again
 */
export function meetingProposals(input: MeetingInput, options: MeetingOptions): readonly MeetingProposal[] {
  return [largerPocket(input, options), otherMagnets(input, options), movedAlong(input, options)].filter(
    (proposal) => proposal !== null,
  );
}

function largerPocket(input: MeetingInput, options: MeetingOptions): MeetingProposal | null {
  const { foot, inward } = input.place;
  for (let size = options.pocket + POCKET_STEP; size <= options.mostPocket; size += POCKET_STEP) {
    const pocket = patchAt(options.trim, foot, inward, size);
    if (!pocket) return null;
    const found = meeting({ ...input, place: { pocket, foot, inward } });
    if (found.ok) return { code: 'LARGER_POCKET', pocket: size, meeting: found.value };
  }
  return null;
}

function otherMagnets(input: MeetingInput, { pairs }: MeetingOptions): MeetingProposal | null {
  for (const { outside, inside, outsideFace, insideFace } of pairs) {
    const found = meeting({ ...input, outside: outsideFace, inside: insideFace });
    if (found.ok) return { code: 'OTHER_MAGNETS', outside, inside, meeting: found.value };
  }
  return null;
}

function movedAlong(input: MeetingInput, options: MeetingOptions): MeetingProposal | null {
  const here = nearest(options.finished, input.place.foot).s;
  for (let by = MOVE_STEP; by <= options.mostMove; by += MOVE_STEP)
    for (const side of [1, -1]) {
      const place = pocketOnEdge(options, here + side * by);
      if (!place) continue;
      const found = meeting({ ...input, place });
      if (found.ok) return { code: 'MOVED_ALONG', by: side * by, place, meeting: found.value };
    }
  return null;
}

/**
 * A pocket whose foot stands a distance along the finished edge, square to it.
 *
 * @param s mm from the outline's start, taken round the ring
 * @returns null where the panel leaves no patch in one piece there
 */
export function pocketOnEdge(
  options: Pick<MeetingOptions, 'trim' | 'finished' | 'pocket'>,
  s: number,
): PocketPlace | null {
  const foot = pointAt(options.finished, mm(s));
  const normal = normalAt(options.finished, mm(s));
  const inward = Math.atan2(-normal.y, -normal.x);
  const pocket = patchAt(options.trim, foot, inward, options.pocket);
  return pocket && { pocket, foot, inward };
}
