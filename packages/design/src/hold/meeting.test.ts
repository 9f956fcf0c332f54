import { type MeetingInput, type MeetingOptions, meeting, meetingProposals } from '@panewright/design';
import { area, nearest, type Outline, point } from '@panewright/geometry';
import { describe, expect, test } from 'vitest';
import { pocketTrials, rounded } from '../testing/cornerPockets.ts';
import { pocketOnEdge } from './meetingProposals.ts';
import { patchAt } from './pocket.ts';

/** The first of the 2,000 that `npm run bench -- hold-trials` looks at, to be quick. */
const CASES = 200;

test('where both magnets may be agrees with a grid on random corner pockets', () => {
  const { points, inside, refused, apart } = pocketTrials(CASES);
  expect(apart).toEqual([]);
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
