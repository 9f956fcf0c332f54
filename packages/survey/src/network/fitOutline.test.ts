import { mm } from '@panewright/quantity';
import {
  adjustNetwork,
  fitOutline,
  type MarkSurvey,
  type NetworkAdjustment,
  type OutlinePlan,
  type PlannedOutline,
  type RunJoint,
  type SurveyPoint,
  type TapedDistance,
} from '@panewright/survey';
import { expect, test } from 'vitest';
import type { XY } from '../testing/rigidOnto.ts';
import { seededNormal } from '../testing/seededNormal.ts';

type Places = Readonly<Record<string, XY>>;

/** Each point taped from three marks, and the marks from each other. */
function network(places: Places, sigma = 1, noise = () => 0): NetworkAdjustment {
  const all: Places = { A: [0, -200], B: [900, -250], C: [450, 1100], ...places };
  const points = Object.keys(all).map(
    (name): SurveyPoint => ({ name, kind: /^[A-C]$/.test(name) ? 'mark' : 'outline' }),
  );
  const far = (a: string, b: string) => Math.hypot(all[a]![0] - all[b]![0], all[a]![1] - all[b]![1]);
  const pairs = [
    ...['A-B', 'A-C', 'B-C'],
    ...Object.keys(places).flatMap((name) => ['A', 'B', 'C'].map((m) => `${m}-${name}`)),
  ];
  const distances = pairs.map((pair): TapedDistance => {
    const [from, to] = pair.split('-') as [string, string];
    return { from, to, value: mm(far(from, to) + sigma * noise()), sigma: mm(sigma) };
  });
  const survey: MarkSurvey = { points, distances };
  const result = adjustNetwork(survey);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
}
function planned(from: NetworkAdjustment, plan: OutlinePlan): PlannedOutline {
  const result = fitOutline(from, plan);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
}
const sharp: RunJoint = { kind: 'sharp' };
const smooth: RunJoint = { kind: 'smooth' };
const round = (radius: number, sigma = 1): RunJoint => ({
  kind: 'round',
  radius: mm(radius),
  sigma: mm(sigma),
});
const line = (...points: string[]) => ({ kind: 'line', points }) as const;
const arc = (...points: string[]) => ({ kind: 'arc', points }) as const;

// Three points on each side of a trapezoid 1000 wide, 500 and 600 high.
const SIDES: Places = {
  b1: [100, 0],
  b2: [500, 0],
  b3: [900, 0],
  r1: [1000, 100],
  r2: [1000, 300],
  r3: [1000, 420],
  t1: [800, 520],
  t2: [500, 550],
  t3: [100, 590],
  l1: [0, 500],
  l2: [0, 300],
  l3: [0, 100],
};
const RUNS = [line('b1', 'b2', 'b3'), line('r1', 'r2', 'r3'), line('t1', 't2', 't3'), line('l1', 'l2', 'l3')];
const TOP = Math.hypot(1000, 100);

// Oracle: the figure the points were taken from; lengths by Pythagoras.
test('points on four straight sides give their trapezoid, sharp or rounded', () => {
  const from = network(SIDES);
  const plain = planned(from, { runs: RUNS, joints: [sharp, sharp, sharp, sharp] });
  [1000, 500, TOP, 600].forEach((length, k) => {
    expect(plain.edges[k]!.length).toBeCloseTo(length, 4);
  });
  expect(plain.corners.map(({ kind }) => kind)).toEqual(['sharp', 'sharp', 'sharp', 'sharp']);
  const rounded = planned(from, { runs: RUNS, joints: [round(60), sharp, round(40), sharp] });
  expect(rounded.edges.map(({ kind }) => kind).join(' ')).toBe('arc line line arc line line');
  expect(rounded.edges[0]!.radius).toBeCloseTo(60, 6);
  expect(rounded.edges[1]!.length).toBeCloseTo(940, 4);
  // The tapered corner: setback r tan(turn / 2), the turn being 90° less the slope of the top.
  const turn = Math.PI / 2 - Math.atan(0.1);
  expect(rounded.edges[2]!.length).toBeCloseTo(500 - 40 * Math.tan(turn / 2), 4);
  for (const { residual } of rounded.residuals) expect(Math.abs(residual)).toBeLessThan(1e-4);
});

