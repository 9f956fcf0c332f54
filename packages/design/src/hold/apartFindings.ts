import type { Outline } from '@panewright/geometry';
import type { Catalogue, Magnet } from '../document/catalogue.ts';
import type { Find, FindingNumbers } from '../plan/finding.ts';
import type { PanelPlan } from '../plan/plan.ts';
import { faceOf } from './faceOf.ts';
import { type MeetingInput, type MeetingRefusal, meeting, type PocketPlace } from './meeting.ts';
import { type MeetingProposal, meetingProposals } from './meetingProposals.ts';

/** Points of one panel on one glass whose magnets do not meet. */
export interface Apart {
  readonly input: Omit<MeetingInput, 'place'>;
  readonly refused: readonly (PocketPlace & { readonly number: number })[];
  readonly panel: PanelPlan;
  readonly opening: string;
  readonly habits: Catalogue['habits'];
  readonly magnets: readonly Magnet[];
}

/** Widest patch a shop sews where it does not say, mm. Common practice, no source. */
export const MOST_POCKET = 130;
/** How far along its edge a point is moved to meet its partner, mm. Common practice, no source. */
const MOST_MOVE = 150;

/** Says which magnets cannot stand opposite one another, and what would let all of them. */
export function reportApart(apart: Apart, find: Find): void {
  const { input, refused, opening, panel } = apart;
  const answers = refused.map((place) => {
    const found = meeting({ ...input, place });
    return { place, refusal: found.ok ? null : found.refusal, proposals: proposalsFor(place, apart) };
  });
  const [first] = answers;
  if (!first?.refusal) return;
  find({
    severity: 'stop',
    code: 'MAGNETS_CANNOT_MEET',
    where: { opening, pattern: panel.pattern, point: refused.map(({ number }) => number).join(' ') },
    numbers: {
      ...lackOf(first.refusal),
      flange: input.flange,
      ...common(answers.map(({ proposals }) => proposals)),
    },
  });
}

function lackOf(refusal: MeetingRefusal): Pick<FindingNumbers['MAGNETS_CANNOT_MEET'], 'because' | 'lacking'> {
  switch (refusal.code) {
    case 'POCKET_TOO_SMALL_FOR_MAGNET':
      return { because: 'pocket', lacking: refusal.need - refusal.room };
    case 'GLASS_TOO_SMALL_FOR_MAGNET':
      return { because: 'glass', lacking: refusal.inset };
    case 'MAGNETS_CANNOT_MEET':
      return { because: 'apart', lacking: refusal.apart };
  }
}

function proposalsFor(
  place: PocketPlace,
  { input, panel, habits, magnets }: Apart,
): readonly MeetingProposal[] {
  const trim: Outline = panel.edging.kind === 'binding' ? panel.cut : panel.finished;
  return meetingProposals(
    { ...input, place },
    {
      trim,
      finished: panel.finished,
      pocket: panel.choices.hold.pocket,
      mostPocket: habits.mostPocket ?? MOST_POCKET,
      pairs: [...magnets]
        .sort((a, b) => volume(b) - volume(a))
        .map((magnet) => ({
          outside: magnet.id,
          inside: magnet.id,
          outsideFace: faceOf(magnet),
          insideFace: faceOf(magnet),
        })),
      mostMove: MOST_MOVE,
    },
  );
}

const volume = ({ shape }: Magnet): number =>
  shape.thickness *
  (shape.kind === 'disc' ? (Math.PI * shape.diameter ** 2) / 4 : shape.width * shape.height);

/** What does for all of them: the largest of the patches, a pair all can have, a move where there is one point. */
function common(
  all: readonly (readonly MeetingProposal[])[],
): Pick<FindingNumbers['MAGNETS_CANNOT_MEET'], 'pocket' | 'outside' | 'inside' | 'moved'> {
  const pockets = all.map((one) => one.find((proposal) => proposal.code === 'LARGER_POCKET'));
  const pairs = all.map((one) => one.find((proposal) => proposal.code === 'OTHER_MAGNETS'));
  const [pair] = pairs;
  const moved = all.length === 1 ? all[0]!.find((proposal) => proposal.code === 'MOVED_ALONG') : undefined;
  return {
    ...(pockets.every((one) => one !== undefined)
      ? { pocket: Math.max(...pockets.map((one) => one.pocket)) }
      : {}),
    ...(pair && pairs.every((one) => one?.outside === pair.outside)
      ? { outside: pair.outside, inside: pair.inside }
      : {}),
    ...(moved ? { moved: moved.by } : {}),
  };
}
