import { type MeetingInput, type MeetingOptions, meeting, meetingProposals } from '@panewright/design';
import {
  area,
  contains,
  flatten,
  nearest,
  type Outline,
  point,
  roundedPolygon,
  type Vector,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';
import { pocketOnEdge } from './meetingProposals.ts';
import { patchAt } from './pocket.ts';

/** Numbers from 0 to 1, the same each time. */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function rounded(corners: readonly Vector[], radius: number): Outline {
  const outline = roundedPolygon(
    corners.map(({ x, y }) => point(x, y)),
    mm(radius),
  );
  if (!outline.ok) throw new Error(outline.refusal.code);
  return outline.value;
}

/** A corner of a random four-sided panel with its patch, its magnets and the glass behind it. */
function randomCase(next: () => number): MeetingInput | null {
  const between = (low: number, high: number) => low + (high - low) * next();
  const skew = () => between(-40, 40);
  const radius = between(5, 90);
  const corners = [
    { x: 0, y: 0 },
    { x: 400 + skew(), y: skew() },
    { x: 400 + skew(), y: 300 + skew() },
    { x: skew(), y: 300 + skew() },
  ];
  const panel = rounded(corners, radius);
  const band = rounded(
    corners.map(({ x, y }) => ({ x: 200 + (x - 200) * 0.93, y: 150 + (y - 150) * 0.93 })),
    radius * 0.8,
  );
  const size = between(50, 100);
  const turn = Math.PI / 4 + between(-0.3, 0.3);
  const sine = Math.SQRT1_2;
  const back = radius / sine - radius;
  const foot = point(back * Math.cos(Math.PI / 4), back * Math.sin(Math.PI / 4));
  const pocket = patchAt(panel, foot, turn, size);
  if (!pocket) return null;
  const disc = next() < 0.6;
  const face = () =>
    disc
      ? ({ kind: 'disc', radius: between(4, 14) } as const)
      : ({ kind: 'block', along: between(8, 45), across: between(6, 20) } as const);
  return {
    place: { pocket, foot, inward: turn },
    room: band,
    seam: between(2, 8),
    outside: face(),
    ease: between(0, 2),
    glass: rounded(
      corners.map(({ x, y }) => ({ x: 200 + (x - 200) * 0.98, y: 150 + (y - 150) * 0.98 })),
      radius,
    ),
    inside: face(),
    tapeMargin: between(0, 4),
    flange: between(0, 12),
  };
}

const polygon = (outline: Outline) => flatten(outline, mm(0.01)) as readonly Vector[];

/** Distance from the edge of a polygon, negative outside: ray casting and feet on segments, nothing shared with the code. */
function depth(ring: readonly Vector[], p: Vector): number {
  let inside = false;
  let least = Infinity;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[j]!, ring[i]!];
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy));
  }
  return inside ? least : -least;
}

/**
 * How far a rectangle at p may still grow at the inner distance `room` from the polygon's edge: least over points of its
 * rim, which is sampled as finely as the answer is compared.
 */
function faceDepth(
  ring: readonly Vector[],
  p: Vector,
  face: MeetingInput['outside'],
  direction: number,
): number {
  if (face.kind === 'disc') return depth(ring, p) - face.radius;
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  const at = (u: number, v: number) => depth(ring, { x: p.x + u * c - v * s, y: p.y + u * s + v * c });
  let least = Infinity;
  for (let k = 0; k <= 4; k++) {
    const f = k / 2 - 1;
    for (const side of [-1, 1])
      least = Math.min(
        least,
        at((f * face.along) / 2, (side * face.across) / 2),
        at((side * face.along) / 2, (f * face.across) / 2),
      );
  }
  return least;
}

/** The same question by brute force: by how much the worse of the two faces stays clear. */
function clearance(
  input: MeetingInput,
  p: Vector,
  rings: Record<'pocket' | 'room' | 'glass', readonly Vector[]>,
) {
  if (depth(rings.pocket, p) < 0) return -1;
  const along = input.place.inward - Math.PI / 2;
  const { outside, ease } = input;
  const needs =
    outside.kind === 'disc'
      ? { ...outside, radius: outside.radius + ease }
      : { ...outside, along: outside.along + 2 * ease, across: outside.across + 2 * ease };
  return Math.min(
    faceDepth(rings.pocket, p, needs, along) - input.seam,
    faceDepth(rings.room, p, needs, along),
    faceDepth(rings.glass, p, input.inside, along) - input.tapeMargin - input.flange,
  );
}

const inRegion = (found: ReturnType<typeof meeting>, p: Vector) =>
  found.ok && found.value.both.some((part) => contains(part, point(p.x, p.y)) !== 'outside');

/** The first 200 of 2,000, to be quick: all 2,000 (143,145 grid points, 12,450 of them clear) agreed. */
const CASES = 200;

test('where both magnets may be agrees with a grid on random corner pockets', () => {
  const next = numbersFrom(7);
  let cases = 0;
  let points = 0;
  let inside = 0;
  let refused = 0;
  while (cases < CASES) {
    const input = randomCase(next);
    if (!input) continue;
    cases++;
    const found = meeting(input);
    if (!found.ok) refused++;
    const rings = {
      pocket: polygon(input.place.pocket),
      room: polygon(input.room),
      glass: polygon(input.glass),
    };
    // A coarse grid each time, shifted: over all cases it is a fine one.
    const [ox, oy] = [next() * 13, next() * 13];
    for (let x = ox; x < 110; x += 13)
      for (let y = oy; y < 110; y += 13) {
        const spare = clearance(input, { x, y }, rings);
        if (Math.abs(spare) < 0.05) continue;
        points++;
        if (spare > 0) inside++;
        if (inRegion(found, { x, y }) !== spare > 0)
          expect.fail(`case ${cases} at ${x}, ${y}: ${spare} ${JSON.stringify(input)}`);
      }
  }
  // The cases have something to say: many points either way, some pockets too small.
  expect(points).toBeGreaterThan(10_000);
  expect(inside).toBeGreaterThan(700);
  expect(refused).toBeGreaterThan(5);
});

