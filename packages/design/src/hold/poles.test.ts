import {
  checkSheets,
  markingPlan,
  type PolePlan,
  polesFor,
  type StoredPanel,
  stackFights,
  waysToFit,
} from '@panewright/design';
import { type Point, point } from '@panewright/geometry';
import { mm, tesla } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const square = [point(0, 0), point(500, 0), point(500, 500), point(0, 500)];
const oblong = [point(0, 0), point(450, 0), point(900, 0), point(900, 500), point(450, 500), point(0, 500)];
const crooked = [point(0, 0), point(700, 40), point(610, 520), point(300, 440), point(20, 300)];

describe('ways to lay a layout on itself', () => {
  // Groups of the plane figures: a square has 8 symmetries, an oblong 4, a crooked one its own alone.
  test.each([
    [square, 8],
    [oblong, 4],
    [crooked, 1],
  ])('layout %# has its number of symmetries', (points, ways) => {
    const fits = waysToFit(points, 10);
    expect(fits).toHaveLength(ways);
    expect(fits[0]!.onto).toEqual(points.map((_, k) => k));
    expect(fits.filter(({ turnedOver }) => turnedOver)).toHaveLength(ways === 1 ? 0 : ways / 2);
  });
});

/** By brute force: does some choice of poles leave no wrong way with all drawn? Permutations, no geometry. */
function leastDrawn(points: readonly Point[], isometries: readonly (readonly [number[], boolean])[]): number {
  let best = Infinity;
  for (let mask = 0; mask < 2 ** points.length; mask++) {
    const sign = (k: number) => ((mask >> k) & 1 ? 1 : -1);
    const worst = Math.max(
      ...isometries.map(
        ([onto, over]) => onto.filter((to, k) => to >= 0 && (over ? -1 : 1) * sign(k) === sign(to)).length,
      ),
    );
    best = Math.min(best, worst);
  }
  return best;
}

const byBoth = ([a, b]: readonly number[], [c, d]: readonly number[]) => a! - c! || b! - d!;

type Cell = readonly [number, number];

/** Every wrong way on a grid in which more than half of the points, and three, meet one; none within another. */
function gridWays(cells: readonly Cell[]): (readonly [number[], boolean])[] {
  const turns: readonly ((cell: Cell) => Cell)[] = [
    ([x, y]) => [x, y],
    ([x, y]) => [-y, x],
    ([x, y]) => [-x, -y],
    ([x, y]) => [y, -x],
  ];
  const ways: (readonly [number[], boolean])[] = [];
  const shifts = Array.from({ length: 31 }, (_, k) => k - 15);
  for (const over of [false, true])
    for (const turn of turns)
      for (const dx of shifts)
        for (const dy of shifts) {
          const onto = cells.map(([x, y]) => {
            const [u, v] = turn([over ? -x : x, y]);
            return cells.findIndex(([p, q]) => p === u + dx && q === v + dy);
          });
          const meet = onto.filter((k) => k >= 0).length;
          const right = !over && onto.every((k, i) => k === i);
          if (!right && meet >= 3 && 2 * meet > cells.length) ways.push([onto, over]);
        }
  return ways;
}

describe('keyed poles', () => {
  test('an oblong goes on one way only, as well as any choice of poles can make it', () => {
    const plan = value(polesFor(oblong, 'keyed', 'north', 10));
    expect(plan.panelOut[0]).toBe('north');
    // Half turn, left for right and top for bottom, then each shifted along by a point either way: written out by hand.
    const ways: readonly (readonly [number[], boolean])[] = [
      [[3, 4, 5, 0, 1, 2], false],
      [[2, 1, 0, 5, 4, 3], true],
      [[5, 4, 3, 2, 1, 0], true],
      [[1, 2, -1, -1, 3, 4], false],
      [[-1, 0, 1, 4, 5, -1], false],
      [[4, 5, -1, -1, 0, 1], false],
      [[-1, 3, 4, 1, 2, -1], false],
      [[1, 0, -1, -1, 5, 4], true],
      [[-1, 2, 1, 4, 3, -1], true],
      [[4, 3, -1, -1, 2, 1], true],
      [[-1, 5, 4, 1, 0, -1], true],
    ];
    expect(plan.wrongWays.map(({ meet }) => meet)).toEqual(
      ways.map(([onto]) => onto.filter((k) => k >= 0).length),
    );
    const most = Math.max(...plan.wrongWays.map(({ drawn }) => drawn));
    expect(most).toBeLessThan(6);
    expect(most).toBe(leastDrawn(oblong, ways));
  });

  // Oracle: the layouts lie on a square grid, so every way in which two points meet is one of the grid's 8 symmetries and a
  // shift by whole cells: all are tried on it, with whole numbers alone.
  test.each([
    [
      'seven round a square with a point left out',
      [
        [0, 0],
        [2, 0],
        [4, 0],
        [4, 2],
        [4, 4],
        [0, 4],
        [0, 2],
      ],
    ],
    [
      'eight round an oblong',
      [
        [0, 0],
        [2, 0],
        [4, 0],
        [6, 0],
        [6, 3],
        [4, 3],
        [2, 3],
        [0, 3],
      ],
    ],
    [
      'five with one off',
      [
        [0, 0],
        [3, 0],
        [6, 0],
        [6, 4],
        [0, 4],
      ],
    ],
  ] as const)('%s: no choice of poles leaves fewer drawn in the worst wrong way', (_, cells) => {
    const ways = gridWays(cells);
    const points = cells.map(([x, y]) => point(150 * x, 150 * y));
    const plan = value(polesFor(points, 'keyed', 'north', 10));
    const least = leastDrawn(points, ways);
    expect(Math.max(...plan.wrongWays.map(({ drawn }) => drawn))).toBe(least);
    const sign = plan.panelOut.map((pole) => (pole === 'north' ? 1 : -1));
    const counts = ways.map(([onto, over]) => [
      onto.filter((to) => to >= 0).length,
      onto.filter((to, k) => to >= 0 && (over ? -1 : 1) * sign[k]! === sign[to]).length,
    ]);
    const told = plan.wrongWays.map(({ meet, drawn }) => [meet, drawn]);
    expect(told.toSorted(byBoth)).toEqual(counts.toSorted(byBoth));
  });

  test('plain alternation would not key a square: half a turn would draw all four', () => {
    const plan = value(polesFor(square, 'keyed', 'south', 10));
    expect(Math.max(...plan.wrongWays.map(({ drawn }) => drawn))).toBeLessThan(4);
    expect(plan.panelOut).not.toEqual(['south', 'north', 'south', 'north']);
  });

  test('a layout that goes on one way by its shape alternates, and its poles nearly cancel', () => {
    const plan = value(polesFor(crooked, 'keyed', 'north', 2));
    expect(plan.panelOut).toEqual(['north', 'south', 'north', 'south', 'north']);
    expect(plan.net).toBe(1);
    expect(plan.wrongWays).toHaveLength(0);
  });

  test('uniform poles draw in every way that is not turned over, and in none that is', () => {
    const plan = value(polesFor(square, 'uniform', 'north', 10));
    for (const { turnedOver, drawn } of plan.wrongWays) expect(drawn).toBe(turnedOver ? 0 : 4);
    expect(plan.net).toBe(4);
  });

  test('one point alone cannot be keyed', () => {
    const found = polesFor([point(0, 0)], 'keyed', 'north', 10);
    expect(found.ok ? '' : found.refusal.code).toBe('TOO_FEW_POINTS_TO_KEY');
  });
});

