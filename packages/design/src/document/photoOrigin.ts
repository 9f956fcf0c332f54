import { z } from 'zod';
import { entered, mustBeLength, sigma, unit } from './enteredLength.ts';
import { label } from './primitives.ts';

/** A marker's corner, as printed: 0 top left, 1 top right, 2 bottom right, 3 bottom left. */
const corner = z.strictObject({
  marker: z.int().min(0).max(15).describe('as printed beside it'),
  corner: z
    .int()
    .min(0)
    .max(3)
    .describe('0 top left, 1 top right, 2 bottom right, 3 bottom left, as printed'),
});
export type MarkerCorner = z.infer<typeof corner>;

const read = z
  .strictObject({ entered, unit, sigma })
  .superRefine((value, context) => mustBeLength(value, context, false));
export type PhotoReading = z.infer<typeof read>;

/** A distance taped between two markers' corners; `read` is absent until it is read. */
export const photoTape = z.strictObject({ from: corner, to: corner, read: read.optional() });
export type PhotoTape = z.infer<typeof photoTape>;

/** What was measured for photos of a traced film, beside the photos themselves. */
export const photoSetup = z.strictObject({
  paper: z.enum(['A4', 'Letter']).describe('of the printed reference sheets'),
  tapes: z.array(photoTape).max(24),
  ruled: z
    .strictObject({ x: read.optional(), y: read.optional() })
    .describe('what a rule reads on the printed bars of nominal 200 mm and 150 mm'),
});
export type PhotoSetup = z.infer<typeof photoSetup>;

/** What an outline that was traced on photos rests on. The photos themselves are not kept. */
export const photoOrigin = z.strictObject({
  ...photoSetup.shape,
  photos: z.array(label(200)).max(20).describe('names of the files'),
  line: z
    .enum(['darkest', 'inner', 'outer'])
    .optional()
    .describe('which of two parallel lines was meant, where it was said'),
  shownByHand: z.boolean().describe('true where points on the line were tapped in a photo'),
});
export type PhotoOrigin = z.infer<typeof photoOrigin>;
