import type { Draft } from 'immer';
import type { Job, MarksSurvey } from '../contract.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { asKept } from '../text/decimals.ts';
import { marksIn } from './surveyOf.ts';

/** Position of the tape between two places, whichever way it was taken; undefined where there is none. */
export function tapeBetween(survey: MarksSurvey, from: string, to: string): number | undefined {
  const index = survey.distances.findIndex(
    (one) => (one.from === from && one.to === to) || (one.from === to && one.to === from),
  );
  return index < 0 ? undefined : index;
}

/** Sets the tape between two places, takes it out where nothing is left of it, or adds it. */
export function setTape(draft: Draft<Job>, opening: string, from: string, to: string, text: string): void {
  const entered = asKept(text);
  const survey = marksIn(openingIn(draft, opening));
  const index = tapeBetween(survey, from, to);
  if (entered.trim() === '') {
    if (index !== undefined) survey.distances.splice(index, 1);
  } else if (index !== undefined) Object.assign(survey.distances[index]!, { entered, unit: draft.units });
  else survey.distances.push({ from, to, entered, unit: draft.units });
}

/** Calls a mark or a point otherwise, and so wherever a tape or a run names it. */
export function renamePlace(draft: Draft<Job>, opening: string, from: string, to: string): void {
  const survey = marksIn(openingIn(draft, opening));
  const named = (name: string) => (name === from ? to : name);
  for (const place of [...survey.marks, ...survey.points]) place.name = named(place.name);
  for (const distance of survey.distances) {
    distance.from = named(distance.from);
    distance.to = named(distance.to);
  }
  for (const run of survey.runs) run.points = run.points.map(named);
}

/** Takes a mark or a point out, with its tapes and from the runs it lies on. */
export function removePlace(draft: Draft<Job>, opening: string, name: string): void {
  const survey = marksIn(openingIn(draft, opening));
  survey.marks = survey.marks.filter((one) => one.name !== name);
  survey.points = survey.points.filter((one) => one.name !== name);
  survey.distances = survey.distances.filter((one) => one.from !== name && one.to !== name);
  for (const run of survey.runs) run.points = run.points.filter((one) => one !== name);
}

/** The first of prefix1, prefix2, … that no place has. */
export function freePlace({ marks, points }: MarksSurvey, prefix: string): string {
  const taken = new Set([...marks, ...points].map(({ name }) => name));
  let n = 1;
  while (taken.has(`${prefix}${n}`)) n += 1;
  return `${prefix}${n}`;
}

/** Pairs that the table of points has no place for: between marks, and between points that are no neighbours. */
export function otherTapes(survey: MarksSurvey): readonly number[] {
  const marks = new Set(survey.marks.map(({ name }) => name));
  const { points } = survey;
  const next = new Map(points.map(({ name }, k) => [name, points[(k + 1) % points.length]!.name]));
  return survey.distances.flatMap(({ from, to }, index) => {
    const inTable = marks.has(from) !== marks.has(to) || next.get(from) === to || next.get(to) === from;
    return inTable && tapeBetween(survey, from, to) === index ? [] : [index];
  });
}