describe('marking with one test magnet', () => {
  const poles = value(polesFor(oblong, 'keyed', 'south', 10));
  const plan = markingPlan(oblong, poles, 450);

  /** A magnet is an arrow from its south to its north; dots are painted by stacking, whatever the test magnet's pole. */
  test('magnets dotted and set as the steps say draw together at every point, whichever pole was dotted', () => {
    for (const dotIsNorth of [true, false]) {
      const northAway = (dotAway: boolean) => dotAway === dotIsNorth;
      const sewn = new Map<number, boolean>();
      const fixed = new Map<number, boolean>();
      for (const step of plan.steps) {
        if (step.code === 'SEW_IN') sewn.set(step.point, northAway(step.dot === 'out'));
        if (step.code === 'FIX_INSIDE') fixed.set(step.point, northAway(step.dot === 'toRoom'));
      }
      expect(sewn.size).toBe(6);
      // North away from the glass outside means south to the glass: the inside one must show the glass its north.
      for (const [number, northOut] of sewn) expect(fixed.get(number)).toBe(!northOut);
    }
  });

  test('the sheets agree back to back, and a wrong one is found', () => {
    expect(checkSheets(plan, 450)).toEqual([]);
    const unmirrored = { ...plan, inside: plan.inside.map((one, k) => ({ ...one, at: oblong[k]! })) };
    expect(checkSheets(unmirrored, 450).some(({ code }) => code === 'SHEETS_DISAGREE')).toBe(true);
    const same: PolePlan = { ...poles, insideOut: poles.panelOut };
    expect(checkSheets(markingPlan(oblong, same, 450), 450)).toHaveLength(6);
  });
});

describe('a stored stack', () => {
  const stored = (panel: string, points: readonly Point[], poles: PolePlan): StoredPanel => ({
    panel,
    points: points.map((at, k) => ({ at, poleOut: poles.panelOut[k]! })),
    magnet: { kind: 'disc', diameter: mm(20), thickness: mm(5) },
    remanence: tesla(1.28),
  });
  const uniform = value(polesFor(oblong, 'uniform', 'north', 10));
  const keyed = value(polesFor(oblong, 'keyed', 'north', 10));

  test('uniform panels lie flat on one another, whatever their layouts', () => {
    const first = stored('P1', oblong, uniform);
    const second = stored('P2', square, value(polesFor(square, 'uniform', 'north', 10)));
    expect(stackFights([first, second, first], 4)).toEqual([]);
  });

  test('a keyed panel fights a uniform one where their poles differ, by the pull of the pair', () => {
    const [fight] = stackFights([stored('P1', oblong, uniform), stored('P1 keyed', oblong, keyed)], 4);
    // As printed for 20 x 5 discs, remanence 1.28 T, at 5 mm: 20.4 N; nearer at 4 mm.
    expect(fight!.push).toBeGreaterThan(20.4);
    expect(fight!.push).toBeLessThan(30);
    const [i, j] = fight!.points;
    expect(i).toBe(j);
    expect(keyed.panelOut[i - 1]).toBe('south');
  });

  test('two of one keyed pattern draw together', () => {
    expect(stackFights([stored('a', oblong, keyed), stored('b', oblong, keyed)], 4)).toEqual([]);
  });
});
