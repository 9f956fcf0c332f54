import { type Outline, point } from '@panewright/contract';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outlinePath } from './outlinePath.ts';
import { fitView } from './view.ts';

// SVG 2, section 9.3.8: A rx ry x-axis-rotation large-arc-flag sweep-flag x y; sweep 1 turns toward positive angles,
// which is anticlockwise in a frame with y up. Bulge is tan(sweep / 4).
test('a quarter round is an arc of its radius, anticlockwise', () => {
  const quarter: Outline = {
    segments: [
      { kind: 'line', to: point(10, 0) },
      { kind: 'arc', to: point(0, 10), bulge: Math.tan(Math.PI / 8) },
      { kind: 'line', to: point(0, 0) },
    ],
  };
  expect(outlinePath(quarter)).toBe('M0 0L10 0A10 10 0 0 1 0 10L0 0Z');
});

test('three quarters of a circle is the large arc; a re-entrant arc turns the other way', () => {
  const pie: Outline = {
    segments: [
      { kind: 'line', to: point(5, 0) },
      { kind: 'arc', to: point(0, -5), bulge: Math.tan((3 * Math.PI) / 8) },
      { kind: 'line', to: point(0, 0) },
    ],
  };
  expect(outlinePath(pie)).toContain('A5 5 0 1 1 0 -5');
  const bite: Outline = {
    segments: [
      { kind: 'arc', to: point(10, 0), bulge: -Math.tan(Math.PI / 8) },
      { kind: 'line', to: point(5, 20) },
      { kind: 'line', to: point(0, 0) },
    ],
  };
  expect(outlinePath(bite)).toMatch(/^M0 0A7\.07\d+ 7\.07\d+ 0 0 0 10 0/);
});

test('the drawing lies inside its sheet, to one scale both ways, and its two maps agree', () => {
  const size = fc.double({ min: 1, max: 3000, noNaN: true });
  const place = fc.double({ min: -500, max: 500, noNaN: true });
  fc.assert(
    fc.property(size, size, place, place, (wide, high, x, y) => {
      const box = { minX: x, minY: y, maxX: x + wide, maxY: y + high };
      const view = fitView(box, 700, 500, { x: 30, top: 20, bottom: 40 });
      const [a, b] = [view.at({ x: box.minX, y: box.minY }), view.at({ x: box.maxX, y: box.maxY })];
      expect(a.x).toBeGreaterThanOrEqual(30 - 1e-6);
      expect(b.x).toBeLessThanOrEqual(670 + 1e-6);
      expect(b.y).toBeGreaterThanOrEqual(20 - 1e-6);
      expect(a.y).toBeLessThanOrEqual(460 + 1e-6);
      expect((b.x - a.x) / wide).toBeCloseTo((a.y - b.y) / high, 9);
      const [sx, , , sy, dx, dy] = /\((.*)\)/.exec(view.world)![1]!.split(' ').map(Number) as number[];
      expect(sx! * box.maxX + dx!).toBeCloseTo(b.x, 6);
      expect(sy! * box.maxY + dy!).toBeCloseTo(b.y, 6);
    }),
  );
});
