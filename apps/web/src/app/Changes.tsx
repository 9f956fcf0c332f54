import type { Job } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { fieldWords, valueWords } from '../merge/fieldWords.ts';
import { type FieldChange, pathKey } from '../merge/merge.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly changes: readonly FieldChange[];
  /** Where the names of openings are looked up, in turn. */
  readonly jobs: readonly Job[];
}

/** What changed, field by field: before and after. */
export function Changes({ changes, jobs }: Props) {
  const w = useWords();
  const units = useUnits();
  return (
    <ul className="changes">
      {changes.map(({ path, before, after }) => (
        <li key={pathKey(path)}>
          {fieldWords(path, jobs, w)}:{' '}
          <b>{w.keep.change(valueWords(path, before, units, w), valueWords(path, after, units, w))}</b>
        </li>
      ))}
    </ul>
  );
}
