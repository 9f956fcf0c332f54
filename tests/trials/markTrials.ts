import { mm } from '@panewright/quantity';
import { adjustNetwork, type MarkSurvey, type NetworkAdjustment, type SurveyPoint } from '@panewright/survey';
import { normal, seeded } from './seeded.ts';

/** Standard deviation of a reading: 1/32 in. */
const SIGMA = 25.4 / 32;
/** The gross error: 1/2 in. */
const GROSS = 12.7;
/** 95 % of a chi-square with two degrees of freedom (closed form: −2 ln 0.05). */
const INSIDE = -2 * Math.log(0.05);
/** A gross error of this many standard deviations of its own residual is told apart (noncentrality, Baarda 1968). */
const SHOWN = 4.13;

export interface MarkFigures {
  /** Surveys adjusted; others were refused as ambiguous and are not counted. */
  readonly adjusted: number;
  readonly refused: number;
  readonly points: number;
  /** Share of true places within their stated 95 % region. */
  readonly inside: number;
  /** Gross errors that the geometry can show, and the share of them whose tape is named first. */
  readonly shown: number;
  readonly named: number;
}

type XY = readonly [number, number];

/** Random openings of five to eight corners, re-entrant ones too, taped from three marks and from point to point. */
export function markTrials(count: number, seed: number): MarkFigures {
  const random = seeded(seed);
  const sum = { adjusted: 0, refused: 0, points: 0, inside: 0, shown: 0, named: 0 };
  for (let trial = 0; trial < count; trial++) {
    const truth = randomPlaces(random);
    const survey = taped(truth, random);
    const clean = adjustNetwork(survey);
    if (!clean.ok) {
      sum.refused++;
      continue;
    }
    sum.adjusted++;
    sum.points += truth.length;
    sum.inside += pointsInside(clean.value, truth);
    const wrong = Math.floor(random() * survey.distances.length);
    const { redundancyNumber } = clean.value.distances[wrong]!;
    if ((GROSS * Math.sqrt(redundancyNumber)) / SIGMA < SHOWN) continue;
    sum.shown++;
    const error = random() < 0.5 ? -GROSS : GROSS;
    const misread = survey.distances.map((one, k) =>
      k === wrong ? { ...one, value: mm(one.value + error) } : one,
    );
    const found = adjustNetwork({ ...survey, distances: misread });
    if (found.ok && found.value.suspects[0]?.index === wrong) sum.named++;
  }
  return { ...sum, inside: sum.inside / sum.points, named: sum.named / sum.shown };
}

/** Three marks inside, then corners round them at random distances. */
function randomPlaces(random: () => number): readonly XY[] {
  const corners = 5 + Math.floor(random() * 4);
  const [wide, high] = [250 + 450 * random(), 200 + 250 * random()];
  const marks = [0, 1, 2].map((k): XY => {
    const angle = ((k + 0.6 * random()) * 2 * Math.PI) / 3;
    return [0.5 * wide * Math.cos(angle), 0.5 * high * Math.sin(angle)];
  });
  const ring = Array.from({ length: corners }, (_, k): XY => {
    const angle = ((k + 0.5 * random()) * 2 * Math.PI) / corners;
    const reach = 0.75 + 0.5 * random();
    return [reach * wide * Math.cos(angle), reach * high * Math.sin(angle)];
  });
  return [...marks, ...ring];
}

const MARKS = 3;

function taped(truth: readonly XY[], random: () => number): MarkSurvey {
  const corners = truth.length - MARKS;
  const pairs: (readonly [number, number])[] = [];
  for (let a = 0; a < MARKS; a++) for (let b = a + 1; b < truth.length; b++) pairs.push([a, b]);
  for (let k = 0; k < corners; k++) pairs.push([MARKS + k, MARKS + ((k + 1) % corners)]);
  return {
    points: truth.map((_, k): SurveyPoint => ({ name: `p${k}`, kind: k < MARKS ? 'mark' : 'outline' })),
    distances: pairs.map(([a, b]) => {
      const [[ax, ay], [bx, by]] = [truth[a]!, truth[b]!];
      const value = Math.hypot(bx - ax, by - ay) + SIGMA * normal(random);
      return { from: `p${a}`, to: `p${b}`, value: mm(value), sigma: mm(SIGMA) };
    }),
  };
}

/** How many true places lie within the stated region, after the best fit of the whole, which is what the regions are of. */
function pointsInside({ points, covariance }: NetworkAdjustment, truth: readonly XY[]): number {
  const found = points.map(({ at }): XY => [at.x, at.y]);
  const fitted = bestFit(found, truth);
  return truth.filter((_, k) => {
    const [dx, dy] = fitted.error(k);
    const [xx, xy, yy] = [
      covariance[2 * k]![2 * k]!,
      covariance[2 * k]![2 * k + 1]!,
      covariance[2 * k + 1]![2 * k + 1]!,
    ];
    return (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / (xx * yy - xy * xy) <= INSIDE;
  }).length;
}

/** The rigid motion of the truth onto what was found, by least squares, and what is left of each place. */
function bestFit(found: readonly XY[], truth: readonly XY[]) {
  const middle = (places: readonly XY[]): XY => [
    places.reduce((sum, [x]) => sum + x, 0) / places.length,
    places.reduce((sum, [, y]) => sum + y, 0) / places.length,
  ];
  const [f, t] = [middle(found), middle(truth)];
  let [dot, cross] = [0, 0];
  found.forEach(([x, y], k) => {
    const [u, v] = [truth[k]![0] - t[0], truth[k]![1] - t[1]];
    dot += (x - f[0]) * u + (y - f[1]) * v;
    cross += u * (y - f[1]) - v * (x - f[0]);
  });
  const turn = Math.atan2(cross, dot);
  const error = (k: number): XY => {
    const [u, v] = [truth[k]![0] - t[0], truth[k]![1] - t[1]];
    return [
      found[k]![0] - f[0] - (Math.cos(turn) * u - Math.sin(turn) * v),
      found[k]![1] - f[1] - (Math.sin(turn) * u + Math.cos(turn) * v),
    ];
  };
  return { error };
}
