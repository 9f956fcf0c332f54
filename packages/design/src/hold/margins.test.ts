import {
  defaultCatalogue,
  type HeldPoint,
  type Magnet,
  marginCurve,
  type PanelLoad,
  pairStrength,
  panelMargins,
  type Strength,
  USUAL_CLOTH,
} from '@panewright/design';
import { newton } from '@panewright/quantity';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const magnet = (id: string): Magnet => defaultCatalogue.magnets.find((one) => one.id === id)!;

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const friction = { low: 0.15, high: 0.35 };
const disc = magnet('disc-20x5');
const strength = value(pairStrength({ outside: disc, inside: disc, gap: 6.1, hottest: 70, friction }));
const at = (number: number, x: number, y: number, kind: 'corner' | 'edge' = 'corner'): HeldPoint => ({
  number,
  kind,
  x,
  y,
  strength,
});
const square = [at(1, 0, 0), at(2, 500, 0), at(3, 500, 500), at(4, 0, 500)];
const load: PanelLoad = {
  ...USUAL_CLOTH,
  area: 250_000,
  weight: 2,
  openness: 0.05,
  wind: 3,
  gustFactor: 1.66,
};

describe('margins of a square panel with a point at each corner', () => {
  // By hand: no wind, so a quarter of the weight slides at each, against the low break-away.
  test('without wind each corner carries a quarter of the weight and would slip first, or peel', () => {
    const found = value(panelMargins(square, { ...load, wind: 0 }));
    for (const point of found.points) {
      expect(point.normal).toBe(0);
      expect(point.side).toBeCloseTo(0.5, 12);
      const slip = strength.breakAway.low / 0.5;
      const peel = (strength.pull.low * 20) / 2 / (0.5 * USUAL_CLOTH.arm);
      expect(point.low as number).toBeCloseTo(Math.min(slip, peel), 9);
    }
  });

  // By hand: 1.225/2 (3 × 1.66)² = 15.19 Pa, 1.4 times at corners, on a quarter of 0.25 m².
  test('the lift on a corner is its quarter of the gust, half as much again less a tenth', () => {
    const found = value(panelMargins(square, load));
    expect(found.points[2]!.normal).toBeCloseTo(((0.5 * 1.225 * (3 * 1.66) ** 2 * 1.4) / 4) * 0.25, 9);
  });

  test('it lets go where its margin is 1, and the curve goes through 1 there', () => {
    const { letsGoAt } = value(panelMargins(square, load));
    for (const end of ['low', 'high'] as const) {
      const wind = letsGoAt[end] as number;
      const [here] = value(marginCurve(square, load, [wind]));
      expect(here![end] as number).toBeCloseTo(1, 4);
    }
    const curve = value(marginCurve(square, load, [1, 2, 4, 8, 16]));
    for (let k = 1; k < curve.length; k++)
      expect(curve[k]!.low as number).toBeLessThan(curve[k - 1]!.low as number);
  });

  test('the mirror image of a panel has the mirror image of its margins', () => {
    const uneven = [at(1, 0, 0), at(2, 600, 20), at(3, 540, 400), at(4, 300, 420, 'edge'), at(5, 10, 380)];
    const mirrored = uneven.map((point) => ({ ...point, x: -point.x })).reverse();
    const first = value(panelMargins(uneven, load));
    const second = value(panelMargins(mirrored, load));
    for (const point of first.points) {
      const image = second.points.find(({ number }) => number === point.number)!;
      expect(image.low as number).toBeCloseTo(point.low as number, 9);
    }
    expect(second.weakest).toBe(first.weakest);
  });

  // In next to no wind the cloth's draw may carry part of the weight, and the order need not hold.
  test('in a wind of 2 m/s and more low, middle and high come in that order', () => {
    const newtons = fc.double({ min: 2, max: 40, noNaN: true });
    fc.assert(
      fc.property(newtons, fc.double({ min: 2, max: 15, noNaN: true }), newtons, (pull, wind, weight) => {
        const own: Strength = {
          ...strength,
          pull: {
            ...strength.pull,
            nominal: newton(pull),
            low: newton(pull * 0.9),
            high: newton(pull * 1.1),
          },
          breakAway: { low: newton(pull * 0.5), high: newton(pull * 0.6) },
        };
        const points = square.map((point) => ({ ...point, strength: own }));
        const found = value(panelMargins(points, { ...load, wind, weight: weight / 10 }));
        for (const { low, value: middle, high } of found.points) {
          expect(low as number).toBeLessThanOrEqual((middle as number) * (1 + 1e-9));
          expect(middle as number).toBeLessThanOrEqual((high as number) * (1 + 1e-9));
        }
      }),
      { numRuns: 40, seed: 3 },
    );
  });
});

test('a grade nobody knows is refused by name, and a gap of nothing by its figure', () => {
  const odd = pairStrength({
    outside: { ...disc, grade: 'N99' },
    inside: disc,
    gap: 6,
    hottest: 20,
    friction,
  });
  expect(odd.ok ? {} : odd.refusal).toEqual({ code: 'GRADE_UNKNOWN', magnet: 'disc-20x5', grade: 'N99' });
  const none = pairStrength({
    outside: disc,
    inside: disc,
    gap: 0,
    hottest: 20,
    friction: { low: 0.9, high: 0.3 },
  });
  expect(none.ok ? '' : none.refusal.code).toBe('PULL_REFUSED');
});

test('a remembered strength is the same as one worked out anew', () => {
  const pair = { outside: disc, inside: magnet('disc-15x3'), gap: 5.25, hottest: 40, friction };
  const first = value(pairStrength(pair));
  for (let k = 0; k < 300; k++) value(pairStrength({ ...pair, gap: 5.3 + 0.001 * (k % 3), hottest: 40 }));
  expect(value(pairStrength({ ...pair }))).toEqual(first);
});

test('a wind past what is known and a mesh too open are refused, not guessed at', () => {
  const windy = panelMargins(square, { ...load, wind: 90 });
  expect(windy.ok ? '' : windy.refusal.code).toBe('SPEED_OUT_OF_RANGE');
  const open = panelMargins(square, { ...load, openness: 0.9 });
  expect(open.ok ? '' : open.refusal.code).toBe('OPENNESS_OUT_OF_RANGE');
  const two = panelMargins(square.slice(0, 2), load);
  expect(two.ok ? '' : two.refusal.code).toBe('TOO_FEW_HOLD_POINTS');
});
