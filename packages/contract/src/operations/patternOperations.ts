import {
  id,
  keptPattern,
  label,
  lengthBetween,
  note,
  outlineOfSegments,
  recognised,
  requiredLabel,
  type SurveySegment,
  surveySegment,
  worstSigma,
} from '@panewright/design';
import { bounds, measureShape, type Outline } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { examplePattern } from '../examples.ts';
import { searchTerms } from '../patterns/patternSearch.ts';
import { pointSchema, rigidSchema } from '../planSchema.ts';
import type { StoredPattern } from '../ports.ts';
import type { ShapeRefusal } from '../refusal.ts';
import { storeOperation } from './operation.ts';

const size = z.number().describe('mm');
const stored = {
  pattern: keptPattern,
  keptAt: z.string().describe('ISO 8601, UTC'),
  removed: z.boolean(),
};
const kept = z.strictObject(stored);

const fit = z.strictObject({
  deviation: z.number().describe('worst distance between the two shapes, best laid, mm'),
  sigma: z.number().describe('its standard deviation, from how well both shapes are known, mm'),
  turnedOver: z.boolean().describe('the kept pattern has to be turned over'),
  place: rigidSchema.describe('lays the kept pattern on the shape asked about'),
  at: pointSchema.describe('where the worst distance is, in the frame of the shape asked about'),
});

const found = z.strictObject({
  ...stored,
  ...{ width: size, height: size },
  fit: z.nullable(fit).describe('null where no shape was asked about'),
});
type Found = z.output<typeof found>;

/** Shapes laid on one another for one question: each takes some hundredths of a second. */
const MOST_LAID = 40;

export const keepPattern = storeOperation({
  summary: 'Keeps a pattern for later jobs. Answered only once it is on the disk.',
  input: z.strictObject({ pattern: keptPattern }),
  output: kept,
  example: { pattern: examplePattern },
  run: async ({ pattern }, { patterns }) => {
    const outline = shapeOf(pattern.segments);
    return outline.ok ? patterns.keep(pattern) : outline;
  },
});

export const findPatterns = storeOperation({
  summary:
    'Kept patterns by words (name, job, customer, site, opening) and by shape, turned any way or over.',
  input: z.strictObject({
    text: z.optional(label(200)).describe('words that all have to occur; none: any pattern'),
    removed: z.optional(z.boolean()).describe('look among the removed ones instead'),
    most: z.optional(z.int().min(1).max(500)).describe('how many to answer (50)'),
    like: z
      .optional(
        z.strictObject({
          segments: z.array(surveySegment).min(1).max(400),
          within: lengthBetween(0.01, 100).describe('worst deviation that still counts, mm'),
        }),
      )
      .describe('a shape to be recognised'),
  }),
  output: z.strictObject({
    patterns: z.array(found).describe('newest first; of those like a shape the nearest first'),
    more: z.int().describe('how many more were not answered; of shapes: not looked at'),
  }),
  example: { text: 'window', like: { segments: examplePattern.segments, within: 3 } },
  run: async ({ text = '', removed = false, most = 50, like }, { patterns }) => {
    const terms = searchTerms(text);
    if (!like) {
      const { found: some, more } = await patterns.find({ terms, removed, most });
      return ok({ patterns: some.map((one) => sized(one, null)), more });
    }
    const asked = shapeOf(like.segments);
    if (!asked.ok) return asked;
    const { within } = like;
    const { found: some, more } = await patterns.find({
      ...{ terms, removed, most: Math.min(most, MOST_LAID) },
      like: { measure: measureShape(asked.value), within },
    });
    const laid = some.map((one) => laidOn(one, asked.value, worstSigma(like.segments), within));
    const near = laid.filter((one) => one.fit!.deviation <= within);
    near.sort((a, b) => a.fit!.deviation - b.fit!.deviation);
    return ok({ patterns: near, more });
  },
});

export const openPattern = storeOperation({
  summary: 'One kept pattern.',
  input: z.strictObject({ id }),
  output: kept,
  example: { id: examplePattern.id },
  run: (input, { patterns }) => patterns.open(input.id),
});

export const describePattern = storeOperation({
  summary: 'Gives a kept pattern another name or other notes. Its outline never changes.',
  input: z.strictObject({ id, name: z.optional(requiredLabel(100)), notes: z.optional(note(2000)) }),
  output: kept,
  example: { id: examplePattern.id, name: 'Side window, long wheelbase', notes: 'The left one is a twin.' },
  run: ({ id: of, name, notes }, { patterns }) =>
    patterns.change({
      id: of,
      ...(name === undefined ? {} : { name }),
      ...(notes === undefined ? {} : { notes }),
    }),
});

export const removePattern = storeOperation({
  summary: 'Takes a kept pattern off the list. It is kept, and can be brought back.',
  input: z.strictObject({ id }),
  output: kept,
  example: { id: examplePattern.id },
  run: (input, { patterns }) => patterns.change({ id: input.id, removed: true }),
});

export const restorePattern = storeOperation({
  summary: 'Brings a removed pattern back.',
  input: z.strictObject({ id }),
  output: kept,
  example: { id: examplePattern.id },
  run: (input, { patterns }) => patterns.change({ id: input.id, removed: false }),
});

function shapeOf(segments: readonly SurveySegment[]): Result<Outline, ShapeRefusal> {
  const outline = outlineOfSegments(segments);
  return outline.ok ? outline : refuse({ code: 'SHAPE_IMPOSSIBLE', refusal: outline.refusal });
}

/** What is kept was read as an outline before. */
function outlineOf({ pattern }: StoredPattern): Outline {
  const outline = outlineOfSegments(pattern.segments);
  if (!outline.ok) throw new Error(`kept pattern ${pattern.id} is no outline: ${outline.refusal.code}`);
  return outline.value;
}

function sized(one: StoredPattern, laid: Found['fit']): Found {
  const { width, height } = bounds(outlineOf(one));
  return { ...one, width, height, fit: laid };
}

function laidOn(one: StoredPattern, asked: Outline, sigma: number, within: number): Found {
  const { motion, deviation, at } = recognised(outlineOf(one), asked, within);
  return sized(one, {
    deviation,
    sigma: Math.hypot(sigma, worstSigma(one.pattern.segments)),
    turnedOver: motion.mirrored,
    place: motion,
    at,
  });
}
