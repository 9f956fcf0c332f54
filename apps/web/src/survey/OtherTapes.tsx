import { useState } from 'react';
import type { MarksSurvey, Opening, OpeningShape } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { useWords } from '../text/useWords.ts';
import { otherTapes } from './markEdits.ts';
import { marksIn } from './surveyOf.ts';
import { TapeEntry } from './TapeEntry.tsx';

interface Props {
  readonly opening: Opening;
  readonly survey: MarksSurvey;
  readonly shape: OpeningShape | null;
}

/** Tapes between the marks, and from any place to any other. */
export function OtherTapes({ opening, survey, shape }: Props) {
  const w = useWords();
  const { job } = useWork();
  const names = [...survey.marks, ...survey.points].map(({ name }) => name);
  const [ends, setEnds] = useState<readonly [string, string]>(['', '']);
  const [from, to] = [
    names.includes(ends[0]) ? ends[0] : names[0],
    names.includes(ends[1]) ? ends[1] : names[1],
  ];
  const options = names.map((value) => ({ value, label: value }));
  return (
    <fieldset>
      <legend>{w.survey.otherTapes}</legend>
      {otherTapes(survey).map((index) => {
        const distance = survey.distances[index]!;
        return (
          <p key={index} className="entry-line">
            {w.survey.tape(distance.from, distance.to)}: {distance.entered} {distance.unit}{' '}
            <button
              type="button"
              className="quiet"
              aria-label={w.survey.removeTape(distance.from, distance.to)}
              onClick={() =>
                job.edit(`removeTape.${opening.id}.${index}`, (draft) => {
                  marksIn(openingIn(draft, opening.id)).distances.splice(index, 1);
                })
              }
            >
              {w.app.remove}
            </button>
          </p>
        );
      })}
      {from === undefined || to === undefined ? null : (
        <div className="fields">
          <SelectField
            label={w.survey.from}
            value={from}
            options={options}
            set={(value) => setEnds([value, to])}
          />
          <SelectField
            label={w.survey.to}
            value={to}
            options={options}
            set={(value) => setEnds([from, value])}
          />
          {from === to ? null : (
            <TapeEntry
              key={`${from} ${to}`}
              opening={opening}
              survey={survey}
              shape={shape}
              from={from}
              to={to}
            />
          )}
        </div>
      )}
    </fieldset>
  );
}
