import {
  type Catalogue,
  defaultCatalogue,
  derive,
  type LayPlan,
  leftOver,
  type Offcut,
} from '@panewright/design';
import {
  intersect,
  moveOutline,
  type Outline,
  outlineFrom,
  point,
  roundedPolygon,
  turnAbout,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jobOf, rectangle } from '../testing/jobs.ts';

const box = (x: number, y: number, w: number, h: number): Outline => {
  const made = outlineFrom([point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)]);
  if (!made.ok) throw new Error(made.refusal.code);
  return made.value;
};
const spread = (length: number, width: number, pieces: readonly Outline[], spacing = 0) => ({
  ...{ length, from: 0, to: width, pieces, spacing },
});

// Oracle: by hand. One piece of 400 × 300 in a corner of 1000 × 600 leaves 600 × 600 beside it, then 400 × 300 above it.
test('one piece in the corner of the cloth leaves the rest beside it and what is above it', () => {
  expect(leftOver(spread(1000, 600, [box(0, 0, 400, 300)]), 100)).toEqual([
    { x: 400, y: 0, along: 600, across: 600 },
    { x: 0, y: 300, along: 400, across: 300 },
  ]);
  const spaced = leftOver(spread(1000, 600, [box(0, 0, 400, 300)], 5), 100);
  expect(spaced[0]).toEqual({ x: 405, y: 0, along: 595, across: 600 });
  expect(leftOver(spread(1000, 600, [box(0, 0, 400, 300)]), 350)).toHaveLength(1);
  expect(leftOver(spread(1000, 600, [box(0, 0, 1000, 600)]), 10)).toEqual([]);
});

// Oracle: every rectangle on the grid of the pieces' own lines, one by one.
test('the first rectangle left over is the largest there is', () => {
  const cell = fc.tuple(fc.nat(7), fc.nat(4), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 }));
  const property = fc.property(fc.array(cell, { minLength: 1, maxLength: 5 }), (cells) => {
    const free = Array.from({ length: 6 }, () => Array<boolean>(9).fill(true));
    for (const [x, y, w, h] of cells)
      for (let i = y; i < Math.min(6, y + h); i++)
        for (let k = x; k < Math.min(9, x + w); k++) free[i]![k] = false;
    let most = 0;
    for (let x = 0; x < 9; x++)
      for (let y = 0; y < 6; y++)
        for (let w = 1; x + w <= 9; w++)
          for (let h = 1; y + h <= 6; h++) {
            const all = free.slice(y, y + h).every((row) => row.slice(x, x + w).every(Boolean));
            if (all) most = Math.max(most, w * h);
          }
    const pieces = cells.map(([x, y, w, h]) =>
      box(100 * x, 100 * y, 100 * Math.min(w, 9 - x), 100 * Math.min(h, 6 - y)),
    );
    const [first] = leftOver(spread(900, 600, pieces), 50);
    expect((first ? first.along * first.across : 0) / 10_000).toBeCloseTo(most, 9);
  });
  fc.assert(property, { seed: 91, numRuns: 60 });
});

test('nothing left over lies on a rounded, turned piece, on another rectangle, or off the cloth', () => {
  const property = fc.property(fc.nat(1e6), (seed) => {
    let state = seed + 1;
    const next = () => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    const pieces = Array.from({ length: 3 }, (_, k) => {
      const made = roundedPolygon(
        [point(0, 0), point(200 + 100 * next(), 0), point(180, 150 + 60 * next()), point(0, 140)],
        mm(30),
      );
      if (!made.ok) throw new Error(made.refusal.code);
      const turned = moveOutline(turnAbout(point(150, 100), radian(6.28 * next())), made.value);
      const shift = { angle: radian(0), shift: point(100 + 420 * k, 100 + 300 * next()), mirrored: false };
      return moveOutline(shift, turned);
    });
    const found = leftOver(spread(1600, 800, pieces, 4), 80);
    expect(found.length).toBeGreaterThan(0);
    found.forEach(({ x, y, along, across }, k) => {
      expect(Math.min(along, across)).toBeGreaterThanOrEqual(80);
      expect(Math.min(x, y, 1600 - x - along, 800 - y - across)).toBeGreaterThanOrEqual(0);
      for (const piece of pieces) expect(intersect(box(x, y, along, across), piece)).toEqual([]);
      for (const other of found.slice(0, k))
        expect(
          other.x + other.along <= x ||
            x + along <= other.x ||
            other.y + other.across <= y ||
            y + across <= other.y,
        ).toBe(true);
    });
  });
  fc.assert(property, { seed: 92, numRuns: 12 });
});

