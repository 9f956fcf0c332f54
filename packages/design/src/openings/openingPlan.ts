import { choicesOf } from '../derive/materials.ts';
import { remember } from '../derive/remember.ts';
import type { Catalogue } from '../document/catalogue.ts';
import type { Job, Opening, Survey } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { OpeningPlan, OpeningShape, SurveyedPoint } from '../plan/plan.ts';
import { marksShape } from './marksShape.ts';
import { outlineShape } from './outlineShape.ts';
import { tapeShape } from './tapeShape.ts';

/** What a survey gives: a shape or none, and the points it placed. */
export interface Surveyed {
  readonly shape: OpeningShape | null;
  readonly points: readonly SurveyedPoint[];
}

/** One opening as surveyed: its outline with its spread, or a finding that says why there is none. */
export function openingPlan(job: Job, opening: Opening, catalogue: Catalogue, find: Find): OpeningPlan {
  return {
    opening: opening.id,
    name: opening.name,
    place: opening.place,
    exit: opening.exit,
    driving: opening.driving,
    choices: choicesOf(job, opening, catalogue),
    glazing: opening.glazing,
    ...surveyed(opening.survey, { opening, catalogue }, find),
  };
}

/** What is surveyed changes with the survey alone: for the same one its outline stays the same object. */
const surveyed = remember(
  (
    _survey: Survey,
    { opening, catalogue }: { readonly opening: Opening; readonly catalogue: Catalogue },
    find,
  ) => surveyedBy(opening, catalogue, find),
  (a, b) => a.opening.id === b.opening.id && a.catalogue.habits === b.catalogue.habits,
);

function surveyedBy(opening: Opening, catalogue: Catalogue, find: Find): Surveyed {
  const { survey } = opening;
  switch (survey.method) {
    case 'tape':
      return { shape: tapeShape(opening, survey, catalogue, find), points: [] };
    case 'marks':
      return marksShape(opening, survey, catalogue, find);
    case 'outline':
      return { shape: outlineShape(opening, survey, find), points: [] };
  }
}
