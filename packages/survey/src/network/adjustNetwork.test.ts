import { mm } from '@panewright/quantity';
import {
  adjustNetwork,
  chiSquareQuantile,
  intersectTapes,
  type MarkSurvey,
  type NetworkAdjustment,
  type SurveyPoint,
  type TapedDistance,
} from '@panewright/survey';
import { expect, test } from 'vitest';
import { rigidOnto, type XY } from '../testing/rigidOnto.ts';
import { seededNormal } from '../testing/seededNormal.ts';

type Places = Readonly<Record<string, XY>>;

const far = ([x, y]: XY, [u, v]: XY) => Math.sqrt((x - u) ** 2 + (y - v) ** 2);
const points = (places: Places): SurveyPoint[] =>
  Object.keys(places).map((name) => ({ name, kind: /^[A-C]$/.test(name) ? 'mark' : 'outline' }));
const tapes = (places: Places, pairs: readonly string[], sigma = 1, noise = () => 0): TapedDistance[] =>
  pairs.map((pair) => {
    const [from, to] = pair.split('-') as [string, string];
    return { from, to, value: mm(far(places[from]!, places[to]!) + sigma * noise()), sigma: mm(sigma) };
  });
function adjusted(survey: MarkSurvey): NetworkAdjustment {
  const result = adjustNetwork(survey);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
}

// Two marks below the opening; its corners and the middles of top and sides, anticlockwise.
const OUTSIDE: Places = {
  A: [0, 0],
  B: [900, 0],
  p1: [-100, 120],
  p2: [1010, 100],
  p3: [1000, 400],
  p4: [960, 690],
  p5: [450, 720],
  p6: [-60, 700],
};
const RING = ['p1', 'p2', 'p3', 'p4', 'p5', 'p6'];
const fromMarks = (marks: readonly string[], names: readonly string[]) =>
  names.flatMap((name) => marks.map((mark) => `${mark}-${name}`));
const round = RING.map((name, i) => `${name}-${RING[(i + 1) % RING.length]}`);

// Oracle: the 3-4-5 triangle, reference value M6.
test('tapes of 800 and 600 from marks 1000 apart meet at (640, 480) and at its mirror image', () => {
  const [left, right] = intersectTapes({ x: 0, y: 0 }, { x: 1000, y: 0 }, 800, 600)!;
  expect(left.x).toBeCloseTo(640, 9);
  expect(left.y).toBeCloseTo(480, 9);
  expect(right.x).toBeCloseTo(640, 9);
  expect(right.y).toBeCloseTo(-480, 9);
  expect(intersectTapes({ x: 0, y: 0 }, { x: 1000, y: 0 }, 300, 600)).toBeUndefined();
});

// Oracle M5: Ghilani, Adjustment Computations, ch. 14: three stations, three distances (data from memory, the result
// computed independently): position, residuals calculated − observed, S0, Sx, Sy.
test('one point from three known stations agrees with the worked trilateration', () => {
  const stations = [
    [865.4, 4527.15, 6049.0],
    [2432.55, 2047.25, 4736.83],
    [2865.22, 27.15, 5446.49],
  ] as const;
  const result = adjusted({
    points: [
      ...stations.map(
        ([x, y], i) => ({ name: `S${i}`, kind: 'mark', fixed: { x: mm(x), y: mm(y) } }) as const,
      ),
      { name: 'U', kind: 'mark' },
    ],
    distances: stations.map(([, , value], i) => ({ from: `S${i}`, to: 'U', value: mm(value), sigma: mm(1) })),
  });
  const { at, sigmaX, sigmaY } = result.points[3]!;
  expect(at.x).toBeCloseTo(6861.317, 2);
  expect(at.y).toBeCloseTo(3727.819, 2);
  expect(result.unitSigma).toBeCloseTo(0.0977, 4);
  expect(sigmaX * result.unitSigma!).toBeCloseTo(0.0775, 4);
  expect(sigmaY * result.unitSigma!).toBeCloseTo(0.1542, 4);
  [-0.0374, 0.0768, -0.0474].forEach((v, i) => {
    expect(Math.abs(result.distances[i]!.residual - v)).toBeLessThan(6e-5);
  });
});

