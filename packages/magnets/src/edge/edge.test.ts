import {
  capstanRatio,
  cornerPull,
  hangingEdge,
  holdPointPull,
  type NewtonPerMillimetreRun,
  peelLoad,
  stretchSag,
  tapeArea,
  tapeLimit,
} from '@panewright/magnets';
import { mm, mm2, newton, pascal, radian } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}
const perMetre = (n: number) => (n / 1000) as NewtonPerMillimetreRun;

describe('an edge between two hold points', () => {
  // Rows C1, C2, C4: Udoeyo, Structural Analysis (answer from memory, recomputed); 240 N/m, 20 m, 4 m.
  test('the textbook cable: H 3000 N, greatest 3841.9 N, length 21.9646 m', () => {
    const edge = value(hangingEdge(mm(20_000), mm(4000), perMetre(240)));
    expect(edge.tension).toBeCloseTo(3000, 8);
    expect(edge.greatest).toBeCloseTo(3841.87, 2);
    expect(edge.length / 1000).toBeCloseTo(21.9646017, 6);
  });

  // Row C5; and the catenary of the same edge gives 83.75 N.
  test('a screen edge under 18 N/m sags 10 mm over 610 mm at 83.7225 N a metre', () => {
    const edge = value(hangingEdge(mm(610), mm(10), perMetre(18)));
    expect(edge.tension).toBeCloseTo(83.7225, 6);
    expect(edge.length - 610).toBeCloseTo(0.437, 3);
  });

  // Second method: the edge as a chain of straight links under point loads, balanced joint by joint.
  test('a chain of 2000 links under the same load has the same pull and length', () => {
    const [span, sag, load, links] = [610, 40, 0.02, 2000];
    const edge = value(hangingEdge(mm(span), mm(sag), load as NewtonPerMillimetreRun));
    let height = 0;
    let lowest = 0;
    let length = 0;
    const step = span / links;
    for (let i = 0; i < links; i++) {
      const shear = load * (span / 2 - (i + 0.5) * step);
      const drop = (step * shear) / edge.tension;
      height -= drop;
      length += Math.hypot(step, drop);
      lowest = Math.min(lowest, height);
    }
    expect(-lowest).toBeCloseTo(sag, 4);
    expect(height).toBeCloseTo(0, 6);
    expect(length).toBeCloseTo(edge.length, 4);
  });

  // Row C6: 60 Pa, 0.61 m, 200 kN/m.
  test('60 Pa stretches a strip of 200 kN/m to a sag of 12.487 mm and 223.5 N/m', () => {
    const strip = value(stretchSag(mm(610), pascal(60), perMetre(200_000)));
    expect(strip.sag).toBeCloseTo(12.487, 3);
    expect(strip.tension * 1000).toBeCloseTo(223.5, 1);
    // The strain of that sag carries that tension.
    expect((8 / 3) * (strip.sag / 610) ** 2 * 200).toBeCloseTo(strip.tension, 9);
  });

  test('slack deepens the sag: with no load to speak of it hangs by its slack, and it relieves the pull', () => {
    const stiff = perMetre(200_000);
    // Length of a shallow parabola, S = L (1 + 8/3 (s/L)^2): 1 % of slack is a sag of L sqrt(3 x 0.01 / 8).
    expect(value(stretchSag(mm(610), pascal(1e-6), stiff, 0.01)).sag).toBeCloseTo(
      610 * Math.sqrt(0.03 / 8),
      3,
    );
    const taut = value(stretchSag(mm(610), pascal(60), stiff));
    const loose = value(stretchSag(mm(610), pascal(60), stiff, 0.01));
    expect(loose.sag).toBeGreaterThan(taut.sag);
    expect(loose.tension).toBeLessThan(taut.tension);
    expect(200 * ((8 / 3) * (loose.sag / 610) ** 2 - 0.01)).toBeCloseTo(loose.tension, 9);
    const limp = stretchSag(mm(610), pascal(60), stiff, 0.5);
    expect(limp.ok ? '' : limp.refusal.code).toBe('SLACK_OUT_OF_RANGE');
  });

  test('a span of nothing is refused by name', () => {
    const result = hangingEdge(mm(610), mm(0), perMetre(18));
    expect(result.ok ? {} : result.refusal).toEqual({
      code: 'SPAN_FIGURE_NOT_POSITIVE',
      figure: 'sag',
      value: 0,
    });
  });
});

describe('one hold point', () => {
  test('60 Pa on 0.61 by 0.30 m is 10.98 N', () => {
    expect(holdPointPull(pascal(60), mm(610), mm(300))).toBeCloseTo(10.98, 9);
  });

  test('two edges cancel on a straight line, add to the diagonal at a right angle', () => {
    expect(cornerPull(newton(10), newton(10), radian(Math.PI)).pull).toBeCloseTo(0, 9);
    const corner = cornerPull(newton(10), newton(10), radian(Math.PI / 2));
    expect(corner.pull).toBeCloseTo(10 * Math.SQRT2, 9);
    expect(corner.from).toBeCloseTo(Math.PI / 4, 9);
  });

  test('a load on the rim of the magnet peels it at half the pull', () => {
    expect(peelLoad(newton(20), mm(20), mm(20))).toBe(10);
    expect(() => peelLoad(newton(20), mm(20), mm(0))).toThrow();
  });

  // Printed values of the capstan law: friction 0.3, half turn 2.566, full turn 6.586.
  test('cloth round a bend', () => {
    expect(capstanRatio(0.3, radian(Math.PI))).toBeCloseTo(2.566, 3);
    expect(capstanRatio(0.3, radian(2 * Math.PI))).toBeCloseTo(6.586, 3);
  });
});

describe('foam tape', () => {
  // Rows A1-A3: a tape maker's note: 60 cm2 or 240 mm of 25 mm tape a kilogram for good, 6.25 cm2 for a moment.
  test('one kilogram is 60 cm2, which is 240 mm of 25 mm tape', () => {
    expect(tapeArea(newton(9.80665))).toBeCloseTo(6000, 9);
    expect(tapeArea(newton(9.80665)) / 25).toBeCloseTo(240, 9);
    expect(tapeLimit(mm2(625)).shortTerm).toBeCloseTo(9.80665, 9);
  });

  test('a 20 mm disc holds 0.51 N for good and 4.93 N for a moment', () => {
    const { sustained, shortTerm } = tapeLimit(mm2((Math.PI * 20 ** 2) / 4));
    expect(sustained).toBeCloseTo(0.51, 2);
    expect(shortTerm).toBeCloseTo(4.93, 2);
  });
});
