import { levenbergMarquardt, statistics } from '@panewright/survey';
import { expect, test } from 'vitest';

// Oracle: NIST Statistical Reference Datasets, nonlinear regression: certified values, 11 digits.
const MISRA1A = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  model: ([b1, b2]: ArrayLike<number> & Iterable<number>, x: number) => b1! * (1 - Math.exp(-b2! * x)),
  slopes: ([b1, b2]: Iterable<number>, x: number) => [1 - Math.exp(-b2! * x), b1! * x * Math.exp(-b2! * x)],
  starts: [
    [500, 0.0001],
    [250, 0.0005],
  ],
  certified: [2.3894212918e2, 5.5015643181e-4],
  deviations: [2.7070075241, 7.2668688436e-6],
  sumOfSquares: 1.2455138894e-1,
};

const ROSZMAN1 = {
  x: [
    -4868.68, -4868.09, -4867.41, -3375.19, -3373.14, -3372.03, -2473.74, -2472.35, -2469.45, -1894.65,
    -1893.4, -1497.24, -1495.85, -1493.41, -1208.68, -1206.18, -1206.04, -997.92, -996.61, -996.31, -834.94,
    -834.66, -710.03, -530.16, -464.17,
  ],
  y: [
    0.252429, 0.252141, 0.251809, 0.297989, 0.296257, 0.295319, 0.339603, 0.337731, 0.33382, 0.38951,
    0.386998, 0.438864, 0.434887, 0.427893, 0.471568, 0.461699, 0.461144, 0.513532, 0.506641, 0.505062,
    0.535648, 0.533726, 0.568064, 0.612886, 0.624169,
  ],
  model: ([b1, b2, b3, b4]: Iterable<number>, x: number) =>
    b1! - b2! * x - Math.atan(b3! / (x - b4!)) / Math.PI,
  slopes: ([, , b3, b4]: Iterable<number>, x: number) => {
    const below = Math.PI * ((x - b4!) ** 2 + b3! ** 2);
    return [1, -x, -(x - b4!) / below, -b3! / below];
  },
  starts: [
    [0.1, -0.00001, 1000, -100],
    [0.2, -0.000005, 1200, -150],
  ],
  certified: [2.0196866396e-1, -6.1953516256e-6, 1.2044556708e3, -1.8134269537e2],
  deviations: [1.9172666023e-2, 3.2058931691e-6, 7.4050983057e1, 4.9573513849e1],
  sumOfSquares: 4.9484847331e-4,
};

for (const [name, data] of [
  ['Misra1a', MISRA1A],
  ['Roszman1', ROSZMAN1],
] as const) {
  test.each([0, 1])(
    `${name} from start %i gives the certified parameters, deviations and sum of squares`,
    (which) => {
      const size = data.certified.length;
      const solved = levenbergMarquardt({
        start: data.starts[which]!,
        evaluate: (at) => ({
          residuals: Float64Array.from(data.x, (x, i) => data.model(at, x) - data.y[i]!),
          jacobian: Float64Array.from(data.x.flatMap((x) => data.slopes(at, x))),
        }),
      });
      if (!solved.ok) throw new Error(solved.refusal.code);
      const { parameters, sumOfSquares } = solved.value;
      const { covariance } = statistics(solved.value, size)!;
      const variance = sumOfSquares / (data.x.length - size);
      data.certified.forEach((value, i) => {
        expect(Math.abs(parameters[i]! / value - 1)).toBeLessThan(1e-7);
        const deviation = Math.sqrt(variance * covariance[i * size + i]!);
        expect(Math.abs(deviation / data.deviations[i]! - 1)).toBeLessThan(1e-6);
      });
      expect(Math.abs(sumOfSquares / data.sumOfSquares - 1)).toBeLessThan(1e-9);
    },
  );
}

test('a model that never gives a number is refused, not returned', () => {
  const solved = levenbergMarquardt({
    start: [1],
    evaluate: () => ({ residuals: Float64Array.of(Number.NaN), jacobian: Float64Array.of(1) }),
    mostSteps: 20,
  });
  expect(solved).toMatchObject({ ok: false, refusal: { code: 'LEAST_SQUARES_NOT_CONVERGED' } });
});

test('a direction the data leave open keeps its start, and has no covariance', () => {
  // Two parameters, only their sum observed.
  const solved = levenbergMarquardt({
    start: [0, 0],
    evaluate: ([a, b]) => ({
      residuals: Float64Array.of(a! + b! - 10, a! + b! - 12),
      jacobian: Float64Array.of(1, 1, 1, 1),
    }),
  });
  if (!solved.ok) throw new Error(solved.refusal.code);
  expect(solved.value.parameters[0]).toBeCloseTo(5.5, 6);
  expect(solved.value.parameters[1]).toBeCloseTo(5.5, 6);
  expect(statistics(solved.value, 2)).toBeUndefined();
});