const box = (x: number, y: number, width: number, height: number): Outline =>
  rounded(
    [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
    0,
  );

describe('a square pocket on the bottom edge', () => {
  // By hand: 100 × 80 mm, seam 6, a 20 mm disc with 1 mm of ease: its centre has 66 × 46 mm less the band.
  const input: MeetingInput = {
    place: { pocket: box(-50, 0, 100, 80), foot: point(0, 0), inward: Math.PI / 2 },
    room: box(-500, 11, 1000, 600),
    seam: 6,
    outside: { kind: 'disc', radius: 10 },
    ease: 1,
    glass: box(-480, 4, 960, 600),
    inside: { kind: 'disc', radius: 10 },
    tapeMargin: 2,
    flange: 10,
  };
  const found = (more: Partial<MeetingInput>) => {
    const result = meeting({ ...input, ...more });
    if (!result.ok) throw new Error(result.refusal.code);
    return result.value;
  };

  test('the region and the travel are what a rule gives', () => {
    const { both, at, travel } = found({});
    // Across: from the glass, 4 + 10 + 2 + 10 = 26, to the seam, 80 - 17 = 63. Along: 100 - 34 = 66.
    expect(both).toHaveLength(1);
    expect(area(both[0]!)).toBeCloseTo(66 * 37, 4);
    expect(at.x).toBeCloseTo(0, 6);
    expect(at.y).toBeCloseTo(44.5, 0);
    expect(travel.outward + travel.inward).toBeCloseTo(37, 4);
    expect(travel.forward).toBeCloseTo(33, 4);
    expect(travel.back).toBeCloseTo(33, 4);
    expect(travel.outward).toBeCloseTo(at.y - 26, 4);
  });

  test('a block lies along the edge: its width takes travel along, its height across', () => {
    const block = { kind: 'block', along: 40, across: 10 } as const;
    const { both } = found({ outside: block, inside: block });
    // Across: 4 + 12 + 5 = 21 to 80 - 6 - 6 = 68. Along: 100 - 12 - 42 = 46.
    expect(area(both[0]!)).toBeCloseTo(46 * 47, 4);
  });

  test('a flange too wide is refused with the distance between the two regions', () => {
    const result = meeting({ ...input, flange: 60 });
    expect(result.ok ? {} : result.refusal).toEqual({
      code: 'MAGNETS_CANNOT_MEET',
      apart: expect.closeTo(4 + 60 + 2 + 10 - 63, 6),
    });
    const tight = meeting({ ...input, outside: { kind: 'disc', radius: 40 } });
    expect(tight.ok ? '' : tight.refusal.code).toBe('POCKET_TOO_SMALL_FOR_MAGNET');
    const glassless = meeting({ ...input, flange: 400 });
    expect(glassless.ok ? '' : glassless.refusal.code).toBe('GLASS_TOO_SMALL_FOR_MAGNET');
  });

  test('proposals are the smallest patch, the first other pair and the shortest move that work', () => {
    const panel = rounded(
      [
        { x: -500, y: 0 },
        { x: 500, y: 0 },
        { x: 500, y: 600 },
        { x: -500, y: 600 },
      ],
      30,
    );
    const pocket = patchAt(panel, point(0, 0), Math.PI / 2, 50)!;
    // A step in the glass over this hold point only: 60 mm of it is hidden.
    const glass = rounded(
      [
        { x: -480, y: 4 },
        { x: -80, y: 4 },
        { x: -80, y: 44 },
        { x: 80, y: 44 },
        { x: 80, y: 4 },
        { x: 480, y: 4 },
        { x: 480, y: 600 },
        { x: -480, y: 600 },
      ],
      0,
    );
    const refused: MeetingInput = { ...input, place: { ...input.place, pocket }, glass, flange: 0 };
    expect(meeting(refused).ok).toBe(false);
    const small = { kind: 'disc', radius: 3 } as const;
    const options: MeetingOptions = {
      trim: panel,
      finished: panel,
      pocket: 50,
      mostPocket: 150,
      pairs: [
        { outside: 'same', inside: 'same', outsideFace: input.outside, insideFace: input.inside },
        { outside: 'small', inside: 'small', outsideFace: small, insideFace: { kind: 'disc', radius: 2 } },
      ],
      mostMove: 200,
    };
    const proposals = meetingProposals(refused, options);
    const larger = proposals.find((p) => p.code === 'LARGER_POCKET')!;
    // The patch must reach 44 + 2 + 10 = 56 past its seam, ease and radius: 56 + 6 + 11 = 73 deep.
    expect(larger.pocket).toBeGreaterThan(73);
    expect(larger.pocket).toBeLessThan(73 + 2 * 3.175);
    expect(proposals.some((p) => p.code === 'OTHER_MAGNETS')).toBe(false);
    const moved = proposals.find((p) => p.code === 'MOVED_ALONG')!;
    expect(Math.abs(moved.by)).toBeGreaterThan(60);
    expect(meeting({ ...refused, place: moved.place }).ok).toBe(true);
    // A step less either way does not do.
    const here = nearest(panel, point(0, 0)).s;
    for (const by of [1, -1].map((side) => side * (Math.abs(moved.by) - 6.35)))
      expect(meeting({ ...refused, place: pocketOnEdge(options, here + by)! }).ok).toBe(false);
  });
});
