import { z } from 'zod';
import { id, label, lengthBetween } from './primitives.ts';

/** A rectangle of a roll where no piece may lie. */
export const reservedPlace = z
  .strictObject({
    id,
    fabric: id,
    rollWidth: lengthBetween(100, 6000).describe('of the roll it is on, mm'),
    from: lengthBetween(0, 100_000).describe('along the roll from its cut end, mm'),
    to: lengthBetween(0, 100_000),
    near: lengthBetween(0, 6000).describe('across the roll from the edge the lay is drawn up from, mm'),
    far: lengthBetween(0, 6000),
    why: z.enum(['flaw', 'kept']).describe('a fault of the cloth, or cloth kept for something else'),
    notes: label(80),
  })
  .refine(({ from, to, near, far }) => to > from && far > near, {
    message: 'a reserved place ends before it begins',
  });
export type ReservedPlace = z.infer<typeof reservedPlace>;
