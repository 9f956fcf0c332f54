import { mm, newton, ok, type Result, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { pack } from '../document/catalogue.ts';
import { id, label, lengthBetween, requiredLabel } from '../document/primitives.ts';
import type { Range, Strength } from './margins.ts';

/** A figure of strength and whose it is: the shop's own test, a cited source, or nobody's yet. */
const strength = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('shop'),
    /** Straight off and along the surface, N per point (per mm of strip for hook and loop). */
    pull: z.strictObject({ low: z.number().positive().max(5000), high: z.number().positive().max(5000) }),
    along: z.strictObject({ low: z.number().min(0).max(5000), high: z.number().min(0).max(5000) }),
    tested: label(200).describe('how and when the shop tried it'),
  }),
  z.strictObject({
    by: z.literal('source'),
    pull: z.strictObject({ low: z.number().positive().max(5000), high: z.number().positive().max(5000) }),
    along: z.strictObject({ low: z.number().min(0).max(5000), high: z.number().min(0).max(5000) }),
    source: requiredLabel(200),
  }),
  z.strictObject({ by: z.literal('unknown') }),
]);

const common = {
  id,
  name: requiredLabel(80),
  supplier: label(60),
  /** Gaps along an edge are not over this, mm. */
  spacing: lengthBetween(20, 2000),
  /** Cloth wanted beyond the traced line where these sit, mm. */
  beyond: lengthBetween(-100, 200),
  /** From the finished edge to the middle of the fastener, mm. */
  inset: lengthBetween(0, 200),
  /** Across the face over which it peels, mm. */
  face: lengthBetween(1, 200),
  strength,
  /** One point's set, as bought; hook and loop by length, one price for both. */
  pack,
  /** Screws, rivets or posts each point takes into the frame. */
  fixings: z.int().min(0).max(8),
};

/** Ways to hold a panel other than magnets, ready for the catalogue document. */
export const fastener = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('snap'), ...common }),
  z.strictObject({
    kind: z.literal('hookAndLoop'),
    ...common,
    /** `run`: all along the edges; `pads`: one of this length at each point. */
    laid: z.enum(['run', 'pads']),
    length: lengthBetween(10, 1000),
    width: lengthBetween(5, 200),
  }),
  z.strictObject({ kind: z.literal('turnButton'), ...common }),
  z.strictObject({
    kind: z.literal('suctionCup'),
    ...common,
    diameter: lengthBetween(10, 200),
  }),
]);
export type Fastener = z.infer<typeof fastener>;

export type FastenerRefusal =
  /** Nobody has tried this one: the shop is to pull it with a spring balance and enter what it finds. */
  | { readonly code: 'FASTENER_STRENGTH_UNKNOWN'; readonly fastener: string }
  | { readonly code: 'FASTENER_ENDS_REVERSED'; readonly fastener: string; readonly figure: 'pull' | 'along' };

/** Mean sea-level pressure in Pa; the part of it a pressed cup keeps after hours, low and high (estimates). */
const AIR_PRESSURE = 101_325;
const CUP_KEEPS: Range = { low: 0.1, high: 0.5 };
/** Safety on a cup held for good, and friction of a cup on wet and on dry glass. sources.md#suction-cup-force */
const CUP_SAFETY = 2;
const CUP_FRICTION: Range = { low: 0.2, high: 0.5 };

/**
 * What one point of a fastener holds, in the form the margins take. Hook and loop counts the length at one point.
 *
 * @param run length of strip that one point stands for, mm; only hook and loop laid all along asks for it
 * @returns newtons
 * @accuracy as good as the shop's test or the source. A suction cup nobody tried is worked out from air pressure with
 *   half to a tenth of it left: an estimate, and cups let go with time, sun and height
 * @refuses FASTENER_STRENGTH_UNKNOWN, FASTENER_ENDS_REVERSED
 * @source sources.md#suction-cup-force
 */
