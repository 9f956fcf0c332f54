import { z } from 'zod';
import { id, label, lengthBetween, note, requiredLabel } from './primitives.ts';
import { surveySegment } from './survey.ts';

const across = lengthBetween(0, 100);

/** What a pattern was drawn from. `pattern`: from one kept before. */
export const patternMethod = z.enum(['tape', 'marks', 'photo', 'file', 'points', 'pattern']);
export type PatternMethod = z.infer<typeof patternMethod>;

/** Where a kept pattern came from: enough to find the job again, or to know the window without it. */
export const patternOrigin = z.strictObject({
  job: id,
  jobName: label(100),
  revision: z.nullable(z.int().min(1).max(1_000_000_000)).describe('of the job; null where it was not saved'),
  pattern: label(40).describe('its name in that job'),
  customer: label(100),
  site: z.strictObject({ kind: z.enum(['camper', 'boat', 'house', 'other']), name: label(100) }),
  openings: z
    .array(
      z.strictObject({
        id,
        name: label(60),
        place: label(80),
        turnedOver: z.boolean().describe('for this one'),
      }),
    )
    .max(400)
    .describe('served by it in that job'),
  method: patternMethod,
  date: label(40).describe('when it was kept'),
});
export type PatternOrigin = z.infer<typeof patternOrigin>;

/** A pattern kept for later jobs: the traced line, how well it is known, and where it came from. */
export const keptPattern = z
  .strictObject({
    format: z.literal('panewright.pattern'),
    version: z.literal(1),
    id,
    name: requiredLabel(100),
    notes: note(2000),
    segments: z
      .array(surveySegment)
      .min(1)
      .max(400)
      .describe(
        'a closed ring, anticlockwise as seen from outside, y up, mm; it begins where its last edge ends',
      ),
    edgeNames: z.array(label(60)).max(400).describe('one for each segment'),
    sizeSigma: z.strictObject({ width: across, height: across }).describe('standard deviations, mm'),
    from: patternOrigin,
  })
  .refine(({ segments, edgeNames }) => segments.length === edgeNames.length, {
    path: ['edgeNames'],
    message: 'there is not one name for each segment',
  });
export type KeptPattern = z.infer<typeof keptPattern>;
