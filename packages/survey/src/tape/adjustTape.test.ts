import { mm } from '@panewright/quantity';
import {
  adjustTape,
  type Measured,
  SIDES,
  type TapeAdjustment,
  type TapeReading,
  type TapeSurvey,
} from '@panewright/survey';
import { expect, test } from 'vitest';
import { rigidOnto, type XY } from '../testing/rigidOnto.ts';
import { seededNormal } from '../testing/seededNormal.ts';

function readings(values: Partial<Record<Measured, number>>, sigma = 1): TapeReading[] {
  return Object.entries(values).map(([of, value]) => ({
    of: of as Measured,
    value: mm(value),
    sigma: mm(sigma),
  }));
}
const survey = (values: Partial<Record<Measured, number>>, sigma = 1): TapeSurvey => ({
  readings: readings(values, sigma),
  diagonalsTo: 'sharp',
});
function adjusted(of: TapeSurvey): TapeAdjustment {
  const result = adjustTape(of);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
}

/** What a faultless tape reads between the corners given, anticlockwise from bottom left. */
function tapeOf([a, b, c, d]: readonly [XY, XY, XY, XY]) {
  const far = ([x, y]: XY, [u, v]: XY) => Math.sqrt((x - u) ** 2 + (y - v) ** 2);
  return {
    bottom: far(a, b),
    right: far(b, c),
    top: far(c, d),
    left: far(d, a),
    rising: far(a, c),
    falling: far(b, d),
  };
}

// Oracle: Pythagoras. 24 in by 32 in has diagonals of 40 in (609.6, 812.8, 1016 mm).
test('a true rectangle comes back square, with nothing left over', () => {
  const result = adjusted(
    survey({ bottom: 609.6, top: 609.6, left: 812.8, right: 812.8, rising: 1016, falling: 1016 }),
  );
  for (const { outOfSquareOffset } of result.corners) expect(Math.abs(outOfSquareOffset)).toBeLessThan(1e-6);
  for (const { residual } of result.readings) expect(Math.abs(residual)).toBeLessThan(1e-6);
  expect(result.outline.segments).toHaveLength(4);
  expect(result.outline.segments[1]!.to.x).toBeCloseTo(609.6, 6);
  expect(result.outline.segments[1]!.to.y).toBeCloseTo(812.8, 6);
  expect(result.redundancy).toBe(1);
  expect(result.test?.passes).toBe(true);
  expect(result.suspects).toEqual([]);
});

// Oracle: the corners from which the readings were worked by Pythagoras.
test.each([
  [
    'a sloping top',
    [
      [0, 0],
      [900, 0],
      [900, 420],
      [0, 560],
    ],
  ],
  [
    'no side alike',
    [
      [0, 0],
      [1210, 0],
      [1130, 655],
      [95, 590],
    ],
  ],
  [
    'a lean of a quarter of the height',
    [
      [0, 0],
      [800, 0],
      [950, 600],
      [150, 600],
    ],
  ],
  [
    'a narrow top',
    [
      [0, 0],
      [1000, 0],
      [760, 500],
      [260, 510],
    ],
  ],
  [
    'a small, flat opening',
    [
      [0, 0],
      [300, 0],
      [310, 60],
      [2, 64],
    ],
  ],
] as const)('%s is found from sides and diagonals, and from sides and one diagonal', (_, corners) => {
  const { falling, ...five } = tapeOf(corners);
  for (const values of [{ ...five, falling }, five]) {
    const result = adjusted(survey(values));
    result.corners.forEach(({ point }, k) => {
      expect(point.x).toBeCloseTo(corners[k]![0], 5);
      expect(point.y).toBeCloseTo(corners[k]![1], 5);
    });
  }
});

// Oracle: over equal radii r the longest distance in a rectangle is √((w−2r)² + (h−2r)²) + 2r.
test('diagonals over the rounded corners give the same rectangle as diagonals between sharp ones', () => {
  const [w, h, r] = [900, 500, 70];
  const over = Math.sqrt((w - 2 * r) ** 2 + (h - 2 * r) ** 2) + 2 * r;
  const sides = { bottom: w, top: w, left: h, right: h };
  const radii = { radiusBottomLeft: r, radiusBottomRight: r, radiusTopRight: r, radiusTopLeft: r };
  const round = adjusted({
    readings: readings({ ...sides, rising: over, falling: over, ...radii }),
    diagonalsTo: 'round',
  });
  const sharp = adjusted(survey({ ...sides, rising: Math.hypot(w, h), falling: Math.hypot(w, h), ...radii }));
  for (const result of [round, sharp]) {
    expect(Math.max(...result.readings.map(({ residual }) => Math.abs(residual)))).toBeLessThan(1e-6);
    expect(result.outline.segments.map(({ kind }) => kind).join(' ')).toBe(
      'line arc line arc line arc line arc',
    );
    for (const segment of result.outline.segments) {
      if (segment.kind === 'arc') expect(segment.bulge).toBeCloseTo(Math.tan(Math.PI / 8), 9);
    }
    expect(result.outline.segments[0]!.to.x).toBeCloseTo(w - r, 6);
    expect(result.outline.segments[1]!.to.y).toBeCloseTo(r, 6);
  }
});

