import type { Draft } from 'immer';
import type { Job, MarksSurvey, Opening, OpeningShape } from '../contract.ts';
import { Field } from '../fields/Field.tsx';
import { useEntry } from '../fields/useEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { shownReading } from '../openings/readingEdits.ts';
import { showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { setTape, tapeBetween } from './markEdits.ts';

interface Props {
  readonly opening: Opening;
  readonly survey: MarksSurvey;
  readonly shape: OpeningShape | null;
  readonly from: string;
  readonly to: string;
}

/** What the tape says between two places; beside it how far the fit lies off. */
export function TapeEntry({ opening, survey, shape, from, to }: Props) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const index = tapeBetween(survey, from, to);
  const distance = index === undefined ? undefined : survey.distances[index];
  const result = shape?.readings.find((one) => one.index === index);
  const key = `tape.${opening.id}.${from}.${to}`;
  const put = (text: string) => (draft: Draft<Job>) => setTape(draft, opening.id, from, to, text);
  const entry = useEntry({
    document: job,
    entry: key,
    shown: distance ? shownReading(distance, units) : '',
    take: (text) => job.edit(key, put(text))?.sentence ?? null,
  });
  const about = !result
    ? undefined
    : result.suspect
      ? w.openings.suspect
      : result.standardised === null
        ? w.openings.unchecked
        : showSmall(Math.abs(result.residual));
  return (
    <Field
      entry={entry}
      label={w.survey.tape(from, to)}
      hideLabel
      numeric
      className="field-short"
      about={about}
    />
  );
}
