import { defaultCatalogue, derive, type MarksSurvey, type Opening } from '@panewright/design';
import { area, bounds, type Outline, validate } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { accepted, jobOf, oddOpenings, rectangle } from '../testing/jobs.ts';

const { ell, ellArea, round, roundArea, ess, essArea } = oddOpenings;

const planOf = (...openings: readonly Opening[]) => derive(jobOf(openings), defaultCatalogue, 1, 0);
const isClosed = (outline: Outline) => validate(outline).ok;

// Areas by elementary geometry, see oddOpenings.
test.each([
  ['an L', ell, ellArea, 800, 600],
  ['a circle', round, roundArea, 500, 500],
  ['an S-curved side', ess, essArea, 900, 545],
] as const)('%s goes from its outline to the price', (_, opening, expected, width, height) => {
  const plan = planOf(opening);
  const shape = plan.openings[0]!.shape!;
  expect(plan.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  expect(area(shape.outline)).toBeCloseTo(expected, 6);
  expect([shape.width.value, shape.height.value]).toEqual([
    expect.closeTo(width, 9),
    expect.closeTo(height, 9),
  ]);
  expect([bounds(shape.outline).minX, bounds(shape.outline).minY]).toEqual([
    expect.closeTo(0, 9),
    expect.closeTo(0, 9),
  ]);
  expect(shape.edgeNames).toHaveLength(shape.outline.segments.length);
  const [panel, hold] = [plan.panels[0]!, plan.hold[0]!];
  expect(isClosed(panel.finished) && isClosed(panel.cut)).toBe(true);
  expect(area(panel.finished)).toBeGreaterThan(expected);
  expect(hold.points.length).toBeGreaterThanOrEqual(3);
  expect(plan.cutting!.lays).toHaveLength(1);
  expect(plan.price!.total.value).toBeGreaterThan(0);
});

test('edges are called by where they face, and by number where several face alike', () => {
  expect(planOf(ell).openings[0]!.shape!.edgeNames).toEqual([
    'bottom',
    'side2',
    'side3',
    'side4',
    'side5',
    'left',
  ]);
  expect(planOf(round).openings[0]!.shape!.edgeNames).toEqual(['side1', 'side1']);
  expect(planOf(ess).openings[0]!.shape!.edgeNames).toEqual(['bottom', 'right', 'top', 'top', 'left']);
});

test('a rounded corner has its sharp point, its radius and the radius’s spread', () => {
  // tan(90° / 4): a quarter turn.
  const bulge = Math.SQRT2 - 1;
  const shape = planOf(accepted('R', [360, 0], [400, 40, bulge], [400, 300], [0, 300], [0, 0])).openings[0]!
    .shape!;
  expect(shape.edgeNames).toEqual(['bottom', 'corner:bottomRight', 'right', 'top', 'left']);
  const corner = shape.corners.find(({ name }) => name === 'bottomRight')!;
  expect([corner.at.x, corner.at.y, corner.radius.value, corner.outOfSquare]).toEqual(
    [400, 0, 40, 0].map((value) => expect.closeTo(value, 6)),
  );
  expect(corner.radius.sigma).toBe(1);
});

test('an outline that crosses itself or runs clockwise is a stop that says which', () => {
  const refusals = [
    accepted('X', [400, 300], [400, 0], [0, 300], [0, 0]),
    accepted('C', [0, 300], [400, 300], [400, 0], [0, 0]),
  ].map((opening) => planOf(opening).findings.find(({ code }) => code === 'SURVEY_IMPOSSIBLE')!.numbers);
  expect(refusals).toMatchObject([{ refusal: 'OUTLINE_CROSSES_ITSELF' }, { refusal: 'OUTLINE_CLOCKWISE' }]);
});

test('an outline that is still to come is a stop that says from where', () => {
  expect(planOf(accepted('E')).findings.find(({ code }) => code === 'OUTLINE_MISSING')).toMatchObject({
    severity: 'stop',
    where: { opening: 'E' },
    numbers: { from: 'file' },
  });
});

test('a mirrored L shares the pattern of an L, turned over', () => {
  const mirrored = accepted('M', [800, 0], [800, 600], [300, 600], [300, 350], [0, 350], [0, 0]);
  const plan = planOf(ell, mirrored);
  expect(plan.patterns).toHaveLength(1);
  expect(plan.patterns[0]!.members.map(({ turnedOver }) => turnedOver)).toEqual([false, true]);
});

/** Tapes from two marks and round the outline to points of known places, mm, to 0.01. */
function taped(
  places: Readonly<Record<string, readonly [number, number]>>,
  pairs: readonly string[],
  more: Partial<MarksSurvey> = {},
): Opening & { survey: MarksSurvey } {
  const names = Object.keys(places);
  const distances = pairs.map((pair) => {
    const [from, to] = pair.split('-') as [string, string];
    const [[ax, ay], [bx, by]] = [places[from]!, places[to]!];
    return { from, to, entered: Math.hypot(bx - ax, by - ay).toFixed(2), unit: 'mm' as const };
  });
  const mark = (name: string) => name.startsWith('M');
  return {
    ...rectangle('W1', 10, 10, 0),
    survey: {
      method: 'marks',
      marks: names.filter(mark).map((name) => ({ name })),
      points: names.filter((name) => !mark(name)).map((name) => ({ name })),
      distances,
      runs: [],
      ...more,
    },
  };
}

const L_PLACES = {
  M1: [250, 180],
  M2: [520, 420],
  a: [0, 0],
  b: [800, 0],
  c: [800, 350],
  d: [500, 350],
  e: [500, 600],
  f: [0, 600],
} as const;
const L_PAIRS = [
  ...['a', 'b', 'c', 'd', 'e', 'f'].flatMap((to) => [`M1-${to}`, `M2-${to}`]),
  ...['M1-M2', 'a-b', 'b-c', 'c-d', 'd-e', 'e-f', 'f-a'],
];

test('an L taped from two marks comes out as it is, level and at the origin', () => {
  const plan = planOf(taped(L_PLACES, L_PAIRS));
  const { shape, points } = plan.openings[0]!;
  expect(area(shape!.outline)).toBeCloseTo(ellArea, -2);
  const at = Object.fromEntries(points.map((one) => [one.name, one.at]));
  for (const [name, [x, y]] of Object.entries(L_PLACES))
    expect(Math.hypot(at[name]!.x - x, at[name]!.y - y)).toBeLessThan(0.05);
  expect(shape!.readings).toHaveLength(L_PAIRS.length);
  expect(shape!.sigma).toBeGreaterThan(0);
});

test('of tapes from marks the one read 1 cm off is named, with what it ought to read', () => {
  const opening = taped(L_PLACES, L_PAIRS);
  const wrong = opening.survey.distances.find(({ from, to }) => from === 'M1' && to === 'e')!;
  const meant = Number(wrong.entered);
  wrong.entered = (meant + 10).toFixed(2);
  const suspect = planOf(opening).findings.find(({ code }) => code === 'READING_SUSPECT')!;
  expect(suspect).toMatchObject({ where: { item: 'tape:M1:e' }, numbers: { cause: 'tenMillimetres' } });
  expect((suspect.numbers as { corrected: number }).corrected).toBeCloseTo(meant, 1);
});

test('tapes that nothing checks and that meet flat are doubted, and the tape that helps most is told', () => {
  const places = {
    M1: [0, 0],
    M2: [600, 0],
    a: [-80, 40],
    b: [700, 30],
    c: [680, 400],
    d: [-60, 420],
  } as const;
  const pairs = ['M1-M2', ...['a', 'b', 'c', 'd'].flatMap((to) => [`M1-${to}`, `M2-${to}`])];
  const codes = planOf(taped(places, pairs)).findings.map(({ code }) => code);
  expect(codes).toContain('NO_CHECK_TAPE');
  expect(codes).toContain('WEAK_GEOMETRY');
  expect(codes).toContain('NEXT_TAPE');
});

test('a run told as a curve, and a corner rounded by a radius, are in the outline', () => {
  // A segment of a circle about (300, -200), radius 500, over a straight sill; the corner at (800, -200) rounded by 40 mm.
  const arc = (degrees: number) =>
    [
      300 + 500 * Math.cos((degrees * Math.PI) / 180),
      -200 + 500 * Math.sin((degrees * Math.PI) / 180),
    ] as const;
  const places: Readonly<Record<string, readonly [number, number]>> = {
    ...{ M1: [100, -320], M2: [500, -330], a: [-100, -200], q: [700, -200] },
    ...{ u: arc(30), v: arc(60), w: arc(90), x: arc(120), y: arc(150) },
  };
  const points = ['a', 'q', 'u', 'v', 'w', 'x', 'y'];
  const pairs = ['M1-M2', ...points.flatMap((to) => [`M1-${to}`, `M2-${to}`])];
  const opening = taped(places, pairs, {
    points: points.map((name) => ({ name })),
    runs: [
      { kind: 'line', points: ['a', 'q'], joint: { kind: 'sharp' } },
      { kind: 'arc', points: ['u', 'v', 'w', 'x', 'y'], joint: { kind: 'round', entered: '40', unit: 'mm' } },
    ],
  });
  const shape = planOf(opening).openings[0]!.shape!;
  expect(shape.outline.segments.map(({ kind }) => kind).toSorted()).toEqual(['arc', 'arc', 'line']);
  expect(shape.corners.some(({ radius }) => Math.abs(radius.value - 40) < 0.5)).toBe(true);
});

test('a place that two tapes do not reach is a stop, and nothing else fails', () => {
  const plan = planOf(
    taped(
      L_PLACES,
      L_PAIRS.filter((pair) => !pair.includes('e')),
    ),
    ell,
  );
  expect(plan.findings.find(({ code }) => code === 'SURVEY_IMPOSSIBLE')!.numbers).toMatchObject({
    refusal: 'NETWORK_POINTS_LOOSE',
    names: 'e',
  });
  expect(plan.panels).toHaveLength(1);
});