test('curved runs join straight ones smoothly', () => {
  const half = (centre: number, degrees: number): XY => [
    centre + 250 * Math.cos((degrees * Math.PI) / 180),
    250 + 250 * Math.sin((degrees * Math.PI) / 180),
  ];
  const places: Places = {
    b1: [300, 0],
    b2: [700, 0],
    e1: half(750, -60),
    e2: half(750, 5),
    e3: half(750, 70),
    t1: [700, 500],
    t2: [300, 500],
    w1: half(250, 110),
    w2: half(250, 180),
    w3: half(250, 240),
  };
  const { edges } = planned(network(places), {
    runs: [line('b1', 'b2'), arc('e1', 'e2', 'e3'), line('t1', 't2'), arc('w1', 'w2', 'w3')],
    joints: [smooth, smooth, smooth, smooth],
  });
  expect(edges[1]!.radius).toBeCloseTo(250, 4);
  expect(edges[3]!.radius).toBeCloseTo(250, 4);
  expect(edges[0]!.length).toBeCloseTo(500, 4);
  expect(edges[1]!.sweep).toBeCloseTo(Math.PI, 6);
});

// Oracle: Monte Carlo, seeded. Lengths and radii do not depend on the frame, so they are compared with the figure's.
test('the stated 95 % intervals of lengths and radii hold the truth 95 times in 100', () => {
  const [tapeNoise, radiusNoise] = [seededNormal(41), seededNormal(42)];
  let [held, counted] = [0, 0];
  const turn = Math.PI / 2 - Math.atan(0.1);
  const truth = [60, 940, 500 - 40 * Math.tan(turn / 2), 40, TOP - 40 * Math.tan(turn / 2), 540];
  for (let trial = 0; trial < 150; trial++) {
    const from = network(SIDES, 0.8, tapeNoise);
    const joints = [round(60 + 2 * radiusNoise(), 2), sharp, round(40 + 2 * radiusNoise(), 2), sharp];
    planned(from, { runs: RUNS, joints }).edges.forEach((edge, k) => {
      const off =
        edge.kind === 'arc'
          ? (edge.radius! - truth[k]!) / edge.radiusSigma!
          : (edge.length - truth[k]!) / edge.lengthSigma;
      counted++;
      if (Math.abs(off) < 1.96) held++;
    });
  }
  expect(counted).toBe(900);
  expect(held / counted).toBeGreaterThan(0.93);
  expect(held / counted).toBeLessThan(0.97);
});

test('a side told straight that bows by 12 mm shows at its middle point', () => {
  const bowed = { ...SIDES, t2: [500 + 1.2, 550 + 11.9] as const };
  const { residuals } = planned(network(bowed), { runs: RUNS, joints: [sharp, sharp, sharp, sharp] });
  const worst = residuals.reduce((most, each) =>
    Math.abs(each.standardised ?? 0) > Math.abs(most.standardised ?? 0) ? each : most,
  );
  expect(worst.run).toBe(2);
  expect(Math.abs(worst.standardised!)).toBeGreaterThan(3.3);
  for (const { run, standardised } of residuals)
    if (run !== 2) expect(Math.abs(standardised!)).toBeLessThan(1);
});

