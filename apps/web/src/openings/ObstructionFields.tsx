import type { Opening } from '../contract.ts';
import { LengthField, TextField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { freeId } from './newOpening.ts';
import { openingIn } from './readingEdits.ts';

const SIDES = ['x', 'y', 'width', 'height'] as const;
const START = { x: 20, y: 20, width: 80, height: 40 };

/** Handles, latches and the like: where they sit and how large they are. */
export function ObstructionFields({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const { job } = useWork();
  const labels = { x: w.openings.x, y: w.openings.y, width: w.openings.w, height: w.openings.h };
  return (
    <fieldset>
      <legend>{w.openings.obstructions}</legend>
      <p className="about">
        {opening.obstructions.length > 0
          ? `${w.openings.obstructionsAbout} ${w.bench.obstructionHow}`
          : w.openings.obstructionsEmpty}
      </p>
      {opening.obstructions.map((one, index) => {
        const key = `obstruction.${opening.id}.${one.id}`;
        return (
          <div key={one.id} className="fields obstruction-fields">
            <TextField
              document={job}
              entry={`${key}.name`}
              label={w.openings.obstruction}
              value={one.name}
              set={(value) =>
                job.edit(`${key}.name`, (draft) => {
                  openingIn(draft, opening.id).obstructions[index]!.name = value;
                })
              }
            />
            {SIDES.map((side) => (
              <LengthField
                key={side}
                document={job}
                entry={`${key}.${side}`}
                label={labels[side]}
                className="field-short"
                value={one[side]}
                set={(value) =>
                  job.edit(`${key}.${side}`, (draft) => {
                    openingIn(draft, opening.id).obstructions[index]![side] = value;
                  })
                }
              />
            ))}
            <button
              type="button"
              className="quiet"
              aria-label={w.openings.removeObstruction(one.name)}
              onClick={() =>
                job.edit(`${key}.remove`, (draft) => {
                  openingIn(draft, opening.id).obstructions.splice(index, 1);
                })
              }
            >
              {w.app.remove}
            </button>
          </div>
        );
      })}
      <button
        type="button"
        disabled={opening.obstructions.length >= 40}
        onClick={() =>
          job.edit(`obstruction.add.${opening.id}`, (draft) => {
            const list = openingIn(draft, opening.id).obstructions;
            list.push({ id: freeId('o', list), name: w.openings.newObstruction, ...START });
          })
        }
      >
        {w.openings.addObstruction}
      </button>
    </fieldset>
  );
}
