import { z } from 'zod';
import { amount, id, label, lengthBetween, requiredLabel } from './primitives.ts';

/** How a thing is bought: in whole packs of `quantity` (mm for lengths, pieces for counts) at `price`. */
export const pack = z.strictObject({
  quantity: z.number().min(0.001).max(10_000_000),
  price: amount,
});
export type Pack = z.infer<typeof pack>;

const ends = (least: z.ZodNumber) =>
  z
    .strictObject({ low: least.max(5000), high: least.max(5000) })
    .refine(({ low, high }) => low <= high, { message: 'the low end is above the high end' });

/** Straight off and along the surface, N per point (per mm of strip for hook and loop). */
const figures = { pull: ends(z.number().positive()), along: ends(z.number().min(0)) };

/** A figure of strength and whose it is: the shop's own test, a cited source, or nobody's yet. */
const strength = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('shop'),
    ...figures,
    tested: label(200).describe('how and when the shop tried it'),
  }),
  z.strictObject({ by: z.literal('source'), ...figures, source: requiredLabel(200) }),
  z.strictObject({ by: z.literal('unknown') }),
]);

const common = {
  id,
  name: requiredLabel(80),
  supplier: label(60),
  spacing: lengthBetween(20, 2000).describe('gaps along an edge are not over this, mm'),
  beyond: lengthBetween(-100, 200).describe('cloth wanted beyond the traced line where these sit, mm'),
  inset: lengthBetween(0, 200).describe('from the finished edge to the middle of the fastener, mm'),
  face: lengthBetween(1, 200).describe('across the face over which it peels, mm'),
  strength,
  pack: pack.describe('one point’s set as bought; hook and loop by length, one price for both'),
  fixings: z.int().min(0).max(8).describe('screws, rivets or posts each point takes into the frame'),
};

/** Ways to hold a panel other than magnets. */
export const fastener = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('snap'), ...common }),
  z.strictObject({
    kind: z.literal('hookAndLoop'),
    ...common,
    laid: z.enum(['run', 'pads']).describe('all along the edges, or one pad of this length at each point'),
    length: lengthBetween(10, 1000),
    width: lengthBetween(5, 200),
  }),
  z.strictObject({ kind: z.literal('turnButton'), ...common }),
  z.strictObject({ kind: z.literal('suctionCup'), ...common, diameter: lengthBetween(10, 200) }),
]);
export type Fastener = z.infer<typeof fastener>;

/** A flat strip of mild steel that stands in for the inside magnets, cut to a piece for each point. */
export const steelStrip = z.strictObject({
  id,
  name: requiredLabel(80),
  supplier: label(60),
  width: lengthBetween(3, 200),
  thickness: lengthBetween(0.2, 20),
  pack,
});
export type SteelStrip = z.infer<typeof steelStrip>;
