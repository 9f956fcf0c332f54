import type { MarkerCorner, Opening, OutlineSurvey, PhotoTape } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { MarkerDrawing } from './MarkerDrawing.tsx';
import { PhotoReadingField } from './PhotoReadingField.tsx';
import { setupIn, setupOf } from './setupOf.ts';

interface Props {
  readonly opening: Opening;
  readonly survey: OutlineSurvey;
}

/** Distances taped between corners of markers: which, and what the tape read. */
export function PhotoTapes({ opening, survey }: Props) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const { tapes } = setupOf(survey, units);
  const add = () => {
    job.edit(`photo.${opening.id}.tape.add`, (draft) => {
      setupIn(draft, opening.id).tapes.push({
        from: { marker: 0, corner: 0 },
        to: { marker: 4, corner: 1 },
      });
    });
    job.settle();
  };
  return (
    <section>
      <h3>{w.photo.tapes.title}</h3>
      <p className="about">{w.photo.tapes.about}</p>
      {tapes.length === 0 ? <p>{w.photo.tapes.none}</p> : null}
      {tapes.map((tape, index) => (
        // Tapes have no names of their own.
        <OneTape key={index} opening={opening} tape={tape} index={index} />
      ))}
      <p className="buttons">
        <button type="button" onClick={add}>
          {w.photo.tapes.add}
        </button>
      </p>
    </section>
  );
}

interface OneProps {
  readonly opening: Opening;
  readonly tape: PhotoTape;
  readonly index: number;
}

function OneTape({ opening, tape, index }: OneProps) {
  const w = useWords();
  const { job } = useWork();
  const key = `photo.${opening.id}.tape.${index}`;
  const n = index + 1;
  const put = (end: 'from' | 'to', part: Partial<MarkerCorner>) => {
    job.edit(`${key}.${end}`, (draft) => {
      Object.assign(setupIn(draft, opening.id).tapes[index]![end], part);
    });
    job.settle();
  };
  return (
    <fieldset className="photo-tape">
      <legend>{w.photo.tapes.length(n)}</legend>
      {(['from', 'to'] as const).map((end) => (
        <div key={end} className="photo-tape-end">
          <MarkerDrawing at={tape[end]} />
          <SelectField
            label={end === 'from' ? w.photo.tapes.from(n) : w.photo.tapes.to(n)}
            value={String(tape[end].marker)}
            options={Array.from({ length: 16 }, (_, id) => ({
              value: String(id),
              label: w.photo.tapes.marker(id),
            }))}
            set={(value) => put(end, { marker: Number(value) })}
          />
          <SelectField
            label={end === 'from' ? w.photo.tapes.fromCorner(n) : w.photo.tapes.toCorner(n)}
            value={String(tape[end].corner)}
            options={w.photo.tapes.corners.map((label, value) => ({ value: String(value), label }))}
            set={(value) => put(end, { corner: Number(value) })}
          />
        </div>
      ))}
      <div className="photo-tape-end">
        <PhotoReadingField
          entry={`${key}.read`}
          label={w.photo.tapes.length(n)}
          reading={tape.read}
          put={(draft, reading) => {
            const into = setupIn(draft, opening.id).tapes[index]!;
            if (reading) into.read = reading;
            else delete into.read;
          }}
        />
        <button
          type="button"
          onClick={() => {
            job.edit(`${key}.remove`, (draft) => {
              setupIn(draft, opening.id).tapes.splice(index, 1);
            });
            job.settle();
          }}
          aria-label={w.photo.tapes.remove(n)}
        >
          {w.app.remove}
        </button>
      </div>
    </fieldset>
  );
}