test('two marks outside the opening place every point, the order round it telling the side', () => {
  const pairs = ['A-B', ...fromMarks(['A', 'B'], RING)];
  const result = adjusted({ points: points(OUTSIDE), distances: tapes(OUTSIDE, pairs) });
  expect(result.redundancy).toBe(0);
  expect(result.test).toBeUndefined();
  for (const { name, at } of result.points) {
    expect(at.x).toBeCloseTo(OUTSIDE[name]![0], 6);
    expect(at.y).toBeCloseTo(OUTSIDE[name]![1], 6);
  }
});

const WITHIN: Places = { ...OUTSIDE, A: [100, 400], B: [850, 400] };
test('with marks within the opening the sides must be told, and a point between two neighbours follows them', () => {
  const distances = tapes(WITHIN, ['A-B', ...fromMarks(['A', 'B'], ['p1', 'p2', 'p4', 'p5', 'p6'])]);
  const told = (sides: Readonly<Record<string, 'left' | 'right'>>): MarkSurvey => ({
    points: points(WITHIN)
      .filter(({ name }) => name !== 'p3')
      .map((point) => (sides[point.name] ? { ...point, side: sides[point.name]! } : point)),
    distances,
  });
  const result = adjusted(told({ p1: 'right', p2: 'right', p4: 'left', p6: 'left' }));
  const turned = result.points.map(({ at }): XY => [at.x, at.y]);
  const truth = result.points.map(({ name }) => WITHIN[name]!);
  rigidOnto(turned, truth).forEach((point, i) => {
    expect(far(point, truth[i]!)).toBeLessThan(1e-5);
  });
  expect(adjustNetwork(told({ p1: 'right', p4: 'left', p6: 'left' }))).toEqual({
    ok: false,
    refusal: { code: 'NETWORK_MIRROR_AMBIGUOUS', names: ['p2'] },
  });
  expect(adjustNetwork(told({ p1: 'left', p2: 'left', p4: 'right', p6: 'right' }))).toMatchObject({
    refusal: { code: 'NETWORK_ORDER_CLOCKWISE' },
  });
});

test('a third mark decides every side by itself', () => {
  const three: Places = {
    A: [100, 350],
    B: [850, 420],
    C: [420, 600],
    ...Object.fromEntries(RING.map((n) => [n, OUTSIDE[n]!])),
  };
  const result = adjusted({
    points: points(three),
    distances: tapes(three, ['A-B', 'A-C', 'B-C', ...fromMarks(['A', 'B', 'C'], RING)]),
  });
  const truth = result.points.map(({ name }) => three[name]!);
  rigidOnto(
    result.points.map(({ at }): XY => [at.x, at.y]),
    truth,
  ).forEach((point, i) => {
    expect(far(point, truth[i]!)).toBeLessThan(1e-5);
  });
  expect(result.redundancy).toBe(6);
});

