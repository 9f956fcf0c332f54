import { type KeepOut, type Layout, type PlacingInput, placing } from '@panewright/design';
import {
  bounds,
  circle,
  mirrorAbout,
  moveOutline,
  movePoint,
  type Outline,
  outlineFrom,
  point,
  roundedPolygon,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fewestOnSpan, spread } from './chain.ts';
import type { Stretch } from './freeStretches.ts';

const inch = 25.4;

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const rectangle = (width: number, height: number, radius = 60): Outline =>
  value(roundedPolygon([point(0, 0), point(width, 0), point(width, height), point(0, height)], mm(radius)));
/** Segments of a rounded polygon begin with the fillet of its first corner. */
const NAMES = ['corner:bl', 'bottom', 'corner:br', 'right', 'corner:tr', 'top', 'corner:tl', 'left'];

const zone = (id: string, x: number, y: number, width: number, height: number): KeepOut => ({
  id,
  outline: value(
    outlineFrom([point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height)]),
  ),
  clearance: 0,
});

const input = (finished: Outline, more: Partial<PlacingInput> = {}): PlacingInput => ({
  rim: { finished, edgeNames: finished.segments.map((_, k) => NAMES[k] ?? `edge${k}`) },
  spacing: 24 * inch,
  upTo: 27 * inch,
  zones: [],
  reach: 10,
  centreOf: (foot) => point(foot.at.x + 40 * Math.cos(foot.inward), foot.at.y + 40 * Math.sin(foot.inward)),
  apart: 76.2,
  hand: [],
  alike: 3.175,
  ...more,
});

const on = (layout: Layout, edge: string) => layout.points.filter((p) => p.on === edge);
const distanceTo = ({ outline }: KeepOut, p: { readonly x: number; readonly y: number }) => {
  const { minX, minY, maxX, maxY } = bounds(outline);
  return Math.hypot(Math.max(minX - p.x, 0, p.x - maxX), Math.max(minY - p.y, 0, p.y - maxY));
};

describe('points on one stretch, against every choice on a grid of whole millimetres', () => {
  const limits = fc.integer({ min: 8, max: 30 });
  const blocked = fc.array(fc.tuple(fc.integer({ min: 1, max: 78 }), fc.integer({ min: 1, max: 14 })), {
    maxLength: 4,
  });

  /** Least number of grid points with no gap over the limit, by breadth: reachable places after k points. */
  function leastCount(length: number, places: readonly number[], limit: number): number | null {
    let reached = new Set([0]);
    for (let count = 0; count <= places.length; count++) {
      if ([...reached].some((t) => length - t <= limit)) return count;
      const next = new Set([...reached].flatMap((t) => places.filter((p) => p > t && p - t <= limit)));
      if (next.size === 0) return null;
      reached = next;
    }
    return null;
  }

  test('no fewer points would do, and no widest gap is smaller', () => {
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 80 }), limits, blocked, (length, limit, zones) => {
        const places = Array.from({ length: length - 1 }, (_, k) => k + 1).filter(
          (p) => !zones.some(([from, width]) => p > from && p < from + width),
        );
        let free: readonly Stretch[] = [{ from: 0, to: length }];
        for (const [from, width] of zones)
          free = free.flatMap((s) =>
            [
              { from: s.from, to: Math.min(s.to, from) },
              { from: Math.max(s.from, from + width), to: s.to },
            ].filter((part) => part.from <= part.to),
          );
        const span = { from: 0, to: length, free, symmetric: false };
        const count = fewestOnSpan(span, limit);
        expect(count).toBe(leastCount(length, places, limit));
        if (count === null) return;
        const chain = spread(span, count)!;
        expect(chain.positions).toHaveLength(count);
        for (const t of chain.positions)
          expect(zones.some(([from, width]) => t > from + 1e-6 && t < from + width - 1e-6)).toBe(false);
        // The widest gap lies under the least whole number that works, and one less does not.
        const whole = Math.ceil(chain.widest - 1e-5);
        expect(leastCount(length, places, whole)).toBeLessThanOrEqual(count);
        if (whole > 1) expect(leastCount(length, places, whole - 1) ?? Infinity).toBeGreaterThan(count);
      }),
      { numRuns: 300, seed: 4 },
    );
  });
});

