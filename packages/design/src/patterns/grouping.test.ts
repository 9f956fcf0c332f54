import { defaultCatalogue, deriveShapes, type Opening, type PatternPlan } from '@panewright/design';
import {
  alignOutlines,
  edges,
  moveOutline,
  type Outline,
  point,
  roundedPolygon,
  turnAbout,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { accepted, jobOf } from '../testing/jobs.ts';

const TOLERANCE = defaultCatalogue.habits.patternTolerance;

function numbersFrom(seed: number): () => number {
  let state = (seed * 7919 + 17) % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Windows of a few sizes, each some millimetres off its like, some turned over, some turned a quarter or by hand. */
function windows(seed: number, count: number): Opening[] {
  const next = numbersFrom(seed);
  const sizes = Array.from(
    { length: 3 },
    () => [300 + 500 * next(), 200 + 300 * next(), 60 * next()] as const,
  );
  return Array.from({ length: count }, (_, k) => {
    const [w, h, lean] = sizes[Math.floor(3 * next())]!;
    const off = () => 5 * (next() - 0.5);
    const ring = [
      point(off(), off()),
      point(w + off(), off()),
      point(w - lean + off(), h + off()),
      point(0, h),
    ];
    const made = roundedPolygon(ring, mm(20 + 4 * next()));
    if (!made.ok) throw new Error(made.refusal.code);
    const turned = moveOutline(
      turnAbout(point(0, 0), radian(next() < 0.5 ? 0 : next() < 0.5 ? Math.PI / 2 : next())),
      made.value,
    );
    const outline = next() < 0.4 ? moveOutline({ ...MIRROR }, turned) : turned;
    return openingOf(`W${k + 1}`, outline);
  });
}
const MIRROR = { angle: radian(0), shift: point(0, 0), mirrored: true };

const openingOf = (id: string, outline: Outline): Opening =>
  accepted(id, ...edges(outline).map(({ to, bulge }) => (bulge === 0 ? [to.x, to.y] : [to.x, to.y, bulge])));

/** The least deviation of every pair, turned any way and over: no bound, no way left out, nothing kept. */
function allPairs(outlines: readonly Outline[]): number[][] {
  const apart = outlines.map(() => outlines.map(() => 0));
  outlines.forEach((a, i) => {
    for (let k = i + 1; k < outlines.length; k++) {
      const ways = [false, true].map((mirrored) =>
        alignOutlines(a, outlines[k]!, { mirrored, within: mm(TOLERANCE) }),
      );
      apart[i]![k] = Math.min(...ways.map(({ deviation }) => deviation));
    }
  });
  return apart;
}

/** Verdicts within this share of a limit hang on how finely an alignment is found. */
const close = (off: number, limit: number) => Math.abs(off / limit - 1) < 0.05;

// Oracle: the rule itself, worked out from every pair aligned afresh: each opening joins the first pattern it fits; one
// that fits none misses the nearest.
test('groups and near misses are those of a search that aligns every pair', () => {
  const property = fc.property(fc.nat(1e5), (seed) => {
    const plan = deriveShapes(jobOf(windows(seed, 7)), defaultCatalogue);
    const apart = allPairs(plan.openings.map(({ shape }) => shape!.outline));
    fc.pre(!apart.flat().some((off) => close(off, TOLERANCE) || close(off, 2 * TOLERANCE)));
    const index = new Map(plan.openings.map(({ opening }, k) => [opening, k]));
    const groups: number[][] = [];
    const misses: { readonly opening: number; readonly off: number }[] = [];
    for (let k = 0; k < apart.length; k++) {
      const fits = groups.find(([first]) => apart[first!]![k]! <= TOLERANCE);
      if (fits) {
        fits.push(k);
        continue;
      }
      const off = Math.min(Infinity, ...groups.map(([first]) => apart[first!]![k]!));
      if (off <= 2 * TOLERANCE) misses.push({ opening: k, off });
      groups.push([k]);
    }
    const members = ({ members }: PatternPlan) => members.map(({ opening }) => index.get(opening)!);
    expect(plan.patterns.map(members)).toEqual(groups);
    const told = plan.patterns
      .flatMap(({ nearMisses }) => nearMisses)
      .map(({ opening, deviation }) => ({ opening: index.get(opening)!, off: deviation }))
      .sort((a, b) => a.opening - b.opening);
    expect(told.map(({ opening }) => opening)).toEqual(misses.map(({ opening }) => opening));
    told.forEach(({ off }, k) => {
      expect(Math.abs(off / misses[k]!.off - 1)).toBeLessThan(0.1);
    });
  });
  fc.assert(property, { seed: 81, numRuns: 6 });
});

const box = (id: string, width: number) => accepted(id, [width, 0], [width, 300], [0, 300], [0, 0]);

// Oracle: two rectangles, one 8 mm wider: centred on one another each end is 4 mm off; known to 0.4 mm each.
test('a near miss is told with how far, where, and what the readings may make of it', () => {
  const plan = deriveShapes(jobOf([box('A', 400), box('B', 408)]), defaultCatalogue);
  expect(plan.patterns).toHaveLength(2);
  const [miss] = plan.patterns[0]!.nearMisses;
  expect(miss).toMatchObject({ opening: 'B', deviation: expect.closeTo(4, 3) });
  expect(miss!.sigma).toBeCloseTo(Math.hypot(0.4, 0.4), 9);
  expect(Math.min(Math.abs(miss!.worstAt.x), Math.abs(miss!.worstAt.x - 408))).toBeLessThan(4.01);
  const [finding] = plan.findings.filter(({ code }) => code === 'NEAR_MISS');
  expect(finding!.numbers).toMatchObject({
    over: expect.closeTo(4 - TOLERANCE, 3),
    spread: expect.closeTo(2 * Math.hypot(0.4, 0.4), 9),
  });
});

test('shapes known less well than the tolerance asks share a pattern, with a doubt', () => {
  const doubts = (tolerance: number) =>
    deriveShapes(jobOf([box('A', 400), box('B', 400.2)]), {
      ...defaultCatalogue,
      habits: { ...defaultCatalogue.habits, patternTolerance: tolerance },
    }).findings.filter(({ code }) => code === 'SHARED_WITHIN_SPREAD');
  expect(doubts(3)).toEqual([]);
  expect(doubts(1)).toMatchObject([
    { severity: 'doubt', where: { pattern: 'P1' }, numbers: { members: 'B', tolerance: 1 } },
  ]);
});
