import {
  defaultCatalogue,
  defaultChoices,
  defaultGlazing,
  type OpeningPlan,
  patternPlans,
} from '@panewright/design';
import {
  mirrorAbout,
  moveOutline,
  type Outline,
  offset,
  point,
  roundedPolygon,
  turnAbout,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';
import { seeded } from './seeded.ts';

export interface PairFigures {
  readonly pairs: number;
  /** Pairs beyond 1.1 times the tolerance that were given one pattern, and below 0.9 times that were not. */
  readonly wronglyShared: number;
  readonly wronglyParted: number;
}

const TOLERANCE = defaultCatalogue.habits.patternTolerance;

/**
 * Pairs of outlines whose least worst deviation is known: one, and it grown by k times the tolerance all round, turned and
 * half of them turned over. In every direction the second's hull is wider by twice that, so no motion brings it nearer;
 * corners that point inward are rounder than what is grown, so that no point moves farther. Half of them have such corners.
 */
export function pairTrials(count: number, seed: number): PairFigures {
  const random = seeded(seed);
  const sum = { pairs: 0, wronglyShared: 0, wronglyParted: 0 };
  while (sum.pairs < count) {
    const first = randomOutline(random);
    const far = random() < 0.5;
    const times = far ? 1.1 + 0.9 * random() : 0.9 * random();
    if (!first) continue;
    const grown = offset(first, mm(times * TOLERANCE));
    if (!grown.ok || grown.value.length !== 1) continue;
    sum.pairs++;
    const turned = moveOutline(turnAbout(point(300, 200), radian(2 * Math.PI * random())), grown.value[0]!);
    const second = random() < 0.5 ? moveOutline(mirrorAbout(0), turned) : turned;
    const shared =
      patternPlans([opening('A', first), opening('B', second)], defaultCatalogue, () => {}).length === 1;
    if (far && shared) sum.wronglyShared++;
    if (!far && !shared) sum.wronglyParted++;
  }
  return sum;
}

function randomOutline(random: () => number): Outline | undefined {
  const corners = 3 + Math.floor(random() * 4);
  const [wide, high] = [250 + 400 * random(), 200 + 200 * random()];
  const inward = random() < 0.5;
  const ring = Array.from({ length: corners }, (_, k) => {
    const angle = ((k + 0.4 * random()) * 2 * Math.PI) / corners;
    const reach = inward && corners > 3 && k % 3 === 1 ? 0.2 + 0.3 * random() : 1;
    return point(reach * wide * Math.cos(angle), reach * high * Math.sin(angle));
  });
  const rounded = roundedPolygon(
    ring,
    ring.map(() => mm(5 + 40 * random())),
  );
  return rounded.ok ? rounded.value : undefined;
}

const figure = (value: number) => ({
  value,
  unit: 'mm' as const,
  from: { status: 'measured' as const, by: 'leastSquares' as const, inputs: [] },
});

const opening = (id: string, outline: Outline): OpeningPlan => ({
  opening: id,
  name: id,
  place: '',
  exit: false,
  driving: false,
  points: [],
  choices: defaultChoices,
  glazing: defaultGlazing,
  shape: {
    outline,
    edgeNames: outline.segments.map(() => 'side1'),
    width: figure(0),
    height: figure(0),
    corners: [],
    readings: [],
    misclosure: 0,
    redundancy: 0,
    sigma: 0,
  },
});
