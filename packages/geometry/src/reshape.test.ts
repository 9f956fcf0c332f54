import {
  arcOf,
  edges,
  isSharp,
  moveCorner,
  moveEdge,
  type Outline,
  outlineFrom,
  point,
  roundedPolygon,
  setRadius,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

// Oracle throughout: the outline built afresh from its moved corners. A side that moves keeps its direction, so its two
// sharp corners slide along the neighbouring sides: each is where two lines cross, by Cramer's rule, in this file.
type Xy = readonly [number, number];
const corners = ([a, b]: Xy): Xy[] => [
  [0, 0],
  [900, a],
  [870, 600],
  [b, 560],
];

const build = (at: readonly Xy[], radii: readonly number[]): Outline => {
  const made = roundedPolygon(
    at.map(([x, y]) => point(x, y)),
    radii.map(mm),
  );
  if (!made.ok) throw new Error(made.refusal.code);
  return made.value;
};

const cross = (p: Xy, u: Xy, q: Xy, v: Xy): Xy => {
  const t = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / (u[0] * v[1] - u[1] * v[0]);
  return [p[0] + t * u[0], p[1] + t * u[1]];
};
const way = (p: Xy, q: Xy): Xy => [q[0] - p[0], q[1] - p[1]];

function withSideMoved(at: readonly Xy[], side: number, outward: number): Xy[] {
  const [a, b, c, d] = [0, 1, 2, 3].map((k) => at[(side + k) % 4]!) as [Xy, Xy, Xy, Xy];
  const u = way(a, b);
  const length = Math.hypot(...u);
  const moved: Xy = [a[0] + (u[1] / length) * outward, a[1] - (u[0] / length) * outward];
  const out = [...at];
  out[side] = cross(moved, u, d, way(d, a));
  out[(side + 1) % 4] = cross(moved, u, b, way(b, c));
  return out;
}

/** The edge of `outline` that lies on side k of the corners. */
const sideOf = (outline: Outline, at: readonly Xy[], k: number): number => {
  const [p, u] = [at[k]!, way(at[k]!, at[(k + 1) % 4]!)];
  const off = (x: number, y: number) => Math.abs((x - p[0]) * u[1] - (y - p[1]) * u[0]) / Math.hypot(...u);
  return edges(outline).findIndex(
    (e) => e.kind === 'line' && off(e.from.x, e.from.y) + off(e.to.x, e.to.y) < 1e-6,
  );
};

/** Every vertex of one outline is a vertex of the other, and every radius a radius. */
function expectSame(found: Outline, wanted: Outline, digits = 5): void {
  const list = (outline: Outline) =>
    edges(outline)
      .map((e) => [e.to.x, e.to.y, arcOf(e)?.radius ?? 0])
      .sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
  const [a, b] = [list(found), list(wanted)];
  expect(a.length).toBe(b.length);
  a.flat().forEach((value, i) => {
    expect(value).toBeCloseTo(b.flat()[i]!, digits);
  });
}

const shape = fc.tuple(fc.integer({ min: -30, max: 60 }), fc.integer({ min: -40, max: 50 }));

describe('moveEdge', () => {
  test('a side moves, and the roundings at its ends keep their radii', () => {
    fc.assert(
      fc.property(shape, fc.nat(3), fc.integer({ min: -80, max: 80 }), (ab, side, by) => {
        const [at, radii] = [corners(ab), [40, 75, 20, 60]];
        const before = build(at, radii);
        const moved = moveEdge(before, sideOf(before, at, side), mm(by));
        if (!moved.ok) throw new Error(moved.refusal.code);
        expectSame(moved.value, build(withSideMoved(at, side, by), radii));
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  test('between sharp corners the neighbours are lengthened or shortened', () => {
    const at = corners([20, 10]);
    const sharp = outlineFrom(at.map(([x, y]) => point(x, y)));
    if (!sharp.ok) throw new Error();
    const moved = moveEdge(sharp.value, sideOf(sharp.value, at, 2), mm(-35));
    if (!moved.ok) throw new Error(moved.refusal.code);
    expectSame(moved.value, build(withSideMoved(at, 2, -35), [0, 0, 0, 0]));
  });

  // Oracle: the middle of a square corner's rounding lies r (√2 − 1) from the corner.
  test('a rounding of a square corner that moves out by d has its radius less by d / (√2 − 1)', () => {
    const before = build(
      [
        [0, 0],
        [500, 0],
        [500, 400],
        [0, 400],
      ],
      [50, 50, 50, 50],
    );
    const rounding = edges(before).findIndex((e) => e.kind === 'arc');
    for (const by of [-6, -0.5, 0.1, 4]) {
      const moved = moveEdge(before, rounding, mm(by));
      if (!moved.ok) throw new Error(moved.refusal.code);
      expect(arcOf(edges(moved.value)[rounding]!)!.radius).toBeCloseTo(50 - by / (Math.SQRT2 - 1), 5);
    }
  });

  test('moved back, an outline with curved sides and a re-entrant rounding is as it was', () => {
    const before = curved();
    edges(before).forEach((_, edge) => {
      const there = moveEdge(before, edge, mm(3));
      if (!there.ok) throw new Error(`${edge} ${there.refusal.code}`);
      const back = moveEdge(there.value, edge, mm(-3));
      if (!back.ok) throw new Error(`${edge} ${back.refusal.code}`);
      // The way out at a curved edge's middle turns a little as the edge moves: it comes back within 0.05 mm.
      expectSame(back.value, before, 1);
      edges(there.value).forEach((e, k) => {
        if (k !== edge) expect(arcOf(e)?.radius ?? 0).toBeCloseTo(arcOf(edges(before)[k]!)?.radius ?? 0, 5);
      });
    });
  });

  test('a side moved over the one across it is refused, and so is an edge that is not there', () => {
    const before = build(corners([0, 0]), [40, 40, 40, 40]);
    const bottom = sideOf(before, corners([0, 0]), 0);
    expect(moveEdge(before, bottom, mm(-700))).toEqual({
      ok: false,
      refusal: { code: 'NEIGHBOURS_DO_NOT_MEET', edge: bottom },
    });
    expect(moveEdge(before, 8, mm(1))).toEqual({
      ok: false,
      refusal: { code: 'EDGE_NOT_THERE', edge: 8, edges: 8 },
    });
  });
});

describe('setRadius', () => {
  test('of a rounding: as if the corner had been rounded so', () => {
    const at = corners([25, -15]);
    const before = build(at, [40, 75, 20, 60]);
    const rounding = edges(before).findIndex((e) => Math.abs((arcOf(e)?.radius ?? 0) - 75) < 1e-6);
    const changed = setRadius(before, rounding, mm(90));
    if (!changed.ok) throw new Error(changed.refusal.code);
    expectSame(changed.value, build(at, [40, 90, 20, 60]));
  });

  test('of a curved side: its new radius, the roundings at its ends theirs', () => {
    const before = curved();
    const side = edges(before).findIndex((e) => (arcOf(e)?.radius ?? 0) > 500);
    const changed = setRadius(before, side, mm(1500));
    if (!changed.ok) throw new Error(changed.refusal.code);
    const radii = edges(changed.value).map((e) => arcOf(e)?.radius ?? 0);
    expect(radii[side]).toBeCloseTo(1500, 6);
    const rest = edges(before).map((e) => arcOf(e)?.radius ?? 0);
    radii.forEach((r, k) => {
      if (k !== side) expect(r).toBeCloseTo(rest[k]!, 6);
    });
    expect(edges(changed.value).every((_, k) => !isSharp(changed.value, k))).toBe(
      edges(before).every((_, k) => !isSharp(before, k)),
    );
  });

  test('a line has none, and a curved side none less than half its chord', () => {
    const before = curved();
    const line = edges(before).findIndex((e) => e.kind === 'line');
    expect(setRadius(before, line, mm(40))).toMatchObject({ refusal: { code: 'EDGE_NOT_ROUND' } });
    const side = edges(before).findIndex((e) => (arcOf(e)?.radius ?? 0) > 500);
    expect(setRadius(before, side, mm(40))).toMatchObject({ refusal: { code: 'RADIUS_TOO_SMALL' } });
  });
});

describe('moveCorner', () => {
  test('a sharp corner moves alone', () => {
    const at = corners([0, 0]);
    const sharp = build(at, [0, 30, 0, 30]);
    const edge = edges(sharp).findIndex((e) => e.to.x === 0 && e.to.y === 0);
    const moved = moveCorner(sharp, edge, { x: -12, y: 9 });
    if (!moved.ok) throw new Error(moved.refusal.code);
    expect(edges(moved.value)[edge]!.to).toEqual(point(-12, 9));
    const radii = edges(moved.value).flatMap((e) => arcOf(e)?.radius ?? []);
    for (const r of radii) expect(r).toBeCloseTo(30, 6);
    expect(edges(moved.value).filter((_, k) => isSharp(moved.value, k)).length).toBe(2);
  });

  test('a rounded one is not sharp', () => {
    const before = build(corners([0, 0]), [40, 40, 40, 40]);
    expect(moveCorner(before, 0, { x: 0, y: 0 })).toMatchObject({ refusal: { code: 'CORNER_NOT_SHARP' } });
  });
});

/** A bowed top of R 900 with roundings of 60 tangent to it, and a step with a re-entrant rounding of 40. */
function curved(): Outline {
  const below = build(
    [
      [0, 0],
      [400, 0],
      [400, 150],
      [800, 150],
      [800, 700],
      [0, 700],
    ],
    [50, 50, 40, 50, 0, 0],
  );
  const centre: Xy = [400, -300];
  // A rounding of 60 inside the circle of 900 and beside the line x = 0 has its centre 840 from the circle's.
  const rise = centre[1] + Math.sqrt(840 ** 2 - 340 ** 2);
  const touch: Xy = [centre[0] - (340 * 900) / 840, centre[1] + ((rise - centre[1]) * 900) / 840];
  const turn = Math.atan2(touch[1] - rise, touch[0] - 60);
  const small = Math.tan((Math.PI - turn) / 4);
  const bow = Math.tan(Math.asin((400 - touch[0]) / 900) / 2);
  const upper: Outline['segments'][number][] = [
    { kind: 'line', to: point(800, rise) },
    { kind: 'arc', to: point(800 - touch[0], touch[1]), bulge: small },
    { kind: 'arc', to: point(touch[0], touch[1]), bulge: bow },
    { kind: 'arc', to: point(0, rise), bulge: small },
  ];
  const segments = below.segments.flatMap((one) => (one.to.y < 699 ? [one] : one.to.x > 1 ? upper : []));
  return { segments: segments as unknown as Outline['segments'] };
}