test('a corner whose radius reads 0 is sharp, and roundings that meet leave no straight between them', () => {
  const full = { radiusTopLeft: 250, radiusTopRight: 250, radiusBottomLeft: 0 };
  const { outline } = adjusted(
    survey({ bottom: 500, top: 500, left: 600, right: 600, rising: Math.hypot(500, 600), ...full }),
  );
  expect(outline.segments.map(({ kind }) => kind).join(' ')).toBe('line line arc arc line');
});

// Oracle: Euler's theorem on the quadrilateral, d₁² + d₂² = Σ sides² − 4m², with m = 0 in the rectangle. Its
// differential is the one condition; a redundancy number is (coefficient · sigma)² over their sum.
test('in a rectangle each diagonal is checked to a quarter, each side to its square over four diagonals squared', () => {
  const [w, h] = [1200, 500];
  const d = Math.hypot(w, h);
  const result = adjusted(survey({ bottom: w, top: w, left: h, right: h, rising: d, falling: d + 4 }));
  const share = Object.fromEntries(result.readings.map(({ of, redundancyNumber }) => [of, redundancyNumber]));
  expect(share.rising).toBeCloseTo(1 / 4, 2);
  expect(share.falling).toBeCloseTo(1 / 4, 2);
  expect(share.bottom).toBeCloseTo(w ** 2 / (4 * d ** 2), 2);
  expect(share.left).toBeCloseTo(h ** 2 / (4 * d ** 2), 2);
  expect(result.readings.reduce((sum, { redundancyNumber }) => sum + redundancyNumber, 0)).toBeCloseTo(1, 9);
  // The sides and one diagonal fix the other: here exactly 4 mm is left over, with sigma 1 / √(1/4).
  expect(result.closingError?.error).toBeCloseTo(4, 2);
  expect(result.closingError?.sigma).toBeCloseTo(2, 2);
  expect(result.test?.chiSquare).toBeCloseTo(4, 1);
});

test('without a reading to spare there is no test, and every redundancy number is 0', () => {
  const result = adjusted(survey({ bottom: 600, top: 600, left: 400, right: 400, rising: 721.11 }));
  expect(result.redundancy).toBe(0);
  expect(result.test).toBeUndefined();
  expect(result.closingError).toBeUndefined();
  for (const { redundancyNumber } of result.readings) expect(redundancyNumber).toBeLessThan(1e-6);
});

test('reading a length twice halves its variance where nothing else speaks of it', () => {
  const once = adjusted(survey({ bottom: 600, right: 400, rising: 721.11, left: 400, falling: 721.11 }));
  const again = adjustTape({
    diagonalsTo: 'sharp',
    readings: [
      ...readings({ bottom: 600, right: 400, rising: 721.11, left: 400, falling: 721.11 }),
      { of: 'bottom', value: mm(601), sigma: mm(1) },
    ],
  });
  if (!again.ok) throw new Error(again.refusal.code);
  expect(once.sides[0]!.sigma).toBeCloseTo(1, 6);
  expect(again.value.sides[0]!.sigma).toBeCloseTo(Math.SQRT1_2, 6);
  expect(again.value.sides[0]!.length).toBeCloseTo(600.5, 6);
});

// Oracle: Monte Carlo with seeded normal errors: 500 surveys, five intervals each, of which 95 % ± 2 % must hold.
test('the stated 95 % intervals hold the truth 95 times in 100', () => {
  const corners = [
    [0, 0],
    [1210, 0],
    [1180, 655],
    [25, 640],
  ] as const;
  const truth = tapeOf(corners);
  const far = ([x, y]: XY, [u, v]: XY) => Math.hypot(x - u, y - v);
  const mid = ([x, y]: XY, [u, v]: XY): XY => [(x + u) / 2, (y + v) / 2];
  const all = { ...truth, midWidth: far(mid(corners[0], corners[3]), mid(corners[1], corners[2])) };
  const normal = seededNormal(20260);
  let [held, counted, failed] = [0, 0, 0];
  const trials = 500;
  for (let trial = 0; trial < trials; trial++) {
    const noisy = Object.fromEntries(Object.entries(all).map(([of, value]) => [of, value + 0.8 * normal()]));
    const result = adjusted(survey(noisy, 0.8));
    if (!result.test!.passes) failed++;
    const off = [
      ...SIDES.map((of, k) => (result.sides[k]!.length - truth[of]) / result.sides[k]!.sigma),
      (result.diagonals.difference - (truth.rising - truth.falling)) / result.diagonals.differenceSigma,
    ];
    counted += off.length;
    held += off.filter((z) => Math.abs(z) < 1.959964).length;
  }
  expect(held / counted).toBeGreaterThan(0.93);
  expect(held / counted).toBeLessThan(0.97);
  // The test of the whole sends back 1 sound survey in 100.
  expect(failed / trials).toBeLessThan(0.02);
  expect(failed / trials).toBeGreaterThan(0.002);
});

