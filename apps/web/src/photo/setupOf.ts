import type { Draft } from 'immer';
import type { Job, OutlineSurvey, PhotoReading, PhotoSetup, UnitName } from '../contract.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { outlineIn } from '../survey/surveyOf.ts';
import { asKept } from '../text/decimals.ts';

export const newSetup = (units: UnitName): PhotoSetup => ({
  paper: units === 'in' ? 'Letter' : 'A4',
  tapes: [],
  ruled: {},
});

/** What was measured for the photos; of an opening where nothing was, an empty one. */
export const setupOf = (survey: OutlineSurvey, units: UnitName): PhotoSetup =>
  survey.setup ?? newSetup(units);

/** The setup in a draft, begun where there is none. */
export function setupIn(draft: Draft<Job>, opening: string): Draft<PhotoSetup> {
  const survey = outlineIn(openingIn(draft, opening));
  survey.setup ??= newSetup(draft.units);
  return survey.setup;
}

/** What was typed, as a reading; undefined where nothing is left of it. */
export const readingOf = (text: string, unit: UnitName): PhotoReading | undefined =>
  text.trim() === '' ? undefined : { entered: asKept(text), unit };
