import {
  bounds,
  compose,
  moveOutline,
  movePoint,
  type Point,
  point,
  type Rigid,
  shiftBy,
  still,
} from '@panewright/geometry';
import { mm, parseLength, radian } from '@panewright/quantity';
import {
  adjustNetwork,
  fitOutline,
  type MarkSurvey,
  type NetworkAdjustment,
  type OutlinePlan,
  type PlannedOutline,
} from '@panewright/survey';
import type { Catalogue } from '../document/catalogue.ts';
import type { MarksSurvey, Opening } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningShape, SurveyedPoint } from '../plan/plan.ts';
import { anyShape } from './anyShape.ts';
import { reportNetwork, reportRuns } from './marksFindings.ts';
import type { Surveyed } from './openingPlan.ts';
import { refusalNumbers } from './refusalNumbers.ts';

/** The shape that tapes from marks give, and where they put each point; findings say what is wrong or weak. */
export function marksShape(
  opening: Opening,
  survey: MarksSurvey,
  catalogue: Catalogue,
  find: Find,
): Surveyed {
  const impossible = (refusal: { readonly code: string }) =>
    find({
      severity: 'stop',
      code: 'SURVEY_IMPOSSIBLE',
      where: { opening: opening.id },
      numbers: refusalNumbers(refusal),
    });
  const network = adjustNetwork(networkOf(survey, catalogue));
  if (!network.ok) {
    impossible(network.refusal);
    return { shape: null, points: [] };
  }
  reportNetwork(opening, survey, network.value, catalogue, find);
  const runs = runsOf(survey, catalogue);
  const level = levelled(network.value, runs.runs[0]?.points ?? []);
  const planned = fitOutline(network.value, runs);
  if (!planned.ok) {
    impossible(planned.refusal);
    return { shape: null, points: pointsOf(network.value, cornered(network.value.points, level)) };
  }
  reportRuns(opening, planned.value, find);
  const box = bounds(moveOutline(level, planned.value.outline));
  const motion = compose(shiftBy(-box.minX, -box.minY), level);
  return {
    shape: toShape(opening, network.value, planned.value, motion),
    points: pointsOf(network.value, motion),
  };
}

/** The schema has let only readable entries through. */
function millimetresOf({ entered, unit }: { readonly entered: string; readonly unit: 'in' | 'mm' }) {
  const length = parseLength(entered, unit);
  if (!length.ok) throw new Error(`“${entered}” passed the schema but does not parse`);
  return length.value;
}

function networkOf(survey: MarksSurvey, { habits }: Catalogue): MarkSurvey {
  return {
    points: [
      ...survey.marks.map(({ name }) => ({ name, kind: 'mark' as const })),
      ...survey.points.map(({ name, side }) => ({
        name,
        kind: 'outline' as const,
        ...(side === undefined ? {} : { side }),
      })),
    ],
    distances: survey.distances.map((distance) => ({
      from: distance.from,
      to: distance.to,
      value: millimetresOf(distance),
      sigma: mm(distance.sigma ?? habits.tapeSigma),
      entered: distance.entered,
    })),
  };
}

/** The runs as told; where none are, straight from point to point. */
function runsOf({ runs, points }: MarksSurvey, { habits }: Catalogue): OutlinePlan {
  if (runs.length === 0)
    return {
      runs: points.map(({ name }, k) => ({
        kind: 'line',
        points: [name, points[(k + 1) % points.length]!.name],
      })),
      joints: points.map(() => ({ kind: 'sharp' })),
    };
  return {
    runs: runs.map(({ kind, points: on }) => ({ kind, points: on })),
    joints: runs.map(({ joint }) =>
      joint.kind === 'round'
        ? { kind: 'round', radius: millimetresOf(joint), sigma: mm(joint.sigma ?? habits.radiusSigma) }
        : joint,
    ),
  };
}

/** Turns the first run's ends level. */
function levelled({ points }: NetworkAdjustment, run: readonly string[]): Rigid {
  const at = (name: string | undefined) => points.find((one) => one.name === name)?.at;
  const [from, to] = [at(run[0]), at(run.at(-1))];
  if (!from || !to || (from.x === to.x && from.y === to.y)) return still;
  return { ...still, angle: radian(-Math.atan2(to.y - from.y, to.x - from.x)) };
}

/** The turn, and a shift that puts the bottom left of all points at the origin. */
function cornered(points: readonly { readonly at: Point }[], level: Rigid): Rigid {
  const places = points.map(({ at }) => movePoint(level, at));
  const least = point(Math.min(...places.map(({ x }) => x)), Math.min(...places.map(({ y }) => y)));
  return compose(shiftBy(-least.x, -least.y), level);
}

function pointsOf({ points, weak }: NetworkAdjustment, motion: Rigid): readonly SurveyedPoint[] {
  return points.map(({ name, kind, at, ellipse }) => ({
    name,
    kind,
    at: movePoint(motion, at),
    major: ellipse.major,
    minor: ellipse.minor,
    direction: ellipse.direction + motion.angle,
    weak: weak.some((one) => one.name === name),
  }));
}

function toShape(
  opening: Opening,
  network: NetworkAdjustment,
  planned: PlannedOutline,
  motion: Rigid,
): OpeningShape {
  const { distances, redundancy, suspects, unitSigma } = network;
  const checked = distances.map(({ residual, standardised }) =>
    standardised === undefined ? 0 : residual ** 2,
  );
  return {
    ...anyShape(moveOutline(motion, planned.outline), {
      inputs: [`openings.${opening.id}.survey`],
      by: 'leastSquares',
      spread: planned.edges.map(({ offsetSigma, radiusSigma }) => ({
        sigma: offsetSigma,
        ...(radiusSigma === undefined ? {} : { radiusSigma }),
      })),
    }),
    readings: distances.map(({ index, from, to, value, adjusted, residual, standardised }) => ({
      of: `tape:${from}:${to}`,
      index,
      read: value,
      adjusted,
      residual,
      standardised: standardised ?? null,
      suspect: suspects.some((one) => one.index === index),
    })),
    misclosure:
      unitSigma === undefined ? 0 : Math.sqrt(checked.reduce((sum, each) => sum + each, 0) / redundancy),
    redundancy,
  };
}
