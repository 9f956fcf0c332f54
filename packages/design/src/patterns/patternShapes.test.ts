import { defaultCatalogue, deriveShapes, type Job } from '@panewright/design';
import { bounds } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { accepted, jobOf } from '../testing/jobs.ts';

const box = (id: string, width: number, height = 300) =>
  accepted(id, [width, 0], [width, height], [0, height], [0, 0]);
const openings = [box('A', 400), box('B', 400.6), box('C', 401.2)];
const planOf = (patternShapes: NonNullable<Job['patternShapes']>, of = openings) =>
  deriveShapes({ ...jobOf(of), patternShapes }, defaultCatalogue);
const widthOf = (plan: ReturnType<typeof planOf>) => bounds(plan.patterns[0]!.outline).width;

// Oracle: three rectangles of 400, 400.6 and 401.2 mm; centred on one another each end differs by half.
test('a pattern is its first opening unless the maker chooses', () => {
  const plan = planOf([]);
  expect(plan.patterns).toHaveLength(1);
  expect(widthOf(plan)).toBeCloseTo(400, 9);
});

test('the opening chosen is the pattern, and the others are held against it', () => {
  const plan = planOf([{ opening: 'C', shape: 'this' }]);
  expect(plan.patterns).toHaveLength(1);
  const [pattern] = plan.patterns;
  expect([pattern!.pattern, widthOf(plan)]).toEqual(['P1', expect.closeTo(401.2, 9)]);
  const off = Object.fromEntries(pattern!.members.map(({ opening, deviation }) => [opening, deviation]));
  expect(off).toEqual({ A: expect.closeTo(0.6, 2), B: expect.closeTo(0.3, 2), C: 0 });
});

test('the mean of its openings halves what the farthest ones are off', () => {
  const plan = planOf([{ opening: 'B', shape: 'mean' }]);
  expect(widthOf(plan)).toBeCloseTo(400.6, 6);
  const off = Object.fromEntries(
    plan.patterns[0]!.members.map(({ opening, deviation }) => [opening, deviation]),
  );
  expect(off).toEqual({ A: expect.closeTo(0.3, 2), B: expect.closeTo(0, 2), C: expect.closeTo(0.3, 2) });
  expect(bounds(plan.panels[0]!.finished).width).toBeCloseTo(400.6 + 2 * 6.35, 6);
});

test('the mean follows one of its openings', () => {
  const wider = planOf([{ opening: 'A', shape: 'mean' }], [box('A', 400.6), openings[1]!, openings[2]!]);
  expect(widthOf(wider)).toBeCloseTo(400.8, 6);
});

test('outlines of different pieces have no mean, and the maker is told', () => {
  const split = accepted('D', [200, 0], [400, 0], [400, 300], [0, 300], [0, 0]);
  const plan = planOf([{ opening: 'A', shape: 'mean' }], [openings[0]!, split]);
  expect(plan.findings.find(({ code }) => code === 'PATTERN_MEAN_IMPOSSIBLE')).toMatchObject({
    where: { pattern: 'P1' },
    numbers: { members: 'A D' },
  });
  expect(widthOf(plan)).toBeCloseTo(400, 9);
});

test('an opening chosen far down the list does not rename the patterns before it', () => {
  const plan = planOf([{ opening: 'Z', shape: 'this' }], [...openings, box('Y', 700), box('Z', 700.4)]);
  expect(plan.patterns.map(({ pattern, members }) => [pattern, members[0]!.opening])).toEqual([
    ['P1', 'A'],
    ['P2', 'Z'],
  ]);
});
