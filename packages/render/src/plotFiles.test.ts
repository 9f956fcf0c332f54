import { type LayDrawing, laysOf, type PieceDrawing, piecesOf } from '@panewright/drawing';
import {
  bounds,
  length,
  moveOutline,
  nearest,
  type Outline,
  point,
  pointAt,
  shiftBy,
  still,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layHpgl, pieceHpgl, renderFiles } from './index.ts';
import { demoJob, inputFor, options } from './testing/demo.ts';
import { fromSegment, movedBy, type PlotStroke, plot, type Spot, tipOf } from './testing/plotter.ts';

// Oracle throughout: the plotter of testing/plotter.ts, which knows the language and nothing of the writer.
const input = inputFor(demoJob, 'a4');
const pieces = piecesOf(input);
const [lay] = laysOf(input) as [LayDrawing];
const KNIFE = { offset: 0.25, overcut: 1.5 };
/** Asked of a file, mm. */
const WITHIN = 0.025;

/** Farthest of the strokes' points, and of the middles between them, from an outline. */
const farthest = (points: readonly Spot[], outline: Outline): number => {
  let worst = 0;
  points.forEach((p, i) => {
    const q = points[i + 1] ?? p;
    for (const { x, y } of [p, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }])
      worst = Math.max(worst, nearest(outline, point(x, y)).distance);
  });
  return worst;
};

/** Farthest of an outline's points from what was drawn, looked for among the strokes near its own length. */
function uncovered(outline: Outline, points: readonly Spot[]): number {
  const whole = length(outline);
  let worst = 0;
  for (let s = 0; s < whole; s += 4) {
    const p = pointAt(outline, mm(s));
    let least = Infinity;
    for (let i = 1; i < points.length && least > 0.001; i++)
      if (Math.abs(points[i]!.x - p.x) < 3000)
        least = Math.min(least, fromSegment(p, points[i - 1]!, points[i]!));
    worst = Math.max(worst, least);
  }
  return worst;
}

const penOf = (strokes: readonly PlotStroke[], pen: number) => strokes.filter((one) => one.pen === pen);

test('every piece’s plotter file is cut and drawn within 0.025 mm of the plan', () => {
  for (const chords of ['equal', 'full'] as const)
    for (const piece of pieces) {
      const strokes = plot(pieceHpgl(piece), chords);
      const box = bounds(piece.boundary);
      const moved = (one: Outline) => moveOutline(shiftBy(10 - box.minX, 10 - box.minY), one);
      const cuts = penOf(strokes, 2);
      expect(cuts.length).toBe(1);
      expect(farthest(cuts[0]!.points, moved(piece.boundary))).toBeLessThan(WITHIN);
      expect(uncovered(moved(piece.boundary), cuts[0]!.points)).toBeLessThan(WITHIN);
      const drawn = penOf(strokes, 1);
      const rings = [...piece.internal, ...piece.sew].map(moved);
      for (const ring of rings) {
        const own = drawn.filter(({ points }) => points.length > 2 && farthest(points, ring) < WITHIN);
        expect(own.length).toBeGreaterThan(0);
        expect(Math.min(...own.map(({ points }) => uncovered(ring, points)))).toBeLessThan(WITHIN);
      }
      const lines = piece.notches.length + 2 * piece.centres.length + (piece.grain ? 1 : 0);
      expect(drawn.length).toBe(rings.length + lines);
    }
});

test('a whole lay is cut within 0.025 mm, and arcs are arcs', () => {
  const file = layHpgl(lay);
  const cuts = penOf(plot(file), 2);
  expect(cuts.length).toBe(lay.placed.length);
  for (const { piece, place } of lay.placed) {
    const { boundary } = lay.pieces.find(({ name }) => name === piece)!;
    const outline = moveOutline(shiftBy(10, 0), moveOutline(place, boundary));
    const { minX } = bounds(outline);
    const near = cuts.filter(({ points }) => Math.abs(Math.min(...points.map(({ x }) => x)) - minX) < 0.1);
    const miss = near.map(({ points }) => Math.max(farthest(points, outline), uncovered(outline, points)));
    expect(Math.min(...miss)).toBeLessThan(WITHIN);
  }
  expect(file.match(/AA/g)!.length).toBeGreaterThan(lay.placed.length);
});

test('the tip of a trailing blade cuts every piece within 0.025 mm', () => {
  for (const piece of [pieces.find(({ name }) => name.endsWith('panel'))!, pieces.at(-1)!]) {
    const strokes = penOf(plot(pieceHpgl(piece, { knife: KNIFE })), 2);
    const [, cut] = tipOf(strokes, KNIFE.offset);
    const box = bounds(piece.boundary);
    const outline = moveOutline(shiftBy(10 - box.minX, 10 - box.minY), piece.boundary);
    expect(strokes.length).toBe(2);
    expect(farthest(cut!.points, outline)).toBeLessThan(WITHIN);
    expect(uncovered(outline, cut!.points)).toBeLessThan(WITHIN);
    // Uncorrected, the tip cuts every corner short: the axis itself runs off the outline.
    expect(farthest(strokes[1]!.points, outline)).toBeGreaterThan(0.1);
  }
});

