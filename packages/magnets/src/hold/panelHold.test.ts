import {
  AIR_DENSITY,
  dynamicPressure,
  type HoldPanel,
  type HoldPointStrength,
  type NewtonPerMillimetreRun,
  panelHold,
  pointHolds,
  pointHoldsAt,
  stretchSag,
} from '@panewright/magnets';
import { metrePerSecond, mm, mm2, newton, pascal, radian } from '@panewright/quantity';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const point = (x: number, y: number, change: Partial<HoldPointStrength> = {}): HoldPointStrength => ({
  x: mm(x),
  y: mm(y),
  pull: { low: newton(16), high: newton(20) },
  breakAway: { low: newton(8), high: newton(12) },
  friction: { low: 0.15, high: 0.3 },
  face: mm(20),
  load: { low: 1, high: 1 },
  ...change,
});

/** A panel 1200 by 600 mm with points at its corners and half way along its long sides. */
const panelOf = (change: Partial<HoldPanel> = {}): HoldPanel => ({
  points: [point(0, 0), point(600, 0), point(1200, 0), point(1200, 600), point(600, 600), point(0, 600)],
  area: mm2(1200 * 600),
  weight: newton(5),
  lean: radian(0),
  pressure: pascal(60),
  airDensity: AIR_DENSITY,
  stiffness: { low: 50 as NewtonPerMillimetreRun, high: 250 as NewtonPerMillimetreRun },
  slack: 0.01,
  arm: mm(3),
  ...change,
});

function value(panel: HoldPanel) {
  const result = panelHold(panel);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
}
const low = (margin: ReturnType<typeof value>['points'][number]['margin']) =>
  margin === 'unloaded' ? Number.POSITIVE_INFINITY : margin.low;

describe('demands balance (statics)', () => {
  test('the lifts add up to pressure times area, plus the weight of a panel that hangs under leaning glass', () => {
    const lean = 0.3;
    const { points } = value(panelOf({ lean: radian(lean) }));
    const sum = points.reduce((total, { normal }) => total + normal.high, 0);
    expect(sum).toBeCloseTo(60e-6 * 1200 * 600 + 5 * Math.sin(lean), 9);
  });

  test('with no wind the side loads add up to the weight along the glass', () => {
    const { points } = value(panelOf({ pressure: pascal(0), lean: radian(-0.2) }));
    expect(points.reduce((total, { side }) => total + side.high, 0)).toBeCloseTo(5 * Math.cos(0.2), 9);
    expect(points[0]!.margins.pullOff).toBe('unloaded');
  });

  test('cloth on a straight run cancels, at a corner adds along the diagonal', () => {
    const { points } = value(panelOf({ weight: newton(0) }));
    expect(points[1]!.side.high).toBeCloseTo(0, 9);
    // Both edges of a corner are 600 mm; each carries a strip of area over run: 720000 / 3600 = 200 mm.
    const strip = stretchSag(mm(600), pascal(60), 250 as NewtonPerMillimetreRun, 0.01);
    if (!strip.ok) throw new Error(strip.refusal.code);
    expect(points[0]!.side.high).toBeCloseTo(Math.SQRT2 * 200 * strip.value.tension, 9);
  });
});

test('worked by hand: a sixth of 60 Pa on 0.72 m2 is 7.2 N off a point that pulls 16 to 20 N', () => {
  const { points } = value(panelOf({ weight: newton(0) }));
  const middle = points[1]!;
  expect(middle.normal.high).toBeCloseTo(7.2, 9);
  expect(middle.governing).toBe('pullOff');
  expect(middle.margin).toEqual({ low: expect.closeTo(16 / 7.2, 9), high: expect.closeTo(20 / 7.2, 9) });
});

test('slip and peel take what the lift leaves', () => {
  // No wind on cloth tension: a heavy panel on upright glass, load ratio set by the wind alone.
  const stiffness = { low: 1e-6 as NewtonPerMillimetreRun, high: 1e-6 as NewtonPerMillimetreRun };
  const { points } = value(panelOf({ weight: newton(30), stiffness }));
  const middle = points[1]!;
  const slip = middle.margins.slip;
  const peel = middle.margins.peel;
  if (slip === 'unloaded' || peel === 'unloaded') throw new Error('the weight was lost');
  expect(middle.side.high).toBeCloseTo(5, 1);
  expect(slip.low).toBeCloseTo((8 - 0.15 * 7.2) / middle.side.high, 9);
  expect(peel.low).toBeCloseTo(((16 - 7.2) * 10) / (middle.side.high * 3), 9);
});

