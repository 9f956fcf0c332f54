import { mirrorAbout, moveOutline, type Rigid } from '@panewright/geometry';
import type { Fabric } from '../document/catalogue.ts';
import type { Choices } from '../document/job.ts';
import type { CutPiece, PatternMember } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';

/** Turns nearer than this to a quarter are that quarter: a survey's noise does not turn the cloth, degrees. */
const QUARTER_SLACK = 3;

/** How the length of the roll runs on all pieces of a cloth, where they are to lie one way; null leaves each as it may lie. */
export type Way = 'warpUp' | 'warpAcross';

/**
 * Every kind of piece to be cut, with how often, for which openings, and how it may be turned on the cloth.
 * Panels of one pattern are one piece; where the cloth's faces differ, the ones turned over are a piece of their own.
 */
export function cutPieces(made: readonly Made[], way: Way | null = null): readonly CutPiece[] {
  const panels = made.flatMap((one) => panelPieces(one, way));
  return [...panels, ...pocketPieces(made, way)];
}

function panelPieces(one: Made, way: Way | null): CutPiece[] {
  const { pattern, panel, materials } = one;
  const groups = new Map<string, { member: PatternMember; openings: string[]; turns: readonly number[] }>();
  for (const member of pattern.members) {
    const turns = turnsOf(member, grainOf(one, way), materials.fabric);
    const key = `${materials.fabric.facesDiffer && member.turnedOver} ${turns.join(' ')}`;
    const group = groups.get(key);
    if (group) group.openings.push(member.opening);
    else groups.set(key, { member, openings: [member.opening], turns });
  }
  const several = groups.size > 1;
  return [...groups.values()].map(({ member, openings, turns }, index) => {
    const turnedOver = materials.fabric.facesDiffer && member.turnedOver;
    return {
      piece: `${pattern.pattern}-panel${several ? `-${index + 1}` : ''}`,
      kind: 'panel',
      pattern: pattern.pattern,
      outline: turnedOver ? moveOutline(mirrorAbout(0), panel.cut) : panel.cut,
      count: openings.length,
      openings,
      turnedOver,
      fabric: materials.fabric.id,
      turns,
      // Turned over, a piece that lies askew would have its threads askew the other way.
      mayFlip:
        !materials.fabric.facesDiffer && !materials.fabric.oneWay && turns.every((turn) => turn % 90 === 0),
    };
  });
}

/** A grain that was chosen stays; where either would do, all lie one way. */
const grainOf = ({ panel }: Made, way: Way | null): Choices['grain'] =>
  panel.choices.grain === 'either' && way ? way : panel.choices.grain;

/** Quarter and half turns that lay this member's panel as its grain asks; the roll's length runs along x. */
function turnsOf(member: PatternMember, grain: Choices['grain'], fabric: Fabric): readonly number[] {
  const up = upInPiece(member.place, fabric.facesDiffer);
  const along = grain === 'warpAcross' ? 90 : 0;
  const ways = fabric.oneWay ? [along] : grain === 'either' ? [0, 90, 180, 270] : [along, along + 180];
  return ways.map((way) => wholeTurn(way - up)).sort((a, b) => a - b);
}

/** Direction of the opening's up in the piece's own frame, degrees. */
function upInPiece(place: Rigid, facesDiffer: boolean): number {
  const up = 90 - (place.angle * 180) / Math.PI;
  return place.mirrored && !facesDiffer ? 180 - up : up;
}

function wholeTurn(degrees: number): number {
  const quarter = Math.round(degrees / 90) * 90;
  const turn = Math.abs(degrees - quarter) <= QUARTER_SLACK ? quarter : degrees;
  return ((turn % 360) + 360) % 360;
}

/** How many of which pocket patch each opening's panel takes. */
export type PocketsOf = ReadonlyMap<string, readonly { readonly piece: string; readonly count: number }[]>;

/** What belongs to one panel, by its opening. */
export const pocketsOf = (made: readonly Made[]): PocketsOf =>
  new Map(
    made.flatMap(({ pattern, hold }) =>
      pattern.members.map(({ opening }) => {
        const pockets = hold.pocketPieces.map(({ piece, count }) => ({ piece, count }));
        return [opening, pockets] as const;
      }),
    ),
  );

/** Cloth with a direction shows it on a patch too. A patch's own up is away from the panel's edge. */
function pocketTurns({ oneWay }: Fabric, way: Way | null): readonly number[] {
  if (way === null) return oneWay ? [0] : [0, 90, 180, 270];
  const first = way === 'warpUp' ? 270 : 0;
  return oneWay ? [first] : [first % 180, (first % 180) + 180];
}

/** Pocket patches of one shape and cloth are one piece, whichever panel they go on. */
function pocketPieces(made: readonly Made[], way: Way | null): CutPiece[] {
  const pieces = new Map<string, CutPiece>();
  for (const { pattern, hold, materials } of made)
    for (const pocket of hold.pocketPieces) {
      const key = `${pocket.piece} ${materials.fabric.id}`;
      const count = pocket.count * pattern.members.length;
      const before = pieces.get(key);
      pieces.set(
        key,
        before
          ? { ...before, count: before.count + count, pattern: `${before.pattern} ${pattern.pattern}` }
          : {
              piece: pocket.piece,
              kind: 'pocket',
              pattern: pattern.pattern,
              outline: pocket.outline,
              count,
              openings: [],
              turnedOver: false,
              fabric: materials.fabric.id,
              turns: pocketTurns(materials.fabric, way),
              mayFlip: false,
            },
      );
    }
  return [...pieces.values()];
}
