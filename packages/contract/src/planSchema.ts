import { choices, type Finding, type FindingCode, glazing, type Plan, unitName } from '@panewright/design';
import type { Outline, Point, Rigid } from '@panewright/geometry';
import type { Millimetre, Radian } from '@panewright/quantity';
import { z } from 'zod';
import {
  holdByPoint,
  holdGap,
  holdGapRange,
  holdLetsGo,
  holdMarkingIn,
  holdMeetingIn,
} from './holdDetailSchema.ts';

/** The shape of a plan, for those who read it from a file or over HTTP. Every number in it is finite. */

const number = z.number();
const mm = number as unknown as z.ZodType<Millimetre, number>;
const text = z.string();
const list = <T extends z.ZodType>(item: T) => z.array(item);

export const pointSchema: z.ZodType<Point> = z.strictObject({ x: mm, y: mm });

const segment = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('line'), to: pointSchema }),
  z.strictObject({
    kind: z.literal('arc'),
    to: pointSchema,
    bulge: number.describe('tan(sweep / 4), anticlockwise positive'),
  }),
]);
export const outlineSchema: z.ZodType<Outline> = z.strictObject({ segments: z.tuple([segment], segment) });

export const rigidSchema: z.ZodType<Rigid> = z.strictObject({
  angle: number as unknown as z.ZodType<Radian, number>,
  shift: pointSchema,
  mirrored: z.boolean().describe('x changes sign first, then the turn, then the shift'),
});

const origin = z.strictObject({
  status: z.enum(['measured', 'chosen', 'catalogue', 'computed', 'estimate', 'custom']),
  by: z.enum([
    'leastSquares',
    'acceptedOutline',
    'offset',
    'outlineLength',
    'outlineArea',
    'bindingLength',
    'hemWidth',
    'equalGaps',
    'stackSum',
    'pairForce',
    'holdMargin',
    'massPerArea',
    'lay',
    'stripCut',
    'count',
    'threadLength',
    'wrapSize',
    'tapeLength',
    'stripLength',
    'wholePacks',
    'standardMinutes',
    'jobCost',
    'markup',
    'tax',
  ]),
  inputs: list(text),
  source: z.exactOptional(text),
});

export const figureSchema = z
  .strictObject({
    value: number,
    unit: z.enum(['mm', 'mm2', 'count', 'min', 'money', 'N', 'g', 'ratio', 'm/s']),
    sigma: z.exactOptional(number),
    from: origin,
  })
  .meta({
    id: 'Figure',
    description: 'a number, its unit, its standard deviation where known, and where it came from',
  });

const reading = z.strictObject({
  of: text.describe('a reading’s name, or tape:FROM:TO'),
  index: z.int(),
  read: number,
  adjusted: number,
  residual: number,
  standardised: z.nullable(number),
  suspect: z.boolean(),
});

const openingShape = z.strictObject({
  outline: outlineSchema,
  edgeNames: list(text),
  width: figureSchema,
  height: figureSchema,
  corners: list(
    z.strictObject({
      name: text,
      at: pointSchema,
      radius: figureSchema,
      outOfSquare: number,
    }),
  ),
  readings: list(reading),
  misclosure: number,
  redundancy: number,
  sigma: number,
});

const openingPlan = z.strictObject({
  opening: text,
  name: text,
  place: text,
  exit: z.boolean(),
  driving: z.boolean(),
  shape: z.nullable(openingShape),
  points: list(
    z.strictObject({
      name: text,
      kind: z.enum(['mark', 'outline']),
      at: pointSchema,
      major: number,
      minor: number,
      direction: number,
      weak: z.boolean(),
    }),
  ),
  choices,
  glazing,
});

const patternMember = z.strictObject({
  opening: text,
  turnedOver: z.boolean(),
  place: rigidSchema,
  deviation: number,
  worstAt: pointSchema,
  sigma: number,
});

const patternPlan = z.strictObject({
  pattern: text,
  outline: outlineSchema,
  edgeNames: list(text),
  members: list(patternMember),
  nearMisses: list(patternMember),
  tolerance: number,
});

