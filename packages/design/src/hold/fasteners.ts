import { mm, newton, ok, type Result, refuse } from '@panewright/quantity';
import type { Fastener } from '../document/fasteners.ts';
import type { Range, Strength } from './margins.ts';

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
