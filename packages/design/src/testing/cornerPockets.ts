import { type MeetingInput, meeting } from '@panewright/design';
import { contains, flatten, type Outline, point, roundedPolygon, type Vector } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { patchAt } from '../hold/pocket.ts';

/** Numbers from 0 to 1, the same each time. */
export function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

export function rounded(corners: readonly Vector[], radius: number): Outline {
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

export interface PocketTrials {
  readonly cases: number;
  readonly points: number;
  readonly inside: number;
  readonly refused: number;
  /** Where the region and the grid part, if anywhere. */
  readonly apart: readonly string[];
}

/** Regions where both magnets may be, held against a grid on random corner pockets. */
export function pocketTrials(count: number): PocketTrials {
  const next = numbersFrom(7);
  const found = { cases: 0, points: 0, inside: 0, refused: 0, apart: [] as string[] };
  while (found.cases < count) {
    const input = randomCase(next);
    if (!input) continue;
    found.cases++;
    onGrid(input, next, found);
  }
  return found;
}

function onGrid(
  input: MeetingInput,
  next: () => number,
  found: { -readonly [K in keyof PocketTrials]: K extends 'apart' ? string[] : number },
): void {
  const region = meeting(input);
  if (!region.ok) found.refused++;
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
      found.points++;
      if (spare > 0) found.inside++;
      if (inRegion(region, { x, y }) !== spare > 0)
        found.apart.push(`case ${found.cases} at ${x}, ${y}: ${spare} ${JSON.stringify(input)}`);
    }
}
