import {
  type Catalogue,
  type Choices,
  checkSheets,
  defaultCatalogue,
  deriveShapes,
  type Finding,
  type FindingCode,
  type HandPlaced,
  type Job,
  job as jobSchema,
  type Plan,
} from '@panewright/design';
import { bounds, movePoint } from '@panewright/geometry';
import { describe, expect, test } from 'vitest';
import { derive } from '../derive.ts';
import { accepted, jobOf, rectangle } from '../testing/jobs.ts';

const held = (
  more: Partial<Choices['hold']>,
  rest: Partial<Job> = {},
  openings = [rectangle('A', 52, 24, 2)],
) => {
  const base = jobOf(openings);
  const hold = { ...base.choices.hold, ...more };
  return { ...base, choices: { ...base.choices, hold }, ...rest };
};
const found = <C extends FindingCode>(plan: Plan, code: C) =>
  plan.findings.filter((one): one is Finding<C> => one.code === code);
const byHand = (opening: string, ...placed: HandPlaced[]): Job['heldByHand'] => [
  { opening, placed: placed as NonNullable<Job['heldByHand']>[number]['placed'] },
];

describe('points set by hand', () => {
  test('a point stands where it was set, and the rest of its edge is divided anew', () => {
    const plan = deriveShapes(
      held({}, { heldByHand: byHand('A', { kind: 'fixed', on: 'bottom', at: 400 }) }),
      defaultCatalogue,
    );
    const { minX } = bounds(plan.panels[0]!.finished);
    const own = plan.hold[0]!.points.filter((point) => point.byHand);
    expect(own.map(({ edgePoint }) => edgePoint.x - minX)).toEqual([expect.closeTo(400, 6)]);
    expect(plan.hold[0]!.byHandOf).toBe('A');
    // 1320.8 + 2 × 6.35 less 400 leaves 933: one point more between it and the corner.
    expect(plan.hold[0]!.points.filter(({ on }) => on === 'bottom')).toHaveLength(2);
  });

  test('an entry of another opening than the pattern’s own is carried over, turned over where that is', () => {
    const shape = [
      [900, 0],
      [760, 520],
      [30, 480],
      [0, 0],
    ] as const;
    const turned = shape.map(([x, y]) => [900 - x, y] as const);
    const first = accepted('A', ...shape);
    const second = accepted('B', ...turned.toReversed());
    const entry = byHand(
      'B',
      { kind: 'added', on: 'bottom', at: 200 },
      { kind: 'moved', on: 'left', index: 1, by: 40 },
    );
    const placesIn = (openings: Job['openings']) => {
      const plan = deriveShapes(
        held({ spacing: 200, upTo: 230 }, { heldByHand: entry }, openings as never),
        defaultCatalogue,
      );
      const pattern = plan.patterns.find(({ members }) => members.some(({ opening }) => opening === 'B'))!;
      const { place } = pattern.members.find(({ opening }) => opening === 'B')!;
      const points = plan.hold.find((one) => one.pattern === pattern.pattern)!.points;
      return { plan, pattern, at: points.map(({ centre }) => movePoint(place, centre)) };
    };
    const both = placesIn([first, second]);
    const alone = placesIn([second]);
    expect(both.pattern.members.map(({ turnedOver }) => turnedOver)).toEqual([false, true]);
    expect(both.at).toHaveLength(alone.at.length);
    for (const p of alone.at)
      expect(Math.min(...both.at.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))).toBeLessThan(0.01);
  });

  test('what cannot be followed is told of, and harms nothing', () => {
    const plan = deriveShapes(
      held(
        {},
        {
          heldByHand: [
            ...byHand(
              'A',
              { kind: 'added', on: 'sill', at: 10 },
              { kind: 'removed', on: 'top', index: 7 },
              { kind: 'moved', on: 'bottom', index: 1, by: 5000 },
              { kind: 'removed', on: 'top', index: 1 },
            )!,
            ...byHand('gone', { kind: 'added', on: 'top', at: 1 })!,
          ],
        },
      ),
      defaultCatalogue,
    );
    expect(found(plan, 'HAND_EDGE_UNKNOWN')[0]!.numbers).toEqual({
      edge: 'sill',
      known: 'bottom right top left',
    });
    expect(found(plan, 'HAND_POINT_UNKNOWN')[0]!.numbers).toEqual({ index: 7, points: 1 });
    expect(found(plan, 'HAND_POINT_OFF_EDGE')).toHaveLength(1);
    expect(found(plan, 'HAND_OPENING_UNKNOWN')[0]!.numbers.opening).toBe('gone');
    expect(found(plan, 'HAND_GAP_WIDE')[0]!.numbers.gap).toBeGreaterThan(1300);
    expect(plan.hold[0]!.points).toHaveLength(5);
  });

  test('two entries for one opening are refused', () => {
    const entry = byHand('A', { kind: 'added', on: 'top', at: 100 })![0]!;
    const read = jobSchema.safeParse(held({}, { heldByHand: [entry, entry] }));
    expect(read.error?.issues[0]).toMatchObject({ path: ['heldByHand'] });
  });
});