export function fastenerStrength(item: Fastener, run = 0): Result<Strength, FastenerRefusal> {
  const found = ownFigures(item) ?? cupFigures(item);
  if (!found) return refuse({ code: 'FASTENER_STRENGTH_UNKNOWN', fastener: item.id });
  for (const figure of ['pull', 'along'] as const)
    if (found[figure].low > found[figure].high)
      return refuse({ code: 'FASTENER_ENDS_REVERSED', fastener: item.id, figure });
  const times = item.kind === 'hookAndLoop' ? (item.laid === 'run' ? run : item.length) : 1;
  const { pull, along } = found;
  return ok({
    pull: {
      nominal: newton(((pull.low + pull.high) / 2) * times),
      low: newton(pull.low * times),
      high: newton(pull.high * times),
      sources: [],
    },
    breakAway: { low: newton(along.low * times), high: newton(along.high * times) },
    face: mm(item.face),
    // A snapped, turned or hooked point does not slide the less for being lifted; a cup does.
    friction: item.kind === 'suctionCup' ? CUP_FRICTION : { low: 0, high: 0 },
  });
}

function ownFigures({ strength: given }: Fastener): { readonly pull: Range; readonly along: Range } | null {
  return given.by === 'unknown' ? null : given;
}

/** Pressure times area, with what a cup keeps of it and safety taken off the low end. */
function cupFigures(item: Fastener): { readonly pull: Range; readonly along: Range } | null {
  if (item.kind !== 'suctionCup') return null;
  const full = (AIR_PRESSURE * Math.PI * item.diameter ** 2) / 4e6;
  const pull = { low: (full * CUP_KEEPS.low) / CUP_SAFETY, high: full * CUP_KEEPS.high };
  return { pull, along: { low: pull.low * CUP_FRICTION.low, high: pull.high * CUP_FRICTION.high } };
}

/** What is used of a fastener on one panel. */
export interface FastenerTakeOff {
  readonly fastener: string;
  /** Sets, or mm of hook and as much of loop. */
  readonly used: number;
  readonly unit: 'count' | 'mm';
  readonly fixings: number;
  readonly packs: number;
  /** In minor units, as bought. */
  readonly cost: number;
}

/**
 * Take-off of a fastener for a number of points on a number of panels.
 *
 * @param edge length of all edges it runs along, mm; for strip laid all along
 * @returns whole packs and what they cost, integer minor units
 * @source whole packs: common practice, no source
 */
export function fastenerTakeOff(
  item: Fastener,
  points: number,
  edge: number,
  panels: number,
): FastenerTakeOff {
  const strip = item.kind === 'hookAndLoop';
  const used = panels * (strip ? (item.laid === 'run' ? edge : points * item.length) : points);
  const packs = Math.ceil(used / item.pack.quantity - 1e-9);
  return {
    fastener: item.id,
    used,
    unit: strip ? 'mm' : 'count',
    fixings: panels * points * item.fixings,
    packs,
    cost: packs * item.pack.price,
  };
}

const invented = { supplier: 'Fasteners', strength: { by: 'unknown' } } as const;

/**
 * Fasteners to begin with. Names, prices and packs are invented; spacings and allowances are common practice, no source.
 * No strength is given: none was found in a standard that could be read, so each is marked for the shop's own test.
 */
export const defaultFasteners: readonly Fastener[] = [
  {
    kind: 'snap',
    id: 'snap-24',
    name: 'Snap, 24 line, socket in the panel, stud on the frame',
    spacing: 254,
    beyond: 19.05,
    inset: 9.5,
    face: 15,
    pack: { quantity: 25, price: 1650 },
    fixings: 1,
    ...invented,
  },
  {
    kind: 'hookAndLoop',
    id: 'hook-20',
    name: 'Hook and loop, 20 mm, loop sewn to the panel, hook on the frame',
    laid: 'run',
    length: 50,
    width: 20,
    spacing: 300,
    beyond: 20,
    inset: 10,
    face: 20,
    pack: { quantity: 5000, price: 1240 },
    fixings: 0,
    ...invented,
  },
  {
    kind: 'turnButton',
    id: 'turn-button',
    name: 'Turn button with eyelet',
    spacing: 305,
    beyond: 25.4,
    inset: 12.7,
    face: 16,
    pack: { quantity: 10, price: 1890 },
    fixings: 2,
    ...invented,
  },
  {
    kind: 'suctionCup',
    id: 'cup-45',
    name: 'Suction cup, 45 mm, through an eyelet',
    diameter: 45,
    spacing: 254,
    beyond: -6.35,
    inset: 25,
    face: 45,
    pack: { quantity: 10, price: 990 },
    fixings: 0,
    ...invented,
  },
];
