import type { Opening } from '../contract.ts';
import { CheckField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { openingIn } from './readingEdits.ts';

/** Whether lives or the view ahead depend on the window; the caution stands where the choice is made. */
export function UseFields({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const { job } = useWork();
  const set = (what: 'exit' | 'driving') => (value: boolean) =>
    job.edit(`${what}.${opening.id}`, (draft) => {
      openingIn(draft, opening.id)[what] = value;
    });
  return (
    <fieldset>
      <legend>{w.openings.use}</legend>
      <CheckField label={w.openings.exit} value={opening.exit} set={set('exit')} />
      {opening.exit ? <p className="caution">{w.hold.exitCaution}</p> : null}
      <CheckField label={w.openings.driving} value={opening.driving} set={set('driving')} />
      {opening.driving ? <p className="caution">{w.hold.drivingCaution}</p> : null}
    </fieldset>
  );
}
