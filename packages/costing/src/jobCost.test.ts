import { jobCost, marginOfMarkup, purchase, roundMoney, share } from '@panewright/costing';
import { minute, money } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// Oracle: textbook problem posted online (job with two departments; inputs seen, answer by arithmetic). Departments'
// predetermined rates are (218400 + 2.80·84000)/84000 and (531050 + 4.80·55900)/55900.
test('the pottery job of the textbook costs 7419.00, 337.23 a unit', () => {
  const moulding = 218_400 / 84_000 + 2.8;
  const painting = 531_050 / 55_900 + 4.8;
  expect(moulding).toBeCloseTo(5.4, 12);
  expect(painting).toBeCloseTo(14.3, 12);
  const overhead = 320 * moulding + 130 * painting;
  expect(overhead).toBeCloseTo(3587, 9);
  const result = jobCost({
    material: money((942 + 1180) * 100),
    minutes: minute(60),
    labourRate: money((750 + 960) * 100),
    overheadRate: overhead / (750 + 960),
    markup: 0,
    tax: 0,
  });
  expect(result.overhead).toBe(358_700);
  expect(result.cost).toBe(741_900);
  expect(roundMoney(result.cost / 22)).toBe(33_723);
});

// Oracle: textbook problem posted online, Job 323 (inputs seen, answer by arithmetic).
test('job 323: materials 2108, 36 h at 18, 234 machine hours at 25 cost 8606', () => {
  const result = jobCost({
    material: money(210_800),
    minutes: minute(36 * 60),
    labourRate: money(1800),
    overheadRate: (234 * 25) / (36 * 18),
    markup: 0,
    tax: 0,
  });
  expect(result.cost).toBe(860_600);
});

// Oracle: an accounting dictionary's example.
test('labour 20, material 5, overhead 10 is a job of 35', () => {
  const result = jobCost({
    material: money(500),
    minutes: minute(60),
    labourRate: money(2000),
    overheadRate: 0.5,
    markup: 0.6,
    tax: 0,
  });
  expect(result.cost).toBe(3500);
  expect(result.price).toBe(5600);
  expect(result.margin).toBeCloseTo(0.375, 12);
});

// Oracle: identity markup/(1 + markup), the usual table.
test.each([
  [0.25, 0.2],
  [0.4, 0.285714],
  [0.5, 0.333333],
  [0.6, 0.375],
  [1, 0.5],
])('a markup of %f is a margin of %f', (markup, margin) => {
  expect(marginOfMarkup(markup)).toBeCloseTo(margin, 5);
});

test('whole packs: 61.2 m from rolls of 30 m is three rolls with 28.8 m over', () => {
  const result = purchase(61_200, { quantity: 30_000, price: money(1450) });
  expect(result).toMatchObject({ ok: true, value: { packs: 3, costBought: 4350, costUsed: 2958 } });
  expect(result.ok && result.value.left).toBeCloseTo(28_800, 9);
});

test('a need of exactly two packs, summed with rounding noise, buys two', () => {
  const result = purchase(0.1 + 0.2 + 0.3, { quantity: 0.3, price: money(100) });
  expect(result).toMatchObject({ ok: true, value: { packs: 2 } });
});

test('a need that is not a number is refused', () => {
  expect(purchase(Number.NaN, { quantity: 1, price: money(1) })).toMatchObject({
    ok: false,
    refusal: { code: 'NEED_NOT_FINITE' },
  });
});

test('shares always sum to the amount and differ from the exact share by less than one unit', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 10_000_000 }),
      fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 30 }),
      (total, weights) => {
        const parts = share(money(total), weights);
        const sum = weights.reduce((a, b) => a + b, 0);
        expect(parts.reduce((a, b) => a + b, 0)).toBe(total);
        for (const [index, part] of parts.entries()) {
          const exact = sum > 0 ? (total * weights[index]!) / sum : total / weights.length;
          expect(Math.abs(part - exact)).toBeLessThan(1.001);
        }
      },
    ),
  );
});
