import { defaultCatalogue } from '@panewright/design';
import { area, type Corners, perspectiveBetween, point } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { finishedPanel, inPhoto, photoCorners, type SeenPart } from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';

const { plan } = inputFor(smallJob());
const seen = (opening: string) => finishedPanel(plan, defaultCatalogue.fabrics, opening)!;
const rings = (parts: readonly SeenPart[], part: SeenPart['part']) =>
  parts.filter((one) => one.part === part).flatMap((one) => one.rings);
/** Shoelace sum of a ring of points. */
const areaOf = (ring: readonly { readonly x: number; readonly y: number }[]) =>
  ring.reduce((sum, { x, y }, i) => {
    const next = ring[(i + 1) % ring.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);

test('a finished panel is its cloth by colour and openness, its band, and a pocket at each hold point', () => {
  const parts = seen('A');
  const panel = plan.panels[0]!;
  const fabric = defaultCatalogue.fabrics.find(({ id }) => id === panel.choices.fabric)!;
  expect(parts.find(({ part }) => part === 'cloth')!.fill).toEqual({
    ...{ colour: fabric.colour, share: 1 - fabric.openness },
  });
  expect(rings(parts, 'pocket').length).toBe(plan.hold[0]!.points.length);
  const [outer, inner] = rings(parts, 'edge').map(areaOf);
  // Chords 0.2 mm off their arcs: the area is known to 0.2 mm of the outline's length at the most.
  const within = 0.2 * 2100;
  expect(Math.abs(outer! - area(panel.finished))).toBeLessThan(within);
  expect(Math.abs(inner! - area(panel.band!))).toBeLessThan(within);
  expect(finishedPanel(plan, [], 'nowhere')).toBeUndefined();
});

test('a hot-cut panel has no band, and its cloth reaches the finished edge', () => {
  const parts = seen('C');
  expect(rings(parts, 'edge')).toEqual([]);
  const panel = plan.panels.find(({ choices }) => choices.finish.kind === 'hotCut')!;
  expect(Math.abs(areaOf(rings(parts, 'cloth')[0]!) - area(panel.finished))).toBeLessThan(0.2 * 4000);
});

test('in a photo the opening’s sharp corners lie where they were dragged', () => {
  const from = photoCorners(plan, 'C')!;
  expect(from.map(({ x, y }) => [Math.round(x), Math.round(y)])).toEqual([
    [0, 0],
    [1320, 0],
    [1320, 610],
    [0, 610],
  ]);
  const to: Corners = [point(210, 900), point(1650, 820), point(1500, 240), point(300, 180)];
  const map = perspectiveBetween(from, to);
  if (!map.ok) throw new Error('refused');
  const photo = inPhoto(seen('C'), map.value);
  const opening = rings(photo, 'opening')[0]!;
  // Its rounded corners lie inside the four; each straight side on the line between two of them.
  const off = (at: { x: number; y: number }, a: { x: number; y: number }, b: { x: number; y: number }) =>
    Math.abs((b.x - a.x) * (a.y - at.y) - (a.x - at.x) * (b.y - a.y)) / Math.hypot(b.x - a.x, b.y - a.y);
  for (const side of [0, 1, 2, 3]) {
    const [a, b] = [to[side]!, to[(side + 1) % 4]!];
    expect(opening.filter((at) => off(at, a, b) < 1e-6).length).toBeGreaterThanOrEqual(2);
  }
});
