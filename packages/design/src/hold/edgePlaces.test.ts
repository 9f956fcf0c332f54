import { alongRun, edgePlaceAt, nearestEdgePlace, placeAlong } from '@panewright/design';
import { type Outline, point, roundedPolygon } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}
const finished: Outline = value(
  roundedPolygon([point(0, 0), point(600, 0), point(600, 400), point(0, 400)], mm(50)),
);
const edgeNames = finished.segments.map((segment, k) => {
  if (segment.kind === 'arc') return `corner:${k}`;
  const before = finished.segments.at(k - 1)!.to;
  if (Math.abs(segment.to.y - before.y) < 1) return segment.to.y < 200 ? 'bottom' : 'top';
  return segment.to.x > 300 ? 'right' : 'left';
});
const rim = { finished, edgeNames };

// Oracle: a rectangle of 600 by 400 mm, measured by hand from its sharp corners, anticlockwise.
test.each([
  [250, -30, 'bottom', 250],
  [640, 120, 'right', 120],
  [200, 420, 'top', 400],
  [-5, 100, 'left', 300],
  [60, 0, 'bottom', 60],
] as const)('(%d, %d) lies nearest %s, %d mm along it', (x, y, on, along) => {
  const place = nearestEdgePlace(rim, point(x, y))!;
  expect(place.on).toBe(on);
  expect(place.at).toBeCloseTo(along, 9);
  expect(place.length).toBeCloseTo(on === 'bottom' || on === 'top' ? 600 : 400, 9);
});

test('from a corner a place lies ahead on one edge or behind on the other, and not on the far ones', () => {
  const corner = { run: nearestEdgePlace(rim, point(300, 0))!.run, t: 0 };
  const back = (x: number, y: number) => alongRun(rim, corner, nearestEdgePlace(rim, point(x, y))!);
  expect(back(300, 0)).toBeCloseTo(300, 9);
  expect(back(0, 300)).toBeCloseTo(-300, 9);
  expect(back(600, 200)).toBeNull();
});

test('along the edge and back is where one began; past the end is nowhere', () => {
  const from = nearestEdgePlace(rim, point(300, 0))!;
  const there = placeAlong(rim, from, 120)!;
  expect(there.at).toBeCloseTo(420, 9);
  expect(placeAlong(rim, there, -120)!.at).toBeCloseTo(300, 9);
  expect(placeAlong(rim, from, 301)).toBeNull();
  const corner = { run: from.run, t: 0 };
  expect(placeAlong(rim, corner, -30)).toMatchObject({ on: 'left', at: 370 });
  expect(alongRun(rim, corner, placeAlong(rim, corner, -30)!)).toBeCloseTo(-30, 9);
});

test('a panel without corners has no edge to measure from', () => {
  const segments: Outline['segments'] = [
    { kind: 'arc', to: point(-300, 0), bulge: 1 },
    { kind: 'arc', to: point(300, 0), bulge: 1 },
  ];
  expect(edgePlaceAt({ finished: { segments }, edgeNames: ['round', 'round'] }, 100)).toBeNull();
});
