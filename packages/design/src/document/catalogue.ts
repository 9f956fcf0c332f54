import { z } from 'zod';
import { fastener, pack, steelStrip } from './fasteners.ts';
import { holdHabits } from './holdChoices.ts';
import { offcut } from './offcuts.ts';
import { amount, distinctIds, id, label, lengthBetween, note, ratio, requiredLabel } from './primitives.ts';
import { language, logo, printer } from './printing.ts';

export * from './fasteners.ts';
export * from './offcuts.ts';

const item = { id, name: requiredLabel(80), supplier: label(60) };

export const fabric = z.strictObject({
  ...item,
  colour: z.string().regex(/^#[0-9a-fA-F]{6}$/),
  rolls: z
    .array(
      z.strictObject({ width: lengthBetween(100, 6000), step: lengthBetween(1, 100_000), price: amount }),
    )
    .min(1)
    .max(12)
    .describe('each width sold; bought in whole steps of length at the price of one step'),
  selvage: lengthBetween(0, 200).describe('not usable at each side of the roll, mm'),
  mass: z.number().min(1).max(5000).describe('g/m²'),
  thickness: lengthBetween(0.05, 10),
  openness: ratio(0.95),
  facesDiffer: z.boolean(),
  oneWay: z.boolean().describe('may not be turned end for end'),
  heatCut: z.boolean().describe('its edge may be sealed by a hot knife'),
});
export type Fabric = z.infer<typeof fabric>;

export const binding = z.strictObject({
  ...item,
  flatWidth: lengthBetween(6, 120).describe('unfolded; a centrefold shows half of it on each side'),
  thickness: lengthBetween(0.05, 5),
  leastRadius: lengthBetween(0, 2000).describe(
    'tightest finished corner it goes round without puckering, mm',
  ),
  pack,
});
export type Binding = z.infer<typeof binding>;

export const magnet = z.strictObject({
  ...item,
  shape: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('disc'),
      diameter: lengthBetween(2, 100),
      thickness: lengthBetween(0.5, 50),
    }),
    z.strictObject({
      kind: z.literal('block'),
      width: lengthBetween(2, 200),
      height: lengthBetween(2, 200),
      thickness: lengthBetween(0.5, 50),
    }),
  ]),
  grade: requiredLabel(12).describe('e.g. N42, N42SH'),
  pack,
});
export type Magnet = z.infer<typeof magnet>;

export const wrapFilm = z.strictObject({
  ...item,
  thickness: lengthBetween(0.01, 2),
  width: lengthBetween(10, 2000),
  margin: lengthBetween(0, 30).describe('left round the wrapped magnet, mm'),
  pack,
});
export type WrapFilm = z.infer<typeof wrapFilm>;

export const tape = z.strictObject({
  ...item,
  thickness: lengthBetween(0.02, 5),
  width: lengthBetween(3, 100),
  pack,
});
export type Tape = z.infer<typeof tape>;

export const thread = z.strictObject({
  ...item,
  tex: z.number().min(10).max(500),
  needle: requiredLabel(40),
  pack,
});
export type Thread = z.infer<typeof thread>;

/** One operation of the shop and its standard minutes: `minutes` × the quantity named by `per`. */
export const operation = z.strictObject({
  id,
  name: requiredLabel(80),
  per: z
    .enum([
      'job',
      'opening',
      'pattern',
      'panel',
      'panelMetre',
      'cutMetre',
      'holdPoint',
      'pocket',
      'stripPoint',
      'fastenerPoint',
      'lay',
    ])
    .describe(
      'holdPoint: a pair of magnets; stripPoint: a magnet and its piece of strip; fastenerPoint: a fastener',
    ),
  minutes: z.number().min(0).max(10_000),
});
export type Operation = z.infer<typeof operation>;

export const habits = z.strictObject({
  tapeSigma: lengthBetween(0.05, 20).describe('standard deviation of one tape reading, mm'),
  radiusSigma: lengthBetween(0.05, 50),
  patternTolerance: lengthBetween(0.05, 50).describe(
    'openings whose shapes agree within this share a pattern, mm',
  ),
  bindingOverlap: lengthBetween(0, 500),
  bindingTrim: lengthBetween(0, 500).describe('cut off at each end'),
  stitchLength: lengthBetween(1, 12),
  stitchInset: lengthBetween(0.5, 30).describe('stitch line from the inner edge of the binding or hem'),
  threadRatio: z.number().min(1).max(20).describe('thread per seam length, lockstitch'),
  threadWaste: ratio(1),
  backTack: lengthBetween(0, 100),
  pocketSeam: lengthBetween(1, 30).describe('from the edge of a pocket patch to its seam'),
  cutSpacing: lengthBetween(0, 50).describe('between pieces in the lay'),
  leastOffcut: lengthBetween(10, 5000).describe('an offcut narrower than this is not kept'),
  friction: ratio(2).describe('panel on glass, low value used for margins'),
  windMargin: z.number().min(1).max(10).describe('hold ÷ demand asked for'),
  ...holdHabits,
});

export const rates = z.strictObject({
  labour: amount.describe('per hour'),
  overhead: ratio(10).describe('of labour cost'),
  markup: ratio(10).describe('of cost'),
  tax: ratio(1),
  validDays: z.int().min(1).max(365),
});

export const catalogue = z
  .strictObject({
    format: z.literal('panewright.catalogue'),
    version: z.literal(2),
    name: requiredLabel(100),
    currency: z.strictObject({
      code: z.string().regex(/^[A-Z]{3}$/),
      symbol: requiredLabel(5),
      decimals: z.int().min(0).max(3),
    }),
    shop: z.strictObject({
      ...{ name: label(100), address: note(400), contact: label(200), terms: note(4000) },
      language: language.optional().describe('of the shop’s own papers; English where left out'),
      logo: logo.optional(),
    }),
    fabrics: z.array(fabric).max(200),
    bindings: z.array(binding).max(200),
    magnets: z.array(magnet).max(200),
    steelStrips: z.array(steelStrip).max(50).optional(),
    fasteners: z.array(fastener).max(50).optional(),
    wrapFilms: z.array(wrapFilm).max(100),
    tapes: z.array(tape).max(100),
    threads: z.array(thread).max(100),
    operations: z.array(operation).max(100),
    printers: z.array(printer).max(20).optional(),
    offcuts: z.array(offcut).max(500).optional().describe('cloth left over by earlier jobs and kept'),
    habits,
    rates,
  })
  .superRefine((value, context) => {
    for (const list of [
      'fabrics',
      'bindings',
      'magnets',
      'steelStrips',
      'fasteners',
      'wrapFilms',
      'tapes',
      'threads',
      'operations',
      'printers',
      'offcuts',
    ] as const)
      if (!distinctIds(value[list] ?? []))
        context.addIssue({ code: 'custom', path: [list], message: 'two entries have the same id' });
  });
export type Catalogue = z.infer<typeof catalogue>;