const kept = (id: string, along: number, across: number, more: Partial<Offcut> = {}): Offcut => ({
  ...{ id, name: `Rest ${id}`, fabric: 'mesh-black', along, across, place: 'shelf 2', worth: 500, notes: '' },
  from: { job: 'earlier', jobName: 'Earlier', lay: 'L1', date: '2026-11-01' },
  ...more,
});
const withStock = (...offcuts: Offcut[]): Catalogue => ({ ...defaultCatalogue, offcuts });
const job = jobOf([rectangle('A', 30, 20, 3), rectangle('B', 30, 20, 3), rectangle('C', 30, 20, 3)]);
const plan = (catalogue: Catalogue, of = job) => derive(of, catalogue, 1, 3000);
const copies = ({ placements }: LayPlan) => placements.map(({ piece, copy }) => `${piece} ${copy}`);
const cloth = (one: ReturnType<typeof plan>) => one.takeOff!.materials.find(({ kind }) => kind === 'fabric');

test('an offcut that takes all pieces leaves nothing to buy, and the plan says what it saved', () => {
  const without = plan(defaultCatalogue);
  const [roll] = without.cutting!.lays;
  const used = plan(withStock(kept('a', roll!.length.value + 60, roll!.rollWidth)));
  const { lays, savings } = used.cutting!;
  expect(lays).toHaveLength(1);
  expect(lays[0]).toMatchObject({ offcut: { id: 'a', place: 'shelf 2' }, bought: null });
  expect(copies(lays[0]!).sort()).toEqual(copies(roll!).sort());
  expect(savings).toEqual([
    { fabric: 'mesh-black', offcuts: ['a'], price: roll!.bought!.price, length: roll!.bought!.length },
  ]);
  expect(cloth(used)).toBeUndefined();
  expect(used.price!.total.value).toBeLessThan(without.price!.total.value);
  expect(used.findings.find(({ code }) => code === 'OFFCUTS_USED')!.numbers).toEqual({
    offcuts: 'Rest a (shelf 2)',
    pieces: roll!.placements.length,
    saved: roll!.bought!.price,
  });
});

test('an offcut that takes a part is used where less is then bought, and every copy is cut once', () => {
  const without = plan(defaultCatalogue);
  const used = plan(withStock(kept('a', 1700, 600)));
  const { lays, savings, pieces } = used.cutting!;
  expect(savings).toHaveLength(1);
  expect(lays.map(({ lay, offcut }) => [lay, offcut?.id])).toEqual([
    ['L1', undefined],
    ['L2', 'a'],
  ]);
  const all = pieces.flatMap(({ piece, count }) => Array.from({ length: count }, (_, k) => `${piece} ${k}`));
  expect(lays.flatMap(copies).sort()).toEqual(all.sort());
  expect(savings[0]!.price).toBe(cloth(without)!.costBought.value - cloth(used)!.costBought.value);
  expect(savings[0]!.price).toBeGreaterThan(0);
});

// Oracle: no piece and nothing left over meets the hole grown by the spacing.
test('no piece is cut from a hole of an offcut, and what is left over is beside it', () => {
  const hole = { id: 'h', from: 500, to: 700, near: 200, far: 420 };
  const { lays } = plan(withStock(kept('a', 1900, 800, { holes: [hole] }))).cutting!;
  const on = lays.find(({ offcut }) => offcut)!;
  expect(on.placements.length).toBeGreaterThan(0);
  expect(on.reserved).toMatchObject([hole]);
  const gap = on.spacing - 1e-3;
  const clear = box(hole.from - gap, hole.near - gap, 200 + 2 * gap, 220 + 2 * gap);
  for (const { outline } of on.placements) expect(intersect(clear, outline)).toEqual([]);
  for (const { x, y, along, across } of on.leaves)
    expect(intersect(clear, box(x, y, along, across))).toEqual([]);
});