describe('letting go', () => {
  test('at the gust that lets go the least margin is 1', () => {
    const panel = panelOf();
    const { letGo } = value(panel);
    if (letGo.low === 'beyondRange' || letGo.high === 'beyondRange') throw new Error('it never lets go');
    expect(letGo.low).toBeLessThan(letGo.high);
    const gust = dynamicPressure(letGo.low);
    if (!gust.ok) throw new Error(gust.refusal.code);
    const there = value({ ...panel, pressure: gust.value });
    expect(low(there.points[there.weakest]!.margin)).toBeCloseTo(1, 6);
  });

  test('a panel whose weight is too much lets go in no wind; one of great pull holds past 100 m/s', () => {
    expect(value(panelOf({ weight: newton(500) })).letGo).toEqual({ low: 0, high: 0 });
    const strong = {
      pull: { low: newton(1e6), high: newton(1e6) },
      breakAway: { low: newton(1e6), high: newton(1e6) },
    };
    const points = panelOf().points.map((p) => ({ ...p, ...strong }));
    expect(value(panelOf({ points })).letGo).toEqual({ low: 'beyondRange', high: 'beyondRange' });
  });

  test('more pull never lets go sooner; more wind never leaves more margin against pull-off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (pull, more, speed, faster) => {
          const at = (p: number, v: number) => {
            const gust = dynamicPressure(metrePerSecond(v));
            if (!gust.ok) throw new Error(gust.refusal.code);
            const ends = { low: newton(p), high: newton(p) };
            const side = { low: newton(p / 2), high: newton(p / 2) };
            const points = panelOf().points.map((old) => ({ ...old, pull: ends, breakAway: side }));
            return value(panelOf({ points, pressure: gust.value }));
          };
          const here = at(pull, speed);
          const speedOf = (v: number | 'beyondRange') => (v === 'beyondRange' ? 1000 : v);
          expect(speedOf(at(pull + more, speed).letGo.low)).toBeGreaterThanOrEqual(
            speedOf(here.letGo.low) - 1e-6,
          );
          const later = at(pull, speed + faster);
          expect(low(later.points[1]!.margin)).toBeLessThanOrEqual(low(here.points[1]!.margin) + 1e-9);
          later.points.forEach(({ margins }, i) => {
            expect(low(margins.pullOff)).toBeLessThanOrEqual(low(here.points[i]!.margins.pullOff) + 1e-9);
          });
        },
      ),
      { numRuns: 60, seed: 5 },
    );
  });
});

test('bad figures are refused by name and place', () => {
  const refusal = (panel: HoldPanel) => {
    const result = panelHold(panel);
    return result.ok ? {} : result.refusal;
  };
  expect(refusal(panelOf({ points: [point(0, 0), point(1, 0)] }))).toMatchObject({
    code: 'TOO_FEW_HOLD_POINTS',
    count: 2,
  });
  expect(refusal(panelOf({ points: [point(0, 0), point(1, 0), point(1, 0)] }))).toMatchObject({
    code: 'HOLD_POINTS_COINCIDE',
    at: 1,
  });
  expect(refusal(panelOf({ weight: newton(Number.NaN) }))).toMatchObject({
    code: 'HOLD_FIGURE_OUT_OF_RANGE',
    figure: 'weight',
  });
  const reversed = point(9, 9, { pull: { low: newton(5), high: newton(4) } });
  expect(refusal(panelOf({ points: [point(0, 0), point(9, 0), reversed] }))).toMatchObject({
    code: 'HOLD_ENDS_REVERSED',
    figure: 'pull',
    at: 2,
  });
});

describe('many pressures at once', () => {
  // Two ways to one figure: each pressure by itself, and all on a panel that is looked over once.
  test('each is as it is asked for by itself', () => {
    const pressures = [0, 3, 40, 900].map(pascal);
    const together = pointHoldsAt(panelOf(), pressures);
    const apart = pressures.map((pressure) => pointHolds(panelOf({ pressure })));
    expect(together).toEqual({ ok: true, value: apart.map((one) => one.ok && one.value) });
  });

  test('a pressure past what is vouched for is refused, as it is by itself', () => {
    const wild = pascal(20_000);
    expect(pointHoldsAt(panelOf(), [pascal(1), wild])).toEqual(pointHolds(panelOf({ pressure: wild })));
  });
});
