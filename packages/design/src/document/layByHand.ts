import { z } from 'zod';
import { id, lengthBetween, requiredLabel } from './primitives.ts';

/** Where a copy of a piece lies on the roll: turned about its own origin, after its mirroring left for right, then moved. */
export const laidPlace = z.strictObject({
  of: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('panel'), opening: id }),
    z.strictObject({
      kind: z.literal('pocket'),
      piece: requiredLabel(80).describe('as the cutting list calls it'),
      copy: z.int().min(0).max(9999),
    }),
  ]),
  turn: z.number().min(-360).max(360).describe('degrees, anticlockwise'),
  flipped: z.boolean(),
  x: lengthBetween(-100_000, 1_000_000).describe('along the roll from its cut end, mm'),
  y: lengthBetween(-10_000, 10_000).describe('across the roll, mm'),
  held: z.boolean().describe('stays here when the rest is laid anew'),
});
export type LaidPlace = z.infer<typeof laidPlace>;

/** The lay of one cloth as someone left it: moved by hand, or found by a longer search and taken. */
export const layByHand = z.strictObject({
  fabric: id,
  rollWidth: lengthBetween(100, 6000),
  places: z.array(laidPlace).max(4000),
});
export type LayByHand = z.infer<typeof layByHand>;

/** A lay put aside, to be set beside another. */
export const keptLay = z.strictObject({ id, name: requiredLabel(60), lay: layByHand });
export type KeptLay = z.infer<typeof keptLay>;

/** Of each cloth one lay at most. */
export const laysByHand = z
  .array(layByHand)
  .max(200)
  .refine((lays) => new Set(lays.map(({ fabric }) => fabric)).size === lays.length, {
    message: 'two lays are of the same cloth',
  });
