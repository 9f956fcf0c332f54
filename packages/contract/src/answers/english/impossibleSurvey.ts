import { type Finding, refusalNumbers } from '@panewright/design';
import type { OutlineRefusal } from '@panewright/geometry';
import { joinWords, type Show } from '../show.ts';
import { partsOf, sayPart } from './readings.ts';

type Numbers = Finding<'SURVEY_IMPOSSIBLE'>['numbers'];
type Say = (n: Numbers, show: Show) => string;

const names = (text: string | number | undefined, last?: string) =>
  joinWords(
    String(text ?? '')
      .split(' ')
      .filter(Boolean),
    last,
  );
/** Runs, joints, tapes and segments are counted from 1. */
const nth = (index: string | number | undefined) => String(Number(index) + 1);

const ofTape: Readonly<Record<string, Say>> = {
  TAPE_READINGS_INSUFFICIENT: (n) =>
    `the readings do not fix the shape: ${joinWords(partsOf(n.wouldHelp), 'or')} would help`,
  TAPE_SIDES_CANNOT_CLOSE: (n, show) =>
    `the ${sayPart(n.longest)} of ${show.length(n.length)} is longer than ${joinWords(partsOf(n.others))} together reach (${show.length(n.reach)})`,
  TAPE_RADII_TOO_LARGE: (n, show) =>
    `the two roundings take ${show.length(n.taken)} of the ${sayPart(n.side)}, which is ${show.length(n.length)} long`,
  TAPE_NOT_CONVEX: (n) => `the corner at ${sayPart(n.corner)} would point inward`,
  TAPE_VALUE_NOT_POSITIVE: (n, show) => `the ${sayPart(n.of)} reads ${show.length(n.value)}`,
  TAPE_RADIUS_NOT_POSITIVE: (n, show) =>
    `the radius at ${sayPart(n.corner)} comes out as ${show.length(n.radius)}`,
};

const ofMarks: Readonly<Record<string, Say>> = {
  NETWORK_TOO_FEW_POINTS: (n) =>
    `${n.points} marks and points are too few: two marks and three points at least`,
  NETWORK_NAME_TWICE: (n) => `two places are called ${n.name}`,
  NETWORK_NAME_UNKNOWN: (n) => `tape ${nth(n.index)} ends at ${n.name}, and no mark or point is called so`,
  NETWORK_DISTANCE_TO_ITSELF: (n) => `tape ${nth(n.index)} begins and ends at ${n.name}`,
  NETWORK_DISTANCE_NOT_POSITIVE: (n, show) => `tape ${nth(n.index)} reads ${show.length(n.value)}`,
  NETWORK_SIGMA_NOT_POSITIVE: (n) => `the spread of tape ${nth(n.index)} is ${n.sigma} mm`,
  NETWORK_ONE_POINT_FIXED: (n) => `only ${n.name} has a known place`,
  NETWORK_POINTS_LOOSE: (n) =>
    `${names(n.names)} cannot be placed: each needs tapes to two placed marks or points`,
  NETWORK_TAPES_DO_NOT_MEET: (n, show) =>
    `the tapes to ${n.name} do not meet: ${show.length(n['lengths.0'])} and ${show.length(n['lengths.1'])} from ${names(n.to)}, which are ${show.length(n.between)} apart`,
  NETWORK_MIRROR_AMBIGUOUS: (n) =>
    `${names(n.names)} may lie on either side of the line between their marks: say which, or tape them to a neighbour`,
  NETWORK_ORDER_CLOCKWISE: () => 'the points run clockwise: list them anticlockwise as seen from outside',
  OUTLINE_TOO_FEW_RUNS: (n) => `${n.runs} run is too few: two at least close a ring`,
  OUTLINE_POINT_UNKNOWN: (n) => `run ${nth(n.run)} names ${n.name}, and no mark or point is called so`,
  OUTLINE_RUN_UNDETERMINED: (n) => `run ${nth(n.run)} has ${n.points} points and needs ${n.need}`,
  OUTLINE_LINES_JOIN_SMOOTHLY: (n) =>
    `run ${nth(n.joint)} and the one before it are both straight and cannot join smoothly`,
  OUTLINE_RADIUS_NOT_POSITIVE: (n, show) =>
    `the radius before run ${nth(n.joint)} reads ${show.length(n.radius)}`,
  OUTLINE_RADII_TOO_LARGE: (n, show) =>
    `the roundings at the ends of run ${nth(n.run)} take ${show.length(n.taken)} of its ${show.length(n.length)}`,
  OUTLINE_DOES_NOT_CLOSE: () =>
    'the runs do not make a ring: list them anticlockwise, each beginning where the last ends',
};

const ofOutline: Readonly<Record<string, Say>> = {
  OUTLINE_EMPTY: () => 'the outline has no edges',
  SEGMENT_NOT_FINITE: (n) => `edge ${nth(n.where)} has a number that is none`,
  BULGE_ZERO: (n) => `edge ${nth(n.where)} is an arc that does not bend`,
  SEGMENT_TOO_SHORT: (n) => `edge ${nth(n.where)} has no length`,
  OUTLINE_CROSSES_ITSELF: (n, show) =>
    `edges ${nth(n['where.0'])} and ${nth(n['where.1'])} cross at ${show.length(n['at.x'])}, ${show.length(n['at.y'])}`,
  OUTLINE_CLOCKWISE: () => 'the outline runs clockwise',
};

/** What each refusal of a survey says of it. */
export function impossibleSurvey(f: Finding<'SURVEY_IMPOSSIBLE'>, show: Show): string {
  const say = { ...ofTape, ...ofMarks, ...ofOutline }[f.numbers.refusal];
  return say ? say(f.numbers, show) : 'the readings do not settle on one shape';
}

/** What is wrong with segments that are no outline. */
export function impossibleOutline(refusal: OutlineRefusal, show: Show): string {
  return ofOutline[refusal.code]!(refusalNumbers(refusal), show);
}
