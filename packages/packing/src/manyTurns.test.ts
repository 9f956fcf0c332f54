import { benchmarkInstance, type Instance, lowerBound, startPacking, step } from '@panewright/packing';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import fu from './reference/fu.json' with { type: 'json' };
import { box } from './testing/box.ts';
import { star } from './testing/star.ts';
import { trueLay } from './testing/trueLay.ts';

const plain = { spacing: mm(0), margin: { side: mm(0), end: mm(0) } };
const everyTurn = Array.from({ length: 360 }, (_, degrees) => degrees);

// Oracle: six squares of side 10 fill a strip of 20 to a length of 30 only when every side lies along or across it.
test('squares given aslant come to lie straight when any turn is allowed', () => {
  const [c, s] = [Math.cos(0.4772), Math.sin(0.4772)];
  const polygon = [
    [0, 0],
    [10 * c, 10 * s],
    [10 * (c - s), 10 * (s + c)],
    [-10 * s, 10 * c],
  ];
  const pieces = [{ id: 'square', demand: 6, allowedRotationsDeg: 'any', polygon }] as const;
  const lay = trueLay(benchmarkInstance({ name: 'squares', stripWidth: 20, pieces }), 200_000);
  expect(lay.length).toBeCloseTo(30, 5);
  expect(lay.density).toBeCloseTo(1, 6);
});

/** The open set fu, each piece in every whole degree: thousands of turned shapes. */
const fuTurned = (): Instance => {
  const pieces = fu.pieces.map((piece) => ({ ...piece, allowedRotationsDeg: everyTurn }));
  return benchmarkInstance({ ...fu, pieces });
};

test('with thousands of turned shapes the lay is true, and better than the first', () => {
  const instance = fuTurned();
  const first = trueLay(instance, 0);
  expect(trueLay(instance, 800_000).length).toBeLessThan(0.95 * first.length);
});

test('such a search stored and taken up again goes on as if it had not been', () => {
  const started = startPacking(fuTurned(), 3, 2_000_000);
  if (!started.ok) throw new Error(started.refusal.code);
  const through = step(step(started.value, 400_000), 300_000);
  const stored = JSON.parse(JSON.stringify(step(started.value, 400_000)));
  expect(step(stored, 300_000).best).toEqual(through.best);
});

test('random small instances of many turns: no overlap, nothing lost, not under the bound', () => {
  const pieces = fc
    .array(fc.record({ demand: fc.integer({ min: 1, max: 3 }), polygon: star(8) }), {
      minLength: 2,
      maxLength: 3,
    })
    .map((list) => list.map((p, id) => ({ ...p, id, allowedRotationsDeg: everyTurn, flip: id === 1 })));
  const instances = fc.record({
    stripWidth: fc.integer({ min: 48, max: 120 }).map(mm),
    spacing: fc.constantFrom(0, 1.5).map(mm),
    margin: fc.constantFrom({ side: mm(0), end: mm(0) }, { side: mm(2), end: mm(5) }),
    pieces,
  });
  fc.assert(
    fc.property(instances, fc.integer(), (instance, seed) => {
      const lay = trueLay(instance, 20_000, seed);
      const bound = lowerBound(instance);
      expect(bound.ok && lay.length >= bound.value - 1e-6).toBe(true);
    }),
    { numRuns: 5, seed: 20260103 },
  );
});

test('five hundred unlike pieces are laid at once, all of them, and a search leaves the lay true', () => {
  const pieces = Array.from({ length: 500 }, (_, id) => ({
    id,
    demand: 1,
    polygon: box(100 + ((id * 37) % 211), 80 + ((id * 53) % 307)),
    allowedRotationsDeg: [0, 90],
    flip: false,
  }));
  const instance = { ...plain, spacing: mm(2), stripWidth: mm(1372), pieces };
  const first = trueLay(instance, 0);
  expect(first.placements).toHaveLength(500);
  // Best fit on boxes wastes a few percent where pieces are many; common practice, no source.
  expect(first.density).toBeGreaterThan(0.9);
  expect(trueLay(instance, 100_000).length).toBeLessThanOrEqual(first.length);
});

// Each turn of one kind against each would be a hundred thousand tables; without them it is over in a moment.
test('one kind of piece in any turn is laid in little time and memory', () => {
  const polygon = [
    [0, 0],
    [60, 5],
    [55, 40],
    [30, 12],
    [4, 37],
  ];
  const pieces = [{ id: 'gusset', demand: 8, allowedRotationsDeg: 'any', polygon }] as const;
  const instance = benchmarkInstance({ name: 'gussets', stripWidth: 100, pieces });
  const before = process.memoryUsage().arrayBuffers;
  expect(trueLay(instance, 400_000).density).toBeGreaterThan(0.5);
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(200e6);
});
