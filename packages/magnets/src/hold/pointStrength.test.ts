import { type Magnet, pointStrength, tiltFriction, usualFriction, workingPull } from '@panewright/magnets';
import { radian } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';
import { block, disc, pairOf } from '../testing/pullIntervals.ts';

const working = (magnet: Magnet, gap: number) => pairOf(magnet, magnet, gap);
const [twenty, bar] = [disc(20, 5), block(40, 10, 4)];
function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

describe('strength of a hold point', () => {
  // Survey of equal discs by independent programs: break-away 0.54-0.56 of the pull at friction 0.15, 0.63-0.65 at 0.30.
  test('equal discs break away at the surveyed share of their working pull', () => {
    const found = value(pointStrength(working(twenty, 5), { low: 0.15, high: 0.3 }));
    expect(found.pull).toEqual(value(workingPull(working(twenty, 5))));
    expect(found.breakAway.low / found.pull.low).toBeCloseTo(0.55, 1);
    expect(found.breakAway.low / found.pull.low).toBeGreaterThan(0.535);
    expect(found.breakAway.high / found.pull.high).toBeGreaterThan(0.62);
    expect(found.breakAway.high / found.pull.high).toBeLessThan(0.655);
    expect(found.noVisibleSlip.low).toBeCloseTo(0.15 * found.pull.low, 12);
    expect(found.face).toBe(20);
  });

  // 40 x 10 x 4 bars at 6 mm: peak restoring force 0.18 of the pull along, 0.67 across (same survey).
  test('a bar counts with its weak direction at the low end and its strong one at the high end', () => {
    const found = value(pointStrength(working(bar, 6), { low: 0, high: 0 }));
    expect(found.breakAway.low / found.pull.low).toBeCloseTo(0.18, 2);
    expect(found.breakAway.high / found.pull.high).toBeCloseTo(0.67, 1);
    expect(found.face).toBe(10);
  });

  test('friction the wrong way round is refused', () => {
    const result = pointStrength(working(twenty, 5), { low: 0.3, high: 0.1 });
    expect(result.ok ? '' : result.refusal.code).toBe('FRICTION_REVERSED');
  });
});

test('friction: a pocket that slips at 16.7 degrees has 0.30; wet halves what is counted on', () => {
  expect(value(tiltFriction(radian((16.7 * Math.PI) / 180)))).toBeCloseTo(0.3, 3);
  const tooSteep = tiltFriction(radian(1.2));
  expect(tooSteep.ok ? '' : tooSteep.refusal.code).toBe('TILT_OUT_OF_RANGE');
  const dry = usualFriction('filmOrCoatedFabric', false);
  expect(usualFriction('filmOrCoatedFabric', true)).toEqual({ low: dry.low / 2, high: dry.high / 2 });
});
