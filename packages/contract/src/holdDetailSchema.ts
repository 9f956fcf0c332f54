import type { Outline, Point } from '@panewright/geometry';
import { z } from 'zod';

/** What a plan tells of single hold points. */

const number = z.number();
const text = z.string();
const list = <T extends z.ZodType>(item: T) => z.array(item);

export const holdGap = z.strictObject({
  from: z.int(),
  to: z.int(),
  length: number,
  equal: number,
  strict: z.int(),
  reason: z.enum([
    'oneGap',
    'withinTolerance',
    'divided',
    'shifted',
    'zoneWide',
    'cornerBlocked',
    'raised',
    'byHand',
    'overLimit',
  ]),
  obstruction: z.exactOptional(text),
  mirrored: z.exactOptional(z.boolean()),
  shift: z.exactOptional(number),
});

export const holdByPoint = z.strictObject({
  point: z.int(),
  mode: z.enum(['pullOff', 'slip', 'peel']),
  value: z.nullable(number),
  low: z.nullable(number),
  high: z.nullable(number),
  normal: number,
  side: number,
  pull: z.strictObject({ nominal: number, low: number, high: number }),
});

export const holdLetsGo = z.strictObject({
  weakest: z.int(),
  low: z.nullable(number),
  high: z.nullable(number),
});

export const holdMeetingIn = (outline: z.ZodType<Outline>, point: z.ZodType<Point>) =>
  z.strictObject({
    point: z.int(),
    refusal: z.nullable(
      z.discriminatedUnion('code', [
        z.strictObject({ code: z.literal('POCKET_TOO_SMALL_FOR_MAGNET'), room: number, need: number }),
        z.strictObject({ code: z.literal('GLASS_TOO_SMALL_FOR_MAGNET'), inset: number }),
        z.strictObject({ code: z.literal('MAGNETS_CANNOT_MEET'), apart: number }),
      ]),
    ),
    region: list(outline),
    at: z.nullable(point),
    travel: z.nullable(z.strictObject({ outward: number, inward: number, forward: number, back: number })),
  });

export const holdGapRange = z.strictObject({ value: number, low: number, high: number });

const onPoint = { point: z.int() };
const markingStep = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('DOT_TEST_MAGNET') }),
  z.strictObject({ code: z.literal('STACK_AND_DOT'), magnets: z.int() }),
  z.strictObject({ code: z.literal('SEW_IN'), ...onPoint, dot: z.enum(['out', 'toGlass']) }),
  z.strictObject({ code: z.literal('FIX_INSIDE'), ...onPoint, dot: z.enum(['toRoom', 'toGlass']) }),
  z.strictObject({ code: z.literal('CHECK_DRAWS'), ...onPoint }),
]);

export const holdMarkingIn = (point: z.ZodType<Point>) => {
  const faces = list(
    z.strictObject({ ...onPoint, at: point, pole: z.enum(['north', 'south']), dot: z.boolean() }),
  );
  return z.strictObject({ steps: list(markingStep), outside: faces, inside: faces });
};
