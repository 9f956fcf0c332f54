import { callOperation, demoJob, exampleJob, type OperationOutput } from '@panewright/contract';
import { expect, test } from 'vitest';

async function answer<N extends 'holdPoints' | 'windMargin' | 'stackSections' | 'magnetChoices'>(
  name: N,
  input: object,
): Promise<OperationOutput<N>> {
  const result = await callOperation(name, input);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value as OperationOutput<N>;
}

// Oracle: the demonstration's readings. W3 is 36 1/2 by 20 1/2 in, so with a spacing of 24 in six points: four corners and two
// between; a double pane of 17 mm stands in W9.
test('on the demonstration every hold point has a margin, a mode and a wind at which it gives', async () => {
  const { openings } = await answer('holdPoints', { job: demoJob });
  expect(openings).toHaveLength(9);
  const one = openings.find(({ opening }) => opening === 'W3')!;
  expect(one.points).toHaveLength(6);
  for (const { margin, letsGo, why } of openings.flatMap(({ points }) => points)) {
    expect(margin.low!).toBeLessThanOrEqual(margin.value!);
    expect(margin.value!).toBeLessThanOrEqual(margin.high!);
    expect(letsGo.low!).toBeLessThanOrEqual(letsGo.high!);
    expect(why).not.toContain('(not given)');
  }
  for (const { margin, letsGo, asked } of openings)
    expect(margin!.low < asked || letsGo.low! > 5.5).toBe(true);
});

test('of a keyed panel every wrong way is told, with how many points would pull; of one pole out everywhere none is', async () => {
  const keyed = { ...demoJob.choices, hold: { ...demoJob.choices.hold, poles: 'keyed' as const } };
  const { openings } = await answer('holdPoints', { job: { ...demoJob, choices: keyed } });
  const { points, wrongWays } = openings.find(({ opening }) => opening === 'W3')!;
  expect(wrongWays.length).toBeGreaterThan(0);
  for (const { drawn, meet, text } of wrongWays) {
    expect(drawn).toBeLessThan(points.length);
    expect(text).toContain(`${drawn} of ${points.length} points still pull and ${meet - drawn} push off`);
  }
  const uniform = await answer('holdPoints', { job: demoJob });
  for (const one of uniform.openings) expect(one.wrongWays).toEqual([]);
});

test('no pair of the catalogue holds the double pane; what can is said, and one magnet on steel is among it', async () => {
  const found = await answer('magnetChoices', { job: demoJob, opening: 'W9' });
  expect(found.choices).toEqual([]);
  expect(found.rejected.filter(({ by }) => by === 'magnets')).toHaveLength(25);
  expect(found.rejected.some(({ by }) => by === 'steel')).toBe(true);
  for (const { because } of found.rejected) expect(because.length).toBeGreaterThan(0);
  const codes = found.instead.map(({ code }) => code);
  expect(codes).toEqual(expect.arrayContaining(['STEEL_ON_FRAME', 'BLOCKS', 'FASTENER_TO_BE_TRIED']));
  const text = JSON.stringify(found);
  expect(text).not.toMatch(/\(not given\)|undefined|NaN/);
});

test('the first choice has the fewest points, and no reason against the rest is left unsaid', async () => {
  const { choices, rejected, instead, chosen } = await answer('magnetChoices', {
    job: exampleJob,
    opening: 'W1',
  });
  expect(Math.min(...choices.map(({ points }) => points))).toBe(choices[0]!.points);
  expect([...choices, ...rejected].filter(({ by }) => by === 'magnets')).toHaveLength(25);
  expect(choices.some(({ outside }) => outside === chosen.outside)).toBe(true);
  expect(instead).toEqual([]);
});

test('more wind, less margin; where it lets go the margin is 1', async () => {
  const { letsGo } = await answer('windMargin', { job: exampleJob, opening: 'W1' });
  const { curve } = await answer('windMargin', {
    job: exampleJob,
    opening: 'W1',
    winds: [0, 2, letsGo.low!, letsGo.high!],
  });
  expect(curve[0]!.whole.low).toBeGreaterThan(curve[1]!.whole.low);
  expect(curve[2]!.whole.low).toBeCloseTo(1, 9);
  expect(curve[3]!.whole.high).toBeCloseTo(1, 9);
});

// Oracle: the sum of the thicknesses as they stand in the catalogue and the opening.
test('the layers between the magnets add up to the gap', async () => {
  const { corner, edge } = await answer('stackSections', { job: demoJob, opening: 'W7' });
  for (const { layers, gap } of [corner, edge])
    expect(layers.reduce((sum, { between, thickness }) => sum + (between ? thickness : 0), 0)).toBeCloseTo(
      gap,
      9,
    );
  expect(corner.gap).toBeGreaterThan(edge.gap);
});

test.each(['windMargin', 'stackSections', 'magnetChoices'])(
  '%s of an opening that is not there is refused',
  async (name) => {
    const result = await callOperation(name, { job: exampleJob, opening: 'W7' });
    expect(result).toMatchObject({ ok: false, refusal: { code: 'OPENING_UNKNOWN', known: ['W1'] } });
  },
);

test('an opening without an outline has nothing to be asked of', async () => {
  const [opening] = exampleJob.openings;
  const survey = { ...opening!.survey, readings: [] };
  const job = { ...exampleJob, openings: [{ ...opening!, survey }] };
  const result = await callOperation('windMargin', { job, opening: 'W1' });
  expect(result).toMatchObject({ ok: false, refusal: { code: 'OPENING_NOT_HELD' } });
});