// Oracle: Monte Carlo; the errors of the corners are taken after the best rigid fit to the true ones.
test('corner sigmas are those of the corners after the best fit of the whole', () => {
  const corners = [
    [0, 0],
    [1000, 0],
    [1010, 600],
    [-20, 590],
  ] as const;
  const truth = tapeOf(corners);
  const normal = seededNormal(7);
  const sums = [0, 0, 0, 0];
  const trials = 300;
  for (let trial = 0; trial < trials; trial++) {
    const noisy = Object.fromEntries(Object.entries(truth).map(([of, value]) => [of, value + normal()]));
    const found = adjusted(survey(noisy)).corners.map(({ point }) => [point.x, point.y] as const);
    const fitted = rigidOnto(found, corners);
    fitted.forEach(([x, y], k) => {
      sums[k]! += (x - corners[k]![0]) ** 2 + (y - corners[k]![1]) ** 2;
    });
  }
  const { corners: stated } = adjusted(survey(truth));
  stated.forEach(({ sigma }, k) => {
    const observed = Math.sqrt(sums[k]! / trials);
    // The root of both axes' variances lies between the longest half axis and √2 times it.
    expect(observed).toBeGreaterThan(sigma * 0.95);
    expect(observed).toBeLessThan(sigma * Math.SQRT2 * 1.05);
  });
});

const square = { bottom: 600, top: 600, left: 400, right: 400, rising: 721.11, falling: 721.11 };
test.each([
  [{}, { code: 'TAPE_READINGS_INSUFFICIENT', missing: 5 }],
  [
    { bottom: 600, left: 400 },
    { code: 'TAPE_READINGS_INSUFFICIENT', missing: 3 },
  ],
  [
    { bottom: 600, top: 600, left: 400, right: 400 },
    { code: 'TAPE_READINGS_INSUFFICIENT', missing: 1, wouldHelp: ['rising', 'falling'] },
  ],
  // The width at half height of a linkage of four bars does not move to first order.
  [
    { bottom: 600, top: 600, left: 400, right: 400, midWidth: 600 },
    { code: 'TAPE_READINGS_INSUFFICIENT', missing: 1 },
  ],
  [
    { ...square, rising: 1100 },
    { code: 'TAPE_SIDES_CANNOT_CLOSE', longest: 'rising', others: ['bottom', 'right'], reach: 1000 },
  ],
  [
    { ...square, bottom: 1500 },
    { code: 'TAPE_SIDES_CANNOT_CLOSE', longest: 'bottom' },
  ],
  [
    { ...square, radiusBottomLeft: 250, radiusTopLeft: 200 },
    { code: 'TAPE_RADII_TOO_LARGE', side: 'left' },
  ],
  [
    { ...square, left: -400 },
    { code: 'TAPE_VALUE_NOT_POSITIVE', of: 'left', index: 2, value: -400 },
  ],
  [
    { ...square, left: 0 },
    { code: 'TAPE_VALUE_NOT_POSITIVE', of: 'left' },
  ],
  [
    { ...square, radiusTopLeft: -1 },
    { code: 'TAPE_VALUE_NOT_POSITIVE', of: 'radiusTopLeft' },
  ],
  [
    { ...square, top: Number.NaN },
    { code: 'TAPE_VALUE_NOT_POSITIVE', of: 'top' },
  ],
  [
    tapeOf([
      [0, 0],
      [1000, 0],
      [450, 200],
      [100, 700],
    ]),
    { code: 'TAPE_NOT_CONVEX', corner: 'topRight' },
  ],
] as const)('%j is refused: %j', (values, refusal) => {
  expect(adjustTape(survey(values))).toMatchObject({ ok: false, refusal });
});

test('a sigma that is not above 0 is refused', () => {
  expect(adjustTape(survey(square, 0))).toMatchObject({
    ok: false,
    refusal: { code: 'TAPE_SIGMA_NOT_POSITIVE' },
  });
});