const edging = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('binding'),
    binding: text,
    run: figureSchema,
    cutLength: figureSchema,
    overlap: number,
    startsAt: z.strictObject({ edge: text, s: number, at: pointSchema }),
  }),
  z.strictObject({ kind: z.literal('hem'), width: number, run: figureSchema }),
  z.strictObject({ kind: z.literal('hotCut'), run: figureSchema }),
]);

const panelPlan = z.strictObject({
  pattern: text,
  choices,
  finished: outlineSchema,
  edgeNames: list(text),
  cut: outlineSchema,
  stitch: list(outlineSchema),
  band: z.nullable(outlineSchema),
  bandWidth: number,
  finishedWidth: figureSchema,
  finishedHeight: figureSchema,
  cutWidth: figureSchema,
  cutHeight: figureSchema,
  area: figureSchema,
  mass: figureSchema,
  edging,
});

const pole = z.enum(['north', 'south']);

const holdPoint = z.strictObject({
  number: z.int(),
  kind: z.enum(['corner', 'edge']),
  on: text,
  s: number,
  edgePoint: pointSchema,
  centre: pointSchema,
  inward: number,
  pocket: z.nullable(outlineSchema),
  pocketPiece: text,
  rule: z.nullable(z.strictObject({ on: text, index: z.int() })),
  byHand: z.boolean(),
  poleOut: pole,
  cavity: z.strictObject({ centre: pointSchema, radius: number }),
});

const holdEdge = z.strictObject({
  edge: text,
  length: number,
  gaps: z.int(),
  gap: figureSchema,
  spacing: number,
  upTo: number,
  reason: z.enum(['oneGap', 'withinTolerance', 'divided']),
  positions: list(number),
});

const holdOpening = z.strictObject({
  opening: text,
  by: z.enum(['magnets', 'steel', 'fastener']),
  outside: text,
  inside: text,
  layers: list(z.strictObject({ name: text, thickness: number })),
  gap: figureSchema,
  pull: z.nullable(
    z.strictObject({ ideal: number, working: figureSchema, low: number, high: number, touching: number }),
  ),
  margin: z.nullable(
    z.strictObject({
      mode: z.enum(['pull-off', 'slip']),
      value: figureSchema,
      low: number,
      high: number,
      letsGoAt: number,
      windPressure: number,
      weight: number,
    }),
  ),
  heatLimit: z.nullable(number),
  poles: z.strictObject({ panelOut: pole, insideOut: pole }),
  marking: z.nullable(holdMarkingIn(pointSchema)),
  gaps: z.nullable(z.strictObject({ corner: holdGapRange, edge: holdGapRange })),
  byPoint: z.exactOptional(list(holdByPoint)),
  letsGo: z.exactOptional(z.nullable(holdLetsGo)),
  meetings: z.exactOptional(list(holdMeetingIn(outlineSchema, pointSchema))),
});

const holdPlan = z.strictObject({
  pattern: text,
  points: list(holdPoint),
  edges: list(holdEdge),
  pocketPieces: list(
    z.strictObject({ piece: text, outline: outlineSchema, count: z.int(), kind: z.enum(['corner', 'edge']) }),
  ),
  openings: list(holdOpening),
  gaps: z.exactOptional(list(holdGap)),
  byHandOf: z.nullable(text),
  poles: z.enum(['uniform', 'keyed']),
  wrongWays: z.exactOptional(
    list(z.strictObject({ turnedOver: z.boolean(), turn: number, meet: z.int(), drawn: z.int() })),
  ),
});

const cutPiece = z.strictObject({
  piece: text,
  kind: z.enum(['panel', 'pocket']),
  pattern: text,
  outline: outlineSchema,
  count: z.int(),
  openings: list(text),
  turnedOver: z.boolean(),
  fabric: text,
  turns: list(number),
  mayFlip: z.boolean(),
});

const rollPrice = z.strictObject({ rollWidth: number, length: number, price: number });
const laidCopyName = z.strictObject({ piece: text, copy: z.int() });