// Oracle: Monte Carlo, seeded. The 95 % ellipse (chi-square, 2 degrees) of each point, its error taken after the best
// rigid fit of all points, holds the truth 95 times in 100; so does the whole set's 95 % region.
test('the stated 95 % regions hold the truth 95 times in 100', () => {
  const pairs = ['A-B', ...fromMarks(['A', 'B'], RING), ...round];
  const truth = Object.values(OUTSIDE);
  const normal = seededNormal(77);
  const limit = chiSquareQuantile(0.95, 2);
  let [held, counted, failed] = [0, 0, 0];
  const trials = 700;
  for (let trial = 0; trial < trials; trial++) {
    const result = adjusted({ points: points(OUTSIDE), distances: tapes(OUTSIDE, pairs, 0.7, normal) });
    if (!result.test!.passes) failed++;
    const found = rigidOnto(
      result.points.map(({ at }): XY => [at.x, at.y]),
      truth,
    );
    found.forEach(([x, y], i) => {
      const [xx, xy, yy] = [0, 1].flatMap((a) =>
        [0, 1].slice(a).map((b) => result.covariance[2 * i + a]![2 * i + b]!),
      ) as [number, number, number];
      const [dx, dy] = [x - truth[i]![0], y - truth[i]![1]];
      const distance = (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / (xx * yy - xy * xy);
      counted++;
      if (distance < limit) held++;
    });
  }
  expect(held / counted).toBeGreaterThan(0.93);
  expect(held / counted).toBeLessThan(0.97);
  expect(failed / trials).toBeLessThan(0.025);
});

test('redundancy numbers lie between 0 and 1 and add up to the redundancy', () => {
  const pairs = ['A-B', ...fromMarks(['A', 'B'], RING), ...round];
  const result = adjusted({ points: points(OUTSIDE), distances: tapes(OUTSIDE, pairs) });
  expect(result.redundancy).toBe(19 - 13);
  expect(result.distances.reduce((sum, { redundancyNumber }) => sum + redundancyNumber, 0)).toBeCloseTo(6, 9);
});

test.each([
  ['A-p4', 25.4, 'oneInch'],
  ['B-p1', 100, 'hundredMillimetres'],
  ['p4-p5', -12.7, 'halfInch'],
] as const)('a blunder of %s by %s mm is found and called %s', (pair, blunder, cause) => {
  const pairs = ['A-B', ...fromMarks(['A', 'B'], RING), ...round, 'p1-p4', 'p2-p6'];
  const normal = seededNormal(5);
  const distances = tapes(OUTSIDE, pairs, 0.7, normal).map((tape) =>
    `${tape.from}-${tape.to}` === pair ? { ...tape, value: mm(tape.value + blunder) } : tape,
  );
  const result = adjusted({ points: points(OUTSIDE), distances });
  expect(result.test!.passes).toBe(false);
  const [first] = result.suspects;
  expect(`${first!.from}-${first!.to}`).toBe(pair);
  expect(first!.cause).toBe(cause);
  expect(Math.abs(first!.impliedError - blunder)).toBeLessThan(4);
  expect(first!.confidence).toBeGreaterThan(0.5);
});

test('a point whose tapes meet at less than 30° is called weak', () => {
  const flat: Places = {
    A: [0, 0],
    B: [900, 0],
    p1: [200, 60],
    p2: [1900, 250],
    p3: [1000, 700],
    p4: [-50, 650],
  };
  const result = adjusted({
    points: points(flat),
    distances: tapes(flat, ['A-B', ...fromMarks(['A', 'B'], ['p1', 'p2', 'p3', 'p4'])]),
  });
  // Oracle: angles from atan: at p1 the tapes run 16.7° up and 4.9° up on the other side; at p2 7.5° and 14.0°.
  expect(result.weak.map(({ name }) => name)).toEqual(['p1', 'p2']);
  const degrees = result.weak.map(({ angle }) => (angle * 180) / Math.PI);
  expect(degrees[0]).toBeCloseTo(
    Math.atan(60 / 200) * (180 / Math.PI) + Math.atan(60 / 700) * (180 / Math.PI),
    6,
  );
  expect(degrees[1]).toBeCloseTo(
    Math.atan(0.25) * (180 / Math.PI) - Math.atan(250 / 1900) * (180 / Math.PI),
    6,
  );
});

// Oracle: brute force. Every pair is in turn added to the survey and the whole adjusted again.
test('the next reading advised is the best of all, by trying each', () => {
  const pairs = ['A-B', ...fromMarks(['A', 'B'], RING), 'p5-p6'];
  const survey: MarkSurvey = { points: points(OUTSIDE), distances: tapes(OUTSIDE, pairs) };
  const { next } = adjusted(survey);
  const worst = (result: NetworkAdjustment) => Math.max(...result.points.map(({ ellipse }) => ellipse.major));
  const names = Object.keys(OUTSIDE);
  const tried = names.flatMap((from, i) =>
    names.slice(i + 1).map((to) => {
      const distances = [...survey.distances, ...tapes(OUTSIDE, [`${from}-${to}`])];
      return { from, to, worst: worst(adjusted({ ...survey, distances })) };
    }),
  );
  const best = tried.reduce((least, each) => (each.worst < least.worst ? each : least));
  expect(next).toMatchObject({ from: best.from, to: best.to });
  expect(next!.worstThen).toBeCloseTo(best.worst, 6);
  expect(next!.worstNow).toBeCloseTo(worst(adjusted(survey)), 9);
});

const base: MarkSurvey = {
  points: points(OUTSIDE),
  distances: tapes(OUTSIDE, ['A-B', ...fromMarks(['A', 'B'], RING)]),
};
const tape = (from: string, to: string, value = 100, sigma = 1): TapedDistance => ({
  from,
  to,
  value: mm(value),
  sigma: mm(sigma),
});
test.each([
  [
    { ...base, points: [] },
    { code: 'NETWORK_TOO_FEW_POINTS', points: 0 },
  ],
  [
    { ...base, points: [...base.points, base.points[0]!] },
    { code: 'NETWORK_NAME_TWICE', name: 'A' },
  ],
  [
    { ...base, distances: [...base.distances, tape('A', 'Z')] },
    { code: 'NETWORK_NAME_UNKNOWN', name: 'Z', index: 13 },
  ],
  [
    { ...base, distances: [tape('A', 'A')] },
    { code: 'NETWORK_DISTANCE_TO_ITSELF', name: 'A' },
  ],
  [
    { ...base, distances: [tape('A', 'B', -5)] },
    { code: 'NETWORK_DISTANCE_NOT_POSITIVE', value: -5 },
  ],
  [{ ...base, distances: [tape('A', 'B', Number.NaN)] }, { code: 'NETWORK_DISTANCE_NOT_POSITIVE' }],
  [
    { ...base, distances: [tape('A', 'B', 5, 0)] },
    { code: 'NETWORK_SIGMA_NOT_POSITIVE', sigma: 0 },
  ],
  [{ ...base, distances: [] }, { code: 'NETWORK_POINTS_LOOSE' }],
  [
    { ...base, distances: base.distances.filter(({ to, from }) => to !== 'p3' || from !== 'A') },
    { code: 'NETWORK_POINTS_LOOSE', names: ['p3'] },
  ],
  [
    { ...base, distances: base.distances.map((d) => (d.to === 'p5' ? { ...d, value: mm(300) } : d)) },
    { code: 'NETWORK_TAPES_DO_NOT_MEET', name: 'p5', to: ['A', 'B'], lengths: [300, 300], between: 900 },
  ],
  [
    { ...base, points: base.points.map((p, i) => (i === 0 ? { ...p, fixed: { x: mm(0), y: mm(0) } } : p)) },
    { code: 'NETWORK_ONE_POINT_FIXED', name: 'A' },
  ],
] as const)('case %#: a survey that cannot be solved says which point and why', (survey, refusal) => {
  expect(adjustNetwork(survey as MarkSurvey)).toMatchObject({ ok: false, refusal });
});

// Oracle for the helper above: the handbook's square, 1000 × 600 turned 3° and moved (12, −7).
test('the rigid fit these tests lean on undoes a turn of 3° and a shift', () => {
  const square: XY[] = [
    [0, 0],
    [1000, 0],
    [1000, 600],
    [0, 600],
  ];
  const [c, s] = [Math.cos(Math.PI / 60), Math.sin(Math.PI / 60)];
  const moved = square.map(([x, y]): XY => [c * x - s * y + 12, s * x + c * y - 7]);
  rigidOnto(moved, square).forEach((point, i) => {
    expect(far(point, square[i]!)).toBeLessThan(1e-9);
  });
});

test('marks inside the opening need no sides where points are taped to one another', () => {
  // Oracle: an L of known places; tapes are the distances between them.
  const places: Readonly<Record<string, readonly [number, number]>> = {
    ...{ M1: [250, 180], M2: [520, 420], a: [0, 0], b: [800, 0] },
    ...{ c: [800, 350], d: [500, 350], e: [500, 600], f: [0, 600] },
  };
  const ring = ['a', 'b', 'c', 'd', 'e', 'f'];
  const pairs = [
    ['M1', 'M2'],
    ...ring.flatMap((name, k) => [
      ['M1', name],
      ['M2', name],
      [name, ring[(k + 1) % 6]!],
    ]),
  ] as [string, string][];
  const found = adjustNetwork({
    points: Object.keys(places).map((name) => ({
      name,
      kind: name.startsWith('M') ? ('mark' as const) : ('outline' as const),
    })),
    distances: pairs.map(([from, to]) => {
      const [[ax, ay], [bx, by]] = [places[from]!, places[to]!];
      return { from, to, value: mm(Math.hypot(bx - ax, by - ay)), sigma: mm(1) };
    }),
  });
  if (!found.ok) throw new Error(found.refusal.code);
  const at = new Map(found.value.points.map((one) => [one.name, one.at]));
  for (const [a, b] of ring.flatMap((from, k) => ring.slice(k + 1).map((to) => [from, to] as const))) {
    const [[ax, ay], [bx, by]] = [places[a]!, places[b]!];
    const [p, q] = [at.get(a)!, at.get(b)!];
    expect(Math.hypot(q.x - p.x, q.y - p.y)).toBeCloseTo(Math.hypot(bx - ax, by - ay), 5);
  }
});
