import { z } from 'zod';
import { elevations } from './elevations.ts';
import { heldByHand, holdExtras } from './holdChoices.ts';
import { keptLay, laysByHand } from './layByHand.ts';
import { distinctIds, id, label, lengthBetween, note, requiredLabel, unitName } from './primitives.ts';
import { language } from './printing.ts';
import { reservedPlace } from './reservedPlaces.ts';
import { survey } from './survey.ts';

export * from './holdChoices.ts';
export * from './layByHand.ts';
export * from './survey.ts';

/** A rectangle no hold point may sit on, in the opening's own frame: seen from outside, origin at its bottom left (see OpeningPlan). */
export const obstruction = z.strictObject({
  id,
  name: requiredLabel(60).describe('handle, latch, hinge, vent, seam …'),
  x: lengthBetween(-10_000, 10_000),
  y: lengthBetween(-10_000, 10_000),
  width: lengthBetween(1, 10_000),
  height: lengthBetween(1, 10_000),
});

export const glassLayer = z.strictObject({
  kind: z.enum(['glass', 'laminated', 'acrylic', 'air', 'film']),
  thickness: lengthBetween(0.02, 60),
});

export const glazing = z.strictObject({
  layers: z.array(glassLayer).min(1).max(12).describe('from outside to inside'),
  standOff: lengthBetween(0, 30).describe('how far a gasket lifts the panel off the glass at its edge, mm'),
  curved: z.boolean(),
  flange: lengthBetween(0, 200)
    .optional()
    .describe('border of the glass that an inner frame or trim covers, mm; none where left out'),
});
export type Glazing = z.infer<typeof glazing>;

export const finish = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('binding'), binding: id }),
  z.strictObject({
    kind: z.literal('hem'),
    width: lengthBetween(4, 100).describe('finished width of the hem, mm'),
  }),
  z.strictObject({ kind: z.literal('hotCut') }),
]);
export type Finish = z.infer<typeof finish>;

export const choices = z.strictObject({
  fabric: id,
  grain: z
    .enum(['warpUp', 'warpAcross', 'either'])
    .describe('how the warp (the length of the roll) runs on the panel'),
  fit: z.strictObject({
    all: lengthBetween(-100, 200).describe('fit allowance, mm; + beyond the traced line'),
    edges: z.record(label(30), lengthBetween(-100, 200)).describe('by edge name, where it differs'),
  }),
  finish,
  hold: z.strictObject({
    spacing: lengthBetween(50, 2000).describe('gaps along an edge are not over this, mm'),
    upTo: lengthBetween(50, 2200).describe('but a gap this wide is let pass, mm'),
    pocket: lengthBetween(20, 300).describe('width and depth of the pocket patch, mm'),
    outside: id.describe('magnet in the panel'),
    inside: id.describe('magnet behind the glass'),
    poleOut: z
      .enum(['north', 'south'])
      .describe('pole that faces away from the glass on the panel; keyed, at its first point'),
    ...holdExtras,
  }),
  wrapFilm: id,
  tape: id,
  thread: id,
  weather: z.strictObject({
    wind: lengthBetween(0, 60).describe('mean wind speed the panel is to stand parked, m/s'),
    gustFactor: lengthBetween(1, 2.5),
    hottest: lengthBetween(0, 120).describe('hottest the magnets get, °C'),
  }),
});
export type Choices = z.infer<typeof choices>;

/** What one opening has otherwise than the job. */
export const choicesOfOne = z.strictObject({
  fabric: choices.shape.fabric.optional(),
  grain: choices.shape.grain.optional(),
  fit: choices.shape.fit.optional(),
  finish: choices.shape.finish.optional(),
  hold: choices.shape.hold.partial().optional(),
  wrapFilm: choices.shape.wrapFilm.optional(),
  tape: choices.shape.tape.optional(),
  thread: choices.shape.thread.optional(),
});
export type ChoicesOfOne = z.infer<typeof choicesOfOne>;

