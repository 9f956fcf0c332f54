import { type Corners, perspectiveBetween, point, project } from '@panewright/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const square: Corners = [point(0, 0), point(1, 0), point(1, 1), point(0, 1)];
/** A pinhole camera looks at a plane: oracle for what perspective is. Focal length 1, the plane turned about y and tilted. */
function camera(turn: number, tilt: number, distance: number) {
  const [c, s, ct, st] = [Math.cos(turn), Math.sin(turn), Math.cos(tilt), Math.sin(tilt)];
  return (x: number, y: number) => {
    const [px, py, pz] = [c * x, ct * y + st * s * x, distance - s * x * ct + st * y];
    return point(px / pz, py / pz);
  };
}

test('what a pinhole camera sees of a flat panel is where the map puts it', () => {
  fc.assert(
    fc.property(
      fc.tuple(
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
      ),
      fc.tuple(fc.double({ min: -2, max: 2, noNaN: true }), fc.double({ min: -2, max: 2, noNaN: true })),
      ([turn, tilt], [x, y]) => {
        const see = camera(turn, tilt, 9);
        const from: Corners = [point(-2, -1), point(2, -1.2), point(1.8, 1), point(-2, 1.1)];
        const to = from.map((one) => see(one.x, one.y)) as unknown as Corners;
        const map = perspectiveBetween(from, to);
        if (!map.ok) throw new Error('refused');
        const [seen, put] = [see(x, y), project(map.value, point(x, y))];
        expect(Math.hypot(seen.x - put.x, seen.y - put.y)).toBeLessThan(1e-9);
      },
    ),
  );
});

test('corners come back, the other way round too, and the middle of a trapezium is nearer its short side', () => {
  const to: Corners = [point(0, 100), point(90, 100), point(60, 20), point(30, 20)];
  const map = perspectiveBetween(square, to);
  if (!map.ok) throw new Error('refused');
  square.forEach((one, index) => {
    const at = project(map.value, one);
    expect(Math.hypot(at.x - to[index]!.x, at.y - to[index]!.y)).toBeLessThan(1e-9);
  });
  // Oracle: the diagonals of a quadrilateral cross where those of the square cross.
  const middle = project(map.value, point(0.5, 0.5));
  expect(middle.x).toBeCloseTo(45, 9);
  expect(middle.y).toBeCloseTo(40, 9);
});

test('corners that are not those of a convex quadrilateral are refused', () => {
  const dart: Corners = [point(0, 0), point(4, 0), point(1, 1), point(0, 4)];
  const bow: Corners = [point(0, 0), point(1, 1), point(1, 0), point(0, 1)];
  const flat: Corners = [point(0, 0), point(1, 0), point(2, 0), point(0, 1)];
  for (const to of [dart, bow, flat])
    expect(perspectiveBetween(square, to)).toEqual({
      ok: false,
      refusal: { code: 'CORNERS_NOT_CONVEX', of: 'to' },
    });
  expect(perspectiveBetween(bow, square)).toMatchObject({ refusal: { of: 'from' } });
});
