import {
  defaultCatalogue,
  deriveShapes,
  type HeldPoint,
  heldPoints,
  type PanelLoad,
  panelHeld,
  USUAL_CLOTH,
  wholeMargin,
  windMargins,
} from '@panewright/design';
import { mm, newton } from '@panewright/quantity';
import { expect, test } from 'vitest';
import { jobOf, rectangle } from '../testing/jobs.ts';

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const at = (number: number, x: number, y: number): HeldPoint => ({
  number,
  kind: 'corner',
  x,
  y,
  strength: {
    pull: { nominal: newton(12), low: newton(10), high: newton(14), sources: [] },
    breakAway: { low: newton(1.5), high: newton(4) },
    face: mm(20),
    friction: { low: 0.15, high: 0.3 },
  },
});
const square = [at(1, 0, 0), at(2, 1000, 0), at(3, 1000, 1000), at(4, 0, 1000)];
const load: PanelLoad = {
  ...USUAL_CLOTH,
  area: 1e6,
  weight: 1.5,
  openness: 0.05,
  wind: 5,
  gustFactor: 1,
};

// Oracle: worked by hand. Air of 1.225 kg/m³ (ISO 2533) at 5 m/s presses with 15.3125 Pa; on 1 m² that is 15.3125 N. A
// weight of 1.5 N at friction 0.15 asks for 10 N. Four pairs of 10 N hold 40 N.
test('four pairs of 10 N hold 40 N against 15.3 N of wind and 10 N that carry the weight', () => {
  const { low, value: middle, high, letsGoAt } = value(wholeMargin(square, load, 5));
  expect(low).toBeCloseTo(40 / 25.3125, 9);
  expect(middle).toBeCloseTo(48 / 25.3125, 9);
  expect(high).toBeCloseTo(56 / 25.3125, 9);
  // 30 N are left for the wind: half of 1.225 v² is 30 at v = 6.998 m/s.
  expect(letsGoAt.low).toBeCloseTo(Math.sqrt(60 / 1.225), 9);
  expect(value(wholeMargin(square, load, letsGoAt.low)).low).toBeCloseTo(1, 9);
});

test('a panel too heavy for its pairs lets go in no wind', () => {
  expect(value(wholeMargin(square, { ...load, weight: 7 }, 0)).letsGoAt.low).toBe(0);
});

test('each point lets go where its own low margin falls to 1, and the first of them is where the panel begins to give', () => {
  const winds = [0, 1, 2, 4, 8];
  const { points, curve } = value(windMargins(square, load, winds));
  const first = Math.min(...points.map(({ letsGo }) => letsGo.low!));
  const there = value(windMargins(square, load, [first])).curve[0]!;
  expect(there.weakest.low).toBeCloseTo(1, 5);
  expect(points.find(({ point }) => point === there.weakest.weakest)!.letsGo.low).toBeCloseTo(first, 9);
  expect(curve.map(({ wind }) => wind)).toEqual(winds);
  for (let k = 1; k < curve.length; k++) expect(curve[k]!.whole.low).toBeLessThan(curve[k - 1]!.whole.low);
});

// Two ways to the same figure: the plan's own margin of an opening, and the one that wind is drawn against.
test('at the wind of the job the margin is the plan’s', () => {
  const job = jobOf([rectangle('W1', 30, 20, 3)]);
  const plan = deriveShapes(job, defaultCatalogue, 1);
  const held = value(panelHeld(plan, defaultCatalogue, 'W1'));
  const points = value(heldPoints(held));
  const whole = value(wholeMargin(points, held.load, held.load.wind));
  const margin = held.own.margin!;
  expect(whole.low).toBeCloseTo(margin.low, 9);
  expect(whole.value).toBeCloseTo(margin.value.value, 9);
  expect(whole.letsGoAt.low).toBeCloseTo(margin.letsGoAt, 9);
  expect(panelHeld(plan, defaultCatalogue, 'W9')).toMatchObject({ ok: false });
});
