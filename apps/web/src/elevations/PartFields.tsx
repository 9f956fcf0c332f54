import type { Elevation } from '../contract.ts';
import { LengthField, SelectField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { elevationIn } from './elevationEdits.ts';

/** Doors, wheels and the like, so that one knows one's way about the side. */
export function PartFields({ side }: { readonly side: Elevation }) {
  const w = useWords();
  const { job } = useWork();
  const key = `side.${side.id}.part`;
  const labels = { x: w.openings.x, y: w.openings.y, width: w.openings.w, height: w.openings.h };
  return (
    <fieldset>
      <legend>{w.elevations.parts}</legend>
      {side.parts.map((part, index) => (
        // A part is known by its place in the list.
        <div key={index} className="fields obstruction-fields">
          <SelectField
            label={w.elevations.part}
            value={part.kind}
            options={(['box', 'round'] as const).map((value) => ({
              value,
              label: w.elevations.kinds[value],
            }))}
            set={(value) =>
              job.edit(`${key}.${index}.kind`, (draft) => {
                elevationIn(draft, side.id).parts[index]!.kind = value;
              })
            }
          />
          {(['x', 'y', 'width', 'height'] as const).map((one) => (
            <LengthField
              key={one}
              document={job}
              entry={`${key}.${index}.${one}`}
              label={labels[one]}
              className="field-short"
              value={part[one]}
              set={(value) =>
                job.edit(`${key}.${index}.${one}`, (draft) => {
                  elevationIn(draft, side.id).parts[index]![one] = value;
                })
              }
            />
          ))}
          <button
            type="button"
            className="quiet"
            aria-label={w.elevations.removePart(index + 1)}
            onClick={() => {
              job.edit(`${key}.${index}.remove`, (draft) => {
                elevationIn(draft, side.id).parts.splice(index, 1);
              });
              job.settle();
            }}
          >
            {w.app.remove}
          </button>
        </div>
      ))}
      <button
        type="button"
        disabled={side.parts.length >= 40}
        onClick={() => {
          job.edit(`${key}.add.${side.parts.length}`, (draft) => {
            elevationIn(draft, side.id).parts.push({ kind: 'box', x: 100, y: 100, width: 700, height: 1800 });
          });
          job.settle();
        }}
      >
        {w.elevations.addPart}
      </button>
    </fieldset>
  );
}
