import { edges, type Outline, type PhotoView, pixelOf, point } from '@panewright/contract';
import { expect, test } from 'vitest';
import { edgePixels, handOf, outwardBetween, outwardOnPhoto, pixelSize } from './edgePixels.ts';

/** Square on from 1000 mm, 2 px a millimetre, a lens without fault: the picture is the film, y turned about. */
const view: PhotoView = {
  width: 2000,
  height: 1500,
  focal: 2000,
  centre: [1000, 750],
  distortion: [0, 0, 0, 0],
  rotation: [1, 0, 0, 0, -1, 0, 0, 0, -1],
  translation: [0, 0, 1000],
};
const square: Outline = {
  segments: [
    { kind: 'line', to: point(200, -100) },
    { kind: 'line', to: point(200, 100) },
    { kind: 'arc', to: point(-200, 100), bulge: 0.2 },
    { kind: 'line', to: point(-200, -100) },
  ],
};
const [, right, top] = edges(square) as [never, ReturnType<typeof edges>[0], ReturnType<typeof edges>[0]];

// Oracle: the pinhole by hand. x px = 1000 + 2 x mm, y px = 750 - 2 y mm.
test('an edge is drawn where the pinhole shows it, and an arc passes through its middle', () => {
  const line = edgePixels(view, right);
  expect(line[0]).toEqual({ x: 1400, y: 950 });
  expect(line.at(-1)).toEqual({ x: 1400, y: 550 });
  const arc = edgePixels(view, top);
  const highest = Math.min(...arc.map(({ y }) => y));
  // The middle of an arc lies bulge times half its chord beyond it: 0.2 · 200 mm.
  expect(highest).toBeCloseTo(750 - 2 * (100 + 40), 0);
});

test('a pointer that goes right takes the right side outward, two pixels a millimetre', () => {
  const moved = outwardBetween(view, right, { x: 1400, y: 700 }, { x: 1407, y: 640 });
  expect(moved).toBeCloseTo(3.5, 9);
  const out = outwardOnPhoto(view, right);
  expect([out.x, out.y]).toEqual([expect.closeTo(1, 9), expect.closeTo(0, 9)]);
  const up = outwardOnPhoto(view, top);
  expect([up.x, up.y]).toEqual([expect.closeTo(0, 9), expect.closeTo(-1, 9)]);
});

test('a lens that bends lines bends what is drawn', () => {
  const bent: PhotoView = { ...view, distortion: [-0.1, 0, 0, 0] };
  const line = edgePixels(bent, right);
  const middle = line[Math.floor(line.length / 2)]!;
  // By hand: k1 r² shrinks 400 px by 0.4 % at the middle (r = 0.2) and by 0.5 % at the ends (r² = 0.05).
  expect(middle.x - line[0]!.x).toBeCloseTo(0.4, 2);
  expect(pixelOf(bent, right.from)).toEqual(line[0]);
});

test('a hand is two dots of the screen, and never better than half a millimetre', () => {
  expect(pixelSize(view, right)).toBeCloseTo(0.5, 9);
  expect(handOf(view, right, 0.25)).toBeCloseTo(4, 9);
  expect(handOf(view, right, 8)).toBe(0.5);
});