const from = network(SIDES);
const four = [sharp, sharp, sharp, sharp];
test.each([
  [
    { runs: [RUNS[0]!], joints: [sharp] },
    { code: 'OUTLINE_TOO_FEW_RUNS', runs: 1 },
  ],
  [
    { runs: RUNS, joints: [sharp] },
    { code: 'OUTLINE_JOINTS_UNEQUAL', runs: 4, joints: 1 },
  ],
  [
    { runs: [line('b1', 'zz'), ...RUNS.slice(1)], joints: four },
    { code: 'OUTLINE_POINT_UNKNOWN', name: 'zz', run: 0 },
  ],
  [
    { runs: [line('b1'), ...RUNS.slice(1)], joints: four },
    { code: 'OUTLINE_RUN_UNDETERMINED', run: 0, points: 1, need: 2 },
  ],
  [
    { runs: [arc('b1', 'b2'), ...RUNS.slice(1)], joints: four },
    { code: 'OUTLINE_RUN_UNDETERMINED', run: 0, points: 2, need: 3 },
  ],
  [
    { runs: RUNS, joints: [smooth, sharp, sharp, sharp] },
    { code: 'OUTLINE_LINES_JOIN_SMOOTHLY', joint: 0 },
  ],
  [
    { runs: RUNS, joints: [round(0), sharp, sharp, sharp] },
    { code: 'OUTLINE_RADIUS_NOT_POSITIVE', joint: 0, radius: 0 },
  ],
  [
    { runs: RUNS, joints: [round(9, 0), sharp, sharp, sharp] },
    { code: 'OUTLINE_SIGMA_NOT_POSITIVE', joint: 0, sigma: 0 },
  ],
  [
    { runs: RUNS, joints: [round(700), round(700), sharp, sharp] },
    { code: 'OUTLINE_RADII_TOO_LARGE', run: 0 },
  ],
  [{ runs: RUNS.toReversed(), joints: four }, { code: 'OUTLINE_DOES_NOT_CLOSE' }],
  [{ runs: [RUNS[0]!, RUNS[2]!, RUNS[1]!, RUNS[3]!], joints: four }, { code: 'OUTLINE_DOES_NOT_CLOSE' }],
] as const)('case %#: a plan that makes no outline is refused', (plan, refusal) => {
  expect(fitOutline(from, plan as OutlinePlan)).toMatchObject({ ok: false, refusal });
});

test('a straight sill and a half circle over it meet where they cross, at right angles', () => {
  // Oracle: the circle about (300, -200) of radius 500 crosses y = -200 at x = -200 and 800.
  const arc = (degrees: number): [number, number] => [
    300 + 500 * Math.cos((degrees * Math.PI) / 180),
    -200 + 500 * Math.sin((degrees * Math.PI) / 180),
  ];
  const places = { A: [100, -320], B: [500, -330], a: [-100, -200], q: [700, -200] } as const;
  const round = { u: arc(30), v: arc(60), w: arc(90), x: arc(120), y: arc(150) } as const;
  const all: Readonly<Record<string, readonly [number, number]>> = { ...places, ...round };
  const names = Object.keys(all);
  const network = adjustNetwork({
    points: names.map((name) => ({
      name,
      kind: /[AB]/.test(name) ? ('mark' as const) : ('outline' as const),
    })),
    distances: names.slice(1).flatMap((to, k) =>
      ['A', 'B'].slice(0, k === 0 ? 1 : 2).map((from) => {
        const [[ax, ay], [bx, by]] = [all[from]!, all[to]!];
        return { from, to, value: mm(Math.hypot(bx - ax, by - ay)), sigma: mm(0.8) };
      }),
    ),
  });
  if (!network.ok) throw new Error(network.refusal.code);
  const fitted = fitOutline(network.value, {
    runs: [
      { kind: 'line', points: ['a', 'q'] },
      { kind: 'arc', points: ['u', 'v', 'w', 'x', 'y'] },
    ],
    joints: [{ kind: 'sharp' }, { kind: 'sharp' }],
  });
  if (!fitted.ok) throw new Error(fitted.refusal.code);
  const [sill, curve] = fitted.value.edges;
  expect([sill!.length, curve!.radius]).toEqual([expect.closeTo(1000, 4), expect.closeTo(500, 4)]);
  const sharp = fitted.value.corners.filter(({ kind }) => kind === 'sharp');
  expect(sharp).toHaveLength(2);
  for (const { turn } of sharp) expect(turn).toBeCloseTo(Math.PI / 2, 6);
});
