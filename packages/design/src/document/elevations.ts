import { z } from 'zod';
import { distinctIds, id, lengthBetween, requiredLabel } from './primitives.ts';

const along = lengthBetween(-100_000, 100_000);
const size = lengthBetween(10, 100_000);

/** Something drawn on a side so that one knows one's way about it: a door, a wheel, a hatch. It is measured by nobody. */
export const elevationPart = z.strictObject({
  kind: z.enum(['box', 'round']).describe('a rectangle, or a circle in one'),
  x: along,
  y: along,
  width: size,
  height: size,
});
export type ElevationPart = z.infer<typeof elevationPart>;

/** Where an opening stands on a side: the bottom left of its outline, from the side’s own bottom left. */
export const elevationPlace = z.strictObject({ opening: id, x: along, y: along });
export type ElevationPlace = z.infer<typeof elevationPlace>;

/** One side of the vehicle, vessel or building, seen from outside, drawn by the maker. Nothing is worked out from it. */
export const elevation = z.strictObject({
  id,
  name: requiredLabel(60),
  width: size,
  height: size,
  parts: z.array(elevationPart).max(40),
  places: z.array(elevationPlace).max(400),
});
export type Elevation = z.infer<typeof elevation>;

export const elevations = z
  .array(elevation)
  .max(40)
  .superRefine((value, context) => {
    if (!distinctIds(value)) context.addIssue({ code: 'custom', message: 'two sides have the same id' });
  })
  .describe('the sides as drawn, with the openings in place');