test('a square with sharp corners is cut sharp by a trailing blade', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1.5, noNaN: true }),
      (offset, turn) => {
        const corner = (k: number) =>
          point(100 + 60 * Math.cos(turn + (k * Math.PI) / 2), 100 + 60 * Math.sin(turn + (k * Math.PI) / 2));
        const square = ring([corner(0), corner(1), corner(2), corner(3)]);
        const file = pieceHpgl(bare('S', square), { knife: { offset, overcut: 4 } });
        const [, cut] = tipOf(penOf(plot(file), 2), offset);
        const box = bounds(square);
        const outline = moveOutline(shiftBy(10 - box.minX, 10 - box.minY), square);
        expect(farthest(cut!.points, outline)).toBeLessThan(0.03);
        for (const { to } of outline.segments)
          expect(Math.min(...cut!.points.map((p) => Math.hypot(p.x - to.x, p.y - to.y)))).toBeLessThan(0.05);
      },
    ),
    { numRuns: 25 },
  );
});

test('a cut runs on over its own beginning by the overcut', () => {
  const square = ring([point(0, 0), point(100, 0), point(100, 100), point(0, 100)]);
  const long = (overcut: number) => {
    const [{ points }] = plot(pieceHpgl(bare('S', square), { knife: { offset: 0, overcut } })) as [
      PlotStroke,
    ];
    return points.reduce(
      (sum, p, i) => sum + (i === 0 ? 0 : Math.hypot(p.x - points[i - 1]!.x, p.y - points[i - 1]!.y)),
      0,
    );
  };
  expect(long(0)).toBeCloseTo(400, 6);
  expect(long(7)).toBeCloseTo(407, 6);
  expect(long(50)).toBeCloseTo(450, 6);
});

test('no piece of the lay moves before it is cut free', () => {
  expect(movedBy(plot(layHpgl(lay)), 2)).toEqual([]);
  const strokes = plot(layHpgl(lay, { knife: KNIFE }));
  const tips = tipOf(penOf(strokes, 2), KNIFE.offset);
  expect(movedBy([...penOf(strokes, 1), ...tips], 2)).toEqual([]);
});

test('what lies in a piece is cut before it, however the lay names them', () => {
  const box = (x: number, y: number, side: number) =>
    ring([point(x, y), point(x + side, y), point(x + side, y + side), point(x, y + side)]);
  const shapes = [box(0, 0, 400), box(20, 20, 200), box(40, 40, 60), box(300, 300, 50), box(500, 0, 90)];
  fc.assert(
    fc.property(fc.shuffledSubarray(shapes, { minLength: 5 }), (mixed) => {
      const named = mixed.map((outline, index) => bare(`S${index}`, outline));
      const nested: LayDrawing = {
        ...{ name: 'L', length: 700, width: 500, pieces: named },
        placed: named.map(({ name }) => ({ piece: name, copy: 1, place: still })),
      };
      const strokes = plot(layHpgl(nested));
      expect(penOf(strokes, 2).length).toBe(5);
      expect(movedBy(strokes, 2)).toEqual([]);
      // The check can fail: in the opposite order the small ones are cut in loose cloth.
      expect(movedBy(penOf(strokes, 2).toReversed(), 2).length).toBeGreaterThan(0);
    }),
    { numRuns: 20 },
  );
});

test('the way between cuts is far shorter than in the order of the lay', () => {
  const starts = (strokes: readonly PlotStroke[]) => strokes.map(({ points }) => points[0]!);
  const way = (all: readonly Spot[]) =>
    all.reduce((sum, p, i) => (i === 0 ? 0 : sum + Math.hypot(p.x - all[i - 1]!.x, p.y - all[i - 1]!.y)), 0);
  const cut = starts(penOf(plot(layHpgl(lay)), 2));
  const planned = lay.placed.map(({ piece, place }) => {
    const { boundary } = lay.pieces.find(({ name }) => name === piece)!;
    return moveOutline(place, boundary).segments[0].to;
  });
  expect(way(cut)).toBeLessThan(way(planned) * 0.6);
});

test('plotter files are written where they are asked for, and settings no machine has are refused', async () => {
  const drawings = { sheets: [], pieces, lays: [lay] };
  const paths = async (more: object) =>
    (await renderFiles(drawings, { ...options, ...more })).map(({ path }) => path);
  expect((await paths({})).some((path) => path.endsWith('.plt'))).toBe(false);
  expect(await paths({ hpgl: {} })).toEqual(expect.arrayContaining(['pieces/P1-panel.plt', 'lay.plt']));
  for (const [knife, words] of [
    [{ offset: Number.NaN, overcut: 1 }, 'knife offset'],
    [{ offset: 0.2, overcut: -1 }, 'overcut'],
  ] as const)
    expect(() => layHpgl(lay, { knife })).toThrow(words);
  expect(() => layHpgl(lay, { margin: 1e9 })).toThrow('from 0 to 500 mm');
});

function ring(points: readonly ReturnType<typeof point>[]): Outline {
  const [first, ...rest] = points.map((to) => ({ kind: 'line', to }) as const);
  return { segments: [first!, ...rest] };
}

function bare(name: string, boundary: Outline): PieceDrawing {
  return {
    ...{ name, count: 1, boundary, notches: [], internal: [], centres: [], sew: [] },
    ...{ grain: undefined, annotation: [] },
  };
}