/** What the customer may have otherwise, for every opening: the quote gives its price beside that of the job as it is. */
export const offer = z
  .strictObject({
    fabric: choicesOfOne.shape.fabric,
    finish: choicesOfOne.shape.finish,
    hold: choicesOfOne.shape.hold,
  })
  .refine((one) => Object.values(one).some((value) => value !== undefined), {
    message: 'an alternative names a cloth, a finish or a hold',
  });
export type Offer = z.infer<typeof offer>;

/** Most alternatives of a job: each is a plan of its own. */
export const MOST_OFFERS = 6;

export const opening = z.strictObject({
  id,
  name: requiredLabel(60),
  place: label(80),
  survey,
  glazing,
  exit: z.boolean().describe('marked or used as an emergency exit'),
  driving: z.boolean().describe('the driver sees through it'),
  obstructions: z.array(obstruction).max(40),
  choices: choicesOfOne,
  notes: note(4000),
});
export type Opening = z.infer<typeof opening>;

export const person = z.strictObject({
  name: label(100),
  address: note(400),
  contact: label(200),
  language: language.optional().describe('of what is written to them; the shop’s where left out'),
});

/** Of the pattern that serves an opening: this opening's own outline, or the mean of all it serves. */
export const patternShape = z.strictObject({ opening: id, shape: z.enum(['this', 'mean']) });
export type PatternShape = z.infer<typeof patternShape>;

export const job = z
  .strictObject({
    format: z.literal('panewright.job'),
    version: z.literal(3),
    id,
    name: requiredLabel(100),
    customer: person,
    site: z.strictObject({
      kind: z.enum(['camper', 'boat', 'house', 'other']),
      name: label(100),
      notes: note(2000),
    }),
    units: unitName.describe('how lengths are shown and printed'),
    choices,
    openings: z.array(opening).max(400),
    patternShapes: z
      .array(patternShape)
      .max(400)
      .optional()
      .describe('what a shared pattern is, where it is not the first opening it serves'),
    elevations: elevations.optional(),
    laysByHand: laysByHand.optional(),
    keptLays: z.array(keptLay).max(40).optional().describe('lays put aside, to be set beside another'),
    reservedPlaces: z
      .array(reservedPlace)
      .max(200)
      .optional()
      .describe('where on a roll nothing may be cut: flaws, and cloth kept for something else'),
    oneBatch: z
      .enum(['panel', 'place', 'job'])
      .optional()
      .describe(
        'a panel with its pockets, all panels of one place, or all of a cloth from one piece: the roll, or one offcut',
      ),
    sameWay: z
      .boolean()
      .optional()
      .describe(
        'all of a cloth lies one way of it: its length runs up every panel and pocket, or across them all',
      ),
    offcutsLeftBe: z
      .array(id)
      .max(500)
      .optional()
      .describe('offcuts of the shop’s stock that are not for this job'),
    heldByHand: z
      .array(heldByHand)
      .max(400)
      .optional()
      .describe('hold points the maker set, moved, removed or added'),
    offers: z
      .array(offer)
      .max(MOST_OFFERS)
      .optional()
      .describe('alternatives that the quote gives a price for'),
    notes: note(10_000),
  })
  .superRefine((value, context) => {
    const byHand = (value.heldByHand ?? []).map(({ opening: id }) => ({ id }));
    if (!distinctIds(byHand))
      context.addIssue({ code: 'custom', path: ['heldByHand'], message: 'two entries are for one opening' });
    if (!distinctIds(value.keptLays ?? []))
      context.addIssue({ code: 'custom', path: ['keptLays'], message: 'two kept lays have the same id' });
    if (!distinctIds(value.reservedPlaces ?? []))
      context.addIssue({ code: 'custom', path: ['reservedPlaces'], message: 'two places have the same id' });
    if (!distinctIds(value.openings))
      context.addIssue({ code: 'custom', path: ['openings'], message: 'two openings have the same id' });
    for (const [index, one] of value.openings.entries())
      if (!distinctIds(one.obstructions))
        context.addIssue({
          code: 'custom',
          path: ['openings', index, 'obstructions'],
          message: 'two obstructions have the same id',
        });
  });
export type Job = z.infer<typeof job>;