describe('hold points of a panel', () => {
  // Common practice of the trade, no source: corners first, then equal gaps.
  test('52 × 24 in has six, the middle ones at 26 in, let pass by the upper tolerance', () => {
    const layout = placing(input(rectangle(52 * inch, 24 * inch)));
    expect(layout.points).toHaveLength(6);
    expect(on(layout, 'bottom')[0]!.t / inch).toBeCloseTo(26, 6);
    expect(layout.gaps.map(({ reason }) => reason)).toEqual([
      'withinTolerance',
      'withinTolerance',
      'oneGap',
      'withinTolerance',
      'withinTolerance',
      'oneGap',
    ]);
    expect(layout.mirrors.leftRight).toBeCloseTo(26 * inch, 9);
  });

  test('a latch at mid-edge moves the point beside it, and the gap says so', () => {
    const latch = zone('latch', 650, 0, 20, 60);
    const layout = placing(input(rectangle(52 * inch, 24 * inch), { zones: [latch] }));
    expect(layout.points).toHaveLength(6);
    for (const p of layout.points) expect(distanceTo(latch, p.centre)).toBeGreaterThan(10 - 1e-4);
    const [moved] = on(layout, 'bottom');
    expect(Math.abs(moved!.shift)).toBeGreaterThan(15);
    const gap = layout.gaps[0]!;
    expect(gap.reason).toBe('shifted');
    expect(gap.zone).toBe('latch');
    // One point at the middle is the only symmetric choice with six; so the layout gives up left and right, not the count.
    expect(layout.mirrors.leftRight).toBeNull();
    expect(layout.shapeMirrors.leftRight).not.toBeNull();
    // And the gaps stay within what the shop lets pass.
    for (const { length } of layout.gaps) expect(length).toBeLessThanOrEqual(27 * inch + 0.02);
  });

  test('with two points on the edge a latch on one leaves the layout symmetric', () => {
    const latch = zone('latch', 500, 0, 40, 60);
    const layout = placing(input(rectangle(61 * inch, 20 * inch), { zones: [latch], upTo: 24 * inch }));
    expect(layout.mirrors.leftRight).not.toBeNull();
    const [first, second] = on(layout, 'bottom');
    expect(first!.t).toBeCloseTo(61 * inch - second!.t, 4);
    const reasons = layout.gaps.filter(({ zone: id }) => id === 'latch');
    expect(reasons.some(({ mirrored }) => mirrored)).toBe(true);
  });

  test('a zone over a corner puts a point on either side of it', () => {
    const hinge = zone('hinge', -20, -20, 120, 120);
    const layout = placing(input(rectangle(52 * inch, 24 * inch), { zones: [hinge] }));
    expect(layout.points.filter(({ by }) => by === 'besideCorner')).toHaveLength(2);
    for (const p of layout.points) expect(distanceTo(hinge, p.centre)).toBeGreaterThan(10 - 1e-4);
    expect(layout.gaps.some(({ reason, zone: id }) => reason === 'cornerBlocked' && id === 'hinge')).toBe(
      true,
    );
  });

  test('a zone wider than the spacing has a point at either end, and that gap says so', () => {
    const vent = zone('vent', 300, 0, 800, 80);
    const layout = placing(input(rectangle(60 * inch, 24 * inch), { zones: [vent] }));
    const wide = layout.gaps.find(({ reason }) => reason === 'zoneWide')!;
    expect(wide.zone).toBe('vent');
    expect(wide.length).toBeCloseTo(800 + 2 * 10, 1);
  });

  test('what was set by hand stays where it was set; the rule divides the rest', () => {
    const panel = rectangle(52 * inch, 24 * inch);
    const layout = placing(
      input(panel, {
        hand: [
          { kind: 'fixed', on: 'bottom', at: 400 },
          { kind: 'removed', on: 'top', index: 1 },
          { kind: 'moved', on: 'corner:br', index: 1, by: 50 },
          { kind: 'added', on: 'left', at: 300 },
          { kind: 'moved', on: 'top', index: 9, by: 1 },
          { kind: 'fixed', on: 'sill', at: 10 },
        ],
      }),
    );
    expect(on(layout, 'bottom').map(({ t }) => Math.round(t))).toEqual([400, 860]);
    expect(on(layout, 'top')).toHaveLength(0);
    expect(on(layout, 'right').map(({ t }) => Math.round(t))).toEqual([50]);
    expect(on(layout, 'left')).toHaveLength(1);
    expect(layout.problems.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['HAND_POINT_UNKNOWN', 'HAND_EDGE_UNKNOWN']),
    );
    expect(layout.gaps.some(({ reason }) => reason === 'overLimit')).toBe(true);
  });

  test('a panel turned over takes its zones with it: the layout of the mirror image is the mirror image', () => {
    const panel = value(
      roundedPolygon([point(0, 0), point(900, 0), point(760, 520), point(30, 480)], mm(50)),
    );
    const latch = zone('latch', 420, 0, 60, 50);
    const mirror = mirrorAbout(450);
    const there = moveOutline(mirror, panel);
    const names = input(panel).rim.edgeNames.toReversed();
    const straight = placing(input(panel, { zones: [latch], spacing: 300, upTo: 320 }));
    const turned = placing(
      input(there, {
        rim: { finished: there, edgeNames: names },
        zones: [{ ...latch, outline: moveOutline(mirror, latch.outline) }],
        spacing: 300,
        upTo: 320,
      }),
    );
    expect(turned.points).toHaveLength(straight.points.length);
    for (const p of straight.points) {
      const image = movePoint(mirror, p.centre);
      const near = Math.min(
        ...turned.points.map(({ centre }) => Math.hypot(centre.x - image.x, centre.y - image.y)),
      );
      expect(near).toBeLessThan(0.01);
    }
  });

  test('random zones: every point the rule set is clear, no gap is over the limit but where a zone or corner makes it so', () => {
    const zones = fc.array(
      fc.tuple(
        fc.integer({ min: -30, max: 1180 }),
        fc.integer({ min: -30, max: 580 }),
        fc.integer({ min: 20, max: 200 }),
        fc.integer({ min: 20, max: 80 }),
      ),
      { maxLength: 4 },
    );
    fc.assert(
      fc.property(zones, fc.integer({ min: 150, max: 600 }), (boxes, spacing) => {
        const list = boxes.map(([x, y, w, h], k) => zone(`z${k}`, x, y, w, h));
        const layout = placing(input(rectangle(1200, 600), { zones: list, spacing, upTo: spacing }));
        for (const p of layout.points)
          if (!layout.problems.some((one) => one.code === 'POINT_ON_ZONE'))
            for (const z of list) expect(distanceTo(z, p.centre)).toBeGreaterThan(10 - 1e-3);
        for (const { length, reason } of layout.gaps)
          if (length > spacing + 0.02) expect(['zoneWide', 'cornerBlocked']).toContain(reason);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test('a round panel has equal gaps all the way about, and is let round a latch at its foot', () => {
    const round = value(circle(point(0, 0), mm(300)));
    const plain = placing(input(round));
    expect(plain.points).toHaveLength(3);
    const latch = zone('latch', -20, -300, 40, 60);
    const kept = placing(input(round, { zones: [latch] }));
    for (const p of kept.points) expect(distanceTo(latch, p.centre)).toBeGreaterThan(10 - 1e-3);
    expect(kept.points).toHaveLength(3);
  });
});
