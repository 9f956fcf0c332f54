import { useEffect, useState } from 'react';
import type { Elevation } from '../contract.ts';
import { LengthField, TextField } from '../fields/fields.tsx';
import { useFindings } from '../findings/useFindings.ts';
import { useJob, usePlan, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { ElevationDrawing } from './ElevationDrawing.tsx';
import { addElevation, elevationIn, placeOpening } from './elevationEdits.ts';
import { PartFields } from './PartFields.tsx';
import { PlaceList } from './PlaceList.tsx';

const NONE: readonly Elevation[] = [];

/** The whole job in place: the sides as the maker draws them, with the openings on them. */
export function ElevationStage() {
  const w = useWords();
  const { job } = useWork();
  const sides = useJob((state) => state.document.elevations) ?? NONE;
  const [chosen, choose] = useState<string | null>(null);
  const side = sides.find(({ id }) => id === chosen) ?? sides[0];
  const add = () => {
    job.edit(`side.add.${sides.length}`, (draft) => choose(addElevation(draft, w.elevations.newName)));
    job.settle();
  };
  return (
    <div className="stage stage-single">
      <h2>{w.elevations.title}</h2>
      {side ? null : <p className="empty">{w.elevations.empty}</p>}
      <div className="buttons">
        {sides.map(({ id, name }) => (
          <button key={id} type="button" aria-pressed={id === side?.id} onClick={() => choose(id)}>
            {name}
          </button>
        ))}
        <button type="button" disabled={sides.length >= 40} onClick={add}>
          {w.elevations.add}
        </button>
      </div>
      {side ? <OneSide key={side.id} side={side} /> : null}
    </div>
  );
}

function OneSide({ side }: { readonly side: Elevation }) {
  const w = useWords();
  const { job, id } = useWork();
  const openings = useJob((state) => state.document.openings);
  const plans = usePlan((state) => state.openings);
  const findings = useFindings();
  const [photo, setPhoto] = usePhoto();
  const key = `side.${side.id}`;
  return (
    <>
      <ElevationDrawing
        side={side}
        openings={openings}
        plans={plans}
        findings={findings}
        photo={photo}
        href={(opening) => `/jobs/${id}/openings/${opening}`}
        move={(opening, { x, y }) => {
          job.edit(`${key}.place.${opening}`, (draft) => placeOpening(draft, side.id, opening, x, y));
        }}
      />
      <p className="about">{w.elevations.how}</p>
      <PlaceList side={side} openings={openings} />
      <div className="fields">
        <TextField
          document={job}
          entry={`${key}.name`}
          label={w.elevations.name}
          value={side.name}
          set={(value) => job.edit(`${key}.name`, (draft) => void (elevationIn(draft, side.id).name = value))}
        />
        {(['width', 'height'] as const).map((one) => (
          <LengthField
            key={one}
            document={job}
            entry={`${key}.${one}`}
            label={w.elevations[one]}
            value={side[one]}
            set={(value) =>
              job.edit(`${key}.${one}`, (draft) => void (elevationIn(draft, side.id)[one] = value))
            }
          />
        ))}
        <div className="field">
          <label>
            {w.elevations.photo}{' '}
            <input
              type="file"
              accept="image/*"
              onChange={({ target }) => setPhoto(target.files?.[0] ?? null)}
            />
          </label>
          <p className="field-about">{w.elevations.photoAbout}</p>
        </div>
      </div>
      <PartFields side={side} />
      <button
        type="button"
        onClick={() => {
          job.edit(`${key}.remove`, (draft) => {
            draft.elevations = draft.elevations!.filter((one) => one.id !== side.id);
          });
          job.settle();
        }}
      >
        {w.elevations.remove}
      </button>
    </>
  );
}

/** An image for as long as the page is open. */
function usePhoto(): readonly [string | null, (file: File | null) => void] {
  const [photo, set] = useState<string | null>(null);
  useEffect(
    () => () => {
      if (photo) URL.revokeObjectURL(photo);
    },
    [photo],
  );
  return [photo, (file) => set(file && URL.createObjectURL(file))];
}
