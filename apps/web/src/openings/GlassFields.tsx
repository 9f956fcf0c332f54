import type { Draft } from 'immer';
import type { Glazing, Opening } from '../contract.ts';
import { StandOffHelp } from '../drawing/HelpDrawing.tsx';
import { CheckField, LengthField, SelectField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { openingIn } from './readingEdits.ts';

const KINDS = ['glass', 'laminated', 'acrylic', 'air', 'film'] as const;

/** The layers of the pane from outside to inside, the gasket, and whether it is curved. */
export function GlassFields({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const { job } = useWork();
  const { glazing } = opening;
  const edit = (key: string, change: (glazing: Draft<Glazing>) => void) =>
    job.edit(key, (draft) => change(openingIn(draft, opening.id).glazing));
  return (
    <fieldset>
      <legend>{w.openings.glass}</legend>
      <ol className="layers">
        {glazing.layers.map((layer, index) => (
          // A layer is known by its place from outside.
          <li key={index}>
            <SelectField
              label={w.openings.layer(index + 1)}
              value={layer.kind}
              options={KINDS.map((value) => ({ value, label: w.openings.layerKind[value] }))}
              set={(kind) =>
                edit(`layer.${opening.id}.${index}.kind`, (one) => void (one.layers[index]!.kind = kind))
              }
            />
            <LengthField
              document={job}
              entry={`layer.${opening.id}.${index}.thickness`}
              label={w.openings.thickness}
              kind="thin"
              value={layer.thickness}
              set={(value) =>
                edit(
                  `layer.${opening.id}.${index}.thickness`,
                  (one) => void (one.layers[index]!.thickness = value),
                )
              }
            />
            {glazing.layers.length > 1 ? (
              <button
                type="button"
                className="quiet"
                aria-label={w.openings.removeLayer(index + 1)}
                onClick={() => edit(`layer.remove.${opening.id}`, (one) => void one.layers.splice(index, 1))}
              >
                {w.app.remove}
              </button>
            ) : null}
          </li>
        ))}
      </ol>
      <button
        type="button"
        disabled={glazing.layers.length >= 12}
        onClick={() =>
          edit(`layer.add.${opening.id}`, (one) => void one.layers.push({ kind: 'glass', thickness: 4 }))
        }
      >
        {w.openings.addLayer}
      </button>
      <StandOffHelp />
      <LengthField
        document={job}
        entry={`standOff.${opening.id}`}
        label={w.openings.standOff}
        kind="thin"
        value={glazing.standOff}
        set={(value) => edit(`standOff.${opening.id}`, (one) => void (one.standOff = value))}
      />
      <CheckField
        label={w.openings.curved}
        value={glazing.curved}
        set={(value) => edit(`curved.${opening.id}`, (one) => void (one.curved = value))}
      />
    </fieldset>
  );
}
