import { z } from 'zod';
import { amount, id, label, lengthBetween, note, requiredLabel } from './primitives.ts';

/** A hole or fault of an offcut: nothing is cut there. From the corner its lay is drawn up from. */
export const offcutHole = z
  .strictObject({
    id,
    from: lengthBetween(0, 100_000).describe('along the roll it came from, mm'),
    to: lengthBetween(0, 100_000),
    near: lengthBetween(0, 6000).describe('across it'),
    far: lengthBetween(0, 6000),
  })
  .refine(({ from, to, near, far }) => to > from && far > near, { message: 'a hole ends before it begins' });
export type OffcutHole = z.infer<typeof offcutHole>;

/** A rectangle of cloth left over by a lay and kept. Its selvage is cut off; its edges run with the threads. */
export const offcut = z.strictObject({
  id,
  name: requiredLabel(60).describe('as its label says'),
  fabric: id,
  along: lengthBetween(10, 100_000).describe('along the roll it came from, mm'),
  across: lengthBetween(10, 6000).describe('across the roll, mm'),
  place: label(80).describe('where it lies in the shop'),
  worth: amount.describe('its area at the price of the roll it was cut from'),
  from: z.strictObject({ job: id, jobName: label(100), lay: label(20), date: label(40) }),
  notes: note(500),
  photo: z
    .strictObject({ id, width: z.int().min(1).max(10_000), height: z.int().min(1).max(10_000) })
    .optional()
    .describe('a photo of it, kept beside the catalogue under this id; its size as shown, in dots'),
  holes: z.array(offcutHole).max(20).optional().describe('where nothing may be cut from it'),
  batch: label(60).optional().describe('of the roll it was cut from, as the roll says'),
  used: z
    .strictObject({ job: id, jobName: label(100), date: label(40) })
    .optional()
    .describe('the job it was cut for; other jobs leave it be'),
});
export type Offcut = z.infer<typeof offcut>;
