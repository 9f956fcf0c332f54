import type { Opening } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { useWords } from '../text/useWords.ts';
import { newSurvey, wayOf } from './surveyOf.ts';

/** How the opening is measured. Another way begins anew; undo brings the old readings back. */
export function SurveyMethod({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const { job } = useWork();
  return (
    <SelectField
      label={w.survey.method}
      value={wayOf(opening)}
      options={(['tape', 'marks', 'photo', 'outline'] as const).map((value) => ({
        value,
        label: w.survey.methods[value],
      }))}
      set={(value) => {
        job.edit(`method.${opening.id}.${value}`, (draft) => {
          openingIn(draft, opening.id).survey = newSurvey(value);
        });
        job.settle();
      }}
    />
  );
}
