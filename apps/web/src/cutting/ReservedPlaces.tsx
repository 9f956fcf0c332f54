import { newId } from '../app/newId.ts';
import type { LayPlan, ReservedPlace } from '../contract.ts';
import { SelectField, TextField } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useJob, useWork } from '../job/work.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { MeasureEntries } from './MeasureEntries.tsx';
import { HAND, type Measures, withMeasure } from './placeMeasures.ts';

const NONE: readonly ReservedPlace[] = [];

/** Where on the roll of a lay nothing may be cut, each by its four measures. */
export function ReservedPlaces({ lay }: { readonly lay: LayPlan }) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const all = useJob((state) => state.document.reservedPlaces) ?? NONE;
  const ofCloth = all.filter(({ fabric }) => fabric === lay.fabric);
  const here = ofCloth.filter(({ rollWidth }) => rollWidth === lay.rollWidth);
  const others = ofCloth.filter(({ rollWidth }) => rollWidth !== lay.rollWidth);
  const add = () => {
    const near = lay.selvage;
    const size = { from: 0, to: HAND, near, far: Math.min(near + HAND, lay.rollWidth) };
    const on = { id: newId('place'), fabric: lay.fabric, rollWidth: lay.rollWidth };
    job.edit(`reserved.${on.id}`, (draft) => {
      draft.reservedPlaces = [...(draft.reservedPlaces ?? []), { ...on, ...size, why: 'flaw', notes: '' }];
    });
    job.settle();
  };
  const widths = [...new Set(others.map(({ rollWidth }) => showLength(rollWidth, units)))].join(', ');
  return (
    <fieldset>
      <legend>{w.reserved.title}</legend>
      <p className="about">{w.reserved.about}</p>
      {here.map((place, index) => (
        <Place key={place.id} place={place} index={index + 1} />
      ))}
      {others.length > 0 ? <p className="about">{w.reserved.elsewhere(others.length, widths)}</p> : null}
      <button type="button" onClick={add}>
        {w.reserved.add}
      </button>
    </fieldset>
  );
}

function Place({ place, index }: { readonly place: ReservedPlace; readonly index: number }) {
  const w = useWords();
  const { job } = useWork();
  const key = `reserved.${place.id}`;
  const change = (to: Partial<ReservedPlace>) => {
    const problem = job.edit(key, (draft) => {
      draft.reservedPlaces = draft.reservedPlaces?.map((one) =>
        one.id === place.id ? { ...one, ...to } : one,
      );
    });
    if (!problem) job.settle();
    return problem;
  };
  const measure = (which: keyof Measures, value: number) => {
    const next = withMeasure(place, which, value, { along: Infinity, across: place.rollWidth });
    if (next.to <= next.from || next.far <= next.near) return w.reserved.backwards;
    return change(next)?.sentence ?? null;
  };
  const remove = () => {
    job.edit(key, (draft) => {
      const rest = (draft.reservedPlaces ?? []).filter(({ id }) => id !== place.id);
      if (rest.length > 0) draft.reservedPlaces = rest;
      else delete draft.reservedPlaces;
    });
    job.settle();
  };
  return (
    <fieldset>
      <legend>{w.reserved.place(index)}</legend>
      <div className="fields fields-narrow">
        <MeasureEntries place={place} set={measure} />
        <SelectField
          label={w.reserved.why}
          value={place.why}
          options={(['flaw', 'kept'] as const).map((value) => ({ value, label: w.reserved.reasons[value] }))}
          set={(why) => change({ why })}
        />
        <TextField
          document={job}
          entry={`${key}.notes`}
          label={w.reserved.notes}
          value={place.notes}
          set={(notes) => change({ notes })}
        />
      </div>
      <button type="button" className="quiet" aria-label={w.reserved.removeOf(index)} onClick={remove}>
        {w.reserved.remove}
      </button>
    </fieldset>
  );
}
