import type { Elevation, Opening } from '../contract.ts';
import { LengthField } from '../fields/fields.tsx';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { placeOpening, takeOff } from './elevationEdits.ts';

interface Props {
  readonly side: Elevation;
  readonly openings: readonly Opening[];
}

/** How far apart openings are put at first, mm. */
const APART = 1000;

/** Where each opening of the side stands, in figures; and those that stand on no side yet. */
export function PlaceList({ side, openings }: Props) {
  const w = useWords();
  const { job } = useWork();
  const sides = useJob((state) => state.document.elevations) ?? [];
  const placed = new Set(sides.flatMap(({ places }) => places.map(({ opening }) => opening)));
  const titleOf = (id: string) => w.openings.title(id, openings.find((one) => one.id === id)?.name ?? '');
  const free = openings.filter(({ id }) => !placed.has(id));
  const key = (opening: string) => `side.${side.id}.place.${opening}`;
  const put = (opening: string) => {
    // Beside the one before, so that none hides another.
    const at = (APART * side.places.length) % Math.max(APART, side.width - APART);
    job.edit(key(opening), (draft) =>
      placeOpening(draft, side.id, opening, Math.round(APART / 4 + at), Math.round(side.height / 2)),
    );
    job.settle();
  };
  return (
    <>
      {free.length > 0 ? (
        <fieldset>
          <legend>{w.elevations.free}</legend>
          <div className="buttons">
            {free.map(({ id }) => (
              <button key={id} type="button" onClick={() => put(id)}>
                {w.elevations.place(titleOf(id))}
              </button>
            ))}
          </div>
        </fieldset>
      ) : null}
      {side.places
        .filter(({ opening }) => openings.some(({ id }) => id === opening))
        .map((place) => (
          <fieldset key={place.opening}>
            <legend>{titleOf(place.opening)}</legend>
            <div className="fields">
              {(['x', 'y'] as const).map((one) => (
                <LengthField
                  key={one}
                  document={job}
                  entry={`${key(place.opening)}.${one}`}
                  label={w.openings[one]}
                  className="field-short"
                  value={place[one]}
                  set={(value) =>
                    job.edit(`${key(place.opening)}.${one}`, (draft) => {
                      const at = { x: place.x, y: place.y, [one]: value };
                      placeOpening(draft, side.id, place.opening, at.x, at.y);
                    })
                  }
                />
              ))}
              <button
                type="button"
                className="quiet"
                aria-label={w.elevations.takeOffOf(titleOf(place.opening))}
                onClick={() => {
                  job.edit(`${key(place.opening)}.off`, (draft) => takeOff(draft, side.id, place.opening));
                  job.settle();
                }}
              >
                {w.elevations.takeOff}
              </button>
            </div>
          </fieldset>
        ))}
    </>
  );
}
