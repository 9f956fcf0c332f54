import type { Draft } from 'immer';
import type { Job, PhotoReading } from '../contract.ts';
import { Field } from '../fields/Field.tsx';
import { useEntry } from '../fields/useEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { shownReading } from '../openings/readingEdits.ts';
import { useWords } from '../text/useWords.ts';
import { readingOf } from './setupOf.ts';

interface Props {
  readonly entry: string;
  readonly label: string;
  readonly reading: PhotoReading | undefined;
  /** Puts what was read into the draft; undefined where nothing is left of it. */
  readonly put: (draft: Draft<Job>, reading: PhotoReading | undefined) => void;
}

/** What a tape or a rule reads, kept as it was entered. */
export function PhotoReadingField({ entry, label, reading, put }: Props) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const state = useEntry({
    document: job,
    entry,
    shown: reading ? shownReading(reading, units) : '',
    take: (text) => job.edit(entry, (draft) => put(draft, readingOf(text, units)))?.sentence ?? null,
  });
  const named = /[a-z"']\s*$/.test(state.text);
  return <Field entry={state} label={label} numeric unit={named ? undefined : w.fields.lengthUnit[units]} />;
}