describe('keyed poles', () => {
  test('every pair draws, both sheets tell of the same pairs, and the panel goes on one way only', () => {
    const openings = [rectangle('A', 52, 24, 2), rectangle('B', 40, 24, 2)];
    const plan = deriveShapes(held({ poles: 'keyed' }, {}, openings), defaultCatalogue);
    for (const hold of plan.hold) {
      expect(hold.poles).toBe('keyed');
      for (const { marking, opening } of hold.openings) {
        const { minX, maxX } = bounds(plan.openings.find((one) => one.opening === opening)!.shape!.outline);
        expect(checkSheets(marking!, (minX + maxX) / 2)).toEqual([]);
        expect(marking!.outside.map(({ pole }) => pole)).toEqual(hold.points.map(({ poleOut }) => poleOut));
        expect(new Set(marking!.outside.map(({ pole }) => pole)).size).toBe(2);
      }
    }
  });

  test('where poles cannot tell, it is said and one pole is out everywhere', () => {
    const steel = { kind: 'steel', strip: 'steel-30x2' } as const;
    const plan = deriveShapes(held({ poles: 'keyed', by: steel }), defaultCatalogue);
    expect(found(plan, 'POLES_CANNOT_KEY')[0]!.numbers.because).toBe('steel');
    expect(plan.hold[0]!.poles).toBe('uniform');
  });
});

describe('steel and fasteners in place of magnets', () => {
  test('steel: a magnet and a bare piece of strip at each point, nothing wrapped', () => {
    const plan = derive(held({ by: { kind: 'steel', strip: 'steel-30x2' } }), defaultCatalogue, 1, 1);
    const lines = new Map(plan.takeOff!.materials.map((line) => [line.kind, line.used.value]));
    const points = plan.hold[0]!.points.length;
    expect(points).toBe(6);
    expect(lines.get('magnet')).toBe(points);
    expect(lines.get('steel')).toBe(points * 2 * 20);
    expect(lines.has('wrapFilm')).toBe(false);
    expect(plan.takeOff!.labour.map(({ operation }) => operation)).toContain('strip');
    expect(plan.takeOff!.labour.map(({ operation }) => operation)).not.toContain('magnet');
    expect(found(plan, 'STEEL_EDGES')).toHaveLength(1);
    // Steel draws less than a magnet does, and its layers have no film.
    const pair = deriveShapes(held({}), defaultCatalogue).hold[0]!.openings[0]!;
    const own = plan.hold[0]!.openings[0]!;
    expect(own.pull!.low).toBeLessThan(pair.pull!.low);
    expect(own.gap.value).toBeCloseTo(pair.gap.value - 0.5, 9);
  });

  test('a fastener nobody tried is to be tried; one the shop tried has its margin; magnets are not spoken of', () => {
    const by = { kind: 'fastener', fastener: 'snap-24' } as const;
    const plan = derive(held({ by }), defaultCatalogue, 1, 1);
    const points = plan.hold[0]!.points;
    const kinds = plan.takeOff!.materials.map(({ kind }) => kind);
    expect(kinds).toEqual(expect.not.arrayContaining(['magnet', 'wrapFilm', 'tape', 'steel']));
    expect(plan.takeOff!.materials.find(({ kind }) => kind === 'fastener')!.used.value).toBe(points.length);
    expect(plan.cutting!.pieces.some(({ kind }) => kind === 'pocket')).toBe(false);
    expect(plan.findings.some(({ code }) => code.startsWith('MAGNETS_') || code === 'TAPE_DWELL')).toBe(
      false,
    );
    expect(found(plan, 'FIXINGS_IN_FRAME')[0]!.numbers.fixings).toBe(points.length);
    const width = 52 * 25.4 + 2 * 19.05;
    expect(plan.panels[0]!.finishedWidth.value).toBeCloseTo(width, 1);
    const asked = found(plan, 'FASTENER_STRENGTH_UNKNOWN')[0]!.numbers;
    const tried = withSnap((pull) => ({ low: pull, high: pull }), asked.pull);
    const margin = deriveShapes(held({ by }), tried).hold[0]!.openings[0]!.margin!;
    // What was asked for is what meets the shop's margin.
    expect(margin.low).toBeCloseTo(defaultCatalogue.habits.windMargin, 6);
  });
});

function withSnap(ends: (pull: number) => { low: number; high: number }, pull: number): Catalogue {
  const fasteners = defaultCatalogue.fasteners!.map((one) =>
    one.id === 'snap-24'
      ? {
          ...one,
          strength: { by: 'shop' as const, pull: ends(pull), along: ends(100), tested: 'spring balance' },
        }
      : one,
  );
  return { ...defaultCatalogue, fasteners };
}

describe('what was proposed does', () => {
  test('magnets an inner frame keeps apart meet in the pocket proposed', () => {
    const opening = rectangle('A', 52, 24, 2);
    const framed = { ...opening, glazing: { ...opening.glazing, flange: 55 } };
    const apart = deriveShapes(held({}, {}, [framed]), defaultCatalogue);
    const stop = found(apart, 'MAGNETS_CANNOT_MEET')[0]!;
    expect(stop.severity).toBe('stop');
    expect(stop.numbers.pocket).toBeGreaterThan(76.2);
    const mended = deriveShapes(held({ pocket: stop.numbers.pocket! }, {}, [framed]), defaultCatalogue);
    expect(found(mended, 'MAGNETS_CANNOT_MEET')).toEqual([]);
  });

  test('as few points beyond the spacing’s as meet the margin are set', () => {
    const windy = held({ points: 'margin' });
    const job = { ...windy, choices: { ...windy.choices, weather: { ...windy.choices.weather, wind: 7 } } };
    const plan = deriveShapes(job, defaultCatalogue);
    const plain = deriveShapes(
      { ...job, choices: { ...job.choices, hold: { ...job.choices.hold, points: 'spacing' } } },
      defaultCatalogue,
    );
    const asked = defaultCatalogue.habits.windMargin;
    expect(plain.hold[0]!.points).toHaveLength(6);
    expect(plain.hold[0]!.openings[0]!.margin!.low).toBeLessThan(asked);
    expect(plan.hold[0]!.openings[0]!.margin!.low).toBeGreaterThanOrEqual(asked);
    expect(plan.hold[0]!.gaps!.some(({ reason }) => reason === 'raised')).toBe(true);
  });
});
