import { z } from 'zod';
import { entered, mustBeLength, sigma, unit } from './enteredLength.ts';
import { photoOrigin, photoSetup } from './photoOrigin.ts';
import { id, label, lengthBetween, note } from './primitives.ts';

export * from './photoOrigin.ts';

/** What one tape reading measures, seen from outside. Sides run between the sharp corners, where the straight sides would meet. */
export const readingName = z.enum([
  'bottom',
  'right',
  'top',
  'left',
  'rising',
  'falling',
  'midWidth',
  'midHeight',
  'radiusBottomLeft',
  'radiusBottomRight',
  'radiusTopRight',
  'radiusTopLeft',
]);
export type ReadingName = z.infer<typeof readingName>;

/** A reading is kept as it was entered; it is turned into millimetres when the job is worked out. */
export const reading = z
  .strictObject({ of: readingName, entered, unit, sigma })
  .superRefine((value, context) => mustBeLength(value, context, value.of.startsWith('radius')));
export type Reading = z.infer<typeof reading>;

/** Four sides, diagonals and radii, read with a tape. */
export const tapeSurvey = z.strictObject({
  method: z.literal('tape'),
  diagonalsTo: z
    .enum(['sharp', 'round'])
    .describe(
      'sharp: diagonals end where the straight sides would meet; round: greatest distance over the rounded corners',
    ),
  readings: z.array(reading).max(60),
});
export type TapeSurvey = z.infer<typeof tapeSurvey>;

/** A tape from one named place to another; which of them are marks and which lie on the outline, the lists say. */
export const markDistance = z
  .strictObject({ from: id, to: id, entered, unit, sigma })
  .superRefine((value, context) => mustBeLength(value, context, false));
export type MarkDistance = z.infer<typeof markDistance>;

/** How a run follows the one before it. */
export const markJoint = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sharp') }),
  z
    .strictObject({ kind: z.literal('round'), entered, unit, sigma })
    .superRefine((value, context) => mustBeLength(value, context, false))
    .describe('rounded by a radius that was read'),
  z.strictObject({ kind: z.literal('smooth') }),
]);
export type MarkJoint = z.infer<typeof markJoint>;

export const markRun = z.strictObject({
  kind: z.enum(['line', 'arc']),
  points: z
    .array(id)
    .max(60)
    .describe('points of the outline on it, in order; a sharp corner’s point is on both its runs'),
  joint: markJoint.describe('how it follows the run before it; the first follows the last'),
});
export type MarkRun = z.infer<typeof markRun>;

/** Two-mark taping: distances from fixed marks to points round the opening, and between them. */
export const marksSurvey = z.strictObject({
  method: z.literal('marks'),
  marks: z
    .array(z.strictObject({ name: id }))
    .max(12)
    .describe('what the tape is held to'),
  points: z
    .array(
      z.strictObject({
        name: id,
        side: z
          .enum(['left', 'right'])
          .optional()
          .describe(
            'for a point with two tapes: its side of the line from the first of their ends to the second',
          ),
      }),
    )
    .max(120)
    .describe('on the opening’s edge, in order round it, anticlockwise as seen from outside'),
  distances: z.array(markDistance).max(400),
  runs: z
    .array(markRun)
    .max(40)
    .describe('anticlockwise, the bottom one first; none: straight from point to point, sharp at each'),
});
export type MarksSurvey = z.infer<typeof marksSurvey>;

const place = z.strictObject({ x: lengthBetween(-50_000, 50_000), y: lengthBetween(-50_000, 50_000) });
const across = lengthBetween(0, 100).describe('how far the edge may lie off, standard deviation, mm');
const byHand = z.literal(true).optional().describe('where a person moved it from where it was traced');

export const surveySegment = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('line'), to: place, sigma: across, byHand }),
  z.strictObject({
    kind: z.literal('arc'),
    to: place,
    bulge: z.number().min(-1000).max(1000).describe('tan(sweep / 4), anticlockwise positive'),
    sigma: across,
    radiusSigma: lengthBetween(0, 10_000).optional().describe('of its radius, standard deviation, mm'),
    byHand,
  }),
]);
export type SurveySegment = z.infer<typeof surveySegment>;

/** An outline that was accepted as it is: traced on a photo, read from a file, fitted to points, or a pattern kept before. */
export const outlineSurvey = z.strictObject({
  method: z.literal('outline'),
  segments: z
    .array(surveySegment)
    .max(400)
    .describe(
      'a closed ring, anticlockwise as seen from outside, y up, mm; it begins where its last edge ends',
    ),
  sizeSigma: z
    .strictObject({ width: across, height: across })
    .optional()
    .describe('of the whole width and height, where known'),
  from: z.strictObject({
    kind: z.enum(['photo', 'file', 'points', 'pattern']),
    name: label(200).describe('of the file or files, or of the kept pattern'),
    date: label(40),
    note: note(2000),
    pattern: z
      .strictObject({
        id,
        job: id.describe('it was first drawn in'),
        turnedOver: z.boolean().describe('for this opening'),
      })
      .optional()
      .describe('the kept pattern'),
    photo: photoOrigin.optional().describe('of an outline traced on photos: what it rests on'),
  }),
  setup: photoSetup.optional().describe('of photos still to be traced: what was measured for them'),
});
export type OutlineSurvey = z.infer<typeof outlineSurvey>;

export const survey = z.discriminatedUnion('method', [tapeSurvey, marksSurvey, outlineSurvey]);
export type Survey = z.infer<typeof survey>;
