import { wrapSize } from '@panewright/design';
import { bounds, distanceBetween, intersects, moveOutline, type Outline, point } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { type Item, nested, type PathItem, templateSheet, textClashes } from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const input = inputFor(smallJob());
const ring = (corners: readonly (readonly [number, number])[]): Outline => {
  const [first, ...rest] = corners.map(([x, y]) => ({ kind: 'line', to: point(x, y) }) as const);
  return { segments: [first!, ...rest] };
};

test('nested copies keep in the room and apart, and squares are as many as by hand', () => {
  const room = { width: 182, height: 230 };
  const shapes: Outline[] = [
    ring([
      [30, 0],
      [30, 40],
      [0, 40],
      [0, 0],
    ]),
    ring([
      [60, 0],
      [30, 50],
      [0, 0],
    ]),
    {
      segments: [
        { kind: 'line', to: point(50, 0) },
        { kind: 'arc', to: point(0, 0), bulge: 1 },
      ],
    },
  ];
  for (const shape of shapes) {
    const placed = nested(shape, room, 4).map((place) => moveOutline(place, shape));
    for (const one of placed) {
      const box = bounds(one);
      expect(Math.min(box.minX, box.minY)).toBeGreaterThan(-1e-6);
      expect(box.maxX).toBeLessThan(room.width + 1e-6);
      expect(box.maxY).toBeLessThan(room.height + 1e-6);
    }
    placed.forEach((one, index) => {
      for (const other of placed.slice(index + 1)) {
        expect(intersects(one, other)).toBe(false);
        expect(distanceBetween(one, other)).toBeGreaterThan(4 - 1e-6);
      }
    });
  }
  // By hand: 30 x 40 with 4 mm between: 5 across and 5 down upright (34 x 5 = 170, 44 x 5 = 220), 4 x 6 on its side.
  expect(nested(shapes[0]!, room, 4).length).toBe(25);
  // A triangle and its half-turned neighbour share a square: more than boxes of 60 x 50 side by side (2 x 4).
  expect(nested(shapes[1]!, room, 4).length).toBeGreaterThan(12);
  expect(
    nested(
      ring([
        [300, 0],
        [300, 300],
        [0, 300],
        [0, 0],
      ]),
      room,
      4,
    ),
  ).toEqual([]);
});

const paths = (items: readonly Item[], layer: string): readonly PathItem[] =>
  items.flatMap((item) =>
    item.kind === 'group' && item.layer === layer ? (item.items as readonly PathItem[]) : [],
  );
const asOutline = ({ segments }: PathItem): Outline => ({ segments: segments as Outline['segments'] });

test('templates are at full size, as many as asked for, and never more than the job needs', () => {
  const sheet = templateSheet(input)!;
  const needed = new Map(input.plan.cutting!.pieces.map(({ piece, count }) => [piece, count]));
  const pockets = input.plan.cutting!.pieces.filter(({ kind, count }) => kind === 'pocket' && count >= 3);
  pockets.forEach(({ piece, outline }, index) => {
    const drawn = paths(sheet.pages[index]!.items, 'cut');
    expect(drawn.length).toBeLessThanOrEqual(needed.get(piece)!);
    for (const one of drawn) {
      const [a, b] = [bounds(asOutline(one)), bounds(outline)];
      const sides = (box: { width: number; height: number }) =>
        [box.width, box.height].toSorted((x, y) => x - y);
      for (const [i, side] of sides(a).entries()) expect(side).toBeCloseTo(sides(b)[i]!, 9);
    }
  });
  const some = templateSheet({ ...input, options: { ...input.options, templateCopies: 2 } })!;
  for (const page of some.pages) expect(paths(page.items, 'cut').length).toBe(2);
  const all = templateSheet({ ...input, options: { ...input.options, templateCopies: 10_000 } })!;
  const film = input.catalogue.wrapFilms.find(({ id }) => id === input.plan.panels[0]!.choices.wrapFilm)!;
  const magnet = input.catalogue.magnets.find(({ id }) => id === input.plan.panels[0]!.choices.hold.inside)!;
  const points = input.plan.hold.reduce(
    (sum, { pattern, points: own }) =>
      sum + own.length * input.plan.patterns.find((one) => one.pattern === pattern)!.members.length,
    0,
  );
  const { stripWidth, cutLength } = wrapSize(magnet, film);
  const films = all.pages
    .flatMap((page) => paths(page.items, 'cut'))
    .map((one) => bounds(asOutline(one)))
    .filter(
      (box) =>
        Math.abs(Math.min(box.width, box.height) - stripWidth) < 1e-6 &&
        Math.abs(Math.max(box.width, box.height) - cutLength) < 1e-6,
    );
  expect(films.length).toBe(points);
});

test('template sheets have no text on a line, on any paper', () => {
  for (const [paper, units] of [
    ['letter', 'in'],
    ['a3', 'mm'],
  ] as const) {
    const sheet = templateSheet({
      ...input,
      options: { ...input.options, paper, units, correction: { x: 1.01, y: 0.99 }, templateCopies: 500 },
    })!;
    expect(textClashes(sheet, testMetrics)).toEqual([]);
  }
  expect(templateSheet({ ...input, plan: { ...input.plan, cutting: null } })).toBeUndefined();
});