const layPlan = z.strictObject({
  lay: text,
  fabric: text,
  rollWidth: number,
  usableWidth: number,
  selvage: number,
  spacing: number,
  length: figureSchema,
  density: number,
  leastLength: number,
  placements: list(
    z.strictObject({ piece: text, copy: z.int(), place: rigidSchema, outline: outlineSchema }),
  ),
  otherWidths: list(rollPrice),
  binds: list(laidCopyName),
  chain: z.nullable(z.strictObject({ copies: list(laidCopyName), from: z.nullable(text), play: number })),
  reserved: list(
    z.strictObject({
      ...{ id: text, fabric: text, rollWidth: number, from: number, to: number, near: number, far: number },
      ...{ why: z.enum(['flaw', 'kept']), notes: text },
    }),
  ),
  byHand: z.nullable(z.strictObject({ held: list(laidCopyName), automatic: rollPrice })),
  bought: z.nullable(z.strictObject({ length: number, price: number })),
  offcut: z.nullable(z.strictObject({ id: text, name: text, place: text, along: number, across: number })),
  leaves: list(z.strictObject({ x: number, y: number, along: number, across: number, worth: number })),
});

const stripPlan = z.strictObject({
  material: text,
  kind: z.enum(['binding', 'wrapFilm', 'tape']),
  stockLength: number,
  stocks: list(z.strictObject({ cuts: list(z.strictObject({ length: number, for: text })), left: number })),
  leastStocks: z.int(),
});

const offcutSaving = z.strictObject({ fabric: text, offcuts: list(text), price: number, length: number });

const cuttingPlan = z.strictObject({
  pieces: list(cutPiece),
  lays: list(layPlan),
  strips: list(stripPlan),
  savings: list(offcutSaving),
});

const takeOffPlan = z.strictObject({
  materials: list(
    z.strictObject({
      item: text,
      name: text,
      supplier: text,
      kind: z.enum(['fabric', 'binding', 'magnet', 'steel', 'fastener', 'wrapFilm', 'tape', 'thread']),
      used: figureSchema,
      packs: figureSchema,
      pack: z.strictObject({ quantity: number, price: number }),
      left: number,
      costUsed: figureSchema,
      costBought: figureSchema,
      costCharged: figureSchema,
    }),
  ),
  labour: list(z.strictObject({ operation: text, name: text, times: number, minutes: figureSchema })),
  minutes: figureSchema,
});

const pricePlan = z.strictObject({
  currency: z.strictObject({ code: text, symbol: text, decimals: z.int() }),
  material: figureSchema,
  labour: figureSchema,
  overhead: figureSchema,
  cost: figureSchema,
  price: figureSchema,
  tax: figureSchema,
  total: figureSchema,
  margin: number,
  byOpening: list(z.strictObject({ opening: text, price: number })),
});

export const findingSchema = z.strictObject({
  severity: z.enum(['stop', 'doubt', 'caution', 'note']),
  code: text as unknown as z.ZodType<FindingCode, string>,
  where: z.strictObject({
    opening: z.exactOptional(text),
    pattern: z.exactOptional(text),
    item: z.exactOptional(text),
    edge: z.exactOptional(text),
    point: z.exactOptional(text),
  }),
  numbers: z.record(text, z.union([number, text])),
});

export const planSchema: z.ZodType<Plan> = z
  .strictObject({
    format: z.literal('panewright.plan'),
    version: z.literal(1),
    job: z.strictObject({ id: text, name: text, units: unitName }),
    seed: z.int(),
    openings: list(openingPlan),
    patterns: list(patternPlan),
    panels: list(panelPlan),
    hold: list(holdPlan),
    cutting: z.nullable(cuttingPlan),
    takeOff: z.nullable(takeOffPlan),
    price: z.nullable(pricePlan),
    findings: list(findingSchema as unknown as z.ZodType<Finding>),
  })
  .describe('everything worked out from one job, one catalogue and one seed');