test('an offcut is left be where it saves nothing, is of this job, is used by another, or is not for this one', () => {
  const [roll] = plan(defaultCatalogue).cutting!.lays;
  const [along, across] = [roll!.length.value + 60, roll!.rollWidth];
  const used = (more: Partial<Offcut>, of = job) =>
    plan(withStock(kept('a', along, across, more)), of).cutting!.savings;
  expect(plan(withStock(kept('small', 120, 120))).cutting!.savings).toEqual([]);
  expect(used({ fabric: 'mesh-two-faced' })).toEqual([]);
  expect(used({ from: { job: 'test', jobName: '', lay: 'L1', date: '' } })).toEqual([]);
  expect(used({ used: { job: 'other', jobName: '', date: '' } })).toEqual([]);
  expect(used({ used: { job: 'test', jobName: '', date: '' } })).toHaveLength(1);
  expect(used({}, { ...job, offcutsLeftBe: ['a'] })).toEqual([]);
});

test('what a lay leaves is within the cloth bought, and worth its share of the roll', () => {
  const [lay] = plan(defaultCatalogue).cutting!.lays;
  const roll = defaultCatalogue.fabrics
    .find(({ id }) => id === lay!.fabric)!
    .rolls.find(({ width }) => width === lay!.rollWidth)!;
  expect(lay!.leaves.length).toBeGreaterThan(0);
  for (const { x, along, across, worth } of lay!.leaves) {
    expect(x + along).toBeLessThanOrEqual(lay!.bought!.length + 1e-6);
    expect(Math.min(along, across)).toBeGreaterThanOrEqual(defaultCatalogue.habits.leastOffcut);
    expect(Math.abs(worth - (roll.price * along * across) / (roll.step * roll.width))).toBeLessThanOrEqual(
      0.5,
    );
  }
});

/** By lay: the openings whose panels it has, and how many pockets. */
const contents = ({ cutting }: ReturnType<typeof plan>) =>
  cutting!.lays.map(({ placements }) => {
    const of = (kind: 'panel' | 'pocket') =>
      placements.filter((one) => cutting!.pieces.find(({ piece }) => piece === one.piece)!.kind === kind);
    const openings = of('panel').map(
      ({ piece, copy }) => cutting!.pieces.find((one) => one.piece === piece)!.openings[copy]!,
    );
    return { openings: openings.sort(), pockets: of('pocket').length };
  });

test('where a panel and its pockets are to come from one batch, each lay has the pockets of its own panels and no others', () => {
  const stock = withStock(kept('a', 1700, 600));
  const each = plan(defaultCatalogue).hold[0]!.pocketPieces.reduce((sum, { count }) => sum + count, 0);
  expect(each).toBeGreaterThan(0);
  const loose = contents(plan(stock));
  expect(loose.some(({ openings, pockets }) => pockets !== each * openings.length)).toBe(true);
  const bound = plan(stock, { ...job, oneBatch: 'panel' });
  const lays = contents(bound);
  expect(lays).toHaveLength(2);
  for (const { openings, pockets } of lays) expect(pockets).toBe(each * openings.length);
  expect(lays.flatMap(({ openings }) => openings).sort()).toEqual(['A', 'B', 'C']);
});

test('where all of a cloth is to come from one batch, an offcut is used only if it takes everything', () => {
  expect(plan(withStock(kept('a', 1700, 600)), { ...job, oneBatch: 'job' }).cutting!.savings).toEqual([]);
  const [roll] = plan(defaultCatalogue).cutting!.lays;
  const whole = withStock(kept('a', roll!.length.value + 60, roll!.rollWidth));
  expect(plan(whole, { ...job, oneBatch: 'job' }).cutting!.savings).toHaveLength(1);
});

test('of cloth with a direction every piece lies one way: panels as in their openings, pockets all alike', () => {
  const oneWay = {
    ...defaultCatalogue,
    fabrics: defaultCatalogue.fabrics.map((one) => ({ ...one, oneWay: true })),
  };
  const { lays, pieces } = plan(oneWay).cutting!;
  for (const { piece, turns, mayFlip } of pieces)
    expect({ piece, turns: turns.length, mayFlip }).toEqual({ piece, turns: 1, mayFlip: false });
  const angles = (kind: string) =>
    new Set(
      lays[0]!.placements
        .filter((one) => pieces.find(({ piece }) => piece === one.piece)!.kind === kind)
        .map(({ place }) => Math.round((place.angle * 180) / Math.PI)),
    );
  expect(angles('panel').size).toBe(1);
  expect(angles('pocket').size).toBe(1);
});
