import { defaultCatalogue, deriveShapes, type Opening } from '@panewright/design';
import { contains, movePoint, signedDistance } from '@panewright/geometry';
import { describe, expect, test } from 'vitest';
import { demoJob, jobOf, rectangle } from '../testing/jobs.ts';

const latch = { id: 'latch', name: 'latch', x: 427.2, y: -5, width: 60, height: 40 };
const distanceTo = (zone: typeof latch, p: { readonly x: number; readonly y: number }) =>
  Math.hypot(
    Math.max(zone.x - p.x, 0, p.x - zone.x - zone.width),
    Math.max(zone.y - p.y, 0, p.y - zone.y - zone.height),
  );

describe('one layout for all openings of a pattern', () => {
  // The same window twice, read from either side: one has a latch, the other is its mirror image.
  const first = rectangle('W1', 36, 20, 3, { obstructions: [latch] });
  const second = rectangle('W2', 36, 20, 3, { obstructions: [{ ...latch, id: 'vent', x: 100, width: 30 }] });
  const plan = deriveShapes(jobOf([first, second]), defaultCatalogue);

  test('its points are clear of what either opening has, and the gaps say which stood in the way', () => {
    expect(plan.patterns).toHaveLength(1);
    const [hold] = plan.hold;
    for (const opening of [first, second] as Opening[]) {
      const { place } = plan.patterns[0]!.members.find((member) => member.opening === opening.id)!;
      for (const point of hold!.points)
        for (const zone of opening.obstructions)
          expect(distanceTo(zone as typeof latch, movePoint(place, point.centre))).toBeGreaterThan(10 - 0.05);
    }
    expect(hold!.gaps!.some(({ obstruction }) => obstruction === 'W1.latch')).toBe(true);
    expect(plan.findings.some(({ code }) => code === 'HOLD_POINT_ON_OBSTRUCTION')).toBe(false);
  });

  test('every gap joins neighbours and together they go once round', () => {
    const { gaps, points } = plan.hold[0]!;
    expect(gaps!.map(({ from }) => from)).toEqual(points.map(({ number }) => number));
    const round = gaps!.reduce((sum, { length }) => sum + length, 0);
    const { finishedWidth, finishedHeight } = plan.panels[0]!;
    expect(round).toBeCloseTo(2 * (finishedWidth.value + finishedHeight.value), 3);
  });
});

describe('hold points of the demonstration', () => {
  const plan = deriveShapes(demoJob(), defaultCatalogue);

  test('each has its margin on each glass, and the weakest lets go at the wind stated', () => {
    for (const hold of plan.hold)
      for (const { byPoint, letsGo, opening } of hold.openings) {
        expect(byPoint).toHaveLength(hold.points.length);
        const lows = byPoint!.map(({ low }) => low ?? Infinity);
        const weakest = byPoint!.find(({ point }) => point === letsGo!.weakest)!;
        expect(weakest.low ?? Infinity).toBe(Math.min(...lows));
        const { wind } = plan.openings.find((one) => one.opening === opening)!.choices.weather;
        expect((letsGo!.low ?? Infinity) > wind).toBe(Math.min(...lows) > 1);
      }
  });

  test('where a pair can meet lies in its pocket and on its glass, and every pair of the demonstration can', () => {
    for (const hold of plan.hold)
      for (const { meetings, opening } of hold.openings) {
        const { place } = plan.patterns
          .flatMap(({ members }) => members)
          .find((member) => member.opening === opening)!;
        const glass = plan.openings.find((one) => one.opening === opening)!.shape!.outline;
        for (const { point, at, travel, refusal, region } of meetings!) {
          expect(refusal).toBeNull();
          const { pocket } = hold.points.find(({ number }) => number === point)!;
          // A 20 mm disc with 6 mm of seam and 1 mm of ease; 2 mm of glass round the inside one.
          expect(signedDistance(pocket!, at!)).toBeLessThanOrEqual(-17 + 1e-6);
          expect(signedDistance(glass, movePoint(place, at!))).toBeLessThanOrEqual(-12 + 1e-6);
          expect(region.some((part) => contains(part, at!) !== 'outside')).toBe(true);
          expect(Math.min(travel!.outward, travel!.inward)).toBeGreaterThan(0);
        }
      }
  });
});

test('a plan worked out after edits is the one worked out from nothing', () => {
  const job = demoJob();
  const edits = [
    (one: typeof job) => ({
      ...one,
      choices: { ...one.choices, weather: { ...one.choices.weather, wind: 8 } },
    }),
    (one: typeof job) => ({
      ...one,
      choices: { ...one.choices, hold: { ...one.choices.hold, outside: 'disc-15x3', spacing: 400 } },
    }),
    (one: typeof job) => ({
      ...one,
      openings: one.openings.map((opening, k) =>
        k === 2
          ? { ...opening, obstructions: [], glazing: { ...opening.glazing, standOff: 2 } }
          : { ...opening, obstructions: k === 0 ? [latch] : opening.obstructions },
      ),
    }),
    (one: typeof job) => ({ ...one, choices: { ...one.choices, fit: { ...one.choices.fit, all: 3 } } }),
  ];
  let edited = job;
  deriveShapes(edited, defaultCatalogue);
  for (const edit of edits) {
    edited = edit(edited);
    const anew = structuredClone(edited);
    expect(deriveShapes(edited, defaultCatalogue)).toEqual(
      deriveShapes(anew, structuredClone(defaultCatalogue)),
    );
  }
});
