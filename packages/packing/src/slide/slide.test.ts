import { bindingChain, type Instance, type Placement, pushTogether, verifyLay } from '@panewright/packing';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

const WIDTH = 12;
const LENGTH = 24;

/** Whole rectangles that do not overlap: each drawn one is left out where it meets an earlier one. */
const scattered = fc
  .array(
    fc.record({
      x: fc.integer({ min: 0, max: 18 }),
      y: fc.integer({ min: 0, max: 9 }),
      w: fc.integer({ min: 1, max: 6 }),
      h: fc.integer({ min: 1, max: 5 }),
    }),
    { minLength: 2, maxLength: 14 },
  )
  .map((all) => {
    const kept: Rect[] = [];
    for (const one of all) if (one.y + one.h <= WIDTH && free(kept, one)) kept.push(one);
    return kept;
  })
  .filter((kept) => kept.length > 1);

const free = (others: readonly Rect[], { x, y, w, h }: Rect) =>
  x >= 0 && y >= 0 && others.every((o) => x >= o.x + o.w || o.x >= x + w || y >= o.y + o.h || o.y >= y + h);

const instanceOf = (rects: readonly Rect[], reserved: readonly Rect[] = []): Instance => ({
  stripWidth: mm(WIDTH),
  spacing: mm(0),
  margin: { side: mm(0), end: mm(0) },
  reserved: reserved.map(({ x, y, w, h }) => ({
    minX: mm(x),
    minY: mm(y),
    maxX: mm(x + w),
    maxY: mm(y + h),
  })),
  pieces: rects.map(({ w, h }, id) => ({
    id,
    demand: 1,
    polygon: [
      [mm(0), mm(0)],
      [mm(w), mm(0)],
      [mm(w), mm(h)],
      [mm(0), mm(h)],
    ],
    allowedRotationsDeg: [0],
    flip: false,
  })),
});

const placesOf = (rects: readonly Rect[]): readonly Placement[] =>
  rects.map(({ x, y }, pieceId) => ({
    pieceId,
    copy: 0,
    rotationDeg: 0,
    flipped: false,
    x: mm(x),
    y: mm(y),
  }));

/** Oracle: one unit at a time on a grid. Nothing of the engine's. */
function steppedBack(rects: readonly Rect[], still: readonly Rect[], down: boolean): readonly Rect[] {
  const all = rects.map((one) => ({ ...one }));
  const order = all.map((_, i) => i).sort((a, b) => rects[a]!.x - rects[b]!.x || a - b);
  for (let moved = true; moved; ) {
    moved = false;
    for (const [dx, dy] of down ? [[1, 0] as const, [0, 1] as const] : [[1, 0] as const])
      for (const i of order) {
        const others = [...all.filter((_, k) => k !== i), ...still];
        for (;;) {
          const next = { ...all[i]!, x: all[i]!.x - dx, y: all[i]!.y - dy };
          if (!free(others, next)) break;
          all[i] = next;
          moved = true;
        }
      }
  }
  return all;
}

const endOf = (rects: readonly Rect[]) => Math.max(...rects.map(({ x, w }) => x + w));

test('pieces pushed together lie where stepping them back and down one unit at a time leaves them', () => {
  fc.assert(
    fc.property(scattered, (rects) => {
      const pushed = pushTogether(instanceOf(rects), placesOf(rects));
      if (!pushed.ok) throw new Error(pushed.refusal.code);
      const expected = steppedBack(rects, [], true);
      pushed.value.placements.forEach(({ x, y }, k) => {
        expect(x).toBeCloseTo(expected[k]!.x, 4);
        expect(y).toBeCloseTo(expected[k]!.y, 4);
      });
      expect(pushed.value.length).toBeLessThanOrEqual(endOf(rects) + 1e-6);
    }),
    { numRuns: 150 },
  );
});

test('a lay is as long as its chain: sliding everything back shortens it by the play, and by no more', () => {
  fc.assert(
    fc.property(scattered, (rects) => {
      const chain = bindingChain(instanceOf(rects), placesOf(rects));
      if (!chain.ok) throw new Error(chain.refusal.code);
      const back = steppedBack(rects, [], false);
      expect(chain.value.play).toBeCloseTo(endOf(rects) - endOf(back), 4);
      const ids = chain.value.copies.map(({ pieceId }) => Number(pieceId));
      // Slid back, each of the chain touches the next, from the cut end to the end of the lay.
      expect(back[ids[0]!]!.x).toBe(0);
      ids.slice(1).forEach((id, k) => {
        const before = back[ids[k]!]!;
        expect(back[id]!.x).toBe(before.x + before.w);
      });
      const last = back[ids.at(-1)!]!;
      expect(last.x + last.w).toBe(endOf(back));
    }),
    { numRuns: 150 },
  );
});

test('what lies before a reserved place binds no longer: the chain begins at the place', () => {
  const flaw = { x: 6, y: 0, w: 2, h: WIDTH };
  const rects = [
    { x: 0, y: 0, w: 5, h: 4 },
    { x: 8, y: 0, w: 5, h: 4 },
    { x: 14, y: 2, w: 3, h: 4 },
  ];
  const chain = bindingChain(instanceOf(rects, [flaw]), placesOf(rects));
  expect(chain).toEqual({
    ok: true,
    value: {
      copies: [
        { pieceId: 1, copy: 0 },
        { pieceId: 2, copy: 0 },
      ],
      from: 0,
      play: 1,
    },
  });
  const pushed = pushTogether(instanceOf(rects, [flaw]), placesOf(rects));
  expect(pushed.ok && pushed.value.placements.map(({ x, y }) => [Math.round(x), Math.round(y)])).toEqual([
    [0, 0],
    [8, 0],
    [13, 0],
  ]);
});

test('slanting sides slide until they touch, with the spacing between', () => {
  // Two right triangles, slant to slant: at the same height the second, turned, fits back to back.
  const triangle: Instance = {
    ...instanceOf([]),
    spacing: mm(1),
    pieces: [
      {
        id: 't',
        demand: 2,
        polygon: [
          [mm(0), mm(0)],
          [mm(8), mm(0)],
          [mm(0), mm(8)],
        ],
        allowedRotationsDeg: [0, 180],
        flip: false,
      },
    ],
  };
  const at = (copy: number, rotationDeg: number, x: number, y: number): Placement => ({
    ...{ pieceId: 't', copy, rotationDeg, flipped: false },
    ...{ x: mm(x), y: mm(y) },
  });
  const pushed = pushTogether(triangle, [at(0, 0, 2, 0), at(1, 180, LENGTH, 8)]);
  if (!pushed.ok) throw new Error(pushed.refusal.code);
  // Slants x + y = 8 and x + y = 8 + √2 lie 1 apart; the turned one's corner is then at x = 8 + √2.
  expect(pushed.value.placements[0]!.x).toBeCloseTo(0, 6);
  expect(pushed.value.placements[1]!.x).toBeCloseTo(8 + Math.SQRT2, 4);
  expect(verifyLay(triangle, pushed.value).ok).toBe(true);
  const chain = bindingChain(triangle, pushed.value.placements);
  expect(chain.ok && chain.value.copies.map(({ copy }) => copy)).toEqual([0, 1]);
  expect(chain.ok && chain.value.play).toBe(0);
});
