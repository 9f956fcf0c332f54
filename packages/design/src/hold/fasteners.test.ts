import {
  defaultFasteners,
  type Fastener,
  fastener,
  fastenerStrength,
  fastenerTakeOff,
} from '@panewright/design';
import { describe, expect, test } from 'vitest';

const of = (kind: Fastener['kind']): Fastener => defaultFasteners.find((one) => one.kind === kind)!;
const tried = {
  by: 'shop',
  pull: { low: 20, high: 35 },
  along: { low: 60, high: 90 },
  tested: 'spring balance, ten of them',
} as const;

test('every fastener to begin with is one the document takes', () => {
  for (const one of defaultFasteners) expect(fastener.parse(one)).toEqual(one);
});

describe('strength', () => {
  test('a snap nobody has tried has none; the shop’s own test is taken as it stands', () => {
    const unknown = fastenerStrength(of('snap'));
    expect(unknown.ok ? {} : unknown.refusal).toEqual({
      code: 'FASTENER_STRENGTH_UNKNOWN',
      fastener: 'snap-24',
    });
    const known = fastenerStrength({ ...of('snap'), strength: tried });
    expect(known.ok && known.value.pull.low).toBe(20);
    expect(known.ok && known.value.breakAway).toEqual({ low: 60, high: 90 });
    const reversed = fastenerStrength({ ...of('snap'), strength: { ...tried, pull: { low: 9, high: 3 } } });
    expect(reversed.ok ? '' : reversed.refusal.code).toBe('FASTENER_ENDS_REVERSED');
  });

  // By hand: 45 mm across is 1590.43 mm² or 161.15 N at sea level; a tenth of it kept, halved for safety, is 8.06 N.
  test('a suction cup is worked out from air pressure, less what leaks away', () => {
    const cup = fastenerStrength(of('suctionCup'));
    if (!cup.ok) throw new Error(cup.refusal.code);
    expect(cup.value.pull.low).toBeCloseTo(8.058, 3);
    expect(cup.value.pull.high).toBeCloseTo(80.576, 2);
    expect(cup.value.breakAway.low).toBeCloseTo(8.058 * 0.2, 3);
  });

  test('hook and loop counts by its length: all along the edge, or pad by pad', () => {
    const perMillimetre = { ...tried, pull: { low: 0.1, high: 0.2 } };
    const run = fastenerStrength({ ...of('hookAndLoop'), strength: perMillimetre }, 300);
    expect(run.ok && run.value.pull.low).toBeCloseTo(30, 12);
    const pads = fastenerStrength({
      ...(of('hookAndLoop') as Extract<Fastener, { kind: 'hookAndLoop' }>),
      laid: 'pads',
      strength: perMillimetre,
    });
    expect(pads.ok && pads.value.pull.low).toBeCloseTo(5, 12);
  });
});

test('take-off: two panels of 14 snaps need two packs of 25 and 28 screws; hook and loop goes by the edge', () => {
  expect(fastenerTakeOff(of('snap'), 14, 3000, 2)).toEqual({
    fastener: 'snap-24',
    used: 28,
    unit: 'count',
    fixings: 28,
    packs: 2,
    cost: 3300,
  });
  const strip = fastenerTakeOff(of('hookAndLoop'), 14, 3000, 2);
  expect(strip.used).toBe(6000);
  expect(strip.packs).toBe(2);
});
