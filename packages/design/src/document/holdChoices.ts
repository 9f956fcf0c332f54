import { z } from 'zod';
import { id, lengthBetween, requiredLabel } from './primitives.ts';

/** What stands at each hold point: a pair of magnets, a magnet drawn to a steel strip behind the glass, or a fastener. */
export const holdBy = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('magnets') }),
  z.strictObject({
    kind: z.literal('steel'),
    strip: id.describe('steel strip of the catalogue, in place of the inside magnets'),
  }),
  z.strictObject({ kind: z.literal('fastener'), fastener: id.describe('fastener of the catalogue') }),
]);
export type HoldBy = z.infer<typeof holdBy>;

/** Further choices of holding, all of them left out in a job that says nothing of them. */
export const holdExtras = {
  by: holdBy.optional().describe('what holds; left out, a pair of magnets'),
  poles: z
    .enum(['uniform', 'keyed'])
    .optional()
    .describe('uniform (or left out): one pole out everywhere; keyed: the panel goes on one way only'),
  points: z
    .enum(['spacing', 'margin'])
    .optional()
    .describe(
      'spacing (or left out): as few as the spacing allows; margin: as few beyond it as meet the margin',
    ),
};

const edge = requiredLabel(60).describe('name of an edge, or of a corner');
const along = lengthBetween(0, 20_000).describe(
  'from the first sharp corner of that edge of the panel, anticlockwise, mm',
);
const index = z.int().min(1).max(200).describe('of the points the rule sets on that edge, from 1');

/**
 * One decision of the maker's about a hold point. A point set by hand stays where it was set: an obstruction added under it
 * later is told of, and the rule's own points alone keep clear of it.
 */
export const handPlaced = z.discriminatedUnion('kind', [
  z
    .strictObject({ kind: z.literal('fixed'), on: edge, at: along })
    .describe('a point stands here, and the rule divides what is left on either side'),
  z
    .strictObject({ kind: z.literal('added'), on: edge, at: along })
    .describe('one point more, the others as they were'),
  z
    .strictObject({ kind: z.literal('moved'), on: edge, index, by: lengthBetween(-20_000, 20_000) })
    .describe('the rule’s point moved along the edge, anticlockwise positive'),
  z.strictObject({ kind: z.literal('removed'), on: edge, index }).describe('the rule’s point left out'),
]);

/** Hold points set by hand on the panel of one opening; they serve every opening of its pattern, mirrored where it is. */
export const heldByHand = z.strictObject({ opening: id, placed: z.array(handPlaced).min(1).max(200) });
export type HeldByHand = z.infer<typeof heldByHand>;

/** What a shop knows of its cloth on the glass and of its pockets, ahead of the usual figures. */
export const holdHabits = {
  tapeMargin: lengthBetween(0, 50)
    .optional()
    .describe('bare glass wanted round an inside magnet for its tape, mm; 2 where left out'),
  mostPocket: lengthBetween(20, 300).optional().describe('widest pocket patch the shop sews, mm'),
  slack: z
    .strictObject({ low: z.number().min(0.0005).max(0.05), high: z.number().min(0.0005).max(0.05) })
    .refine(({ low, high }) => low <= high, { message: 'the low end is above the high end' })
    .optional()
    .describe(
      'how much longer the cloth is than the chord between two hold points, least and most, as a ratio; ' +
        '0.002 to 0.01 where left out',
    ),
};
