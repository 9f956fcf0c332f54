import {
  defaultCatalogue,
  fewestPoints,
  type Layout,
  type PanelLoad,
  type PlacingInput,
  pairStrength,
  panelMargins,
  placing,
  USUAL_CLOTH,
} from '@panewright/design';
import { point, roundedPolygon } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';

const disc = defaultCatalogue.magnets.find(({ id }) => id === 'disc-20x5')!;
const strength = pairStrength({
  outside: disc,
  inside: disc,
  gap: 6.1,
  hottest: 70,
  friction: { low: 0.15, high: 0.35 },
});
if (!strength.ok) throw new Error(strength.refusal.code);
const outline = roundedPolygon([point(0, 0), point(1000, 0), point(1000, 600), point(0, 600)], mm(60));
if (!outline.ok) throw new Error(outline.refusal.code);

const input: PlacingInput = {
  rim: {
    finished: outline.value,
    edgeNames: ['corner:bl', 'bottom', 'corner:br', 'right', 'corner:tr', 'top', 'corner:tl', 'left'],
  },
  spacing: 609.6,
  upTo: 609.6,
  zones: [],
  reach: 10,
  centreOf: ({ at, inward }) => point(at.x + 40 * Math.cos(inward), at.y + 40 * Math.sin(inward)),
  apart: 76.2,
  hand: [],
  alike: 3,
};
const load: PanelLoad = {
  ...USUAL_CLOTH,
  area: 600_000,
  weight: 2.8,
  openness: 0.05,
  wind: 2.5,
  gustFactor: 1.66,
};
const marginOf = (layout: Layout): number | 'unloaded' => {
  const held = layout.points.map(({ kind, centre }, number) => ({
    number,
    kind,
    x: centre.x,
    y: centre.y,
    strength: strength.value,
  }));
  const found = panelMargins(held, load);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value.margin.low;
};

test('no layout with fewer points on its four sides meets the margin', () => {
  const plain = placing(input);
  const asked = 1.15 * (marginOf(plain) as number);
  const found = fewestPoints(input, marginOf, asked);
  if (!found.ok) throw new Error(JSON.stringify(found.refusal));
  const { layout, margin } = found.value;
  expect(margin as number).toBeGreaterThanOrEqual(asked);
  expect(layout.points.length).toBeGreaterThan(plain.points.length);
  expect(layout.mirrors).toEqual(plain.mirrors);
  expect(layout.gaps.some(({ reason }) => reason === 'raised')).toBe(true);
  // By brute force: every number of points along the two pairs of sides, as far as there are fewer in all.
  let best = Infinity;
  for (let across = 1; across < 8; across++)
    for (let up = 0; up < 8; up++) {
      const points = 4 + 2 * across + 2 * up;
      if (points >= layout.points.length) continue;
      const one = placing({ ...input, counts: { mirrors: plain.mirrors, each: [across, up, across, up] } });
      expect(one.points).toHaveLength(points);
      if ((marginOf(one) as number) >= asked) best = Math.min(best, points);
    }
  expect(best).toBe(Infinity);
});

test('a margin no number of points gives is refused with the best there is', () => {
  const found = fewestPoints(input, marginOf, 1e6);
  expect(found.ok).toBe(false);
  if (found.ok) return;
  expect(found.refusal.code).toBe('MARGIN_OUT_OF_REACH');
  expect(found.refusal.best).toBeGreaterThan(marginOf(placing(input)) as number);
});

test('a margin the shop’s spacing already gives needs no point more', () => {
  const found = fewestPoints(input, marginOf, 0.1);
  expect(found.ok && found.value.layout.points.length).toBe(placing(input).points.length);
});
